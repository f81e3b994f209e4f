package calc

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

const (
	in = measure.Inch
	mm = measure.Millimetre
)

// ringOf gives a request with the shop's defaults.
func ringOf(blades int, length, narrow measure.Length) RingRequest {
	return RingRequest{Conventions: ImperialConventions(), Blades: blades, Length: length, Narrow: narrow,
		Turning: DefaultCoverTurning, Overlap: DefaultCoverOverlap, Margin: DefaultRingMargin}
}

// The example that the shop's way of speaking was written around, worked out
// by hand there: ring of 16 blades, 6 in long, narrow end ⅞ in.
func TestRingOfSixteenBlades(t *testing.T) {
	r, err := Ring(ringOf(16, 6*in, DefaultNarrowEnd))
	require.NoError(t, err)
	assert.Equal(t, "13 13/16", r.RingAcross.RulerInches())
	assert.Equal(t, "1 13/16", r.OpeningAcross.RulerInches())
	assert.Equal(t, "2½", r.CoverCircle.RulerInches())
	assert.Equal(t, "3", r.CoverCut.RulerInches())
	assert.Equal(t, "18½", r.BackgroundSquare.RulerInches())
	assert.Equal(t, "3¼", r.WideEnd.RulerInches())
	assert.Equal(t, "⅞", r.NarrowEnd.RulerInches())
	assert.Equal(t, measure.Angle(22.5), r.Angle)
	assert.Equal(t, Section{4, 4, 90}, r.Sections[0])
	assert.Equal(t, []string{
		"360° ÷ 16 = 22½°",
		"Wide end: ⅞ in + 2 × 6 in × tan(11¼°) = 3.262 in, which is 3¼ in to the nearest mark",
		"The cut edges would meet ⅞ in ÷ (2 × tan(11¼°)) = 2.199 in beyond the narrow end.",
		"The seams bring every radius in by ¼ in ÷ sin(11¼°) = 1.281 in.",
		"Across: 2 × (2.199 in + 6 in − 1.281 in) = 13.836 in, which is 13 13/16 in to the nearest mark",
		"Opening: 2 × (2.199 in − 1.281 in) = 1.836 in, which is 1 13/16 in to the nearest mark",
		"To its corners: 1.836 in ÷ cos(11¼°) = 1.872 in",
		"Cover circle: 1.872 in + 2 × ¼ in of overlap = 2.372 in, up to 2½ in",
		"Cut it 2½ in + 2 × ¼ in = 3 in",
		"Background: 13 13/16 in, 2 × 2 in of margin and two seams of ¼ in, up to 18½ x 18½ in",
	}, saidAll(r.Working))
}

// Folded and rounded ends tell where they part. With 16 blades of 22½° and
// 6.668 in to the tip: 13.336 ÷ (0.98079 + 0.19509) = 11.341, and
// 6.668 × 0.19891 ÷ 1.19891 = 1.106.
func TestRingEnds(t *testing.T) {
	r := ringOf(16, 6*in, DefaultNarrowEnd)
	r.End = FoldedEnd
	folded, err := Ring(r)
	require.NoError(t, err)
	assert.Contains(t, saidAll(folded.Working),
		"In the valleys between the tips: 13.336 in ÷ (cos(11¼°) + sin(11¼°)) = 11.341 in across; a tip stands 1.106 in beyond its shoulders.")
	r.End = RoundedEnd
	rounded, err := Ring(r)
	require.NoError(t, err)
	assert.Contains(t, saidAll(rounded.Working),
		"Each end is an arc with a radius of 6.668 in × sin(11¼°) ÷ (1 + sin(11¼°)) = 1.089 in; in the valleys between them it is 10.945 in across.")
	assert.Equal(t, folded.RingAcross, rounded.RingAcross, "one loses a seam, the other as deep a turning")
}

// The blade is worked out from whatever sizes are given, and all ways lead to
// the same ring.
func TestRingBackwards(t *testing.T) {
	for _, end := range []BladeEnd{PlainEnd, FoldedEnd, RoundedEnd, TurnedEnd} {
		forward := ringOf(20, 6*in, in)
		forward.End = end
		want, err := Ring(forward)
		require.NoError(t, err)
		for name, change := range map[string]func(*RingRequest){
			"ring across": func(r *RingRequest) { r.Length, r.Across = 0, 2*want.Exact.OuterRadius },
			"opening":     func(r *RingRequest) { r.Narrow, r.Opening = 0, 2*want.Exact.OpeningRadius },
			"both": func(r *RingRequest) {
				r.Length, r.Narrow, r.Across, r.Opening = 0, 0, 2*want.Exact.OuterRadius, 2*want.Exact.OpeningRadius
			},
			"wide end":      func(r *RingRequest) { r.Narrow, r.Wide = 0, want.Exact.WideEnd },
			"widths alone":  func(r *RingRequest) { r.Length, r.Wide = 0, want.Exact.WideEnd },
			"everything":    func(r *RingRequest) { r.Wide = want.WideEnd },
			"angle alone":   func(r *RingRequest) { r.Blades, r.Angle = 0, 18 },
			"rounded angle": func(r *RingRequest) { r.Angle = 18.01 },
		} {
			back := forward
			change(&back)
			got, err := Ring(back)
			require.NoError(t, err, name)
			for _, l := range [][2]measure.Length{
				{want.Exact.BladeLength, got.Exact.BladeLength}, {want.Exact.NarrowEnd, got.Exact.NarrowEnd},
				{want.Exact.WideEnd, got.Exact.WideEnd}, {want.Exact.OuterRadius, got.Exact.OuterRadius},
			} {
				assert.InDelta(t, float64(l[0]), float64(l[1]), 20, "%s, end %d", name, end)
			}
			assert.Equal(t, want.CoverCircle, got.CoverCircle, name)
		}
	}
}

