package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// CopingRequest asks for the plain strips that bring a quilt to a size that a
// pieced border fits.
type CopingRequest struct {
	Conventions
	Quilt measure.Size   // finished
	Unit  measure.Length // of the pieced border, finished
}

// CopingSide is what one direction takes.
type CopingSide struct {
	Units         int            // of the border along this side
	Border        measure.Length // that they make
	StripFinished measure.Length // on each of the two edges; 0 where the side fits as it is
	StripCut      measure.Length // up to the ruler; trim it to fit
}

// CopingResult has the width, whose strips go on left and right, and the
// length, whose strips go on top and bottom.
type CopingResult struct {
	Width, Length           CopingSide
	WiderWidth, WiderLength CopingSide // with one unit more, where a strip is too thin to sew
	Working                 []Step
}

// Coping counts n = ⌈side/unit⌉ units and fills (n·unit − side)/2 on each edge.
// Source: http://www.patchworktimes.com/2009/07/01/making-a-pieced-border-fit/.
func Coping(r CopingRequest) (CopingResult, error) {
	err := cmp.Or(r.check(), wantSize("quilt", r.Quilt), wantLength("unit", r.Unit))
	if err != nil {
		return CopingResult{}, err
	}
	if units := max(r.Quilt.Width, r.Quilt.Length) / r.Unit; units >= maxCount {
		return CopingResult{}, limit("unit", step("That is more than %v units on a side.", maxCount), Step{})
	}
	c := CopingResult{Width: r.side(r.Quilt.Width, 0), Length: r.side(r.Quilt.Length, 0),
		WiderWidth: r.side(r.Quilt.Width, 1), WiderLength: r.side(r.Quilt.Length, 1)}
	c.Working = append(r.working(r.Quilt.Width, c.Width), r.working(r.Quilt.Length, c.Length)...)
	return c, nil
}

// side fits units to one side, and as many more as are asked for.
func (r CopingRequest) side(quilt measure.Length, more int) CopingSide {
	n := int((quilt+r.Unit-1)/r.Unit) + more
	s := CopingSide{Units: n, Border: measure.Length(n) * r.Unit}
	if s.StripFinished = (s.Border - quilt) / 2; s.StripFinished > 0 {
		s.StripCut = r.CutUp(s.StripFinished + 2*r.Seam)
	}
	return s
}

func (r CopingRequest) working(quilt measure.Length, s CopingSide) []Step {
	if s.StripFinished == 0 {
		return []Step{step("%v is %v of %v and needs no strip.", quilt, counted(s.Units, "unit"), r.Unit)}
	}
	return []Step{
		step("%v of %v = %v.", counted(s.Units, "unit"), r.Unit, s.Border),
		step("(%v − %v) ÷ 2 = %v on each edge; with two seams cut %v.", s.Border, quilt, s.StripFinished, s.StripCut),
	}
}
