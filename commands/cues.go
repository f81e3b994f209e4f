package commands

import (
	"slices"
	"strings"

	"counterhand/calc/measure"
	"counterhand/commands/words"
)

// Scores of the match. Only their order matters: what directly announces a
// number beats what stands further off, and both beat a number's mere kind.
const (
	cueAfter   = 12 // the term right behind the number: "16 blades"
	cueBefore  = 10 // the term right before it: "strips 2½"
	cueOf      = 15 // the term and "of" right before it: "strips of 2½"
	cueFade    = 3  // less for each word in between
	cueReach   = 4  // words that are looked at on each side
	cueShared  = 3  // less where the term before belongs to the number before it
	cueCounts  = 8  // less for a length where a bare whole number stands right before a plural: "3 borders"
	cueDegrees = 12 // a number of degrees for an angle, or of percent for a share
	cueFaint   = 11 // an announcement from afar, which does not carry an odd value
	usualBonus = 2  // the value is what the input usually is
	oddPenalty = 7  // it is far from it
	unitBonus  = 1  // the number has a unit and the input wants one
)

// What makes a number without any announcement likelier to be an input, in a
// follow-up.
const (
	askedBonus   = 9 // the program has just asked for it
	knownBonus   = 4 // it was given before and may be changed now
	changedBonus = 2 // it was the last to be given
)

// score tells how well the number suits the input; cued, whether a term beside
// it announces it. Without one, a value far from what the input usually is
// does not suit it at all.
func (m matcher) score(in *input, q quantity) (score int, cued bool) {
	if q.foreign && !slices.Contains(in.after, otherThing) && !slices.Contains(in.after, questionWord) {
		return 0, false
	}
	after := m.cue(in, q, +1)
	before := m.cue(in, q, -1)
	usual := m.usualness(in, q)
	s := max(after, before)
	if in.kind == anAngle && q.unit() == measure.DegreeUnit || in.kind == aPercent && q.percent && in.prior > 0 {
		s = max(s, cueDegrees)
	}
	switch {
	case s > 0:
		cued = true
		s += min(after, before) / 4
	case q.hearsay, usual == -oddPenalty && in.name != m.asked:
		return 0, false
	case m.belongsElsewhere(q) && !in.anyUnit:
		return 0, false
	default:
		if s = in.prior + m.expected(in); s == 0 {
			return 0, false
		}
	}
	for _, c := range in.not {
		if m.near(c, q) {
			s -= cueAfter
		}
	}
	if q.unit() != measure.NoUnit {
		s += unitBonus
	}
	if s <= 0 || usual == -oddPenalty && (s <= cueFaint || q.soft) || m.tooSmall(in, q) {
		return 0, false
	}
	return max(1, s+usual), cued
}

// telling are terms that say what the number right beside them is, whatever the
// topic: where a topic has no input for it, it is not free for another.
var telling = of(usable, wideFabric, seam, tuckWord, narrowEnd, wideEnd, opening, marginWord)

// belongsElsewhere tells whether a term right beside the number says that it is
// something else.
func (m matcher) belongsElsewhere(q quantity) bool {
	return slices.ContainsFunc(telling, func(c words.Concept) bool { return m.near(c, q) })
}

// expected tells how much the conversation speaks for the input.
func (m matcher) expected(in *input) int {
	s := 0
	if in.name == m.asked {
		s += askedBonus
	}
	if _, ok := m.known[in.name]; ok {
		s += knownBonus
		if slices.Contains(m.changed, in.name) {
			s += changedBonus
		}
	}
	return s
}

// partings are words behind which something else begins.
var partings = wordSet("and with plus for from then but using in to")

// cue gives the strength of the nearest of the input's terms on one side of
// the number.
func (m matcher) cue(in *input, q quantity, way int) int {
	concepts, i := in.after, q.to
	if way < 0 {
		concepts, i = in.before, q.from-1
	}
	if len(concepts) == 0 {
		return 0
	}
	counting := (in.kind == aLength || in.kind == aCloth) && q.counts()
	best, seen := 0, 0
	for start := i; i >= 0 && i < len(m.text.Tokens) && seen < cueReach; i += way {
		t := m.text.Tokens[i]
		if t.Kind == words.Number && way > 0 && passesOver(in.kind, t.Quantity) {
			seen++
			continue
		}
		if t.Kind == words.Number || t.Kind == words.Break {
			break
		}
		if t.Kind == words.Comma {
			seen++
			continue
		}
		if t.Kind != words.Word || way < 0 && m.isWanted(i) {
			continue
		}
		if t.Concept != "" && slices.Contains(concepts, t.Concept) {
			s := m.strength(t, i, start, way)
			if counting && seen == 0 && way > 0 && isPlural(t) {
				s -= cueCounts
			}
			best = max(best, s-cueFade*seen)
		}
		switch {
		case way > 0 && partings[t.Word], way < 0 && t.Is(fromWord):
			seen += 2
		case !fillers[t.Word] && !t.Is(finished) && !t.Is(unfinished) && !t.Is(ofThem):
			seen++
		}
	}
	return best
}

// passesOver tells whether the term behind a further number may still belong to
// the first: "6 in 18° blades", "sixteen 9 in blocks".
func passesOver(k kind, next measure.Quantity) bool {
	return next.Unit == measure.DegreeUnit && k != anAngle || next.Unit.IsLength() && k == aCount
}

