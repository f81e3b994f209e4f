package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// GeeseRequest asks for flying geese, units twice as wide as high. Backwards
// it starts from the large square that four at a time are made from.
type GeeseRequest struct {
	Conventions
	Width, Height measure.Length // finished; one of them may be 0, as the other gives it
	LargeSquare   measure.Length // in hand, as cut; for four at a time
	Geese         int            // wanted; 0 where nobody said
	AtATime       int            // 1 or 4; 0 means four, and one where three or fewer are wanted
}

// GeeseResult is what to cut. Only the fields of its AtATime are set.
type GeeseResult struct {
	AtATime       int
	Width, Height measure.Length // finished
	Unfinished    measure.Size
	Geese         int // wanted
	Made          int

	GooseWidth, GooseHeight measure.Length // one at a time: a rectangle ...
	CornerSquare            measure.Length // ... and two squares that are flipped over its corners
	Corners                 int

	LargeSquare, SmallSquare   measure.Length // four at a time: one large square and four small ones
	LargeSquares, SmallSquares int

	ExactLarge, ExactSmall  measure.Length // four at a time, of geometry, without any rounding
	GooseCloth, CornerCloth PatchCloth     // of either colour
	Working                 []Step
}

// FlyingGeese works out flying geese. One at a time they are a rectangle with
// seams and two squares of its height; four at a time a square of the width
// + 1¼ in and four of the height + ⅞ in. Sources: one at a time common
// practice, no source; four at a time alinequilts.blogspot.com, March 2011.
//
// It gives a [*LimitError] for units that are not twice as wide as high: they
// are made of half rectangles.
func FlyingGeese(r GeeseRequest) (GeeseResult, error) {
	if r.AtATime == 0 {
		r.AtATime = 4
		if r.Geese > 0 && r.Geese < 4 && r.LargeSquare == 0 {
			r.AtATime = 1
		}
	}
	if r.LargeSquare == 0 {
		r.Width, r.Height = cmp.Or(r.Width, 2*r.Height), cmp.Or(r.Height, r.Width/2)
	}
	if err := r.check(); err != nil {
		return GeeseResult{}, err
	}
	if r.LargeSquare > 0 {
		if err := r.fromLarge(); err != nil {
			return GeeseResult{}, err
		}
	}
	if r.Width != 2*r.Height {
		return GeeseResult{}, limit("goose_width",
			step("Flying geese are twice as wide as high, and %v is not twice %v.", r.Width, r.Height),
			step("At %v high they are %v wide; a unit of %v is made of half rectangles.",
				r.Height, 2*r.Height, measure.Size{Width: r.Width, Length: r.Height}))
	}
	g := GeeseResult{AtATime: r.AtATime, Width: r.Width, Height: r.Height, Geese: r.Geese}
	g.Unfinished = measure.Size{Width: r.withSeams(r.Width), Length: r.withSeams(r.Height)}
	if r.AtATime == 1 {
		r.one(&g)
	} else {
		r.four(&g)
	}
	return g, nil
}

func (r GeeseRequest) check() error {
	err := r.Conventions.check()
	if r.LargeSquare != 0 {
		err = cmp.Or(err, wantLength("large_square", r.LargeSquare))
	} else {
		err = cmp.Or(err, wantLength("goose_width", r.Width), wantLength("goose_height", r.Height))
	}
	if r.Geese != 0 {
		err = cmp.Or(err, wantCount("geese", r.Geese))
	}
	if r.AtATime != 1 && r.AtATime != 4 || r.LargeSquare > 0 && r.AtATime != 4 {
		err = cmp.Or(err, limit("at_a_time", step("Flying geese are made one at a time, or four at a time from a large square."), Step{}))
	}
	return err
}

// fromLarge finds the largest goose that a large square makes.
func (r *GeeseRequest) fromLarge() error {
	r.Height = r.LimitDown((r.LargeSquare - r.QuarterSquareAllowance()) / 2)
	if r.Height <= 0 {
		return limit("large_square", step("A square of %v is used up by the seams.", r.LargeSquare),
			step("A square of %v makes geese of %v.", r.CutUp(2*r.LimitStep+r.QuarterSquareAllowance()),
				measure.Size{Width: 2 * r.LimitStep, Length: r.LimitStep}))
	}
	r.Width = 2 * r.Height
	return nil
}

func (r GeeseRequest) one(g *GeeseResult) {
	g.GooseWidth, g.GooseHeight = r.CutUp(g.Unfinished.Width), r.CutUp(g.Unfinished.Length)
	g.CornerSquare = g.GooseHeight
	g.Made, g.Corners = r.Geese, 2*r.Geese
	g.GooseCloth = r.stripCloth(g.GooseWidth, g.GooseHeight, r.Geese)
	if turned := r.stripCloth(g.GooseHeight, g.GooseWidth, r.Geese); turned.Strips > 0 && turned.Length < g.GooseCloth.Length {
		g.GooseCloth = turned
	}
	g.CornerCloth = r.patchCloth(g.CornerSquare, g.Corners)
	g.Working = []Step{
		step("Goose: %v + 2 × %v by %v + 2 × %v, cut %v", r.Width, Unrounded(r.Seam), r.Height, Unrounded(r.Seam),
			measure.Size{Width: g.GooseWidth, Length: g.GooseHeight}),
		step("Corners: squares of the same height, %v; two to a goose", g.CornerSquare),
	}
}

func (r GeeseRequest) four(g *GeeseResult) {
	large, small := r.Width+r.QuarterSquareAllowance(), r.Height+r.HalfSquareAllowance()
	g.ExactLarge = r.Width + r.exactTriangles().QuarterSquareAllowance()
	g.ExactSmall = r.Height + r.exactTriangles().HalfSquareAllowance()
	g.LargeSquare, g.SmallSquare = cmp.Or(r.LargeSquare, r.CutUp(large)), r.CutUp(small)
	g.LargeSquares = ceilDiv(r.Geese, 4)
	g.SmallSquares, g.Made = 4*g.LargeSquares, 4*g.LargeSquares
	g.GooseCloth = r.patchCloth(g.LargeSquare, g.LargeSquares)
	g.CornerCloth = r.patchCloth(g.SmallSquare, g.SmallSquares)
	g.Working = []Step{
		roundedStep(large, r.CutUp(large), "Large square: %v + %v", r.Width, Unrounded(r.QuarterSquareAllowance())),
		roundedStep(small, g.SmallSquare, "Small squares, four to a large one: %v + %v", r.Height, Unrounded(r.HalfSquareAllowance())),
	}
	if r.Geese > 0 {
		g.Working = append(g.Working, step("%v ÷ 4, up to %v large squares", r.Geese, g.LargeSquares))
	}
}
