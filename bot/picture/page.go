package picture

import (
	"image/color"
	"math"

	"github.com/tdewolff/canvas"
)

// page is a drawing with everything in its place, in millimetres from the upper
// left corner, y up: what lies on the page has a negative y. It is what all
// formats are written from, and what the tests measure.
type page struct {
	width, height float64
	inks          []ink
	texts         []text
}

// ink is one path with its style.
type ink struct {
	path  *canvas.Path
	style canvas.Style
}

// text is one line of writing.
type text struct {
	x, y    float64 // where its baseline begins
	words   string
	size    float64 // in points
	bold    bool
	upright bool       // reads from below to above
	halo    color.RGBA // shows around it, so that it reads on any fill; none where transparent
	width   float64
}

// box is an upright rectangle.
type box struct{ x0, y0, x1, y1 float64 }

func (b box) overlaps(c box) bool {
	return b.x0 < c.x1 && c.x0 < b.x1 && b.y0 < c.y1 && c.y0 < b.y1
}

func (b box) grown(by float64) box { return box{b.x0 - by, b.y0 - by, b.x1 + by, b.y1 + by} }

// box is the room that the writing takes.
func (t text) box() box {
	up, down := t.size*mmPerPoint*ascent, t.size*mmPerPoint*descent
	if t.upright {
		return box{t.x - up, t.y, t.x + down, t.y + t.width}
	}
	return box{t.x, t.y - down, t.x + t.width, t.y + up}
}

// centred makes a line of writing around a place.
func centred(words string, size, width, x, y float64, upright bool) text {
	rise := size * mmPerPoint * (ascent - descent) / 2
	t := text{x: x - width/2, y: y - rise, words: words, size: size, width: width, upright: upright}
	if upright {
		t.x, t.y = x+rise, y-width/2
	}
	return t
}

// shrunk gives the writing in a smaller size around the same place.
func (t text) shrunk(size float64) text {
	b := t.box()
	s := centred(t.words, size, t.width*size/t.size, (b.x0+b.x1)/2, (b.y0+b.y1)/2, t.upright)
	s.bold, s.halo = t.bold, t.halo
	return s
}

// ink adds a path.
func (g *page) ink(p *canvas.Path, s canvas.Style) {
	if !p.Empty() {
		g.inks = append(g.inks, ink{p, s})
	}
}

// draw puts the page on a renderer, lowered by the page's own height so that it
// stands above the renderer's origin.
func (g *page) draw(r canvas.Renderer, p *pens) {
	m := canvas.Identity.Translate(0, g.height)
	for _, i := range g.inks {
		r.RenderPath(i.path, i.style, m)
	}
	for _, t := range g.texts {
		if t.halo.A > 0 {
			r.RenderPath(boxPath(t.box().grown(0.3)), fillStyle(t.halo), m)
		}
	}
	for _, t := range g.texts {
		line := canvas.NewTextLine(p.face(t.bold, t.size), t.words, canvas.Left)
		at := m.Translate(t.x, t.y)
		if t.upright {
			at = at.Rotate(90)
		}
		r.RenderText(line, at)
	}
}

func boxPath(b box) *canvas.Path {
	return polyline([][2]float64{{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}}, true)
}

// polyline makes a path through points.
func polyline(points [][2]float64, closed bool) *canvas.Path {
	p := &canvas.Path{}
	for i, q := range points {
		if i == 0 {
			p.MoveTo(round(q[0]), round(q[1]))
		} else {
			p.LineTo(round(q[0]), round(q[1]))
		}
	}
	if closed && len(points) > 2 {
		p.Close()
	}
	return p
}

// round keeps coordinates to a thousandth of a millimetre, which is finer than
// any printer and keeps files small.
func round(v float64) float64 { return math.Round(v*1000) / 1000 }

// dot is a small round mark.
func dot(x, y, radius float64) *canvas.Path {
	const sides = 12
	points := make([][2]float64, sides)
	for i := range points {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / sides)
		points[i] = [2]float64{x + radius*cos, y + radius*sin}
	}
	return polyline(points, true)
}
