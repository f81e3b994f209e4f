package calc

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

func TestHalfSquares(t *testing.T) {
	for _, c := range []struct {
		finished      measure.Length
		at, units     int
		cut           string
		squares, made int
		unfinished    string
		trim          string
		bias          bool
	}{
		{3 * in, 2, 24, "3⅞", 12, 24, "3½", "4⅛", false},
		{3 * in, 0, 5, "3⅞", 3, 6, "3½", "4⅛", false}, // two at a time where nobody says
		{3 * in, 1, 5, "3⅞", 3, 6, "3½", "4⅛", false},
		{25 * in / 4, 4, 40, "10⅛", 10, 40, "6¾", "0", true},
		{2 * in, 4, 100, "4⅛", 25, 100, "2½", "0", true},
		{5 * in, 8, 20, "11¾", 3, 24, "5½", "12", false},
		{in / 8, 2, 1, "1", 1, 2, "⅝", "1¼", false},
	} {
		h, err := HalfSquares(HalfSquareRequest{Conventions: ImperialConventions(), Finished: c.finished, AtATime: c.at, Units: c.units})
		require.NoError(t, err)
		assert.Equal(t, c.cut, h.SquareCut.RulerInches())
		assert.Equal(t, c.squares, h.Squares)
		assert.Equal(t, c.made, h.Made)
		assert.Equal(t, c.units, h.Units)
		assert.Equal(t, c.unfinished, h.Unfinished.RulerInches())
		assert.Equal(t, c.trim, h.TrimSquare.RulerInches())
		assert.Equal(t, c.bias, h.BiasEdges)
	}
}

// Any seam but ¼ in, and metric work, takes the exact s(2+√2) and 2s(1+√2).
func TestExactTriangles(t *testing.T) {
	v := MetricConventions()
	h, err := HalfSquares(HalfSquareRequest{Conventions: v, Finished: 10 * measure.Centimetre})
	require.NoError(t, err)
	assert.Equal(t, 122*mm, h.SquareCut) // 10 + 0.635 × 3.41421 = 12.168
	q, err := QuarterSquares(QuarterSquareRequest{Conventions: v, Finished: 10 * measure.Centimetre})
	require.NoError(t, err)
	assert.Equal(t, 131*mm, q.SquareCut) // 10 + 0.635 × 4.82843 = 13.066
	v = ImperialConventions()
	v.Seam = 3 * in / 8
	h, err = HalfSquares(HalfSquareRequest{Conventions: v, Finished: 3 * in})
	require.NoError(t, err)
	assert.Equal(t, "4⅜", h.SquareCut.RulerInches()) // 3 + 0.375 × 3.41421 = 4.2803
}

func TestHalfSquaresBackwards(t *testing.T) {
	for _, c := range []struct {
		square measure.Length
		at     int
		want   string
	}{{5 * in, 2, "4⅛"}, {10 * in, 2, "9⅛"}, {5 * in, 8, "1⅝"}, {10 * in, 4, "6⅛"}, {5 * in, 4, "2⅝"}, {in, 2, "⅛"}} {
		h, err := HalfSquares(HalfSquareRequest{Conventions: ImperialConventions(), Square: c.square, AtATime: c.at, HaveSquares: 7})
		require.NoError(t, err)
		assert.Equal(t, c.want, h.Finished.RulerInches())
		assert.Equal(t, h.Finished+in/2, h.Unfinished)
		assert.Equal(t, 7*c.at, h.HandUnits)
	}
}

