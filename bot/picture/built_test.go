package picture

import (
	"context"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc"
	"counterhand/calc/cutting"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
)

func must[T any](t testing.TB, v T, err error) T {
	t.Helper()
	require.NoError(t, err)
	return v
}

// ringOf reckons a ring with the shop's defaults.
func ringOf(t testing.TB, blades int, length measure.Length, end calc.BladeEnd, turn measure.Angle) calc.RingResult {
	t.Helper()
	r, err := calc.Ring(calc.RingRequest{
		Conventions: calc.ImperialConventions(), Blades: blades, Length: length, Narrow: calc.DefaultNarrowEnd, Turn: turn, End: end,
		Overlap: calc.DefaultCoverOverlap, Turning: calc.DefaultCoverTurning, Margin: calc.DefaultRingMargin,
	})
	return must(t, r, err)
}

// built are scenes as the builders make them, by the names of their goldens.
func built(t testing.TB) map[string]scene.Scene {
	imperial, metric := measure.Imperial, measure.Metric
	c := calc.ImperialConventions()
	plain := ringOf(t, 16, 6*inch, calc.PlainEnd, 0)
	folded := ringOf(t, 20, 5*inch, calc.FoldedEnd, 0)
	strips, err := calc.WedgeStrips(calc.WedgeStripsRequest{Conventions: c, Blades: 20, Length: 5 * inch, Narrow: inch, Angle: 18, Strip: 5 * inch})
	must(t, strips, err)
	along, err := calc.WedgeStrips(calc.WedgeStripsRequest{Conventions: c, Blades: 96, Length: 6 * inch, Narrow: inch, Angle: 15, Strip: 3 * inch})
	must(t, along, err)
	all := map[string]scene.Scene{
		"ring":                scene.Ring(plain, imperial),
		"ring-metric":         scene.Ring(folded, metric),
		"ring-half":           scene.Ring(ringOf(t, 9, 6*inch, calc.RoundedEnd, calc.HalfTurn), imperial),
		"ring-quarter":        scene.Ring(ringOf(t, 5, 6*inch, calc.FoldedEnd, calc.QuarterTurn), imperial),
		"blade":               scene.Blade(plain, imperial),
		"folded-tip":          scene.FoldedTip(folded, imperial),
		"blades-head-to-tail": scene.BladesOnStrip(strips, imperial),
		"blades-along":        scene.BladesOnStrip(along, imperial),
	}
	all["plan"] = planOf(t, []cutting.Piece{
		{Name: "centres", Width: 9 * inch / 2, Length: 9 * inch / 2, Count: 20}, {Name: "sashes", Width: 5 * inch / 2, Length: 19 * inch / 2, Count: 31},
		{Name: "corners", Width: 5 * inch / 2, Length: 5 * inch / 2, Count: 12}, {Name: "border", Width: 7 * inch / 2, Length: 36 * inch, Count: 4},
	})
	for name, s := range builtQuilts(t, c) {
		all[name] = s
	}
	for name, s := range builtPatches(t, c) {
		all[name] = s
	}
	return all
}

func planOf(t testing.TB, pieces []cutting.Piece) scene.Scene {
	t.Helper()
	r := cutting.Request{Width: 40 * inch, Pieces: pieces}
	plan, err := cutting.Best(context.Background(), r)
	return scene.CuttingPlan(r, must(t, plan, err), measure.Imperial)
}

