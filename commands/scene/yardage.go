package scene

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// Yardage shows the strips on the fabric and the pieces on the strips, in the
// order of cutting.
func Yardage(r calc.YardageRequest, y calc.YardageResult) Scene {
	show := shower(r.System)
	pieces := cloth{width: r.UsableWidth, along: y.Across, deep: y.StripWidth, perRow: y.PerStrip, count: r.Count, things: "pieces"}
	p, caption := pieces.panel(y.Strips, measure.Length(y.Buy)-y.Length)
	p.sized(Below, show(r.UsableWidth)+" usable width")
	p.Sizes = append(p.Sizes, Size{Point{}, Point{y.Across, 0}, Above, show(y.Across)},
		Size{Point{0, -y.StripWidth}, Point{}, RightOf, show(y.StripWidth)})
	return Scene{
		Name: "pieces-on-fabric", Title: fmt.Sprintf("%s from %s", counted(r.Count, "piece", "pieces"), y.Buy.Show(r.System)),
		Alt: fmt.Sprintf("%s, %s wide, cut across fabric of %s; each gives %s of %s.",
			counted(y.Strips, "strip", "strips"), show(y.StripWidth), show(r.UsableWidth), counted(y.PerStrip, "piece", "pieces"), y.Cut.Show(r.System)),
		Panels:  []Panel{p},
		Caption: append([]string{"Cut the strips first, in order, then the pieces from each."}, caption...),
		Key:     []Key{{Fill: Fabric1, Line: Cut, Text: "pieces of " + y.Cut.Show(r.System)}, {Fill: Offcut, Line: Edge, Text: "left over"}},
	}
}

// Pieces shows the pieces that a cut of fabric gives.
func Pieces(r calc.PiecesRequest, c calc.PiecesResult) Scene {
	lying := r.Piece
	if c.IsTurned {
		lying.Width, lying.Length = lying.Length, lying.Width
	}
	pieces := cloth{width: r.From.Width, along: lying.Width, deep: lying.Length, perRow: c.Across, count: c.Pieces, things: "pieces"}
	p, caption := pieces.panel(c.Down, c.Left)
	p.sized(Below, r.From.Width.Show(r.System))
	p.sized(LeftOf, r.From.Length.Show(r.System))
	return Scene{
		Name: "pieces-on-fabric", Title: fmt.Sprintf("%s of %s", counted(c.Pieces, "piece", "pieces"), r.Piece.Show(r.System)),
		Alt:     fmt.Sprintf("%s of %s from %s: %d across and %d down.", counted(c.Pieces, "piece", "pieces"), r.Piece.Show(r.System), r.From.Show(r.System), c.Across, c.Down),
		Panels:  []Panel{p},
		Caption: caption,
		Key:     []Key{{Fill: Fabric1, Line: Cut, Text: "pieces"}, {Fill: Offcut, Line: Edge, Text: "left over"}},
	}
}

// cloth is equal pieces in equal strips across fabric.
type cloth struct {
	width       measure.Length // of the fabric
	along, deep measure.Length // of a piece
	perRow      int
	count       int // of pieces wanted
	things      string
}

