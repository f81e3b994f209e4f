package calc

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// patchSums are the sums about wedges, patches and curves, each with a request
// to fill in and a call that gives its result.
func patchSums() map[string]struct {
	request reflect.Type
	call    func(request any) (any, error)
} {
	type sum = struct {
		request reflect.Type
		call    func(request any) (any, error)
	}
	return map[string]sum{
		"WedgeCount":     {reflect.TypeFor[WedgeCountRequest](), caller(WedgeCount)},
		"Ring":           {reflect.TypeFor[RingRequest](), caller(Ring)},
		"NestedRings":    {reflect.TypeFor[NestedRingsRequest](), caller(NestedRings)},
		"WedgeFit":       {reflect.TypeFor[FitRequest](), caller(WedgeFit)},
		"WedgeStrips":    {reflect.TypeFor[WedgeStripsRequest](), caller(WedgeStrips)},
		"Split":          {reflect.TypeFor[SplitRequest](), caller(Split)},
		"Flatness":       {reflect.TypeFor[FlatnessRequest](), caller(Flatness)},
		"HalfSquares":    {reflect.TypeFor[HalfSquareRequest](), caller(HalfSquares)},
		"QuarterSquares": {reflect.TypeFor[QuarterSquareRequest](), caller(QuarterSquares)},
		"FlyingGeese":    {reflect.TypeFor[GeeseRequest](), caller(FlyingGeese)},
		"SquareInSquare": {reflect.TypeFor[SquareInSquareRequest](), caller(SquareInSquare)},
		"StripSet":       {reflect.TypeFor[StripSetRequest](), caller(StripSet)},
		"Hexagons":       {reflect.TypeFor[HexagonRequest](), caller(Hexagons)},
		"Triangles60":    {reflect.TypeFor[TriangleRequest](), caller(Triangles60)},
		"Diamonds":       {reflect.TypeFor[DiamondRequest](), caller(Diamonds)},
		"HalfRectangles": {reflect.TypeFor[HalfRectangleRequest](), caller(HalfRectangles)},
		"Circle":         {reflect.TypeFor[CircleRequest](), caller(Circle)},
		"QuarterCircle":  {reflect.TypeFor[QuarterCircleRequest](), caller(QuarterCircle)},
		"Scallops":       {reflect.TypeFor[ScallopRequest](), caller(Scallops)},
		"RoundedCorners": {reflect.TypeFor[RoundedCornersRequest](), caller(RoundedCorners)},
	}
}

func caller[Q, R any](f func(Q) (R, error)) func(any) (any, error) {
	return func(q any) (any, error) { return f(q.(Q)) }
}

// strange values: what people type, what they mistype, and the ends of types.
var (
	strangeLengths = []measure.Length{0, 1, -1, 99_999, leastCut, in / 64, in / 4, in / 2, in, 5 * in / 2, 6 * in, 40 * in, 333 * mm,
		measure.Yard, maxLength, maxLength + 1, measure.Max, math.MaxInt64, math.MinInt64, math.MaxInt64 / 2, -40 * in}
	strangeCounts = []int{0, 1, 2, 3, 4, 5, 7, 8, 16, 20, 100, 997, maxCount, maxCount + 1, -1, math.MaxInt, math.MinInt}
	strangeAngles = []measure.Angle{0, 0.01, 0.009, 1, 18, 22.5, 45, 51.43, 60, 90, 119.99, 120, 179.9, 180, 360, 361, -18,
		measure.Angle(math.NaN()), measure.Angle(math.Inf(1)), measure.Angle(math.Inf(-1)), 1e-300, 1e300}
)

