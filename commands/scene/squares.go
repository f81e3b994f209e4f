package scene

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// HalfSquares shows the squares with their sewing and cutting lines, and the
// unit that comes of them.
func HalfSquares(r calc.HalfSquareRequest, h calc.HalfSquareResult) Scene {
	show := shower(r.System)
	q := h.SquareCut
	first := Panel{Title: "1. " + halfSquareSteps(h.AtATime), Share: Half, Shapes: append(
		[]Shape{{Outline: Rect(0, 0, q, q), Fill: Fabric1, Line: Edge}}, halfSquareLines(h.AtATime, q, r.Seam)...)}
	first.sized(Below, "cut "+show(q))
	s := Scene{
		Name: "half-square-triangles", Title: "Half-square triangles, " + atATime(h.AtATime),
		Alt: fmt.Sprintf("Squares of two fabrics, cut %s. %s. Each unit is %s with its seams and finishes at %s.",
			show(q), halfSquareSteps(h.AtATime), show(h.Unfinished), show(h.Finished)),
		Panels: []Panel{first, twoTriangles(h.Unfinished, r.Seam, show)},
		Key:    []Key{{Line: Cut, Text: "cut"}, {Line: Sewn, Text: "sew; on the unit, the seam line"}},
	}
	if h.Squares > 0 {
		s.Caption = append(s.Caption, fmt.Sprintf("%s of each fabric make %s.", counted(h.Squares, "square", "squares"), counted(h.Made, "unit", "units")))
	}
	if h.BiasEdges {
		s.Caption = append(s.Caption, "All edges of these units are on the bias: press, do not pull.")
	}
	return s
}

func atATime(n int) string {
	switch n {
	case 1:
		return "one at a time"
	case 2:
		return "two at a time"
	case 4:
		return "four at a time"
	default:
		return "eight at a time"
	}
}

func halfSquareSteps(n int) string {
	switch n {
	case 1:
		return "Cut once from corner to corner; sew the long edges of two fabrics"
	case 2:
		return "Sew on both sides of the diagonal, cut on it"
	case 4:
		return "Sew all round, cut on both diagonals"
	default:
		return "Sew on both sides of both diagonals, cut on them and through the middle"
	}
}

// halfSquareLines are the lines on a pair of squares, right sides together.
func halfSquareLines(n int, q, seam measure.Length) []Shape {
	up, down := line(Cut, Point{0, 0}, Point{q, q}), line(Cut, Point{0, q}, Point{q, 0})
	switch n {
	case 1:
		return []Shape{up}
	case 2:
		return append(besideDiagonal(q, seam), up)
	case 4:
		return []Shape{{Outline: Rect(seam, seam, q-2*seam, q-2*seam), Line: Sewn}, up, down}
	}
	lines := besideDiagonal(q, seam)
	for _, l := range lines {
		lines = append(lines, Shape{Outline: Outline{{l.Outline[0].X, q - l.Outline[0].Y}, {l.Outline[1].X, q - l.Outline[1].Y}}, Open: true, Line: Sewn})
	}
	return append(lines, up, down, line(Cut, Point{q / 2, 0}, Point{q / 2, q}), line(Cut, Point{0, q / 2}, Point{q, q / 2}))
}

// besideDiagonal are the two lines beside the rising diagonal of a square.
func besideDiagonal(q, seam measure.Length) []Shape {
	off := diagonalOf(seam)
	return []Shape{line(Sewn, Point{off, 0}, Point{q, q - off}), line(Sewn, Point{0, off}, Point{q - off, q})}
}

// twoTriangles is a half-square unit with its seam lines.
func twoTriangles(u, seam measure.Length, show func(measure.Length) string) Panel {
	p := Panel{Title: "2. Press and trim", Share: Half, Shapes: []Shape{
		patch(Outline{{0, 0}, {u, 0}, {u, u}}, Fabric1), patch(Outline{{0, 0}, {u, u}, {0, u}}, Fabric2),
		{Outline: Rect(seam, seam, u-2*seam, u-2*seam), Line: Sewn},
	}}
	p.sized(Below, show(u)+" with seams")
	p.Sizes = append(p.Sizes, Size{Point{seam, 0}, Point{u - seam, 0}, Above, "finishes at " + show(u-2*seam)})
	return p
}

