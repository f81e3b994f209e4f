package calc

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

func TestLayout(t *testing.T) {
	v := ImperialConventions()
	for name, c := range map[string]struct {
		request      LayoutRequest
		across, down int
		blocks       int
		quilt        measure.Size
		smaller      measure.Size
	}{
		// http://www.delawarequilts.com (Sizes): 5 x 6 blocks of 12 in
		"fits":       {LayoutRequest{Block: inches(12, 12), Wanted: inches(60, 72)}, 5, 6, 30, inches(60, 72), measure.Size{}},
		"covers":     {LayoutRequest{Block: inches(12, 12), Wanted: inches(60, 80)}, 5, 7, 35, inches(60, 84), inches(60, 72)},
		"unfinished": {LayoutRequest{Block: inches(12.5, 12.5), Unfinished: true, Across: 6, Down: 7}, 6, 7, 42, inches(72, 84), measure.Size{}},
		// https://www.quiltingboard.com, thread t198543: 76 in wide
		"precut squares": {LayoutRequest{Block: inches(10, 10), Unfinished: true, Across: 8, Down: 10}, 8, 10, 80, inches(76, 95), measure.Size{}},
		"small squares":  {LayoutRequest{Block: inches(2, 2), Wanted: inches(40, 60)}, 20, 30, 600, inches(40, 60), measure.Size{}},
		"oblong blocks":  {LayoutRequest{Block: inches(6, 9), Wanted: inches(36, 45)}, 6, 5, 30, inches(36, 45), measure.Size{}},
		"one block":      {LayoutRequest{Block: inches(60, 60), Wanted: inches(40, 50)}, 1, 1, 1, inches(60, 60), measure.Size{}},
	} {
		t.Run(name, func(t *testing.T) {
			c.request.Conventions, c.request.Setting = v, StraightSetting
			l, err := Layout(c.request)
			require.NoError(t, err)
			assert.Equal(t, []int{c.across, c.down, c.blocks}, []int{l.Across, l.Down, l.Blocks})
			assert.Equal(t, c.quilt, measure.Size{Width: l.QuiltWidth, Length: l.QuiltLength})
			assert.Equal(t, c.smaller, measure.Size{Width: l.Smaller.QuiltWidth, Length: l.Smaller.QuiltLength})
		})
	}
}

// On point the layout covers the wanted size, and one row fewer does not.
func TestLayoutOnPointJustCovers(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		block := 1 + 15*rng.Float64()
		wanted := inches(10+90*rng.Float64(), 10+90*rng.Float64())
		l, err := Layout(LayoutRequest{Conventions: ImperialConventions(), Setting: OnPointSetting,
			Block: inches(block, block), Wanted: wanted})
		require.NoError(t, err)
		d := l.Block.Width.Inches() * math.Sqrt2
		assert.GreaterOrEqual(t, float64(l.Across)*d, wanted.Width.Inches()-1e-6)
		assert.Less(t, float64(l.Across-1)*d, wanted.Width.Inches())
		assert.Equal(t, l.Across*l.Down+(l.Across-1)*(l.Down-1), l.Blocks)
	}
}

func TestLayoutRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		request LayoutRequest
		input   string
	}{
		"nothing wanted":    {LayoutRequest{Block: inches(12, 12)}, "blocks_across"},
		"all seam":          {LayoutRequest{Block: inches(0.5, 0.5), Unfinished: true, Across: 2, Down: 2}, "block"},
		"oblong on point":   {LayoutRequest{Block: inches(6, 9), Setting: OnPointSetting, Across: 2, Down: 2}, "block"},
		"beyond counting":   {LayoutRequest{Block: inches(12, 12), Across: 2000, Down: 2000}, "block"},
		"less than nothing": {LayoutRequest{Block: inches(12, 12), Wanted: inches(-60, 72)}, "quilt_width"},
	} {
		t.Run(name, func(t *testing.T) {
			c.request.Conventions = ImperialConventions()
			_, err := Layout(c.request)
			var limit *LimitError
			require.ErrorAs(t, err, &limit)
			assert.Equal(t, c.input, limit.Input)
		})
	}
}

func TestDividingBlocks(t *testing.T) {
	list, err := DividingBlocks(DividingBlocksRequest{ImperialConventions(), inches(60, 72), 4 * in, 12 * in})
	require.NoError(t, err)
	var sides []float64
	for _, b := range list {
		sides = append(sides, b.Block.Inches())
		assert.Equal(t, inches(60, 72), measure.Size{Width: b.QuiltWidth, Length: b.QuiltLength})
	}
	assert.Equal(t, []float64{4, 6, 12}, sides)
}

func TestSettingTriangles(t *testing.T) {
	// 8 and 15 in: http://www.quilterscache.com; 10 in: on-point chart at
	// http://lukas.is-a-geek.org/tani/chart.htm; 9 in, 4 x 5, by hand as well.
	for name, c := range map[string]struct {
		block, side, corner float64
		unfinished          bool
		across, down        int
		squares             int
	}{
		"8":    {block: 8, side: 12.625, corner: 6.625},
		"15":   {block: 15, side: 22.5, corner: 11.5},
		"10½":  {block: 10.5, unfinished: true, side: 15.5, corner: 8},
		"9":    {block: 9, side: 14, corner: 7.25, across: 4, down: 5, squares: 4},
		"16":   {block: 16, side: 23.875, corner: 12.25}, // 23.8774: less than 1/64 in over
		"lone": {block: 9, side: 14, corner: 7.25, across: 1, down: 1},
	} {
		t.Run(name, func(t *testing.T) {
			s, err := SettingTriangles(SettingTrianglesRequest{Conventions: ImperialConventions(), Block: measure.Inches(c.block),
				Unfinished: c.unfinished, Across: c.across, Down: c.down})
			require.NoError(t, err)
			assert.Equal(t, c.side, s.SideSquare.Inches())
			assert.Equal(t, c.corner, s.CornerSquare.Inches())
			assert.Equal(t, c.squares, s.SideSquares)
			assert.Equal(t, 2, s.CornerSquares)
		})
	}
}

