// Package words turns what a person typed into tokens that mean something in
// the trade: numbers with their units, terms of the vocabulary, and the marks
// between them. It decides nothing about what is asked; that is package
// commands'. Everything here is read-only after start and safe for concurrent
// use.
package words

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"

	"counterhand/calc/measure"
)

// MaxText is how much of one message is read, in bytes. Nobody describes a
// quilt in more; what is longer is refused as a whole rather than cut, since
// cutting could take a number in half.
const MaxText = 8000

// marks are characters that people's keyboards and telephones put for plain
// ones. They are mapped before any normal form is taken, because NFKC turns
// 1½ into 11⁄2 and ″ into two primes.
var marks = map[rune]string{
	'\u2044': "/", '\u2215': "/", '\u2571': "/", '\uFF0F': "/",
	'\u2032': "'", '\u2018': "'", '\u2019': "'", '\u201B': "'", '\u02B9': "'", '\u02BC': "'", '\u00B4': "'", '`': "'",
	'\u2033': `"`, '\u201C': `"`, '\u201D': `"`, '\u201E': `"`, '\u201F': `"`, '\u02BA': `"`, '\u3003': `"`, '\u00AB': `"`, '\u00BB': `"`,
	'\u00D7': "x", '\u2715': "x", '\u2716': "x", '\u2A2F': "x", '\u2A09': "x", '\u274C': "x",
	'\u2010': "-", '\u2011': "-", '\u2012': "-", '\u2212': "-", '\uFE63': "-", '\uFF0D': "-",
	'\u2013': " - ", '\u2014': " - ", '\u2015': " - ",
	'\u2026': "...", '\u00BA': "°", '\u02DA': "°",
	'\u2192': " to ", '\u2794': " to ", '\u27A1': " to ",
	'\u2264': " at most ", '\u2248': " about ",
}

// Clean maps the characters of a message to the plain ones that the lexer
// reads: fractions such as ½ stay as they are, quotes, primes, crosses, dashes
// and blanks become their keyboard forms, and what cannot be seen is dropped.
// Control characters become blanks, line ends stay.
func Clean(s string) string {
	if plain(s) {
		return s
	}
	s = norm.NFC.String(s) // letters with their accents in one, as the terms are written
	var b strings.Builder
	b.Grow(len(s))
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		i += n
		switch {
		case r == utf8.RuneError && n == 1:
			b.WriteByte(' ')
		case r == '\n', r == '\r', r == '\u2028', r == '\u2029':
			b.WriteByte('\n')
		case isAsterisk(r) && between(s, i, n):
			b.WriteByte('x')
		case isAsterisk(r): // of markup or a list
			b.WriteByte(' ')
		case r < 0x80 && r >= ' ' && r != 0x7f && r != '`':
			b.WriteByte(byte(r))
		case marks[r] != "":
			b.WriteString(marks[r])
		case isFraction(r):
			b.WriteRune(r)
		case unicode.Is(unicode.Cf, r), unicode.Is(unicode.Mn, r) && b.Len() == 0, r >= 0xFE00 && r <= 0xFE0F:
			// zero-width characters, direction marks, variation selectors: dropped
		case unicode.IsSpace(r), unicode.IsControl(r):
			b.WriteByte(' ')
		case r == '\u215F': // a numerator's one with its slash
			b.WriteString("1/")
		case unicode.IsDigit(r):
			b.WriteByte(digit(r))
		case r == '²':
			b.WriteString(" squared ")
		case unicode.Is(unicode.No, r): // raised, circled: apart, so that 5¹ is not 51
			b.WriteByte(' ')
			compatible(&b, r)
			b.WriteByte(' ')
		default:
			compatible(&b, r)
		}
	}
	return single(b.String())
}

// single makes runs of blanks one blank.
func single(s string) string {
	for strings.Contains(s, "  ") {
		s = strings.ReplaceAll(s, "  ", " ")
	}
	return s
}

// compatible writes the plain form of a character: its NFKC, which may hold
// marks of its own; pictures, which have none, are a blank.
func compatible(b *strings.Builder, r rune) {
	for _, c := range norm.NFKC.String(string(r)) {
		switch m := marks[c]; {
		case m != "":
			b.WriteString(m)
		case isPicture(c):
			b.WriteByte(' ')
		default:
			b.WriteRune(c)
		}
	}
}

// plain tells whether the text has nothing that [Clean] would change.
func plain(s string) bool {
	for i := 0; i < len(s); i++ {
		if c := s[i]; c >= 0x7f || c < ' ' && c != '\n' || c == '`' || c == '*' || c == ' ' && i > 0 && s[i-1] == ' ' {
			return false
		}
	}
	return true
}

// between tells whether the character that ends at i, n bytes long, stands
// between two numbers, blanks and units apart: then an asterisk is a cross.
func between(s string, i, n int) bool {
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(s[i:], " "))
	return (unicode.IsDigit(first) || isFraction(first) || first == '.') && endsNumber(strings.TrimRight(s[:i-n], " "))
}

// longestUnit is the most letters that a unit's name has: centimetres.
const longestUnit = 11

// endsNumber tells whether the text ends with a number or with a number's unit.
func endsNumber(s string) bool {
	word := s
	for len(word) > 0 && len(s)-len(word) <= longestUnit && word[len(word)-1]|0x20 >= 'a' && word[len(word)-1]|0x20 <= 'z' {
		word = word[:len(word)-1]
	}
	if unit := s[len(word):]; unit != "" {
		q, ok := measure.ScanQuantity("1 " + unit)
		if !ok || q.Unit == measure.NoUnit || q.Size != len("1 ")+len(unit) {
			return false
		}
		word = strings.TrimRight(word, " ")
	}
	last, _ := utf8.DecodeLastRuneInString(word)
	return unicode.IsDigit(last) || isFraction(last) || last == '"' || last == '″' || last == '”'
}

// digit gives the plain digit for a decimal digit of any script, since
// telephones type numbers in their owner's: Unicode keeps each script's ten
// together and in order, so that ranges of them begin with a nought.
func digit(r rune) byte {
	for _, d := range unicode.Nd.R16 {
		if r <= rune(d.Hi) {
			return '0' + byte((r-rune(d.Lo))%10)
		}
	}
	for _, d := range unicode.Nd.R32 {
		if r <= rune(d.Hi) {
			return '0' + byte((r-rune(d.Lo))%10)
		}
	}
	return '0'
}

// isFraction tells the characters ½ ¼ ¾ and ⅐ to ⅞.
func isFraction(r rune) bool { return r >= 0xBC && r <= 0xBE || r >= 0x2150 && r <= 0x215E }

func isAsterisk(r rune) bool { return r == '*' || r == '\u2217' || r == '\uFE61' || r == '\uFF0A' }

// isPicture tells emoji and other signs that no keyboard has; ㎝ is none, since
// its plain form is cm.
func isPicture(r rune) bool {
	return r >= 0x80 && unicode.IsSymbol(r) && r != '°' && !isCurrency(r)
}

// isCurrency tells the signs of money that a price may carry.
func isCurrency(r rune) bool { return unicode.Is(unicode.Sc, r) }