// panel draws the strips from the top, the pieces on them, and below them what
// is left of the fabric. Where there are too many pieces only the strips are
// drawn whole, and pieces on the first of them.
func (c cloth) panel(strips int, left measure.Length) (Panel, []string) {
	rows, caption := drawn(strips, mostStrips, "strips")
	var p Panel
	todo := c.count
	room := mostDrawn
	for row := range rows {
		y := -many(row+1, c.deep)
		n := min(c.perRow, todo)
		todo -= n
		p.Shapes = append(p.Shapes, Shape{Outline: Rect(0, y, c.width, c.deep), Fill: Offcut, Line: Edge})
		if n > room {
			p.Shapes = append(p.Shapes, Shape{Outline: Rect(0, y, many(n, c.along), c.deep), Fill: Fabric1, Line: Cut,
				Label: Label{Long: fmt.Sprintf("strip %d, %d %s", row+1, n, c.things), Short: fmt.Sprint(row + 1)}})
			continue
		}
		room -= n
		for i := range n {
			s := Shape{Outline: Rect(many(i, c.along), y, c.along, c.deep), Fill: Fabric1, Line: Cut}
			if i == 0 {
				s.Label = Label{Long: fmt.Sprintf("strip %d", row+1), Short: fmt.Sprint(row + 1)}
			}
			p.Shapes = append(p.Shapes, s)
		}
	}
	if left > 0 && rows == strips {
		p.Shapes = append(p.Shapes, Shape{Outline: Rect(0, -many(rows, c.deep)-left, c.width, left), Fill: Offcut, Line: Edge, Label: Label{Long: "left over"}})
	}
	return p, caption
}

// StripSet shows a sewn set of strips with its segments, and a block of them.
func StripSet(r calc.StripSetRequest, s calc.StripSetResult) Scene {
	show := shower(r.System)
	length := r.StripLength
	if length == 0 {
		length = r.UsableWidth
	}
	rows := max(1, r.Columns)
	finished := s.Strip - 2*r.Seam
	set := Panel{Title: "1. Sew the strips, cut segments"}
	for i := range min(rows, mostStrips) {
		w := finished
		if i == 0 {
			w += r.Seam
		}
		y := -many(i, finished) - r.Seam*measure.Length(min(i, 1))
		if i == rows-1 {
			w += r.Seam
		}
		set.Shapes = append(set.Shapes, patch(Rect(0, y-w, length, w), Fabric(stripFill(r, i))))
	}
	low, high := set.Extent()
	n, caption := drawn(s.SegmentsPer, mostDrawn, "segments")
	for i := 1; i <= n; i++ {
		x := many(i, s.SegmentWidth)
		set.Shapes = append(set.Shapes, line(Cut, Point{x, low.Y}, Point{x, high.Y}))
	}
	set.sized(Below, show(length))
	set.sized(LeftOf, show(high.Y-low.Y))
	set.Sizes = append(set.Sizes, Size{Point{}, Point{s.SegmentWidth, 0}, Above, show(s.SegmentWidth)})
	return Scene{
		Name: "strip-set", Title: "Strip set",
		Alt: fmt.Sprintf("%s of %s sewn side by side, %s in all, then cut across into segments of %s, %d to a set. The block is %s with its seams.",
			counted(rows, "strip", "strips"), show(s.Strip), show(high.Y-low.Y), show(s.SegmentWidth), s.SegmentsPer, s.Block.Show(r.System)),
		Panels:  []Panel{set, blockOfSegments(r, s)},
		Key:     []Key{{Line: Cut, Text: "cut"}},
		Caption: caption,
	}
}

func stripFill(r calc.StripSetRequest, i int) int {
	if r.Rail {
		return i
	}
	return i % 2
}

// blockOfSegments is the finished block.
func blockOfSegments(r calc.StripSetRequest, s calc.StripSetResult) Panel {
	rows, columns := max(1, r.Rows), max(1, r.Columns)
	if r.Rail {
		rows = 1
	}
	p := Panel{Title: "2. The block, finished", Share: Half}
	w, l := s.Finished.Width/measure.Length(columns), s.Finished.Length/measure.Length(rows)
	for j := range min(rows, mostAcross) {
		for i := range min(columns, mostAcross) {
			fill := Fabric((i + j) % 2)
			if r.Rail {
				fill = Fabric(i)
			}
			p.Shapes = append(p.Shapes, patch(Rect(many(i, w), -many(j+1, l), w, l), fill))
		}
	}
	if rows <= mostAcross && columns <= mostAcross {
		p.sized(Below, s.Finished.Width.Show(r.System))
		p.sized(LeftOf, s.Finished.Length.Show(r.System))
	}
	return p
}
