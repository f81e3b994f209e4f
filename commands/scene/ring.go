package scene

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// mostBlades is how many blades of a ring are drawn; a ring of more is drawn as
// the band that they make.
const mostBlades = 180

// Ring shows a ring as it will look, to scale: its blades, its opening, the
// circle that covers it and the background, with their sizes.
func Ring(r calc.RingResult, system measure.System) Scene {
	show := func(l measure.Length) string { return l.Show(system) }
	p := Panel{}
	p.Shapes = append(p.Shapes, ringBlades(r)...)
	low, high := p.Extent()
	opening := r.Exact.OpeningRadius
	p.Sizes = append(p.Sizes, Size{From: Point{low.X, 0}, To: Point{high.X, 0}, Text: ringSpan(r, high.X-low.X, show)})
	if r.Turn >= calc.FullTurn {
		p.Sizes = append(p.Sizes, Size{From: Point{X: -opening}, To: Point{X: opening}, Text: "opening " + show(r.OpeningAcross)})
	}
	p.Shapes = append(p.Shapes, Shape{Outline: traced(r.Cover()), Line: Sewn})
	p.Notes = append(p.Notes, Note{Polar(r.CoverCircle/2, coverAngle(r)),
		fmt.Sprintf("Cover circle: finishes at %s, cut %s.", show(r.CoverCircle), show(r.CoverCut))})
	p.Notes = append(p.Notes, Note{middleOf(p.Shapes[0].Outline),
		fmt.Sprintf("%s of %s, %s long as cut.", counted(r.Blades, "blade", "blades"), r.Angle.Show(), show(r.BladeLength))})
	p = onBackground(p, r, low, high, show)
	return Scene{
		Name:   "ring",
		Title:  ringTitle(r),
		Alt:    ringWords(r, show),
		Panels: []Panel{p},
		Key:    []Key{{Fill: Fabric1, Line: Edge, Text: "blades; the fills only tell neighbours apart"}, {Line: Sewn, Text: "edge of the cover circle"}},
	}
}

// ringBlades gives the sewn blades, or the band of them where they are too many
// to be told apart.
func ringBlades(r calc.RingResult) []Shape {
	var shapes []Shape
	if r.Blades > mostBlades {
		outer := max(r.Exact.OuterRadius, r.Exact.CornerRadius)
		return []Shape{
			{Outline: append(Arc(Point{}, outer, 0, r.Turn), Arc(Point{}, r.Exact.OpeningRadius, r.Turn, 0)...), Fill: Fabric1, Line: Edge},
		}
	}
	for i, o := range r.Outlines() {
		shapes = append(shapes, Shape{Outline: traced(o), Fill: neighbours(i, r.Blades), Line: Edge})
	}
	return shapes
}

// coverAngle is where on the cover circle its note points: to the right and up,
// on a blade where the ring is only a part of one.
func coverAngle(r calc.RingResult) measure.Angle { return min(40, r.Turn/2) }

func middleOf(o Outline) Point {
	low, high := o.Extent()
	return Point{(low.X + high.X) / 2, (low.Y + high.Y) / 2}
}

// ringSpan tells how far the ring reaches from left to right. A full ring is
// measured on the blades' centre lines.
func ringSpan(r calc.RingResult, span measure.Length, show func(measure.Length) string) string {
	if r.Turn >= calc.FullTurn {
		return "ring " + show(r.RingAcross) + " across"
	}
	return show(span)
}

// onBackground puts the background behind a ring whose extent is known.
func onBackground(p Panel, r calc.RingResult, low, high Point, show func(measure.Length) string) Panel {
	w, l := r.Background.Width, r.Background.Length
	if w <= 0 || l <= 0 {
		return p
	}
	x, y := (low.X+high.X-w)/2, (low.Y+high.Y-l)/2
	ground := Shape{Outline: Rect(x, y, w, l), Fill: Ground, Line: Edge}
	p.Shapes = append([]Shape{ground}, p.Shapes...)
	p.Sizes = append(p.Sizes, Size{From: Point{x, y}, To: Point{x + w, y}, Text: "background cut " + show(w)})
	if w != l {
		p.Sizes = append(p.Sizes, Size{From: Point{x, y}, To: Point{x, y + l}, Side: LeftOf, Text: show(l)})
	}
	return p
}

