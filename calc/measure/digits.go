package measure

import (
	"math"
	"unicode/utf8"
)

// places is how many decimals are kept; what is beyond is rounded to them. The
// ninth decimal of a metre is our nanometre.
const places = 9

// tooBig is the number of a quantity whose form is [TooBig].
var tooBig = Number{math.MaxInt64, 1}

// value is a number on its way to a quantity: n bytes of text, 0 for none.
type value struct {
	number    Number
	form      Form
	n         int
	needsUnit bool // no number at all without a unit behind it: "half", "a"
	shares    bool // counted in shares of a unit: "four quarters"
}

// unclear is what n bytes of digits mean that are no number in any writing.
func unclear(n int) value { return value{number: Number{0, 1}, form: Unclear, n: n} }

// tooBigAt is what n bytes mean that are more than [largest].
func tooBigAt(n int) value { return value{number: tooBig, form: TooBig, n: n} }

// digitsAt reads a number that starts with a digit, a point or a character for
// a fraction:
//
//	number   = decimal [ exponent ] | fraction | whole mixed
//	mixed    = [ "-" | blanks | [ blanks ] ( "and" | "&" ) blanks ] fraction
//	fraction = whole "/" whole [ "ths" ] | glyph
func digitsAt(s string) value {
	if v, n := glyph(s); n > 0 {
		return value{number: v, form: Glyph, n: n}
	}
	v := decimalAt(s)
	if v.n == 0 || v.form == TooBig || v.form == Unclear {
		return v
	}
	if p := powerAt(s, v); p.n > 0 {
		return p
	}
	if v.form == Plain {
		if f := slashAt(s, v); f.n > 0 {
			return f
		}
	}
	return mixedAt(s, v)
}

// decimalAt reads digits with points and commas among them. One comma before
// three digits has two meanings, see [ThousandsComma]; several marks are
// thousands and decimals where they are set as such, and else [Unclear].
func decimalAt(s string) value {
	g := groupsAt(s)
	if g.end == 0 {
		return value{}
	}
	switch g.marks {
	case 0:
		return exactly(s[:g.end], g.end, Plain)
	case 1:
		if s[g.last] == '.' {
			return exactly(s[:g.end], g.last, Decimal)
		}
		if g.grouped {
			return exactly(s[:g.end], g.end, ThousandsComma)
		}
		return exactly(s[:g.end], g.last, DecimalComma)
	}
	switch {
	case g.grouped && g.oneMark:
		return exactly(s[:g.end], g.end, Plain)
	case g.groupedBefore && s[g.last] != s[g.first]:
		if s[g.last] == '.' {
			return exactly(s[:g.end], g.last, Decimal)
		}
		return exactly(s[:g.end], g.last, DecimalComma)
	}
	return unclear(g.end)
}

// groups describes a run of digits with points and commas among them.
type groups struct {
	end, marks, first, last int
	oneMark                 bool // all marks are the same
	groupedBefore           bool // the groups up to the last mark are set in threes, with one mark
	grouped                 bool // and so is the last group
}

func groupsAt(s string) groups {
	lead := digits(s)
	g := groups{end: lead, oneMark: true, groupedBefore: 1 <= lead && lead <= 3 && s[0] != '0'}
	inThrees := g.groupedBefore
	for g.end < len(s) && (s[g.end] == '.' || s[g.end] == ',' && lead > 0) {
		d := digits(s[g.end+1:])
		if d == 0 {
			break
		}
		if g.marks == 0 {
			g.first = g.end
		}
		g.groupedBefore = inThrees && g.oneMark
		g.oneMark = g.oneMark && s[g.end] == s[g.first]
		inThrees = inThrees && d == 3
		g.last = g.end
		g.marks++
		g.end += 1 + d
	}
	g.grouped = inThrees
	return g
}

// exactly gives the number of the digits of s, of which those from point on are
// decimals. Marks among them are passed over.
func exactly(s string, point int, form Form) value {
	var num int64
	den := int64(1)
	room := 18 // digits that are sure to fit
	for i := range len(s) {
		if !isDigit(s[i]) {
			continue
		}
		d := int64(s[i] - '0')
		if i < point {
			if num = num*10 + d; num > largest {
				return tooBigAt(len(s))
			}
			continue
		}
		if den == pow10(places) || num >= pow10(room-1) {
			if d >= 5 {
				num++
			}
			break
		}
		num, den = num*10+d, den*10
	}
	return value{number: ratio(num, den), form: form, n: len(s)}
}

func pow10(n int) int64 {
	p := int64(1)
	for range n {
		p *= 10
	}
	return p
}

