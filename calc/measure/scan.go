package measure

import "strings"

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
	sign := signAt(s)
	q, ok := scanUnsigned(s[sign:])
	if !ok || sign == 0 {
		return q, ok
	}
	q.Number.Num = -q.Number.Num
	q.Size += sign
	q.NumberSize += sign
	return q, true
}

// signAt takes a minus sign before a digit, or "minus" in words.
func signAt(s string) int {
	if n := minusSign(s); n > 0 {
		if startsDigit(s[n:]) {
			return n
		}
		return 0
	}
	if s == "" || s[0]|0x20 != 'm' {
		return 0
	}
	w, n := numeralAt(s)
	if w.part != minus {
		return 0
	}
	return n + blanks(s[n:])
}

func minusSign(s string) int {
	if s != "" && s[0] == '-' {
		return 1
	}
	if strings.HasPrefix(s, "−") {
		return len("−")
	}
	return 0
}

func scanUnsigned(s string) (Quantity, bool) {
	v := numberAt(s)
	if v.n == 0 {
		return Quantity{}, false
	}
	v = multiplied(s, v)
	q := Quantity{Number: v.number, Form: v.form, Size: v.n, NumberSize: v.n}
	unit, from, to := unitBehind(s, v)
	switch {
	case unit != NoUnit:
		q.Unit, q.UnitText, q.Size = unit, s[from:to], to
		if q.Form == One {
			q.Form = Words
		}
	case v.needsUnit:
		return Quantity{}, false
	}
	return withMore(s, q), true
}

// numberAt reads the number of a quantity, without a sign.
func numberAt(s string) value {
	if s != "" && isLetter(s[0]) {
		if w, _ := numeralAt(s); w.part == noPart {
			return value{} // nearly every word of a text
		}
		return spelledAt(s)
	}
	if !startsDigit(s) {
		return value{}
	}
	v := digitsAt(s)
	if v.form != Plain {
		return v
	}
	if isOrdinalEnding(s[v.n:]) {
		return value{}
	}
	if f := countedAt(s, v); f.n > 0 && unitFollows(s[f.n:]) > 0 {
		return f
	}
	return v
}

// isOrdinalEnding tells whether digits are an ordinal, "1st", or sixteenths
// without their number, "16ths".
func isOrdinalEnding(s string) bool {
	return oneOf(s, "st", "nd", "rd", "th", "nds", "rds", "ths") > 0
}

// multiplied reads on from a number to "dozen", and from digits to "hundred" and
// above.
func multiplied(s string, v value) value {
	at := v.n + blanks(s[v.n:])
	if at == v.n || v.form >= Compound {
		return v
	}
	w, n := numeralAt(s[at:])
	if w.part == article && v.number.isProper() { // "half a dozen"
		at += n + blanks(s[at+n:])
		if w, n = numeralAt(s[at:]); w.part != dozen {
			return v
		}
	}
	inDigits := v.form == Plain || v.form == Decimal
	if w.part != dozen && !(inDigits && (w.part == hundred || w.part == power)) {
		return v
	}
	number, ok := v.number.times(w.value)
	if !ok {
		return tooBigAt(at + n)
	}
	form := v.form
	if form == One {
		form = Words
	}
	return value{number: number, form: form, n: at + n}
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
	if v.number.Den > 1 || v.shares {
		if n, of := ofA(rest); n > 0 && (of || v.number.isProper()) {
			if unit, from, to = unitAt(rest[n:], false); unit != NoUnit {
				return unit, v.n + n + from, v.n + n + to
			}
		}
	}
	return NoUnit, 0, 0
}

func isLoneArticle(s string) bool { return len(s) <= 2 && s[0]|0x20 == 'a' }

// unitFollows takes the unit of a fraction in words that ends before s.
func unitFollows(s string) int {
	if _, _, to := unitAt(s, false); to > 0 {
		return to
	}
	if n, _ := ofA(s); n > 0 {
		if _, _, to := unitAt(s[n:], false); to > 0 {
			return n + to
		}
	}
	return 0
}

// ofA takes " of a" or " a", which stand between a fraction and its unit, and
// tells whether "of" was there.
func ofA(s string) (n int, of bool) {
	b := blanks(s)
	if b == 0 {
		return 0, false
	}
	n = b
	if w := oneOf(s[n:], "of"); w > 0 {
		of = true
		n += w
		if b = blanks(s[n:]); b == 0 {
			return 0, false
		}
		n += b
	}
	if w, width := numeralAt(s[n:]); w.part == article {
		return n + width, of
	}
	return 0, false
}