// isWanted tells whether the term at token i is what a size is asked of: "what
// width strip do I need". It announces no number then.
func (m matcher) isWanted(i int) bool {
	t := m.text.Tokens
	return i > 0 && (t[i-1].Is(howWide) || t[i-1].Is(howBig) || t[i-1].Is(howLong))
}

// prepositions point at the number right behind them.
var prepositions = map[words.Concept]bool{upTo: true, fromWord: true, atPrice: true}

// isArticle tells "a", "the" and their like.
func isArticle(t words.Token) bool {
	switch t.Word {
	case "a", "an", "the", "my", "each", "every":
		return true
	}
	return t.Quantity.Form == measure.One
}

// adjectives are terms that do not make the number behind "of" their own.
var adjectives = map[words.Concept]bool{across: true, wide: true, long: true, high: true, finished: true, unfinished: true, ofWord: true}

// strength is what the term at token i is worth before it fades.
func (m matcher) strength(t words.Token, i, start, way int) int {
	tokens := m.text.Tokens
	switch {
	case way > 0:
		return cueAfter
	case prepositions[t.Concept] && (i == start || i == start-1 && isArticle(tokens[start])), i == start-1 && tokens[start].Is(ofWord) && !adjectives[t.Concept]:
		return cueOf
	case i > 0 && tokens[i-1].Kind == words.Number:
		return cueBefore - cueShared
	}
	return cueBefore
}

// counts tells whether the number can be a count: whole, more than one, without
// a unit.
func (q quantity) counts() bool {
	n := q.first()
	v, ok := n.Number.Whole()
	return ok && v > 1 && len(q.numbers) == 1 && n.Unit == measure.NoUnit && !q.square
}

// isPlural tells whether the word names several things.
func isPlural(t words.Token) bool {
	return strings.HasSuffix(t.Word, "s") || t.Is(gooseWord) || t.Is(halfSquare) || t.Is(quarterSquare)
}

// near tells whether the concept stands right beside the number and belongs to
// no other number.
func (m matcher) near(c words.Concept, q quantity) bool {
	at := func(i int) words.Token {
		if i < 0 || i >= len(m.text.Tokens) {
			return words.Token{Kind: words.Break}
		}
		return m.text.Tokens[i]
	}
	return at(q.to).Is(c) && at(q.to+1).Kind != words.Number ||
		at(q.from-1).Is(c) && at(q.from-2).Kind != words.Number
}

// usualness compares the value with what the input usually is.
func (m matcher) usualness(in *input, q quantity) int {
	lo, hi := in.usual[0], in.usual[1]
	if hi == 0 {
		return 0
	}
	bonus := usualBonus
	for _, n := range q.numbers {
		v := n.Number.Float()
		if in.kind == aLength || in.kind == aSize || in.kind == aCloth {
			u := n.Unit
			if u == measure.NoUnit {
				u = q.unit()
			}
			l, err := n.Number.Of(m.lengthUnit(u, in.kind))
			if err != nil {
				return -oddPenalty
			}
			v = l.Inches()
		}
		switch {
		case v < lo/2 || v > hi*2:
			return -oddPenalty
		case v < lo || v > hi:
			bonus = 0
		}
	}
	return bonus
}

// basisOf tells whether the words beside the number call it finished or cut;
// the nearest decides.
func (m matcher) basisOf(q quantity) basis {
	behind, far := m.basisOn(q, +1)
	before, near := m.basisOn(q, -1)
	if near < far {
		return before
	}
	return behind
}

// basisOn looks for "finished" or "cut" on one side of the number.
func (m matcher) basisOn(q quantity, way int) (b basis, distance int) {
	tokens := m.text.Tokens
	i := q.to
	if way < 0 {
		i = q.from - 1
	}
	seen, passed := 0, 0
	for ; i >= 0 && i < len(tokens) && seen < cueReach; i += way {
		t := tokens[i]
		if t.Kind == words.Number || t.Kind == words.Break {
			break
		}
		if t.Kind != words.Comma {
			passed++
		}
		switch {
		case t.Is(finished):
			return finishedSize, seen
		case t.Is(unfinished), t.Is(precut), t.Is(squarePc) && strings.HasPrefix(t.Word, "charm"):
			return cutSize, seen
		case t.Is(cutVerb) && (passed == 1 || passed == 2 && way < 0 && (tokens[i+1].Is(atPrice) || tokens[i+1].Is(upTo))):
			return cutSize, seen
		case t.Kind == words.Comma:
			seen += 2
		case t.Kind == words.Word && !fillers[t.Word]:
			seen++
		}
	}
	return unsaid, cueReach + 1
}

// isForEach tells whether the number is said to be for each of something:
// "20 blades each", "4 squares per block", "per block 4 squares".
func (m matcher) isForEach(q quantity) bool {
	tokens := m.text.Tokens
	for i := q.to; i < len(tokens) && i < q.to+3 && tokens[i].Kind == words.Word; i++ {
		if tokens[i].Is(eachWord) || tokens[i].Is(perRow) {
			return true
		}
	}
	for i := q.from - 1; i >= 0 && i >= q.from-5 && tokens[i].Kind == words.Word; i-- {
		if tokens[i].Is(eachWord) {
			return true
		}
	}
	return false
}

// tooSmall tells whether a length is below what the input can ever be.
func (m matcher) tooSmall(in *input, q quantity) bool {
	if in.least == 0 {
		return false
	}
	l, err := q.first().Number.Of(m.lengthUnit(q.unit(), in.kind))
	return err == nil && l.Inches() < in.least
}
