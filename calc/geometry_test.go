package calc

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// The shapes that the package gives are measured here with a general geometry
// library, which knows nothing of the formulas that made them.

// polygon hands an outline to the library, which refuses one that crosses itself.
func polygon(t *testing.T, o Outline) geom.Geometry {
	t.Helper()
	require.Positive(t, o.Area(), "corners run counter-clockwise")
	var xy []float64
	for _, p := range append(o[:len(o):len(o)], o[0]) {
		xy = append(xy, p.X, p.Y)
	}
	p := geom.NewPolygon([]geom.LineString{geom.NewLineString(geom.NewSequence(xy, geom.DimXY))})
	require.NoError(t, p.Validate())
	return p.AsGeometry()
}

func polygons(t *testing.T, outlines []Outline) []geom.Geometry {
	t.Helper()
	gs := make([]geom.Geometry, len(outlines))
	for i, o := range outlines {
		gs[i] = polygon(t, o)
	}
	return gs
}

// apart fails where neighbours, in a row or all around, overlap by more than a
// hundredth of an inch along their edges.
func apart(t *testing.T, gs []geom.Geometry, edge float64, around bool) {
	t.Helper()
	last := len(gs) - 1
	if around {
		last = len(gs)
	}
	for i := range last {
		both, err := geom.Intersection(gs[i], gs[(i+1)%len(gs)])
		require.NoError(t, err)
		assert.LessOrEqual(t, both.Area(), 0.01*edge, "pieces %d and %d overlap", i, i+1)
	}
}

// covered adds up what of a place the pieces lie on. As pieces do not overlap,
// the place is covered where that is all of it.
func covered(t *testing.T, place Outline, pieces []geom.Geometry) float64 {
	t.Helper()
	p, sum := polygon(t, place), 0.0
	for _, g := range pieces {
		both, err := geom.Intersection(p, g)
		require.NoError(t, err)
		sum += both.Area()
	}
	return sum
}

// allApart fails where any two pieces overlap.
func allApart(t *testing.T, gs []geom.Geometry) {
	t.Helper()
	for i, a := range gs {
		for _, b := range gs[i+1:] {
			if geom.Intersects(a, b) {
				both, err := geom.Intersection(a, b)
				require.NoError(t, err)
				require.Less(t, both.Area(), 1e-6)
			}
		}
	}
}

// within fails where pieces reach beyond the fabric by more than the slack.
func within(t *testing.T, fabric Outline, pieces []Outline, slack float64) {
	t.Helper()
	low, high := fabric.Bounds()
	for i, o := range pieces {
		l, h := o.Bounds()
		assert.True(t, l.X >= low.X-1e-6 && l.Y >= low.Y-slack && h.X <= high.X+1e-6 && h.Y <= high.Y+slack,
			"piece %d, %v to %v, leaves the fabric %v", i, l, h, high)
	}
}

// inset moves every edge of a convex outline inwards: what seams do to a patch.
func inset(o Outline, by float64) Outline {
	type line struct{ x, y, dx, dy float64 }
	lines := make([]line, len(o))
	for i, p := range o {
		q := o[(i+1)%len(o)]
		n := math.Hypot(q.X-p.X, q.Y-p.Y)
		dx, dy := (q.X-p.X)/n, (q.Y-p.Y)/n
		lines[i] = line{p.X - dy*by, p.Y + dx*by, dx, dy}
	}
	out := make(Outline, len(o))
	for i, b := range lines {
		a := lines[(i+len(lines)-1)%len(lines)]
		k := ((b.x-a.x)*b.dy - (b.y-a.y)*b.dx) / (a.dx*b.dy - a.dy*b.dx)
		out[i] = Point{a.x + k*a.dx, a.y + k*a.dy}
	}
	return out
}

// same compares outlines corner by corner.
func same(t *testing.T, want, got Outline) {
	t.Helper()
	require.Len(t, got, len(want))
	for i := range want {
		assert.InDelta(t, want[i].X, got[i].X, 1e-6)
		assert.InDelta(t, want[i].Y, got[i].Y, 1e-6)
	}
}

