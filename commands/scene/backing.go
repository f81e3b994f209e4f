package scene

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// Backing shows the panels sewn together, their seams, and the quilt on them.
func Backing(r calc.BackingRequest, b calc.BackingResult) Scene {
	show := shower(r.System)
	usable := r.UsableWidth
	if r.WideCloth {
		usable = r.WideBacking
	}
	level := b.Seams == calc.HorizontalSeams || b.Seams == calc.NoSeams && b.PanelLength != b.BackingLength
	n, caption := drawn(b.Panels, mostStrips, "panels")
	p := Panel{Shapes: panels(n, usable, b.PanelLength, r.PanelSeam, level)}
	low, high := p.Extent()
	centre := Point{(low.X + high.X) / 2, (low.Y + high.Y) / 2}
	corner := Point{centre.X - r.Quilt.Width/2, centre.Y - r.Quilt.Length/2}
	p.Shapes = append(p.Shapes, Shape{Outline: Rect(corner.X, corner.Y, r.Quilt.Width, r.Quilt.Length), Line: Sewn})
	across, along := Below, LeftOf
	if level {
		across, along = LeftOf, Below
	}
	p.sized(across, acrossWords(b, show))
	p.sized(along, show(b.PanelLength))
	p.Notes = []Note{{Point{corner.X + r.Quilt.Width, centre.Y}, fmt.Sprintf("The quilt, %s, with %s to spare on each side.", r.Quilt.Show(r.System), show(r.Overage))}}
	return Scene{
		Name:    "backing",
		Title:   "Backing: " + counted(b.Panels, "panel", "panels"),
		Alt:     fmt.Sprintf("%s, each %s long. %s The quilt, %s, lies in the middle.", counted(b.Panels, "panel", "panels"), show(b.PanelLength), seamWords(b.BackingWay), r.Quilt.Show(r.System)),
		Panels:  []Panel{p},
		Key:     []Key{{Fill: Fabric1, Line: Edge, Text: "panels, cut as wide as the fabric"}, {Line: Sewn, Text: "edge of the quilt"}},
		Caption: append([]string{fmt.Sprintf("The backing has to be %s; trim what is more.", measure.Size{Width: b.BackingWidth, Length: b.BackingLength}.Show(r.System))}, caption...),
	}
}

func acrossWords(b calc.BackingResult, show func(measure.Length) string) string {
	if b.Panels == 1 {
		return show(b.Across) + ", one width of fabric"
	}
	return fmt.Sprintf("%s from %d widths", show(b.Across), b.Panels)
}

func seamWords(w calc.BackingWay) string {
	switch {
	case w.Panels < 2:
		return "No seam."
	case w.Seams == calc.HorizontalSeams:
		return fmt.Sprintf("%s from side to side.", counted(w.Panels-1, "seam runs", "seams run"))
	default:
		return fmt.Sprintf("%s from top to bottom.", counted(w.Panels-1, "seam runs", "seams run"))
	}
}

// panels gives sewn panels side by side, or one below the other. Each loses a
// seam allowance on every edge that is sewn.
func panels(n int, width, length, seam measure.Length, level bool) []Shape {
	var shapes []Shape
	var at measure.Length
	for i := range n {
		w := width
		if i > 0 {
			w -= seam
		}
		if i < n-1 {
			w -= seam
		}
		o := Rect(at, 0, w, length)
		if level {
			o = Rect(0, -at-w, length, w)
		}
		shapes = append(shapes, Shape{Outline: o, Fill: Fabric(i % 2), Line: Edge, Label: Label{Long: fmt.Sprintf("panel %d", i+1), Short: fmt.Sprint(i + 1)}})
		at += w
	}
	return shapes
}
