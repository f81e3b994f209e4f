package scene

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// patchPanel shows a patch as it is cut and as it is sewn.
func patchPanel(o calc.PatchOutlines) Panel {
	return Panel{Shapes: []Shape{{Outline: traced(o.Cut), Fill: Fabric1, Line: Cut}, {Outline: traced(o.Sewn), Line: Sewn}}}
}

// cutAndSewn is the key of pictures that show both lines.
func cutAndSewn() []Key { return []Key{{Line: Cut, Text: "cut"}, {Line: Sewn, Text: "sewn"}} }

// Hexagon shows one hexagon with its sizes.
func Hexagon(h calc.HexagonResult, system measure.System) Scene {
	show := shower(system)
	p := patchPanel(h.Patch())
	sewn := p.Shapes[1].Outline
	p.sized(Below, "fabric "+show(h.PatchWidth))
	p.sized(LeftOf, "fabric "+show(h.PatchHeight))
	p.Sizes = append(p.Sizes,
		Size{sewn[3], sewn[0], Below, "point to point " + show(h.PointToPoint)},
		Size{sewn[4], sewn[1], LeftOf, "flat to flat " + show(h.FlatToFlat)},
		Size{sewn[2], sewn[1], Above, "side " + show(h.Side)})
	return Scene{
		Name: "hexagon", Title: "Hexagon, side " + show(h.Side),
		Alt: fmt.Sprintf("A hexagon with a side of %s: %s from flat to flat and %s from point to point. The fabric is cut %s by %s.",
			show(h.Side), show(h.FlatToFlat), show(h.PointToPoint), show(h.PatchWidth), show(h.PatchHeight)),
		Panels: []Panel{p}, Key: cutAndSewn(),
	}
}

// mostHexagons is how many rows of hexagons are drawn, and hexagons of a row.
const mostHexagons = 28

// HexagonQuilt shows the hexagons that fill a quilt; it has no panel where no
// quilt was asked about.
func HexagonQuilt(h calc.HexagonResult, system measure.System) Scene {
	if h.Cover == nil {
		return Scene{}
	}
	part := *h.Cover
	part.Rows, part.PerRow = min(part.Rows, mostHexagons), min(part.PerRow, mostHexagons)
	var caption []string
	if part != *h.Cover {
		caption = []string{fmt.Sprintf("Drawn is a part, %d rows of %d.", part.Rows, part.PerRow)}
	}
	shown := h
	shown.Cover = &part
	var p Panel
	for i, o := range shown.Outlines() {
		p.Shapes = append(p.Shapes, patch(traced(o), Fabric(i%part.PerRow%3)))
	}
	all := h.Cover.Rows * h.Cover.PerRow
	return Scene{
		Name: "hexagon-quilt", Title: counted(all, "hexagon", "hexagons"),
		Alt: fmt.Sprintf("%d rows of %d hexagons, every other row half a hexagon along, %s in all with a side of %s.",
			h.Cover.Rows, h.Cover.PerRow, counted(all, "hexagon", "hexagons"), h.Side.Show(system)),
		Panels:  []Panel{p},
		Caption: append(caption, "Counted to the middle of the zigzag edges."),
	}
}

// HexagonTemplates are the paper and the fabric of one hexagon, in true size.
func HexagonTemplates(h calc.HexagonResult, system measure.System) Templates {
	show := shower(system)
	o := h.Patch()
	paper, fabric := traced(o.Sewn), traced(o.Cut)
	return Templates{
		Name: "hexagon-templates", Title: "Templates: hexagon, side " + show(h.Side),
		Alt:   fmt.Sprintf("The paper of a hexagon with a side of %s, and its fabric, in true size.", show(h.Side)),
		Notes: []string{"The paper is the size that shows; the fabric folds round it along the dashes."},
		Pieces: []Template{
			{Title: "Paper, side " + show(h.Side), Cut: paper},
			{Title: "Fabric", Cut: fabric, Sewn: paper, Grain: grainAcross(paper)},
		},
	}
}

// grainAcross is an arrow level across the lower part of a convex outline, half
// as long as the outline is wide there.
func grainAcross(o Outline) Arrow {
	low, high := o.Extent()
	y := low.Y + (high.Y-low.Y)/5
	left, right := high.X, low.X
	for i, p := range o {
		q := o[(i+1)%len(o)]
		if (p.Y <= y) == (q.Y <= y) {
			continue
		}
		x := p.X + measure.Length(float64(q.X-p.X)*float64(y-p.Y)/float64(q.Y-p.Y))
		left, right = min(left, x), max(right, x)
	}
	quarter := (right - left) / 4
	return Arrow{Point{left + quarter, y}, Point{right - quarter, y}}
}

