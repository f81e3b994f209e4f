package commands

import (
	"slices"

	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const (
	bedWord      words.Concept = "bed"
	mattressWord words.Concept = "mattress"
	dropWord     words.Concept = "drop"
	footDropWord words.Concept = "foot drop"
	tuckWord     words.Concept = "pillow tuck"
	depthWord    words.Concept = "mattress depth"
	cribBed      words.Concept = "crib"
	twinBed      words.Concept = "twin"
	twinXLBed    words.Concept = "twin XL"
	fullBed      words.Concept = "full"
	queenBed     words.Concept = "queen"
	kingBed      words.Concept = "king"
	calKingBed   words.Concept = "California king"
	singleBed    words.Concept = "single"
	smallDouble  words.Concept = "small double"
	doubleBed    words.Concept = "double"
	superKing    words.Concept = "super king"
	kingSingle   words.Concept = "king single"
	whichBeds    words.Concept = "which beds"
)

// bedWords are the names of beds.
var bedWords = map[words.Concept]string{
	cribBed: "crib", twinBed: "twin", twinXLBed: "twin XL", fullBed: "full", queenBed: "queen", kingBed: "king", calKingBed: "California king",
	singleBed: "single", smallDouble: "small double", doubleBed: "double", superKing: "super king", kingSingle: "king single",
}

// bedTopic: how large a quilt covers a bed.
func bedTopic() Topic {
	return Topic{
		Name: "bed", Group: SizeIt, Title: "how large a quilt covers a bed, and which beds a quilt fits",
		Terms: []words.Term{
			{Concept: bedWord, Words: "bed, bed size, bed quilt, bedding, bedspread size"},
			{Concept: mattressWord, Words: "mattress, matress"},
			{Concept: dropWord, Words: "drop, overhang, hang over, hanging down, over the sides, side drop, down each side, over the edge, over each side and the end, hang, hang down, down the sides, hang down each side"},
			{Concept: footDropWord, Words: "foot drop, at the foot, over the foot, drop at the foot, end drop, at the end"},
			{Concept: tuckWord, Words: "pillow tuck, tuck, for the pillow, for the pillows, over the pillow, over the pillows, under the pillow, under the pillows, pillow cover allowance, pillow wrap, to tuck under the pillows"},
			{Concept: depthWord, Words: "mattress depth, deep mattress, thick mattress"},
			{Concept: cribBed, Words: "crib, cot, crib size"},
			{Concept: twinBed, Words: "twin, twin size, twin bed"},
			{Concept: twinXLBed, Words: "twin xl, long twin, extra long twin, xl twin"},
			{Concept: fullBed, Words: "full size, full bed, full size bed, full mattress"},
			{Concept: queenBed, Words: "queen, queen size, queen bed, queen sized"},
			{Concept: kingBed, Words: "king, king size, king bed, king sized"},
			{Concept: calKingBed, Words: "california king, cal king, calif king, western king"},
			{Concept: singleBed, Words: "single, single bed, single size"},
			{Concept: smallDouble, Words: "small double, three quarter bed, queen small"},
			{Concept: doubleBed, Words: "double, double bed, double size"},
			{Concept: superKing, Words: "super king, superking, super king size, emperor"},
			{Concept: kingSingle, Words: "king single"},
			{Concept: whichBeds, Words: "which bed, which beds, what bed, what beds, what size bed, will it fit a, does it fit, fit on a bed, what bed does it fit, which mattress"},
		},
		Says: append(append(says(9, mattressWord, whichBeds), says(7, bedWord, dropWord, tuckWord, queenBed, kingBed, twinBed, fullBed, twinXLBed, calKingBed, superKing, kingSingle, smallDouble)...), says(4, singleBed, doubleBed, cribBed, footDropWord)...),
		Inputs: []input{
			{name: "mattress", kind: aSize, prior: 6, usual: [2]float64{25, 90}, after: of(mattressWord, bedWord), before: append(of(mattressWord, bedWord, whichBeds), bedConcepts()...), label: "the mattress", replaces: []string{"bed"},
				ask: "Which bed is it, or what does the mattress measure, and how far should the quilt hang down?", offer: []string{"queen with 12 in drop", "39 x 75 with 14 in drop"}, not: of(quilt)},
			{name: "drop", kind: aLength, zero: true, prior: 4, usual: [2]float64{6, 26}, after: of(dropWord, eachSide, overage), before: of(dropWord), not: of(tuckWord, footDropWord, block), label: "the drop", ask: "How far should the quilt hang down at the sides?", offer: []string{"12 in", "14 in", "0 in"}},
			{name: "foot_drop", kind: aLength, zero: true, usual: [2]float64{0, 26}, after: of(footDropWord), before: of(footDropWord), label: "the drop at the foot"},
			{name: "tuck", kind: aLength, zero: true, usual: [2]float64{6, 24}, after: of(tuckWord), before: of(tuckWord), label: "the pillow tuck"},
			{name: "quilt", kind: aSize, after: of(quilt), before: of(quilt), when: of(whichBeds, quilt), usual: [2]float64{30, 140}, label: "the quilt"},
			{name: "bed", kind: aWord, words: bedWords, replaces: []string{"mattress"}},
			{name: "country", kind: aWord, words: countryWords},
		},
		Needs:    [][]string{{"mattress", "bed", "quilt"}, {"drop", "foot_drop", "quilt"}},
		Examples: []string{"queen with 12 in drop", "which beds does an 86 x 93 quilt fit"},
		Source:   "mattress width and twice the drop; mattress length, the drop at the foot and the tuck (sewnana.com, January 2010); mattress sizes as published (liquisearch.com).",
		Work:     workBed,
	}
}

func bedConcepts() []words.Concept {
	out := make([]words.Concept, 0, len(bedWords))
	for c := range bedWords {
		out = append(out, c)
	}
	slices.Sort(out)
	return out
}

// mattress finds the mattress of the named bed in the country that was said,
// or in the one that applies; names of another country's beds are looked for
// there.
func (w *work) mattress() (calc.Mattress, error) {
	name := w.word("bed")
	country := calc.Country(w.wordOr("country", "country"))
	if m, ok := findBed(country, name); ok {
		return m, nil
	}
	for _, other := range []calc.Country{calc.UnitedStates, calc.UnitedKingdom, calc.Australia, calc.Europe} {
		if m, ok := findBed(other, name); ok && !w.given("country") {
			w.reply.Assumed = slices.DeleteFunc(w.reply.Assumed, func(a Assumed) bool { return a.Name == "country" })
			w.reply.Assumed = append(w.reply.Assumed, w.assumed("country", string(other)))
			return m, nil
		}
	}
	return calc.Mattress{}, w.cannot("There is no published %s mattress in %s sizes. Measure the bed and give me width by length, like this: 60 x 80 with 12 in drop.", name, string(country))
}

// sameBed are names that one country uses for what another calls otherwise.
var sameBed = map[calc.Country]map[string]string{
	calc.UnitedStates:  {"double": "full", "single": "twin"},
	calc.UnitedKingdom: {"full": "double", "twin": "single"},
	calc.Australia:     {"full": "double", "twin": "single"},
}

func findBed(country calc.Country, name string) (calc.Mattress, bool) {
	if m, ok := calc.FindMattress(country, name); ok {
		return m, true
	}
	return calc.FindMattress(country, sameBed[country][name])
}

func workBed(w *work) error {
	if w.given("quilt") && !w.given("drop") && !w.given("bed") && !w.given("mattress") {
		return workBeds(w)
	}
	r := calc.BedRequest{Conventions: w.conventions()}
	named := ""
	switch {
	case w.given("mattress"):
		v, _ := w.value("mattress")
		r.Mattress = v.Size
		w.word("bed")
		w.word("country")
	case w.given("bed"):
		m, err := w.mattress()
		if err != nil {
			return err
		}
		r.Mattress, named = m.Size, string(m.Country)+" "+m.Name
	default:
		return w.needs("mattress")
	}
	if !w.given("drop") && !w.given("foot_drop") {
		return w.needs("drop")
	}
	r.SideDrop = w.length("drop")
	r.FootDrop = r.SideDrop
	if w.given("foot_drop") {
		r.FootDrop = w.length("foot_drop")
	}
	r.Tuck = w.length("tuck")
	b, err := calc.Bed(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.Bed(r, b) })
	w.size = measure.Size{Width: b.QuiltWidth, Length: b.QuiltLength}
	w.figure("mattress_width", b.MattressWidth)
	w.figure("mattress_length", b.MattressLength)
	w.figure("quilt_width", b.QuiltWidth)
	w.figure("quilt_length", b.QuiltLength)
	w.say("A quilt of %v.", w.size)
	line := w.format("The mattress is %v", r.Mattress)
	if named != "" {
		line = w.format("A %s mattress is %v", named, r.Mattress)
	}
	line += w.format("; the quilt hangs %v down at the sides and %v at the foot", r.SideDrop, r.FootDrop)
	if r.Tuck > 0 {
		line += w.format(", with %v for the pillows", r.Tuck)
	}
	w.say("%s.", line)
	if r.Tuck == 0 {
		w.say(`Nothing is added for the pillows; say "12 in pillow tuck" if you want it.`)
	}
	w.say("Mattresses differ: measure yours, depth and all.")
	w.show(b.Working)
	return nil
}

// workBeds answers the question turned round: which beds a quilt fits.
func workBeds(w *work) error {
	v, _ := w.value("quilt")
	country := calc.Country(w.wordOr("country", "country"))
	fits, err := calc.Beds(calc.BedsRequest{Conventions: w.conventions(), Quilt: v.Size, Country: country})
	if err != nil {
		return err
	}
	w.size = v.Size
	if len(fits) == 0 {
		return w.cannot("%v is smaller than every published mattress. It is a throw, or a quilt for a cot.", v.Size)
	}
	w.figure("bed", fits[0].Name)
	w.figure("drop", fits[0].SideDrop)
	for i, f := range fits {
		if i == 3 {
			break
		}
		if i == 0 {
			w.say("The largest bed that it covers is a %s %s, %v: it hangs %v down at the sides, and %v is left for the foot and the pillows.", string(f.Country), f.Name, f.Size, f.SideDrop, f.EndDrop)
			continue
		}
		w.say("On a %s, %v, it hangs %v down at the sides and leaves %v.", f.Name, f.Size, f.SideDrop, f.EndDrop)
	}
	return nil
}
