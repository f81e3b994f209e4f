package commands

import (
	"counterhand/calc"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const squareInSq words.Concept = "square in a square"

// squareInSquareTopic: a square set on point in a square.
func squareInSquareTopic() Topic {
	return Topic{
		Name: "square-in-square", Group: CutIt, Title: "a square in a square",
		Terms: []words.Term{
			{Concept: squareInSq, Words: "square in square, square in a square, square within a square, square inside a square, economy block, diamond in a square, diamond in square, square on point in a square, square in a square block, square in square block, square-in-square"},
		},
		Says: says(13, squareInSq),
		Inputs: []input{
			{name: "block", kind: aLength, usual: [2]float64{2, 20}, prior: 4, after: of(finished, squareInSq, block, unfinished), before: of(finished, squareInSq, block, unfinished), not: of(centre), label: "the block",
				ask: "How big is the block, finished?", offer: []string{"6 in", "12 in"}},
			{name: "centre", kind: aLength, usual: [2]float64{1, 14}, after: of(centre), before: of(centre), label: "the centre square", replaces: []string{"block"}},
			{name: "blocks", kind: aCount, usual: [2]float64{1, 200}, prior: 2, after: of(block, squareInSq), before: of(need, makeIt), label: "how many blocks"},
			{name: "rounds", kind: aCount, usual: [2]float64{1, 6}, after: of(roundOf), before: of(roundOf), label: "the rounds of triangles"},
			seamAllowance(),
		},
		Needs:    [][]string{{"block", "centre"}},
		Examples: []string{"square in a square 12 in finished", "square in square with a 6 in centre, 20 blocks"},
		Source:   "centre block ÷ √2 + ½; corners centre ÷ √2 + ⅞, cut once (old.quiltube.com; geometry).",
		Work:     workSquareInSquare,
	}
}

const roundOf words.Concept = "round of triangles"

func workSquareInSquare(w *work) error {
	r := calc.SquareInSquareRequest{Conventions: w.conventions("seam"), Blocks: w.count("blocks"), Rounds: w.count("rounds")}
	if w.given("centre") {
		r.Centre = w.finished("centre", r.Seam)
	} else {
		r.Block = w.finished("block", r.Seam)
	}
	s, err := calc.SquareInSquare(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.SquareInSquare(r, s) })
	w.figure("centre_cut", s.CentreCut)
	w.figure("corner_square", s.CornerSquare)
	w.figure("corner_squares", s.CornerSquares)
	w.figure("unfinished", s.Unfinished)
	blocks := max(1, r.Blocks)
	w.say("Cut %v of %v for the middle and %v of %v for the corners, each of those once from corner to corner.", counted(blocks, "square"), s.CentreCut, counted(s.CornerSquares, "square"), s.CornerSquare)
	for i, round := range s.Rounds[:len(s.Rounds)-1] {
		w.say("Round %v: %v of %v.", i+1, counted(round.CornerSquares, "square"), round.CornerSquare)
	}
	w.say("The block measures %v before it is sewn in and finishes at %v; its centre finishes at %v.", s.Unfinished, s.Block, s.Centre)
	w.show(s.Working)
	w.does(cutting, pressing)
	return nil
}
