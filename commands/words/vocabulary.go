package words

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"sync"

	"counterhand/calc/measure"
)

// Term gives the words that people use for one concept: a comma-separated list
// of words and phrases in lower case. A number in a phrase stands for itself
// ("4 patch" is also "four patch"). Plurals of the last word need not be given.
type Term struct {
	Concept Concept
	Words   string
}

// Vocabulary knows the trade's terms. It is immutable after [NewVocabulary].
type Vocabulary struct {
	root    *branch
	plain   map[string]bool            // every word that a term uses
	nearby  func() map[string][]string // made when the first slip is met, since most texts have none
	english []string
}

// branch is a point in the tree of phrases: the words that may follow.
type branch struct {
	next    map[string]*branch
	concept Concept
	plural  bool // made up, so a term that gives the same words wins
}

// NewVocabulary makes a vocabulary of the terms. A phrase that is given to two
// concepts is a mistake in the program and is refused.
func NewVocabulary(lists ...[]Term) (*Vocabulary, error) {
	v := &Vocabulary{root: &branch{}, plain: map[string]bool{}, english: commonEnglish()}
	var faults []error
	scratch := make([]Token, 0, 32)
	for _, terms := range lists {
		for _, t := range terms {
			for phrase := range strings.SplitSeq(t.Words, ",") {
				faults = append(faults, v.add(t.Concept, keys(phrase, scratch)))
			}
		}
	}
	v.nearby = sync.OnceValue(func() map[string][]string { return deletions(v.plain) })
	return v, errors.Join(faults...)
}

// keys splits a phrase of a term as a message is split, so that "four patch"
// and "4 patch" are the same. What a phrase of the trade cannot hold, such as a
// full stop, stays as it is and is never found.
func keys(phrase string, scratch []Token) []string {
	var out []string
	for _, t := range lexInto(scratch, phrase) {
		switch k := t.key(); {
		case k != "":
			out = append(out, k)
		case t.Kind != Dash:
			out = append(out, t.Text)
		}
	}
	return out
}

// add enters a phrase and the plural of its last word.
func (v *Vocabulary) add(c Concept, phrase []string) error {
	if len(phrase) == 0 {
		return fmt.Errorf("concept %q has an empty phrase", c)
	}
	last := len(phrase) - 1
	at := v.follow(phrase)
	if at.concept != "" && at.concept != c && !at.plural {
		return fmt.Errorf("%q means both %s and %s", strings.Join(phrase, " "), at.concept, c)
	}
	at.concept, at.plural = c, false
	for _, many := range plurals(phrase[last]) {
		at := v.follow(append(phrase[:last:last], many))
		if at.concept == "" {
			at.concept, at.plural = c, true
		}
	}
	return nil
}

// follow gives the branch where the phrase ends, and makes it where it is new.
func (v *Vocabulary) follow(phrase []string) *branch {
	at := v.root
	for _, w := range phrase {
		if at.next[w] == nil {
			if at.next == nil {
				at.next = map[string]*branch{}
			}
			at.next[w] = &branch{}
		}
		at = at.next[w]
		v.plain[w] = true
	}
	return at
}

// plurals gives the usual plurals of a noun.
func plurals(w string) []string {
	switch {
	case len(w) < 2 || w[0] >= '0' && w[0] <= '9', strings.HasSuffix(w, "s"):
		return nil
	case strings.HasSuffix(w, "y") && !strings.ContainsAny(w[len(w)-2:len(w)-1], "aeiou"):
		return []string{w[:len(w)-1] + "ies"}
	case strings.HasSuffix(w, "x"), strings.HasSuffix(w, "ch"), strings.HasSuffix(w, "sh"):
		return []string{w + "es"}
	}
	return []string{w + "s", w + "'s"}
}

// Read cleans a message, splits it into tokens, mends the spelling of words
// towards the vocabulary, and gives phrases their concepts. A phrase becomes
// one token.
func (v *Vocabulary) Read(message string) Text { return v.read(message, false) }

// ReadLoosely reads as [Vocabulary.Read] does, but takes common English words of
// six letters and more for slips as well where they are one letter off.
func (v *Vocabulary) ReadLoosely(message string) Text { return v.read(message, true) }

func (v *Vocabulary) read(message string, loosely bool) Text {
	clean := Clean(message)
	tokens := v.tokens(clean, loosely)
	if mended, ok := mendUnits(clean, tokens); ok {
		clean = mended
		tokens = v.tokens(clean, loosely)
	}
	for i := range tokens {
		if leadsOn(tokens, i) {
			tokens[i].Quantity.Unit, tokens[i].Quantity.UnitText = measure.NoUnit, ""
		}
	}
	return Text{Clean: clean, Tokens: v.phrases(clean, tokens)}
}

