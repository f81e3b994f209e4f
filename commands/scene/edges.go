package scene

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// EdgeTriangles shows in three steps how a square becomes a folded triangle.
func EdgeTriangles(r calc.EdgeTrianglesRequest, e calc.EdgeTrianglesResult) Scene {
	show := shower(r.System)
	q := e.Square
	square := Panel{Title: "1. Fold once", Share: Third, Shapes: []Shape{{Outline: Rect(0, 0, q, q), Fill: Fabric1, Line: Edge}, line(Fold, Point{0, 0}, Point{q, q})}}
	square.sized(Below, show(q))
	d := diagonalOf(q)
	once := Panel{Title: "2. Fold again", Share: Third, Shapes: []Shape{{Outline: Outline{{0, 0}, {d, 0}, {d / 2, d / 2}}, Fill: Fabric2, Line: Edge}, line(Fold, Point{d / 2, 0}, Point{d / 2, d / 2})}}
	twice := Panel{Title: "3. Raw edges along the quilt", Share: Third, Shapes: []Shape{{Outline: Outline{{0, 0}, {q, 0}, {q / 2, q / 2}}, Fill: Fabric2, Line: Edge},
		line(Sewn, Point{r.Seam, r.Seam}, Point{q - r.Seam, r.Seam})}}
	twice.sized(Below, show(q))
	twice.Sizes = append(twice.Sizes, Size{Point{r.Seam, r.Seam}, Point{q - r.Seam, r.Seam}, Above, "shows " + show(e.AcrossEach)},
		Size{Point{q, r.Seam}, Point{q / 2, q / 2}, RightOf, show(e.Height)})
	s := Scene{
		Name: "edge-triangles", Title: "Folded triangle from a square of " + show(q),
		Alt: fmt.Sprintf("Three steps. A square of %s is folded from corner to corner, and again. Its raw edges lie along the quilt; sewn on, it shows %s along the seam and stands %s high.",
			show(q), show(e.AcrossEach), show(e.Height)),
		Panels: []Panel{square, once, twice}, Key: []Key{{Line: Fold, Text: "fold"}, {Line: Sewn, Text: "sewn"}},
	}
	if e.Points > 0 {
		s.Caption = []string{fmt.Sprintf("%d on each side and %d on the top and the bottom each, %d in all.", e.SidePoints, e.TopPoints, e.Points)}
	}
	return s
}

// Coping shows the quilt, the plain strips round it, and the pieced border.
func Coping(r calc.CopingRequest, c calc.CopingResult) Scene {
	show := shower(r.System)
	w, l := r.Quilt.Width, r.Quilt.Length
	x, y := c.Width.StripFinished, c.Length.StripFinished
	p := Panel{Shapes: []Shape{
		{Outline: Rect(-x, -y, w+2*x, l+2*y), Fill: Fabric2, Line: Edge},
		{Outline: Rect(0, 0, w, l), Fill: Ground, Line: Edge, Label: Label{Long: "quilt " + r.Quilt.Show(r.System), Short: "quilt"}},
	}}
	units, caption := unitBorder(c, Point{-x, -y}, r.Unit)
	p.Shapes = append(p.Shapes, units...)
	p.Sizes = []Size{
		{Point{-x, 0}, Point{w + x, 0}, Below, fmt.Sprintf("%d units, %s", c.Width.Units, show(c.Width.Border))},
		{Point{0, -y}, Point{0, l + y}, LeftOf, fmt.Sprintf("%d units, %s", c.Length.Units, show(c.Length.Border))},
	}
	p.Notes = []Note{
		{Point{w + x/2, l / 2}, stripWords("Left and right", c.Width, show)},
		{Point{w / 2, l + y/2}, stripWords("Top and bottom", c.Length, show)},
	}
	return Scene{
		Name: "coping-strips", Title: "Strips that make the border fit",
		Alt: fmt.Sprintf("A quilt of %s. %s %s The pieced border of %s units then fits: %d along the width and %d along the length.",
			r.Quilt.Show(r.System), stripWords("Left and right", c.Width, show), stripWords("Top and bottom", c.Length, show), show(r.Unit), c.Width.Units, c.Length.Units),
		Panels: []Panel{p}, Caption: caption,
		Key: []Key{{Fill: Fabric2, Line: Edge, Text: "plain strips"}, {Fill: Fabric1, Line: Edge, Text: "pieced border"}},
	}
}

