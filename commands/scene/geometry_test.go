package scene

import (
	"context"
	"fmt"
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc"
	"counterhand/calc/cutting"
	"counterhand/calc/measure"
)

// The tests of this file hand what is drawn to a general library for plane
// geometry (github.com/peterstace/simplefeatures), which knows nothing of
// quilts, and let it say whether shapes overlap, fill and close.

const (
	inch    = measure.Inch
	quarter = measure.Inch / 4
)

// polygon hands an outline over, in inches.
func polygon(t *testing.T, o Outline) geom.Geometry {
	t.Helper()
	xy := make([]float64, 0, 2*len(o)+2)
	for i := range len(o) + 1 {
		p := o[i%len(o)]
		xy = append(xy, p.X.Inches(), p.Y.Inches())
	}
	ring := geom.NewLineString(geom.NewSequence(xy, geom.DimXY))
	p := geom.NewPolygon([]geom.LineString{ring})
	require.NoError(t, p.Validate())
	return p.AsGeometry()
}

// halfPlane is what lies to the left of a line, as far as matters here.
func halfPlane(t *testing.T, a, b Point, moved measure.Length) geom.Geometry {
	t.Helper()
	const far = 1000 * inch
	ux, uy := unit(a, b)
	at := func(along, left measure.Length) Point {
		x, y := float64(along), float64(left+moved)
		return Point{a.X + measure.Length(ux*x-uy*y), a.Y + measure.Length(uy*x+ux*y)}
	}
	return polygon(t, Outline{at(-far, 0), at(far, 0), at(far, far), at(-far, far)})
}

func union(t *testing.T, all []geom.Geometry) geom.Geometry {
	t.Helper()
	u, err := geom.UnionMany(all)
	require.NoError(t, err)
	return u
}

// disjoint proves that shapes do not overlap: what they cover together is as
// large as the sum of them.
func disjoint(t *testing.T, all []geom.Geometry, what string) {
	t.Helper()
	sum := 0.0
	for _, g := range all {
		sum += g.Area()
	}
	assert.InEpsilon(t, sum, union(t, all).Area(), 1e-6, what)
}

// holes counts the holes of a shape that hangs together.
func holes(t *testing.T, g geom.Geometry, what string) int {
	t.Helper()
	p, is := g.AsPolygon()
	require.True(t, is, "%s hang together: %s", what, g.Type())
	return p.NumInteriorRings()
}

func ringWith(t *testing.T, blades int, end calc.BladeEnd, turn measure.Angle) calc.RingResult {
	t.Helper()
	r, err := calc.Ring(calc.RingRequest{
		Conventions: calc.ImperialConventions(), Blades: blades, Length: 6 * inch, Narrow: calc.DefaultNarrowEnd, Turn: turn, End: end,
		Overlap: calc.DefaultCoverOverlap, Turning: calc.DefaultCoverTurning, Margin: calc.DefaultRingMargin,
	})
	require.NoError(t, err)
	return r
}

// The blades as cut, taken in by the seam along both sides, close the circle.
func TestCutBladesCloseTheCircleInsideTheirSeams(t *testing.T) {
	for blades := 5; blades <= 60; blades++ {
		r := ringWith(t, blades, calc.PlainEnd, 0)
		cut := Blade(r, measure.Imperial).Panels[0].Shapes[0].Outline
		require.Len(t, cut, 4)
		inside := polygon(t, cut)
		for _, side := range [][2]Point{{cut[1], cut[2]}, {cut[3], cut[0]}} {
			var err error
			inside, err = geom.Intersection(inside, halfPlane(t, side[0], side[1], quarter))
			require.NoError(t, err)
		}
		var all []geom.Geometry
		for i := range blades {
			all = append(all, turned(inside, 360*float64(i)/float64(blades)))
		}
		what := fmt.Sprintf("%d blades", blades)
		// Were they too wide, they would overlap; were they too narrow, they would
		// fall short of the turn.
		assert.InEpsilon(t, float64(blades)*inside.Area(), union(t, all).Area(), 1e-5, what)
		assert.InDelta(t, 2*math.Pi, angleAround(t, inside)*float64(blades), 1e-6, what)
	}
}

// turned turns a shape about the origin.
func turned(g geom.Geometry, degrees float64) geom.Geometry {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return g.TransformXY(func(p geom.XY) geom.XY { return geom.XY{X: p.X*cos - p.Y*sin, Y: p.X*sin + p.Y*cos} })
}