// fill makes a request of strange values; most are such as a person may mean.
func fill(r *rand.Rand, v reflect.Value) {
	switch v.Interface().(type) {
	case Conventions:
		c := ImperialConventions()
		if r.IntN(2) == 0 {
			c = MetricConventions()
		}
		if r.IntN(4) == 0 {
			c.Seam = strangeLengths[r.IntN(len(strangeLengths))]
		}
		if r.IntN(8) == 0 {
			c.UsableWidth = strangeLengths[r.IntN(len(strangeLengths))]
		}
		v.Set(reflect.ValueOf(c))
		return
	case RingRequest:
		if r.IntN(2) == 0 { // a ring that works, but for one thing
			v.Set(reflect.ValueOf(ringOf(3+r.IntN(50), measure.Length(20+r.IntN(60))*in/8, measure.Length(8+r.IntN(20))*in/8)))
			v.FieldByName("End").SetUint(uint64(r.IntN(4)))
			fill(r, v.Field(r.IntN(v.NumField())))
			return
		}
	case measure.Length, measure.Cloth:
		l := measure.Length(1+r.IntN(400)) * in / 8
		if r.IntN(3) == 0 {
			l = strangeLengths[r.IntN(len(strangeLengths))]
		}
		v.SetInt(int64(l))
		return
	case measure.Angle:
		v.SetFloat(float64(strangeAngles[r.IntN(len(strangeAngles))]))
		return
	}
	switch v.Kind() {
	case reflect.Int:
		v.SetInt(int64(strangeCounts[r.IntN(len(strangeCounts))]))
	case reflect.Bool:
		v.SetBool(r.IntN(2) == 0)
	case reflect.Uint8:
		v.SetUint(uint64(r.IntN(6)))
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), r.IntN(4), 4))
		for i := range v.Len() {
			fill(r, v.Index(i))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Field(i); f.CanSet() {
				fill(r, f)
				if r.IntN(3) == 0 && f.Kind() != reflect.Struct { // what is not said
					f.SetZero()
				}
			}
		}
	}
}

// mayBeNegative are results that say by how much something is off.
var mayBeNegative = map[string]bool{"LeftOver": true, "Overlap": true, "Miss": true, "WidthsMiss": true, "PerSeam": true,
	"SeamAtWide": true, "QuarterMiss": true, "RadiusChange": true, "AcrossChange": true, "Covered": true,
	"BackgroundRadius": true, "OneFewerShort": true}