// Triangle shows one 60° triangle with its sizes.
func Triangle(t calc.TriangleResult, system measure.System) Scene {
	show := shower(system)
	p := patchPanel(t.Patch())
	sewn := p.Shapes[1].Outline
	p.sized(Below, "cut side "+show(t.CutSide))
	p.sized(LeftOf, "strip "+show(t.StripWidth))
	p.Sizes = append(p.Sizes, Size{sewn[0], sewn[2], RightOf, "finishes " + show(t.Height) + " high"}, Size{sewn[0], sewn[1], Above, "finished side " + show(t.Side)})
	return Scene{
		Name: "triangle", Title: "Triangle of 60°, finishes " + show(t.Height) + " high",
		Alt: fmt.Sprintf("A triangle with three equal sides. It is cut from a strip of %s with a side of %s, and finishes %s high with a side of %s.",
			show(t.StripWidth), show(t.CutSide), show(t.Height), show(t.Side)),
		Panels: []Panel{p}, Key: cutAndSewn(),
	}
}

// TriangleTemplates is a 60° triangle in true size.
func TriangleTemplates(t calc.TriangleResult, system measure.System) Templates {
	return oneTemplate("triangle-template", "Triangle of 60°, finishes "+t.Height.Show(system)+" high", t.Patch())
}

// Diamond shows one diamond with its sizes.
func Diamond(d calc.DiamondResult, system measure.System) Scene {
	show := shower(system)
	p := patchPanel(d.Patch())
	cut, sewn := p.Shapes[0].Outline, p.Shapes[1].Outline
	p.Sizes = append(p.Sizes,
		Size{cut[0], cut[1], Below, "cut side " + show(d.CutSide)},
		Size{sewn[3], sewn[2], Above, "finished side " + show(d.Side)})
	p.sized(LeftOf, "strip "+show(d.StripWidth))
	return Scene{
		Name: "diamond", Title: "Diamond of " + d.Angle.Show(),
		Alt: fmt.Sprintf("A diamond of %s with a finished side of %s, cut from a strip of %s at %s along its edge.",
			d.Angle.Show(), show(d.Side), show(d.StripWidth), show(d.CutSide)),
		Panels: []Panel{p}, Key: cutAndSewn(),
	}
}

// DiamondTemplates is a diamond in true size.
func DiamondTemplates(d calc.DiamondResult, system measure.System) Templates {
	return oneTemplate("diamond-template", fmt.Sprintf("Diamond of %s, side %s", d.Angle.Show(), d.Side.Show(system)), d.Patch())
}

// HalfRectangleTemplates is one triangle of a half rectangle in true size.
func HalfRectangleTemplates(h calc.HalfRectangleResult, system measure.System) Templates {
	t := oneTemplate("half-rectangle-template", "Half rectangle, "+h.Unfinished.Show(system)+" with seams", h.Patch())
	t.Notes = append(t.Notes, "For the ones that lean the other way, turn the template over.")
	return t
}

// oneTemplate is a document of a single patch.
func oneTemplate(name, title string, o calc.PatchOutlines) Templates {
	cut, sewn := traced(o.Cut), traced(o.Sewn)
	return Templates{
		Name: name, Title: "Template: " + title, Alt: title + ", in true size with its seam line.",
		Notes:  []string{"Cut along the solid line, sew along the dashes."},
		Pieces: []Template{{Title: title, Cut: cut, Sewn: sewn, Grain: grainAcross(sewn)}},
	}
}

// QuarterCircle shows the block with its quarter circle.
func QuarterCircle(q calc.QuarterCircleResult, system measure.System) Scene {
	show := shower(system)
	p := Panel{Shapes: []Shape{
		patch(traced(q.Background().Sewn), Fabric2), patch(traced(q.Pie().Sewn), Fabric1),
	}}
	p.sized(Below, "block "+show(q.Block))
	p.Sizes = append(p.Sizes, Size{Point{}, Point{q.Radius, 0}, Below, "radius " + show(q.Radius)})
	p.Notes = []Note{
		{Polar(q.Radius/2, 45), fmt.Sprintf("Pie: arc of %s, from a square of %s.", show(q.PieRadius), show(q.PieSquare))},
		{Polar(q.Radius*9/8, 60), fmt.Sprintf("Background: arc of %s, from a square of %s.", show(q.BackgroundRadius), show(q.BackgroundSquare))},
	}
	return Scene{
		Name: "quarter-circle", Title: "Quarter circle, radius " + show(q.Radius),
		Alt: fmt.Sprintf("A block of %s with a quarter circle of radius %s in one corner, finished. The pie is cut with an arc of %s, the background with one of %s.",
			show(q.Block), show(q.Radius), show(q.PieRadius), show(q.BackgroundRadius)),
		Panels: []Panel{p},
		Key:    []Key{{Fill: Fabric1, Line: Edge, Text: "pie"}, {Fill: Fabric2, Line: Edge, Text: "background"}},
	}
}

