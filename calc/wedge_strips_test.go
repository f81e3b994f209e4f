package calc

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// stripsOf gives a request on 40 in of fabric.
func stripsOf(blades int, length, strip measure.Length) WedgeStripsRequest {
	return WedgeStripsRequest{Conventions: ImperialConventions(), Blades: blades, Length: length, Strip: strip}
}

func TestWedgeStripsAlong(t *testing.T) {
	for _, c := range []struct {
		blades        int
		length, strip measure.Length
		per, strips   int
		buy           string
	}{
		{320, 5 * in, 5 * in / 2, 8, 40, "2⅞ yd"}, // luannsloosethreads.blogspot.com, March 2011: 40 strips for sixteen plates
		{96, 6 * in, 3 * in, 6, 16, "1⅜ yd"},
		{100, 10 * in, 9 * in / 2, 4, 25, "3⅛ yd"}, // exactly: 112½ in
		{60, 40 * in, 3 * in, 1, 60, "5 yd"},       // a blade as long as the fabric is wide
		{1, in, in, 40, 1, "⅛ yd"},
	} {
		w, err := WedgeStrips(stripsOf(c.blades, c.length, c.strip))
		require.NoError(t, err)
		assert.Equal(t, AlongStrip, w.Layout)
		assert.Equal(t, c.per, w.BladesPerStrip)
		assert.Equal(t, c.strips, w.Strips)
		assert.Equal(t, c.buy, w.Buy.Show(measure.Imperial))
		assert.Equal(t, c.strips*c.per-c.blades, w.SpareBlades)
		assert.Nil(t, w.Other, "the shape is not known")
	}
}

func TestWedgeStripsAcross(t *testing.T) {
	r := stripsOf(40, 6*in, 6*in)
	r.Angle, r.Narrow = 15, in
	w, err := WedgeStrips(r)
	require.NoError(t, err)
	assert.Equal(t, HeadToTail, w.Layout, "the strip is as wide as the blade is long")
	assert.Equal(t, 21, w.BladesPerStrip)
	assert.Equal(t, 2, w.Strips)
	assert.Equal(t, 19, w.OneFewerShort)
	assert.Equal(t, []string{
		"Head to tail 21 blades take 21 × (2.58 in + 1 in) ÷ 2 + (2.58 in − 1 in) ÷ 2 = 38.378 in of 40 in.",
		"40 blades ÷ 21 a strip, up to whole strips: 2",
		"2 × 6 in = 12 in of fabric: ⅜ yd",
	}, saidAll(w.Working))
	require.NotNil(t, w.Other)
	assert.Equal(t, AlongStrip, w.Other.Layout)
	assert.Equal(t, 7, w.Other.Strips)
	assert.Equal(t, 21*in/8, w.Other.StripWidth)

	r.OneWay = true
	w, err = WedgeStrips(r)
	require.NoError(t, err)
	assert.Equal(t, AllOneWay, w.Layout, "a one-way print is not turned")
	assert.Equal(t, 15, w.BladesPerStrip)
	r.Layout = HeadToTail
	w, err = WedgeStrips(r)
	require.NoError(t, err)
	assert.Equal(t, AllOneWay, w.Layout)
}

// Ends that fill the strip to the last thread: 9 × (3 + 1)/2 + (3 − 1)/2 = 19.
func TestHeadToTailFitsExactly(t *testing.T) {
	r := stripsOf(9, 5*in, 5*in)
	r.Narrow, r.Wide, r.StripLength = in, 3*in, 19*in
	w, err := WedgeStrips(r)
	require.NoError(t, err)
	assert.Equal(t, 9, w.BladesPerStrip)
	r.StripLength -= in / 64
	w, err = WedgeStrips(r)
	require.NoError(t, err)
	assert.Equal(t, 8, w.BladesPerStrip)
}

func TestWedgeStripsInHand(t *testing.T) {
	r := stripsOf(64, 6*in, 3*in)
	r.HaveStrips = 10
	w, err := WedgeStrips(r)
	require.NoError(t, err)
	assert.Equal(t, CountCheck{Given: true, Have: 10, Short: 1}, w.Hand)
	assert.Equal(t, 60, w.HandBlades)
	assert.Equal(t, 4, w.OneFewerShort)
	assert.Equal(t, []StripsOnCloth{{42 * in, 10}}, w.WiderCloth, "42 in of fabric saves a strip")

	r.HaveStrips, r.HaveCloth = 0, measure.Cloth(measure.Yard)
	w, err = WedgeStrips(r)
	require.NoError(t, err)
	assert.True(t, w.Cloth.Enough)
	assert.Equal(t, 3*in, w.Cloth.Spare)
	assert.Equal(t, 72, w.HandBlades)
}

