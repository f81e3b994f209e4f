package commands

import (
	"counterhand/calc"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const (
	foldedEdge words.Concept = "folded edge triangles"
	baseWord   words.Concept = "base"
)

// edgeTrianglesTopic: folded triangles along an edge.
func edgeTrianglesTopic() Topic {
	return Topic{
		Name: "edge-triangles", Group: FinishIt, Title: "folded triangles along the edge, also called prairie points",
		Terms: []words.Term{
			{Concept: foldedEdge, Words: "prairie point, folded edge triangle, folded triangle, sawtooth edge, shark teeth, folded point edging, folded triangle edging, edge point, folded edging"},
			{Concept: baseWord, Words: "base, across the base, at the base, along the seam"},
		},
		Says: says(14, foldedEdge),
		Inputs: []input{
			quiltSize(),
			{name: "base", kind: aLength, usual: [2]float64{1, 8}, prior: 4, after: of(wide, baseWord, across, finished, foldedEdge), before: of(baseWord, wide, finished), not: of(squarePc, high, unfinished, cutVerb), label: "the base of a triangle, finished",
				ask: "How big is the quilt and how wide is each point, or what squares do you fold?", offer: []string{"60 x 72 with 3½ in squares"}},
			{name: "height", kind: aLength, usual: [2]float64{0.5, 5}, after: of(high), before: of(high), label: "the height of a triangle"},
			{name: "square", kind: aLength, usual: [2]float64{1.5, 8}, after: of(squarePc, unfinished), before: of(squarePc, fromWord, cutVerb), label: "the square to fold"},
			{name: "have", kind: aCount, when: of(have, enough), after: of(squarePc), label: "the squares you have"},
			usableWidth(),
		},
		Needs:    [][]string{{"base", "height", "square"}},
		Examples: []string{"prairie points 3 in wide, what squares", "prairie points from 3½ in squares for 60 x 72, how many"},
		Source:   "a square folded twice shows its side less two seams along the seam (quiltingdaily.com, folded-triangle edging).",
		Work:     workEdgeTriangles,
	}
}

func workEdgeTriangles(w *work) error {
	r := calc.EdgeTrianglesRequest{
		Conventions: w.conventions("seam"), Base: w.length("base"), Height: w.length("height"), Square: w.length("square"), Have: w.count("have"),
	}
	if v, ok := w.value("quilt"); ok {
		r.Conventions = w.conventions("seam", "usable_width")
		r.Quilt, w.size = v.Size, v.Size
	}
	if r.Square > 0 {
		r.Base, r.Height = 0, 0
	} else if r.Base > 0 {
		r.Height = 0
	}
	e, err := calc.EdgeTriangles(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.EdgeTriangles(r, e) })
	w.figure("square", e.Square)
	w.figure("across_each", e.AcrossEach)
	if e.Points > 0 {
		w.figure("points", e.Points)
		w.figure("side_points", e.SidePoints)
		w.figure("top_points", e.TopPoints)
		w.figure("buy", e.Buy)
		w.enoughCount(e.InHand, "square")
		w.say("%v points: %v on each side and %v at top and bottom, from squares of %v: buy %v.", e.Points, e.SidePoints, e.TopPoints, e.Square, e.Buy)
		w.say("Spaced evenly they stand %v apart on the sides and %v at top and bottom.", e.SideSpacing, e.TopSpacing)
	} else {
		w.say("Cut squares of %v.", e.Square)
	}
	w.say("Each shows %v along the seam and %v high.", e.AcrossEach, e.Height)
	w.show(e.Working)
	w.does(cutting, pressing)
	return nil
}
