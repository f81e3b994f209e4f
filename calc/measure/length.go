// Package measure holds exact lengths, the angles of wedges, and the numbers
// that people type for both.
//
// A [Length] counts whole nanometres, so that every whole 1/64 in (396 875 nm)
// and every whole 0.01 mm is exact, and sums of them never drift. Lengths up to
// [Max] are accepted in either direction; what is longer is refused with
// [ErrTooLong] and never wraps. What the package prints, it reads back to the
// same value wherever that value lies on the step it was printed to.
//
// The package does no trade arithmetic; that is package calc's.
package measure

import (
	"errors"
	"math"
)

// Length is a distance in whole nanometres. The zero value is no length at all.
// Lengths are compared with == and added with +; a sum of accepted lengths and
// a product with a count below ten thousand cannot overflow (see [Max]).
type Length int64

// The units of length. 1 in = 25.4 mm exactly since 1959.
// Source: NIST Handbook 44, Appendix C.
const (
	Nanometre  Length = 1
	Millimetre        = 1_000_000 * Nanometre
	Centimetre        = 10 * Millimetre
	Metre             = 1_000 * Millimetre
	Inch              = 25_400_000 * Nanometre
	Foot              = 12 * Inch
	Yard              = 36 * Inch
)

// Max is the longest length that is accepted from anybody: a hundred
// kilometres, far beyond any cloth, and small enough that ten thousand times
// as much still fits the type.
const Max = 100_000 * Metre

// ErrTooLong is given for lengths beyond [Max], in either direction.
var ErrTooLong = errors.New("longer than any fabric")

// FromFloat gives v of the unit, to the nearest nanometre. It refuses what is
// not a number and what lies beyond [Max].
func FromFloat(v float64, unit Length) (Length, error) {
	n := v * float64(unit)
	if math.IsNaN(n) || math.Abs(n) > float64(Max) {
		return 0, ErrTooLong
	}
	return Length(math.Round(n)), nil
}

// Inches gives v inches to the nearest nanometre, for results of geometry that
// are known to be in range. Values beyond the type's range become its ends.
func Inches(v float64) Length {
	n := math.Round(v * float64(Inch))
	switch {
	case n >= math.MaxInt64:
		return math.MaxInt64
	case n <= math.MinInt64:
		return math.MinInt64
	}
	return Length(n)
}

// Add gives a + b, or [ErrTooLong] where the sum lies beyond [Max].
func Add(a, b Length) (Length, error) {
	if s := a + b; a <= Max && a >= -Max && b <= Max && b >= -Max && s <= Max && s >= -Max {
		return s, nil
	}
	return 0, ErrTooLong
}

// Times gives n × l, or [ErrTooLong] where the product lies beyond [Max].
func (l Length) Times(n int64) (Length, error) {
	if l == 0 || n == 0 {
		return 0, nil
	}
	p := int64(l) * n
	if p/n != int64(l) || p > int64(Max) || p < -int64(Max) {
		return 0, ErrTooLong
	}
	return Length(p), nil
}

// In gives the length counted in the unit. The result is the nearest float64;
// it is exact for lengths on a binary fraction of the unit.
func (l Length) In(unit Length) float64 { return float64(l) / float64(unit) }

// Inches gives the length in inches, see [Length.In].
func (l Length) Inches() float64 { return l.In(Inch) }

// RoundUp gives the smallest multiple of step that is not below l.
func (l Length) RoundUp(step Length) Length { return -(-l).RoundDown(step) }

// RoundDown gives the largest multiple of step that is not above l.
func (l Length) RoundDown(step Length) Length {
	r := l % step
	if r < 0 {
		r += step
	}
	return l - r
}

// RoundNearest gives the multiple of step nearest to l, the upper one at halves.
func (l Length) RoundNearest(step Length) Length { return (l + step/2).RoundDown(step) }

// IsOn tells whether l is a whole multiple of step.
func (l Length) IsOn(step Length) bool { return l%step == 0 }

// Cloth is a length of fabric off the bolt. It is a type of its own because
// shops sell it in eighths of a yard or tenths of a metre and not in inches.
type Cloth Length

// Size is a width and a length, in the order in which a person gives them.
type Size struct{ Width, Length Length }

// Angle is an angle in degrees.
type Angle float64

// Radians gives the angle in radians, for the functions of package math.
func (a Angle) Radians() float64 { return float64(a) * math.Pi / 180 }