func TestWedgeStripsRefuses(t *testing.T) {
	for want, change := range map[string]func(*WedgeStripsRequest){
		"blade_length: Blades that are 2 9/16 in at the wide end are too wide for a strip of 2 in. From that strip they can be 3¾ in long; for 6 in the strip has to be 2⅝ in.": func(r *WedgeStripsRequest) { r.Angle, r.Narrow, r.Strip = 15, in, 2*in },
		"strip_width: Blades that are 3 in at the wide end are too wide for a strip of 2 in. The strip has to be 3 in wide.":                                                    func(r *WedgeStripsRequest) { r.Wide, r.Strip = 3*in, 2*in },
		"blade_length: Not one blade 45 in long fits on a strip of 40 in. Blades can be 40 in long at most.":                                                                    func(r *WedgeStripsRequest) { r.Length = 45 * in },
		"blade_length: Blades 6 in long do not fit across a strip of 3 in. Across it they can be 3 in long at most.":                                                            func(r *WedgeStripsRequest) { r.Angle, r.Narrow, r.Layout = 15, in, HeadToTail },
		"narrow_end: To lay blades across a strip both of their ends have to be known. ":                                                                                        func(r *WedgeStripsRequest) { r.Layout = AllOneWay },
		"strip_width: The strip width has to be more than nothing. ":                                                                                                            func(r *WedgeStripsRequest) { r.Strip = 0 },
		"blades: The number of blades has to be 1 or more. ":                                                                                                                    func(r *WedgeStripsRequest) { r.Blades = 0 },
		"strips: The number of strips has to be 1 or more. ":                                                                                                                    func(r *WedgeStripsRequest) { r.HaveStrips = -3 },
		"wide_end: The wide end, ½ in, has to be at least as wide as the narrow end, 1 in. ":                                                                                    func(r *WedgeStripsRequest) { r.Narrow, r.Wide = in, in/2 },
		"layout: Blades lie along the strip or across it. ":                                                                                                                     func(r *WedgeStripsRequest) { r.Layout = layoutsCount },
	} {
		r := stripsOf(96, 6*in, 3*in)
		change(&r)
		_, err := WedgeStrips(r)
		assert.Equal(t, want, refusal(t, err))
	}
}

func TestWedgeFit(t *testing.T) {
	v := ImperialConventions()
	for _, c := range []struct {
		angle          measure.Angle
		narrow, strip  measure.Length
		length         measure.Length
		longest, width string
		fits           bool
	}{
		{18, 7 * in / 8, 9 * in / 4, 0, "4¼", "2¼", true},
		{9, 3 * in / 4, 4 * in, 0, "20⅝", "4", true},
		{18, 7 * in / 8, 0, 6 * in, "6", "2⅞", true},
		{22.5, in, 0, 4 * in, "4", "2⅝", true},
		{18, 7 * in / 8, 5 * in / 2, 6 * in, "5⅛", "2½", false},
		{18, 7 * in / 8, 3 * in, 6 * in, "6⅝", "3", true},
	} {
		f, err := WedgeFit(FitRequest{Conventions: v, Angle: c.angle, Narrow: c.narrow, Strip: c.strip, Length: c.length})
		require.NoError(t, err)
		assert.Equal(t, c.longest, f.LongestBlade.RulerInches())
		assert.Equal(t, c.width, f.StripWidth.RulerInches())
		assert.Equal(t, c.fits, f.Fits)
		assert.Equal(t, c.narrow, f.NarrowEnd)
	}
	_, err := WedgeFit(FitRequest{Conventions: v, Angle: 18, Narrow: 2 * in, Strip: 2 * in})
	assert.Equal(t, "strip_width: A strip of 2 in leaves nothing for a blade that is 2 in at its narrow end. From 2⅛ in on blades can be cut.", refusal(t, err))
	_, err = WedgeFit(FitRequest{Conventions: v, Angle: 18, Narrow: in})
	assert.Equal(t, "blade_length: The blade length has to be more than nothing. ", refusal(t, err))
}

// Where the ruler drops a hair of overhang, the working says so.
func TestWedgeFitDropsAHair(t *testing.T) {
	f, err := WedgeFit(FitRequest{Conventions: ImperialConventions(), Angle: 22.5, Narrow: 7 * in / 8, Length: 6 * in})
	require.NoError(t, err)
	assert.Equal(t, "3¼", f.StripWidth.RulerInches())
	assert.Equal(t, []string{
		"Strip for 6 in: ⅞ in + 2 × 6 in × tan(11¼°) = 3.262 in, down to 3¼ in",
		"That drops less than 1/64 in: the corners of the wide end lose a hair.",
	}, saidAll(f.Working))
}

