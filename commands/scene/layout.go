package scene

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// mostAcross is how many blocks are drawn in a row, and rows; a larger quilt is
// drawn as its lower left part, which is said.
const mostAcross = 16

// shownBlocks gives how many blocks across and down are drawn, and the words
// where that is not all of them.
func shownBlocks(across, down int) (c, r int, caption []string) {
	c, r = min(across, mostAcross), min(down, mostAcross)
	if c < across || r < down {
		caption = []string{fmt.Sprintf("Drawn is a part, %d by %d blocks of %d by %d.", c, r, across, down)}
	}
	return c, r, caption
}

// Layout shows the quilt's blocks, straight or on point.
func Layout(r calc.LayoutRequest, l calc.LayoutResult) Scene {
	show := shower(r.System)
	c, rows, caption := shownBlocks(l.Across, l.Down)
	s := Scene{Name: "layout", Caption: caption}
	var p Panel
	if r.Setting == calc.OnPointSetting {
		p.Shapes = onPoint(c, rows, l.Block.Width)
		s.Title = fmt.Sprintf("%d by %d blocks on point", l.Across, l.Down)
		s.Key = []Key{{Fill: Fabric1, Line: Edge, Text: fmt.Sprintf("%d blocks in the rows", l.Across*l.Down)},
			{Fill: Fabric2, Line: Edge, Text: fmt.Sprintf("%d in the gaps", l.Blocks-l.Across*l.Down)},
			{Fill: Ground, Line: Edge, Text: fmt.Sprintf("%d side triangles, %d corners", l.SideTriangles, l.Corners)}}
	} else {
		p.Shapes = straight(c, rows, l.Block)
		s.Title = fmt.Sprintf("%d by %d blocks", l.Across, l.Down)
		s.Key = []Key{{Fill: Fabric1, Line: Edge, Text: fmt.Sprintf("%d blocks of %s", l.Blocks, l.Block.Show(r.System))}}
	}
	if len(caption) == 0 {
		p.sized(Below, show(l.QuiltWidth))
		p.sized(LeftOf, show(l.QuiltLength))
	}
	s.Panels = []Panel{p}
	s.Alt = fmt.Sprintf("%s, %s in all, each %s finished. The quilt is %s.", s.Title, counted(l.Blocks, "block", "blocks"),
		l.Block.Show(r.System), measure.Size{Width: l.QuiltWidth, Length: l.QuiltLength}.Show(r.System))
	return s
}

// straight gives rows of blocks, two fills by turns.
func straight(across, down int, block measure.Size) []Shape {
	var shapes []Shape
	for j := range down {
		for i := range across {
			shapes = append(shapes, patch(Rect(many(i, block.Width), many(j, block.Length), block.Width, block.Length), Fabric((i+j)%2)))
		}
	}
	return shapes
}

// onPoint gives blocks that stand on a corner, those in the gaps between them,
// and the triangles along the edge.
func onPoint(across, down int, block measure.Length) []Shape {
	d := diagonalOf(block)
	h := d / 2
	stood := func(x, y measure.Length, f Fill) Shape {
		return patch(Outline{{x, y - h}, {x + h, y}, {x, y + h}, {x - h, y}}, f)
	}
	var shapes []Shape
	for j := range down {
		for i := range across {
			shapes = append(shapes, stood(many(2*i+1, h), many(2*j+1, h), Fabric1))
			if i+1 < across && j+1 < down {
				shapes = append(shapes, stood(many(2*i+2, h), many(2*j+2, h), Fabric2))
			}
		}
	}
	w, l := many(2*across, h), many(2*down, h)
	for i := 1; i < across; i++ {
		x := many(2*i, h)
		shapes = append(shapes, patch(Outline{{x - h, 0}, {x + h, 0}, {x, h}}, Ground), patch(Outline{{x + h, l}, {x - h, l}, {x, l - h}}, Ground))
	}
	for j := 1; j < down; j++ {
		y := many(2*j, h)
		shapes = append(shapes, patch(Outline{{0, y + h}, {0, y - h}, {h, y}}, Ground), patch(Outline{{w, y - h}, {w, y + h}, {w - h, y}}, Ground))
	}
	return append(shapes,
		patch(Outline{{0, 0}, {h, 0}, {0, h}}, Ground), patch(Outline{{w, 0}, {w, h}, {w - h, 0}}, Ground),
		patch(Outline{{w, l}, {w - h, l}, {w, l - h}}, Ground), patch(Outline{{0, l}, {0, l - h}, {h, l}}, Ground))
}

