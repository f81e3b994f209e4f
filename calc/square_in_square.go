package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// maxRounds is how often squares are nested here: the tenth is a thirtieth of
// the block.
const maxRounds = 10

// SquareInSquareRequest asks for a square that stands on its corner in a
// square block, from the block's finished side or from the centre's.
type SquareInSquareRequest struct {
	Conventions
	Block  measure.Length // finished; 0 where Centre is given
	Centre measure.Length // finished
	Rounds int            // of triangles around the centre; 0 means one
	Blocks int            // wanted; 0 means one
}

// SquareRound is one round of triangles.
type SquareRound struct {
	Inner, Outer  measure.Length // finished sides of the square before and after it
	CornerSquare  measure.Length // cut once from corner to corner
	CornerSquares int            // for all blocks, two to a block
	ExactCorner   measure.Length // of geometry, without any rounding
}

// SquareInSquareResult is what to cut.
type SquareInSquareResult struct {
	CentreCut     measure.Length
	CornerSquare  measure.Length // of the outermost round
	CornerSquares int            // of the outermost round, for all blocks
	Block         measure.Length // finished
	Unfinished    measure.Length
	Centre        measure.Length // finished
	Rounds        []SquareRound  // from the inside out
	ExactCentre   measure.Length // as cut, without rounding
	Working       []Step
}

// SquareInSquare works out a square in a square. The centre's side is the
// block's ÷ √2, and two squares of half the block + ⅞ in give the four
// corners. Each round of a nested block is treated alike.
// Source: https://karencombs.com/page.php?ID=31 for the ⅞ in; geometry.
func SquareInSquare(r SquareInSquareRequest) (SquareInSquareResult, error) {
	r.Rounds, r.Blocks = cmp.Or(r.Rounds, 1), cmp.Or(r.Blocks, 1)
	if err := r.check(); err != nil {
		return SquareInSquareResult{}, err
	}
	sides := r.sides()
	s := SquareInSquareResult{Block: sides[r.Rounds], Centre: sides[0], Unfinished: r.withSeams(sides[r.Rounds])}
	s.ExactCentre = r.withSeams(s.Centre)
	s.CentreCut = r.CutUp(s.ExactCentre)
	s.Working = r.centreWorking(s)
	for i := range r.Rounds {
		round := SquareRound{Inner: sides[i], Outer: sides[i+1], CornerSquares: 2 * r.Blocks}
		corner := sides[i+1]/2 + r.HalfSquareAllowance()
		round.CornerSquare = r.CutUp(corner)
		round.ExactCorner = sides[i+1]/2 + r.exactTriangles().HalfSquareAllowance()
		s.CornerSquare, s.CornerSquares = round.CornerSquare, round.CornerSquares
		s.Rounds = append(s.Rounds, round)
		s.Working = append(s.Working, roundedStep(corner, round.CornerSquare, "Corners, two squares cut once: %v ÷ 2 + %v",
			Unrounded(round.Outer), Unrounded(r.HalfSquareAllowance())))
	}
	return s, nil
}

func (r SquareInSquareRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantCount("blocks", r.Blocks), wantCount("rounds", r.Rounds))
	if r.Block == 0 && r.Centre != 0 {
		err = cmp.Or(err, wantLength("centre", r.Centre))
	} else {
		err = cmp.Or(err, wantLength("block", r.Block))
	}
	if r.Rounds > maxRounds {
		err = cmp.Or(err, limit("rounds", step("%v rounds of triangles are too many to sew.", r.Rounds),
			step("Up to %v can be reckoned.", maxRounds)))
	}
	return err
}

// sides gives the finished sides of all squares, from the centre to the block.
func (r SquareInSquareRequest) sides() []measure.Length {
	sides := make([]measure.Length, r.Rounds+1)
	if r.Block > 0 {
		for i := range sides {
			sides[r.Rounds-i] = nested(r.Block, i)
		}
		return sides
	}
	for i := range sides {
		sides[i] = nested(r.Centre, -i)
	}
	return sides
}

// nested gives a square's side so many rounds further in: divided by √2 each
// time, exactly where that is twice.
func nested(side measure.Length, in int) measure.Length {
	for ; in >= 2; in -= 2 {
		side /= 2
	}
	for ; in <= -2; in += 2 {
		side *= 2
	}
	switch in {
	case 1:
		return overRoot2(side)
	case -1:
		return root2(side)
	}
	return side
}

func (r SquareInSquareRequest) centreWorking(s SquareInSquareResult) []Step {
	var steps []Step
	if r.Block > 0 {
		for i := 1; i <= r.Rounds; i++ {
			steps = append(steps, step("Square inside: %v ÷ √2 = %v", Unrounded(nested(r.Block, i-1)), Unrounded(nested(r.Block, i))))
		}
	}
	return append(steps, roundedStep(s.ExactCentre, s.CentreCut, "Centre: %v + 2 × %v", Unrounded(s.Centre), Unrounded(r.Seam)))
}
