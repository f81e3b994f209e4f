package picture

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/tdewolff/canvas"

	"counterhand/commands/scene"
)

// templatePage draws one page of templates.
func (t *setter) templatePage(doc scene.Templates, pieces []placed, paper Paper, number, of int) {
	inner := paper.inner()
	t.y = inner.y1
	names := make([]string, len(pieces))
	for i, p := range pieces {
		names[i] = p.name
	}
	t.line1(strings.Join(names, "; "), inner, headingSize, true)
	t.line1(fmt.Sprintf("Page %d of %d on %s. Print at 100 %%, “actual size”; not fitted to the page.", number, of, paper.Name), inner, smallSize, false)

	var taken []box
	notes := doc.Notes
	for _, p := range pieces {
		if !t.piece(p, &taken) && len(p.Says) > 0 {
			notes = append(notes[:len(notes):len(notes)], p.Title+": "+strings.Join(p.Says, "; ")+".")
		}
	}
	t.foot(notes, pieces[0], inner)
}

// line1 writes one line, cut short where it is too long for the page.
func (t *setter) line1(words string, inner box, size float64, bold bool) {
	lines := t.wrap(t.writable(words), bold, size, inner.x1-inner.x0)
	if len(lines) > 1 {
		lines = t.wrap(t.writable(words), bold, size, inner.x1-inner.x0-t.measure(" …", bold, size))
		lines[0] += " …"
	}
	if len(lines) > 0 {
		t.y -= size * mmPerPoint * lineHeight
		t.write(lines[0], inner.x0, t.y+size*mmPerPoint*(lineHeight-ascent-0.04), size, bold)
	}
}

// piece draws a template or the part of it that belongs on the page, and tells
// whether what it says had room on it.
func (t *setter) piece(p placed, taken *[]box) (said bool) {
	t.clipped(p, p.Cut, false, scene.Cut)
	t.clipped(p, p.Sewn, false, scene.Sewn)
	for _, l := range p.Lines {
		t.clipped(p, l.Outline, true, l.Line)
	}
	if p.tile != nil {
		t.joins(*p.tile, p.part, taken)
	}
	t.grain(p, taken)
	said = t.says(p, taken)
	for _, l := range p.Lines {
		if len(l.Outline) > 1 {
			a, b := l.Outline[0], l.Outline[1]
			t.beside(p, scene.Point{X: a.X + (b.X-a.X)/4, Y: a.Y + (b.Y-a.Y)/4}, l.Text, taken)
		}
	}
	for _, n := range p.Points {
		const radius = 0.6
		if x, y := p.at(n.At); p.part.grown(-radius).holds(x, y) {
			t.ink(dot(x, y, radius), fillStyle(inkColor))
			t.beside(p, n.At, n.Text, taken)
		}
	}
	return said
}

func (b box) holds(x, y float64) bool { return b.x0 <= x && x <= b.x1 && b.y0 <= y && y <= b.y1 }

// inside tells whether a box lies in another.
func (b box) inside(c box) bool { return c.holds(b.x0, b.y0) && c.holds(b.x1, b.y1) }

// clipped draws what of an outline lies on the page. Where all of it does, it
// is one path, so that its corners are neat.
func (t *setter) clipped(p placed, o scene.Outline, open bool, l scene.Line) {
	style, drawn := lineStyle(l)
	if !drawn || len(o) < 2 {
		return
	}
	points := p.points(o)
	if !slices.ContainsFunc(points, func(q [2]float64) bool { return !p.part.grown(hairMM).holds(q[0], q[1]) }) {
		t.ink(polyline(points, !open), style)
		return
	}
	if !open {
		points = append(points, points[0])
	}
	path := &canvas.Path{}
	for i := 0; i+1 < len(points); i++ {
		a, b := points[i], points[i+1]
		from, to, in := clip(p.part, a, b)
		if !in || to-from <= 0 {
			continue
		}
		x, y := a[0]+from*(b[0]-a[0]), a[1]+from*(b[1]-a[1])
		if pos := path.Pos(); path.Empty() || from > 0 || math.Hypot(pos.X-x, pos.Y-y) > 0.01 {
			path.MoveTo(round(x), round(y))
		}
		path.LineTo(round(a[0]+to*(b[0]-a[0])), round(a[1]+to*(b[1]-a[1])))
	}
	t.ink(path, style)
}

