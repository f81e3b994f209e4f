package commands

import (
	"cmp"

	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const backingWord words.Concept = "backing"

// backingTopic: the fabric behind a quilt.
func backingTopic() Topic {
	return Topic{
		Name: "backing", Group: FinishIt, Title: "backing: panels, seams and what to buy", Together: true,
		Terms: []words.Term{
			{Concept: backingWord, Words: "backing, backing fabric, quilt back, back of, back of a quilt, back it, to back, for the back, the back, back, piece the back, backing cloth, backed, quilt backing, behind, pieced back"},
		},
		Says: says(14, backingWord, wideFabric),
		Inputs: []input{
			quiltSize(), overEachSide(), noOverage(), usableWidth(), wideWidth(),
			{name: "bolt", kind: aWord, words: map[words.Concept]string{wideFabric: "wide"}},
			{name: "seams", kind: aWord, words: map[words.Concept]string{vertical: "vertical", horizontal: "horizontal"}},
			oneWayPrint(), clothInHand(),
		},
		Needs:    [][]string{{"quilt", "have"}},
		Examples: []string{"backing for 70 x 90", "is 4 yards of 42 in fabric enough to back 60 x 70"},
		Source:   "panels lose ½ in to each seam edge; both seam directions are reckoned and the shorter is bought (happy-stitches.com; longarmquilter.ca).",
		Work:     workBacking,
		Other:    otherSeams,
	}
}

// otherSeams turns the seams of the backing the other way.
func otherSeams(now, before map[string]Value) {
	turn := map[string]string{"vertical": "horizontal", "horizontal": "vertical"}
	now["seams"] = Value{Kind: aWord, Word: cmp.Or(turn[before["seams"].Word], "other")}
}

func workBacking(w *work) error {
	wide := w.word("bolt") == "wide" || w.given("wide_backing")
	c := w.backingFabric(wide)
	over := w.overageOr()
	if !w.given("quilt") {
		return workBackingReach(w, c, over, wide)
	}
	v, _ := w.value("quilt")
	w.size = v.Size
	r := calc.BackingRequest{
		Conventions: c, Quilt: v.Size, Overage: over, PanelSeam: w.assumeLength("panel_seam"),
		OneWay: w.word("print") != "", WideCloth: wide, Have: measure.Cloth(w.length("have")),
	}
	b, err := calc.Backing(r)
	if err != nil {
		return err
	}
	way, other := b.BackingWay, b.Turned
	if want := w.word("seams"); other.Panels > 0 && (want == "other" || want != "" && want != string(way.Seams) && want == string(other.Seams)) {
		way, other = other, way
	}
	drawn := b
	drawn.BackingWay = way
	w.draws(func() scene.Scene { return scene.Backing(r, drawn) })
	w.figure("backing_width", b.BackingWidth)
	w.figure("backing_length", b.BackingLength)
	w.figure("panels", way.Panels)
	w.figure("panel_length", way.PanelLength)
	w.figure("seams", string(way.Seams))
	w.figure("buy", way.Buy)
	w.enoughCloth(b.Cloth)

	if way.Panels == 1 {
		w.say("Buy %v: one piece, no seam.", way.Buy)
	} else {
		w.say("Buy %v: %v of %v, seams %s.", way.Buy, counted(way.Panels, "panel"), way.PanelLength, running(way.Seams))
	}
	w.say("The backing is %v, %v over on each side of %v.", measure.Size{Width: b.BackingWidth, Length: b.BackingLength}, over, v.Size)
	if other.Panels > 0 && other.Seams != way.Seams && other.Buy != way.Buy {
		w.say("With seams %s it would take %v.", running(other.Seams), other.Buy)
	}
	if !wide && b.WideSaves > 0 {
		w.say("Wide backing of %v would save %v: %v of it.", c.WideBacking, counted(b.WideSaves, "seam"), b.Wide.Buy)
	}
	if b.OneFewerWidth > 0 && b.OneFewerWidth <= widestCotton && !wide {
		w.say("On fabric of %v, %v would do.", b.OneFewerWidth, counted(way.Panels-1, "panel"))
	}
	w.show(b.Working)
	w.does(cutting, pressing)
	return nil
}

// backingFabric gives the habits with the fabric that the backing is made of.
// Wide backing is called by its whole width, selvages and all, of which two
// inches are not usable (common practice, no source: 106 in of 108 in).
func (w *work) backingFabric(wide bool) calc.Conventions {
	switch {
	case !wide:
		return w.conventions("usable_width")
	case w.given("wide_backing"):
		c := w.conventions()
		c.WideBacking = w.length("wide_backing") - 2*measure.Inch
		w.assume("wide_backing", c.WideBacking)
		w.say("Of backing sold as %v I count %v as usable.", w.length("wide_backing"), c.WideBacking)
		return c
	}
	return w.conventions("wide_backing")
}

// running says which way seams run.
func running(s calc.Seams) string {
	switch s {
	case calc.VerticalSeams:
		return "running top to bottom"
	case calc.HorizontalSeams:
		return "running side to side"
	}
	return "nowhere"
}

// workBackingReach answers the question turned round: what a length in hand backs.
func workBackingReach(w *work, c calc.Conventions, over measure.Length, wide bool) error {
	if !w.given("have") {
		return w.needs("quilt")
	}
	b, err := calc.BackingReach(calc.BackingReachRequest{Conventions: c, Overage: over, PanelSeam: w.assumeLength("panel_seam"), WideCloth: wide, Have: measure.Cloth(w.length("have"))})
	if err != nil {
		return err
	}
	best := b.Largest
	w.size = best.Quilt
	w.figure("quilt_width", best.Quilt.Width)
	w.figure("quilt_length", best.Quilt.Length)
	w.figure("panels", best.Panels)
	w.figure("panel_length", best.PanelLength)
	w.say("%v backs a quilt up to %v, with %v.", measure.Cloth(w.length("have")), best.Quilt, counted(best.Panels, "panel"))
	for _, q := range b.All {
		if q != best && q.Panels <= 2 {
			w.say("With %v it would back up to %v.", counted(q.Panels, "panel"), q.Quilt)
		}
	}
	w.show(b.Working)
	w.does(cutting, pressing)
	return nil
}
