package picture

import (
	"fmt"
	"strings"

	"counterhand/calc/measure"
	"counterhand/commands/scene"
)

const (
	inch    = measure.Inch
	quarter = measure.Inch / 4
)

// ring is a ring of blades with everything that a panel can carry.
func ring(blades int) scene.Scene {
	inner, outer := 2*inch, 8*inch
	step := measure.Angle(360) / measure.Angle(blades)
	var p scene.Panel
	for i := range blades {
		a := step * measure.Angle(i)
		p.Shapes = append(p.Shapes, scene.Shape{
			Outline: scene.Outline{scene.Polar(inner, a), scene.Polar(outer, a), scene.Polar(outer, a+step), scene.Polar(inner, a+step)},
			Fill:    scene.Fabric(i % 3), Line: scene.Edge,
			Label: scene.Label{Long: fmt.Sprintf("blade %d", i+1), Short: fmt.Sprint(i + 1)},
		})
	}
	p.Shapes = append(p.Shapes, scene.Shape{Outline: scene.Circle(scene.Point{}, inner+quarter), Line: scene.Sewn})
	p.Sizes = []scene.Size{
		{From: scene.Point{X: -outer}, To: scene.Point{X: outer}, Text: "16 in across"},
		{From: scene.Point{X: -inner}, To: scene.Point{X: inner}, Text: "4 in"},
		{From: scene.Point{Y: -outer}, To: scene.Point{Y: outer}, Side: scene.LeftOf, Text: "16 in"},
		{From: scene.Point{Y: -inner}, To: scene.Point{Y: inner}, Side: scene.RightOf, Text: "opening 4 in"},
		{From: scene.Point{X: inner}, To: scene.Point{X: outer}, Side: scene.Above, Text: "6 in"},
	}
	p.Notes = []scene.Note{
		{At: scene.Polar(inner+quarter, 45), Text: "The cover circle finishes at 4½ in: cut 5 in."},
		{At: scene.Polar(outer, 30), Text: "Wide end, 3 13/16 in"},
		{At: scene.Polar(inner, 30), Text: "Narrow end, 1⅛ in"},
	}
	return scene.Scene{
		Name: "ring", Title: fmt.Sprintf("Ring of %d blades", blades),
		Alt:     fmt.Sprintf("A ring of %d blades, 16 in across with an opening of 4 in.", blades),
		Caption: []string{"Reckoned on ¼ in seams and a narrow end of ⅞ in.", "To scale; not a template."},
		Panels:  []scene.Panel{p},
		Key: []scene.Key{
			{Fill: scene.Fabric1, Text: "first fabric"}, {Fill: scene.Fabric2, Text: "second fabric"},
			{Fill: scene.Fabric3, Text: "third fabric"}, {Line: scene.Sewn, Text: "edge of the cover circle"},
		},
	}
}

// blocks is a quilt of square blocks, as many across as down.
func blocks(n int, label string) scene.Scene {
	p := scene.Panel{Shapes: []scene.Shape{{Outline: scene.Rect(0, 0, measure.Length(n)*12*inch, measure.Length(n)*12*inch), Fill: scene.Ground, Line: scene.Outer}}}
	for i := range n * min(n, 28) {
		x, y := measure.Length(i%n)*12*inch, measure.Length(i/n)*12*inch
		p.Shapes = append(p.Shapes, scene.Shape{
			Outline: scene.Rect(x+quarter, y+quarter, 12*inch-2*quarter, 12*inch-2*quarter),
			Fill:    scene.Fabric(i % scene.Fabrics), Line: scene.Edge,
			Label: scene.Label{Long: label, Short: fmt.Sprint(i + 1)},
		})
	}
	_, high := p.Extent()
	p.Sizes = []scene.Size{
		{To: high, Text: label}, {To: high, Side: scene.LeftOf, Text: label},
		{To: scene.Point{X: 12 * inch}, Side: scene.Above, Text: label},
		{From: scene.Point{X: high.X - 12*inch}, To: high, Side: scene.Above, Text: label},
	}
	return scene.Scene{
		Name: "blocks", Title: fmt.Sprintf("%d x %d blocks, %s", n, n, label), Alt: label,
		Panels: []scene.Panel{p}, Caption: []string{label}, Key: []scene.Key{{Fill: scene.Ground, Text: label}, {Fill: scene.Fabric2, Text: label}},
	}
}

// steps is a row of small panels with notes and sizes.
func steps(n int, label string) scene.Scene {
	s := scene.Scene{Name: "steps", Title: "In steps", Alt: "Steps."}
	for i := range n {
		o := scene.Outline{{X: -inch, Y: 6 * inch}, {X: inch, Y: 6 * inch}, {X: inch / 2}, {X: -inch / 2}}
		s.Panels = append(s.Panels, scene.Panel{
			Title: fmt.Sprintf("%d. %s", i+1, label), Share: []scene.Share{scene.Half, scene.Third, scene.Whole}[i%3],
			Shapes: []scene.Shape{
				{Outline: o, Fill: scene.Fabric(i), Line: scene.Cut, Label: scene.Label{Long: label}},
				{Outline: scene.Outline{{Y: 0}, {Y: 6 * inch}}, Open: true, Line: scene.Fold},
			},
			Sizes: []scene.Size{{From: o[0], To: o[1], Side: scene.Above, Text: "2 in"}, {From: o[0], To: o[3], Side: scene.LeftOf, Text: label}},
			Notes: []scene.Note{{At: o[1], Text: label}, {At: o[1], Text: label}, {At: o[2], Text: "narrow end"}},
		})
	}
	return s
}

// every fill beside every other.
func fills() scene.Scene {
	s := scene.Scene{Name: "fills", Title: "Fills and lines", Alt: "Every fill and every line."}
	var p scene.Panel
	for f := scene.Paper; f <= scene.Fabric8; f++ {
		x := measure.Length(f-scene.Paper) % 6 * 3 * inch
		y := -measure.Length(f-scene.Paper) / 6 * 3 * inch
		p.Shapes = append(p.Shapes, scene.Shape{Outline: scene.Rect(x, y, 3*inch, 3*inch), Fill: f, Line: scene.Edge, Label: scene.Label{Long: fmt.Sprint(f)}})
		s.Key = append(s.Key, scene.Key{Fill: f, Text: fmt.Sprint("fill ", f)})
	}
	for l := scene.Edge; l <= scene.Outer; l++ {
		s.Key = append(s.Key, scene.Key{Line: l, Text: fmt.Sprint("line ", l)})
	}
	s.Panels = []scene.Panel{p}
	return s
}

const (
	short = "2½ in"
	long  = "a rather long label that says 13 13/16 in across once it is sewn, ironed and trimmed"
)

var word = strings.Repeat("unbreakable", 12)