// What a person gave stays as it was given, whatever the step of templates.
func TestRingKeepsWhatWasGiven(t *testing.T) {
	r, err := Ring(ringOf(20, 193*in/32, 29*in/32))
	require.NoError(t, err)
	assert.Equal(t, "6 1/32", r.BladeLength.RulerInches())
	assert.Equal(t, "29/32", r.NarrowEnd.RulerInches())
}

func TestRingInCentimetres(t *testing.T) {
	r := ringOf(16, 15*measure.Centimetre, 25*mm)
	r.Conventions = MetricConventions()
	got, err := Ring(r)
	require.NoError(t, err)
	assert.Equal(t, 361*mm, got.RingAcross)
	assert.Equal(t, 61*mm, got.OpeningAcross)
	assert.Equal(t, 85*mm, got.WideEnd)
	assert.Equal(t, 75*mm, got.CoverCircle)
	assert.Equal(t, 88*mm, got.CoverCut)
	assert.Equal(t, 48*measure.Centimetre, got.BackgroundSquare)
}

// Widths measured with a ruler may be off by a mark; what they would do to a
// ring is told.
func TestRingTellsOfRoundedWidths(t *testing.T) {
	r := ringOf(20, 17*in/4, in)
	r.Wide = 19 * in / 8
	got, err := Ring(r)
	require.NoError(t, err)
	assert.InDelta(t, 7.55, float64(got.WidthsMiss), 0.01)
	assert.Contains(t, saidAll(got.Working), "Cut by the angle: 20 blades cut to these widths would be off by 7.55°.")
}

func TestRingRefuses(t *testing.T) {
	for want, change := range map[string]func(*RingRequest){
		"narrow_end: The two seams take ½ in off the narrow end, so at ½ in the opening closes up. It works from a narrow end of 9/16 in.":                                                       func(r *RingRequest) { r.Blades, r.Narrow = 30, in/2 },
		"blade_length: Blades of 22½° that are 6 in long are 3¼ in at the wide end, too wide for a strip of 2½ in. From that strip they can be 4 in long; for 6 in the strip has to be 3¼ in.":   func(r *RingRequest) { r.Strip = 5 * in / 2 },
		"blade_length: A blade of ¼ in is too short for its outer end. It works from 7/16 in.":                                                                                                   func(r *RingRequest) { r.End, r.Length = FoldedEnd, in/4 },
		"ring_across: A ring of 16 blades with a narrow end of ⅞ in has an opening of 1 13/16 in, so it cannot be 1 in across. ":                                                                 func(r *RingRequest) { r.Length, r.Across = 0, in },
		"blade_length: Blades of 22½° with a wide end of 2 in come to a point before they are 6 in long. They can be 3⅝ in long at most.":                                                        func(r *RingRequest) { r.Narrow, r.Wide = 0, 2*in },
		"wide_end: Blades 6 in long with ends of ⅞ in and 4 in have 29.19° each, which makes 467.09° with 16 of them. A wide end of 3¼ in closes 360°.":                                          func(r *RingRequest) { r.Wide = 4 * in },
		"wide_end: Blades of 22½° with a wide end of ¼ in come to a point before they are 6 in long. ":                                                                                           func(r *RingRequest) { r.Narrow, r.Wide = 0, in/4 },
		"wide_end: The wide end, ¾ in, has to be wider than the narrow end, ⅞ in. ":                                                                                                              func(r *RingRequest) { r.Length, r.Wide = 0, 3*in/4 },
		"blades: 14 blades of 25° make 350°, 10° short of 360°; it would stay open, or cup if it were pulled together. No number of blades of 25° closes it. For 14 blades the angle is 25.71°.": func(r *RingRequest) { r.Blades, r.Angle = 0, 25 },
		"blades: A ring of 1000000 blades would be more than 39370 1/16 in across. ":                                                                                                             func(r *RingRequest) { r.Blades = maxCount },
		"blade_length: The blade length has to be more than nothing. ":                                                                                                                           func(r *RingRequest) { r.Length = 0 },
		"blade_length: The blade length cannot be less than nothing. ":                                                                                                                           func(r *RingRequest) { r.Length = -in },
		"narrow_end: The narrow end has to be more than nothing. ":                                                                                                                               func(r *RingRequest) { r.Narrow = 0 },
		"margin: The margin can be 39370 1/16 in at most. ":                                                                                                                                      func(r *RingRequest) { r.Margin = 2 * maxLength },
		"usable_width: The usable width has to be more than nothing. ":                                                                                                                           func(r *RingRequest) { r.UsableWidth = 0 },
		"end: A blade's end is plain, folded, rounded or turned under. ":                                                                                                                         func(r *RingRequest) { r.End = 9 },
	} {
		r := ringOf(16, 6*in, DefaultNarrowEnd)
		change(&r)
		_, err := Ring(r)
		assert.Equal(t, want, refusal(t, err))
	}
}

