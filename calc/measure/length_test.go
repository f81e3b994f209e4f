package measure

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWholeStepsAreExact(t *testing.T) {
	assert.Equal(t, Length(396_875), Inch/64)
	assert.Zero(t, Inch%64)
	assert.Equal(t, Length(10_000), Millimetre/100)
	// Sums do not drift: 7 strips of 40 in cover 280 in, a hundred 64ths of an
	// inch a hundred times over are what they are.
	var sum Length
	for range 10_000 {
		sum += Inch / 64
	}
	assert.Equal(t, 156*Inch+Inch/4, sum)
}

func TestRounding(t *testing.T) {
	for _, row := range []struct{ l, step, up, down, nearest Length }{
		{0, 8, 0, 0, 0},
		{1, 8, 8, 0, 0},
		{3, 8, 8, 0, 0},
		{4, 8, 8, 0, 8}, // the upper one at halves
		{5, 8, 8, 0, 8},
		{8, 8, 8, 8, 8},
		{9, 8, 16, 8, 8},
		{-1, 8, 0, -8, 0},
		{-4, 8, 0, -8, 0}, // the upper one at halves below zero too
		{-5, 8, 0, -8, -8},
		{-8, 8, -8, -8, -8},
		{-9, 8, -8, -16, -8},
		{4, 9, 9, 0, 0}, // odd steps have no half
		{5, 9, 9, 0, 9},
		{Max, Inch / 8, 3_937_007*Inch + Inch*7/8, 3_937_007*Inch + Inch*6/8, 3_937_007*Inch + Inch*7/8},
	} {
		assert.Equal(t, row.up, row.l.RoundUp(row.step), "%d up to %d", row.l, row.step)
		assert.Equal(t, row.down, row.l.RoundDown(row.step), "%d down to %d", row.l, row.step)
		assert.Equal(t, row.nearest, row.l.RoundNearest(row.step), "%d to %d", row.l, row.step)
		assert.Equal(t, row.l == row.up, row.l.IsOn(row.step))
	}
}

func TestTooLongIsRefused(t *testing.T) {
	for name, f := range map[string]func() (Length, error){
		"sum":              func() (Length, error) { return Add(Max, 1) },
		"sum below":        func() (Length, error) { return Add(-Max, -1) },
		"sum of wrapping":  func() (Length, error) { return Add(math.MaxInt64, math.MaxInt64) },
		"sum that cancels": func() (Length, error) { return Add(math.MaxInt64, math.MinInt64+1) },
		"product":          func() (Length, error) { return Max.Times(2) },
		"product below":    func() (Length, error) { return Max.Times(-2) },
		"product wrapping": func() (Length, error) { return Inch.Times(math.MaxInt64) },
		"lowest times -1":  func() (Length, error) { return Length(math.MinInt64).Times(-1) },
		"-1 times lowest":  func() (Length, error) { return Length(-1).Times(math.MinInt64) },
		"float":            func() (Length, error) { return FromFloat(1e12, Inch) },
		"infinity":         func() (Length, error) { return FromFloat(math.Inf(1), Inch) },
		"no number":        func() (Length, error) { return FromFloat(math.NaN(), Inch) },
	} {
		got, err := f()
		assert.ErrorIs(t, err, ErrTooLong, name)
		assert.Zero(t, got, name)
	}
	l, err := FromFloat(2.5, Inch)
	assert.NoError(t, err)
	assert.Equal(t, 63_500_000*Nanometre, l)
	l, err = Inch.Times(0)
	assert.NoError(t, err)
	assert.Zero(t, l)
	l, err = Max.Times(1)
	assert.NoError(t, err)
	assert.Equal(t, Max, l)
	l, err = Add(Max-Inch, Inch)
	assert.NoError(t, err)
	assert.Equal(t, Max, l)
	assert.Equal(t, 2.5, Inches(2.5).Inches())
	assert.Equal(t, Length(math.MaxInt64), Inches(1e300))
	assert.Equal(t, Length(math.MinInt64), Inches(-1e300))
	// What the type's comment says of products with counts.
	assert.Positive(t, int64(Max)*10_000)
}

// TestUnitChecks compares with the rows about units and rounding of
// testdata/checks.csv, each of which names its source. Published values that are
// wrong in print, published_in, are not expected.
func TestUnitChecks(t *testing.T) {
	f, err := os.Open("../../testdata/checks.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	compared := 0
	for _, row := range rows[1:] {
		id, topic, in, want, tolerance, source := row[0], row[1], row[2], row[3], row[4], row[5]
		if topic != "a.units" && topic != "a.rounding" {
			continue
		}
		t.Run(id, func(t *testing.T) {
			_, given, _ := strings.Cut(in, "=")
			within, err := strconv.ParseFloat(tolerance, 64)
			require.NoError(t, err)
			for _, pair := range strings.Split(want, "; ") {
				name, expected, _ := strings.Cut(pair, "=")
				if name == "convention" || strings.HasPrefix(name, "published_") {
					continue
				}
				compareUnits(t, given, name, expected, within, source)
				compared++
			}
		})
	}
	assert.GreaterOrEqual(t, compared, 100, "values compared")
}

// compareUnits compares one value of a row, within its tolerance and the last
// digit of its float64.
func compareUnits(t *testing.T, given, name, expected string, within float64, source string) {
	if area, ok := strings.CutSuffix(given, " yd2"); ok {
		compareArea(t, area, name, expected, within, source)
		return
	}
	l, err := ParseLength(given, NoUnit)
	require.NoError(t, err)
	switch name {
	case "up_eighth":
		l = l.RoundUp(Inch / 8)
	case "near_eighth":
		l = l.RoundNearest(Inch / 8)
	case "up_sixteenth":
		l = l.RoundUp(Inch / 16)
	case "near_sixteenth":
		l = l.RoundNearest(Inch / 16)
	case "yards_up_eighth":
		l = l.RoundUp(Yard / 8)
	case "cut": // what is cut when yards_up_eighth is bought
		l = l.RoundUp(Yard / 8)
	case "cm_up5":
		l = l.RoundUp(5 * Centimetre)
	case "m_up_tenth":
		l = l.RoundUp(Metre / 10)
	case "mm", "cm", "m", "in", "ft", "yd": // the same length in another unit
	default:
		t.Fatalf("no way to compare %s", name)
	}
	value, unitName, _ := strings.Cut(expected, " ")
	want, err := strconv.ParseFloat(value, 64)
	require.NoError(t, err)
	unit := unitWords[unitName]
	require.True(t, unit.IsLength(), expected)
	assert.InDelta(t, want, l.In(unit.Length()), within+1e-12, "%s of %s, %s", name, given, source)
}

// compareArea compares an area with the product of the lengths.
func compareArea(t *testing.T, yards, name, expected string, within float64, source string) {
	n, err := strconv.ParseFloat(yards, 64)
	require.NoError(t, err)
	unit := unitWords[strings.TrimSuffix(name, "2")].Length()
	value, _, _ := strings.Cut(expected, " ")
	want, err := strconv.ParseFloat(value, 64)
	require.NoError(t, err)
	assert.InDelta(t, want, n*Yard.In(unit)*Yard.In(unit), within, "%s, %s", name, source)
}
