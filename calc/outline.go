package calc

import (
	"math"

	"counterhand/calc/measure"
)

// Point is a place on cloth or paper, in inches, with y pointing up.
type Point struct{ X, Y float64 }

// Outline is a closed shape: its corners counter-clockwise, without the first
// one again at the end. Curves are given as corners so close together that they
// miss the true curve by less than a thousandth of an inch.
type Outline []Point

// curveMiss is how far the corners of a drawn curve may miss it, in inches.
const curveMiss = 0.001

// Area gives the enclosed area in square inches, positive for corners that run
// counter-clockwise.
func (o Outline) Area() float64 {
	sum := 0.0
	for i, p := range o {
		q := o[(i+1)%len(o)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum / 2
}

// Moved gives the outline moved by dx and dy.
func (o Outline) Moved(dx, dy float64) Outline {
	return o.each(func(p Point) Point { return Point{p.X + dx, p.Y + dy} })
}

// Turned gives the outline turned counter-clockwise about the origin.
func (o Outline) Turned(a measure.Angle) Outline {
	sin, cos := math.Sincos(a.Radians())
	return o.each(func(p Point) Point { return Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos} })
}

func (o Outline) each(f func(Point) Point) Outline {
	out := make(Outline, len(o))
	for i, p := range o {
		out[i] = f(p)
	}
	return out
}

// Bounds gives the lower left and the upper right corner of the box around the
// outline.
func (o Outline) Bounds() (low, high Point) {
	if len(o) == 0 {
		return Point{}, Point{}
	}
	low, high = o[0], o[0]
	for _, p := range o[1:] {
		low = Point{min(low.X, p.X), min(low.Y, p.Y)}
		high = Point{max(high.X, p.X), max(high.Y, p.Y)}
	}
	return low, high
}

// rectangle gives an upright rectangle with its lower left corner at the origin.
func rectangle(width, height float64) Outline {
	return Outline{{0, 0}, {width, 0}, {width, height}, {0, height}}
}

// arc gives points on a circle from one angle to another, both in radians and
// both included; to may be smaller than from.
func arc(centre Point, radius, from, to float64) Outline {
	steps := 1
	if radius > curveMiss {
		steps = max(1, int(math.Ceil(math.Abs(to-from)/(2*math.Acos(1-curveMiss/radius)))))
	}
	steps = min(steps, 2000) // a kilometre of curve is drawn coarser
	o := make(Outline, steps+1)
	for i := range o {
		sin, cos := math.Sincos(from + (to-from)*float64(i)/float64(steps))
		o[i] = Point{centre.X + radius*cos, centre.Y + radius*sin}
	}
	return o
}

// circle gives a whole circle around the origin.
func circle(radius float64) Outline {
	o := arc(Point{}, radius, 0, 2*math.Pi)
	return o[:len(o)-1]
}
