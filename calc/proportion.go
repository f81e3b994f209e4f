package calc

import (
	"math"
	"math/bits"
)

// mulDiv is a·b/c for numbers of nothing or more, c above nothing, and what is
// left of the division, without loss in between. Quotients beyond the range
// become its end.
func mulDiv[N ~int64](a, b, c N) (quotient, rest N) {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi >= uint64(c) {
		return math.MaxInt64, 0
	}
	q, r := bits.Div64(hi, lo, uint64(c))
	if q > math.MaxInt64 {
		return math.MaxInt64, 0
	}
	return N(q), N(r)
}

// mulDivDown is a·b/c rounded down.
func mulDivDown[N ~int64](a, b, c N) N {
	q, _ := mulDiv(a, b, c)
	return q
}

// mulDivUp is a·b/c rounded up.
func mulDivUp[N ~int64](a, b, c N) N {
	q, r := mulDiv(a, b, c)
	if r > 0 {
		q++
	}
	return q
}

// mulDivNearest is a·b/c to the nearest whole number, halves up.
func mulDivNearest[N ~int64](a, b, c N) N {
	q, r := mulDiv(a, b, c)
	if r >= c-r {
		q++
	}
	return q
}

// hundredths gives a percentage in hundredths of a percent, the finest that is
// reckoned with.
func hundredths(percent float64) int64 { return int64(math.Round(percent * 100)) }

// hundred is a hundred percent in hundredths of one.
const hundred = 100 * 100
