package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// HalfSquareRequest asks for half-square triangles: squares of two colours
// that two triangles make. Backwards it starts from a square in hand.
type HalfSquareRequest struct {
	Conventions
	Finished    measure.Length // side of the unit in the quilt; 0 where Square is given
	Square      measure.Length // in hand, as cut
	AtATime     int            // units that a pair of squares makes: 1, 2, 4 or 8; 0 means 2
	Units       int            // wanted; 0 where nobody said
	HaveSquares int            // of each colour; 0 where nobody said
}

// HalfSquareWay is what the same units take made another number at a time.
type HalfSquareWay struct {
	AtATime   int
	SquareCut measure.Length
	Squares   int // of each colour
	BiasEdges bool
	Cloth     PatchCloth // of each colour
}

// HalfSquareResult is the squares to cut of each colour.
type HalfSquareResult struct {
	HalfSquareWay
	Units         int // wanted
	Made          int // by the squares
	Finished      measure.Length
	Unfinished    measure.Length
	TrimSquare    measure.Length  // cut as large where the units are trimmed to size; 0 where that is not done
	Others        []HalfSquareWay // the other ways, the one with the least fabric first
	Hand          CountCheck      // squares of each colour in hand, where they were given
	HandUnits     int             // that they make
	ExactSquare   measure.Length  // of geometry, without any rounding
	ExactFinished measure.Length  // backwards without rounding
	Working       []Step
}

// HalfSquares works out half-square triangles. Two at a time, and one at a time
// from single triangles, a square is the finished side + ⅞ in; eight at a time
// it is twice that; four at a time, sewn all round and cut twice from corner to
// corner, it is (finished + 2 seams)·√2 + 2 seams, and all edges are bias.
//
// Sources: https://karencombs.com/page.php?ID=31 (⅞ in);
// theashleytomlinson.com (eight at a time); rainbowsbunniescupcakes.blogspot.com,
// February 2012 (four at a time).
func HalfSquares(r HalfSquareRequest) (HalfSquareResult, error) {
	if r.AtATime == 0 {
		r.AtATime = 2
	}
	if err := r.check(); err != nil {
		return HalfSquareResult{}, err
	}
	h := HalfSquareResult{Units: r.Units}
	if r.Square > 0 {
		if err := r.backwards(&h); err != nil {
			return HalfSquareResult{}, err
		}
	} else {
		h.Finished, h.ExactFinished = r.Finished, r.Finished
		h.ExactSquare = r.exactSquare()
		h.HalfSquareWay = r.way(r.AtATime, r.Finished, r.CutUp(r.square(r.AtATime, r.Finished)))
		h.Working = []Step{r.squareStep(h)}
	}
	h.Unfinished = r.withSeams(h.Finished)
	if r.AtATime != 4 {
		h.TrimSquare = r.CutUp(h.SquareCut + trimRoom)
	}
	h.Made = h.Squares * r.AtATime
	if r.AtATime == 1 {
		h.Made = 2 * h.Squares
	}
	r.compare(&h)
	return h, nil
}

func (r HalfSquareRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantHave("squares", r.HaveSquares), wantSpare("square", r.Square))
	if r.Square == 0 {
		err = cmp.Or(err, wantLength("finished_size", r.Finished))
	}
	if r.Units != 0 {
		err = cmp.Or(err, wantCount("units", r.Units))
	}
	switch r.AtATime {
	case 1, 2, 4, 8:
		return err
	}
	return cmp.Or(err, limit("at_a_time", step("Half-square triangles are made 1, 2, 4 or 8 at a time, not %v.", r.AtATime),
		step("Two at a time is usual.")))
}

// square gives the exact square for a finished size.
func (r HalfSquareRequest) square(at int, finished measure.Length) measure.Length {
	switch at {
	case 4:
		return root2(r.withSeams(finished)) + 2*r.Seam
	case 8:
		return 2 * (finished + r.HalfSquareAllowance())
	}
	return finished + r.HalfSquareAllowance()
}

// exactSquare gives the square of geometry.
func (r HalfSquareRequest) exactSquare() measure.Length {
	r.Conventions = r.exactTriangles()
	return r.square(r.AtATime, r.Finished)
}