// builtQuilts are scenes of whole quilts and of what goes round them.
func builtQuilts(t testing.TB, c calc.Conventions) map[string]scene.Scene {
	quilt := measure.Size{Width: 54 * inch, Length: 68 * inch}
	binding := calc.BindingRequest{Conventions: c, Edge: calc.RectangleEdge(quilt), StripWidth: calc.DefaultBindingStrip, Extra: calc.DefaultBindingExtra, Join: calc.DiagonalJoin}
	bound, err := calc.Binding(binding)
	must(t, bound, err)
	bias := calc.BiasBindingRequest{Conventions: c, Edge: calc.MeasuredEdge(300 * inch), StripWidth: 9 * inch / 4}
	biased, err := calc.BiasBinding(bias)
	must(t, biased, err)
	backing := calc.BackingRequest{Conventions: c, Quilt: quilt, Overage: calc.DefaultBackingOverage, PanelSeam: calc.DefaultPanelSeam}
	backed, err := calc.Backing(backing)
	must(t, backed, err)
	wide := calc.BackingRequest{Conventions: c, Quilt: measure.Size{Width: 90 * inch, Length: 70 * inch}, Overage: calc.DefaultBackingOverage, PanelSeam: calc.DefaultPanelSeam}
	widened, err := calc.Backing(wide)
	must(t, widened, err)
	scenes := map[string]scene.Scene{
		"binding":      scene.Binding(binding, bound),
		"bias-binding": scene.BiasBinding(bias, biased),
		"backing":      scene.Backing(backing, backed),
		"backing-wide": scene.Backing(wide, widened),
	}
	for _, corners := range []calc.Corners{calc.ButtedCorners, calc.MitredCorners, calc.SquaredCorners} {
		r := calc.BordersRequest{Conventions: c, Quilt: quilt, Widths: []measure.Length{3 * inch / 2, 4 * inch}, Corners: corners, Spare: calc.DefaultMitreSpare, Join: calc.StraightJoin}
		b, err := calc.Borders(r)
		scenes["borders-"+string(corners)] = scene.Borders(r, must(t, b, err))
	}
	for name, r := range map[string]calc.SashingRequest{
		"sashing":         {Across: 5, Down: 6},
		"sashing-stones":  {Across: 5, Down: 6, Cornerstones: true, Frame: true},
		"sashing-a-great": {Across: 40, Down: 40, Cornerstones: true, Frame: true},
	} {
		r.Conventions, r.Block, r.Sash = c, measure.Size{Width: 9 * inch, Length: 9 * inch}, 2*inch
		s, err := calc.Sashing(r)
		scenes[name] = scene.Sashing(r, must(t, s, err))
	}
	for name, r := range map[string]calc.LayoutRequest{
		"layout":          {Across: 5, Down: 7, Setting: calc.StraightSetting},
		"layout-on-point": {Across: 5, Down: 6, Setting: calc.OnPointSetting},
	} {
		r.Conventions, r.Block = c, measure.Size{Width: 12 * inch, Length: 12 * inch}
		l, err := calc.Layout(r)
		scenes[name] = scene.Layout(r, must(t, l, err))
	}
	setting, err := calc.SettingTriangles(calc.SettingTrianglesRequest{Conventions: c, Block: 12 * inch, Across: 5, Down: 6})
	scenes["setting-triangles"] = scene.SettingTriangles(must(t, setting, err), measure.Imperial)
	coping := calc.CopingRequest{Conventions: c, Quilt: measure.Size{Width: 46 * inch, Length: 57 * inch}, Unit: 5 * inch}
	coped, err := calc.Coping(coping)
	scenes["coping"] = scene.Coping(coping, must(t, coped, err))
	bed := calc.BedRequest{Conventions: c, Mattress: measure.Size{Width: 60 * inch, Length: 80 * inch}, SideDrop: 12 * inch, FootDrop: 12 * inch, Tuck: 10 * inch}
	made, err := calc.Bed(bed)
	scenes["bed"] = scene.Bed(bed, must(t, made, err))
	return scenes
}