// The cut blades of a ring, with their seam lines drawn a seam inside both long
// edges, close the circle without a gap or an overlap.
func TestBladesCloseTheCircle(t *testing.T) {
	for blades := 3; blades <= 60; blades++ {
		r, err := Ring(ringOf(blades, 5*in, 3*in/2))
		require.NoError(t, err, blades)
		cut := r.Blade().Cut
		lines := inset(cut, 0.25)
		// Both seam lines pass through the ring's middle at half the blade's angle.
		for _, e := range [][2]Point{{lines[1], lines[2]}, {lines[0], lines[3]}} {
			a, b := e[0], e[1]
			assert.InDelta(t, 0, (a.X*b.Y-a.Y*b.X)/math.Hypot(b.X-a.X, b.Y-a.Y), 1e-6, "%d blades", blades)
			assert.InDelta(t, 180/float64(blades), math.Abs(degrees(b.X-a.X, b.Y-a.Y)), 1e-5)
		}
		sewn := polygons(t, r.Outlines())
		apart(t, sewn, 5, true)
		ring, err := geom.UnionMany(sewn)
		require.NoError(t, err)
		require.True(t, ring.IsPolygon(), "%d blades leave a gap", blades)
		assert.Equal(t, 1, ring.MustAsPolygon().NumInteriorRings(), "one opening")
		assert.InDelta(t, float64(blades)*r.Blade().Sewn.Area(), ring.Area(), 0.01)
	}
}

// Folded and rounded blades meet along their seams and nowhere else, and lie
// within the circle that the ring is said to be across.
func TestBladeEndsStayApart(t *testing.T) {
	for _, end := range []BladeEnd{FoldedEnd, RoundedEnd, TurnedEnd} {
		for _, blades := range []int{3, 5, 8, 16, 20, 40} {
			req := ringOf(blades, 8*in, 3*in/2)
			req.End = end
			r, err := Ring(req)
			require.NoError(t, err)
			apart(t, polygons(t, r.Outlines()), 8, true)
			reach := 0.0
			for _, p := range r.Blade().Sewn {
				reach = max(reach, math.Hypot(p.X, p.Y))
			}
			want := max(r.Exact.OuterRadius, r.Exact.CornerRadius).Inches()
			assert.InDelta(t, want, reach, curveMiss)
			if r.Exact.ValleyRadius > 0 { // the shoulder lies on the seam line
				shoulder := r.Blade().Sewn[2]
				assert.InDelta(t, r.Exact.ValleyRadius.Inches(), math.Hypot(shoulder.X, shoulder.Y), curveMiss)
			}
		}
	}
}

// A part ring stands on its straight edge and fills its turn.
func TestPartRing(t *testing.T) {
	req := ringOf(8, 6*in, in)
	req.Turn = HalfTurn
	r, err := Ring(req)
	require.NoError(t, err)
	outlines := r.Outlines()
	apart(t, polygons(t, outlines), 6, false)
	var low, high Point
	for _, o := range outlines {
		l, h := o.Bounds()
		low = Point{min(low.X, l.X), min(low.Y, l.Y)}
		high = Point{max(high.X, h.X), max(high.Y, h.Y)}
	}
	assert.InDelta(t, 0, low.Y, 1e-6)
	assert.LessOrEqual(t, high.X-low.X+4.5, r.Background.Width.Inches()+1e-6, "the background leaves a margin")
	assert.LessOrEqual(t, high.Y+4.5, r.Background.Length.Inches()+1e-6)
}

func TestCoverHidesTheOpening(t *testing.T) {
	for blades := 5; blades <= 40; blades++ {
		r, err := Ring(ringOf(blades, 6*in, in))
		require.NoError(t, err)
		assert.InDelta(t, math.Pi*math.Pow(r.CoverCircle.Inches()/2, 2), polygon(t, r.Cover()).Area(), 0.02)
		for _, o := range r.Outlines() {
			foot := math.Hypot(o[0].X, o[0].Y)
			assert.GreaterOrEqual(t, r.CoverCircle.Inches()/2, foot+0.25-1e-6)
		}
	}
}