func ringTitle(r calc.RingResult) string {
	switch {
	case r.Turn >= calc.FullTurn:
		return fmt.Sprintf("Ring of %s", counted(r.Blades, "blade", "blades"))
	case r.Turn == calc.HalfTurn:
		return fmt.Sprintf("Half ring of %s", counted(r.Blades, "blade", "blades"))
	case r.Turn == calc.QuarterTurn:
		return fmt.Sprintf("Quarter ring of %s", counted(r.Blades, "blade", "blades"))
	default:
		return fmt.Sprintf("Part of a ring, %s over %s", counted(r.Blades, "blade", "blades"), r.Turn.Show())
	}
}

func ringWords(r calc.RingResult, show func(measure.Length) string) string {
	words := fmt.Sprintf("%s of %s, drawn to scale. Across once sewn: %s. The opening in the middle is %s across; a circle that finishes at %s covers it.",
		ringTitle(r), r.Angle.Show(), show(r.RingAcross), show(r.OpeningAcross), show(r.CoverCircle))
	if r.Background.Width > 0 {
		words += fmt.Sprintf(" The background is cut %s by %s.", show(r.Background.Width), show(r.Background.Length))
	}
	return words
}

// Blade shows one blade as it is cut and as it is sewn.
func Blade(r calc.RingResult, system measure.System) Scene {
	show := func(l measure.Length) string { return l.Show(system) }
	shapes := r.Blade()
	cut, sewn := traced(shapes.Cut), traced(shapes.Sewn)
	low, high := cut.Extent()
	return Scene{
		Name:  "blade",
		Title: fmt.Sprintf("One blade of %s", r.Angle.Show()),
		Alt: fmt.Sprintf("One blade, cut %s long, %s across the wide end and %s across the narrow end, with the sewing lines inside the cut edge.",
			show(r.BladeLength), show(r.WideEnd), show(r.NarrowEnd)),
		Panels: []Panel{{
			Shapes: []Shape{
				{Outline: cut, Fill: Fabric1, Line: Cut},
				{Outline: sewn, Line: Sewn},
				{Outline: Outline{{0, low.Y}, {0, high.Y}}, Open: true, Line: Centre},
			},
			Sizes: []Size{
				{From: cut[3], To: cut[2], Side: Above, Text: "wide end " + show(r.WideEnd)},
				{From: cut[0], To: cut[1], Side: Below, Text: "narrow end " + show(r.NarrowEnd)},
				{From: cut[0], To: cut[3], Side: LeftOf, Text: show(r.BladeLength) + " long"},
			},
			Notes: []Note{{sewnTop(sewn), endWords(r.End)}},
		}},
		Key: []Key{{Line: Cut, Text: "cut"}, {Line: Sewn, Text: "sewn"}, {Line: Centre, Text: "centre line"}},
	}
}

// sewnTop is the highest point of the sewn outline.
func sewnTop(o Outline) Point {
	top := o[0]
	for _, p := range o {
		if p.Y > top.Y {
			top = p
		}
	}
	return top
}

func endWords(e calc.BladeEnd) string {
	switch e {
	case calc.FoldedEnd:
		return "Tip, once folded, sewn across and turned."
	case calc.RoundedEnd:
		return "Rounded end, turned under."
	case calc.TurnedEnd:
		return "Flat end, turned under."
	default:
		return "Plain end, as cut."
	}
}

