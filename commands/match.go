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
	cueAfter    = 12 // the term right behind the number: "16 blades"
	cueBefore   = 10 // the term right before it: "strips 2½"
	cueFade     = 3  // less for each word in between
	cueReach    = 4  // words that are looked at on each side
	cueCounts   = 8  // less for a length where a bare whole number stands right before a plural: "3 borders"
	cueShared   = 3  // less where the term before belongs to the number before it
	usualBonus  = 2  // the value is what the input usually is
	oddPenalty  = 4  // it is far from it
	unitBonus   = 1  // the number has a unit and the input wants one
	closeCall   = 1  // two readings that differ by no more are asked about
	maxMatching = 40 // numbers that are matched; a message with more is asked to be shorter
)

// pairing is one possible use of a number.
type pairing struct {
	q, in, score int
	cued         bool
}

// match is how the numbers of a request fit a topic.
type match struct {
	topic     *Topic
	values    map[string]Value
	order     []string   // inputs in the order in which they were said
	aside     []quantity // left aside and named: foreign, hearsay
	unclear   []quantity // fit nothing: to be asked about
	rivals    *rivalry   // a number that fits two inputs alike
	score     int
	announced int
	cued      int
}

// rivalry is a number that could be two things.
type rivalry struct {
	q       quantity
	options []*input
}

// matcher assigns the numbers of one text to the inputs of a topic.
type matcher struct {
	text    words.Text
	metric  bool
	known   map[string]Value // inputs that are known from before, in a follow-up
	asked   string           // the input that was asked about
	changed []string         // the inputs that were said last
}

// match fits the quantities to the topic's inputs: the clearest pairs first.
func (m matcher) match(t *Topic, qs []quantity) match {
	out := match{topic: t, values: map[string]Value{}}
	pairs := m.pairs(t, qs)
	usedQ := make([]bool, len(qs))
	usedIn := make([]bool, len(t.Inputs))
	several := map[int][]int{}
	for _, p := range pairs {
		in := &t.Inputs[p.in]
		if usedQ[p.q] || usedIn[p.in] && !in.many || p.score <= 0 {
			continue
		}
		if r := rivalTo(p, pairs, usedIn, t, qs); r != nil {
			out.rivals = r
		}
		if in.many {
			several[p.in] = append(several[p.in], p.q)
		} else {
			out.values[in.name] = m.read(in, qs[p.q])
		}
		usedQ[p.q], usedIn[p.in] = true, true
		out.score += p.score
		if p.cued {
			out.cued++
		}
	}
	for i, said := range several {
		slices.Sort(said)
		in := &t.Inputs[i]
		v := m.read(in, qs[said[0]])
		for _, q := range said[1:] {
			more := m.read(in, qs[q])
			v.More = append(v.More, more.Length)
			v.From += ", " + more.From
		}
		out.values[in.name] = v
	}
	for i, q := range qs {
		switch {
		case usedQ[i], q.soft:
		case q.foreign, q.hearsay:
			out.aside = append(out.aside, q)
		default:
			out.unclear = append(out.unclear, q)
		}
	}
	m.readWords(t, &out)
	out.sortSaid(t, m.text)
	return out
}

// sortSaid notes in which order the inputs are declared and said.
func (o *match) sortSaid(t *Topic, text words.Text) {
	for _, in := range t.Inputs {
		if _, ok := o.values[in.name]; ok {
			o.order = append(o.order, in.name)
		}
	}
}