// QuarterSquares shows the squares with their lines, and the unit.
func QuarterSquares(r calc.QuarterSquareRequest, q calc.QuarterSquareResult) Scene {
	show := shower(r.System)
	side, u := q.SquareCut, q.Unfinished
	first := Panel{Title: "1. Sew on both sides of the diagonal, cut on it", Share: Third, Shapes: append(
		[]Shape{{Outline: Rect(0, 0, side, side), Fill: Fabric1, Line: Edge}}, halfSquareLines(2, side, r.Seam)...)}
	first.sized(Below, "cut "+show(side))
	unit := side - diagonalOf(r.Seam)
	second := Panel{Title: "2. Lay two with seams crossed; sew and cut the other way", Share: Third, Shapes: append(
		[]Shape{patch(Outline{{0, 0}, {unit, 0}, {0, unit}}, Fabric1), patch(Outline{{unit, 0}, {unit, unit}, {0, unit}}, Fabric2)},
		halfSquareLines(2, unit, r.Seam)...)}
	m := u / 2
	third := Panel{Title: "3. Press and trim", Share: Third, Shapes: []Shape{
		patch(Outline{{0, 0}, {u, 0}, {m, m}}, Fabric1), patch(Outline{{u, 0}, {u, u}, {m, m}}, Fabric2),
		patch(Outline{{u, u}, {0, u}, {m, m}}, Fabric1), patch(Outline{{0, u}, {0, 0}, {m, m}}, Fabric2),
		{Outline: Rect(r.Seam, r.Seam, u-2*r.Seam, u-2*r.Seam), Line: Sewn},
	}}
	third.sized(Below, show(u)+" with seams")
	s := Scene{
		Name: "quarter-square-triangles", Title: "Quarter-square triangles",
		Alt: fmt.Sprintf("Squares cut %s. A pair is sewn on both sides of the diagonal and cut on it; two of the halves are laid with their seams crossed, sewn and cut the other way. Each unit is %s with its seams and finishes at %s.",
			show(side), show(u), show(q.Finished)),
		Panels: []Panel{first, second, third},
		Key:    []Key{{Line: Cut, Text: "cut"}, {Line: Sewn, Text: "sew"}},
	}
	if q.Squares > 0 {
		s.Caption = []string{fmt.Sprintf("%s, all colours together, make %s.", counted(q.Squares, "square", "squares"), counted(q.Made, "unit", "units"))}
	}
	return s
}

// FlyingGeese shows how geese are sewn, one at a time or four, and the unit.
func FlyingGeese(r calc.GeeseRequest, g calc.GeeseResult) Scene {
	show := shower(r.System)
	s := Scene{Name: "flying-geese", Title: "Flying geese, " + atATime(g.AtATime), Key: []Key{{Line: Cut, Text: "cut"}, {Line: Sewn, Text: "sew"}}}
	if g.AtATime == 1 {
		s.Panels = []Panel{geeseOneAtATime(g, r.Seam, show)}
		s.Alt = fmt.Sprintf("A rectangle of %s by %s with a square of %s on each end in turn, sewn along the diagonal. ", show(g.GooseWidth), show(g.GooseHeight), show(g.CornerSquare))
	} else {
		s.Panels = []Panel{geeseFourAtATime(g, r.Seam, show)}
		s.Alt = fmt.Sprintf("A large square of %s with two small squares of %s in opposite corners, sewn on both sides of the diagonal. The other two small squares follow on the halves. ", show(g.LargeSquare), show(g.SmallSquare))
	}
	s.Panels = append(s.Panels, goose(g, r.Seam, show))
	s.Alt += fmt.Sprintf("Each goose is %s with its seams and finishes at %s.", g.Unfinished.Show(r.System), measure.Size{Width: g.Width, Length: g.Height}.Show(r.System))
	return s
}

func geeseOneAtATime(g calc.GeeseResult, seam measure.Length, show func(measure.Length) string) Panel {
	w, h, c := g.GooseWidth, g.GooseHeight, g.CornerSquare
	off := diagonalOf(seam)
	p := Panel{Title: "1. Sew along the diagonal, trim, press; then the other end", Share: Half, Shapes: []Shape{
		{Outline: Rect(0, 0, w, h), Fill: Fabric1, Line: Edge}, patch(Rect(0, 0, c, c), Fabric2),
		line(Sewn, Point{0, 0}, Point{c, c}), line(Cut, Point{0, off}, Point{c - off, c}),
	}}
	p.sized(Below, show(w))
	p.sized(RightOf, show(h))
	p.Sizes = append(p.Sizes, Size{Point{0, c}, Point{c, c}, Above, show(c)})
	return p
}

func geeseFourAtATime(g calc.GeeseResult, seam measure.Length, show func(measure.Length) string) Panel {
	q, c := g.LargeSquare, g.SmallSquare
	p := Panel{Title: "1. Sew on both sides of the diagonal, cut on it", Share: Half, Shapes: []Shape{
		{Outline: Rect(0, 0, q, q), Fill: Fabric1, Line: Edge}, patch(Rect(0, 0, c, c), Fabric2), patch(Rect(q-c, q-c, c, c), Fabric2),
	}}
	p.Shapes = append(p.Shapes, halfSquareLines(2, q, seam)...)
	p.sized(Below, show(q))
	p.Sizes = append(p.Sizes, Size{Point{0, 0}, Point{0, c}, LeftOf, show(c)})
	return p
}