func TestHalfSquaresOtherWays(t *testing.T) {
	h, err := HalfSquares(HalfSquareRequest{Conventions: ImperialConventions(), Finished: 2 * in, Units: 96})
	require.NoError(t, err)
	// 48 squares of 2⅞: 13 to a strip, 4 strips, 11½ in. Eight at a time 12 of 5¾: 6 to a strip,
	// 2 strips, 11½ in. Four at a time 24 of 4⅛: 9 to a strip, 3 strips, 12⅜ in.
	assert.Equal(t, 23*in/2, h.Cloth.Length)
	assert.Equal(t, 9, h.Cloth.OneFewerShort)
	require.Len(t, h.Others, 2)
	assert.Equal(t, 8, h.Others[0].AtATime)
	assert.Equal(t, 12, h.Others[0].Squares)
	assert.Equal(t, 23*in/2, h.Others[0].Cloth.Length)
	assert.Equal(t, 4, h.Others[1].AtATime)
	assert.True(t, h.Others[1].BiasEdges)
	assert.Equal(t, 99*in/8, h.Others[1].Cloth.Length)
}

// Going back from the square that a size needs gives the size again.
func TestSquaresThereAndBack(t *testing.T) {
	for _, v := range []Conventions{ImperialConventions(), MetricConventions()} {
		for n := range measure.Length(200) {
			f := (n + 4) * v.CutStep
			for _, at := range []int{1, 2, 4, 8} {
				h, err := HalfSquares(HalfSquareRequest{Conventions: v, Finished: f, AtATime: at})
				require.NoError(t, err)
				back, err := HalfSquares(HalfSquareRequest{Conventions: v, Square: h.SquareCut, AtATime: at})
				require.NoError(t, err)
				// The square may be up to a step larger than exact, and a hair smaller.
				assert.InDelta(t, f.Inches(), back.ExactFinished.Inches(), v.CutStep.Inches()+0.01)
				assert.GreaterOrEqual(t, back.ExactFinished, f-v.CutSlack)
			}
			q, err := QuarterSquares(QuarterSquareRequest{Conventions: v, Finished: f})
			require.NoError(t, err)
			qBack, err := QuarterSquares(QuarterSquareRequest{Conventions: v, Square: q.SquareCut})
			require.NoError(t, err)
			assert.GreaterOrEqual(t, qBack.ExactFinished, f)
			assert.Equal(t, f, qBack.Finished)
		}
	}
}

func TestQuarterSquares(t *testing.T) {
	for _, c := range []struct {
		finished      measure.Length
		units         int
		cut           string
		squares, made int
	}{
		{4 * in, 24, "5¼", 24, 24}, {9 * in / 4, 0, "3½", 0, 0}, {3 * in, 5, "4¼", 6, 6}, {6 * in, 1, "7¼", 2, 2},
	} {
		q, err := QuarterSquares(QuarterSquareRequest{Conventions: ImperialConventions(), Finished: c.finished, Units: c.units})
		require.NoError(t, err)
		assert.Equal(t, c.cut, q.SquareCut.RulerInches())
		assert.Equal(t, c.squares, q.Squares)
		assert.Equal(t, c.made, q.Made)
	}
	q, err := QuarterSquares(QuarterSquareRequest{Conventions: ImperialConventions(), Square: 10 * in, HaveSquares: 9})
	require.NoError(t, err)
	assert.Equal(t, "8¾", q.Finished.RulerInches())
	assert.Equal(t, 8, q.HandUnits, "an odd square finds no partner")
}

