package words

import "counterhand/calc/measure"

// Kind is what a token is.
type Kind uint8

// The kinds of token.
const (
	Word   Kind = iota // a word or a phrase of the vocabulary
	Number             // a number, with its unit where one follows
	Cross              // x between two numbers
	Dash               // - between two numbers
	Comma              // a comma or a bracket: a small pause
	Break              // the end of a sentence or line
	Mark               // a sign: # / = + % & @ and the signs of money
)

// Concept is what a word or phrase means in the trade, named by the term that
// answers use. Words without a meaning here have the empty concept.
type Concept string

// Token is one piece of a message.
type Token struct {
	Kind     Kind
	Concept  Concept // of a word in the vocabulary
	Text     string  // as typed, after [Clean]
	Word     string  // lower case, spelling mended; of words only
	Pos, End int     // bytes in the cleaned text
	Quantity measure.Quantity
	Mended   bool // the spelling was corrected towards the vocabulary
	Known    bool // in the vocabulary or a common English word
	Spaced   bool // something blank stands before it
}

// Is tells whether the token is a word of the concept.
func (t Token) Is(c Concept) bool { return t.Kind == Word && t.Concept == c && c != "" }

// Text is a message that was read: its cleaned text and its tokens in order.
type Text struct {
	Clean  string
	Tokens []Token
}
