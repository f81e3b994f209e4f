package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const (
	quarterCirc words.Concept = "quarter circle"
	scallopWord words.Concept = "scallop"
	radiusWord  words.Concept = "radius"
	appliqueWd  words.Concept = "applique"
	turnUnderWd words.Concept = "turn under"
	drunkards   words.Concept = "curved block"
	deepWord    words.Concept = "deep"
	roundedCrn  words.Concept = "rounded corners"
)

// curvesTopic: circles, quarter circles and scallops.
func curvesTopic() Topic {
	return Topic{
		Name: "curves", Group: SizeIt, Title: "circles, quarter circles, scalloped edges and rounded corners",
		Terms: []words.Term{
			{Concept: quarterCirc, Words: "quarter circle, quarter circle block, quarter circle template"},
			{Concept: drunkards, Words: "drunkard's path, drunkards path, curved piecing, pie and background, pie piece"},
			{Concept: scallopWord, Words: "scallop, scalloped, scalloped edge, scallop edge, scalloped border, scallop edging"},
			{Concept: radiusWord, Words: "radius"},
			{Concept: appliqueWd, Words: "applique, appliqué, appliquéd, appliqued, yoyo, yo yo"},
			{Concept: turnUnderWd, Words: "turn under, turned under, turn in, turning, turning allowance, turned, turn it under, to turn under, turnings"},
			{Concept: roundedCrn, Words: "rounded corner, round corner, curved corner, round the corners, rounded off corner"},
			{Concept: deepWord, Words: "deep, depth, in depth"},
		},
		Says: append(append(append(says(11, scallopWord, drunkards, roundedCrn), append(says(9, quarterCirc), against(blade)...)...), says(6, circle)...), says(3, around, appliqueWd, turnUnderWd, radiusWord, howFar)...),
		Inputs: []input{
			{name: "across", kind: aLength, usual: [2]float64{0.75, 120}, prior: 4, when: of(circle, appliqueWd, across, turnUnderWd, around), after: of(circle, across, finished, appliqueWd), before: of(circle, across, finished), not: of(turnUnderWd, seam, radiusWord, scallopWord, deepWord), label: "the circle across",
				ask: "How big is the circle across, finished?", offer: []string{"6 in"}},
			{name: "radius", kind: aLength, usual: [2]float64{0.5, 30}, after: of(radiusWord, quarterCirc, drunkards, roundedCrn), before: of(radiusWord, quarterCirc, roundedCrn), label: "the radius"},
			{name: "turning", kind: aLength, zero: true, usual: [2]float64{0.1, 0.5}, after: of(turnUnderWd, seam), before: of(turnUnderWd, seam), label: "what is turned under"},
			{name: "edge", kind: aLength, usual: [2]float64{10, 200}, prior: 3, after: of(edge, sideOfIt, long, scallopWord), before: of(edge, sideOfIt, along, onEdge), when: of(scallopWord), label: "the edge"},
			{name: "scallops", kind: aCount, usual: [2]float64{2, 60}, after: of(scallopWord), when: of(scallopWord), label: "how many scallops"},
			{name: "scallop", kind: aLength, usual: [2]float64{2, 20}, prior: 2, after: of(scallopWord, wide, across, eachWord), before: of(scallopWord, wide), when: of(scallopWord), label: "one scallop across"},
			{name: "depth", kind: aLength, usual: [2]float64{0.5, 6}, after: of(deepWord, high), before: of(deepWord), label: "the depth"},
			{name: "quilt", kind: aSize, usual: [2]float64{10, 140}, prior: 5, after: of(quilt), before: of(quilt), when: of(scallopWord, roundedCrn), label: "the quilt"},
			{name: "blocks", kind: aCount, usual: [2]float64{2, 400}, after: of(block, quarterCirc), label: "how many blocks"},
			{name: "block", kind: aLength, usual: [2]float64{2, 16}, after: of(block), before: of(block), when: of(quarterCirc, drunkards), label: "the block"},
			{name: "shape", kind: aWord, words: map[words.Concept]string{quarterCirc: "quarter", drunkards: "quarter", scallopWord: "scallops", roundedCrn: "corners"}},
		},
		Needs:    [][]string{{"across", "radius", "edge", "scallop", "scallops", "quilt", "block"}},
		Examples: []string{"circle finishing 6 in, what do I cut", "scallops of 8 in along a 64 in edge"},
		Source:   "around = π × across; quarter circles are cut a seam larger for the pie and a seam smaller for the background (makerspy.blogspot.com, May 2014).",
		Work:     workCurves,
	}
}

const onEdge words.Concept = "on an edge"