// sane fails on results that have wrapped around, are no number, or count less
// than nothing, and on lines of working that do not fill in.
func sane(v reflect.Value, path string) error {
	name := path[strings.LastIndex(path, ".")+1:]
	switch x := v.Interface().(type) {
	case Step:
		if line := said(x); strings.Contains(line, "%!") || strings.Contains(line, "NaN") {
			return fmt.Errorf("%s reads %q", path, line)
		}
		return nil
	case measure.Angle:
		if math.IsNaN(float64(x)) || math.IsInf(float64(x), 0) {
			return fmt.Errorf("%s = %v", path, x)
		}
	case measure.Length, measure.Cloth:
		const most = 1 << 61 // far below the end of the type
		if n := v.Int(); n > most || n < -most || n < 0 && !mayBeNegative[name] {
			return fmt.Errorf("%s = %d nm", path, n)
		}
	case int:
		if x < 0 && !mayBeNegative[name] || int64(x) > 1<<61 {
			return fmt.Errorf("%s = %d", path, x)
		}
	}
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			return sane(v.Elem(), path)
		}
	case reflect.Slice:
		for i := range v.Len() {
			if err := sane(v.Index(i), path); err != nil {
				return err
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				if err := sane(v.Field(i), path+"."+f.Name); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// tryStrange runs every sum once on a request made from the seed.
func tryStrange(t *testing.T, seed uint64) (answered map[string]bool) {
	answered = map[string]bool{}
	r := rand.New(rand.NewPCG(seed, 1))
	sums := patchSums()
	for _, name := range slices.Sorted(maps.Keys(sums)) {
		sum := sums[name]
		q := reflect.New(sum.request).Elem()
		fill(r, q)
		got, err := sum.call(q.Interface())
		if err != nil {
			assert.NotContains(t, refusal(t, err), "%!", "%s %+v", name, q)
			continue
		}
		answered[name] = true
		if err := sane(reflect.ValueOf(got), name); err != nil {
			t.Errorf("seed %d: %v of %+v", seed, err, q)
		}
	}
	return answered
}

// Whatever comes in, the sums answer or refuse; nothing panics or wraps around.
func TestStrangeRequests(t *testing.T) {
	answers := map[string]int{}
	for seed := range uint64(6000) {
		for name := range tryStrange(t, seed) {
			answers[name]++
		}
		if t.Failed() {
			return
		}
	}
	for name := range patchSums() {
		assert.Greater(t, answers[name], 20, "%s is hardly ever answered, so this test says little about it", name)
	}
}

func FuzzPatches(f *testing.F) {
	for seed := range uint64(20) {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, seed uint64) { tryStrange(t, seed) })
}

// someShape gives blades that a person might cut.
func someShape(r *rand.Rand) WedgeStripsRequest {
	q := stripsOf(1+r.IntN(400), measure.Length(8+r.IntN(80))*in/8, 0)
	q.Angle, q.Narrow = measure.Angle(6+r.IntN(40)), measure.Length(6+r.IntN(10))*in/8
	q.Layout = BladeLayout(1 + r.IntN(3))
	return q
}

// stripsFor counts the strips of each topic on fabric of a usable width; what
// does not fit at all gives none.
func stripsFor(r *rand.Rand) map[string]func(usable measure.Length, times int) int {
	shape := someShape(r)
	side := measure.Length(8+r.IntN(80)) * in / 8
	n := 1 + r.IntN(300)
	at := []int{1, 2, 4, 8}[r.IntN(4)]
	grid := 2 + r.IntN(4)
	rail := r.IntN(2) == 0
	angle := []measure.Angle{45, 60}[r.IntN(2)]
	on := func(usable measure.Length) Conventions {
		v := ImperialConventions()
		v.UsableWidth = usable
		return v
	}
	return map[string]func(measure.Length, int) int{
		"blades": func(usable measure.Length, times int) int {
			q := shape
			q.Conventions, q.Blades = on(usable), shape.Blades*times
			w, err := WedgeStrips(q)
			return orNone(w.Strips, err)
		},
		"half squares": func(usable measure.Length, times int) int {
			h, err := HalfSquares(HalfSquareRequest{Conventions: on(usable), Finished: side, AtATime: at, Units: n * times})
			return orNone(h.Cloth.Strips, err)
		},
		"quarter squares": func(usable measure.Length, times int) int {
			q, err := QuarterSquares(QuarterSquareRequest{Conventions: on(usable), Finished: side, Units: n * times})
			return orNone(q.Cloth.Strips, err)
		},
		"strip sets": func(usable measure.Length, times int) int {
			s, err := StripSet(StripSetRequest{Conventions: on(usable), Rows: grid, Columns: grid, Rail: rail, Strip: side, Blocks: n * times})
			return orNone(s.Strips, err)
		},
		"triangles": func(usable measure.Length, times int) int {
			tri, err := Triangles60(TriangleRequest{Conventions: on(usable), Strip: side, Triangles: n * times})
			return orNone(tri.Strips, err)
		},
		"diamonds": func(usable measure.Length, times int) int {
			d, err := Diamonds(DiamondRequest{Conventions: on(usable), Angle: angle, Strip: side, Diamonds: n * times})
			return orNone(d.Strips, err)
		},
		"hexagons": func(usable measure.Length, times int) int {
			h, err := Hexagons(HexagonRequest{Conventions: on(usable), Side: side, Hexagons: n * times})
			return orNone(h.Cloth.Strips, err)
		},
	}
}

func orNone(n int, err error) int {
	if err != nil {
		return 0
	}
	return n
}

// Wider fabric never needs more strips; twice as many pieces need at most twice
// the strips, and at least as many.
func TestStripsAreMonotone(t *testing.T) {
	for seed := range uint64(2000) {
		r := rand.New(rand.NewPCG(seed, 2))
		usable := measure.Length(160+r.IntN(80)) * in / 4
		wider := usable + measure.Length(r.IntN(200))*in/8
		for name, strips := range stripsFor(r) {
			once := strips(usable, 1)
			if once == 0 {
				continue
			}
			assert.LessOrEqual(t, strips(wider, 1), once, "%s, seed %d: wider fabric needs more", name, seed)
			twice := strips(usable, 2)
			assert.LessOrEqual(t, twice, 2*once, "%s, seed %d", name, seed)
			assert.GreaterOrEqual(t, twice, once, "%s, seed %d", name, seed)
		}
		if t.Failed() {
			return
		}
	}
}

// No result depends on the unit that it was asked in: the same lengths give the
// same counts, and the same sizes up to each system's own rounding.
func TestUnitsChangeNothing(t *testing.T) {
	metric, imperial := MetricConventions(), ImperialConventions()
	for seed := range uint64(500) {
		r := rand.New(rand.NewPCG(seed, 3))
		req := ringOf(8+r.IntN(30), measure.Length(30+r.IntN(200))*mm, measure.Length(25+r.IntN(20))*mm)
		req.End = BladeEnd(r.IntN(4))
		a, errA := Ring(req)
		req.Conventions = metric
		b, errB := Ring(req)
		require.Equal(t, errA == nil, errB == nil)
		assert.Equal(t, a.Exact, b.Exact)
		assert.InDelta(t, a.RingAcross.Inches(), b.RingAcross.Inches(), 1.0/32+0.02)

		shape := someShape(r)
		shape.Strip = shape.Length.RoundUp(in)
		x, errX := WedgeStrips(shape)
		shape.Conventions = metric
		y, errY := WedgeStrips(shape)
		require.Equal(t, errX == nil, errY == nil, "seed %d", seed)
		assert.Equal(t, []int{x.BladesPerStrip, x.Strips}, []int{y.BladesPerStrip, y.Strips})

		f := measure.Length(20+r.IntN(200)) * mm
		h, err := HalfSquares(HalfSquareRequest{Conventions: imperial, Finished: f, Units: 40})
		require.NoError(t, err)
		m, err := HalfSquares(HalfSquareRequest{Conventions: metric, Finished: f, Units: 40})
		require.NoError(t, err)
		assert.Equal(t, h.ExactSquare, m.ExactSquare)
		assert.Equal(t, h.Squares, m.Squares)
	}
}

// What is cut is never below what is exact, but for the hair that the ruler
// drops, nor a whole step above it; what is bought covers what is needed.
func TestCutsAreSafe(t *testing.T) {
	for seed := range uint64(1000) {
		r := rand.New(rand.NewPCG(seed, 4))
		v := ImperialConventions()
		if seed%2 == 1 {
			v = MetricConventions()
		}
		f := measure.Length(10+r.IntN(400)) * mm / 2
		for _, at := range []int{1, 2, 4, 8} {
			h, err := HalfSquares(HalfSquareRequest{Conventions: v, Finished: f, AtATime: at, Units: 1 + r.IntN(200)})
			require.NoError(t, err)
			assert.Greater(t, h.SquareCut, h.ExactSquare-max(v.CutSlack, hair+1))
			assert.Less(t, h.SquareCut, h.ExactSquare+v.CutStep+in/20)
			assert.True(t, h.SquareCut.IsOn(v.CutStep))
			assert.GreaterOrEqual(t, h.Made, h.Units)
			assert.GreaterOrEqual(t, measure.Length(h.Cloth.Buy), h.Cloth.Length-hair)
			assert.Less(t, measure.Length(h.Cloth.Buy), h.Cloth.Length+v.BuyStep)
		}
		fit, err := WedgeFit(FitRequest{Conventions: v, Angle: 18, Narrow: in, Strip: 3*in/2 + f})
		require.NoError(t, err)
		assert.LessOrEqual(t, fit.LongestBlade, fit.ExactLongest+hair)
		back, err := WedgeFit(FitRequest{Conventions: v, Angle: 18, Narrow: in, Length: fit.LongestBlade})
		require.NoError(t, err)
		assert.LessOrEqual(t, back.StripWidth, (3*in/2 + f).RoundUp(v.CutStep), "the longest blade fits its strip")
	}
}

// A longer blade makes a larger ring, a wider narrow end a wider opening, and
// the seams always take the same from both.
func TestRingsGrow(t *testing.T) {
	for blades := 4; blades <= 48; blades++ {
		base, err := Ring(ringOf(blades, 6*in, 3*in/2))
		require.NoError(t, err)
		longer, err := Ring(ringOf(blades, 13*in/2, 3*in/2))
		require.NoError(t, err)
		wider, err := Ring(ringOf(blades, 6*in, 2*in))
		require.NoError(t, err)
		assert.Equal(t, in/2, longer.Exact.OuterRadius-base.Exact.OuterRadius)
		assert.Equal(t, base.Exact.OpeningRadius, longer.Exact.OpeningRadius)
		assert.Greater(t, wider.OpeningAcross, base.OpeningAcross)
		assert.Equal(t, base.Exact.ApexShift, wider.Exact.ApexShift)
	}
}
