package questionstest

import "math"

// point is a place on the table, in inches.
type point struct{ x, y float64 }

func (p point) plus(q point) point       { return point{p.x + q.x, p.y + q.y} }
func (p point) minus(q point) point      { return point{p.x - q.x, p.y - q.y} }
func (p point) times(k float64) point    { return point{p.x * k, p.y * k} }
func (p point) cross(q point) float64    { return p.x*q.y - p.y*q.x }
func (p point) distance(q point) float64 { return math.Hypot(p.x-q.x, p.y-q.y) }
func (p point) unit() point              { return p.times(1 / math.Hypot(p.x, p.y)) }

// line goes through a point in a direction.
type line struct{ at, along point }

// meet is where two lines cross.
func (l line) meet(m line) point {
	t := m.at.minus(l.at).cross(m.along) / l.along.cross(m.along)
	return l.at.plus(l.along.times(t))
}

// moved is the parallel line at a distance to the left of its direction.
func (l line) moved(d float64) line {
	u := l.along.unit()
	return line{l.at.plus(point{-u.y, u.x}.times(d)), l.along}
}

// across is the horizontal line at a height.
func across(y float64) line { return line{point{0, y}, point{1, 0}} }

// upright is the vertical line through the origin, the centre line of a wedge.
var upright = line{point{0, 0}, point{0, 1}}

// withSeams draws every edge of a polygon, given anticlockwise, outward by a
// seam allowance and gives the corners that come out.
func withSeams(corners []point, allowance float64) []point {
	n := len(corners)
	edges := make([]line, n)
	for i, c := range corners {
		edges[i] = line{c, corners[(i+1)%n].minus(c)}.moved(-allowance)
	}
	out := make([]point, n)
	for i := range corners {
		out[i] = edges[(i+n-1)%n].meet(edges[i])
	}
	return out
}