// says writes the template's name and what it says in the middle of it, where
// that fits inside, and tells whether it did.
func (t *setter) says(p placed, taken *[]box) bool {
	outline := p.Cut
	if len(p.Sewn) > 0 {
		outline = p.Sewn
	}
	points := p.points(outline)
	x, y := middle(points)
	words := append([]string{p.Title}, p.Says...)
	for _, upright := range []bool{false, true} {
		for _, size := range []float64{bodySize, smallSize, 7, tinySize} {
			block := t.block(words, size, x, y, upright)
			if t.blockFits(block, points, p.part, *taken) {
				for _, l := range block {
					l.halo = paperColor
					t.texts = append(t.texts, l)
					*taken = append(*taken, l.box().grown(0.5))
				}
				return true
			}
		}
	}
	return false
}

// block sets lines one under the other around a place.
func (t *setter) block(lines []string, size, x, y float64, upright bool) []text {
	var out []text
	pitch := size * mmPerPoint * lineHeight
	for i, line := range lines {
		off := pitch * (float64(len(lines)-1)/2 - float64(i))
		words := t.writable(line)
		w := t.measure(words, false, size)
		if upright {
			out = append(out, centred(words, size, w, x-off, y, true))
		} else {
			out = append(out, centred(words, size, w, x, y+off, false))
		}
	}
	return out
}

func (t *setter) blockFits(block []text, points [][2]float64, part box, taken []box) bool {
	for _, l := range block {
		b := l.box().grown(0.8)
		if !within(b, points) || !b.inside(part) || overlapsAny(b, taken) {
			return false
		}
	}
	return true
}

// grain draws the arrow along the threads of the cloth.
func (t *setter) grain(p placed, taken *[]box) {
	if p.Grain == (scene.Arrow{}) {
		return
	}
	t.clipped(p, scene.Outline{p.Grain.From, p.Grain.To}, true, scene.Edge)
	x0, y0 := p.at(p.Grain.From)
	x1, y1 := p.at(p.Grain.To)
	t.arrowhead(p.part, x0, y0, x1, y1)
	t.arrowhead(p.part, x1, y1, x0, y0)
	*taken = append(*taken, box{min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)}.grown(1.2))
	t.beside(p, p.Grain.To, "grain", taken)
}

// arrowhead draws the point of an arrow at its end.
func (t *setter) arrowhead(part box, fromX, fromY, x, y float64) {
	const long, half = 3.0, 1.1
	length := math.Hypot(x-fromX, y-fromY)
	if length == 0 || !part.grown(-half).holds(x, y) {
		return
	}
	dx, dy := (x-fromX)/length, (y-fromY)/length
	footX, footY := x-long*dx, y-long*dy
	if !part.grown(-half).holds(footX, footY) {
		return
	}
	t.ink(polyline([][2]float64{{x, y}, {footX + half*dy, footY - half*dx}, {footX - half*dy, footY + half*dx}}, true), fillStyle(inkColor))
}

// beside writes words next to a place, at the first of eight sides where they
// meet nothing else; where there is none they are left out.
func (t *setter) beside(p placed, at scene.Point, words string, taken *[]box) {
	x, y := p.at(at)
	words = t.writable(words)
	if words == "" || !p.part.holds(x, y) {
		return
	}
	w := t.measure(words, false, smallSize)
	up := smallSize * mmPerPoint
	for _, side := range [][2]float64{{1, 0}, {-1, 0}, {0, -1}, {0, 1}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1}} {
		l := centred(words, smallSize, w, x+side[0]*(w/2+1.6), y+side[1]*(up/2+1.8), false)
		if b := l.box().grown(0.5); b.inside(p.part) && !overlapsAny(b, *taken) {
			l.halo = paperColor
			t.texts = append(t.texts, l)
			*taken = append(*taken, b)
			return
		}
	}
}

// joins draws where the page meets its neighbours: the line in the middle of
// the overlap, and two marks on it that lie on each other when the pages do.
// The joins of a template are numbered, first those between columns.
func (t *setter) joins(at tile, part box, taken *[]box) {
	middle := overlap / 2
	across, up := part.x1-part.x0, part.y1-part.y0
	beside := func(column int) int { return at.row*(at.columns-1) + column + 1 }
	above := func(row int) int { return at.rows*(at.columns-1) + row*at.columns + at.column + 1 }
	if at.has(at.column-1, at.row) {
		t.join(part.x0+middle, part.y0, 0, up, beside(at.column-1), taken)
	}
	if at.has(at.column+1, at.row) {
		t.join(part.x1-middle, part.y0, 0, up, beside(at.column), taken)
	}
	if at.has(at.column, at.row-1) {
		t.join(part.x0, part.y0+middle, across, 0, above(at.row-1), taken)
	}
	if at.has(at.column, at.row+1) {
		t.join(part.x0, part.y1-middle, across, 0, above(at.row), taken)
	}
}