// SettingTriangles shows the squares for the triangles along the edge, and
// where they are cut.
func SettingTriangles(t calc.SettingTrianglesResult, system measure.System) Scene {
	show := shower(system)
	q, c := t.SideSquare, t.CornerSquare
	side := Panel{Title: "Side triangles: cut twice", Share: Half, Shapes: []Shape{
		{Outline: Rect(0, 0, q, q), Fill: Fabric1, Line: Edge}, line(Cut, Point{0, 0}, Point{q, q}), line(Cut, Point{0, q}, Point{q, 0}),
	}}
	corner := Panel{Title: "Corners: cut once", Share: Half, Shapes: []Shape{
		{Outline: Rect(0, 0, c, c), Fill: Fabric2, Line: Edge}, line(Cut, Point{0, 0}, Point{c, c}),
	}}
	side.sized(Below, show(q))
	corner.sized(Below, show(c))
	s := Scene{
		Name: "setting-triangles", Title: "Setting triangles",
		Alt: fmt.Sprintf("Two squares. One of %s is cut twice from corner to corner and gives four side triangles. One of %s is cut once and gives two corners. The straight grain lies along the quilt's edge both times.",
			show(q), show(c)),
		Panels:  []Panel{side, corner},
		Key:     []Key{{Line: Cut, Text: "cut"}},
		Caption: []string{"The sides of the squares, which follow the threads, end up where they keep the quilt's edge from stretching."},
	}
	if t.SideSquares > 0 {
		s.Caption = append(s.Caption, fmt.Sprintf("%s for %s, and %s for the corners.",
			counted(t.SideSquares, "square", "squares"), counted(t.SideTriangles, "side triangle", "side triangles"), counted(t.CornerSquares, "square", "squares")))
	}
	return s
}

// SettingTriangleTemplates are a side and a corner triangle in true size, with
// their seams.
func SettingTriangleTemplates(r calc.SettingTrianglesRequest, t calc.SettingTrianglesResult) Templates {
	show := shower(r.System)
	d := t.Diagonal
	h := d / 2
	side := Outline{{0, 0}, {d, 0}, {h, h}}   // its long edge is a block's diagonal
	corner := Outline{{0, 0}, {h, 0}, {0, h}} // its long edge is a block's side
	return Templates{
		Name: "setting-triangle-templates", Title: "Templates: setting triangles",
		Alt:   fmt.Sprintf("A side triangle and a corner triangle in true size, for blocks with a diagonal of %s.", show(d)),
		Notes: seamNotes(r.Seam, show),
		Pieces: []Template{
			{Title: "Side triangle", Says: []string{"long edge along the quilt's edge"}, Cut: side.Swollen(r.Seam), Sewn: side, Grain: Arrow{Point{h - h/4, h / 5}, Point{h + h/4, h / 5}}},
			{Title: "Corner", Cut: corner.Swollen(r.Seam), Sewn: corner, Grain: Arrow{Point{h / 6, h / 6}, Point{h / 2, h / 6}}},
		},
	}
}

// seamNotes says what the lines of a template mean.
func seamNotes(seam measure.Length, show func(measure.Length) string) []string {
	return []string{"Cut along the solid line, sew along the dashes: seams of " + show(seam) + " lie between them."}
}
