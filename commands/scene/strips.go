package scene

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// BladesOnStrip shows how blades lie on a strip. It is no picture at all
// (without a panel) where the shape of the blade was not known.
func BladesOnStrip(w calc.WedgeStripsResult, system measure.System) Scene {
	strip, blades := w.StripOutlines()
	s := onStrip(strip, blades, system, "blade", "blades")
	if len(blades) == 0 {
		return Scene{}
	}
	s.Name, s.Title = "blades-on-strip", "Blades on a strip"
	s.Alt = fmt.Sprintf("%s on a strip %s wide, %s. %s give %s.",
		counted(w.BladesPerStrip, "blade", "blades"), w.StripWidth.Show(system), layoutWords(w.Layout),
		counted(w.Strips, "strip", "strips"), counted(w.Strips*w.BladesPerStrip, "blade", "blades"))
	s.Caption = append([]string{fmt.Sprintf("%s to a strip, %s; %s in all.",
		counted(w.BladesPerStrip, "blade", "blades"), layoutWords(w.Layout), counted(w.Strips, "strip", "strips"))}, s.Caption...)
	return s
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
	strip, triangles := t.StripOutlines()
	s := onStrip(strip, triangles, system, "triangle", "triangles")
	s.Name, s.Title = "triangles-on-strip", "Triangles on a strip"
	s.Alt = fmt.Sprintf("%s on a strip %s wide, pointing up and down by turns.", counted(t.PerStrip, "triangle", "triangles"), t.StripWidth.Show(system))
	return s
}

// DiamondsOnStrip shows how diamonds lie on a strip.
func DiamondsOnStrip(d calc.DiamondResult, system measure.System) Scene {
	strip, diamonds := d.StripOutlines()
	s := onStrip(strip, diamonds, system, "diamond", "diamonds")
	s.Name, s.Title = "diamonds-on-strip", "Diamonds on a strip"
	s.Alt = fmt.Sprintf("%s of %s on a strip %s wide, one after the other.", counted(d.PerStrip, "diamond", "diamonds"), d.Angle.Show(), d.StripWidth.Show(system))
	return s
}

// onStrip draws pieces on their strip, each with its number.
func onStrip(strip calc.Outline, pieces []calc.Outline, system measure.System, one, several string) Scene {
	outline := traced(strip)
	n, caption := drawn(len(pieces), mostDrawn, several)
	p := Panel{Shapes: []Shape{{Outline: outline, Fill: Offcut, Line: Outer}}}
	for i, o := range pieces[:n] {
		p.Shapes = append(p.Shapes, Shape{Outline: traced(o), Fill: Fabric(i % 2), Line: Cut, Label: Label{Short: fmt.Sprint(i + 1)}})
	}
	_, high := outline.Extent()
	p.Sizes = []Size{
		{To: high, Side: Below, Text: high.X.Show(system) + " of strip"},
		{To: high, Side: LeftOf, Text: high.Y.Show(system)},
	}
	return Scene{
		Panels:  []Panel{p},
		Caption: caption,
		Key:     []Key{{Fill: Fabric1, Line: Cut, Text: one}, {Fill: Offcut, Line: Outer, Text: "left over"}},
	}
}
