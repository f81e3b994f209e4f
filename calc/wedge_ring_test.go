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
}
