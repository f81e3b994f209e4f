package measure

import (
	"math"
	"math/bits"
)

// Number is an exact rational number as a person gave it, in lowest terms with
// Den > 0, so that numbers are compared with ==. The zero value is no number.
type Number struct{ Num, Den int64 }

// ratio gives num/den in lowest terms; num >= 0 and den > 0.
func ratio(num, den int64) Number {
	g := gcd(num, den)
	return Number{num / g, den / g}
}

// Float gives the number as a float64: the nearest one where numerator and
// denominator lie below 2^53, else within two units of its last place.
func (n Number) Float() float64 { return float64(n.Num) / float64(n.Den) }

// Whole gives the number as an integer, and whether it is one.
func (n Number) Whole() (int64, bool) { return n.Num, n.Den == 1 }

// Of gives that many of the unit: exactly where the result is a whole number of
// nanometres, else the nearest one, away from zero at halves. Beyond [Max] it
// gives [ErrTooLong].
func (n Number) Of(unit Length) (Length, error) {
	if n.Den <= 0 || n.Num < -math.MaxInt64 || unit < 0 {
		return 0, ErrTooLong
	}
	num := n.Num
	if num < 0 {
		num = -num
	}
	hi, lo := bits.Mul64(uint64(num), uint64(unit))
	if hi >= uint64(n.Den) {
		return 0, ErrTooLong
	}
	q, r := bits.Div64(hi, lo, uint64(n.Den))
	if r >= uint64(n.Den)-r {
		q++
	}
	if q > uint64(Max) {
		return 0, ErrTooLong
	}
	if n.Num < 0 {
		return -Length(q), nil
	}
	return Length(q), nil
}

// largest is the greatest whole number that is read as itself: twelve digits.
// What is beyond is [TooBig].
const largest = 999_999_999_999

// plus gives n + m for the small numbers that follow a larger unit or a whole
// number; its callers see to it that the products fit.
func (n Number) plus(m Number) Number { return ratio(n.Num*m.Den+m.Num*n.Den, n.Den*m.Den) }

// times gives n × k, neither below 0, and whether it is still within twelve
// digits.
func (n Number) times(k int64) (Number, bool) {
	hi, lo := bits.Mul64(uint64(n.Num), uint64(k))
	if hi != 0 || lo > math.MaxInt64 || lo/uint64(n.Den) > largest {
		return Number{}, false
	}
	return ratio(n.Num*k, n.Den), true
}

// isProper tells whether the number lies between 0 and 1, both excluded.
func (n Number) isProper() bool { return 0 < n.Num && n.Num < n.Den }