func stripWords(where string, s calc.CopingSide, show func(measure.Length) string) string {
	if s.StripFinished == 0 {
		return where + ": no strip."
	}
	return fmt.Sprintf("%s: strips of %s finished, cut %s.", where, show(s.StripFinished), show(s.StripCut))
}

// unitBorder draws the units of a pieced border round a quilt; where they are
// too many, four plain borders.
func unitBorder(c calc.CopingResult, corner Point, u measure.Length) ([]Shape, []string) {
	w, l := c.Width.Border, c.Length.Border
	across, down := c.Width.Units, c.Length.Units
	if across+down > mostDrawn/2 {
		x, y := corner.X, corner.Y
		return []Shape{patch(Rect(x-u, y-u, w+2*u, u), Fabric1), patch(Rect(x-u, y+l, w+2*u, u), Fabric1), patch(Rect(x-u, y, u, l), Fabric1), patch(Rect(x+w, y, u, l), Fabric1)},
			[]string{"The units of the border are too many to be drawn one by one."}
	}
	var shapes []Shape
	unit := func(x, y measure.Length, i int) {
		shapes = append(shapes, patch(Rect(x, y, u, u), Fabric(2*(i&1))))
	}
	for i := range across {
		unit(corner.X+many(i, u), corner.Y-u, i)
		unit(corner.X+many(i, u), corner.Y+l, i)
	}
	for j := range down {
		unit(corner.X-u, corner.Y+many(j, u), j)
		unit(corner.X+w, corner.Y+many(j, u), j)
	}
	return shapes, nil
}

// Bed shows the quilt from above, and the mattress on which it hangs down.
func Bed(r calc.BedRequest, b calc.BedResult) Scene {
	show := shower(r.System)
	quilt := Rect(0, 0, b.QuiltWidth, b.QuiltLength)
	p := Panel{Shapes: []Shape{
		{Outline: quilt, Fill: Fabric2, Line: Outer},
		{Outline: Rect(r.SideDrop, r.FootDrop, b.MattressWidth, b.MattressLength), Fill: Ground, Line: Edge,
			Label: Label{Long: "mattress " + r.Mattress.Show(r.System), Short: "mattress"}},
	}}
	p.sized(Below, show(b.QuiltWidth))
	p.sized(LeftOf, show(b.QuiltLength))
	p.Sizes = append(p.Sizes, Size{Point{}, Point{r.SideDrop, 0}, Below, show(r.SideDrop)}, Size{Point{}, Point{0, r.FootDrop}, RightOf, "foot " + show(r.FootDrop)})
	if r.HeadDrop+r.Tuck > 0 {
		p.Sizes = append(p.Sizes, Size{Point{0, r.FootDrop + b.MattressLength}, Point{0, b.QuiltLength}, RightOf, "head " + show(r.HeadDrop+r.Tuck)})
	}
	return Scene{
		Name: "bed", Title: "Quilt on the bed",
		Alt: fmt.Sprintf("A quilt of %s on a mattress of %s: it hangs down %s on each side and %s at the foot.",
			measure.Size{Width: b.QuiltWidth, Length: b.QuiltLength}.Show(r.System), r.Mattress.Show(r.System), show(r.SideDrop), show(r.FootDrop)),
		Panels: []Panel{p},
		Key:    []Key{{Fill: Fabric2, Line: Outer, Text: "what hangs down or is tucked"}, {Fill: Ground, Line: Edge, Text: "mattress"}},
	}
}
