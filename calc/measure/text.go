package measure

import (
	"slices"
	"unicode"
	"unicode/utf8"
)

// This file holds the small readers that the scanner is built from. Each tells
// how many bytes at the start of s it takes; 0 means that it takes none.

// mostBlanks bounds the blanks within one quantity, so that looking ahead from
// each word of a text stays cheap whatever the text is.
const mostBlanks = 4

// blanks takes up to [mostBlanks] spaces, no-break and thin ones included, but
// no line end: a number does not run on in the next line.
func blanks(s string) int {
	n := 0
	for range mostBlanks {
		w := blank(s[n:])
		if w == 0 {
			break
		}
		n += w
	}
	return n
}

func blank(s string) int {
	if s == "" {
		return 0
	}
	if s[0] == ' ' || s[0] == '\t' {
		return 1
	}
	if s[0] < utf8.RuneSelf {
		return 0
	}
	r, w := utf8.DecodeRuneInString(s)
	if unicode.Is(unicode.Zs, r) {
		return w
	}
	return 0
}

// gap takes what may stand between two words of one number: blanks or a hyphen.
func gap(s string) int {
	if s != "" && s[0] == '-' {
		return 1
	}
	return blanks(s)
}

// digits takes a run of digits.
func digits(s string) int {
	n := 0
	for n < len(s) && isDigit(s[n]) {
		n++
	}
	return n
}

// letters takes a run of Latin letters, the only ones in our vocabulary, and at
// most one more than its longest word has.
func letters(s string) int {
	n := 0
	for n <= longestWord && n < len(s) && isLetter(s[n]) {
		n++
	}
	return n
}

func isDigit(c byte) bool  { return '0' <= c && c <= '9' }
func isLetter(c byte) bool { return 'a' <= c|0x20 && c|0x20 <= 'z' }

// startsDigit tells whether s starts with a digit, "." and a digit, or a
// character for a fraction.
func startsDigit(s string) bool {
	if s == "" {
		return false
	}
	if isDigit(s[0]) || s[0] == '.' && len(s) > 1 && isDigit(s[1]) {
		return true
	}
	_, n := glyph(s)
	return n > 0
}

// atBoundary tells whether a word may end before s: no letter or digit follows.
func atBoundary(s string) bool {
	if s == "" {
		return true
	}
	r, _ := utf8.DecodeRuneInString(s)
	return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !unicode.IsMark(r)
}

// longestWord is as long as the longest word of the vocabulary.
const longestWord = 12

// word reads the word at the start of s. The key is the word in lower case, to
// be looked up in a table by string(key[:n]) without allocating.
func word(s string) (key [longestWord]byte, n int) {
	n = letters(s)
	if n > longestWord || !atBoundary(s[n:]) {
		return key, 0
	}
	lower(&key, s[:n])
	return key, n
}

func lower(key *[longestWord]byte, s string) {
	for i := range len(s) {
		key[i] = s[i] | 0x20
	}
}

// oneOf takes the word at the start of s where it is one of those given.
func oneOf(s string, words ...string) int {
	key, n := word(s)
	if slices.Contains(words, string(key[:n])) {
		return n
	}
	return 0
}

// nextOf is oneOf for the word behind a [gap], which it takes as well.
func nextOf(s string, words ...string) int {
	g := gap(s)
	if n := oneOf(s[g:], words...); n > 0 {
		return g + n
	}
	return 0
}

// numeralAt reads a word of numbers at the start of s.
func numeralAt(s string) (numeral, int) {
	key, n := word(s)
	if n == 0 {
		return numeral{}, 0
	}
	if v, ok := numerals[string(key[:n])]; ok {
		return v, n
	}
	return numeral{}, 0
}

// shapeAt tells whether s goes on with a patch that "half" and "quarter" make a
// kind of, "half-square", "quarter circles", in the plural only where it may be.
func shapeAt(s string, plural bool) bool {
	s = s[gap(s):]
	key, n := word(s)
	if n == 0 {
		return false
	}
	return shapes[string(key[:n])] || plural && key[n-1] == 's' && shapes[string(key[:n-1])]
}

// isTimes takes a sign or letter for "times" that has a number behind it.
func isTimes(s string) bool {
	r, w := utf8.DecodeRuneInString(s)
	switch r {
	case 'x', 'X', '×', '✕', '*':
		s = s[w:]
		return startsDigit(s[blanks(s):])
	}
	return false
}
