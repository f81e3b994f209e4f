package calc

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

func TestBiasBinding(t *testing.T) {
	// (1 + √(1 + 4·length·w))/2 by hand, up to a half inch. 135 in of 2½ in:
	// https://www.allpeoplequilt.com has √337.5 = 18.37 before its allowance.
	// The skirt of 50 in: https://www.quiltingboard.com, thread t166378, 157 in.
	for name, c := range map[string]struct {
		edge         Edge
		extra, strip measure.Length
		side         float64
	}{
		"320 in of 2¼": {MeasuredEdge(320 * in), 0, 9 * in / 4, 27.5},
		"135 in of 2½": {MeasuredEdge(135 * in), 0, 5 * in / 2, 19},
		"tree skirt":   {CircleEdge(50 * in), 10 * in, 9 * in / 4, 20},
		"240 in exact": {MeasuredEdge(240 * in), 0, 5 * in / 2, 25}, // 25 × 24 = 600 to the last thread
	} {
		t.Run(name, func(t *testing.T) {
			r := BiasBindingRequest{Conventions: ImperialConventions(), Edge: c.edge, Extra: c.extra, StripWidth: c.strip}
			b, err := BiasBinding(r)
			require.NoError(t, err)
			assert.Equal(t, c.side, b.SquareSide.Inches())
			assert.GreaterOrEqual(t, b.LengthMade, b.LengthNeeded)
			assert.Less(t, biasLength(b.SquareSide-r.GroundStep, c.strip), b.LengthNeeded, "half an inch less is not enough")
			assert.Equal(t, 1, b.Squares)
		})
	}
}

func TestBiasBindingOfMoreThanOneSquare(t *testing.T) {
	r := BiasBindingRequest{Conventions: ImperialConventions(), Edge: MeasuredEdge(1000 * in), StripWidth: 5 * in / 2}
	b, err := BiasBinding(r)
	require.NoError(t, err)
	assert.Equal(t, 2, b.Squares, "one would be 50½ in wide")
	assert.GreaterOrEqual(t, b.LengthMade, b.LengthNeeded)
	assert.LessOrEqual(t, b.SquareSide, r.UsableWidth)

	r.Edge = MeasuredEdge(900 * measure.Metre)
	_, err = BiasBinding(r)
	var limit *LimitError
	require.ErrorAs(t, err, &limit)
	assert.Equal(t, "usable_width", limit.Input)
}

func TestCoping(t *testing.T) {
	// 46 in with 5 in units: https://www.patchworktimes.com, 2 in finished.
	c, err := Coping(CopingRequest{ImperialConventions(), inches(46, 60), 5 * in})
	require.NoError(t, err)
	assert.Equal(t, CopingSide{10, 50 * in, 2 * in, 5 * in / 2}, c.Width)
	assert.Equal(t, CopingSide{12, 60 * in, 0, 0}, c.Length, "fits as it is")
	assert.Equal(t, CopingSide{13, 65 * in, 5 * in / 2, 3 * in}, c.WiderLength)
}

func TestEdgeTriangles(t *testing.T) {
	v := ImperialConventions()
	// https://welikequilting.com (basic guide): 3 in across from 3½ in squares.
	e, err := EdgeTriangles(EdgeTrianglesRequest{Conventions: v, Base: 3 * in})
	require.NoError(t, err)
	assert.Equal(t, []float64{3.5, 3, 1.5}, []float64{e.Square.Inches(), e.AcrossEach.Inches(), e.Height.Inches()})
	assert.Zero(t, e.Points)

	// 23 and 17 points: http://sassypacks.blogspot.com/2012/04/prairie-points.html.
	e, err = EdgeTriangles(EdgeTrianglesRequest{Conventions: v, Square: 9 * in / 2, Quilt: inches(67, 91), Have: 70})
	require.NoError(t, err)
	assert.Equal(t, []int{23, 17, 80}, []int{e.SidePoints, e.TopPoints, e.Points})
	assert.Equal(t, CountCheck{Given: true, Have: 70, Short: 10}, e.InHand)
	assert.Equal(t, []int{8, 10}, []int{e.PerStrip, e.Strips})

	for name, r := range map[string]EdgeTrianglesRequest{
		"no size":    {Conventions: v},
		"two sizes":  {Conventions: v, Base: in, Square: in},
		"all seam":   {Conventions: v, Square: in / 2},
		"no outline": {Conventions: v, Base: in, Overlap: in},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := EdgeTriangles(r)
			var limit *LimitError
			assert.ErrorAs(t, err, &limit)
		})
	}
}