// With the allowance of geometry the triangles are never smaller than the gap
// they fill, and the handbooks' is the larger.
func TestSettingTrianglesFillTheGap(t *testing.T) {
	exact := ImperialConventions()
	exact.System = measure.Metric
	for quarter := measure.Length(4); quarter < 80; quarter++ {
		block := quarter * in / 4
		s, err := SettingTriangles(SettingTrianglesRequest{Conventions: exact, Block: block})
		require.NoError(t, err)
		// A quarter of the square has legs of side/√2, and the seams round a
		// right-angled triangle with equal legs take s·(2+√2) off each.
		leg := s.SideExact.Inches()/math.Sqrt2 - 0.25*(2+math.Sqrt2)
		assert.InDelta(t, block.Inches(), leg, 1e-6)
		corner := s.CornerExact.Inches() - 0.25*(2+math.Sqrt2)
		assert.InDelta(t, block.Inches()/math.Sqrt2, corner, 1e-6)

		handbook, err := SettingTriangles(SettingTrianglesRequest{Conventions: ImperialConventions(), Block: block})
		require.NoError(t, err)
		assert.Greater(t, handbook.SideSquare, s.SideExact)
		assert.Greater(t, handbook.CornerSquare, s.CornerExact)
	}
}

func TestSashing(t *testing.T) {
	v := ImperialConventions()
	// http://susanintexas.blogspot.com 2009/02: 49 sashes and 30 cornerstones.
	s, err := Sashing(SashingRequest{Conventions: v, Block: inches(12, 12), Sash: 2 * in, Across: 5, Down: 4, Cornerstones: true, Frame: true})
	require.NoError(t, err)
	assert.Equal(t, []int{49, 30, 0}, []int{s.ShortSashes, s.Cornerstones, s.LongSashes})
	assert.Equal(t, inches(72, 58), measure.Size{Width: s.QuiltWidth, Length: s.QuiltLength})
	assert.Equal(t, []float64{2.5, 12.5}, []float64{s.StripWidth.Inches(), s.SashCut.Inches()})
	assert.Equal(t, 17, s.Strips, "three sashes a strip")
	assert.Equal(t, 2, s.StoneStrips, "sixteen stones a strip")

	// https://www.patchworktimes.com, pieced border: 46 x 58.
	s, err = Sashing(SashingRequest{Conventions: v, Block: inches(10, 10), Sash: 2 * in, Across: 4, Down: 5})
	require.NoError(t, err)
	assert.Equal(t, []int{15, 4, 0}, []int{s.ShortSashes, s.LongSashes, s.Cornerstones})
	assert.Equal(t, inches(46, 58), measure.Size{Width: s.QuiltWidth, Length: s.QuiltLength})
	assert.Equal(t, 46.5, s.LongCut.Inches())
	assert.True(t, s.LongJoined)
	// 15 short at 3 a strip are 5; 4 × 46½ = 186 in joined are 5 more
	assert.Equal(t, 10, s.Strips)

	// Blocks that are not square have two lengths of short sashes.
	s, err = Sashing(SashingRequest{Conventions: v, Block: inches(6, 9), Sash: 2 * in, Across: 2, Down: 2, Cornerstones: true})
	require.NoError(t, err)
	assert.Equal(t, []int{4, 2, 1}, []int{s.ShortSashes, s.LevelSashes, s.Cornerstones})
	assert.Equal(t, []float64{9.5, 6.5}, []float64{s.SashCut.Inches(), s.LevelCut.Inches()})

	_, err = Sashing(SashingRequest{Conventions: v, Block: inches(6, 6), Sash: 2 * in, Across: 1, Down: 1})
	var limit *LimitError
	assert.ErrorAs(t, err, &limit)
}

// The area of blocks, sashes and cornerstones is the area of the quilt.
func TestSashingFillsTheQuilt(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	for range 500 {
		r := SashingRequest{Conventions: ImperialConventions(), Block: inches(float64(2+rng.IntN(12)), float64(2+rng.IntN(12))),
			Sash: measure.Length(1+rng.IntN(6)) * in / 2, Across: 1 + rng.IntN(6), Down: 1 + rng.IntN(6),
			Cornerstones: rng.IntN(2) == 0, Frame: rng.IntN(2) == 0}
		s, err := Sashing(r)
		if err != nil {
			continue
		}
		sash := r.Sash.Inches()
		total := float64(r.Across*r.Down)*area(r.Block) + float64(s.Cornerstones)*sash*sash
		total += float64(s.ShortSashes-s.LevelSashes) * sash * (s.SashCut.Inches() - 0.5)
		total += float64(s.LevelSashes) * sash * (s.LevelCut.Inches() - 0.5)
		total += float64(s.LongSashes) * sash * (s.LongCut.Inches() - 0.5)
		assert.InDelta(t, area(measure.Size{Width: s.QuiltWidth, Length: s.QuiltLength}), total, 1e-6, "%+v", r)
	}
}
