package calc

import (
	"cmp"
	"math"

	"counterhand/calc/measure"
)

// Edge is the edge of a quilt, all the way round. Make one with
// [RectangleEdge], [CircleEdge], [PolygonEdge] or [MeasuredEdge].
type Edge struct {
	Perimeter measure.Length

	working Step
	err     error // what is wrong with the shape, told when the outline is used
}

// RectangleEdge is the outline of a quilt with four straight sides.
func RectangleEdge(z measure.Size) Edge {
	if err := wantSize("quilt", z); err != nil {
		return Edge{err: err}
	}
	p := 2*z.Width + 2*z.Length
	return Edge{Perimeter: p, working: step("Round the quilt: 2 × %v + 2 × %v = %v.", z.Width, z.Length, p)}
}

// CircleEdge is the outline of a round quilt: π times its diameter, up to the
// nanometre.
func CircleEdge(diameter measure.Length) Edge {
	if err := wantLength("diameter", diameter); err != nil {
		return Edge{err: err}
	}
	p := measure.Length(math.Ceil(math.Pi * float64(diameter)))
	return Edge{Perimeter: p, working: step("Round the circle: π × %v = %v.", diameter, Unrounded(p))}
}

// PolygonEdge is the outline of a quilt with equal sides, such as a hexagon of six.
func PolygonEdge(sides int, side measure.Length) Edge {
	err := cmp.Or(wantCount("sides", sides), wantLength("side", side))
	if err == nil && sides < 3 {
		err = limit("sides", step("%v sides close no shape.", sides), step("3 sides are the least."))
	}
	p := measure.Length(sides) * side
	if err == nil && p > 4*maxLength {
		err = limit("side", step("%v sides of %v are more than this reckons with.", sides, side), Step{})
	}
	if err != nil {
		return Edge{err: err}
	}
	return Edge{Perimeter: p, working: step("Round the edge: %v × %v = %v.", sides, side, Unrounded(p))}
}

// MeasuredEdge is an edge whose length has been measured.
func MeasuredEdge(perimeter measure.Length) Edge {
	if err := wantLength("perimeter", perimeter); err != nil {
		return Edge{err: err}
	}
	return Edge{Perimeter: perimeter, working: step("Round the edge: %v.", Unrounded(perimeter))}
}

// check refuses an edge that was refused when it was made, or never made.
func (o Edge) check() error {
	if o.err == nil && o.Perimeter <= 0 {
		return wantLength("perimeter", o.Perimeter)
	}
	return o.err
}