func TestSplit(t *testing.T) {
	for _, c := range []struct{ pieces, fabrics, each, left int }{
		{96, 7, 13, 5}, {250, 9, 27, 7}, {96, 8, 12, 0}, {36, 7, 5, 1}, {5, 7, 0, 5}, {1, 1, 1, 0},
	} {
		s, err := Split(SplitRequest{Pieces: c.pieces, Fabrics: c.fabrics})
		require.NoError(t, err)
		assert.Equal(t, c.each, s.Each)
		assert.Equal(t, c.left, s.LeftOver)
	}
	s, err := Split(SplitRequest{Pieces: 96, Fabrics: 7})
	require.NoError(t, err)
	assert.Equal(t, []string{"96 = 7 × 13 + 5", "5 of the fabrics give 14 and 2 give 13."}, saidAll(s.Working))
	_, err = Split(SplitRequest{Pieces: 96})
	assert.Equal(t, "fabrics: The number of fabrics has to be 1 or more. ", refusal(t, err))
}

func TestFlatness(t *testing.T) {
	v := ImperialConventions()
	short, err := Flatness(FlatnessRequest{Conventions: v, Groups: []BladeGroup{{18, 18}}, Length: 5 * in})
	require.NoError(t, err)
	assert.Equal(t, Cups, short.Lie)
	assert.Equal(t, []Closing{{20, 18}, {18, 20}}, short.Closing)
	assert.InDelta(t, -2, float64(short.PerSeam), 1e-9)
	// Half of 2° on either side of a seam, 5 in along it: 5 × tan 1°.
	assert.InDelta(t, -0.0873, short.SeamAtWide.Inches(), 1e-4)
	assert.Equal(t, []string{
		"18 × 18° = 324°", "36° missing ÷ 18 seams is 2° a seam: each 3/32 in shallower at the wide end",
	}, saidAll(short.Working))

	long, err := Flatness(FlatnessRequest{Conventions: v, Groups: []BladeGroup{{20, 18}}, AngleError: 0.5})
	require.NoError(t, err)
	assert.Equal(t, Ruffles, long.Lie)
	assert.InDelta(t, 10, float64(long.Miss), 1e-9)
	assert.InDelta(t, 2.5, float64(long.QuarterMiss), 1e-9, "what a square corner shows at a quarter")

	half, err := Flatness(FlatnessRequest{Conventions: v, Groups: []BladeGroup{{10, 18}}, Turn: HalfTurn,
		SeamError: in / 32, Tapering: true, Length: 5 * in})
	require.NoError(t, err)
	// A half ring of ten blades has nine seams.
	assert.InDelta(t, -9*2*0.35809, float64(half.Miss), 1e-3)

	deep, err := Flatness(FlatnessRequest{Conventions: v, Groups: []BladeGroup{{20, 18}}, SeamError: -in / 32})
	require.NoError(t, err)
	assert.Equal(t, LiesFlat, deep.Lie, "an even error leaves it flat")
	assert.Less(t, deep.AcrossChange, measure.Length(0), "shallow seams make it larger")
}

// Mending a ring by the seams that Flatness names closes it.
func TestFlatnessMends(t *testing.T) {
	for _, miss := range []measure.Angle{-1, -0.3, 0.1, 0.5, 1.2} {
		r := FlatnessRequest{Conventions: ImperialConventions(), Groups: []BladeGroup{{20, 18 + miss}}, Length: 6 * in}
		f, err := Flatness(r)
		require.NoError(t, err)
		r.SeamError, r.Tapering = f.SeamAtWide, true
		f, err = Flatness(r)
		require.NoError(t, err)
		assert.InDelta(t, 0, float64(f.Miss), 1e-4)
	}
}

func TestFlatnessRefuses(t *testing.T) {
	for want, r := range map[string]FlatnessRequest{
		"blades: The number of blades has to be 1 or more. ":                                      {},
		"angle: The angle has to be at least 0.01° and at most 180°. ":                            {Groups: []BladeGroup{{5, 200}}},
		"blade_length: The blade length has to be more than nothing. ":                            {Groups: []BladeGroup{{20, 18}}, SeamError: in, Tapering: true},
		"angle_error: The error of an angle has to be less than 180°. ":                           {Groups: []BladeGroup{{20, 18}}, AngleError: 200},
		"angle_error: With an error of -18° the blades would have 0° each, which makes no ring. ": {Groups: []BladeGroup{{20, 18}}, AngleError: -18},
		"blades: The number of blades can be 1000000 at most. ":                                   {Groups: []BladeGroup{{maxCount, 18}, {maxCount, 18}}},
	} {
		r.Conventions = ImperialConventions()
		_, err := Flatness(r)
		assert.Equal(t, want, refusal(t, err))
	}
}

func BenchmarkWedgeStrips(b *testing.B) {
	r := stripsOf(96, 6*in, 6*in)
	r.Angle, r.Narrow = 18, in
	for b.Loop() {
		if _, err := WedgeStrips(r); err != nil {
			b.Fatal(err)
		}
	}
}