// FoldedTip shows in three steps how a folded tip is made.
func FoldedTip(r calc.RingResult, system measure.System) Scene {
	e := r.Exact
	length, narrow, wide := e.BladeLength, e.NarrowEnd/2, e.WideEnd/2
	seam := seamOf(r)
	tan := float64(wide-narrow) / float64(length)
	shoulder := measure.Length(float64(length-seam-narrow) / (1 + tan))
	half := narrow + measure.Length(float64(shoulder)*tan)
	blade := Outline{{-narrow, 0}, {narrow, 0}, {wide, length}, {-wide, length}}
	folded := Outline{{0, 0}, {narrow, 0}, {wide, length}, {0, length}}
	turned := Outline{{-narrow, 0}, {narrow, 0}, {half, shoulder}, {0, length - seam}, {-half, shoulder}}
	show := func(l measure.Length) string { return l.Show(system) }
	return Scene{
		Name:  "folded-tip",
		Title: "Folded tip, in three steps",
		Alt: fmt.Sprintf("Three steps. Fold the blade in half along its length, right sides together. Sew across the wide end, %s from the edge. Turn it and press it with the seam on the centre line: the tip is a right angle, %s from the narrow end.",
			show(seam), show((length - seam).RoundNearest(measure.Inch/16))),
		Panels: []Panel{
			{Title: "1. Fold, right sides together", Share: Third, Shapes: []Shape{
				{Outline: blade, Fill: Fabric1, Line: Edge},
				{Outline: Outline{{0, 0}, {0, length}}, Open: true, Line: Fold}}},
			{Title: "2. Sew across the wide end", Share: Third, Shapes: []Shape{
				{Outline: folded, Fill: Fabric2, Line: Edge},
				{Outline: Outline{{0, 0}, {0, length}}, Open: true, Line: Fold},
				{Outline: Outline{{0, length - seam}, {wide, length - seam}}, Open: true, Line: Sewn}},
				Sizes: []Size{{From: Point{0, length - seam}, To: Point{0, length}, Side: LeftOf, Text: show(seam)}}},
			{Title: "3. Turn and press, seam on the centre line", Share: Third, Shapes: []Shape{
				{Outline: turned, Fill: Fabric1, Line: Edge},
				{Outline: Outline{{0, 0}, {0, length - seam}}, Open: true, Line: Centre}}},
		},
		Key:     []Key{{Fill: Fabric1, Line: Edge, Text: "right side"}, {Fill: Fabric2, Line: Edge, Text: "wrong side"}, {Line: Fold, Text: "fold"}, {Line: Sewn, Text: "sewn"}},
		Caption: []string{"Trim the corner at the fold before you turn it, and turn it gently: a sharp tool goes through."},
	}
}

// seamOf is the seam allowance that a ring was reckoned with: the apex moves
// out by seam ÷ sin(angle/2).
func seamOf(r calc.RingResult) measure.Length {
	return measure.Length(Polar(r.Exact.ApexShift, r.Angle/2).Y).RoundNearest(measure.Nanometre * 10)
}

// RingTemplates are the blade and the cover circle, to print in true size.
func RingTemplates(r calc.RingResult, system measure.System) Templates {
	show := func(l measure.Length) string { return l.Show(system) }
	blade := bladeTemplate(r, show)
	cover := Template{
		Title: fmt.Sprintf("Cover circle, %s", show(r.CoverCut)),
		Says:  []string{"Cut 1", "Finishes at " + show(r.CoverCircle), "Turn under along the dashes"},
		Cut:   Circle(Point{}, r.CoverCut/2),
		Sewn:  Circle(Point{}, r.CoverCircle/2),
	}
	return Templates{
		Name:   "ring-templates",
		Title:  fmt.Sprintf("Templates: %s", ringTitle(r)),
		Alt:    fmt.Sprintf("Templates in true size: a blade of %s, %s long, and a cover circle of %s.", r.Angle.Show(), show(r.BladeLength), show(r.CoverCut)),
		Notes:  []string{"Cut along the solid line, sew along the dashes. Seams of " + show(seamOf(r)) + " are within the cut line."},
		Pieces: []Template{blade, cover},
	}
}

func bladeTemplate(r calc.RingResult, show func(measure.Length) string) Template {
	shapes := r.Blade()
	cut, sewn := traced(shapes.Cut), traced(shapes.Sewn)
	low, high := cut.Extent()
	centre := Marked{Outline: Outline{{0, low.Y}, {0, high.Y}}, Line: Centre, Text: "centre line"}
	if r.End == calc.FoldedEnd {
		centre.Line, centre.Text = Fold, "fold"
	}
	length := high.Y - low.Y
	aside := (cut[1].X + cut[2].X) / 4
	var tip []Note
	if r.End == calc.FoldedEnd {
		tip = []Note{{sewnTop(sewn), "tip"}}
	}
	return Template{
		Title: fmt.Sprintf("Blade, %s, %s long", r.Angle.Show(), show(r.BladeLength)),
		Says:  []string{fmt.Sprintf("Cut %d", r.Blades), show(r.WideEnd) + " to " + show(r.NarrowEnd)},
		Cut:   cut, Sewn: sewn,
		Lines:  []Marked{centre},
		Grain:  Arrow{Point{aside, low.Y + length/4}, Point{aside, low.Y + length*2/3}},
		Points: tip,
	}
}
