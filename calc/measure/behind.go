package measure

import "unicode/utf8"

// unitAt reads a unit behind a number that ends before s, a digit or a word. Its
// text stands at s[from:to].
func unitAt(s string, afterDigit bool) (unit Unit, from, to int) {
	if s == "" {
		return NoUnit, 0, 0
	}
	if unit, to = markAt(s); unit != NoUnit && (afterDigit || unit != FootUnit) {
		return unit, 0, to // behind a word an apostrophe is the end of a quotation and no foot
	}
	from = gap(s)
	hyphen := s[0] == '-'
	if from == 0 && !afterDigit {
		return NoUnit, 0, 0
	}
	if from > 0 && !hyphen && afterDigit {
		if unit, to = spacedMarkAt(s[from:]); unit != NoUnit {
			return unit, from, from + to
		}
	}
	unit, to = unitWordAt(s[from:])
	switch {
	case to == 1 && (!afterDigit || from > 1 || hyphen):
		return NoUnit, 0, 0 // a lone m only right behind digits
	case hyphen && to == 2 && isNumberOfPurposes(s[from+to:]):
		return NoUnit, 0, 0
	case to == 0:
		return NoUnit, 0, 0
	}
	return unit, from, from + to
}

// isNumberOfPurposes tells whether "in" in front of s belongs to "3-in-1".
func isNumberOfPurposes(s string) bool {
	return len(s) > 1 && s[0] == '-' && (isDigit(s[1]) || oneOf(s[1:], "one") > 0)
}

// markAt reads one of [unitMarks].
func markAt(s string) (Unit, int) {
	if c := s[0]; c != '"' && c != '\'' && c < utf8.RuneSelf {
		return NoUnit, 0
	}
	for _, m := range unitMarks {
		if len(s) >= len(m.text) && s[:len(m.text)] == m.text {
			n := len(m.text)
			if m.unit == FootUnit && !endsFeet(s[n:]) {
				return NoUnit, 0
			}
			return m.unit, n
		}
	}
	return NoUnit, 0
}

// endsFeet tells whether an apostrophe before s can mean feet: no letter follows,
// unless it is the x of a size.
func endsFeet(s string) bool {
	if s == "" || isDigit(s[0]) || isTimes(s) {
		return true
	}
	return atBoundary(s)
}

// spacedMarkAt reads a mark that stands apart from its digit, where it cannot be
// the opening of a quotation.
func spacedMarkAt(s string) (Unit, int) {
	if s == "" {
		return NoUnit, 0
	}
	unit, n := markAt(s)
	if unit == DegreeUnit || unit != NoUnit && (n == len(s) || blank(s[n:]) > 0 || isTimes(s[n:])) {
		return unit, n
	}
	return NoUnit, 0
}

// unitWordAt reads a word of [unitWords] with the full stop of an abbreviation.
// Behind it may stand a digit, "72in2.5", and the x of a size, "60inx72".
func unitWordAt(s string) (Unit, int) {
	n := letters(s)
	if n > 1 && s[n-1]|0x20 == 'x' && isTimes(s[n-1:]) {
		n--
	} else if n < len(s) && !isDigit(s[n]) && !atBoundary(s[n:]) {
		return NoUnit, 0
	}
	if n == 0 || n > longestWord {
		return NoUnit, 0
	}
	var key [longestWord]byte
	lower(&key, s[:n])
	unit := unitWords[string(key[:n])]
	if unit == NoUnit || isRaised(s[n:]) {
		return NoUnit, 0
	}
	if n <= 4 && n < len(s) && s[n] == '.' && !startsDigit(s[n:]) {
		n++
	}
	return unit, n
}

// isRaised tells whether the unit before s is squared or cubed: an area is no
// length.
func isRaised(s string) bool {
	r, _ := utf8.DecodeRuneInString(s)
	return r == '²' || r == '³' || r == '^'
}

// withMore reads on behind a quantity with a unit: "and a half", and the smaller
// units of a [Compound].
func withMore(s string, q Quantity) Quantity {
	if _, whole := q.Number.Whole(); !whole || q.Unit == NoUnit || q.Form >= Compound {
		return q
	}
	if f := andFraction(s[q.Size:]); f.n > 0 && belongs(q.Unit, f, s[q.Size+f.n:]) {
		q.Number = q.Number.plus(f.number)
		q.Size += f.n
		if q.Form != Words {
			q.Form = Mixed
		}
		return q
	}
	for {
		more, ok := compoundWith(s, q)
		if !ok {
			return q
		}
		q = more
	}
}