func TestFlyingGeese(t *testing.T) {
	v := ImperialConventions()
	four, err := FlyingGeese(GeeseRequest{Conventions: v, Width: 4 * in, Height: 2 * in, Geese: 10})
	require.NoError(t, err)
	assert.Equal(t, 4, four.AtATime)
	assert.Equal(t, []int{3, 12, 12}, []int{four.LargeSquares, four.SmallSquares, four.Made})
	assert.Equal(t, "5¼", four.LargeSquare.RulerInches())
	assert.Equal(t, "2⅞", four.SmallSquare.RulerInches())
	assert.Zero(t, four.GooseWidth)

	one, err := FlyingGeese(GeeseRequest{Conventions: v, Width: 9 * in / 2, Geese: 3})
	require.NoError(t, err)
	assert.Equal(t, 1, one.AtATime, "few geese are made singly")
	assert.Equal(t, 9*in/4, one.Height, "half the width")
	assert.Equal(t, measure.Size{Width: 5 * in, Length: 11 * in / 4}, measure.Size{Width: one.GooseWidth, Length: one.GooseHeight})
	assert.Equal(t, 11*in/4, one.CornerSquare)
	assert.Equal(t, 6, one.Corners)

	back, err := FlyingGeese(GeeseRequest{Conventions: v, LargeSquare: 5 * in})
	require.NoError(t, err)
	assert.Equal(t, "1⅞", back.Height.RulerInches())
	assert.Equal(t, "3¾", back.Width.RulerInches())
	assert.Equal(t, 5*in, back.LargeSquare)
}

func TestSquareInSquare(t *testing.T) {
	v := ImperialConventions()
	for block, want := range map[measure.Length][2]string{
		12 * in: {"9", "6⅞"}, 6 * in: {"4¾", "3⅞"}, 8 * in: {"6¼", "4⅞"}, 4 * in: {"3⅜", "2⅞"}, 15 * in / 2: {"5⅞", "4⅝"},
	} {
		s, err := SquareInSquare(SquareInSquareRequest{Conventions: v, Block: block, Blocks: 3})
		require.NoError(t, err)
		assert.Equal(t, want, [2]string{s.CentreCut.RulerInches(), s.CornerSquare.RulerInches()})
		assert.Equal(t, 6, s.CornerSquares)
	}
	nestedIn, err := SquareInSquare(SquareInSquareRequest{Conventions: v, Block: 12 * in, Rounds: 2})
	require.NoError(t, err)
	assert.Equal(t, 6*in, nestedIn.Centre, "twice divided by √2 is a half, exactly")
	assert.Equal(t, "5⅛", nestedIn.Rounds[0].CornerSquare.RulerInches())
	assert.Equal(t, "6⅞", nestedIn.CornerSquare.RulerInches(), "the outermost")
	out, err := SquareInSquare(SquareInSquareRequest{Conventions: v, Centre: 6 * in, Rounds: 2})
	require.NoError(t, err)
	assert.Equal(t, 12*in, out.Block)
	assert.Equal(t, nestedIn.Rounds, out.Rounds)
}

func TestStripSet(t *testing.T) {
	for name, c := range map[string]struct {
		in         StripSetRequest
		strips     []int
		each       int
		segments   int
		width      string
		unfinished string
	}{
		"four-patch":       {StripSetRequest{Rows: 2, Columns: 2, Strip: 5 * in / 2, Blocks: 36}, []int{5, 5}, 5, 72, "2½", "4½"},
		"nine-patch":       {StripSetRequest{Rows: 3, Columns: 3, Strip: 5 * in / 2, Blocks: 20}, []int{8, 7}, 0, 60, "2½", "6½"},
		"two-patch":        {StripSetRequest{Rows: 1, Columns: 2, Strip: 5 * in / 2, Blocks: 32}, []int{2, 2}, 2, 32, "2½", "4½"},
		"rail":             {StripSetRequest{Rail: true, Columns: 3, Strip: 5 * in / 2, Blocks: 24}, []int{4, 4, 4}, 4, 24, "6½", "6½"},
		"rail of four":     {StripSetRequest{Rail: true, Columns: 4, Strip: 2 * in, Blocks: 18}, []int{3, 3, 3, 3}, 3, 18, "6½", "6½"},
		"checkerboard":     {StripSetRequest{Rows: 8, Columns: 8, Finished: 2 * in, Blocks: 4}, []int{8, 8}, 8, 32, "2½", "16½"},
		"odd checkerboard": {StripSetRequest{Rows: 5, Columns: 5, Strip: 2 * in, Blocks: 4}, []int{5, 5}, 5, 20, "2", "8"},
		"no count":         {StripSetRequest{Rows: 3, Columns: 3, Strip: 2 * in}, []int{0, 0}, 0, 0, "2", "5"},
		"of a fat quarter": {StripSetRequest{Rows: 2, Columns: 2, Strip: 5 * in / 2, Blocks: 4, StripLength: 20 * in}, []int{1, 1}, 1, 8, "2½", "4½"},
	} {
		t.Run(name, func(t *testing.T) {
			c.in.Conventions = ImperialConventions()
			s, err := StripSet(c.in)
			require.NoError(t, err)
			assert.Equal(t, c.strips, s.StripsOf)
			assert.Equal(t, c.each, s.StripsEach)
			assert.Equal(t, c.segments, s.Segments)
			assert.Equal(t, c.width, s.SegmentWidth.RulerInches())
			assert.Equal(t, c.unfinished, s.Unfinished.RulerInches())
			sum := 0
			for _, n := range s.StripsOf {
				sum += n
			}
			assert.Equal(t, sum, s.Strips)
		})
	}
}