func TestBed(t *testing.T) {
	v := ImperialConventions()
	// 54 x 75 in, 12 in over: http://melgeecrafts.com (sizes), 78 x 87; 78 x 80
	// in: katieskitchenblog.com (sizes), 102 x 92.
	for name, c := range map[string]struct {
		mattress measure.Size
		drop     measure.Length
		want     measure.Size
		tuck     measure.Length
		withTuck measure.Size
	}{
		"full": {inches(54, 75), 12 * in, inches(78, 87), 10 * in, inches(78, 97)},
		"king": {inches(78, 80), 12 * in, inches(102, 92), 12 * in, inches(102, 104)},
	} {
		t.Run(name, func(t *testing.T) {
			b, err := Bed(BedRequest{Conventions: v, Mattress: c.mattress, SideDrop: c.drop, FootDrop: c.drop})
			require.NoError(t, err)
			assert.Equal(t, c.want, measure.Size{Width: b.QuiltWidth, Length: b.QuiltLength})
			b, err = Bed(BedRequest{Conventions: v, Mattress: c.mattress, SideDrop: c.drop, FootDrop: c.drop, Tuck: c.tuck})
			require.NoError(t, err)
			assert.Equal(t, c.withTuck, measure.Size{Width: b.QuiltWidth, Length: b.QuiltLength})
		})
	}
}

func TestBeds(t *testing.T) {
	// 84 x 92 in hangs down 12 in round a queen, and only just over a king.
	beds, err := Beds(BedsRequest{Conventions: ImperialConventions(), Quilt: inches(84, 92), Country: UnitedStates, LeastDrop: 10 * in})
	require.NoError(t, err)
	require.NotEmpty(t, beds)
	assert.Equal(t, BedFit{Mattress{UnitedStates, "queen", inches(60, 80)}, 12 * in, 12 * in}, beds[0])
	all, err := Beds(BedsRequest{Conventions: ImperialConventions(), Quilt: inches(84, 92)})
	require.NoError(t, err)
	assert.Greater(t, len(all), len(beds))
	for _, b := range all {
		assert.GreaterOrEqual(t, min(b.SideDrop, b.EndDrop), measure.Length(0))
	}
}

func TestMattressesAreNamedOnce(t *testing.T) {
	seen := map[string]bool{}
	for _, m := range Mattresses() {
		name := string(m.Country) + " " + m.Name
		assert.False(t, seen[name], name)
		seen[name] = true
		found, ok := FindMattress(m.Country, m.Name)
		assert.True(t, ok)
		assert.Equal(t, m, found)
	}
	_, ok := FindMattress(Europe, "king")
	assert.False(t, ok)
}

func TestScale(t *testing.T) {
	// 18 in block to 12: a patch cut 6½ is cut 4½
	// (https://www.onwilliamsstreet.com/how-to-resize-a-quilt-block/); triangles
	// likewise with their own allowances, by hand.
	s, err := Scale(ScaleRequest{ImperialConventions(), 18 * in, 12 * in, []ScalePatch{
		{RectanglePatch, inches(6.5, 6.5)}, {HalfSquarePatch, inches(6.875, 6.875)}, {QuarterSquarePatch, inches(7.25, 7.25)}}})
	require.NoError(t, err)
	assert.InDelta(t, 2.0/3, s.Factor, 1e-12)
	assert.Equal(t, []measure.Size{inches(4.5, 4.5), inches(4.875, 4.875), inches(5.25, 5.25)},
		[]measure.Size{s.Patches[0].Cut, s.Patches[1].Cut, s.Patches[2].Cut})

	_, err = Scale(ScaleRequest{ImperialConventions(), 18 * in, 12 * in, []ScalePatch{{RectanglePatch, inches(0.5, 3)}}})
	var limit *LimitError
	require.ErrorAs(t, err, &limit)
	assert.Equal(t, "patch", limit.Input)
}

