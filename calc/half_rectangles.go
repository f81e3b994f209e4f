package calc

import (
	"cmp"
	"math"

	"counterhand/calc/measure"
)

// HalfRectangleRequest asks for rectangles of two colours that a line from
// corner to corner divides. Left and right leaning units are not the same and
// cannot be turned into each other.
type HalfRectangleRequest struct {
	Conventions
	Width, Height measure.Length // finished
	Left, Right   int            // units wanted of either leaning; 0 where nobody said
}

// HalfRectangleResult is the rectangles to cut of each colour.
type HalfRectangleResult struct {
	CutWidth, CutHeight measure.Length // two triangles of one leaning come from each
	Unfinished          measure.Size   // what the units are trimmed to
	Oversize            measure.Size   // cut as large to be trimmed with room to spare
	Rectangles          int            // of each colour, for both leanings
	LeftRectangles      int
	RightRectangles     int
	ExactWidth          measure.Length
	ExactHeight         measure.Length
	Working             []Step

	seam measure.Length
}

// HalfRectangles works out half rectangles. Seams all round a right triangle
// make both of its legs longer by the factor 1 + seam ÷ i, where
// i = (w + h − √(w² + h²)) ÷ 2 is the radius of the circle inside it. The
// oversize is 1 × 1½ in on the finished size, which is common practice, no
// source. Source: geometry; both leanings: quiltingboard.com, post 3103596.
func HalfRectangles(r HalfRectangleRequest) (HalfRectangleResult, error) {
	if err := r.check(); err != nil {
		return HalfRectangleResult{}, err
	}
	w, l := r.Width.Inches(), r.Height.Inches()
	inside := w * l / (w + l + math.Hypot(w, l)) // the same radius, without cancellation
	if inside < r.Seam.Inches()/100 || measure.Inches(inside) < leastCut/2 {
		return HalfRectangleResult{}, limit("width", step("A unit of %v is too slender for its seams.", measure.Size{Width: r.Width, Length: r.Height}), Step{})
	}
	k := 1 + r.Seam.Inches()/inside
	h := HalfRectangleResult{
		seam:       r.Seam,
		ExactWidth: scaled(r.Width, k), ExactHeight: scaled(r.Height, k),
		Unfinished:     measure.Size{Width: r.withSeams(r.Width), Length: r.withSeams(r.Height)},
		LeftRectangles: ceilDiv(r.Left, 2), RightRectangles: ceilDiv(r.Right, 2),
	}
	h.CutWidth, h.CutHeight = r.CutUp(h.ExactWidth), r.CutUp(h.ExactHeight)
	h.Oversize = r.oversize(h)
	h.Rectangles = h.LeftRectangles + h.RightRectangles
	h.Working = []Step{
		step("The circle inside the finished triangle: (%v + %v − √((%v)² + (%v)²)) ÷ 2 = %v",
			r.Width, r.Height, r.Width, r.Height, Unrounded(measure.Inches(inside))),
		roundedStep(h.ExactWidth, h.CutWidth, "Width: %v × (1 + %v ÷ %v)", r.Width, Unrounded(r.Seam), Unrounded(measure.Inches(inside))),
		roundedStep(h.ExactHeight, h.CutHeight, "Height: %v × (1 + %v ÷ %v)", r.Height, Unrounded(r.Seam), Unrounded(measure.Inches(inside))),
	}
	return h, nil
}

func (r HalfRectangleRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantLength("width", r.Width), wantLength("height", r.Height))
	for _, n := range []int{r.Left, r.Right} {
		if n != 0 {
			err = cmp.Or(err, wantCount("units", n))
		}
	}
	return err
}

// oversize adds an inch to the short side and half an inch more to the long
// one, and at least what the exact cut needs.
func (r HalfRectangleRequest) oversize(h HalfRectangleResult) measure.Size {
	short, long := measure.Inch, measure.Inch*3/2
	if r.Width > r.Height {
		short, long = long, short
	}
	return measure.Size{
		Width:  max(r.CutUp(r.Width+short), h.CutWidth+trimRoom),
		Length: max(r.CutUp(r.Height+long), h.CutHeight+trimRoom),
	}
}
