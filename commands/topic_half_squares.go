package commands

import (
	"counterhand/calc"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const (
	halfSquare  words.Concept = "half-square triangle"
	pinwheel    words.Concept = "pinwheel"
	squareInHnd words.Concept = "square in hand"
)

// atATimeInput is how many units are made at once.
func atATimeInput() input {
	return input{name: "at_a_time", kind: aCount, usual: [2]float64{1, 8}, after: of(atATime), before: of(atATime), label: "how many at a time"}
}

// wayInput says a method by name.
func wayInput() input {
	return input{name: "way", kind: aWord, words: map[words.Concept]string{oneAtATime: "one", fourAtATime: "four", noWaste: "four", eightAtATime: "eight", twoAtATime: "two"}, replaces: []string{"at_a_time"}}
}

const (
	twoAtATime   words.Concept = "two at a time"
	fourAtATime  words.Concept = "four at a time"
	eightAtATime words.Concept = "eight at a time"
	noWaste      words.Concept = "no waste"
)

// methodTerms are the words for the methods of making units in numbers.
var methodTerms = []words.Term{
	{Concept: twoAtATime, Words: "2 at a time, 2 at once, in pairs"},
	{Concept: fourAtATime, Words: "4 at a time, 4 at once, sewn all round, stitched all round, sewn all the way round, sewn around all four sides, 4 sides"},
	{Concept: eightAtATime, Words: "8 at a time, 8 at once, magic 8, eights"},
	{Concept: noWaste, Words: "no waste, without waste, nowaste, no-waste, fast geese"},
}

// atATime gives how many units are made at once, 0 where nothing was said.
func (w *work) atATime() int {
	if n := w.count("at_a_time"); n > 0 {
		return n
	}
	return map[string]int{"one": 1, "two": 2, "four": 4, "eight": 8}[w.word("way")]
}

// halfSquaresTopic: squares of two triangles.
func halfSquaresTopic() Topic {
	return Topic{
		Name: "half-square-triangles", Group: CutIt, Title: "half-square triangles, one, two, four or eight at a time",
		Terms: append(methodTerms,
			words.Term{Concept: halfSquare, Words: "half square triangle, half square, hst, half square triangle unit, hst unit, hst block, half-square, triangle square, half sq triangle, half square tri, triangle squares, h s t"},
			words.Term{Concept: pinwheel, Words: "pinwheel, broken dishes, pinwheel block"},
		),
		Says: append(says(12, halfSquare), says(4, pinwheel, eightAtATime, twoAtATime)...),
		Inputs: []input{
			{name: "block", kind: aLength, usual: [2]float64{2, 20}, after: of(pinwheel, block), before: of(pinwheel), when: of(pinwheel), prior: 6, label: "the pinwheel", replaces: []string{"finished"}},
			{name: "finished", kind: aLength, usual: [2]float64{0.5, 12}, prior: 4, after: of(finished, unfinished, halfSquare), before: of(finished, unfinished, atPrice, halfSquare), not: of(pinwheel), label: "the finished size",
				ask: "How big is each half-square triangle, finished?", offer: []string{"2 in", "3 in"}},
			{name: "square", kind: aLength, usual: [2]float64{1.5, 20}, after: of(squarePc, precut), before: of(fromWord, squarePc, have), not: of(finished, halfSquare), label: "the square in hand", replaces: []string{"finished"}},
			{name: "units", kind: aCount, usual: [2]float64{2, 1000}, prior: 2, after: of(halfSquare, unitPc, triangle, ofThem), before: of(need, makeIt, halfSquare), label: "how many"},
			{name: "have", kind: aCount, when: of(have, enough), after: of(squarePc), label: "the squares you have"},
			atATimeInput(), wayInput(), usableWidth(), seamAllowance(),
		},
		Needs:    [][]string{{"finished", "square", "block"}},
		Examples: []string{"24 half square triangles 3 in finished", "hst from 5 in squares, what do they finish at"},
		Source:   "two at a time finished + ⅞, eight at a time twice that, four at a time (finished + ½)·√2 + ½ (karencombs.com, formulas for quilters; north-hampshire-quilters.org.uk).",
		Work:     workHalfSquares,
		Other:    otherCount,
	}
}

// otherCount changes from two at a time to eight and back.
func otherCount(now, before map[string]Value) {
	n := 8
	if before["at_a_time"].Count == n || before["way"].Word == "eight" {
		n = 2
	}
	delete(before, "way")
	now["at_a_time"] = Value{Kind: aCount, Count: n}
}

func workHalfSquares(w *work) error {
	r := calc.HalfSquareRequest{AtATime: w.atATime(), Units: w.count("units"), HaveSquares: w.count("have")}
	parts := []string{"seam"}
	if r.Units > 0 || w.given("block") {
		parts = append(parts, "usable_width")
	}
	r.Conventions = w.conventions(parts...)
	switch {
	case w.given("block"):
		r.Finished = w.finished("block", r.Seam) / 2
		if r.Units == 0 {
			r.Units = 4
		}
	case w.given("finished"):
		r.Finished = w.finished("finished", r.Seam)
		if w.given("square") && r.Finished > 0 {
			w.value("square")
		}
	default:
		r.Square = w.length("square")
	}
	if r.AtATime == 0 {
		w.assume("at_a_time", 2)
	}
	h, err := calc.HalfSquares(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.HalfSquares(r, h) })
	w.figure("square_cut", h.SquareCut)
	if h.Squares > 0 {
		w.figure("squares", h.Squares)
		w.figure("units", h.Units)
	}
	w.figure("unfinished", h.Unfinished)
	w.figure("finished", h.Finished)
	if h.Cloth.Buy > 0 {
		w.figure("buy", h.Cloth.Buy)
	}
	w.enoughCount(h.Hand, "square")
	way := w.format("%s at a time", spelled(h.AtATime))
	switch {
	case r.Square > 0:
		w.say("From squares of %v they finish at %v, %s, and measure %v before they are sewn in.", h.SquareCut, h.Finished, way, h.Unfinished)
	case h.Squares > 0:
		w.say("Cut %v of %v of each colour: %s they make %v.", counted(h.Squares, "square"), h.SquareCut, way, counted(h.Made, "unit"))
	default:
		w.say("Cut squares of %v of each colour, and sew them %s.", h.SquareCut, way)
	}
	if r.Square == 0 {
		w.say("Each measures %v before it is sewn in and finishes at %v.", h.Unfinished, h.Finished)
	}
	if h.Cloth.Buy > 0 {
		w.say("That takes %v of each colour.", h.Cloth.Buy)
	}
	if h.BiasEdges {
		w.say("Four at a time leaves bias on all outer edges: starch first and do not pull.")
	} else if len(h.Others) > 0 && h.Squares > 0 {
		o := h.Others[0]
		w.say("%s at a time it would be %v of %v of each.", capital(spelled(o.AtATime)), counted(o.Squares, "square"), o.SquareCut)
	}
	w.show(h.Working)
	w.does(cutting, pressing)
	return nil
}

// spelled writes small numbers in words.
func spelled(n int) string {
	return map[int]string{1: "one", 2: "two", 3: "three", 4: "four", 8: "eight"}[n]
}
