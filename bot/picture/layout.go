package picture

import (
	"github.com/tdewolff/canvas"

	"counterhand/commands/scene"
)

// Measures of a picture, in millimetres. The width suits a column of chat; the
// height follows from what is drawn.
const (
	pictureWidth = 130.0
	edgeMargin   = 5.0
	gap          = 4.0
)

// setter puts things on a page from the top down.
type setter struct {
	page
	*pens
	y float64 // how far down the page is taken
}

// layScene puts a scene on a page of its own.
func layScene(s scene.Scene, p *pens) page {
	t := &setter{page: page{width: pictureWidth}, pens: p, y: -edgeMargin}
	t.place(s, edgeMargin, pictureWidth-2*edgeMargin, 1)
	t.height = edgeMargin - t.y
	return t.page
}

// place puts a scene between two margins, below what is there already. Its
// drawings are no higher than the given part of their usual height.
func (t *setter) place(s scene.Scene, x, width, height float64) {
	t.paragraph(s.Title, x, width, titleSize, false)
	for _, row := range rows(s.Panels) {
		t.y -= gap / 2
		t.row(row, x, width, height)
		t.y -= gap / 2
	}
	t.key(s.Key, x, width)
	for _, c := range s.Caption {
		t.paragraph(c, x, width, smallSize, false)
	}
}

// paragraph writes words in lines from the top down.
func (t *setter) paragraph(words string, x, width, size float64, bold bool) {
	for _, line := range t.wrap(t.writable(words), bold, size, width) {
		t.y -= size * mmPerPoint * lineHeight
		t.write(line, x, t.y+size*mmPerPoint*(lineHeight-ascent-0.04), size, bold)
	}
}

// write puts one line with its baseline at a height.
func (t *setter) write(line string, x, y, size float64, bold bool) {
	t.texts = append(t.texts, text{x: x, y: y, words: line, size: size, bold: bold, width: t.measure(line, bold, size)})
}

// measure gives the width of a line; setter.width is the page's own.
func (t *setter) measure(line string, bold bool, size float64) float64 {
	return t.pens.width(line, bold, size)
}

// parts is a panel's share in sixths.
func parts(s scene.Share) int {
	switch s {
	case scene.Half:
		return 3
	case scene.Third:
		return 2
	default:
		return 6
	}
}

// rows breaks panels into rows as wide as the picture.
func rows(panels []scene.Panel) [][]scene.Panel {
	var out [][]scene.Panel
	room := 0
	for _, p := range panels {
		n := parts(p.Share)
		if n > room {
			out, room = append(out, nil), 6
		}
		room -= n
		out[len(out)-1] = append(out[len(out)-1], p)
	}
	return out
}

// row draws panels side by side; they take the whole width between them.
func (t *setter) row(panels []scene.Panel, x, width, height float64) {
	total := 0
	for _, p := range panels {
		total += parts(p.Share)
	}
	top, lowest := t.y, t.y
	width -= gap * float64(len(panels)-1)
	for _, p := range panels {
		w := width * float64(parts(p.Share)) / float64(total)
		t.y = top
		t.panel(p, x, w, height)
		lowest = min(lowest, t.y)
		x += w + gap
	}
	t.y = lowest
}

// Measures of the key.
const (
	swatchWidth  = 7.0
	swatchHeight = 3.6
)

// key says what fills and lines mean, as many entries to a line as fit.
func (t *setter) key(entries []scene.Key, x, width float64) {
	if len(entries) == 0 {
		return
	}
	const indent = swatchWidth + 1.5
	rowHeight := max(swatchHeight+1, smallSize*mmPerPoint*lineHeight)
	at := x
	for _, k := range entries {
		lines := t.wrap(t.writable(k.Text), false, smallSize, width-indent)
		w := indent
		for _, line := range lines {
			w = max(w, indent+t.measure(line, false, smallSize))
		}
		if at > x && at+w > x+width {
			at, t.y = x, t.y-rowHeight
		}
		t.swatch(k, at, t.y-rowHeight)
		y := t.y
		t.y -= (rowHeight - smallSize*mmPerPoint*lineHeight) / 2
		t.paragraph(k.Text, at+indent, width-indent, smallSize, false)
		if len(lines) > 1 {
			at = x
			continue
		}
		t.y = y
		at += w + gap
	}
	if at > x {
		t.y -= rowHeight
	}
	t.y -= 1
}

// swatch shows a fill in its line, or a line alone.
func (t *setter) swatch(k scene.Key, x, y float64) {
	points := [][2]float64{{x, y + 0.5}, {x + swatchWidth, y + 0.5}, {x + swatchWidth, y + 0.5 + swatchHeight}, {x, y + 0.5 + swatchHeight}}
	if k.Fill == scene.Empty && k.Line != scene.NoLine {
		mid := y + 0.5 + swatchHeight/2
		points = [][2]float64{{x, mid}, {x + swatchWidth, mid}}
		t.paint(points, true, k.Fill, k.Line)
		return
	}
	t.paint(points, false, k.Fill, max(k.Line, scene.Edge))
}

// paint draws an outline with its fill and line.
func (t *setter) paint(points [][2]float64, open bool, f scene.Fill, l scene.Line) {
	if f != scene.Empty && !open {
		look := lookOf(f)
		t.ink(polyline(points, true), fillStyle(look.color))
		if lines := hatch(points, look.texture); !lines.Empty() {
			style := strokeStyle(inkColor, hatched)
			if look.dots {
				style = strokeStyle(inkColor, 2*hatched, 0.5, 1.1)
			}
			t.ink(lines, style)
		}
	}
	if style, drawn := lineStyle(l); drawn {
		t.ink(polyline(points, !open), style)
	}
}

// line draws one straight line.
func (t *setter) line(x0, y0, x1, y1 float64, s canvas.Style) {
	t.ink(polyline([][2]float64{{x0, y0}, {x1, y1}}, false), s)
}
