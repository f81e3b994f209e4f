package measure

import (
	"math"
	"strconv"
)

// System is what a person measures in: it decides how lengths are shown and to
// which step results are rounded, never the sums themselves.
type System uint8

// The two systems. The zero value is Imperial.
const (
	Imperial System = iota // inches and yards
	Metric                 // centimetres and metres
)

// String names the system in lower case.
func (s System) String() string {
	if s == Metric {
		return "metric"
	}
	return "imperial"
}

// glyphs are the fractions that have a character of their own.
var glyphs = map[[2]int64]string{
	{1, 2}: "½", {1, 4}: "¼", {3, 4}: "¾", {1, 8}: "⅛", {3, 8}: "⅜", {5, 8}: "⅝", {7, 8}: "⅞",
	{1, 3}: "⅓", {2, 3}: "⅔",
}

// Fraction writes n/den as a ruler shows it: whole part and reduced fraction,
// "2⅝", "13 13/16", "0", "-1½".
func Fraction(n, den int64) string {
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	whole, rest := n/den, n%den
	if rest == 0 {
		return sign + strconv.FormatInt(whole, 10)
	}
	g := gcd(rest, den)
	rest, den = rest/g, den/g
	if s, ok := glyphs[[2]int64{rest, den}]; ok {
		if whole == 0 {
			return sign + s
		}
		return sign + strconv.FormatInt(whole, 10) + s
	}
	f := strconv.FormatInt(rest, 10) + "/" + strconv.FormatInt(den, 10)
	if whole == 0 {
		return sign + f
	}
	return sign + strconv.FormatInt(whole, 10) + " " + f
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// RulerInches writes the length in inches as a ruler shows it, without the unit:
// exactly where it lies on 1/64 in, else to the nearest 1/16 in.
func (l Length) RulerInches() string {
	const sixtyFourth = Inch / 64
	if !l.IsOn(sixtyFourth) {
		l = l.RoundNearest(Inch / 16)
	}
	return Fraction(int64(l/sixtyFourth), 64)
}

// Show writes the length as a person of the system reads it on a ruler:
// "2⅝ in", or "5.7 cm" to the nearest millimetre.
func (l Length) Show(s System) string {
	if s == Metric {
		return l.centimetres() + " cm"
	}
	return l.RulerInches() + " in"
}

// Long writes the length as Show does, with the unit in full: "2⅝ inches",
// "½ inch", "5.7 centimetres".
func (l Length) Long(s System) string {
	if s == Metric {
		return counted(l.centimetres(), "centimetre", "centimetres", false)
	}
	return counted(l.RulerInches(), "inch", "inches", -Inch < l && l < Inch)
}

// Show writes the cloth as a shop of the system sells it: "1⅝ yd" or "0.6 m".
// Cloth that lies on no eighth of a yard, nor a third, is shown to the nearest
// eighth; metric cloth to the nearest centimetre.
func (c Cloth) Show(s System) string {
	if s == Metric {
		return c.metres() + " m"
	}
	return c.yards() + " yd"
}

// Long writes the cloth as Show does, with the unit in full: "2½ yards",
// "⅝ yard", "0.6 metres".
func (c Cloth) Long(s System) string {
	if s == Metric {
		return counted(c.metres(), "metre", "metres", false)
	}
	return counted(c.yards(), "yard", "yards", -Yard < Length(c) && Length(c) < Yard)
}

// counted writes the amount with the unit in the right number: one and a part of
// one are singular, nought and decimals are plural, "½ yard", "0.5 metres".
func counted(amount, one, many string, isPart bool) string {
	if amount == "1" || amount == "-1" || isPart && amount != "0" {
		return amount + " " + one
	}
	return amount + " " + many
}

func (l Length) centimetres() string {
	return decimal(float64(l.RoundNearest(Millimetre))/float64(Centimetre), 1)
}

func (c Cloth) metres() string {
	return decimal(float64(Length(c).RoundNearest(Centimetre))/float64(Metre), 2)
}

func (c Cloth) yards() string {
	l := Length(c)
	if l.IsOn(Yard/3) && !l.IsOn(Yard) {
		return Fraction(int64(l/(Yard/3)), 3)
	}
	return Fraction(int64(l.RoundNearest(Yard/8)/(Yard/8)), 8)
}

// Show writes the size as "60 x 72 in" or "150 x 200 cm".
func (z Size) Show(s System) string {
	if s == Metric {
		return z.Width.centimetres() + " x " + z.Length.Show(s)
	}
	return z.Width.RulerInches() + " x " + z.Length.Show(s)
}

// Show writes the angle with its sign: "18°", "22½°", "14.4°".
func (a Angle) Show() string {
	if q := float64(a) * 4; q == math.Trunc(q) && math.Abs(q) < 1<<40 {
		return Fraction(int64(q), 4) + "°"
	}
	return decimal(float64(a), 2) + "°"
}

// decimal writes v with at most the given places, one or more, and no trailing
// zeros.
func decimal(v float64, places int) string {
	s := strconv.FormatFloat(v, 'f', places, 64)
	for s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	if s[len(s)-1] == '.' {
		s = s[:len(s)-1]
	}
	if s == "-0" {
		return "0"
	}
	return s
}