func goose(g calc.GeeseResult, seam measure.Length, show func(measure.Length) string) Panel {
	w, h := g.Unfinished.Width, g.Unfinished.Length
	tip := Point{w / 2, h - seam}
	low, reach := Point{seam, seam}, w-seam
	p := Panel{Title: "2. The unit", Share: Half, Shapes: []Shape{
		patch(Rect(0, 0, w, h), Fabric2),
		patch(Outline{{low.X - seam, 0}, {reach + seam, 0}, {reach, seam}, tip, low}, Fabric1),
		{Outline: Rect(seam, seam, w-2*seam, h-2*seam), Line: Sewn},
	}}
	p.sized(Below, show(w)+" with seams")
	p.sized(LeftOf, show(h))
	return p
}

// SquareInSquare shows the block with its rounds, and how corners are cut.
func SquareInSquare(r calc.SquareInSquareRequest, q calc.SquareInSquareResult) Scene {
	show := shower(r.System)
	c := q.CornerSquare
	block := Panel{Title: "The block, finished", Share: Half, Shapes: squareRounds(q)}
	block.sized(Below, show(q.Block))
	corner := Panel{Title: "Corners: cut once", Share: Half, Shapes: []Shape{{Outline: Rect(0, 0, c, c), Fill: Fabric2, Line: Edge}, line(Cut, Point{0, 0}, Point{c, c})}}
	corner.sized(Below, show(c))
	return Scene{
		Name: "square-in-square", Title: "Square in a square",
		Alt: fmt.Sprintf("A square on its corner in a block of %s. The centre is cut %s; squares of %s, cut once from corner to corner, give the corners.",
			show(q.Block), show(q.CentreCut), show(c)),
		Panels: []Panel{block, corner}, Key: []Key{{Line: Cut, Text: "cut"}},
	}
}

// squareRounds draws the rounds from the outside in; every other one stands on
// a corner.
func squareRounds(q calc.SquareInSquareResult) []Shape {
	h := q.Block / 2
	var shapes []Shape
	for i := range len(q.Rounds) + 1 {
		o := Outline{{-h, -h}, {h, -h}, {h, h}, {-h, h}}
		if i%2 == 1 {
			o = Outline{{0, -h}, {h, 0}, {0, h}, {-h, 0}}
		}
		shapes = append(shapes, patch(o, Fabric((len(q.Rounds)-i)%2)))
		if i%2 == 1 {
			h /= 2
		}
	}
	return shapes
}

// HalfRectangles shows the rectangle cut from corner to corner, and the unit.
func HalfRectangles(r calc.HalfRectangleRequest, h calc.HalfRectangleResult) Scene {
	show := shower(r.System)
	w, l, u, v := h.CutWidth, h.CutHeight, h.Unfinished.Width, h.Unfinished.Length
	cut := Panel{Title: "Cut once, half of them the other way", Share: Half, Shapes: []Shape{{Outline: Rect(0, 0, w, l), Fill: Fabric1, Line: Edge}, line(Cut, Point{0, 0}, Point{w, l})}}
	cut.sized(Below, show(w))
	cut.sized(LeftOf, show(l))
	in, out := Point{r.Seam, r.Seam}, Point{u - r.Seam, v - r.Seam}
	unit := Panel{Title: "The unit: the seam meets the corners of the seam line", Share: Half, Shapes: []Shape{
		patch(Rect(0, 0, u, v), Fabric2),
		patch(Outline{{0, 0}, {u, 0}, {u, v}, out, in}, Fabric1),
		{Outline: Outline{in, {out.X, in.Y}, out, {in.X, out.Y}}, Line: Sewn},
	}}
	unit.sized(Below, show(u)+" with seams")
	unit.sized(LeftOf, show(v))
	return Scene{
		Name: "half-rectangles", Title: "Half rectangles",
		Alt: fmt.Sprintf("A rectangle cut %s by %s and once from corner to corner. The unit is trimmed to %s; the seam meets the corners of the seam line and not those of the cloth. Left- and right-leaning ones cannot be swapped.",
			show(w), show(l), h.Unfinished.Show(r.System)),
		Panels: []Panel{cut, unit}, Key: []Key{{Line: Cut, Text: "cut"}, {Line: Sewn, Text: "seam line"}},
	}
}
