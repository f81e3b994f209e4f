package measure

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestNumberOf(t *testing.T) {
	for _, row := range []struct {
		n    Number
		unit Length
		want Length
	}{
		{Number{0, 1}, Inch, 0},
		{Number{5, 8}, Inch, 15_875_000},
		{Number{1, 64}, Inch, 396_875},
		{Number{-5, 2}, Yard, -2_286_000_000},
		{Number{1, 3}, Inch, 8_466_667},      // up from 8 466 666.67
		{Number{2, 3}, Millimetre, 666_667},  // up from 666 666.67
		{Number{1, 2}, Nanometre, 1},         // away from zero at halves
		{Number{-1, 2}, Nanometre, -1},       // on both sides
		{Number{100_000, 1}, Metre, Max},     // the last one
		{Number{-100_000, 1}, Metre, -Max},   // on both sides
		{Number{1, math.MaxInt64}, Metre, 0}, // far below a nanometre
		{Number{math.MaxInt64, math.MaxInt64 - 1}, Metre, Metre},
	} {
		got, err := row.n.Of(row.unit)
		require.NoError(t, err)
		assert.Equal(t, row.want, got, "%v of %d", row.n, row.unit)
	}
}

func TestNumberOfRefusesWhatIsTooLong(t *testing.T) {
	for _, row := range []struct {
		n    Number
		unit Length
	}{
		{Number{100_001, 1}, Metre},
		{Number{int64(Max) + 1, 1}, Nanometre},
		{Number{2*int64(Max) + 1, 2}, Nanometre}, // half a nanometre beyond rounds beyond
		{Number{-100_001, 1}, Metre},
		{Number{math.MaxInt64, 1}, Yard},
		{Number{math.MinInt64, 1}, Yard},
		{Number{math.MaxInt64, 3}, math.MaxInt64},
		{tooBig, Inch},
		{Number{1, 0}, Inch},
		{Number{1, -1}, Inch},
	} {
		_, err := row.n.Of(row.unit)
		assert.ErrorIs(t, err, ErrTooLong, "%v of %d", row.n, row.unit)
	}
}

// TestNumberOfAgreesWithRationals compares with math/big on numbers of all sizes.
func TestNumberOfAgreesWithRationals(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 3))
	half := big.NewRat(1, 2)
	for range 20_000 {
		n := ratio(r.Int64N(1<<r.IntN(62)+1), 1+r.Int64N(1<<r.IntN(62)+1))
		unit := unitLengths[1+r.IntN(6)]
		exact := new(big.Rat).Mul(big.NewRat(n.Num, n.Den), big.NewRat(int64(unit), 1))
		sum := new(big.Rat).Add(exact, half)
		want := new(big.Int).Quo(sum.Num(), sum.Denom())
		got, err := n.Of(unit)
		if want.Cmp(big.NewInt(int64(Max))) > 0 {
			require.ErrorIs(t, err, ErrTooLong)
			continue
		}
		require.NoError(t, err)
		require.Equal(t, want.Int64(), int64(got), "%v of %d", n, unit)
	}
}

func TestNumberFloatAndWhole(t *testing.T) {
	assert.Equal(t, 22.5, Number{45, 2}.Float())
	assert.Equal(t, 14.4, Number{72, 5}.Float())
	w, ok := Number{60, 1}.Whole()
	assert.True(t, ok)
	assert.Equal(t, int64(60), w)
	_, ok = Number{5, 2}.Whole()
	assert.False(t, ok)
}

func TestUnits(t *testing.T) {
	for word, u := range unitWords {
		assert.LessOrEqual(t, len(word), longestWord, word)
		assert.NotEqual(t, NoUnit, u, word)
		if u != DegreeUnit {
			assert.True(t, u.IsLength(), word)
		}
	}
	for u := InchUnit; u <= DegreeUnit; u++ {
		assert.Equal(t, u, unitWords[u.String()], "%s reads back", u)
	}
	assert.Equal(t, "", NoUnit.String())
	assert.False(t, NoUnit.IsLength())
	assert.False(t, DegreeUnit.IsLength())
	assert.False(t, FootUnit.IsMetric())
	assert.False(t, DegreeUnit.IsMetric())
	assert.True(t, MetreUnit.IsMetric())
}

// TestWordsAreLookedUp holds what the scanner takes for granted of its tables:
// words are in lower case, short enough, and none has two meanings.
func TestWordsAreLookedUp(t *testing.T) {
	check := func(w string) {
		key, n := word(w)
		assert.Equal(t, w, string(key[:n]))
	}
	for w := range numerals {
		check(w)
		assert.Zero(t, unitWords[w], w)
		assert.False(t, shapes[w], w)
	}
	for w := range unitWords {
		check(w)
	}
	for w := range shapes {
		check(w)
		assert.Zero(t, unitWords[w], w)
	}
	for w := range joiners {
		check(w)
	}
}