// belongs tells whether the fraction that ends before s is the rest of a quantity
// in the unit, "a yard and a half", and not of something of its own, "1 yard and
// a half dozen". One in digits is so only of cloth and before nothing else: an
// angle of "18° and ⅞ at the narrow end" is 18°.
func belongs(unit Unit, fraction value, s string) bool {
	if of := unitFollows(s); of > 0 && s[:of] != " in" { // "a yard and a half in blue"
		return false
	}
	if _, _, mark := unitAt(s, true); mark > 0 && s[:mark] != " in" {
		return false
	}
	s = s[blanks(s):]
	if isTimes(s) {
		return false
	}
	if fraction.form != Words {
		bolt := unit == YardUnit || unit == MetreUnit
		return bolt && !startsDigit(s) && (atBoundary(s) || oneOf(s, "of") > 0)
	}
	w, _ := numeralAt(s)
	return w.part != dozen
}

// compoundWith reads one smaller quantity behind q: "3 ft 2 in", "1 m 20 cm".
func compoundWith(s string, q Quantity) (Quantity, bool) {
	if !q.Unit.IsLength() {
		return q, false
	}
	at := q.Size + joinAt(s[q.Size:])
	v := numberAt(s[at:])
	if v.n == 0 || v.form >= Compound || isLoneArticle(s[at:at+v.n]) {
		return q, false
	}
	unit, from, to := unitBehind(s[at:], v)
	large, small := q.Unit.Length(), unit.Length()
	if small == 0 || small >= large || unit.IsMetric() != q.Unit.IsMetric() {
		return q, false
	}
	per := int64(large / small)
	if v.number.Num >= per*v.number.Den || qualifies(s[at+from:], to-from) || isWidth(q.Unit, s[at+to:]) {
		return q, false
	}
	number, ok := q.Number.times(per)
	if !ok || number.Num > 1_000_000_000 { // so that the sum fits, see [Number.plus]
		return q, false
	}
	return Quantity{
		Number: number.plus(v.number), Unit: unit, Form: Compound,
		Size: at + to, NumberSize: q.NumberSize, UnitText: s[at+from : at+to],
	}, true
}

// joinAt takes what may stand between the two quantities of a compound: nothing,
// blanks, or "and".
func joinAt(s string) int {
	n := blanks(s)
	if w, width := numeralAt(s[n:]); n > 0 && w.part == joint {
		n += width
		n += blanks(s[n:])
	}
	return n
}

// qualifies tells whether the unit in the first n bytes of s makes an adjective,
// so that its number is not the rest of the quantity before: 1 yd of "5 in
// squares". A mark, and the words of [joiners] behind it, say that it does not.
func qualifies(s string, n int) bool {
	if !isLetter(s[0]) {
		return false
	}
	rest := s[n:]
	if rest != "" && rest[0] == '-' {
		return true
	}
	if rest = rest[blanks(rest):]; isTimes(rest) {
		return false
	}
	key, w := word(rest)
	return rest != "" && isLetter(rest[0]) && !joiners[string(key[:w])]
}

// isWidth tells whether a quantity that ends before s is the width of cloth that
// was bought by the large unit: 1 m of it, "90 cm wide".
func isWidth(large Unit, s string) bool {
	bolt := large == YardUnit || large == MetreUnit
	return bolt && nextOf(s, "wide", "across", "usable", "width") > 0
}

// joiners are the words that go on after a length that stands by itself.
var joiners = map[string]bool{
	"of": true, "by": true, "x": true, "and": true, "or": true, "long": true, "wide": true,
	"tall": true, "high": true, "deep": true, "across": true, "around": true, "round": true, "square": true,
	"in": true, "into": true, "to": true, "for": true, "from": true, "on": true, "at": true,
	"with": true, "is": true, "will": true, "should": true, "please": true, "each": true,
	"all": true, "left": true, "how": true, "what": true, "total": true, "enough": true,
}
