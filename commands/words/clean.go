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
		case r == '*' && between(s, i, n):
			b.WriteByte('x')
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
		case unicode.IsSymbol(r) && r != '°' && !isCurrency(r):
			b.WriteByte(' ') // emoji and other pictures
		default:
			b.WriteString(norm.NFKC.String(string(r)))
		}
	}
	return b.String()
}

// plain tells whether the text has nothing that [Clean] would change.
func plain(s string) bool {
	for i := 0; i < len(s); i++ {
		if c := s[i]; c >= 0x7f || c < ' ' && c != '\n' || c == '`' || c == '*' {
			return false
		}
	}
	return true
}

// between tells whether the character that ends at i, n bytes long, stands
// between two numbers, blanks apart: then an asterisk is a cross.
func between(s string, i, n int) bool {
	before := strings.TrimRight(s[:i-n], " ")
	after := strings.TrimLeft(s[i:], " ")
	if before == "" || after == "" {
		return false
	}
	last, _ := utf8.DecodeLastRuneInString(before)
	first, _ := utf8.DecodeRuneInString(after)
	return (unicode.IsDigit(last) || isFraction(last) || last == '"' || unicode.IsLetter(last)) && (unicode.IsDigit(first) || isFraction(first) || first == '.')
}

// isFraction tells the characters ½ ¼ ¾ and ⅐ to ⅞.
func isFraction(r rune) bool { return r >= 0xBC && r <= 0xBE || r >= 0x2150 && r <= 0x215E }

// isCurrency tells the signs of money that a price may carry.
func isCurrency(r rune) bool { return unicode.Is(unicode.Sc, r) }