func TestShrinkage(t *testing.T) {
	for name, c := range map[string]struct {
		c       Conventions
		need    measure.Length
		percent float64
		buy     measure.Length
	}{
		"4 yd, 8 percent":  {ImperialConventions(), 4 * measure.Yard, 8, measure.Yard * 35 / 8},
		"3½ yd, 3 percent": {ImperialConventions(), measure.Yard * 7 / 2, 3, measure.Yard * 29 / 8},
		"3 m, 4 percent":   {MetricConventions(), 3 * measure.Metre, 4, 3200 * mm},
		"none":             {ImperialConventions(), 4 * measure.Yard, 0, 4 * measure.Yard},
	} {
		t.Run(name, func(t *testing.T) {
			s, err := Shrinkage(ShrinkageRequest{Conventions: c.c, Need: measure.Cloth(c.need), Percent: c.percent})
			require.NoError(t, err)
			assert.Equal(t, measure.Cloth(c.buy), s.Buy)
			assert.GreaterOrEqual(t, s.After, c.need, "what is bought washes to what is needed")
		})
	}
	for _, percent := range []float64{-1, 100, math.NaN(), math.Inf(1)} {
		_, err := Shrinkage(ShrinkageRequest{Conventions: ImperialConventions(), Need: measure.Cloth(measure.Yard), Percent: percent})
		var limit *LimitError
		assert.ErrorAs(t, err, &limit, "%v percent", percent)
	}
}

func TestThread(t *testing.T) {
	r := ThreadRequest{Conventions: ImperialConventions(), Use: QuiltingThread, Quilt: inches(90, 108), Spool: DefaultSpool, Bobbin: DefaultBobbin}
	queen, err := Thread(r)
	require.NoError(t, err)
	// 600 to 1200 yd on top and as much below: 1097 to 2195 m, to the next ten.
	assert.Equal(t, []measure.Length{1100 * measure.Metre, 2200 * measure.Metre}, []measure.Length{queen.Low, queen.High})
	assert.Equal(t, []int{2, 3}, []int{queen.SpoolsLow, queen.Spools})

	r.Use, r.Quilt = PiecingThread, inches(60, 72)
	throw, err := Thread(r)
	require.NoError(t, err)
	assert.Equal(t, 190*measure.Metre, throw.Low) // 200 yd are 183 m
	assert.Less(t, throw.High, queen.High)
}

func TestWidthChange(t *testing.T) {
	v := ImperialConventions()
	// 3 yd of 44 in by area: 2.2 yd of 60 in.
	w, err := WidthChange(WidthChangeRequest{Conventions: v, Cloth: measure.Cloth(3 * measure.Yard), From: 44 * in, To: 60 * in})
	require.NoError(t, err)
	assert.True(t, w.ByArea)
	assert.Equal(t, measure.Cloth(measure.Yard*9/4), w.Buy)

	// 24 squares of 10½ in take 6 strips of 44 in and 5 of 60 in.
	w, err = WidthChange(WidthChangeRequest{Conventions: v, Cloth: measure.Cloth(3 * measure.Yard), From: 44 * in, To: 60 * in,
		Count: 24, Piece: inches(10.5, 10.5)})
	require.NoError(t, err)
	assert.False(t, w.ByArea)
	assert.Equal(t, measure.Inches(52.5), w.Need)
}

func TestConvert(t *testing.T) {
	v := ImperialConventions()
	for name, c := range map[string]struct {
		length measure.Length
		to     Unit
		want   float64
	}{
		"⅝ yd":    {measure.Yard * 5 / 8, InInches, 22.5},         // https://catbirdquilts.wordpress.com 2014/02
		"⅞ yd":    {measure.Yard * 7 / 8, InInches, 31.5},         // https://www.quiltingboard.com, thread t31435
		"60 in":   {60 * in, InMetres, 1.524},                     // 25.4 mm an inch
		"5 in":    {5 * in, InCentimetres, 12.7},                  // https://bagmakingpatterns.com
		"6 mm":    {6 * mm, InInches, 6 / 25.4},                   // 25.4 mm an inch
		"13/16":   {in * 13 / 16, InInches, 0.8125},               // arithmetic
		"2¾ yd":   {measure.Yard * 11 / 4, InCentimetres, 251.46}, // 91.44 cm a yard
		"⅔ yd":    {measure.Yard * 2 / 3, InInches, 24},
		"1 in mm": {in, InMillimetres, 25.4},
		"1 yd ft": {measure.Yard, InFeet, 3},
	} {
		t.Run(name, func(t *testing.T) {
			r, err := Convert(ConvertRequest{v, c.length, c.to})
			require.NoError(t, err)
			assert.InDelta(t, c.want, r.Result, 1e-12)
		})
	}
	_, err := Convert(ConvertRequest{v, measure.Yard, "kg"})
	var limit *LimitError
	require.ErrorAs(t, err, &limit)
	assert.Equal(t, "unit", limit.Input)
}

