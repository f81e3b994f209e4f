package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const halfRect words.Concept = "half-rectangle triangle"

// halfRectanglesTopic: rectangles of two long triangles.
func halfRectanglesTopic() Topic {
	return Topic{
		Name: "half-rectangles", Group: CutIt, Title: "half-rectangle triangles, leaning left or right",
		Terms: []words.Term{
			{Concept: halfRect, Words: "half rectangle, half rectangle triangle, hrt, split rectangle, half rectangle unit, half-rectangle, long triangle, h r t, half rec"},
			{Concept: leftLean, Words: "left, leaning left, left leaning"},
			{Concept: rightLean, Words: "leaning right, right leaning"},
		},
		Says: says(13, halfRect),
		Inputs: []input{
			{name: "size", kind: aSize, usual: [2]float64{0.5, 16}, prior: 6, after: of(halfRect, finished, unitPc), before: of(halfRect, finished), label: "the size, finished",
				ask: "How big is each half rectangle, finished?", offer: []string{"2 x 4", "3 x 6"}},
			{name: "left", kind: aCount, after: of(leftLean), before: of(leftLean), label: "how many lean left"},
			{name: "right", kind: aCount, after: of(rightLean, yes), before: of(rightLean), label: "how many lean right"},
			{name: "units", kind: aCount, usual: [2]float64{2, 500}, prior: 2, after: of(halfRect, unitPc), before: of(need, makeIt), label: "how many"},
			seamAllowance(),
		},
		Needs:    [][]string{{"size"}},
		Examples: []string{"half rectangles 2 x 4", "half rectangle triangles 3 x 6, 8 left and 8 right"},
		Source:   "both sides grow by 1 + seam ÷ inradius: geometry; left and right cannot be turned into each other (quiltingboard.com, 3103596).",
		Work:     workHalfRectangles,
	}
}

const (
	leftLean  words.Concept = "leaning left"
	rightLean words.Concept = "leaning right"
)

func workHalfRectangles(w *work) error {
	v, _ := w.value("size")
	c := w.conventions("seam")
	size := v.Size
	if v.Cut == cutSize {
		size = measure.Size{Width: size.Width - 2*c.Seam, Length: size.Length - 2*c.Seam}
	}
	r := calc.HalfRectangleRequest{Conventions: c, Width: size.Width, Height: size.Length, Left: w.count("left"), Right: w.count("right")}
	if n := w.count("units"); n > 0 && r.Left == 0 && r.Right == 0 {
		r.Left, r.Right = n-n/2, n/2
	}
	h, err := calc.HalfRectangles(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.HalfRectangles(r, h) })
	w.prints(func() scene.Templates { return scene.HalfRectangleTemplates(h, r.System) })
	w.figure("cut_width", h.CutWidth)
	w.figure("cut_height", h.CutHeight)
	w.figure("unfinished_width", h.Unfinished.Width)
	w.figure("unfinished_height", h.Unfinished.Length)
	w.say("Cut rectangles of %v and cut each once from corner to corner.", measure.Size{Width: h.CutWidth, Length: h.CutHeight})
	w.say("Sewn they are trimmed to %v and finish at %v; %v leaves more room to trim.", h.Unfinished, size, h.Oversize)
	if h.Rectangles > 0 {
		w.figure("rectangles", h.Rectangles)
		w.say("Of each colour it takes %v: %v for those leaning left, %v for those leaning right.", counted(h.Rectangles, "rectangle"), h.LeftRectangles, h.RightRectangles)
	}
	w.say("Left- and right-leaning ones cannot be turned into each other: cut half of the rectangles on the one diagonal and half on the other.")
	w.show(h.Working)
	w.does(cutting)
	return nil
}
