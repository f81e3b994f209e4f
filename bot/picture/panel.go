package picture

import (
	"image/color"
	"math"

	"counterhand/calc/measure"
	"counterhand/commands/scene"
)

// highest is how high a panel's drawing may be.
func highest(s scene.Share) float64 {
	switch s {
	case scene.Half:
		return 75
	case scene.Third:
		return 60
	default:
		return 100
	}
}

// frame turns places on cloth into places on the page.
type frame struct {
	low    scene.Point // the drawing's lower left corner on cloth
	x, y   float64     // and on the page
	scale  float64     // millimetres on the page for a nanometre
	width  float64     // of the drawing on the page
	height float64
	over   float64 // by how much words beside the drawing stand out above and below it
}

func (f frame) at(p scene.Point) (x, y float64) {
	return f.x + float64(p.X-f.low.X)*f.scale, f.y + float64(p.Y-f.low.Y)*f.scale
}

// outline gives an outline on the page, leaving out points too close together
// to be seen.
func (f frame) outline(o scene.Outline) [][2]float64 {
	const near = 0.06
	var points [][2]float64
	for i, p := range o {
		x, y := f.at(p)
		if n := len(points); n > 0 && i < len(o)-1 && math.Abs(points[n-1][0]-x)+math.Abs(points[n-1][1]-y) < near {
			continue
		}
		points = append(points, [2]float64{x, y})
	}
	return points
}

// panel draws one panel between two margins and takes the page down by it.
// From outside to inside there are the title, the column of notes at the right,
// the dimension lines, and the drawing.
func (t *setter) panel(p scene.Panel, x, width, height float64) {
	if p.Title != "" {
		t.paragraph(p.Title, x, width, headingSize, false)
		t.y -= 1
	}
	column := 0.0
	if len(p.Notes) > 0 {
		column = min(max(0.3*width, 18), 38)
	}
	notes := t.notes(p.Notes, column-gap)
	f, sizes := t.fit(p, x, width-column, highest(p.Share)*height)

	below, above := sizes.depth(scene.Below), sizes.depth(scene.Above)
	total := max(above+max(f.height, sizes.longest)+below, notes.height)
	f.y = t.y - total + below + (total-above-below-f.height)/2
	for _, s := range p.Shapes {
		t.paint(f.outline(s.Outline), s.Open, s.Fill, s.Line)
	}
	t.dimensions(sizes, f)
	t.callouts(notes, f, x+width-column+gap, t.y, total)
	t.labels(p.Shapes, f)
	t.y -= total
	for _, words := range sizes.spilled {
		t.paragraph(words, x, width, smallSize, false)
	}
}

// fit finds the scale at which the drawing and all its dimension lines have
// room between two margins, arranges the lines and puts the drawing between
// them. How high it lies is left open.
func (t *setter) fit(p scene.Panel, x, width, height float64) (frame, lanes) {
	low, high := p.Extent()
	w, h := float64(max(high.X-low.X, 1)), float64(max(high.Y-low.Y, 1))
	sizes := t.lanes(p.Sizes, width)
	beside := sizes.most(scene.LeftOf) + sizes.most(scene.RightOf)
	f := frame{low: low, scale: min(max(width-beside, width/4)/w, height/h)}
	f.width, f.height = w*f.scale, h*f.scale
	f.over = max(0, sizes.longest-f.height) / 2
	sizes.arrange(f, true, box{y0: -f.over, y1: f.height + f.over})
	left, right := sizes.depth(scene.LeftOf), sizes.depth(scene.RightOf)
	f.x = x + left + (width-left-right-f.width)/2
	sizes.arrange(f, false, box{x0: x - f.x, x1: x + width - f.x})
	return f, sizes
}

// labels writes on the shapes what fits on them, all of it in one size.
func (t *setter) labels(shapes []scene.Shape, f frame) {
	var placed []text
	var taken []box
	smallest := bodySize
	for _, s := range shapes {
		if s.Label == (scene.Label{}) || s.Open {
			continue
		}
		points := f.outline(s.Outline)
		for _, words := range []string{s.Label.Long, s.Label.Short} {
			if label, fits := t.label(t.writable(words), points, taken); fits {
				label.halo = haloOf(s.Fill)
				placed = append(placed, label)
				taken = append(taken, label.box().grown(0.4))
				smallest = min(smallest, label.size)
				break
			}
		}
	}
	for _, l := range placed {
		t.texts = append(t.texts, l.shrunk(smallest))
	}
}

// haloOf is what shows around words on a fill: the fill itself where it is
// plain, else paper.
func haloOf(f scene.Fill) color.RGBA {
	if look := lookOf(f); f != scene.Empty && look.angles == nil {
		return look.color
	}
	return paperColor
}

// label finds the largest size at which words fit inside an outline, level or,
// where that does not work, upright.
func (t *setter) label(words string, points [][2]float64, taken []box) (text, bool) {
	if words == "" || len(words) > mostLabel {
		return text{}, false
	}
	x, y := middle(points)
	for _, upright := range []bool{false, true} {
		for _, size := range []float64{bodySize, smallSize, 7, tinySize} {
			l := centred(words, size, t.measure(words, false, size), x, y, upright)
			if b := l.box().grown(0.4); within(b, points) && !overlapsAny(b, taken) {
				return l, true
			}
		}
	}
	return text{}, false
}

func overlapsAny(b box, others []box) bool {
	for _, o := range others {
		if b.overlaps(o) {
			return true
		}
	}
	return false
}

// middle is the centre of gravity of an outline, or the mean of its points
// where it has no area.
func middle(points [][2]float64) (x, y float64) {
	area, mx, my := 0.0, 0.0, 0.0
	for i, a := range points {
		b := points[(i+1)%len(points)]
		c := a[0]*b[1] - b[0]*a[1]
		area += c
		x += (a[0] + b[0]) * c
		y += (a[1] + b[1]) * c
		mx, my = mx+a[0], my+a[1]
	}
	if n := float64(len(points)); math.Abs(area) < 1e-9 {
		return mx / n, my / n
	}
	return x / (3 * area), y / (3 * area)
}

// within tells whether a box lies inside a closed outline: its middle does and
// no edge of the outline comes into it.
func within(b box, points [][2]float64) bool {
	x, y := (b.x0+b.x1)/2, (b.y0+b.y1)/2
	inside := false
	for i, p := range points {
		q := points[(i+1)%len(points)]
		if touches(b, p, q) {
			return false
		}
		if (p[1] <= y) != (q[1] <= y) && x < p[0]+(y-p[1])/(q[1]-p[1])*(q[0]-p[0]) {
			inside = !inside
		}
	}
	return inside
}

// touches tells whether a straight line comes into a box.
func touches(b box, p, q [2]float64) bool {
	_, _, in := clip(b, p, q)
	return in
}

// clip gives the part of a straight line that lies in a box, by the parameters
// of its ends (Liang and Barsky 1984).
func clip(b box, p, q [2]float64) (from, to float64, in bool) {
	from, to = 0, 1
	dx, dy := q[0]-p[0], q[1]-p[1]
	for _, side := range [4][2]float64{{-dx, p[0] - b.x0}, {dx, b.x1 - p[0]}, {-dy, p[1] - b.y0}, {dy, b.y1 - p[1]}} {
		d, room := side[0], side[1]
		switch {
		case d == 0 && room < 0:
			return 0, 0, false
		case d < 0:
			from = max(from, room/d)
		case d > 0:
			to = min(to, room/d)
		}
	}
	return from, to, from <= to
}

// onPage gives a length on the page at a frame's scale.
func (f frame) onPage(l measure.Length) float64 { return float64(l) * f.scale }