// builtPatches are scenes of patches and of how they are cut.
func builtPatches(t testing.TB, c calc.Conventions) map[string]scene.Scene {
	imperial := measure.Imperial
	scenes := map[string]scene.Scene{}
	for _, n := range []int{1, 2, 4, 8} {
		r := calc.HalfSquareRequest{Conventions: c, Finished: 3 * inch, AtATime: n, Units: 24}
		h, err := calc.HalfSquares(r)
		scenes["half-squares-"+string(rune('0'+n))] = scene.HalfSquares(r, must(t, h, err))
	}
	quarters := calc.QuarterSquareRequest{Conventions: c, Finished: 6 * inch, Units: 12}
	q, err := calc.QuarterSquares(quarters)
	scenes["quarter-squares"] = scene.QuarterSquares(quarters, must(t, q, err))
	for name, n := range map[string]int{"geese-1": 1, "geese-4": 4} {
		r := calc.GeeseRequest{Conventions: c, Width: 6 * inch, AtATime: n, Geese: 16}
		g, err := calc.FlyingGeese(r)
		scenes[name] = scene.FlyingGeese(r, must(t, g, err))
	}
	squares := calc.SquareInSquareRequest{Conventions: c, Block: 12 * inch, Rounds: 2}
	sq, err := calc.SquareInSquare(squares)
	scenes["square-in-square"] = scene.SquareInSquare(squares, must(t, sq, err))
	halves := calc.HalfRectangleRequest{Conventions: c, Width: 2 * inch, Height: 4 * inch}
	h, err := calc.HalfRectangles(halves)
	scenes["half-rectangles"] = scene.HalfRectangles(halves, must(t, h, err))
	scenes["hexagon"] = scene.Hexagon(hexagonOf(t, c), imperial)
	scenes["hexagon-quilt"] = scene.HexagonQuilt(hexagonOf(t, c), imperial)
	scenes["triangle"] = scene.Triangle(triangleOf(t, c), imperial)
	scenes["triangles-on-strip"] = scene.TrianglesOnStrip(triangleOf(t, c), imperial)
	scenes["diamond"] = scene.Diamond(diamondOf(t, c), imperial)
	scenes["diamonds-on-strip"] = scene.DiamondsOnStrip(diamondOf(t, c), imperial)
	scenes["quarter-circle"] = scene.QuarterCircle(quarterOf(t, c), imperial)
	scenes["scallops"] = scene.Scallops(scallopsOf(t, c), imperial)
	scenes["circle"] = scene.RoundCircle(circleOf(t, c), imperial)
	yardage := calc.YardageRequest{Conventions: c, Count: 48, Piece: measure.Size{Width: 11 * inch / 2, Length: 11 * inch / 2}}
	y, err := calc.Yardage(yardage)
	scenes["yardage"] = scene.Yardage(yardage, must(t, y, err))
	pieces := calc.PiecesRequest{Conventions: c, From: c.FatQuarter(), Piece: measure.Size{Width: 5 * inch, Length: 5 * inch}}
	p, err := calc.Pieces(pieces)
	scenes["pieces"] = scene.Pieces(pieces, must(t, p, err))
	patches := calc.StripSetRequest{Conventions: c, Rows: 3, Columns: 3, Strip: 5 * inch / 2, Blocks: 40}
	set, err := calc.StripSet(patches)
	scenes["strip-set"] = scene.StripSet(patches, must(t, set, err))
	edge := calc.EdgeTrianglesRequest{Conventions: c, Square: 4 * inch, Quilt: measure.Size{Width: 50 * inch, Length: 60 * inch}}
	e, err := calc.EdgeTriangles(edge)
	scenes["edge-triangles"] = scene.EdgeTriangles(edge, must(t, e, err))
	return scenes
}

func hexagonOf(t testing.TB, c calc.Conventions) calc.HexagonResult {
	h, err := calc.Hexagons(calc.HexagonRequest{Conventions: c, Side: 3 * inch, Allowance: quarter, Quilt: measure.Size{Width: 40 * inch, Length: 50 * inch}})
	return must(t, h, err)
}

func triangleOf(t testing.TB, c calc.Conventions) calc.TriangleResult {
	r, err := calc.Triangles60(calc.TriangleRequest{Conventions: c, Height: 3 * inch, Triangles: 40})
	return must(t, r, err)
}

func diamondOf(t testing.TB, c calc.Conventions) calc.DiamondResult {
	r, err := calc.Diamonds(calc.DiamondRequest{Conventions: c, Angle: 45, Side: 4 * inch, Diamonds: 8})
	return must(t, r, err)
}

