package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const (
	copingWord   words.Concept = "coping"
	piecedBorder words.Concept = "pieced border"
)

// copingTopic: plain strips that make a pieced border fit.
func copingTopic() Topic {
	return Topic{
		Name: "coping", Group: SizeIt, Title: "plain strips that make a pieced border fit",
		Terms: []words.Term{
			{Concept: copingWord, Words: "coping, coping strip, coping border, spacer, spacer strip, spacer border, plain strip to fit, make it fit, make a pieced border fit, so it fits, fit the border, filler strip, filler border, make the border fit, to fit a pieced border"},
			{Concept: piecedBorder, Words: "pieced border, border of unit, border of block, piano key border, sawtooth border, border made of, pieced border of, border unit, border units"},
		},
		Says: says(named, copingWord, piecedBorder),
		Inputs: []input{
			quiltSize(),
			{name: "unit", kind: aLength, usual: [2]float64{1, 14}, prior: 4, after: of(unitPc, block, squarePc, piecedBorder, finished), before: of(unitPc, piecedBorder, block, ofWord), label: "one unit of the border",
				ask: "How big is one unit of the pieced border, finished?", offer: []string{"4 in", "5 in"}},
			{name: "side", kind: aLength, usual: [2]float64{10, 140}, after: of(sideOfIt, long, edge, wide), before: of(sideOfIt, edge), label: "the side"},
			seamAllowance(),
		},
		Needs:    [][]string{{"quilt", "side"}, {"unit"}},
		Examples: []string{"coping strips for a 46 x 58 quilt with 5 in border units", "pieced border of 4 in units on 50 x 62"},
		Source:   "enough whole units to pass the side, and half of what they are over on each edge (patchworktimes.com, July 2009).",
		Work:     workCoping,
	}
}

func workCoping(w *work) error {
	v, twoSides := w.value("quilt")
	if !twoSides {
		v.Size = calc.PrecutSquare(w.length("side"))
	}
	c := w.conventions("seam")
	asked := calc.CopingRequest{Conventions: c, Quilt: v.Size, Unit: w.finished("unit", c.Seam)}
	r, err := calc.Coping(asked)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.Coping(asked, r) })
	if v.Size.Width == v.Size.Length {
		return sayCopingSide(w, r)
	}
	w.size = measure.Size{Width: r.Width.Border, Length: r.Length.Border}
	for _, side := range []struct {
		name   string
		s      calc.CopingSide
		strips string
	}{{"width", r.Width, "left and right"}, {"length", r.Length, "top and bottom"}} {
		w.figure(side.name+".units", side.s.Units)
		w.figure(side.name+".strip_finished", side.s.StripFinished)
		w.figure(side.name+".strip_cut", side.s.StripCut)
		if side.s.StripFinished == 0 {
			w.say("The %s of the quilt takes %v units and needs no strip.", side.name, side.s.Units)
			continue
		}
		w.say("The %s takes %v units, %v: add strips that finish at %v %s, cut %v.", side.name, side.s.Units, side.s.Border, side.s.StripFinished, side.strips, side.s.StripCut)
	}
	w.say("Before its border the quilt is then %v.", w.size)
	w.show(r.Working)
	w.does(cutting)
	return nil
}

// sayCopingSide answers for one side, or for four equal ones.
func sayCopingSide(w *work, r calc.CopingResult) error {
	s := r.Width
	w.figure("units", s.Units)
	w.figure("strip_finished", s.StripFinished)
	w.figure("strip_cut", s.StripCut)
	if s.StripFinished == 0 {
		w.say("%v units fit exactly; no strip is needed.", s.Units)
	} else {
		w.say("%v units make %v: add strips that finish at %v on both edges, cut %v.", s.Units, s.Border, s.StripFinished, s.StripCut)
	}
	w.show(r.Working[:len(r.Working)/2])
	w.does(cutting)
	return nil
}
