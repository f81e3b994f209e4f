package scene

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// Sashing shows the quilt with its sashes, and cornerstones where there are any.
func Sashing(r calc.SashingRequest, s calc.SashingResult) Scene {
	show := shower(r.System)
	c, rows, caption := shownBlocks(r.Across, r.Down)
	g := grid{SashingRequest: r, across: c, down: rows, whole: len(caption) == 0}
	p := Panel{Shapes: g.shapes()}
	if len(caption) == 0 {
		p.sized(Below, show(s.QuiltWidth))
		p.sized(LeftOf, show(s.QuiltLength))
	}
	scene := Scene{
		Name: "sashing", Title: fmt.Sprintf("%d by %d blocks with sashing", r.Across, r.Down), Panels: []Panel{p}, Caption: caption,
		Key: []Key{{Fill: Fabric1, Line: Edge, Text: "blocks of " + r.Block.Show(r.System)},
			{Fill: Fabric2, Line: Edge, Text: fmt.Sprintf("%s, cut %s by %s", counted(s.ShortSashes, "short sash", "short sashes"), show(s.StripWidth), show(s.SashCut))}},
	}
	if s.LongSashes > 0 {
		scene.Key = append(scene.Key, Key{Fill: Fabric5, Line: Edge, Text: fmt.Sprintf("%s, cut %s by %s", counted(s.LongSashes, "long sash", "long sashes"), show(s.StripWidth), show(s.LongCut))})
	}
	if s.Cornerstones > 0 {
		scene.Key = append(scene.Key, Key{Fill: Fabric3, Line: Edge, Text: fmt.Sprintf("%s of %s", counted(s.Cornerstones, "cornerstone", "cornerstones"), show(s.StripWidth))})
	}
	scene.Alt = fmt.Sprintf("%d by %d blocks of %s with sashes of %s between them", r.Across, r.Down, r.Block.Show(r.System), show(r.Sash))
	if r.Frame {
		scene.Alt += " and round them"
	}
	scene.Alt += fmt.Sprintf(". The quilt is %s.", measure.Size{Width: s.QuiltWidth, Length: s.QuiltLength}.Show(r.System))
	return scene
}

// grid is the part of a quilt with sashing that is drawn.
type grid struct {
	calc.SashingRequest
	across, down int
	whole        bool // nothing is left out
}

// pitch is from one block to the next, and edge the frame before the first.
func (g grid) pitch() (x, y measure.Length) { return g.Block.Width + g.Sash, g.Block.Length + g.Sash }

func (g grid) edge() measure.Length {
	if g.Frame {
		return g.Sash
	}
	return 0
}

// columns and rows of sashes on the drawing: a frame has one at either end,
// and a part of a quilt ends with a block.
func (g grid) ends() (columns, rows []int) {
	span := func(n int) []int {
		first, last := 1, n-1
		if g.Frame {
			first = 0
			if g.whole {
				last = n
			}
		}
		var at []int
		for i := first; i <= last; i++ {
			at = append(at, i)
		}
		return at
	}
	return span(g.across), span(g.down)
}

func (g grid) shapes() []Shape {
	px, py := g.pitch()
	edge := g.edge()
	columns, rows := g.ends()
	width := many(g.across, px) - g.Sash + measure.Length(len(columns)-g.across+1)*g.Sash
	var shapes []Shape
	for j := range g.down {
		y := edge + many(j, py)
		for i := range g.across {
			shapes = append(shapes, patch(Rect(edge+many(i, px), y, g.Block.Width, g.Block.Length), Fabric1))
		}
		for _, i := range columns {
			shapes = append(shapes, patch(Rect(edge+many(i, px)-g.Sash, y, g.Sash, g.Block.Length), Fabric2))
		}
	}
	for _, j := range rows {
		y := edge + many(j, py) - g.Sash
		if !g.Cornerstones {
			shapes = append(shapes, patch(Rect(0, y, width, g.Sash), Fabric5))
			continue
		}
		for i := range g.across {
			shapes = append(shapes, patch(Rect(edge+many(i, px), y, g.Block.Width, g.Sash), Fabric2))
		}
		for _, i := range columns {
			shapes = append(shapes, patch(Rect(edge+many(i, px)-g.Sash, y, g.Sash, g.Sash), Fabric3))
		}
	}
	return shapes
}
