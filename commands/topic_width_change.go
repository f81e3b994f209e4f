package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/words"
)

const (
	asWidth    words.Concept = "as"
	widthOther words.Concept = "another width"
)

// widthChangeTopic: fabric of one width bought in another.
func widthChangeTopic() Topic {
	return Topic{
		Name: "width-change", Group: BuyIt, Title: "fabric of one width bought in another",
		Terms: []words.Term{
			{Concept: asWidth, Words: "as, but mine is, but my fabric is, but i have, but it comes, instead of the, replaces, replace, in place of, swap, switch to, only comes in, comes in, if i buy, if it's, if the fabric is, and mine is, but the shop has, i found, but i found, what of, what about in"},
			{Concept: widthOther, Words: "another width, other width, different width, wider fabric, narrower fabric, width change, from another width, wider cloth, wider"},
		},
		About: of(asWidth, widthOther, instead, convertWord, clothAmount),
		Says:  append(says(7, widthOther), says(3, asWidth, wide, usable, clothAmount, instead)...),
		Inputs: []input{
			{name: "cloth", kind: aCloth, prior: 4, usual: [2]float64{9, 1500}, after: of(ofWord), before: of(need), not: of(wide, usable), label: "the fabric", ask: "How much fabric of which width, and as which other width? For example: 3 yd of 44 in as 60 in."},
			{name: "from", kind: aLength, usual: [2]float64{30, 120}, prior: 4, before: of(ofWord, atPrice), label: "the width it is given in", ask: "How wide is the fabric that it is given in?", offer: []string{"44 in"}},
			{name: "to", kind: aLength, usual: [2]float64{30, 120}, prior: 2, before: of(asWidth, upTo, howMuch), after: of(instead), label: "the other width", ask: "How wide is the other fabric?", offer: []string{"60 in"}},
			{name: "pieces", kind: aCount, after: of(squarePc, rectangle, piece), label: "the pieces"},
			{name: "size", kind: aSize, after: of(rectangle, piece), before: of(rectangle, piece), usual: [2]float64{1, 30}, label: "the size of the pieces"},
			oneWayPrint(),
		},
		Needs:    [][]string{{"cloth"}, {"from"}, {"to"}},
		Examples: []string{"3 yd of 44 in as 60 in fabric", "pattern asks 4 yards of 42, but I have 58 in wide"},
		Source:   "by area, as a first guess only: common practice, no source.",
		Work:     workWidthChange,
	}
}

func workWidthChange(w *work) error {
	v, _ := w.value("size")
	r := calc.WidthChangeRequest{Conventions: w.conventions(), Cloth: measure.Cloth(w.length("cloth")), From: w.length("from"), To: w.length("to"), Count: w.count("pieces"), Piece: v.Size, OneWay: w.word("print") != ""}
	if v.Size == (measure.Size{}) {
		r.Count = 0
	}
	c, err := calc.WidthChange(r)
	if err != nil {
		return err
	}
	w.figure("buy", c.Buy)
	w.say("Buy %v of the %v fabric.", c.Buy, r.To)
	if c.ByArea {
		w.say("That is by area, a first guess: pieces may lie worse in the other width. Tell me the pieces and I lay them out.")
	} else {
		w.say("The pieces are laid out in it, so it will do.")
	}
	w.show(c.Working)
	return nil
}
