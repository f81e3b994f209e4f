package scene

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// mostStrips is how many strips are drawn one below the other.
const mostStrips = 60

// Binding shows the strips on their fabric and how two of them are joined.
func Binding(r calc.BindingRequest, b calc.BindingResult) Scene {
	show := shower(r.System)
	n, caption := drawn(b.Strips, mostStrips, "strips")
	p := stripsOnFabric(n, b.StripWidth, r.UsableWidth, measure.Length(b.Buy)-b.Need)
	p.sized(Below, show(r.UsableWidth)+" usable width")
	p.Sizes = append(p.Sizes,
		Size{Point{0, -many(n, b.StripWidth)}, Point{}, LeftOf, fmt.Sprintf("%d × %s", n, show(b.StripWidth))})
	return Scene{
		Name:  "binding-strips",
		Title: "Binding: " + counted(b.Strips, "strip", "strips"),
		Alt: fmt.Sprintf("%s, %s wide, cut across fabric of %s. Joined %s they make %s; %s are needed.",
			counted(b.Strips, "strip", "strips"), show(b.StripWidth), show(r.UsableWidth), joinWords(r.Join), show(b.Covers), show(b.LengthNeeded)),
		Panels:  []Panel{p, joinPanel(r.Join, b.StripWidth, r.Seam)},
		Caption: append([]string{fmt.Sprintf("Joined, the strips make %s for the %s you need.", show(b.Covers), show(b.LengthNeeded))}, caption...),
		Key:     []Key{{Fill: Fabric1, Line: Edge, Text: "right side"}, {Fill: Fabric2, Line: Edge, Text: "wrong side"}, {Line: Sewn, Text: "sewn"}, {Line: Cut, Text: "cut"}},
	}
}

// stripsOnFabric draws numbered strips from the top of a length of fabric, and
// what is left of it below them.
func stripsOnFabric(n int, width, usable, left measure.Length) Panel {
	var p Panel
	for i := range n {
		p.Shapes = append(p.Shapes, Shape{Outline: Rect(0, -many(i+1, width), usable, width), Fill: Fabric1, Line: Cut, Label: Label{Long: fmt.Sprintf("strip %d", i+1), Short: fmt.Sprint(i + 1)}})
	}
	if left > 0 {
		p.Shapes = append(p.Shapes, Shape{Outline: Rect(0, -many(n, width)-left, usable, left), Fill: Offcut, Line: Edge, Label: Label{Long: "left over"}})
	}
	return p
}

func joinWords(j calc.Join) string {
	if j == calc.StraightJoin {
		return "end to end"
	}
	return "on the diagonal"
}

// joinPanel shows how two strips are joined. On the diagonal they lie across
// each other at a right angle, right sides together, and the seam runs from
// outer corner to outer corner.
func joinPanel(j calc.Join, w, seam measure.Length) Panel {
	long := 3 * w
	if j == calc.StraightJoin {
		return Panel{Title: "Join end to end, right sides together", Share: Third, Shapes: []Shape{
			patch(Rect(0, 0, long, w), Fabric1), patch(Rect(long/3, 0, long*2/3, w), Fabric2),
			line(Sewn, Point{long - seam, 0}, Point{long - seam, w}),
		}}
	}
	trim := diagonalOf(seam)
	return Panel{Title: "Join on the diagonal, right sides together", Share: Third,
		Shapes: []Shape{
			patch(Rect(0, 0, long, w), Fabric1),
			patch(Rect(long-w, w-long, w, long), Fabric2),
			line(Sewn, Point{long - w, w}, Point{long, 0}),
			line(Cut, Point{long - w + trim, w}, Point{long, trim}),
		},
		Notes: []Note{{Point{long - w/2, w / 2}, "Sew from corner to corner."}, {Point{long - w/4, w * 3 / 4}, "Trim to a seam allowance."}},
	}
}

// BiasBinding shows the square for a long bias strip: the cut from corner to
// corner, and the slanted piece that the two halves make, with its strips.
func BiasBinding(r calc.BiasBindingRequest, b calc.BiasBindingResult) Scene {
	show := shower(r.System)
	q := b.SquareSide
	square := Panel{Title: "1. Cut from corner to corner", Share: Half, Shapes: []Shape{
		patch(Outline{{0, 0}, {q, 0}, {0, q}}, Fabric1),
		patch(Outline{{q, 0}, {q, q}, {0, q}}, Fabric2),
		line(Cut, Point{q, 0}, Point{0, q}),
	}}
	square.Sizes = []Size{{Point{0, 0}, Point{q, 0}, Below, show(q)}, {Point{0, 0}, Point{0, q}, LeftOf, show(q)}}
	// The upper half goes below the lower one, along their straight edges.
	joined := Panel{Title: "2. Sew the straight edges together, mark the strips", Share: Half, Shapes: []Shape{
		patch(Outline{{0, 0}, {q, 0}, {0, q}}, Fabric1),
		patch(Outline{{q, -q}, {q, 0}, {0, 0}}, Fabric2),
		line(Sewn, Point{0, 0}, Point{q, 0}),
	}}
	lines, caption := biasLines(q, r.StripWidth)
	joined.Shapes = append(joined.Shapes, lines...)
	return Scene{
		Name:  "bias-square",
		Title: "Square for bias strips",
		Alt: fmt.Sprintf("A square of %s, cut once from corner to corner. The halves are sewn together along their straight edges, and strips %s wide are marked along the long slanting edges. It makes %s of strip.",
			show(q), show(r.StripWidth), show(b.LengthMade.RoundDown(r.LimitStep))),
		Panels:  []Panel{square, joined},
		Key:     []Key{{Line: Cut, Text: "cut"}, {Line: Sewn, Text: "sewn"}, {Line: Fold, Text: "strips, cut in one spiral once the ends are joined"}},
		Caption: append([]string{fmt.Sprintf("%s of %s, cut %s wide.", counted(b.Squares, "square", "squares"), show(q), show(r.StripWidth))}, caption...),
	}
}

// biasLines are the lines between bias strips, which run along the slanting
// edges of the piece that [BiasBinding] shows second.
func biasLines(q, strip measure.Length) ([]Shape, []string) {
	apart := diagonalOf(strip) // up the straight edge, a strip takes its width times √2
	n, caption := drawn(int((q-1)/max(apart, 1)), mostStrips, "lines")
	var shapes []Shape
	for i := range n {
		y := many(i+1, apart)
		shapes = append(shapes, line(Fold, Point{0, y}, Point{q, y - q}))
	}
	return shapes, caption
}