func quarterOf(t testing.TB, c calc.Conventions) calc.QuarterCircleResult {
	r, err := calc.QuarterCircle(calc.QuarterCircleRequest{Conventions: c, Radius: 5 * inch, Block: 7 * inch})
	return must(t, r, err)
}

func scallopsOf(t testing.TB, c calc.Conventions) calc.ScallopResult {
	r, err := calc.Scallops(calc.ScallopRequest{Conventions: c, Edge: 60 * inch, Across: 6 * inch, Depth: 3 * inch / 2})
	return must(t, r, err)
}

func circleOf(t testing.TB, c calc.Conventions) calc.CircleResult {
	r, err := calc.Circle(calc.CircleRequest{Conventions: c, Across: 5 * inch, Turning: quarter})
	return must(t, r, err)
}

// Hostile requests: the builders keep what they draw within bounds, and what
// comes of it is small.
func TestHostileRequests(t *testing.T) {
	c := calc.ImperialConventions()
	great := measure.Size{Width: 10 * measure.Metre, Length: 10 * measure.Metre}
	sliver := measure.Size{Width: inch / 16, Length: inch / 16}
	yardage := calc.YardageRequest{Conventions: c, Count: 500, Piece: sliver}
	y, err := calc.Yardage(yardage)
	must(t, y, err)
	pieces := calc.PiecesRequest{Conventions: c, From: measure.Size{Width: 40 * inch, Length: 40 * inch}, Piece: sliver}
	p, err := calc.Pieces(pieces)
	must(t, p, err)
	layout := calc.LayoutRequest{Conventions: c, Block: measure.Size{Width: inch, Length: inch}, Wanted: great, Setting: calc.OnPointSetting}
	l, err := calc.Layout(layout)
	must(t, l, err)
	binding := calc.BindingRequest{Conventions: c, Edge: calc.RectangleEdge(measure.Size{Width: 900 * measure.Metre, Length: 900 * measure.Metre}), StripWidth: inch, Join: calc.StraightJoin}
	b, err := calc.Binding(binding)
	must(t, b, err)
	hexagons, err := calc.Hexagons(calc.HexagonRequest{Conventions: c, Side: inch / 2, Allowance: quarter, Quilt: great})
	must(t, hexagons, err)
	narrow, err := calc.Ring(calc.RingRequest{Conventions: c, Blades: 360, Length: inch, Narrow: inch})
	must(t, narrow, err)
	var many []cutting.Piece
	for i := range 25 {
		many = append(many, cutting.Piece{Name: long, Width: inch/16 + measure.Length(i)*inch, Length: inch/16 + measure.Length(i%7)*inch, Count: 20})
	}
	for name, s := range map[string]scene.Scene{
		"yardage": scene.Yardage(yardage, y), "pieces": scene.Pieces(pieces, p), "layout": scene.Layout(layout, l), "binding": scene.Binding(binding, b),
		"hexagons": scene.HexagonQuilt(hexagons, measure.Imperial), "ring": scene.Ring(narrow, measure.Imperial), "plan": planOf(t, many),
	} {
		checkWords(t, name, laid(t, s))
		for format, write := range formats {
			file, err := write(s)
			require.NoError(t, err, "%s as %s", name, format)
			assert.Less(t, len(file), 2_000_000, "%s as %s", name, format)
		}
	}
}

// BenchmarkBuiltPNG draws every picture that the builders make.
func BenchmarkBuiltPNG(b *testing.B) {
	for name, s := range built(b) {
		b.Run(name, func(b *testing.B) { benchmark(b, s, PNG) })
	}
}

