package words

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"counterhand/calc/measure"
)

// lex splits a cleaned text into tokens: numbers with their units, words in
// lower case, and marks. Words do not have their concepts yet.
func lex(s string) []Token { return lexInto(make([]Token, 0, 16+len(s)/5), s) }

// lexInto adds the tokens of a text to those that are there.
func lexInto(tokens []Token, s string) []Token {
	spaced := true
	for i := 0; i < len(s); {
		c := s[i]
		if c == ' ' {
			spaced = true
			i++
			continue
		}
		t := next(s, i, tokens, spaced)
		t.Pos, t.Text = i, s[i:t.End]
		t.Spaced = spaced
		if t.Kind == Word {
			t.Word = strings.ToLower(t.Text)
		}
		tokens = append(tokens, t)
		i = t.End
		spaced = false
	}
	return tokens
}

// next reads the token that starts at byte i.
func next(s string, i int, before []Token, spaced bool) Token {
	afterNumber := len(before) > 0 && before[len(before)-1].Kind == Number
	switch c := s[i]; {
	case c == '\n':
		return Token{Kind: Break, End: i + 1}
	case c == '-':
		if q, ok := negative(s, i, afterNumber, spaced); ok {
			return Token{Kind: Number, End: i + q.Size, Quantity: q}
		}
		return Token{Kind: Dash, End: i + 1}
	case (c == 'x' || c == 'X') && isCross(s, i, afterNumber):
		return Token{Kind: Cross, End: i + 1}
	}
	if startsWord(s, i) {
		if q, ok := measure.ScanQuantity(s[i:]); ok {
			return Token{Kind: Number, End: i + q.Size, Quantity: q}
		}
	}
	r, n := utf8.DecodeRuneInString(s[i:])
	switch {
	case unicode.IsLetter(r), unicode.IsDigit(r): // with a digit no number by itself: 13th
		return Token{Kind: Word, End: max(wordEnd(s, i), i+n)}
	case strings.ContainsRune(".!?;", r):
		return Token{Kind: Break, End: i + n}
	case strings.ContainsRune(",:()[]{}\"'", r):
		return Token{Kind: Comma, End: i + n}
	}
	return Token{Kind: Mark, End: i + n}
}

// negative reads a number below zero: a minus that stands free before a digit
// and does not follow a number, where it would be a range's dash.
func negative(s string, i int, afterNumber, spaced bool) (measure.Quantity, bool) {
	if afterNumber || !spaced || i+1 >= len(s) || s[i+1] == ' ' {
		return measure.Quantity{}, false
	}
	return measure.ScanQuantity(s[i:])
}

// isCross tells whether the x at byte i stands between two numbers.
func isCross(s string, i int, afterNumber bool) bool {
	if !afterNumber {
		return false
	}
	rest := strings.TrimLeft(s[i+1:], " ")
	if rest == "" {
		return true
	}
	if len(rest) < len(s[i+1:]) {
		return true // a lone x
	}
	_, ok := measure.ScanQuantity(rest)
	return ok
}

// startsWord tells whether byte i is no continuation of a word before it.
func startsWord(s string, i int) bool {
	if i == 0 {
		return true
	}
	r, _ := utf8.DecodeLastRuneInString(s[:i])
	c, _ := utf8.DecodeRuneInString(s[i:])
	return !unicode.IsLetter(r) || !unicode.IsLetter(c)
}

// wordEnd gives the end of the word that starts at byte i: digits and letters,
// and apostrophes between letters.
func wordEnd(s string, i int) int {
	for i < len(s) && s[i] >= '0' && s[i] <= '9' {
		i++
	}
	for i < len(s) {
		r, n := utf8.DecodeRuneInString(s[i:])
		switch {
		case unicode.IsLetter(r), unicode.IsMark(r):
		case r == '\'' && i+1 < len(s) && unicode.IsLetter(rune(s[i+1])):
		default:
			return i
		}
		i += n
	}
	return i
}
