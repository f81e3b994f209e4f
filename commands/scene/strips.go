package scene

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// BladesOnStrip shows how blades lie on a strip. It is no picture at all
// (without a panel) where the shape of the blade was not known.
func BladesOnStrip(w calc.WedgeStripsResult, system measure.System) Scene {
	part := w
	part.BladesPerStrip = min(part.BladesPerStrip, mostDrawn)
	strip, blades := part.StripOutlines()
	if len(blades) == 0 {
		return Scene{}
	}
	s := onStrip(strip, blades, system, "blade")
	s.Caption = partOf(w.BladesPerStrip, "blades")
	s.Name, s.Title = "blades-on-strip", "Blades on a strip"
	s.Alt = fmt.Sprintf("%s on a strip %s wide, %s. %s give %s.",
		counted(w.BladesPerStrip, "blade", "blades"), w.StripWidth.Show(system), layoutWords(w.Layout),
		counted(w.Strips, "strip", "strips"), counted(w.Strips*w.BladesPerStrip, "blade", "blades"))
	s.Caption = append([]string{fmt.Sprintf("%s to a strip, %s; %s in all.",
		counted(w.BladesPerStrip, "blade", "blades"), layoutWords(w.Layout), counted(w.Strips, "strip", "strips"))}, s.Caption...)
	return s
}

// LongestBlade shows the longest blade that a strip allows, lying along it.
func LongestBlade(f calc.FitResult, system measure.System) Scene {
	show := shower(system)
	l, w, wide, narrow := f.LongestBlade, f.StripWidth, f.WideEnd, f.NarrowEnd
	blade := Outline{{0, (w - narrow) / 2}, {l, (w - wide) / 2}, {l, (w + wide) / 2}, {0, (w + narrow) / 2}}
	p := Panel{Shapes: []Shape{
		{Outline: Rect(-l/8, 0, l+l/4, w), Fill: Offcut, Line: Outer},
		{Outline: blade, Fill: Fabric1, Line: Cut},
	}}
	p.Sizes = []Size{
		{Point{}, Point{l, 0}, Below, show(l) + " long"},
		{Point{0, (w - narrow) / 2}, Point{0, (w + narrow) / 2}, LeftOf, "narrow end " + show(narrow)},
		{Point{-l / 8, 0}, Point{-l / 8, w}, LeftOf, "strip " + show(w)},
		{Point{l, (w - wide) / 2}, Point{l, (w + wide) / 2}, RightOf, "wide end " + show(wide)},
	}
	return Scene{
		Name: "longest-blade", Title: fmt.Sprintf("A blade of %s on its strip", f.Angle.Show()),
		Alt: fmt.Sprintf("A blade of %s lies along a strip %s wide. It is %s long, %s at the narrow end and %s at the wide end.",
			f.Angle.Show(), show(w), show(l), show(narrow), show(wide)),
		Panels: []Panel{p},
		Key:    []Key{{Fill: Fabric1, Line: Cut, Text: "blade"}, {Fill: Offcut, Line: Outer, Text: "strip"}},
	}
}

func layoutWords(l calc.BladeLayout) string {
	switch l {
	case calc.AlongStrip:
		return "along the strip, end to end"
	case calc.AllOneWay:
		return "side by side, all the same way up"
	default:
		return "head to tail"
	}
}

// TrianglesOnStrip shows how 60° triangles lie on a strip, up and down.
func TrianglesOnStrip(t calc.TriangleResult, system measure.System) Scene {
	part := t
	part.PerStrip = min(part.PerStrip, mostDrawn)
	strip, triangles := part.StripOutlines()
	s := onStrip(strip, triangles, system, "triangle")
	s.Caption = partOf(t.PerStrip, "triangles")
	s.Name, s.Title = "triangles-on-strip", "Triangles on a strip"
	s.Alt = fmt.Sprintf("%s on a strip %s wide, pointing up and down by turns.", counted(t.PerStrip, "triangle", "triangles"), t.StripWidth.Show(system))
	return s
}

// DiamondsOnStrip shows how diamonds lie on a strip.
func DiamondsOnStrip(d calc.DiamondResult, system measure.System) Scene {
	part := d
	part.PerStrip = min(part.PerStrip, mostDrawn)
	strip, diamonds := part.StripOutlines()
	s := onStrip(strip, diamonds, system, "diamond")
	s.Caption = partOf(d.PerStrip, "diamonds")
	s.Name, s.Title = "diamonds-on-strip", "Diamonds on a strip"
	s.Alt = fmt.Sprintf("%s of %s on a strip %s wide, one after the other.", counted(d.PerStrip, "diamond", "diamonds"), d.Angle.Show(), d.StripWidth.Show(system))
	return s
}

// partOf says that not all of so many pieces are drawn, where that is so.
func partOf(n int, pieces string) []string {
	_, caption := drawn(n, mostDrawn, pieces)
	return caption
}

// onStrip draws pieces on their strip, each with its number.
func onStrip(strip calc.Outline, pieces []calc.Outline, system measure.System, one string) Scene {
	outline := traced(strip)
	p := Panel{Shapes: []Shape{{Outline: outline, Fill: Offcut, Line: Outer}}}
	for i, o := range pieces {
		p.Shapes = append(p.Shapes, Shape{Outline: traced(o), Fill: Fabric(i % 2), Line: Cut, Label: Label{Short: fmt.Sprint(i + 1)}})
	}
	_, high := outline.Extent()
	p.Sizes = []Size{
		{To: high, Side: Below, Text: high.X.Show(system) + " of strip"},
		{To: high, Side: LeftOf, Text: high.Y.Show(system)},
	}
	return Scene{
		Panels: []Panel{p},
		Key:    []Key{{Fill: Fabric1, Line: Cut, Text: one}, {Fill: Offcut, Line: Outer, Text: "left over"}},
	}
}
