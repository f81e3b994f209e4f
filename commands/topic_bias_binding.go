package commands

import (
	"counterhand/calc"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const biasWord words.Concept = "bias"

// biasBindingTopic: the square that a length of bias binding is cut from.
func biasBindingTopic() Topic {
	return Topic{
		Name: "bias-binding", Group: FinishIt, Title: "bias binding from one square, for curved edges",
		Terms: []words.Term{
			{Concept: biasWord, Words: "bias, bias binding, bias strip, continuous bias, bias tape, cut on the bias, on the bias, continuous bias binding, bias bound"},
		},
		Says: says(18, biasWord),
		Inputs: []input{
			{name: "length", kind: aLength, anyUnit: true, usual: [2]float64{40, 900}, prior: 5, after: of(long, need), before: of(need), not: of(wide, circle, across), label: "the length of bias",
				ask: "How much bias do you need, in length, or what is it for?", offer: []string{"300 in", "a 50 in circle"}},
			{name: "across", kind: aLength, usual: [2]float64{10, 120}, after: of(circle, across), before: of(circle, across), when: of(circle, across), label: "the circle across"},
			quiltSize(),
			{name: "strip_width", kind: aLength, usual: [2]float64{1, 5}, prior: 3, after: of(strip, wide, biasWord), before: of(strip, cutVerb, wide, biasWord, ofWord), not: of(long), label: "the strip width"},
			{name: "extra", kind: aLength, usual: [2]float64{2, 30}, after: of(extra), before: of(extra), label: "the extra for corners and joins"},
			usableWidth(),
		},
		Needs:    [][]string{{"length", "across", "quilt"}},
		Examples: []string{"bias binding 300 in of 2¼", "bias for a 50 in circle, cut 2¼"},
		Source:   "a square q makes q(q − 1) ÷ strip width, its two seams taken off (mydecozo.co.uk, continuous piping strips; quiltersinfo.com, July 2003).",
		Work:     workBiasBinding,
	}
}

const ofWord words.Concept = "of"

func workBiasBinding(w *work) error {
	r := calc.BiasBindingRequest{Conventions: w.conventions("usable_width"), StripWidth: w.lengthOr("strip_width", "binding_strip")}
	switch {
	case w.given("across"):
		r.Edge, r.Extra = calc.CircleEdge(w.length("across")), w.lengthOr("extra", "binding_extra")
	case w.given("quilt"):
		v, _ := w.value("quilt")
		w.size = v.Size
		r.Edge, r.Extra = calc.RectangleEdge(v.Size), w.lengthOr("extra", "binding_extra")
	default:
		r.Edge, r.Extra = calc.MeasuredEdge(w.length("length")), w.length("extra")
	}
	b, err := calc.BiasBinding(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.BiasBinding(r, b) })
	w.figure("length_needed", b.LengthNeeded)
	w.figure("square_side", b.SquareSide)
	w.figure("strip_width", r.StripWidth)
	w.figure("buy", b.Buy)
	if b.Squares > 1 {
		w.figure("squares", b.Squares)
		w.say("%v squares of %v, cut into bias of %v: buy %v.", b.Squares, b.SquareSide, r.StripWidth, b.Buy)
	} else {
		w.say("A square of %v, cut into bias of %v: buy %v.", b.SquareSide, r.StripWidth, b.Buy)
	}
	w.say("It really makes %v; you need %v.", b.LengthMade.RoundDown(r.LimitStep), b.LengthNeeded)
	if b.Separate.Count > 0 {
		w.say("Cut one by one, slanting across the whole width, it is %v of %v, from %v of fabric.", counted(b.Separate.Count, "strip"), b.Separate.Length.RoundDown(r.LimitStep), b.Separate.Need)
	}
	w.show(b.Working)
	w.does(cutting)
	return nil
}
