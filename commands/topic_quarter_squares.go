package commands

import (
	"counterhand/calc"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const quarterSquare words.Concept = "quarter-square triangle"

// quarterSquaresTopic: squares of four triangles.
func quarterSquaresTopic() Topic {
	return Topic{
		Name: "quarter-square-triangles", Group: CutIt, Title: "quarter-square triangles, also called hourglass units",
		Terms: []words.Term{
			{Concept: quarterSquare, Words: "quarter square triangle, quarter square, qst, hourglass, hour glass, hourglass block, hourglass unit, quarter square triangle unit, qst unit, qst block, quarter-square, q s t, quarter sq triangle"},
		},
		Says: says(12, quarterSquare),
		Inputs: []input{
			{name: "finished", kind: aLength, usual: [2]float64{0.75, 16}, prior: 4, after: of(finished, unfinished, quarterSquare, block), before: of(finished, unfinished, atPrice, quarterSquare, block), label: "the finished size",
				ask: "How big is each quarter-square unit, finished?", offer: []string{"4 in", "6 in"}},
			{name: "square", kind: aLength, usual: [2]float64{2, 20}, after: of(squarePc, precut), before: of(fromWord, squarePc, have), not: of(finished, quarterSquare), label: "the square in hand"},
			{name: "units", kind: aCount, usual: [2]float64{2, 1000}, prior: 2, after: of(quarterSquare, unitPc, triangle, block, ofThem), before: of(need, makeIt, quarterSquare), label: "how many"},
			{name: "have", kind: aCount, when: of(have, enough), after: of(squarePc), label: "the squares you have"},
			usableWidth(), seamAllowance(),
		},
		Needs:    [][]string{{"finished", "square"}},
		Examples: []string{"quarter square triangles 4 in finished", "12 hourglass units finishing 6 in"},
		Source:   "finished + 1¼, two units from two squares (karencombs.com, formulas for quilters; quiltville.blogspot.com, June 2005).",
		Work:     workQuarterSquares,
	}
}

func workQuarterSquares(w *work) error {
	r := calc.QuarterSquareRequest{Units: w.count("units"), HaveSquares: w.count("have")}
	parts := []string{"seam"}
	if r.Units > 0 {
		parts = append(parts, "usable_width")
	}
	r.Conventions = w.conventions(parts...)
	if w.given("finished") {
		r.Finished = w.finished("finished", r.Seam)
	} else {
		r.Square = w.length("square")
	}
	q, err := calc.QuarterSquares(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.QuarterSquares(r, q) })
	w.figure("square_cut", q.SquareCut)
	if q.Squares > 0 {
		w.figure("squares", q.Squares)
		w.figure("units", q.Units)
	}
	w.figure("unfinished", q.Unfinished)
	w.figure("finished", q.Finished)
	w.enoughCount(q.Hand, "square")
	switch {
	case r.Square > 0:
		w.say("From squares of %v they finish at %v and measure %v before they are sewn in.", q.SquareCut, q.Finished, q.Unfinished)
	case q.Squares > 0:
		w.say("Cut %v of %v, all colours together: they make %v.", counted(q.Squares, "square"), q.SquareCut, counted(q.Made, "unit"))
	default:
		w.say("Cut squares of %v, two for every two units.", q.SquareCut)
	}
	if r.Square == 0 {
		w.say("Each measures %v before it is sewn in and finishes at %v.", q.Unfinished, q.Finished)
	}
	if q.TrimSquare > 0 && r.Square == 0 {
		w.say("If you like to trim to size, cut %v.", q.TrimSquare)
	}
	w.show(q.Working)
	w.does(cutting, pressing)
	return nil
}
