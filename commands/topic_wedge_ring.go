package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const (
	foldedTip  words.Concept = "folded tips"
	plainEnds  words.Concept = "plain ends"
	roundTips  words.Concept = "rounded tips"
	coverWord  words.Concept = "cover circle"
	groundWord words.Concept = "background"
	marginWord words.Concept = "margin"
)

// wedgeRingTopic: a ring of wedges with its opening, cover and background.
func wedgeRingTopic() Topic {
	return Topic{
		Name: "wedge-ring", Family: "wedges", Group: SizeIt, Title: "a ring of wedges: how big across, its opening, cover circle and background",
		Terms: append(flatnessTerms, []words.Term{
			{Concept: foldedTip, Words: "folded, folded tip, folded end, pointed, pointed tip, pointed end, pointy, points folded, with points, folded point"},
			{Concept: plainEnds, Words: "plain end, plain, flat end, blunt, blunt end, flat outer edge"},
			{Concept: roundTips, Words: "rounded, rounded tip, rounded end, round end, curved end, round tip"},
			{Concept: coverWord, Words: "cover circle, cover, centre circle, center circle, cover the hole, middle circle, circle in the middle, centre piece, center piece, circle for the middle, circle for the centre, circle to cover"},
			{Concept: groundWord, Words: "background, background square, background block, ground, backdrop"},
			{Concept: marginWord, Words: "margin, of margin, background all round, clear all round, to spare all round, space around, of background round"},
		}...),
		About: of(ruffles, cups, notFlat, blade, ring, fanWord, halfRing, quarterOf, foldedTip, angleWord),
		Says:  append(append(append(says(5, ring), says(7, ruffles, cups, notFlat)...), says(4, blade, opening, coverWord, groundWord, foldedTip, fanWord, halfRing)...), append(says(2, narrowEnd, wideEnd, across, howBig, circle, plainEnds, long, quarterCirc), against(triangle, diamond, hexagon)...)...),
		Inputs: append([]input{
			{name: "blades", kind: aCount, usual: [2]float64{3, 72}, after: of(blade, ofThem), before: of(blade, ring), prior: 1, label: "the number of blades", ask: "How many blades, or what angle is each?", offer: []string{"16 blades", "18°"}},
			bladeAngle(),
			bladeLength(),
			narrowEndInput(),
			{name: "wide_end", kind: aLength, usual: [2]float64{1, 10}, after: of(wideEnd), before: of(wideEnd), label: "the wide end"},
			{name: "strip_width", kind: aLength, usual: [2]float64{1.5, 12}, after: of(strip), before: of(strip), label: "the strip they are cut from"},
			{name: "ring_across", kind: aLength, usual: [2]float64{5, 60}, after: of(across, ring, circle), before: of(across), not: of(opening, long), label: "the ring across"},
			{name: "opening_across", kind: aLength, usual: [2]float64{0.5, 12}, after: of(opening), before: of(opening), label: "the opening"},
			{name: "margin", kind: aLength, usual: [2]float64{0.5, 8}, after: of(marginWord), before: of(marginWord), label: "the margin"},
			{name: "ends", kind: aWord, words: map[words.Concept]string{foldedTip: "folded", plainEnds: "plain", roundTips: "rounded"}},
			turnInput(), seamAllowance(),
		}, flatnessInputs()...),
		Needs:    [][]string{{"blades", "angle", "trouble"}, {"blade_length", "ring_across", "trouble"}},
		Examples: []string{"ring of 16 blades, 6 in long", "18° blades 5 in long with folded tips, 1 in narrow end"},
		Source:   "each seam moves the blades in by seam ÷ sin(angle ÷ 2); a folded tip loses one more seam (tourmalinethymequilts.com); the rest is geometry.",
		Work:     workWedgeRing,
		Other:    otherEnds,
	}
}

// otherEnds changes between plain ends and folded tips.
func otherEnds(now, before map[string]Value) {
	word := "folded"
	if before["ends"].Word == word {
		word = "plain"
	}
	now["ends"] = Value{Kind: aWord, Word: word}
}

func workWedgeRing(w *work) error {
	if w.word("trouble") != "" {
		return workFlatness(w)
	}
	angle, _ := w.value("angle")
	r := calc.RingRequest{
		Conventions: w.conventions("seam"),
		Blades:      w.count("blades"), Angle: measure.Angle(angle.Number), Turn: turnOf(w),
		Length: w.length("blade_length"), Wide: w.length("wide_end"), Strip: w.length("strip_width"),
		Across: w.length("ring_across"), Opening: w.length("opening_across"),
		Turning: w.assumeLength("turn_under"), Overlap: w.assumeLength("cover_overlap"), Margin: w.lengthOr("margin", "margin"),
	}
	switch w.wordOr("ends", "ends") {
	case "folded":
		r.End = calc.FoldedEnd
	case "rounded":
		r.End = calc.RoundedEnd
	}
	assumedNarrow := false
	if w.given("narrow_end") {
		r.Narrow = w.length("narrow_end")
	} else if r.Wide == 0 && r.Opening == 0 || r.Length == 0 {
		r.Narrow, assumedNarrow = w.assumeLength("narrow_end"), true
	}
	ring, err := calc.Ring(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.Ring(ring, r.System) })
	w.draws(func() scene.Scene { return scene.Blade(ring, r.System) })
	if r.End == calc.FoldedEnd {
		w.draws(func() scene.Scene { return scene.FoldedTip(ring, r.System) })
	}
	w.prints(func() scene.Templates { return scene.RingTemplates(ring, r.System) })
	w.size = measure.Size{Width: ring.RingAcross, Length: ring.RingAcross}
	w.figure("blades", ring.Blades)
	w.figure("angle", ring.Angle)
	w.figure("blade_length", ring.BladeLength)
	w.figure("wide_end", ring.WideEnd)
	w.figure("narrow_end", ring.NarrowEnd)
	w.figure("ring_across", ring.RingAcross)
	w.figure("opening_across", ring.OpeningAcross)
	w.figure("cover_circle", ring.CoverCircle)
	w.figure("cover_cut", ring.CoverCut)
	w.figure("background_square", ring.BackgroundSquare)

	if w.given("ring_across") {
		w.say("Cut the blades %v long: the ring is then %v across once sewn, with an opening of %v in the middle.", ring.BladeLength, ring.RingAcross, ring.OpeningAcross)
	} else {
		w.say("%v across once sewn, with an opening of %v in the middle.", ring.RingAcross, ring.OpeningAcross)
	}
	w.say("Cover it with a circle that finishes at %v: cut %v and turn %v under. A background of %v square leaves %v all round.",
		ring.CoverCircle, ring.CoverCut, r.Turning, ring.BackgroundSquare, r.Margin)
	line := w.format("Each of the %v blades: %v, %v at the wide end, %v at the narrow end.", ring.Blades, ring.Angle, ring.WideEnd, ring.NarrowEnd)
	if assumedNarrow {
		line += w.format(" I took %v for the narrow end; measure your template and tell me if it differs, the opening hangs on it.", ring.NarrowEnd)
	}
	w.say("%s", line)
	if r.End == calc.FoldedEnd {
		w.say("Folded tips stand out %v beyond the shoulders.", ring.Exact.TipDepth)
	}
	if len(ring.Sections) > 0 && ring.Sections[0].Count <= 5 {
		s := ring.Sections[0]
		w.say("Sew it in %v sections of %v, and check each before you join them.", s.Count, s.Blades)
	}
	w.show(ring.Working)
	w.does(cutting, pressing)
	return nil
}