func TestRowMiss(t *testing.T) {
	miss, err := RowMiss(8, -in/32)
	require.NoError(t, err)
	assert.Equal(t, -7*in/16, miss, "shallow seams make a row longer")
	_, err = RowMiss(0, in/32)
	assert.Equal(t, "patches: The number of patches has to be 1 or more. ", refusal(t, err))
}

func TestStripSetOneFewer(t *testing.T) {
	r := StripSetRequest{Conventions: ImperialConventions(), Rows: 2, Columns: 2, Strip: 5 * in / 2, Blocks: 34, HaveStrips: 8}
	s, err := StripSet(r)
	require.NoError(t, err)
	assert.Equal(t, 10, s.Strips)
	assert.Equal(t, 2, s.OneFewerShort, "four sets give 64 segments, which is 32 blocks")
	assert.Equal(t, CountCheck{Given: true, Have: 8, Short: 2}, s.Hand)
	assert.Equal(t, []StripsOnCloth{{44 * in, 8}}, s.WiderCloth, "17 segments a set")
}

func TestHexagons(t *testing.T) {
	v := ImperialConventions()
	h, err := Hexagons(HexagonRequest{Conventions: v, Side: in, Quilt: inches(45, 60)})
	require.NoError(t, err)
	assert.Equal(t, "1¾", h.FlatToFlat.RulerInches())
	assert.Equal(t, "2", h.PointToPoint.RulerInches())
	assert.Equal(t, "2½", h.PatchWidth.RulerInches())
	assert.Equal(t, "2¼", h.PatchHeight.RulerInches())
	assert.Equal(t, 1040, h.Count)
	assert.Equal(t, HexagonCover{Rows: 40, PerRow: 26, PointsUp: true, ToTrim: 1086}, *h.Cover)
	for _, same := range []HexagonRequest{
		{FlatToFlat: measure.Inches(1.7320508)}, {PointToPoint: 2 * in},
		{PointToPoint: 2*in + measure.Inches(4*0.25/1.7320508), AsCut: true}, {FlatToFlat: measure.Inches(2.2320508), AsCut: true},
	} {
		same.Conventions = v
		got, err := Hexagons(same)
		require.NoError(t, err)
		assert.InDelta(t, 1, got.Exact.Side.Inches(), 1e-6)
	}
	wide, err := Hexagons(HexagonRequest{Conventions: v, Side: in, Quilt: inches(60, 45)})
	require.NoError(t, err)
	assert.Equal(t, h.Count, wide.Count, "a quilt turned by a quarter takes as many")
}