// angleAround is the angle under which a shape is seen from the origin.
func angleAround(t *testing.T, g geom.Geometry) float64 {
	t.Helper()
	low, high := math.Inf(1), math.Inf(-1)
	seq := g.DumpCoordinates()
	for i := range seq.Length() {
		p := seq.GetXY(i)
		a := math.Atan2(p.X, p.Y) // from the centre line, which points up
		low, high = min(low, a), max(high, a)
	}
	return high - low
}

// The ring as it is drawn: blades side by side without overlap, one opening.
func TestDrawnRingClosesWithoutOverlap(t *testing.T) {
	for _, end := range []calc.BladeEnd{calc.PlainEnd, calc.FoldedEnd, calc.RoundedEnd, calc.TurnedEnd} {
		for _, blades := range []int{5, 6, 7, 8, 12, 16, 20, 25, 36, 60} {
			r := ringWith(t, blades, end, 0)
			what := fmt.Sprintf("%d blades, end %d", blades, end)
			var all []geom.Geometry
			for _, s := range ringBlades(r) {
				all = append(all, polygon(t, s.Outline))
			}
			require.Len(t, all, blades)
			disjoint(t, all, what)
			// Grown by a thousandth of a millimetre, so that what touches hangs together.
			var grown []geom.Geometry
			for _, s := range ringBlades(r) {
				grown = append(grown, polygon(t, s.Outline.Swollen(measure.Millimetre/1000)))
			}
			assert.Equal(t, 1, holes(t, union(t, grown), what), what)
		}
	}
}

func fills(p Panel, want ...Fill) []Outline {
	var out []Outline
	for _, s := range p.Shapes {
		for _, f := range want {
			if s.Fill == f && !s.Open {
				out = append(out, s.Outline)
			}
		}
	}
	return out
}

func polygons(t *testing.T, outlines []Outline) []geom.Geometry {
	t.Helper()
	var all []geom.Geometry
	for _, o := range outlines {
		all = append(all, polygon(t, o))
	}
	return all
}

// inside proves that every shape lies in another.
func inside(t *testing.T, all []geom.Geometry, whole geom.Geometry, what string) {
	t.Helper()
	for i, g := range all {
		is, err := geom.Covers(whole, g)
		require.NoError(t, err)
		assert.True(t, is, "%s: shape %d", what, i)
	}
}

func TestPlannedPiecesLieInTheFabric(t *testing.T) {
	size := func(name string, w, l measure.Length, n int) cutting.Piece {
		return cutting.Piece{Name: name, Width: w, Length: l, Count: n}
	}
	for name, r := range map[string]cutting.Request{
		"squares": {Width: 40 * inch, Pieces: []cutting.Piece{size("", 11*inch/2, 11*inch/2, 48)}},
		"mixed": {Width: 40 * inch, Pieces: []cutting.Piece{size("centres", 9*inch/2, 9*inch/2, 20), size("sashes", 5*inch/2, 19*inch/2, 31),
			size("corners", 5*inch/2, 5*inch/2, 12), size("border", 7*inch/2, 36*inch, 4)}},
		"metric":  {Width: 1016 * measure.Millimetre, Pieces: []cutting.Piece{size("", 137*measure.Millimetre, 93*measure.Millimetre, 37), size("", 61*measure.Millimetre, 61*measure.Millimetre, 55)}},
		"hostile": {Width: 40 * inch, Pieces: []cutting.Piece{size("slivers", measure.Inch/16*4, measure.Inch/16*4, 500), size("large", 39*inch, 39*inch, 3)}},
	} {
		plan, err := cutting.Best(context.Background(), r)
		require.NoError(t, err, name)
		s := CuttingPlan(r, plan, measure.Imperial)
		var want []Fill
		for i := range r.Pieces {
			want = append(want, Fabric(i))
		}
		pieces := polygons(t, fills(s.Panels[0], want...))
		require.NotEmpty(t, pieces, name)
		disjoint(t, pieces, name)
		inside(t, pieces, polygon(t, Rect(0, -plan.Length, r.Width, plan.Length)), name)
		disjoint(t, polygons(t, fills(s.Panels[0], Offcut)), name+", strips")
		if name != "hostile" {
			wanted := 0
			for _, p := range r.Pieces {
				wanted += p.Count
			}
			assert.Len(t, pieces, wanted, name)
		}
	}
}

