package commands

import (
	"slices"
	"strconv"
	"strings"

	"counterhand/calc/measure"
	"counterhand/commands/words"
)

// quantity is a number of the request, or two or three that belong together
// ("60 x 72"), with what stands around it.
type quantity struct {
	numbers  []measure.Quantity
	from, to int  // tokens [from, to)
	square   bool // one number said to be square: both sides
	ranged   bool // two numbers that are the ends of a range
	foreign  bool // it counts something outside the trade
	hearsay  bool // somebody else's figure, told as a story
	soft     bool // may be no number at all: the word "one"
	percent  bool
	money    bool
	text     string // the words it came from
}

// first gives its first number.
func (q quantity) first() measure.Quantity { return q.numbers[0] }

// unit gives the unit of length that it was said in, or none.
func (q quantity) unit() measure.Unit {
	for _, n := range q.numbers {
		if n.Unit != measure.NoUnit {
			return n.Unit
		}
	}
	return measure.NoUnit
}

// quantities gathers the numbers of a text: pairs around a cross, "wide" and
// "long" said one after the other, ranges, and single ones.
func quantities(t words.Text) []quantity {
	var out []quantity
	tokens := t.Tokens
	for i := 0; i < len(tokens); i++ {
		if n, ok := ordinal(tokens[i]); ok {
			out = append(out, quantity{numbers: []measure.Quantity{n}, from: i, to: i + 1, foreign: true, text: tokens[i].Text})
			continue
		}
		if tokens[i].Kind != words.Number || pronoun(tokens, i) {
			continue
		}
		q := gather(tokens, i)
		i = q.to - 1
		q.look(tokens)
		q.text = t.Clean[tokens[q.from].Pos:tokens[q.to-1].End]
		out = append(out, q)
	}
	return out
}

// pronoun tells whether the word "one" counts nothing: "which one", "each one".
func pronoun(tokens []words.Token, i int) bool {
	t := tokens[i]
	if t.Quantity.Unit != measure.NoUnit || t.Quantity.Number != (measure.Number{Num: 1, Den: 1}) || !strings.EqualFold(t.Text[:min(3, len(t.Text))], "one") {
		return false
	}
	if i+1 == len(tokens) || tokens[i+1].Kind != words.Word && tokens[i+1].Kind != words.Number {
		return true
	}
	if tokens[i+1].Word == "by" || tokens[i+1].Kind == words.Number || inList(tokens, i) {
		return false
	}
	return tokens[i+1].Kind == words.Word && (tokens[i+1].Concept == "" || fillers[tokens[i+1].Word])
}

// inList tells whether the number is one of a list: "borders of one and 4 in".
func inList(tokens []words.Token, i int) bool {
	return i+2 < len(tokens) && tokens[i+2].Kind == words.Number && (tokens[i+1].Word == "and" || tokens[i+1].Kind == words.Comma)
}

// ordinal reads a word such as "13th" that is no number of anything: it is left
// aside, and said to be.
func ordinal(t words.Token) (measure.Quantity, bool) {
	if t.Kind != words.Word || t.Word == "" || t.Word[0] < '0' || t.Word[0] > '9' {
		return measure.Quantity{}, false
	}
	digits := strings.TrimRight(t.Word, "abcdefghijklmnopqrstuvwxyz")
	n, err := strconv.ParseInt(digits, 10, 64)
	return measure.Quantity{Number: measure.Number{Num: n, Den: 1}}, err == nil
}

// gather reads the quantity whose first number is token i.
func gather(tokens []words.Token, i int) quantity {
	q := quantity{numbers: []measure.Quantity{tokens[i].Quantity}, from: i, to: i + 1}
	for len(q.numbers) < 3 {
		j := q.to
		if j+1 >= len(tokens) || tokens[j+1].Kind != words.Number || tokens[j+1].Quantity.Number.Num < 0 {
			break
		}
		switch {
		case tokens[j].Kind == words.Cross, tokens[j].Kind == words.Word && tokens[j].Word == "by":
			q.numbers = append(q.numbers, tokens[j+1].Quantity)
		case len(q.numbers) == 1 && (tokens[j].Kind == words.Dash || tokens[j].Is(upTo)) && rising(q.first(), tokens[j+1].Quantity):
			q.numbers = append(q.numbers, tokens[j+1].Quantity)
			q.ranged = true
		default:
			return q.close(tokens)
		}
		q.to = j + 2
		if q.ranged {
			break
		}
	}
	return q.close(tokens)
}

// isSide tells whether a number before "square" can be its side: "240 square" and
// "40 square 5½ in" are counts of them.
func (q quantity) isSide(tokens []words.Token) bool {
	n := q.first()
	if n.Unit != measure.NoUnit {
		return true
	}
	return n.Number.Float() <= longestSide && (q.to+1 >= len(tokens) || tokens[q.to+1].Kind != words.Number)
}

// longestSide is the longest side of a square quilt, in whatever unit is meant.
const longestSide = 300

// rising tells whether two numbers can be the ends of a range: near each other
// and the smaller first.
func rising(a, b measure.Quantity) bool {
	lo, hi := a.Number.Float(), b.Number.Float()
	return lo < hi && hi <= 2*lo && (a.Unit == b.Unit || a.Unit == measure.NoUnit)
}