// join draws one join from a place along a direction.
func (t *setter) join(x, y, dx, dy float64, number int, taken *[]box) {
	t.line(x, y, x+dx, y+dy, strokeStyle(faintColor, thin, 2, 2))
	for i, part := range []float64{1.0 / 3, 2.0 / 3} {
		mx, my := x+dx*part, y+dy*part
		const r = 2.5
		t.ink(circlePath(mx, my, r), strokeStyle(inkColor, plain))
		t.line(mx-1.6*r, my, mx+1.6*r, my, strokeStyle(inkColor, thin))
		t.line(mx, my-1.6*r, mx, my+1.6*r, strokeStyle(inkColor, thin))
		name := fmt.Sprintf("%d%c", number, 'a'+i)
		w := t.measure(name, false, smallSize)
		l := centred(name, smallSize, w, mx, my-2.3*r, false)
		if dx > 0 {
			l = centred(name, smallSize, w, mx+1.8*r+w/2, my, false)
		}
		l.halo = paperColor
		t.texts = append(t.texts, l)
		*taken = append(*taken, l.box().grown(0.5), box{mx - 1.6*r, my - 1.6*r, mx + 1.6*r, my + 1.6*r})
	}
}

func circlePath(x, y, radius float64) *canvas.Path {
	return canvas.Circle(radius).Translate(x, y)
}

// foot draws the check squares, what to do with them, and the map of pages.
func (t *setter) foot(notes []string, first placed, inner box) {
	x, y := inner.x0, inner.y0
	t.ink(boxPath(box{x, y, x + checkMetric, y + checkMetric}), strokeStyle(inkColor, plain))
	t.ink(boxPath(box{x, y, x + checkInch, y + checkInch}), strokeStyle(inkColor, plain))
	for _, label := range []struct {
		words string
		x, y  float64
	}{{"5 cm", x + checkMetric/2, y + (checkInch+checkMetric)/2}, {"1 in", x + checkInch/2, y + checkInch/2}} {
		t.texts = append(t.texts, centred(label.words, smallSize, t.measure(label.words, false, smallSize), label.x, label.y, false))
	}
	left, right := x+checkMetric+gap, inner.x1
	if first.tile != nil {
		const mapWidth = 42
		right -= mapWidth + gap
		t.pageMap(first, box{inner.x1 - mapWidth, y, inner.x1, y + checkMetric})
	}
	t.y = y + checkMetric
	for _, words := range append(howToPrint(first.tile != nil), notes...) {
		if lines := t.wrap(t.writable(words), false, smallSize, right-left); t.y-float64(len(lines))*lineRoom >= y {
			t.paragraph(words, left, right-left, smallSize, false)
			t.y -= 0.8
		}
	}
}

// howToPrint tells what the check squares are for.
func howToPrint(tiled bool) []string {
	words := []string{
		"Measure both squares before you cut: 1 in and 5 cm a side.",
		"If they are off, do not use the page. Print again at 100 % with “fit to page” off. If they are still off, set the scale to 5 ÷ (what the larger square measures in cm) × 100 %.",
	}
	if tiled {
		words = append(words, "Lay neighbouring pages over each other so that marks of one name meet, then tape them. The map shows where this page goes.")
	}
	return words
}

// pageMap draws the whole template small, with the pages that it lies on; the
// present one is grey.
func (t *setter) pageMap(p placed, room box) {
	at := *p.tile
	stepX, stepY := at.stepX, at.stepY
	w, h := stepX*float64(at.columns)+overlap, stepY*float64(at.rows)+overlap
	scale := min((room.x1-room.x0)/w, (room.y1-room.y0)/h)
	cell := func(column, row int) box {
		x, y := room.x0+float64(column)*stepX*scale, room.y0+float64(row)*stepY*scale
		return box{x, y, x + (stepX+overlap)*scale, y + (stepY+overlap)*scale}
	}
	t.ink(boxPath(cell(at.column, at.row)), fillStyle(lookOf(scene.Offcut).color))
	var taken []box
	for row := range at.rows {
		for column := range at.columns {
			if !at.has(column, row) {
				continue
			}
			b := cell(column, row)
			t.ink(boxPath(b), strokeStyle(faintColor, thin))
			number := fmt.Sprint(at.numbers[[2]int{column, row}])
			l := centred(number, tinySize, t.measure(number, false, tinySize), (b.x0+b.x1)/2, (b.y0+b.y1)/2, false)
			if lb := l.box(); lb.inside(b) && !overlapsAny(lb, taken) {
				taken = append(taken, lb)
				t.texts = append(t.texts, l)
			}
		}
	}
	small := frame{low: p.low, x: room.x0, y: room.y0, scale: p.scale * scale}
	t.ink(polyline(small.outline(p.Cut), true), strokeStyle(inkColor, plain))
}