// Blades on a strip do not overlap, stay on it, and one more does not fit.
func TestBladesOnTheirStrip(t *testing.T) {
	for _, layout := range []BladeLayout{AlongStrip, HeadToTail, AllOneWay} {
		for _, angle := range []measure.Angle{9, 18, 22.5, 36, 60} {
			for _, length := range []measure.Length{4 * in, 11 * in / 2, 8 * in} {
				w, err := WedgeStrips(WedgeStripsRequest{Conventions: ImperialConventions(), Blades: 200,
					Length: length, Narrow: 7 * in / 8, Angle: angle, Layout: layout})
				require.NoError(t, err)
				strip, blades := w.StripOutlines()
				require.Len(t, blades, w.BladesPerStrip)
				within(t, strip, blades, 1.0/64) // the overhang that cut sizes drop
				apart(t, polygons(t, blades), length.Inches(), false)
				next := w.shape.onStrip(layout, w.BladesPerStrip)
				_, high := next.Bounds()
				assert.Greater(t, high.X, 40.0, "one more would fit")
				assert.InDelta(t, blades[0].Area(), next.Area(), 1e-9)
			}
		}
	}
}

// The seam line of a patch lies a seam inside its raw edge, all round.
func TestSeamLines(t *testing.T) {
	v := ImperialConventions()
	h, err := Hexagons(HexagonRequest{Conventions: v, Side: 5 * in / 4})
	require.NoError(t, err)
	same(t, inset(h.Patch().Cut, 0.25), h.Patch().Sewn)
	tri, err := Triangles60(TriangleRequest{Conventions: v, Height: 17 * in / 4})
	require.NoError(t, err)
	same(t, inset(tri.Patch().Cut, 0.25), tri.Patch().Sewn)
	for _, angle := range []measure.Angle{30, 45, 60, 90} {
		d, err := Diamonds(DiamondRequest{Conventions: v, Angle: angle, Side: 3 * in})
		require.NoError(t, err)
		same(t, inset(d.Patch().Cut, 0.25), d.Patch().Sewn)
	}
	for _, z := range []measure.Size{{Width: 2 * in, Length: 4 * in}, {Width: 8 * in, Length: 3 * in}} {
		r, err := HalfRectangles(HalfRectangleRequest{Conventions: v, Width: z.Width, Height: z.Length})
		require.NoError(t, err)
		same(t, inset(r.Patch().Cut, 0.25), r.Patch().Sewn)
	}
}

// Triangles from the exact squares finish at the size that was asked for, and
// the handbooks' squares are a little larger.
func TestTrianglesFinishTheirSize(t *testing.T) {
	for finished := in / 2; finished <= 12*in; finished += in / 8 {
		half, err := HalfSquares(HalfSquareRequest{Conventions: ImperialConventions(), Finished: finished})
		require.NoError(t, err)
		s := half.ExactSquare.Inches()
		sewn := inset(Outline{{0, 0}, {s, 0}, {0, s}}, 0.25)
		assert.InDelta(t, finished.Inches(), sewn[1].X-sewn[0].X, 1e-6)
		assert.InDelta(t, 1.0/47, (half.SquareCut - half.ExactSquare).Inches(), 0.001)

		quarter, err := QuarterSquares(QuarterSquareRequest{Conventions: ImperialConventions(), Finished: finished})
		require.NoError(t, err)
		q := quarter.ExactSquare.Inches()
		sewn = inset(Outline{{0, 0}, {q, 0}, {q / 2, q / 2}}, 0.25)
		assert.InDelta(t, finished.Inches(), sewn[1].X-sewn[0].X, 1e-6)
		assert.InDelta(t, 1.0/23, (quarter.SquareCut - quarter.ExactSquare).Inches(), 0.001)
	}
}