// QuarterCircleTemplates are the pie and what lies round it, in true size.
func QuarterCircleTemplates(q calc.QuarterCircleResult, system measure.System) Templates {
	show := shower(system)
	piece := func(title string, o calc.PatchOutlines) Template {
		return Template{Title: title, Cut: traced(o.Cut), Sewn: traced(o.Sewn)}
	}
	pie, background := piece("Pie, arc of "+show(q.PieRadius), q.Pie()), piece("Background, arc of "+show(q.BackgroundRadius), q.Background())
	pie.Grain = grainAcross(pie.Sewn)
	top := q.Block - (q.Block-q.Radius)/2
	background.Grain = Arrow{Point{q.Block / 4, top}, Point{q.Block * 3 / 4, top}}
	return Templates{
		Name: "quarter-circle-templates", Title: "Templates: quarter circle, radius " + show(q.Radius),
		Alt:    fmt.Sprintf("A pie and its background in true size, for a quarter circle of radius %s in a block of %s.", show(q.Radius), show(q.Block)),
		Notes:  []string{"Cut along the solid line, sew along the dashes. Mark the middle of both curves, clip the inner one and ease."},
		Pieces: []Template{pie, background},
	}
}

// Scallops shows an edge with its scallops.
func Scallops(s calc.ScallopResult, system measure.System) Scene {
	show := shower(system)
	n, caption := drawn(s.Scallops, 40, "scallops")
	each := traced(s.Patch())
	var p Panel
	for i := range n {
		p.Shapes = append(p.Shapes, patch(each.Moved(Point{many(i, s.EachAcross), 0}), Fabric(i%2)))
	}
	p.Sizes = []Size{{Point{}, Point{s.EachAcross, 0}, Below, show(s.EachAcross) + " each"}, {Point{}, Point{0, s.Depth}, LeftOf, show(s.Depth)}}
	return Scene{
		Name: "scallops", Title: counted(s.Scallops, "scallop", "scallops"),
		Alt:     fmt.Sprintf("%s along the edge, each %s across and %s deep. Along the curve each measures %s.", counted(s.Scallops, "scallop", "scallops"), show(s.EachAcross), show(s.Depth), show(s.Arc)),
		Panels:  []Panel{p},
		Caption: append([]string{"Bind them with bias strips: " + show(s.Around) + " along all the curves."}, caption...),
	}
}

// ScallopTemplates is one scallop in true size.
func ScallopTemplates(s calc.ScallopResult, system measure.System) Templates {
	title := "Scallop, " + s.EachAcross.Show(system) + " across"
	return Templates{
		Name: "scallop-template", Title: "Template: " + title, Alt: title + ", in true size.",
		Notes:  []string{"The straight edge lies between two valleys. Trace the curve; it has no seam allowance."},
		Pieces: []Template{{Title: title, Says: []string{fmt.Sprintf("mark %d", s.Scallops)}, Cut: traced(s.Patch())}},
	}
}

// CircleTemplates is a circle in true size, with the line to turn under.
func CircleTemplates(c calc.CircleResult, system measure.System) Templates {
	show := shower(system)
	t := Template{Title: "Circle, cut " + show(c.CutAcross), Says: []string{"finishes at " + show(c.TemplateAcross)}, Cut: Circle(Point{}, c.CutAcross/2)}
	if c.CutAcross > c.TemplateAcross {
		t.Sewn = Circle(Point{}, c.TemplateAcross/2)
	}
	return Templates{
		Name: "circle-template", Title: "Template: circle, " + show(c.TemplateAcross) + " across",
		Alt: fmt.Sprintf("A circle that finishes at %s, cut %s, in true size.", show(c.TemplateAcross), show(c.CutAcross)), Notes: []string{"Cut along the solid line, turn under along the dashes."},
		Pieces: []Template{t},
	}
}

// RoundCircle shows a circle with its sizes.
func RoundCircle(c calc.CircleResult, system measure.System) Scene {
	show := shower(system)
	p := Panel{Shapes: []Shape{{Outline: Circle(Point{}, c.CutAcross/2), Fill: Fabric1, Line: Cut}, {Outline: Circle(Point{}, c.TemplateAcross/2), Line: Sewn}}}
	p.sized(Below, "cut "+show(c.CutAcross))
	r := c.TemplateAcross / 2
	p.Sizes = append(p.Sizes, Size{Point{-r, 0}, Point{r, 0}, Above, "finishes at " + show(c.TemplateAcross)})
	return Scene{
		Name: "circle", Title: "Circle, " + show(c.TemplateAcross) + " across",
		Alt:    fmt.Sprintf("A circle that finishes at %s, %s around, cut %s.", show(c.TemplateAcross), show(c.Around), show(c.CutAcross)),
		Panels: []Panel{p}, Key: []Key{{Line: Cut, Text: "cut"}, {Line: Sewn, Text: "turned under, " + show(c.Around) + " around"}},
	}
}
