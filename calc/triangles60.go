package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// TriangleRequest asks for 60° triangles, all sides alike, by one of their
// sizes or by the rows that a quilt's length is to be divided into.
type TriangleRequest struct {
	Conventions
	Strip       measure.Length // width as cut, which is the height of the cut triangle
	Height      measure.Length // finished
	Side        measure.Length // finished
	Rows        int            // wanted on the quilt's length; 0 where a size is given
	StripLength measure.Length // 0 for fabric cut across its usable width
	Triangles   int            // wanted; 0 for as many as the quilt takes
	Quilt       measure.Size   // to fill; none where nobody asks
}

// TriangleResult is the strip, and how the triangles fill a quilt.
type TriangleResult struct {
	StripWidth    measure.Length
	PerStrip      int // up and down
	Triangles     int // wanted, or for the quilt
	Strips        int
	Buy           measure.Cloth
	Height        measure.Length // finished, exact
	Side          measure.Length // finished, exact
	CutSide       measure.Length // exact
	Layout        TriangleLayout // enough to cover the quilt
	Smaller       TriangleLayout // one row and one triangle fewer each way
	OneFewerShort int            // triangles that one strip fewer would be short of
	Working       []Step

	shape TriangleRequest
}

// TriangleLayout is rows of triangles that point up and down by turns. A row is
// Across finished sides wide: it has 2·Across − 1 whole triangles and half a
// triangle at either end.
type TriangleLayout struct {
	Rows, Across  int
	Whole, Halves int          // triangles in all rows
	Size          measure.Size // finished
}

// Triangles60 works out 60° triangles. The strip is the finished height and
// three seams; the side is 2·height/√3; and as each triangle after the first
// takes half a side, a strip of U gives floor(2·U ÷ cut side − 1).
// Sources: mythicseam.com, equilateral triangles; blotchandthrum.com,
// August 2013 (the strip); geometry.
func Triangles60(r TriangleRequest) (TriangleResult, error) {
	r.StripLength = cmp.Or(r.StripLength, r.UsableWidth)
	if err := r.check(); err != nil {
		return TriangleResult{}, err
	}
	t, err := r.size()
	if err != nil {
		return TriangleResult{}, err
	}
	t.PerStrip = max(0, fits(2*(r.StripLength+hair)-t.CutSide, t.CutSide))
	if t.PerStrip == 0 {
		return TriangleResult{}, limit("strip_width",
			step("A triangle from a strip of %v is %v wide, which a strip %v long does not hold.", t.StripWidth, t.CutSide, r.StripLength), Step{})
	}
	t.Working = append(t.Working, step("Cut side: 2 × %v ÷ √3 = %v; up and down %v from a strip of %v",
		t.StripWidth, Unrounded(t.CutSide), t.PerStrip, r.StripLength))
	if r.Quilt != (measure.Size{}) {
		if err := r.fill(&t); err != nil {
			return TriangleResult{}, err
		}
	}
	t.Triangles = cmp.Or(r.Triangles, t.Triangles)
	t.Strips = ceilDiv(t.Triangles, t.PerStrip)
	t.Buy = r.BuyUp(measure.Length(t.Strips) * t.StripWidth)
	t.OneFewerShort = max(0, t.Triangles-(t.Strips-1)*t.PerStrip)
	t.shape = r
	return t, nil
}

func (r TriangleRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantSpare("strip_width", r.Strip), wantSpare("height", r.Height),
		wantSpare("side", r.Side), wantLength("strip_length", r.StripLength))
	if r.Rows != 0 {
		err = cmp.Or(err, wantCount("rows", r.Rows))
	}
	if r.Triangles != 0 {
		err = cmp.Or(err, wantCount("triangles", r.Triangles))
	}
	if r.Quilt != (measure.Size{}) {
		err = cmp.Or(err, wantSize("quilt", r.Quilt))
	}
	if r.Strip == 0 && r.Side == 0 && (r.Rows == 0 || r.Quilt.Length == 0) {
		err = cmp.Or(err, wantLength("height", r.Height))
	}
	return err
}

// size works out the triangle from whichever size was given.
func (r TriangleRequest) size() (TriangleResult, error) {
	var t TriangleResult
	switch {
	case r.Strip > 0:
		if r.Strip <= 3*r.Seam {
			return t, limit("strip_width", step("Three seams use up a strip of %v.", r.Strip),
				step("Strips from %v work.", r.CutUp(3*r.Seam+r.CutStep)))
		}
		t.StripWidth, t.Height = r.Strip, r.Strip-3*r.Seam
	case r.Height > 0:
		t.Height = r.Height
	case r.Side > 0:
		t.Height = scaled(r.Side, sqrt3/2)
	default:
		t.Height = r.Quilt.Length / measure.Length(r.Rows)
		t.Working = append(t.Working, step("Rows: %v ÷ %v = %v high", r.Quilt.Length, r.Rows, Unrounded(t.Height)))
	}
	if t.Height < leastCut {
		return t, wantLength("height", 0)
	}
	if r.Strip == 0 {
		t.StripWidth = r.CutUp(t.Height + 3*r.Seam)
		t.Working = append(t.Working, roundedStep(t.Height+3*r.Seam, t.StripWidth, "Strip: %v + 3 × %v", Unrounded(t.Height), Unrounded(r.Seam)))
	}
	t.Side = scaled(t.Height, 2/sqrt3)
	t.CutSide = scaled(t.StripWidth, 2/sqrt3)
	return t, nil
}

// fill covers the quilt.
func (r TriangleRequest) fill(t *TriangleResult) error {
	rows := ceilUp(r.Quilt.Length, t.Height)
	across := ceilUp(r.Quilt.Width, t.Side)
	if rows > maxCount || across > maxCount || 2*rows*across > maxCount {
		return wantCount("triangles", maxCount+1)
	}
	t.Layout = layTriangles(rows, across, *t)
	t.Smaller = layTriangles(rows-1, across-1, *t)
	t.Triangles = t.Layout.Whole + ceilDiv(t.Layout.Halves, 2)
	t.Working = append(t.Working, step("%v rows of %v sides: %v, with %v whole triangles and %v halves for the ends",
		rows, across, t.Layout.Size, t.Layout.Whole, t.Layout.Halves))
	return nil
}

// ceilUp counts the pieces that reach across a space.
func ceilUp(space, piece measure.Length) int {
	return int(min((space-hair+piece-1)/piece, 2*maxCount))
}

func layTriangles(rows, across int, t TriangleResult) TriangleLayout {
	l := TriangleLayout{Rows: max(rows, 0), Across: max(across, 0)}
	l.Size = measure.Size{Width: measure.Length(l.Across) * t.Side, Length: measure.Length(l.Rows) * t.Height}
	if l.Rows > 0 && l.Across > 0 {
		l.Whole, l.Halves = l.Rows*(2*l.Across-1), 2*l.Rows
	}
	return l
}