// Four at a time: two squares sewn all round and cut from corner to corner
// twice; each quarter opens to a square whose side is the raw unit's.
func TestFourAtATime(t *testing.T) {
	h, err := HalfSquares(HalfSquareRequest{Conventions: ImperialConventions(), Finished: 3 * in, AtATime: 4})
	require.NoError(t, err)
	s := h.ExactSquare.Inches()
	// A quarter is a triangle with the long side s; beyond the seam its legs
	// become the unit's sides when it is opened.
	leg := (s - 0.5) / math.Sqrt2
	assert.InDelta(t, 3.5, leg, 1e-6)
	assert.True(t, h.BiasEdges)
}

// Triangles and diamonds on a strip do not overlap, stay on it, and one more
// does not fit.
func TestPatchesOnTheirStrip(t *testing.T) {
	for strip := 3 * in / 2; strip <= 12*in; strip += in / 2 {
		tri, err := Triangles60(TriangleRequest{Conventions: ImperialConventions(), Strip: strip})
		require.NoError(t, err)
		fabric, pieces := tri.StripOutlines()
		within(t, fabric, pieces, 1e-6)
		apart(t, polygons(t, pieces), strip.Inches(), false)
		_, high := pieces[len(pieces)-1].Bounds()
		assert.Greater(t, high.X+tri.CutSide.Inches()/2, 40.0, "one more would fit")
		for _, angle := range []measure.Angle{45, 60} {
			d, err := Diamonds(DiamondRequest{Conventions: ImperialConventions(), Angle: angle, Strip: strip})
			require.NoError(t, err)
			fabric, pieces := d.StripOutlines()
			within(t, fabric, pieces, 1e-6)
			apart(t, polygons(t, pieces), strip.Inches(), false)
			_, high := pieces[len(pieces)-1].Bounds()
			assert.Greater(t, high.X+d.CutSide.Inches(), 40.0, "one more would fit")
			// All four sides are alike: the second cut is as wide as the strip.
			side := pieces[0]
			assert.InDelta(t, math.Hypot(side[2].X-side[1].X, side[2].Y-side[1].Y), side[1].X-side[0].X, 1e-6)
		}
	}
}

// Eight diamonds, four corner squares and four side triangles make the star's
// block: their areas add up to it.
func TestStarFillsItsBlock(t *testing.T) {
	d, err := Diamonds(DiamondRequest{Conventions: ImperialConventions(), Angle: StarDiamond, Side: 3 * in})
	require.NoError(t, err)
	block := d.Star.Block.Inches()
	diamonds := 8 * d.Patch().Sewn.Area()
	corners := 4 * 3.0 * 3.0
	sides := 4 * 3.0 * 3.0 / 2
	assert.InDelta(t, block*block, diamonds+corners+sides, 1e-5)
}

// The pie and its background make the block, without overlap or gap, and both
// raw curves lie a seam beyond the seam line.
func TestQuarterCircleFillsItsBlock(t *testing.T) {
	for radius := in; radius <= 8*in; radius += in / 2 {
		q, err := QuarterCircle(QuarterCircleRequest{Conventions: ImperialConventions(), Radius: radius})
		require.NoError(t, err)
		pie, ground := polygon(t, q.Pie().Sewn), polygon(t, q.Background().Sewn)
		apart(t, []geom.Geometry{pie, ground}, 1, false)
		both, err := geom.Union(pie, ground)
		require.NoError(t, err)
		assert.InDelta(t, math.Pow(q.Block.Inches(), 2), both.Area(), 0.001)
		assert.InDelta(t, math.Pow(q.Block.Inches(), 2), pie.Area()+ground.Area(), 0.01)
		for _, p := range q.Pie().Cut[1:] {
			assert.InDelta(t, radius.Inches()+0.25, math.Hypot(p.X, p.Y), 1e-9)
		}
		pieEdge := q.Pie().Cut
		assert.InDelta(t, -0.25, pieEdge[1].Y, 1e-9, "the raw arc ends on the raw edges")
		assert.InDelta(t, -0.25, pieEdge[len(pieEdge)-1].X, 1e-9)
		low, high := q.Pie().Cut.Bounds()
		assert.InDelta(t, q.PieSquare.Inches(), high.X-low.X, 0.01)
		low, high = q.Background().Cut.Bounds()
		assert.InDelta(t, q.BackgroundSquare.Inches(), high.Y-low.Y, 1e-9)
		polygon(t, q.Pie().Cut)
		polygon(t, q.Background().Cut)
	}
}