// templates are documents as the builders make them.
func templates(t testing.TB) map[string]scene.Templates {
	c, imperial := calc.ImperialConventions(), measure.Imperial
	setting := calc.SettingTrianglesRequest{Conventions: c, Block: 12 * inch}
	set, err := calc.SettingTriangles(setting)
	must(t, set, err)
	half, err := calc.HalfRectangles(calc.HalfRectangleRequest{Conventions: c, Width: 2 * inch, Height: 4 * inch})
	must(t, half, err)
	return map[string]scene.Templates{
		"ring":            scene.RingTemplates(ringOf(t, 16, 6*inch, calc.FoldedEnd, 0), imperial),
		"ring-large":      scene.RingTemplates(ringOf(t, 8, 14*inch, calc.PlainEnd, 0), imperial),
		"hexagon":         scene.HexagonTemplates(hexagonOf(t, c), imperial),
		"triangle":        scene.TriangleTemplates(triangleOf(t, c), imperial),
		"diamond":         scene.DiamondTemplates(diamondOf(t, c), imperial),
		"setting":         scene.SettingTriangleTemplates(setting, set),
		"half-rectangles": scene.HalfRectangleTemplates(half, imperial),
		"quarter-circle":  scene.QuarterCircleTemplates(quarterOf(t, c), imperial),
		"scallops":        scene.ScallopTemplates(scallopsOf(t, c), imperial),
		"circle":          scene.CircleTemplates(circleOf(t, c), measure.Metric),
	}
}

// The words of real rings and quilts keep apart at every size and in both
// systems.
func TestWordsOfBuiltScenesAtEverySize(t *testing.T) {
	for _, c := range []calc.Conventions{calc.ImperialConventions(), calc.MetricConventions()} {
		for blades := 3; blades <= 60; blades++ {
			for _, end := range []calc.BladeEnd{calc.PlainEnd, calc.FoldedEnd} {
				r, err := calc.Ring(calc.RingRequest{Conventions: c, Blades: blades, Length: 6 * inch, Narrow: inch, End: end,
					Overlap: quarter, Turning: quarter, Margin: 2 * inch})
				if err != nil {
					continue // so few blades do not leave room for their seams
				}
				what := fmt.Sprintf("%v, %d blades, end %d", c.System, blades, end)
				checkWords(t, what, laid(t, scene.Ring(r, c.System)))
				checkWords(t, what, laid(t, scene.Blade(r, c.System)))
			}
		}
		for n := 1; n <= 40; n++ {
			what := fmt.Sprintf("%v, %d blocks", c.System, n)
			block := measure.Size{Width: 12 * inch, Length: 12 * inch}
			layout := calc.LayoutRequest{Conventions: c, Block: block, Setting: calc.OnPointSetting, Across: n, Down: 41 - n}
			l, err := calc.Layout(layout)
			checkWords(t, what, laid(t, scene.Layout(layout, must(t, l, err))))
			sashing := calc.SashingRequest{Conventions: c, Block: block, Sash: 2 * inch, Across: n, Down: 41 - n, Frame: n%2 == 0, Cornerstones: n%3 == 0}
			s, err := calc.Sashing(sashing)
			checkWords(t, what, laid(t, scene.Sashing(sashing, must(t, s, err))))
			quilt := measure.Size{Width: measure.Length(n) * 10 * inch, Length: measure.Length(41-n) * 10 * inch}
			borders := calc.BordersRequest{Conventions: c, Quilt: quilt, Widths: []measure.Length{inch, 3 * inch, 5 * inch}[:1+n%3], Join: calc.StraightJoin}
			b, err := calc.Borders(borders)
			checkWords(t, what, laid(t, scene.Borders(borders, must(t, b, err))))
			backing := calc.BackingRequest{Conventions: c, Quilt: quilt, Overage: 4 * inch, PanelSeam: inch / 2}
			k, err := calc.Backing(backing)
			checkWords(t, what, laid(t, scene.Backing(backing, must(t, k, err))))
		}
	}
}

// BenchmarkHostilePNG draws the most that is drawn.
func BenchmarkHostilePNG(b *testing.B) {
	huge := blocks(28, short)
	for i := range huge.Panels[0].Shapes {
		huge.Panels[0].Shapes[i].Fill = scene.Fabric6
	}
	benchmark(b, huge, PNG)
}
