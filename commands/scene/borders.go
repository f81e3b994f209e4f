package scene

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// mostBorders is how many borders are drawn.
const mostBorders = 12

// Borders shows a quilt with its borders, from the inside out, and how their
// corners are made.
func Borders(r calc.BordersRequest, b calc.BordersResult) Scene {
	show := shower(r.System)
	n, caption := drawn(len(b.Borders), mostBorders, "borders")
	w, l := r.Quilt.Width, r.Quilt.Length
	p := Panel{Shapes: []Shape{{Outline: Rect(-w/2, -l/2, w, l), Fill: Ground, Line: Edge,
		Label: Label{Long: "quilt " + r.Quilt.Show(r.System), Short: "quilt"}}}}
	alt := fmt.Sprintf("A quilt of %s with %s.", r.Quilt.Show(r.System), counted(len(b.Borders), "border", "borders"))
	for i, border := range b.Borders[:n] {
		p.Shapes = append(p.Shapes, borderShapes(r.Corners, w, l, border.Width, Fabric(i))...)
		says := borderWords(i, len(b.Borders), r.Corners, border, show)
		p.Notes = append(p.Notes, Note{Point{w/2 + border.Width/2, l/4 - many(i, l/8/measure.Length(n))}, says})
		alt += " " + says
		w, l = w+2*border.Width, l+2*border.Width
	}
	p.sized(Below, show(w))
	p.sized(LeftOf, show(l))
	return Scene{Name: "borders", Title: "Borders, " + string(r.Corners), Alt: alt, Panels: []Panel{p}, Caption: caption}
}

func borderWords(i, of int, c calc.Corners, b calc.Border, show func(measure.Length) string) string {
	name := "Border"
	if of > 1 {
		name = fmt.Sprintf("Border %d", i+1)
	}
	words := fmt.Sprintf("%s, %s finished: 2 sides of %s, top and bottom of %s, strips %s wide", name, show(b.Width), show(b.SideCut), show(b.TopCut), show(b.StripWidth))
	if c == calc.SquaredCorners {
		words += fmt.Sprintf(", 4 squares of %s", show(b.Corner.Width))
	}
	return words + "."
}

// borderShapes gives the pieces of one border round a quilt in the middle.
func borderShapes(c calc.Corners, w, l, border measure.Length, f Fill) []Shape {
	x, y := w/2, l/2
	X, Y := x+border, y+border
	switch c {
	case calc.MitredCorners:
		side := Outline{{x, -y}, {X, -Y}, {X, Y}, {x, y}}
		top := Outline{{-x, y}, {x, y}, {X, Y}, {-X, Y}}
		return []Shape{patch(side, f), patch(side.Turned(180), f), patch(top, f), patch(top.Turned(180), f)}
	case calc.SquaredCorners:
		square := func(x, y measure.Length) Shape { return patch(Rect(x, y, border, border), Fabric(int(f-Fabric1)+4)) }
		return []Shape{
			patch(Rect(-X, -y, border, l), f), patch(Rect(x, -y, border, l), f), patch(Rect(-x, y, w, border), f), patch(Rect(-x, -Y, w, border), f),
			square(-X, -Y), square(x, -Y), square(-X, y), square(x, y),
		}
	default:
		return []Shape{
			patch(Rect(-X, -y, border, l), f), patch(Rect(x, -y, border, l), f),
			patch(Rect(-X, y, 2*X, border), f), patch(Rect(-X, -Y, 2*X, border), f),
		}
	}
}
