package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/words"
)

const shrinkWord words.Concept = "shrinkage"

// shrinkageTopic: fabric that shrinks in the wash.
func shrinkageTopic() Topic {
	return Topic{
		Name: "shrinkage", Group: BuyIt, Title: "fabric that shrinks in the wash",
		Terms: []words.Term{
			{Concept: shrinkWord, Words: "shrinks, shrinkage, shrinking, shrunk, shrink in the wash, prewash, prewashed, pre wash, prewashing, wash, washing, washed, after washing, in the wash, loses, lose, lost, loss, takes off, once washed, takes"},
		},
		About: of(shrinkWord, shrinkVerb),
		Says:  append(says(6, shrinkWord), says(4, percentWord, shrinkVerb)...),
		Inputs: []input{
			{name: "need", kind: aCloth, anyUnit: true, prior: 4, usual: [2]float64{4, 1500}, after: of(shrinkWord, fabric, need), before: of(need, have, wantWord), label: "what you need after washing", ask: "How much do you need after washing?", offer: []string{"2 yd"}},
			{name: "shrinkage", kind: aPercent, prior: 3, usual: [2]float64{0.5, 20}, after: of(percentWord, shrinkWord), before: of(shrinkWord, shrinkVerb), label: "how much it shrinks", ask: "By how much does it shrink, in percent?", offer: []string{"3 %", "5 %"}},
		},
		Needs:    [][]string{{"need"}, {"shrinkage"}},
		Examples: []string{"shrinks 5 %, I need 2 yd after washing", "3 m prewashed, 4 % shrinkage"},
		Source:   "need ÷ (1 − shrinkage), not need × (1 + shrinkage); 3 to 5 % are usual (quiltingboard.com).",
		Work:     workShrinkage,
	}
}

func workShrinkage(w *work) error {
	v, _ := w.value("shrinkage")
	need := measure.Cloth(w.length("need"))
	s, err := calc.Shrinkage(calc.ShrinkageRequest{Conventions: w.conventions(), Need: need, Percent: v.Number})
	if err != nil {
		return err
	}
	w.figure("buy", s.Buy)
	w.say("Buy %v.", s.Buy)
	w.say("%v ÷ (1 − %s %%) is %v exactly, so that %v is left after a wash that takes %s %%.", need, trimmed(v.Number, 2), s.Before, need, trimmed(v.Number, 2))
	w.show(s.Working)
	return nil
}