func TestTriangles60(t *testing.T) {
	v := ImperialConventions()
	for strip, per := range map[measure.Length]int{5 * in / 2: 26, 7 * in / 2: 18, 9 * in / 2: 14, 5 * in: 12} {
		tri, err := Triangles60(TriangleRequest{Conventions: v, Strip: strip, Triangles: 60})
		require.NoError(t, err)
		assert.Equal(t, per, tri.PerStrip)
		assert.Equal(t, ceilDiv(60, per), tri.Strips)
		assert.Equal(t, 60-(tri.Strips-1)*per, tri.OneFewerShort)
	}
	tri, err := Triangles60(TriangleRequest{Conventions: v, Height: 17 * in / 4, Quilt: inches(40, 50)})
	require.NoError(t, err)
	assert.Equal(t, "5", tri.StripWidth.RulerInches())
	// 9 sides of 4.907 in and 12 rows of 4¼ in cover it; 17 whole triangles a row and half a one at each end.
	assert.Equal(t, TriangleLayout{Rows: 12, Across: 9, Whole: 204, Halves: 24, Size: tri.Layout.Size}, tri.Layout)
	assert.Equal(t, 51*in, tri.Layout.Size.Length)
	assert.InDelta(t, area(tri.Layout.Size), float64(tri.Layout.Whole+tri.Layout.Halves/2)*tri.Patch().Sewn.Area(), 1e-4)
	side, err := Triangles60(TriangleRequest{Conventions: v, Side: tri.Side})
	require.NoError(t, err)
	assert.Equal(t, tri.StripWidth, side.StripWidth)
}

func TestDiamonds(t *testing.T) {
	v := ImperialConventions()
	for _, c := range []struct {
		angle measure.Angle
		strip measure.Length
		per   int
	}{{45, 5 * in / 2, 10}, {60, 5 * in / 2, 13}, {45, 3 * in, 8}, {60, 2 * in, 16}, {45, 9 * in / 4, 11}, {60, 4 * in, 8}} {
		d, err := Diamonds(DiamondRequest{Conventions: v, Angle: c.angle, Strip: c.strip, Diamonds: 48})
		require.NoError(t, err)
		assert.Equal(t, c.per, d.PerStrip, "%v from %v", c.angle, c.strip)
		assert.Equal(t, ceilDiv(48, c.per), d.Strips)
	}
	d, err := Diamonds(DiamondRequest{Conventions: v, Angle: 60, Side: 3 * in})
	require.NoError(t, err)
	assert.Equal(t, "3⅛", d.StripWidth.RulerInches())
	star, err := Diamonds(DiamondRequest{Conventions: v, Angle: 45, StarBlock: 12 * in, Stars: 9})
	require.NoError(t, err)
	assert.Equal(t, 72, star.Diamonds)
	assert.Equal(t, "4", star.Star.CornerSquare.RulerInches()) // 3.5147 + ½ = 4.0147, an overhang under 1/64 in
	assert.Equal(t, []int{36, 9}, []int{star.Star.CornerSquares, star.Star.SideSquares})
}

func TestHalfRectangles(t *testing.T) {
	h, err := HalfRectangles(HalfRectangleRequest{Conventions: ImperialConventions(), Width: 2 * in, Height: 4 * in, Left: 5, Right: 4})
	require.NoError(t, err)
	assert.Equal(t, "2¾", h.CutWidth.RulerInches())
	assert.Equal(t, "5⅜", h.CutHeight.RulerInches())
	assert.Equal(t, inches(2.5, 4.5), h.Unfinished)
	assert.Equal(t, inches(3, 5.625), h.Oversize)
	assert.Equal(t, []int{5, 3, 2}, []int{h.Rectangles, h.LeftRectangles, h.RightRectangles})
}