// powerAt reads "10^12" and "1e12", of which v is the first part.
func powerAt(s string, v value) value {
	rest := s[v.n:]
	if len(rest) < 2 || v.form != Plain && v.form != Decimal {
		return value{}
	}
	n := digits(rest[1:])
	negative := n == 0 && rest[1] == '-' && digits(rest[2:]) > 0
	if n == 0 && !negative {
		return value{}
	}
	base, number := int64(10), v.number
	switch rest[0] {
	case 'e', 'E':
	case '^':
		if v.form != Plain {
			return value{}
		}
		base, number = v.number.Num, Number{1, 1}
	default:
		return value{}
	}
	if negative {
		return unclear(v.n + 2 + digits(rest[2:]))
	}
	end := v.n + 1 + n
	for range exponent(rest[1 : 1+n]) {
		var ok bool
		if number, ok = number.times(base); !ok {
			return tooBigAt(end)
		}
	}
	return value{number: number, form: v.form, n: end}
}

// exponent gives the value of digits, at most 99: beyond that nothing but 0 and
// 1 is in range, and they do not change any more.
func exponent(s string) int {
	e := 0
	for i := range len(s) {
		e = min(e*10+int(s[i]-'0'), 99)
	}
	return e
}

// slashAt reads a fraction of which whole is the numerator. A fraction that goes
// on with another slash is a date or a slip.
func slashAt(s string, whole value) value {
	n := whole.n
	w := slash(s[n:])
	d := digits(s[n+w:])
	if w == 0 || d == 0 {
		return value{}
	}
	start := n + w
	n = start + d
	long := false
	for {
		w := slash(s[n:])
		d := digits(s[n+w:])
		if w == 0 || d == 0 {
			break
		}
		n, long = n+w+d, true
	}
	den := exactly(s[start:start+d], d, Plain)
	if long || den.form == TooBig || den.number.Num == 0 || den.number.Num > 1_000_000 || whole.number.Num > 1_000_000_000 {
		return unclear(n)
	}
	n += fractionEnding(s[n:])
	return value{number: ratio(whole.number.Num, den.number.Num), form: Slashed, n: n}
}

// slash takes a slash or one of its typographic kin.
func slash(s string) int {
	if s == "" {
		return 0
	}
	switch r, w := utf8.DecodeRuneInString(s); r {
	case '/', '⁄', '∕':
		return w
	}
	return 0
}

// fractionEnding takes the ending of "7/8ths" and "1/3rd".
func fractionEnding(s string) int {
	return oneOf(s, "th", "ths", "rd", "rds", "nd", "nds")
}

// mixedAt reads on from a whole number to a proper fraction, in digits or words.
func mixedAt(s string, whole value) value {
	if whole.form != Plain && whole.form != ThousandsComma || whole.number.Num > 1_000_000_000 {
		return whole
	}
	rest := s[whole.n:]
	g := gap(rest)
	if v := fractionAt(rest[g:]); v.n > 0 && (g > 0 || v.form == Glyph) && !namesPiece(rest[g:], v) {
		form := Mixed
		if v.form == Glyph {
			form = Glyph
		}
		return value{number: whole.number.plus(v.number), form: form, n: whole.n + g + v.n}
	}
	if v := andFraction(rest); v.n > 0 {
		return value{number: whole.number.plus(v.number), form: Mixed, n: whole.n + v.n}
	}
	return whole
}

// namesPiece tells whether the fraction v at the start of s says what is counted,
// and not how many: 24 of "1/2 square triangles", 6 of "1/4 yard cuts".
func namesPiece(s string, v value) bool {
	s = s[v.n:]
	if unit, _, to := unitAt(s, true); unit == YardUnit || unit == MetreUnit {
		return piecesFollow(s[to:])
	}
	if v.number != (Number{1, 2}) && v.number != (Number{1, 4}) {
		return false
	}
	n := nextOf(s, "square", "sq")
	return n > 0 && nextOf(s[n:], "triangle", "triangles", "tri", "tris") > 0
}

// fractionAt reads a proper fraction in digits or as one character.
func fractionAt(s string) value {
	if v, n := glyph(s); n > 0 {
		return value{number: v, form: Glyph, n: n}
	}
	d := digits(s)
	if d == 0 || d > 7 {
		return value{}
	}
	v := slashAt(s, exactly(s[:d], d, Plain))
	if v.form != Slashed || !v.number.isProper() {
		return value{}
	}
	return v
}

// glyph reads one of the characters for fractions.
func glyph(s string) (Number, int) {
	if len(s) < 2 || s[0] != 0xC2 && s[0] != 0xE2 {
		return Number{}, 0
	}
	r, w := utf8.DecodeRuneInString(s)
	switch {
	case 0xBC <= r && r <= 0xBE:
		return latinFractions[r-0xBC], w
	case 0x2150 <= r && r <= 0x215E:
		return numberForms[r-0x2150], w
	}
	return Number{}, 0
}

// latinFractions are the characters U+00BC to U+00BE, numberForms U+2150 to
// U+215E. Source: Unicode Character Database, field Numeric_Value.
var (
	latinFractions = [...]Number{{1, 4}, {1, 2}, {3, 4}}
	numberForms    = [...]Number{
		{1, 7}, {1, 9}, {1, 10}, {1, 3}, {2, 3}, {1, 5}, {2, 5}, {3, 5}, {4, 5},
		{1, 6}, {5, 6}, {1, 8}, {3, 8}, {5, 8}, {7, 8},
	}
)