// pairs gives all possible uses of the numbers, the best first; of equal ones
// the number said first, for the input declared first. Several numbers of one
// input come in the order in which they were said.
func (m matcher) pairs(t *Topic, qs []quantity) []pairing {
	var out []pairing
	for qi := range qs {
		for ii := range t.Inputs {
			in := &t.Inputs[ii]
			if !fitsKind(in, qs[qi]) || !m.speaksOf(in.when) {
				continue
			}
			s, cued := m.score(in, qs[qi])
			if s > 0 {
				out = append(out, pairing{qi, ii, s, cued})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b pairing) int { return b.score - a.score })
	return out
}

// speaksOf tells whether the text has one of the concepts; none asked for is fine.
func (m matcher) speaksOf(any []words.Concept) bool {
	return any == nil || slices.ContainsFunc(m.text.Tokens, func(t words.Token) bool {
		concept := meaning(t)
		return concept != "" && slices.Contains(any, concept)
	})
}

// rivalTo tells whether the number of the pairing fits another free input as
// well, when nothing announces either of them.
func rivalTo(p pairing, pairs []pairing, usedIn []bool, t *Topic, qs []quantity) *rivalry {
	if p.cued {
		return nil
	}
	for _, o := range pairs {
		if o.q == p.q && o.in != p.in && !usedIn[o.in] && p.score-o.score <= closeCall && !o.cued {
			return &rivalry{qs[p.q], []*input{&t.Inputs[p.in], &t.Inputs[o.in]}}
		}
	}
	return nil
}

// score tells how well the number suits the input; cued, whether a term beside
// it announces it.
func (m matcher) score(in *input, q quantity) (score int, cued bool) {
	after := m.cue(in.kind, in.after, q, +1)
	before := m.cue(in.kind, in.before, q, -1)
	s := max(after, before)
	if s == 0 {
		s = in.prior + m.expected(in)
		if s == 0 || q.foreign || q.hearsay {
			return 0, false
		}
	} else {
		cued = true
		s += min(after, before) / 4
	}
	for _, c := range in.not {
		if m.near(c, q) {
			s -= cueAfter
		}
	}
	if q.unit() != measure.NoUnit {
		s += unitBonus
	}
	return max(1, s+m.usualness(in, q)), cued
}

// What makes a number without any announcement likelier to be an input, in a
// follow-up.
const (
	askedBonus   = 9 // the program has just asked for it
	knownBonus   = 4 // it was given before and may be changed now
	changedBonus = 2 // it was the last to be given
)

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

// cue gives the strength of the nearest of the terms on one side of the number.
func (m matcher) cue(k kind, concepts []words.Concept, q quantity, way int) int {
	if len(concepts) == 0 {
		return 0
	}
	counting := k != aCount && k != aGrid && q.counts()
	best, seen := 0, 0
	i := q.to
	if way < 0 {
		i = q.from - 1
	}
	for ; i >= 0 && i < len(m.text.Tokens) && seen < cueReach; i += way {
		t := m.text.Tokens[i]
		if t.Kind == words.Number || t.Kind == words.Break {
			break
		}
		if t.Kind == words.Comma {
			seen++
			continue
		}
		if t.Kind != words.Word {
			continue
		}
		if slices.Contains(concepts, t.Concept) && t.Concept != "" {
			s := cueAfter
			if way < 0 {
				s = cueBefore
				if i > 0 && m.text.Tokens[i-1].Kind == words.Number {
					s -= cueShared
				}
			}
			if counting && seen == 0 && way > 0 && isPlural(t) {
				s -= cueCounts
			}
			best = max(best, s-cueFade*seen)
		}
		if !fillers[t.Word] {
			seen++
		}
	}
	return best
}

// counts tells whether the number can be a count: whole, more than one, without
// a unit.
func (q quantity) counts() bool {
	n := q.first()
	v, ok := n.Number.Whole()
	return ok && v > 1 && len(q.numbers) == 1 && n.Unit == measure.NoUnit && !q.square
}

// isPlural tells whether the word names several things.
func isPlural(t words.Token) bool { return strings.HasSuffix(t.Word, "s") }

// near tells whether the concept stands right beside the number.
func (m matcher) near(c words.Concept, q quantity) bool {
	tokens := m.text.Tokens
	return q.to < len(tokens) && tokens[q.to].Is(c) || q.from > 0 && tokens[q.from-1].Is(c)
}

// usualness compares the value with what the input usually is.
func (m matcher) usualness(in *input, q quantity) int {
	lo, hi := in.usual[0], in.usual[1]
	if hi == 0 {
		return 0
	}
	for _, n := range q.numbers {
		v := n.Number.Float()
		if in.kind == aLength || in.kind == aSize || in.kind == aCloth {
			l, err := n.Number.Of(m.lengthUnit(n.Unit, in.kind))
			if err != nil {
				return -oddPenalty
			}
			v = l.Inches()
		}
		switch {
		case v < lo/2 || v > hi*2:
			return -oddPenalty
		case v < lo || v > hi:
			return 0
		}
	}
	return usualBonus
}

// lengthUnit gives the unit of a number that may have none: cloth is counted
// in yards or metres, everything else in inches or centimetres.
func (m matcher) lengthUnit(u measure.Unit, k kind) measure.Length {
	if u.IsLength() {
		return u.Length()
	}
	switch {
	case m.metric && k == aCloth:
		return measure.Metre
	case m.metric:
		return measure.Centimetre
	case k == aCloth:
		return measure.Yard
	}
	return measure.Inch
}

// fitsKind tells whether a number can be the input at all.
func fitsKind(in *input, q quantity) bool {
	n := q.first()
	bare := n.Unit == measure.NoUnit && !q.percent
	switch in.kind {
	case aLength:
		return (len(q.numbers) == 1 || q.ranged) && !q.percent && !q.money && (bare || n.Unit.IsLength())
	case aCloth:
		return len(q.numbers) == 1 && !q.percent && !q.money && (bare || n.Unit.IsLength())
	case aSize:
		return (len(q.numbers) == 2 && !q.ranged || q.square) && !q.percent && !q.money && n.Unit != measure.DegreeUnit
	case aCount:
		return len(q.numbers) == 1 && bare && !q.money && whole(n) && !q.square
	case aGrid:
		return len(q.numbers) == 2 && !q.ranged && q.unit() == measure.NoUnit && whole(n) && whole(q.numbers[1])
	case anAngle:
		return len(q.numbers) == 1 && (bare || n.Unit == measure.DegreeUnit) && !q.money
	case aPercent:
		return len(q.numbers) == 1 && (bare || q.percent) && !q.money
	case aPrice, aRate:
		return len(q.numbers) == 1 && bare
	}
	return false
}

func whole(n measure.Quantity) bool {
	_, ok := n.Number.Whole()
	return ok
}

// read turns the number into the input's value.
func (m matcher) read(in *input, q quantity) Value {
	v := Value{Kind: in.kind, From: q.text, Cut: m.basisOf(q)}
	unit := q.unit()
	of := func(n measure.Quantity) measure.Length {
		u := n.Unit
		if u == measure.NoUnit {
			u = unit
		}
		l, err := n.Number.Of(m.lengthUnit(u, in.kind))
		if err != nil {
			return measure.Max + 1 // refused by the sums, with the limit
		}
		return l
	}
	n := q.first()
	switch in.kind {
	case aLength, aCloth:
		v.Length = of(n)
	case aSize:
		v.Size = measure.Size{Width: of(n), Length: of(q.numbers[len(q.numbers)-1])}
	case aCount, aGrid:
		v.Count = clampCount(n)
		if in.kind == aGrid {
			v.Down = clampCount(q.numbers[1])
		}
	case anAngle, aPercent, aRate:
		v.Number = n.Number.Float()
	case aPrice:
		v.Price = int64(n.Number.Float()*100 + 0.5)
	}
	return v
}

// clampCount gives a count, kept within what the sums accept or refuse by name.
func clampCount(n measure.Quantity) int {
	c, _ := n.Number.Whole()
	return int(min(max(c, -1), 1<<31-2))
}

// basisOf tells whether the words beside the number call it finished or cut.
func (m matcher) basisOf(q quantity) basis {
	tokens := m.text.Tokens
	for _, way := range []int{+1, -1} {
		i := q.to
		if way < 0 {
			i = q.from - 1
		}
		for seen := 0; i >= 0 && i < len(tokens) && seen < cueReach; i += way {
			t := tokens[i]
			if t.Kind == words.Number || t.Kind == words.Break {
				break
			}
			switch {
			case t.Is(finished):
				return finishedSize
			case t.Is(unfinished):
				return cutSize
			case t.Is(cutVerb) && seen == 0:
				return cutSize
			}
			if t.Kind == words.Word && !fillers[t.Word] {
				seen++
			}
		}
	}
	return unsaid
}

// readWords takes the topic's choices from the words of the text.
func (m matcher) readWords(t *Topic, o *match) {
	for i := range t.Inputs {
		in := &t.Inputs[i]
		if in.kind != aWord {
			continue
		}
		for j, tok := range m.text.Tokens {
			if tok.Kind != words.Word || tok.Concept == "" {
				continue
			}
			table := in.words
			if m.denied(j) {
				table = in.unless
			}
			if w, ok := table[tok.Concept]; ok {
				o.values[in.name] = Value{Kind: aWord, Word: w, From: tok.Text}
				o.score++
				break
			}
		}
	}
}

// denied tells whether the word at j is said not to be: "no", "without".
func (m matcher) denied(j int) bool {
	for i := j - 1; i >= 0 && i >= j-2; i-- {
		t := m.text.Tokens[i]
		if t.Kind != words.Word {
			return false
		}
		switch t.Word {
		case "no", "not", "without", "w/o", "skip", "never", "isn't", "don't":
			return true
		}
		if t.Concept != "" {
			return false
		}
	}
	return false
}