func workCurves(w *work) error {
	switch w.word("shape") {
	case "quarter":
		return workQuarterCircle(w)
	case "scallops":
		return workScallops(w)
	case "corners":
		return workRoundedCorners(w)
	}
	r := calc.CircleRequest{Conventions: w.conventions(), Across: w.length("across")}
	if w.given("radius") && r.Across == 0 {
		r.Across = 2 * w.length("radius")
	}
	if r.Across == 0 {
		return w.needs("across")
	}
	r.Turning = w.lengthOr("turning", "turn_under")
	if v := w.values["across"]; v.Cut == cutSize {
		r.Across -= 2 * r.Turning
	}
	c, err := calc.Circle(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.RoundCircle(c, r.System) })
	w.prints(func() scene.Templates { return scene.CircleTemplates(c, r.System) })
	w.figure("around", c.Exact.Around)
	w.figure("template_across", c.TemplateAcross)
	w.figure("cut_across", c.CutAcross)
	w.say("Cut it %v across: it finishes at %v with %v turned under all round.", c.CutAcross, c.TemplateAcross, r.Turning)
	w.say("The finished edge is %v round.", c.Around)
	w.show(c.Working)
	w.does(cutting, handSewing)
	return nil
}

func workQuarterCircle(w *work) error {
	r := calc.QuarterCircleRequest{Conventions: w.conventions("seam"), Blocks: w.count("blocks")}
	r.Radius = w.finished("radius", r.Seam)
	if w.given("block") {
		r.Block = w.finished("block", r.Seam)
	}
	if r.Radius == 0 && w.given("across") {
		r.Radius = w.length("across") / 2
	}
	if r.Radius == 0 {
		return &question{input: "radius", text: "What is the finished radius of the quarter circle?", choices: []string{"3 in", "4 in"}}
	}
	q, err := calc.QuarterCircle(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.QuarterCircle(q, r.System) })
	w.prints(func() scene.Templates { return scene.QuarterCircleTemplates(q, r.System) })
	w.figure("radius", q.Radius)
	w.figure("pie_radius", q.PieRadius)
	w.figure("background_radius", q.BackgroundRadius)
	w.figure("pie_square", q.PieSquare)
	w.figure("background_square", q.BackgroundSquare)
	w.figure("around", q.SeamArc)
	w.say("The pie is cut with a radius of %v, the background with %v; the seam lies at %v.", q.PieRadius, q.BackgroundRadius, q.Radius)
	w.say("Cut pies from squares of %v and backgrounds from squares of %v; the block finishes at %v.", q.PieSquare, q.BackgroundSquare, q.Block)
	w.say("Pin the middles and the ends, and ease between.")
	w.show(q.Working)
	w.does(cutting)
	return nil
}

func workScallops(w *work) error {
	r := calc.ScallopRequest{Conventions: w.conventions(), Across: w.length("scallop"), Scallops: w.count("scallops"), Depth: w.length("depth")}
	v, hasQuilt := w.value("quilt")
	edges := []measure.Length{w.length("edge")}
	if hasQuilt {
		edges, w.size = []measure.Length{v.Size.Width, v.Size.Length}, v.Size
	}
	if edges[0] == 0 {
		return &question{input: "edge", text: "How long is the edge?", choices: []string{"60 in"}}
	}
	if r.Across == 0 && r.Scallops == 0 {
		return &question{input: "scallop", text: "How wide is each scallop to be, about?", choices: []string{"6 in", "8 in"}}
	}
	names := []string{""}
	if hasQuilt {
		names = []string{"top.", "side."}
	}
	for i, e := range edges {
		r.Edge = e
		s, err := calc.Scallops(r)
		if err != nil {
			return err
		}
		w.draws(func() scene.Scene { return scene.Scallops(s, w.system) })
		w.prints(func() scene.Templates { return scene.ScallopTemplates(s, w.system) })
		w.figure(names[i]+"scallops", s.Scallops)
		w.figure(names[i]+"each_across", s.EachAcross)
		w.figure(names[i]+"arc", s.Arc)
		if i == 0 {
			w.figure("depth", s.Depth)
		}
		w.say("%v along %v, each %v across; the curve of one is %v, of all %v.", counted(s.Scallops, "scallop"), e, s.EachAcross, s.Arc, s.Around)
		w.show(s.Working)
	}
	w.say("Bind scallops with bias: ask me for bias binding with that length.")
	return nil
}

func workRoundedCorners(w *work) error {
	v, ok := w.value("quilt")
	if !ok {
		return &question{input: "quilt", text: "How big is the quilt, width by length?", choices: []string{"54 x 68"}}
	}
	if !w.given("radius") {
		return &question{input: "radius", text: "What is the radius of the corners?", choices: []string{"4 in"}}
	}
	r, err := calc.RoundedCorners(calc.RoundedCornersRequest{Conventions: w.conventions(), Quilt: v.Size, Radius: w.length("radius")})
	if err != nil {
		return err
	}
	w.size = v.Size
	w.figure("around", r.Around)
	w.say("%v round the edge, %v less than with square corners.", r.Around, r.Saved)
	w.say("The corners want bias binding.")
	w.show(r.Working)
	return nil
}
