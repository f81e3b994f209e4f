package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const triangle60 words.Concept = "60° triangle"

// triangles60Topic: triangles with three equal sides, cut from strips.
func triangles60Topic() Topic {
	return Topic{
		Name: "triangles-60", Group: CutIt, Title: "60° triangles cut from strips",
		Terms: []words.Term{
			{Concept: triangle60, Words: "equilateral triangle, equilateral, pyramid, thousand pyramids, sixty degree triangle"},
		},
		Says: append(says(12, triangle60), append(says(6, triangle), against(onPoint, block)...)...),
		Inputs: []input{
			{name: "angle", kind: anAngle, prior: 2, usual: [2]float64{60, 60}, after: of(angleWord), before: of(angleWord), label: "the angle"},
			{name: "strip_width", kind: aLength, usual: [2]float64{1.25, 12}, prior: 2, after: of(strip, wide, cutVerb, unfinished), before: of(strip, fromWord, unfinished, cutVerb), not: of(finished, high), label: "the strip", replaces: []string{"height", "side"},
				ask: "How wide are the strips, or how high are the triangles, finished?", offer: []string{"3½ in strips", "3 in high"}},
			{name: "height", kind: aLength, usual: [2]float64{0.75, 12}, prior: 2, after: of(high, finished), before: of(high, finished), not: of(strip), label: "the height, finished", replaces: []string{"strip_width", "side"}},
			{name: "side", kind: aLength, usual: [2]float64{0.75, 14}, after: of(sideOfIt, eachSide), before: of(sideOfIt), label: "one side, finished", replaces: []string{"strip_width", "height"}},
			{name: "triangles", kind: aCount, usual: [2]float64{6, 2000}, prior: 1, after: of(triangle, triangle60), before: of(need), label: "how many triangles"},
			quiltSize(),
			usableWidth(), seamAllowance(),
		},
		Needs:    [][]string{{"strip_width", "height", "side"}},
		Examples: []string{"60 degree triangles from 3½ in strips", "equilateral triangles 5 in high for 40 x 50"},
		Source:   "strip = finished height + ¾; the side loses 0.866 in to ¼ in seams (mythicseam.com; blotchandthrum.com, August 2013).",
		Work:     workTriangles60,
	}
}

func workTriangles60(w *work) error {
	if v, ok := w.value("angle"); ok && v.Number != 60 {
		return w.cannot("Triangles of three equal sides have 60°. For wedges of %v ask for a ring or a fan; right-angled ones are half-square or quarter-square triangles.", measure.Angle(v.Number))
	}
	r := calc.TriangleRequest{Triangles: w.count("triangles")}
	r.Conventions = w.conventions("usable_width", "seam")
	switch {
	case w.given("strip_width"):
		r.Strip = w.length("strip_width")
	case w.given("height"):
		r.Height = w.length("height")
		if v := w.values["height"]; v.Cut == cutSize {
			r.Height, r.Strip = 0, v.Length
		}
	default:
		r.Side = w.length("side")
	}
	if v, ok := w.value("quilt"); ok {
		r.Quilt, w.size = v.Size, v.Size
	}
	t, err := calc.Triangles60(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.Triangle(t, r.System) })
	w.draws(func() scene.Scene { return scene.TrianglesOnStrip(t, r.System) })
	w.prints(func() scene.Templates { return scene.TriangleTemplates(t, r.System) })
	w.figure("strip_width", t.StripWidth)
	w.figure("per_strip", t.PerStrip)
	if t.Triangles > 0 {
		w.figure("triangles", t.Triangles)
		w.figure("strips", t.Strips)
		w.figure("buy", t.Buy)
		w.say("%v, %v wide, with %v triangles from each, up and down: buy %v.", counted(t.Strips, "strip"), t.StripWidth, t.PerStrip, t.Buy)
	} else {
		w.say("%v triangles from a strip %v wide, cut up and down.", t.PerStrip, t.StripWidth)
	}
	w.say("They finish %v high and %v a side.", t.Height, t.Side)
	if l := t.Layout; l.Rows > 0 {
		w.figure("rows", l.Rows)
		w.figure("across", l.Across)
		w.say("%v rows of %v make %v, with half triangles at the ends of each row.", l.Rows, l.Across, l.Size)
	}
	w.show(t.Working)
	w.does(cutting)
	return nil
}