func TestCurves(t *testing.T) {
	v := ImperialConventions()
	c, err := Circle(CircleRequest{Conventions: v, Across: 6 * in, Turning: in / 4})
	require.NoError(t, err)
	assert.Equal(t, "18⅞", c.Around.RulerInches())
	assert.Equal(t, "6", c.TemplateAcross.RulerInches())
	assert.Equal(t, "6½", c.CutAcross.RulerInches())
	back, err := Circle(CircleRequest{Conventions: v, Around: c.Exact.Around})
	require.NoError(t, err)
	assert.InDelta(t, 6, back.Exact.Across.Inches(), 1e-6)

	s, err := Scallops(ScallopRequest{Conventions: v, Edge: 72 * in, Across: 6 * in})
	require.NoError(t, err)
	assert.Equal(t, 12, s.Scallops)
	assert.Equal(t, 6*in, s.EachAcross)
	assert.InDelta(t, 9.42478, s.Arc.Inches(), 1e-5, "a half circle")
	assert.Equal(t, Scalloping{11, 72 * in / 11}, s.Fewer)
	near, err := Scallops(ScallopRequest{Conventions: v, Edge: 80 * in, Across: 7 * in})
	require.NoError(t, err)
	assert.Equal(t, 11, near.Scallops, "the nearest number that divides the edge")

	r, err := RoundedCorners(RoundedCornersRequest{Conventions: v, Quilt: inches(60, 60), Radius: 4 * in})
	require.NoError(t, err)
	assert.InDelta(t, 233.132741, r.Around.Inches(), 1e-6)
	round, err := RoundedCorners(RoundedCornersRequest{Conventions: v, Quilt: inches(60, 60), Radius: 30 * in})
	require.NoError(t, err)
	assert.InDelta(t, 188.495559, round.Around.Inches(), 1e-6, "a circle in the end")
}

// refused drops the result of a sum.
func refused[T any](_ T, err error) error { return err }