// The nearest that is named does work, and a step less does not.
func TestRingLimitsAreTrue(t *testing.T) {
	for blades := 5; blades <= 60; blades++ {
		r := ringOf(blades, 6*in, in/4)
		_, err := Ring(r)
		var l *LimitError
		require.ErrorAs(t, err, &l)
		works := l.Works.Args[0].(measure.Length)
		r.Narrow = works
		_, err = Ring(r)
		assert.NoError(t, err, "%d blades from %v", blades, works)
		r.Narrow = works - r.TemplateStep
		_, err = Ring(r)
		assert.Error(t, err)

		for _, end := range []BladeEnd{FoldedEnd, RoundedEnd} {
			r.Narrow, r.End, r.Length = works+in/2, end, in/8
			_, err = Ring(r)
			require.ErrorAs(t, err, &l)
			r.Length = l.Works.Args[0].(measure.Length)
			short, err := Ring(r)
			require.NoError(t, err, "%d blades of %v", blades, r.Length)
			o := short.Blade().Sewn
			assert.GreaterOrEqual(t, o[2].Y, o[1].Y, "the shoulders lie beyond the narrow end")
			r.Length -= r.TemplateStep
			_, err = Ring(r)
			assert.Error(t, err)
		}
	}
}

// A ring sewn on a background by a margin: the margin is there on all sides.
func TestRingBackground(t *testing.T) {
	for _, c := range []struct {
		turn       measure.Angle
		blades     int
		wide, high string
	}{ // a radius of 6.918 in on the centre line, 7.054 in to the corners; 4½ in of margins and seams
		{FullTurn, 16, "18½", "18½"},
		{270, 12, "19", "19"}, // 2 × 7.054 both ways
		{HalfTurn, 8, "19", "12"},
		{135, 6, "17", "12"},
		{QuarterTurn, 4, "12", "12"},
		{45, 2, "12", "9½"},
	} {
		r := ringOf(c.blades, 6*in, DefaultNarrowEnd)
		r.Turn = c.turn
		got, err := Ring(r)
		require.NoError(t, err)
		assert.Equal(t, c.wide, got.Background.Width.RulerInches(), "%v", c.turn)
		assert.Equal(t, c.high, got.Background.Length.RulerInches(), "%v", c.turn)
	}
}

func TestNestedRings(t *testing.T) {
	inner := ringOf(16, 4*in, in)
	inner.End = FoldedEnd
	outer := ringOf(24, 5*in, 0)
	n, err := NestedRings(NestedRingsRequest{Inner: inner, Outer: outer, Overlap: in / 4})
	require.NoError(t, err)
	assert.True(t, n.Covers)
	assert.InDelta(t, 0.25, n.Overlap.Inches(), 1e-6, "the narrowest end that still lies under")
	assert.Equal(t, 16, n.Inner.Blades)
	assert.Equal(t, 24, n.Outer.Blades)

	outer.Narrow = n.Outer.NarrowEnd + in/4 // a wider opening shows a gap
	n, err = NestedRings(NestedRingsRequest{Inner: inner, Outer: outer, Overlap: in / 4})
	require.NoError(t, err)
	assert.False(t, n.Covers)
	assert.Less(t, n.Overlap, measure.Length(0))

	outer.Narrow = 0
	_, err = NestedRings(NestedRingsRequest{Inner: inner, Outer: outer, Overlap: 9 * in})
	assert.Equal(t, "overlap: The inner ring reaches only 4¼ in from the middle, which leaves no overlap of 9 in. ", refusal(t, err))
}

func BenchmarkRing(b *testing.B) {
	r := ringOf(16, 6*in, DefaultNarrowEnd)
	for b.Loop() {
		if _, err := Ring(r); err != nil {
			b.Fatal(err)
		}
	}
}