// Joined lengths are what a naive walk from strip to strip makes.
func TestBindingAgreesWithCounting(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 9))
	for range 3000 {
		r := bindingOf(RectangleEdge(inches(float64(10+rng.IntN(400))/4, float64(10+rng.IntN(400))/4)))
		r.StripWidth = measure.Length(8+rng.IntN(20)) * in / 8
		r.UsableWidth = measure.Length(72+rng.IntN(24)) * in / 2
		if rng.IntN(2) == 0 {
			r.Join = StraightJoin
		}
		b, err := Binding(r)
		require.NoError(t, err)
		made, n := r.UsableWidth, 1
		for made < b.LengthNeeded {
			made += r.UsableWidth - r.loss(r.Join, r.StripWidth)
			n++
		}
		require.Equal(t, []measure.Length{measure.Length(n), made}, []measure.Length{measure.Length(b.Strips), b.Covers})
	}
}

func TestExactFitIsEnough(t *testing.T) {
	// 7 × 40 in joined without loss are 280 in, and cover 280 in.
	n, err := joinedStrips(280*in, 40*in, 0)
	require.NoError(t, err)
	assert.Equal(t, 7, n)
	n, err = joinedStrips(280*in+1, 40*in, 0)
	require.NoError(t, err)
	assert.Equal(t, 8, n)
}

func BenchmarkBinding(b *testing.B) {
	r := bindingOf(RectangleEdge(inches(60, 72)))
	for b.Loop() {
		if _, err := Binding(r); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBacking(b *testing.B) {
	r := backingOf(inches(60, 72))
	for b.Loop() {
		if _, err := Backing(r); err != nil {
			b.Fatal(err)
		}
	}
}

// Whoever has fabric in hand is told whether it is enough.
func TestFabricInHand(t *testing.T) {
	v, have := ImperialConventions(), measure.Cloth(measure.Yard/2)
	bias, err := BiasBinding(BiasBindingRequest{Conventions: v, Edge: MeasuredEdge(320 * in), StripWidth: 9 * in / 4, Have: have})
	require.NoError(t, err)
	assert.Equal(t, ClothCheck{Given: true, Have: 18 * in, Short: 19 * in / 2}, bias.Cloth, "a square of 27½ in")

	// Side squares of 14 in, two a strip, and corners of 7¼: 28 + 7¼ in.
	setting, err := SettingTriangles(SettingTrianglesRequest{Conventions: v, Block: 9 * in, Across: 4, Down: 5, Have: have})
	require.NoError(t, err)
	assert.Equal(t, ClothCheck{Given: true, Have: 18 * in, Short: measure.Inches(17.25)}, setting.Cloth)

	points, err := EdgeTriangles(EdgeTrianglesRequest{Conventions: v, Square: 2 * in, Quilt: inches(20, 20), Cloth: have})
	require.NoError(t, err)
	assert.Equal(t, ClothCheck{Given: true, Enough: true, Have: 18 * in, Spare: 12 * in}, points.Cloth, "56 squares, 20 a strip")

	width, err := WidthChange(WidthChangeRequest{Conventions: v, Cloth: measure.Cloth(30 * in), From: 40 * in, To: 60 * in, Have: have})
	require.NoError(t, err)
	assert.Equal(t, ClothCheck{Given: true, Have: 18 * in, Short: 2 * in}, width.InHand)
}

// The four sides of a border tile the frame round the quilt.
func TestBordersTileTheFrame(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 6))
	for range 300 {
		r := bordersOf(inches(float64(20+rng.IntN(300))/4, float64(20+rng.IntN(300))/4), float64(1+rng.IntN(20))/4)
		r.Corners = []Corners{ButtedCorners, SquaredCorners}[rng.IntN(2)]
		b, err := Borders(r)
		require.NoError(t, err)
		one, seams := b.Borders[0], 2*r.Seam
		w := (one.StripWidth - seams).Inches()
		frame := 2 * w * ((one.SideCut - seams).Inches() + (one.TopCut - seams).Inches())
		if one.Corner.Width > 0 {
			frame += 4 * w * w
		}
		assert.InDelta(t, area(measure.Size{Width: b.QuiltWidth, Length: b.QuiltLength})-area(r.Quilt), frame, 1e-6)
	}
}