// Whole quilts: the patches fill the quilt and do not overlap.
func TestQuiltsAreFilled(t *testing.T) {
	c := calc.ImperialConventions()
	block := measure.Size{Width: 12 * inch, Length: 12 * inch}
	filled := func(p Panel, w, l measure.Length, what string) {
		var all []geom.Geometry
		for _, s := range p.Shapes {
			all = append(all, polygon(t, s.Outline))
		}
		disjoint(t, all, what)
		assert.InEpsilon(t, w.Inches()*l.Inches(), union(t, all).Area(), 1e-6, what)
	}
	for across := 1; across <= 6; across++ {
		for down := 1; down <= 5; down++ {
			for _, setting := range []calc.Setting{calc.StraightSetting, calc.OnPointSetting} {
				r := calc.LayoutRequest{Conventions: c, Block: block, Setting: setting, Across: across, Down: down}
				l, err := calc.Layout(r)
				require.NoError(t, err)
				filled(Layout(r, l).Panels[0], l.QuiltWidth, l.QuiltLength, fmt.Sprintf("%d by %d %s", across, down, setting))
			}
			for _, stones := range []bool{true, false} {
				for _, frame := range []bool{true, false} {
					r := calc.SashingRequest{Conventions: c, Block: block, Sash: 2 * inch, Across: across, Down: down, Cornerstones: stones, Frame: frame}
					s, err := calc.Sashing(r)
					if err != nil {
						continue // a single block without a frame has no sashes
					}
					filled(Sashing(r, s).Panels[0], s.QuiltWidth, s.QuiltLength, fmt.Sprintf("%d by %d, stones %v, frame %v", across, down, stones, frame))
				}
			}
		}
	}
	for _, corners := range []calc.Corners{calc.ButtedCorners, calc.MitredCorners, calc.SquaredCorners} {
		r := calc.BordersRequest{Conventions: c, Quilt: measure.Size{Width: 50 * inch, Length: 60 * inch}, Widths: []measure.Length{2 * inch, 5 * inch}, Corners: corners, Spare: 2 * inch, Join: calc.StraightJoin}
		b, err := calc.Borders(r)
		require.NoError(t, err)
		filled(Borders(r, b).Panels[0], b.QuiltWidth, b.QuiltLength, string(corners))
	}
}

// Blades, triangles and diamonds lie on their strips without overlap.
func TestPiecesLieOnTheirStrips(t *testing.T) {
	c := calc.ImperialConventions()
	strips, err := calc.WedgeStrips(calc.WedgeStripsRequest{Conventions: c, Blades: 40, Length: 5 * inch, Narrow: inch, Angle: 18, Strip: 5 * inch})
	require.NoError(t, err)
	triangles, err := calc.Triangles60(calc.TriangleRequest{Conventions: c, Height: 3 * inch, Triangles: 40})
	require.NoError(t, err)
	diamonds, err := calc.Diamonds(calc.DiamondRequest{Conventions: c, Angle: 45, Side: 4 * inch, Diamonds: 8})
	require.NoError(t, err)
	for _, s := range []Scene{BladesOnStrip(strips, measure.Imperial), TrianglesOnStrip(triangles, measure.Imperial), DiamondsOnStrip(diamonds, measure.Imperial)} {
		p := s.Panels[0]
		pieces := polygons(t, fills(p, Fabric1, Fabric2))
		require.Greater(t, len(pieces), 4, s.Name)
		disjoint(t, pieces, s.Name)
		inside(t, pieces, polygon(t, p.Shapes[0].Outline.Swollen(100*measure.Nanometre)), s.Name)
	}
}

// A seam line lies one seam inside its cut edge, measured by the library.
func TestSeamLinesLieASeamInside(t *testing.T) {
	c := calc.ImperialConventions()
	setting := calc.SettingTrianglesRequest{Conventions: c, Block: 12 * inch}
	set, err := calc.SettingTriangles(setting)
	require.NoError(t, err)
	hexagon, err := calc.Hexagons(calc.HexagonRequest{Conventions: c, Side: 2 * inch, Allowance: quarter})
	require.NoError(t, err)
	circle, err := calc.QuarterCircle(calc.QuarterCircleRequest{Conventions: c, Radius: 5 * inch, Block: 7 * inch})
	require.NoError(t, err)
	for _, doc := range []Templates{SettingTriangleTemplates(setting, set), HexagonTemplates(hexagon, measure.Imperial), QuarterCircleTemplates(circle, measure.Imperial)} {
		for _, p := range doc.Pieces {
			if len(p.Sewn) == 0 {
				continue
			}
			cut, sewn := polygon(t, p.Cut), polygon(t, p.Sewn)
			inside(t, []geom.Geometry{sewn}, cut, p.Title)
			apart, found := geom.Distance(cut.Boundary(), sewn.Boundary())
			require.True(t, found)
			assert.InDelta(t, quarter.Inches(), apart, 0.1/25.4, p.Title)
		}
	}
}
