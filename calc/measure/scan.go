package measure

import "unicode/utf8"

// Form says how a number was written, for what the rest of a request must
// decide.
type Form uint8

// The forms of numbers.
const (
	Plain          Form = iota // digits alone, "60"; thousands that can be nothing else, "1,234,567"
	Decimal                    // with a decimal point, "2.5"
	DecimalComma               // with a decimal comma, "2,5"; or a list without blanks, "2,5"
	ThousandsComma             // "1,234": read as thousands, but it could be 1.234
	Slashed                    // a fraction with a slash, "3/4"
	Mixed                      // whole and fraction in digits, or in digits and words, "2 1/2", "2 and a half"
	Glyph                      // with a character for the fraction, "2½"
	Words                      // in words, "two and a half", "half an inch", "a yard"
	One                        // the word "one" without a unit, often no number at all: "which one"
	Compound                   // two quantities that make one, "3 ft 2 in", counted in the smaller unit
	TooBig                     // more than twelve digits; the number is the largest there is
	Unclear                    // no number in any writing, "1.2.2026", "3,4,5", "2/0"; the number is 0
)

// Quantity is a number with its unit, as scanned from running text.
type Quantity struct {
	Number     Number
	Unit       Unit
	Form       Form
	Size       int    // bytes read
	NumberSize int    // bytes of the number alone, before its unit; of the first number in a [Compound]
	UnitText   string // the unit as typed, "" for none, so that a bare word "in" may be doubted
}

// ScanQuantity reads the longest quantity at the very start of s, with no blanks
// before it, and false where none starts there. It takes time proportional to
// what it reads and allocates nothing.
//
// A minus sign counts as one only before a digit; whether it can be a sign there
// is for the caller to say. A quotation mark behind a digit is always inches, an
// apostrophe is feet unless a letter follows: the caller, who knows whether a
// quotation was opened, must not pass on its closing mark.
func ScanQuantity(s string) (Quantity, bool) {
	v, needsUnit, negative := numberAt(s)
	if v.n == 0 {
		return Quantity{}, false
	}
	if m := multiplied(s, v); m.n > v.n {
		v, needsUnit = m, false
	}
	q := Quantity{Number: v.number, Form: v.form, Size: v.n, NumberSize: v.n}
	if unit, from, to := unitBehind(s, v); unit != NoUnit {
		q.Unit, q.UnitText, q.Size = unit, s[from:to], to
		if q.Form == One {
			q.Form = Words
		}
	} else if needsUnit {
		return Quantity{}, false
	}
	q = withMore(s, q)
	if negative {
		q.Number.Num = -q.Number.Num
	}
	return q, true
}

// numberAt reads the number of a quantity.
func numberAt(s string) (v value, needsUnit, negative bool) {
	if s == "" {
		return value{}, false, false
	}
	switch c := s[0]; {
	case isLetter(c):
		if c|0x20 == 'm' {
			return minusAt(s)
		}
		v, needsUnit = spelledAt(s)
		return v, needsUnit, false
	case c == '-' || c >= utf8.RuneSelf:
		if sign := minusSign(s); sign > 0 {
			v, _, _ = numberAt(s[sign:])
			if !startsDigit(s[sign:]) || v.n == 0 {
				return value{}, false, false
			}
			v.n += sign
			return v, false, true
		}
	}
	if !startsDigit(s) {
		return value{}, false, false
	}
	v = digitsAt(s)
	if v.form == Plain && isOrdinalEnding(s[v.n:]) {
		return value{}, false, false
	}
	if v.form == Plain {
		if f, sure := countedAt(s, v); f.n > 0 && sure && unitFollows(s[f.n:]) {
			return f, true, false
		}
	}
	return v, false, false
}

func minusSign(s string) int {
	switch r, w := utf8.DecodeRuneInString(s); r {
	case '-', '−':
		return w
	}
	return 0
}

// minusAt reads "minus two" and "minus 2".
func minusAt(s string) (v value, needsUnit, negative bool) {
	w, n := numeralAt(s)
	switch w.part {
	case power: // "million" starts with m as well
		return cardinalAt(s), false, false
	case minus:
	default:
		return value{}, false, false
	}
	b := blanks(s[n:])
	if b == 0 {
		return value{}, false, false
	}
	n += b
	v, needsUnit, negative = numberAt(s[n:])
	if v.n == 0 || negative {
		return value{}, false, false
	}
	v.n += n
	return v, needsUnit, true
}

// isOrdinalEnding tells whether digits are an ordinal, "1st", or sixteenths
// without their number, "16ths".
func isOrdinalEnding(s string) bool {
	key, n := word(s)
	switch string(key[:n]) {
	case "st", "nd", "rd", "th", "nds", "rds", "ths":
		return true
	}
	return false
}

// multiplied reads on to "dozen", and behind digits to "hundred" and above.
func multiplied(s string, v value) value {
	if v.form >= Compound || isLetter(s[v.n-1]) && v.form != Words && v.form != Mixed && v.form != One {
		return value{}
	}
	at := v.n + blanks(s[v.n:])
	if at == v.n {
		return value{}
	}
	w, n := numeralAt(s[at:])
	if w.part == article && v.number.isProper() {
		at += n
		at += blanks(s[at:])
		if w, n = numeralAt(s[at:]); w.part != dozen {
			return value{}
		}
	}
	switch {
	case w.part == dozen:
	case (w.part == hundred || w.part == power) && (v.form == Plain || v.form == Decimal):
	default:
		return value{}
	}
	number, ok := v.number.times(w.value)
	if !ok {
		return value{tooBig, TooBig, at + n}
	}
	form := v.form
	if form == One {
		form = Words
	}
	return value{number, form, at + n}
}

// unitBehind reads the unit of the number v at the start of s, and gives where
// its text stands.
func unitBehind(s string, v value) (unit Unit, from, to int) {
	rest := s[v.n:]
	lone := isLoneArticle(s[:v.n])
	unit, from, to = unitAt(rest, !isLetter(s[v.n-1]))
	if unit != NoUnit {
		if lone && to-from <= 2 && unit != YardUnit {
			return NoUnit, 0, 0 // "a in", "a m", "an ft" are no quantities
		}
		return unit, v.n + from, v.n + to
	}
	if v.number.isProper() && !lone {
		if n := ofA(rest); n > 0 {
			if unit, from, to = unitAt(rest[n:], false); unit != NoUnit {
				return unit, v.n + n + from, v.n + n + to
			}
		}
	}
	return NoUnit, 0, 0
}

func isLoneArticle(s string) bool { return len(s) <= 2 && s[0]|0x20 == 'a' }

// unitFollows tells whether a fraction that ends before s has a unit.
func unitFollows(s string) bool {
	if unit, _, _ := unitAt(s, false); unit != NoUnit {
		return true
	}
	n := ofA(s)
	if n == 0 {
		return false
	}
	unit, _, _ := unitAt(s[n:], false)
	return unit != NoUnit
}

// ofA takes " of a" or " a", which stand between a fraction and its unit.
func ofA(s string) int {
	n := blanks(s)
	key, w := word(s[n:])
	if n == 0 || w == 0 {
		return 0
	}
	if string(key[:w]) == "of" {
		n += w
		b := blanks(s[n:])
		if b == 0 {
			return 0
		}
		n += b
		key, w = word(s[n:])
	}
	switch string(key[:w]) {
	case "a", "an":
		return n + w
	}
	return 0
}
