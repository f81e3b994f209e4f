package picture

import (
	"math"
	"slices"

	"github.com/tdewolff/canvas"
)

// hatch gives the lines of a texture inside a closed outline, as an open path.
// The library's own patterns clip by a general sweep, which is too slow for
// hundreds of patches; straight lines against straight edges need no sweep.
func hatch(outline [][2]float64, t texture) *canvas.Path {
	p := &canvas.Path{}
	for _, a := range t.angles {
		hatchLines(p, outline, a*math.Pi/180, t.spacing)
	}
	return p
}

// hatchLines adds the lines of one direction. They are spaced from the page's
// origin and not from the shape, so that neighbours of one fabric run on.
func hatchLines(p *canvas.Path, outline [][2]float64, angle, spacing float64) {
	sin, cos := math.Sincos(angle)
	low, high := math.Inf(1), math.Inf(-1)
	turned := make([][2]float64, len(outline))
	for i, q := range outline {
		turned[i] = [2]float64{q[0]*cos + q[1]*sin, q[1]*cos - q[0]*sin}
		low, high = min(low, turned[i][1]), max(high, turned[i][1])
	}
	for k := math.Ceil(low/spacing + 1e-9); k*spacing < high; k++ {
		y := k * spacing
		cuts := crossings(turned, y)
		for i := 0; i+1 < len(cuts); i += 2 {
			x0, x1 := cuts[i], cuts[i+1]
			if x1-x0 < 0.05 {
				continue
			}
			p.MoveTo(round(x0*cos-y*sin), round(x0*sin+y*cos))
			p.LineTo(round(x1*cos-y*sin), round(x1*sin+y*cos))
		}
	}
}

// crossings gives where a level line meets a closed outline, from left to
// right. An edge counts from its lower end up to but without its upper end, so
// that a corner is met once.
func crossings(outline [][2]float64, y float64) []float64 {
	var xs []float64
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a[1] <= y) != (b[1] <= y) {
			xs = append(xs, a[0]+(y-a[1])/(b[1]-a[1])*(b[0]-a[0]))
		}
	}
	slices.Sort(xs)
	return xs
}