// close takes in the word "square" behind one number.
func (q quantity) close(tokens []words.Token) quantity {
	if len(q.numbers) == 1 && q.to < len(tokens) && q.isSide(tokens) && tokens[q.to].Kind == words.Word && (tokens[q.to].Word == "square" || tokens[q.to].Word == "sq") {
		q.square = true
	}
	return q
}

// look notes what stands directly around the quantity: money, percent, and
// whether it counts something outside the trade.
func (q *quantity) look(tokens []words.Token) {
	first := q.first()
	q.soft = first.Form == measure.One && len(q.numbers) == 1 && !inList(tokens, q.from)
	if q.from > 0 {
		before := tokens[q.from-1]
		q.money = before.Kind == words.Mark && isMoney(before.Text)
	}
	if q.to < len(tokens) {
		after := tokens[q.to]
		q.money = q.money || after.Kind == words.Mark && isMoney(after.Text) || after.Is(moneyWord)
		q.percent = after.Kind == words.Mark && after.Text == "%" || after.Is(percentWord)
	}
	q.hearsay = q.told(tokens)
	q.foreign = first.Unit == measure.NoUnit && !q.percent && q.countsOther(tokens)
}

func isMoney(s string) bool { return strings.ContainsAny(s, "$£€¥¢") }

// told tells whether the clause says that somebody else named the number.
func (q quantity) told(tokens []words.Token) bool {
	for i := q.from - 1; i >= 0 && i >= q.from-5 && tokens[i].Kind == words.Word; i-- {
		if tokens[i].Is(hearsay) {
			return true
		}
	}
	return false
}

// countsOther tells whether the words behind the number name something that
// the trade does not know: "3 kids". The look ends at the first filler, since
// what follows that belongs to something else.
func (q quantity) countsOther(tokens []words.Token) bool {
	for i := q.from - 1; i >= 0 && i >= q.from-3 && tokens[i].Kind == words.Word; i-- {
		if tokens[i].Is(otherThing) {
			return true // "my daughter is 7", "my cutting mat is 24 x 36"
		}
		if tokens[i].Concept != "" && !fillers[tokens[i].Word] {
			break
		}
	}
	if len(q.numbers) > 1 {
		return false
	}
	seen := false
	for i := q.to; i < len(tokens) && i < q.to+3; i++ {
		t := tokens[i]
		if t.Kind != words.Word || fillers[t.Word] {
			break
		}
		if t.Is(otherThing) && i+1 < len(tokens) && (tokens[i+1].Is(quilt) || tokens[i+1].Is(block)) {
			return false // "a 30 by 40 baby quilt"
		}
		if isUnit(t) {
			return seen // "3/8 of something in inches"
		}
		if t.Concept != "" {
			return t.Concept == otherThing || t.Concept == questionWord // "2 questions: ..."
		}
		seen = true
	}
	return seen
}

// isUnit tells whether the token is the bare name of a unit.
func isUnit(t words.Token) bool {
	switch t.Concept {
	case unitIn, unitFt, unitYd, unitMm, unitCm, unitM:
		return true
	}
	return false
}

// joinSides makes one size of "56 wide and 72 long", whichever comes first.
func joinSides(t words.Text, qs []quantity) []quantity {
	tokens := t.Tokens
	for i := 0; i+1 < len(qs); i++ {
		a, b := qs[i], qs[i+1]
		if len(a.numbers) != 1 || len(b.numbers) != 1 || a.foreign || b.foreign {
			continue
		}
		sideA, endA := side(tokens, a)
		sideB, endB := side(tokens, b)
		if sideA == "" || sideB == "" || sideA == sideB || b.from-endA > 2 || speaks(tokens[endA:b.from]) {
			continue
		}
		pair := quantity{numbers: []measure.Quantity{a.first(), b.first()}, from: a.from, to: max(b.to, endB)}
		if sideA == long {
			pair.numbers[0], pair.numbers[1] = b.first(), a.first()
		}
		pair.look(tokens)
		pair.text = t.Clean[tokens[pair.from].Pos:tokens[pair.to-1].End]
		qs[i] = pair
		qs = append(qs[:i+1], qs[i+2:]...)
	}
	return qs
}

// speaks tells whether one of the tokens is a term that starts something new.
func speaks(tokens []words.Token) bool {
	return slices.ContainsFunc(tokens, func(t words.Token) bool {
		side := t.Is(wide) || t.Is(long) || t.Is(high)
		return t.Kind == words.Break || t.Kind == words.Word && !fillers[t.Word] && !side
	})
}

// side tells whether a number is said to be a width or a length, and where
// what says so ends.
func side(tokens []words.Token, q quantity) (words.Concept, int) {
	if q.to < len(tokens) {
		switch t := tokens[q.to]; {
		case t.Is(wide), t.Is(high), t.Is(long):
			return sideOf(t.Concept), q.to + 1
		}
	}
	if q.from > 0 && (q.from == 1 || tokens[q.from-2].Kind != words.Number) {
		switch t := tokens[q.from-1]; {
		case t.Is(wide), t.Is(high), t.Is(long):
			return sideOf(t.Concept), q.to
		}
	}
	return "", q.to
}

func sideOf(c words.Concept) words.Concept {
	if c == wide {
		return wide
	}
	return long
}
