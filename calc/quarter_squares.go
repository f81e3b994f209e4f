package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// QuarterSquareRequest asks for quarter-square units, four triangles that meet
// in the middle. Backwards it starts from a square in hand.
type QuarterSquareRequest struct {
	Conventions
	Finished    measure.Length // side of the unit in the quilt; 0 where Square is given
	Square      measure.Length // in hand, as cut
	Units       int            // wanted; 0 where nobody said
	HaveSquares int            // all colours together; 0 where nobody said
}

// QuarterSquareResult is the squares to cut, all colours together.
type QuarterSquareResult struct {
	SquareCut     measure.Length
	Squares       int // all colours together: two for every two units
	Units         int // wanted
	Made          int // by the squares
	Finished      measure.Length
	Unfinished    measure.Length
	TrimSquare    measure.Length // cut as large where the units are trimmed to size
	Cloth         PatchCloth     // of each of two colours
	Hand          CountCheck     // squares in hand, where they were given
	HandUnits     int            // that they make
	ExactSquare   measure.Length // of geometry, without the handbooks' rounding
	ExactFinished measure.Length // backwards without rounding
	Working       []Step
}

// QuarterSquares works out quarter-square units: a square of the finished side
// + 1¼ in, cut twice from corner to corner, or two of them sewn together, cut,
// turned and sewn again. Sources: https://karencombs.com/page.php?ID=31;
// north-hampshire-quilters.org.uk, half and quarter square triangles.
func QuarterSquares(r QuarterSquareRequest) (QuarterSquareResult, error) {
	if err := r.check(); err != nil {
		return QuarterSquareResult{}, err
	}
	add := r.QuarterSquareAllowance()
	q := QuarterSquareResult{Units: r.Units, Finished: r.Finished, ExactFinished: r.Finished}
	if r.Square > 0 {
		q.ExactFinished = r.Square - add
		q.Finished = r.LimitDown(q.ExactFinished)
		if q.Finished <= 0 {
			return QuarterSquareResult{}, limit("square", step("A square of %v is used up by the seams.", r.Square),
				step("A square of %v makes units that finish at %v.", r.CutUp(r.LimitStep+add), r.LimitStep))
		}
		q.SquareCut, q.ExactSquare = r.Square, r.Square
		q.Working = []Step{roundedStep(q.ExactFinished, q.Finished, "Finished: %v − %v", r.Square, Unrounded(add))}
	} else {
		q.ExactSquare = r.Finished + r.exactTriangles().QuarterSquareAllowance()
		q.SquareCut = r.CutUp(r.Finished + add)
		q.Working = []Step{roundedStep(r.Finished+add, q.SquareCut, "Square: %v + %v", r.Finished, Unrounded(add))}
	}
	q.Unfinished = r.withSeams(q.Finished)
	q.TrimSquare = r.CutUp(q.SquareCut + trimRoom)
	r.count(&q)
	return q, nil
}

func (r QuarterSquareRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantHave("squares", r.HaveSquares), wantSpare("square", r.Square))
	if r.Square == 0 {
		err = cmp.Or(err, wantLength("finished_size", r.Finished))
	}
	if r.Units != 0 {
		err = cmp.Or(err, wantCount("units", r.Units))
	}
	return err
}

func (r QuarterSquareRequest) count(q *QuarterSquareResult) {
	pairs := ceilDiv(r.Units, 2)
	q.Squares, q.Made = 2*pairs, 2*pairs
	q.Cloth = r.patchCloth(q.SquareCut, pairs)
	q.Hand = checkCount(r.HaveSquares, q.Squares)
	q.HandUnits = r.HaveSquares / 2 * 2
	if r.Units == 0 {
		return
	}
	q.Working = append(q.Working, step("%v units, two from each two squares: %v squares in all", r.Units, q.Squares))
	if q.Cloth.Strips > 0 {
		q.Working = append(q.Working, q.Cloth.step())
	}
}
