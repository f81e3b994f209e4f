package scene

import (
	"math"

	"counterhand/calc/measure"
)

// Point is a place: x to the right, y up.
type Point struct{ X, Y measure.Length }

// Plus gives the point moved by another's coordinates.
func (p Point) Plus(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// Polar gives the point at a distance from the origin, the angle counted from
// the right and against the clock, to the nearest nanometre.
func Polar(distance measure.Length, angle measure.Angle) Point {
	sin, cos := math.Sincos(angle.Radians())
	d := float64(distance)
	return Point{measure.Length(math.Round(d * cos)), measure.Length(math.Round(d * sin))}
}

// Outline is a line through points in order, closed unless it is said to be
// open. Curves are drawn through points so close together that the line keeps
// within [Flatness] of the curve.
type Outline []Point

// Flatness is how far an [Outline] may run inside the curve it stands for: a
// fiftieth of a millimetre, a fifth of what a true-size template is held to.
const Flatness = measure.Millimetre / 50

// Rect gives an upright rectangle from its lower left corner.
func Rect(x, y, width, height measure.Length) Outline {
	return Outline{{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}}
}

// Circle gives a circle.
func Circle(centre Point, radius measure.Length) Outline {
	arc := Arc(centre, radius, 0, 360)
	return arc[:len(arc)-1]
}

// Arc gives an open arc from one angle to another, both ends included; it runs
// with the clock where the second angle is the smaller.
func Arc(centre Point, radius measure.Length, from, to measure.Angle) Outline {
	n := arcSteps(radius, to-from)
	arc := make(Outline, n+1)
	for i := range arc {
		arc[i] = centre.Plus(Polar(radius, from+(to-from)*measure.Angle(i)/measure.Angle(n)))
	}
	return arc
}

// arcSteps is how many chords keep an arc within [Flatness]: the sagitta of a
// chord over the angle a is r(1 − cos(a/2)). Very large arcs get no more than
// 720 chords a turn, which is a hundredth of a thousandth of their radius.
func arcSteps(radius measure.Length, sweep measure.Angle) int {
	const most = 720
	turn := math.Abs(float64(sweep)) / 360
	if radius <= Flatness {
		return max(4, int(math.Ceil(8*turn)))
	}
	chord := 2 * math.Acos(1-float64(Flatness)/float64(radius))
	perTurn := min(most, math.Ceil(2*math.Pi/chord))
	return max(2, int(math.Ceil(perTurn*turn)))
}

// Moved gives the outline shifted.
func (o Outline) Moved(by Point) Outline {
	moved := make(Outline, len(o))
	for i, p := range o {
		moved[i] = p.Plus(by)
	}
	return moved
}

// Turned gives the outline turned about the origin, against the clock.
func (o Outline) Turned(by measure.Angle) Outline {
	sin, cos := math.Sincos(by.Radians())
	turned := make(Outline, len(o))
	for i, p := range o {
		x, y := float64(p.X), float64(p.Y)
		turned[i] = Point{measure.Length(math.Round(x*cos - y*sin)), measure.Length(math.Round(x*sin + y*cos))}
	}
	return turned
}

// Flipped gives the outline mirrored in the upright axis, its points still in
// the same sense of turning.
func (o Outline) Flipped() Outline {
	flipped := make(Outline, len(o))
	for i, p := range o {
		flipped[len(o)-1-i] = Point{-p.X, p.Y}
	}
	return flipped
}

// Extent gives the corners of the smallest upright rectangle around it.
func (o Outline) Extent() (low, high Point) {
	return Panel{Shapes: []Shape{{Outline: o}}}.Extent()
}

// Swollen gives a convex outline, its corners against the clock, with every
// side moved outwards by the same distance; a negative one moves them inwards.
// A seam line grown by the seam is the cut edge. Where sides would pass each
// other, what comes of it is no outline.
func (o Outline) Swollen(by measure.Length) Outline {
	out := make(Outline, len(o))
	for i, p := range o {
		before, after := o[(i+len(o)-1)%len(o)], o[(i+1)%len(o)]
		ux, uy := unit(before, p)
		vx, vy := unit(p, after)
		// Both sides pass the new corner at the distance: it lies on the sum of
		// their outer normals, stretched by 1 ÷ (1 + cosine between them).
		k := float64(by) / (1 + ux*vx + uy*vy)
		out[i] = Point{p.X + measure.Length(math.Round((uy+vy)*k)), p.Y - measure.Length(math.Round((ux+vx)*k))}
	}
	return out
}

// unit gives the direction from one point to another.
func unit(a, b Point) (x, y float64) {
	x, y = float64(b.X-a.X), float64(b.Y-a.Y)
	d := math.Hypot(x, y)
	if d == 0 {
		return 0, 0
	}
	return x / d, y / d
}