func TestPatchesRefuse(t *testing.T) {
	v := ImperialConventions()
	for want, err := range map[string]error{
		"finished_size: The finished size has to be more than nothing. ":                                       refused(HalfSquares(HalfSquareRequest{Conventions: v})),
		"at_a_time: Half-square triangles are made 1, 2, 4 or 8 at a time, not 3. Two at a time is usual.":     refused(HalfSquares(HalfSquareRequest{Conventions: v, Finished: in, AtATime: 3})),
		"square: A square of ¾ in is used up by the seams. A square of 1 in makes units that finish at ⅛ in.":  refused(HalfSquares(HalfSquareRequest{Conventions: v, Square: 3 * in / 4})),
		"square: A square of 1 in is used up by the seams. A square of 1⅜ in makes units that finish at ⅛ in.": refused(QuarterSquares(QuarterSquareRequest{Conventions: v, Square: in})),
		"units: The number of units has to be 1 or more. ":                                                     refused(QuarterSquares(QuarterSquareRequest{Conventions: v, Finished: in, Units: -1})),
		"goose_width: Flying geese are twice as wide as high, and 5 in is not twice 3 in. " +
			"At 3 in high they are 6 in wide; a unit of 5 x 3 in is made of half rectangles.": refused(FlyingGeese(GeeseRequest{Conventions: v, Width: 5 * in, Height: 3 * in})),
		"large_square: A square of 1 in is used up by the seams. A square of 1½ in makes geese of ¼ x ⅛ in.":                             refused(FlyingGeese(GeeseRequest{Conventions: v, LargeSquare: in})),
		"at_a_time: Flying geese are made one at a time, or four at a time from a large square. ":                                        refused(FlyingGeese(GeeseRequest{Conventions: v, Width: 6 * in, AtATime: 2})),
		"block: The block has to be more than nothing. ":                                                                                 refused(SquareInSquare(SquareInSquareRequest{Conventions: v})),
		"rounds: 11 rounds of triangles are too many to sew. Up to 10 can be reckoned.":                                                  refused(SquareInSquare(SquareInSquareRequest{Conventions: v, Block: 12 * in, Rounds: 11})),
		"strip_width: A strip of ½ in is used up by its seams. Strips from ⅝ in work.":                                                   refused(StripSet(StripSetRequest{Conventions: v, Rows: 2, Columns: 2, Strip: in / 2})),
		"strip_width: A segment of 80½ in cannot be cut from strips 40 in long. ":                                                        refused(StripSet(StripSetRequest{Conventions: v, Rail: true, Columns: 4, Finished: 20 * in})),
		"columns: A strip set has at least two strips. ":                                                                                 refused(StripSet(StripSetRequest{Conventions: v, Rows: 2, Columns: 1, Strip: 2 * in})),
		"side: The side has to be more than nothing. ":                                                                                   refused(Hexagons(HexagonRequest{Conventions: v})),
		"side: The allowance of ¼ in all round leaves nothing of the hexagon. ":                                                          refused(Hexagons(HexagonRequest{Conventions: v, Side: in / 4, AsCut: true})),
		"height: The height has to be more than nothing. ":                                                                               refused(Triangles60(TriangleRequest{Conventions: v})),
		"strip_width: Three seams use up a strip of ¾ in. Strips from ⅞ in work.":                                                        refused(Triangles60(TriangleRequest{Conventions: v, Strip: 3 * in / 4})),
		"angle: Diamonds of 2° are too sharp to sew. 45° and 60° are usual.":                                                             refused(Diamonds(DiamondRequest{Conventions: v, Angle: 2, Side: in})),
		"angle: The block of an eight-pointed star takes diamonds of 45°, not 60°. ":                                                     refused(Diamonds(DiamondRequest{Conventions: v, Angle: 60, StarBlock: 12 * in})),
		"width: The width has to be more than nothing. ":                                                                                 refused(HalfRectangles(HalfRectangleRequest{Conventions: v, Height: 4 * in})),
		"distance_across: The distance across has to be more than nothing. ":                                                             refused(Circle(CircleRequest{Conventions: v})),
		"depth: Scallops 8 in across cannot be 5 in deep: beyond a half circle they run into each other. They can be 4 in deep at most.": refused(Scallops(ScallopRequest{Conventions: v, Edge: 80 * in, Scallops: 10, Depth: 5 * in})),
		"scallops: 1000000 scallops on 2 in are too narrow to cut. ":                                                                     refused(Scallops(ScallopRequest{Conventions: v, Edge: 2 * in, Scallops: maxCount})),
		"diamonds: The number of diamonds can be 1000000 at most. ":                                                                      refused(Diamonds(DiamondRequest{Conventions: v, Angle: 45, Side: in, Stars: maxCount})),
		"strips: The number of strips can be 1000000 at most. ":                                                                          refused(StripSet(StripSetRequest{Conventions: v, Rows: 100, Columns: 100, Strip: 39 * in, Blocks: maxCount})),
		"radius: A quarter circle of 6 in does not fit in a block of 5 in. It can be 5 in at most.":                                      refused(QuarterCircle(QuarterCircleRequest{Conventions: v, Radius: 6 * in, Block: 5 * in})),
		"radius: A quarter circle of ½ in is too tight for seams of ¼ in. Radii from ⅝ in work.":                                         refused(QuarterCircle(QuarterCircleRequest{Conventions: v, Radius: in / 2})),
		"each_across: Scallops of 7 in do not divide 80 in. 11 of 7¼ in or 12 of 6 11/16 in do.":                                         refused(Scallops(ScallopRequest{Conventions: v, Edge: 80 * in, Across: 7 * in, Whole: true})),
		"each_across: Scallops of 90 in do not divide 80 in. One scallop of 80 in fills it.":                                             refused(Scallops(ScallopRequest{Conventions: v, Edge: 80 * in, Across: 90 * in, Whole: true})),
		"radius: Two corners of 31 in do not fit on a side of 60 in. The radius can be 30 in at most.":                                   refused(RoundedCorners(RoundedCornersRequest{Conventions: v, Quilt: inches(60, 72), Radius: 31 * in})),
	} {
		assert.Equal(t, want, refusal(t, err))
	}
}