// finished gives the exact size that a square makes.
func (r HalfSquareRequest) finished(at int, square measure.Length) measure.Length {
	switch at {
	case 4:
		return overRoot2(square-2*r.Seam) - 2*r.Seam
	case 8:
		return square/2 - r.HalfSquareAllowance()
	}
	return square - r.HalfSquareAllowance()
}

// way counts squares of a size.
func (r HalfSquareRequest) way(at int, finished, square measure.Length) HalfSquareWay {
	w := HalfSquareWay{AtATime: at, SquareCut: square, BiasEdges: at == 4, Squares: ceilDiv(r.Units, max(at, 2))}
	w.Cloth = r.patchCloth(square, w.Squares)
	return w
}

// backwards goes from a square in hand to the unit.
func (r HalfSquareRequest) backwards(h *HalfSquareResult) error {
	h.ExactFinished = r.finished(r.AtATime, r.Square)
	h.Finished = r.LimitDown(h.ExactFinished)
	if h.Finished <= 0 {
		return limit("square", step("A square of %v is used up by the seams.", r.Square),
			step("A square of %v makes units that finish at %v.", r.CutUp(r.square(r.AtATime, r.LimitStep)), r.LimitStep))
	}
	h.ExactSquare = r.Square
	h.HalfSquareWay = r.way(r.AtATime, h.Finished, r.Square)
	h.Working = []Step{r.finishedStep(*h)}
	return nil
}

// compare looks at the other ways and at what is in hand.
func (r HalfSquareRequest) compare(h *HalfSquareResult) {
	if r.Units > 0 {
		for _, at := range []int{2, 8, 4} {
			if at == r.AtATime || at == 2 && r.AtATime == 1 {
				continue
			}
			h.Others = append(h.Others, r.way(at, h.Finished, r.CutUp(r.square(at, h.Finished))))
		}
		if len(h.Others) == 2 && h.Others[1].Cloth.Length < h.Others[0].Cloth.Length {
			h.Others[0], h.Others[1] = h.Others[1], h.Others[0]
		}
		h.Working = append(h.Working, step("%v units, %v from each pair: %v squares of each colour", r.Units, max(r.AtATime, 2), h.Squares))
	}
	h.Hand = checkCount(r.HaveSquares, h.Squares)
	h.HandUnits = r.HaveSquares * max(r.AtATime, 2)
	if h.Cloth.Strips > 0 {
		h.Working = append(h.Working, h.Cloth.step())
	}
}

func (r HalfSquareRequest) squareStep(h HalfSquareResult) Step {
	sum := r.square(r.AtATime, r.Finished)
	switch r.AtATime {
	case 4:
		return roundedStep(sum, h.SquareCut, "Square: (%v + 2 × %v) × √2 + 2 × %v", h.Finished, Unrounded(r.Seam), Unrounded(r.Seam))
	case 8:
		return roundedStep(sum, h.SquareCut, "Square: 2 × (%v + %v)", h.Finished, Unrounded(r.HalfSquareAllowance()))
	}
	return roundedStep(sum, h.SquareCut, "Square: %v + %v", h.Finished, Unrounded(r.HalfSquareAllowance()))
}

func (r HalfSquareRequest) finishedStep(h HalfSquareResult) Step {
	switch r.AtATime {
	case 4:
		return roundedStep(h.ExactFinished, h.Finished, "Finished: (%v − 2 × %v) ÷ √2 − 2 × %v", r.Square, Unrounded(r.Seam), Unrounded(r.Seam))
	case 8:
		return roundedStep(h.ExactFinished, h.Finished, "Finished: %v ÷ 2 − %v", r.Square, Unrounded(r.HalfSquareAllowance()))
	}
	return roundedStep(h.ExactFinished, h.Finished, "Finished: %v − %v", r.Square, Unrounded(r.HalfSquareAllowance()))
}

// step shows how the patches lie on their strips.
func (p PatchCloth) step() Step {
	if p.Strips == 1 {
		return step("%v to a strip: 1 strip of %v: %v", p.PerStrip, p.StripWidth, p.Buy)
	}
	return step("%v to a strip: %v strips of %v, %v of fabric: %v", p.PerStrip, p.Strips, p.StripWidth, p.Length, p.Buy)
}