// Hexagons that fill a quilt do not overlap and leave no gaps between them;
// what is missing of the quilt at its edges stands out elsewhere.
func TestHexagonsFillTheQuilt(t *testing.T) {
	for _, z := range []measure.Size{{Width: 10 * in, Length: 12 * in}, {Width: 21 * in, Length: 13 * in}} {
		for _, side := range []measure.Length{3 * in / 4, in, 3 * in / 2} {
			h, err := Hexagons(HexagonRequest{Conventions: ImperialConventions(), Side: side, Quilt: z})
			require.NoError(t, err)
			gs := polygons(t, h.Outlines())
			require.Len(t, gs, h.Count)
			allApart(t, gs)
			assert.GreaterOrEqual(t, float64(h.Count)*h.Area, area(z))
			edge := side.Inches() / 2 // the zigzags reach in by less than this
			core := rectangle(z.Width.Inches()-2*edge, z.Length.Inches()-2*edge).Moved(edge, edge)
			assert.InDelta(t, core.Area(), covered(t, core, gs), 1e-4, "%v with %v: bare inside", z, side)
		}
	}
}

// Trimmed straight, the larger number covers the quilt entirely.
func TestHexagonsToTrim(t *testing.T) {
	r := HexagonRequest{Conventions: ImperialConventions()}
	for _, side := range []measure.Length{in, 5 * in / 4, 2 * in} {
		for _, z := range []measure.Size{{Width: 12 * in, Length: 14 * in}, {Width: 173 * in / 10, Length: 20 * in}} {
			r.Side = side
			e := r.exact()
			c := r.cover(z, e)
			var outlines []Outline
			left := c.ToTrim
			for row := 0; left > 0; row++ {
				// Rows that are half a hexagon longer than the quilt stand out by a
				// half at one end each; else the longer row stands out at both.
				n, x := c.PerRow, 0.5
				long := (float64(c.PerRow)-0.5)*e.FlatToFlat.Inches() >= z.Width.Inches()
				switch {
				case row%2 == 1 && !long:
					n, x = c.PerRow+1, 0
				case row%2 == 0 && long:
					x = 0
				}
				for i := range n {
					outlines = append(outlines, hexagon(side).Turned(30).Moved(
						(float64(i)+x)*e.FlatToFlat.Inches(), side.Inches()*(0.5+1.5*float64(row))))
				}
				left -= n
			}
			require.Zero(t, left, "whole rows")
			gs := polygons(t, outlines)
			allApart(t, gs)
			quilt := rectangle(z.Width.Inches(), z.Length.Inches())
			assert.InDelta(t, quilt.Area(), covered(t, quilt, gs), 1e-4, "%v of %v", z, side)
		}
	}
}

// The arc of a scallop, walked corner by corner, is as long as it is said to
// be, starts and ends on the edge and is as high as its depth.
func TestScallopArc(t *testing.T) {
	for _, depth := range []measure.Length{in / 2, in, 2 * in, 4 * in} {
		s, err := Scallops(ScallopRequest{Conventions: ImperialConventions(), Edge: 80 * in, Scallops: 10, Depth: depth})
		require.NoError(t, err)
		o := s.Patch()
		walked := 0.0
		for i, p := range o[1:] {
			walked += math.Hypot(p.X-o[i].X, p.Y-o[i].Y)
		}
		assert.InDelta(t, s.Arc.Inches(), walked, 0.01)
		_, high := o.Bounds()
		assert.InDelta(t, depth.Inches(), high.Y, curveMiss)
		assert.InDelta(t, 8, o[0].X, 1e-6)
		assert.InDelta(t, 0, o[len(o)-1].X, 1e-6)
		all := polygons(t, s.Outlines())
		require.Len(t, all, 10)
		apart(t, all, 0.01, false)
		_, high = s.Outlines()[9].Bounds()
		assert.GreaterOrEqual(t, high.X, 80-1e-6)
	}
}