// tokens splits a cleaned text and mends the spelling of its words.
func (v *Vocabulary) tokens(clean string, loosely bool) []Token {
	tokens := lex(clean)
	for i := range tokens {
		v.mend(&tokens[i], loosely)
	}
	return tokens
}

// phrases joins the words of phrases, the longest first, in place.
func (v *Vocabulary) phrases(clean string, tokens []Token) []Token {
	out := tokens[:0]
	for i := 0; i < len(tokens); {
		n, c := v.longest(tokens[i:])
		if n == 0 {
			out = append(out, tokens[i])
			i++
			continue
		}
		t := tokens[i]
		t.Word = ""
		for j, part := range tokens[i : i+n] {
			t.Mended = t.Mended || part.Mended
			if k := keyIn(tokens[i:], j); k != "" {
				t.Word = strings.TrimPrefix(t.Word+" "+k, " ")
			}
		}
		t.Kind, t.Concept, t.Known = Word, c, true
		t.End = tokens[i+n-1].End
		t.Text = clean[t.Pos:t.End]
		out = append(out, t)
		i += n
	}
	return out
}

// longest gives the number of tokens of the longest phrase at the start, and
// its concept.
func (v *Vocabulary) longest(tokens []Token) (n int, c Concept) {
	at := v.root
	for i, t := range tokens {
		if t.Kind == Dash && !t.Spaced && i > 0 && i+1 < len(tokens) && !tokens[i+1].Spaced {
			continue // half-square
		}
		at = at.next[keyIn(tokens, i)]
		if at == nil {
			break
		}
		if at.concept != "" {
			n, c = i+1, at.concept
		}
	}
	return n, c
}

// keyIn is how the token at i is looked up in a phrase. A number in words that
// a hyphen follows is no number of its own, but part of a term: nine-patch.
func keyIn(tokens []Token, i int) string {
	t := tokens[i]
	if t.Kind == Word && i+1 < len(tokens) && tokens[i+1].Kind == Dash && !tokens[i+1].Spaced {
		if q, ok := measure.ScanQuantity(t.Word); ok && q.Size == len(t.Word) {
			return Token{Kind: Number, Quantity: q}.key()
		}
	}
	return t.key()
}

// key is how the token is looked up in a phrase: words as they are, whole
// numbers without a unit as digits.
func (t Token) key() string {
	switch t.Kind {
	case Word:
		return t.Word
	case Number:
		if n, ok := t.Quantity.Number.Whole(); ok && t.Quantity.Unit == 0 && n >= 0 && n < 1000 {
			return strconv.FormatInt(n, 10)
		}
	case Mark:
		return t.Text
	}
	return ""
}

// mendUnits writes the text again with the right spelling of units, which are
// read together with their number: "2 yrads", "a quarter yarrd", "one m".
func mendUnits(clean string, tokens []Token) (string, bool) {
	var b strings.Builder
	done := 0
	for i, t := range tokens {
		word := t.Word
		if i > 0 && tokens[i-1].Kind == Number && t.Kind == Word && word == "m" {
			word = "metre"
		} else if !t.Mended {
			continue
		}
		if q, ok := measure.ScanQuantity("1 " + word); !ok || q.Unit == measure.NoUnit {
			continue
		}
		b.WriteString(clean[done:t.Pos])
		b.WriteString(word)
		done = t.End
	}
	if done == 0 {
		return "", false
	}
	b.WriteString(clean[done:])
	return b.String(), true
}

// leadsOn tells whether token i is a number whose "in" is no inch but leads on:
// "3 in the group".
func leadsOn(tokens []Token, i int) bool {
	if q := tokens[i].Quantity; tokens[i].Kind != Number || q.Unit != measure.InchUnit || !strings.EqualFold(q.UnitText, "in") {
		return false
	}
	if i+1 >= len(tokens) || tokens[i+1].Kind != Word {
		return false
	}
	switch tokens[i+1].Word {
	case "the", "our", "my", "total", "all", "this", "that", "your", "stock", "stash":
		return true
	case "a", "each", "every":
		if i+2 >= len(tokens) {
			return false
		}
		switch tokens[i+2].Word {
		case "row", "group", "class", "set", "pack", "bundle", "bag", "box", "column", "line", "kit":
			return true
		}
	}
	return false
}
