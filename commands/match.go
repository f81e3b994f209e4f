package commands

import (
	"slices"

	"counterhand/calc/measure"
	"counterhand/commands/words"
)

// closeCall is the difference between two readings of a number below which the
// person is asked; maxMatching the numbers that are kept apart in one message.
const (
	closeCall   = 1
	maxMatching = 40
)

// pairing is one possible use of a number.
type pairing struct {
	q, in, score int
	cued         bool
}

// match is how the numbers of a request fit a topic.
type match struct {
	topic   *Topic
	values  map[string]Value
	order   []string   // inputs that were said, as they are declared
	aside   []quantity // left aside and named: foreign, hearsay, beside the point
	unclear []quantity // fit nothing: to be asked about
	ranged  *rangedFor // a range where one length is needed
	rivals  *rivalry   // a number that fits two inputs alike
	score   int
	cued    int
}

// rivalry is a number that could be two things.
type rivalry struct {
	q       quantity
	options []*input
}

// rangedFor is a range that was given for one input.
type rangedFor struct {
	q  quantity
	in *input
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
	if t.Read != nil {
		values, used := t.Read(m, qs)
		for name, v := range values {
			out.values[name] = v
			out.score += cueAfter * len(v.Items)
			out.cued++
		}
		copy(usedQ, used)
	}
	usedIn := make([]bool, len(t.Inputs))
	several := map[int][]int{}
	for _, p := range pairs {
		in := &t.Inputs[p.in]
		if usedQ[p.q] || usedIn[p.in] && !in.many {
			continue
		}
		if r := rivalTo(p, pairs, usedIn, t, qs); r != nil {
			out.rivals = r
		}
		usedQ[p.q], usedIn[p.in] = true, true
		for o := range t.Inputs {
			usedIn[o] = usedIn[o] || slices.Contains(in.replaces, t.Inputs[o].name)
		}
		out.score += p.score
		if p.cued {
			out.cued++
		}
		switch {
		case qs[p.q].ranged:
			out.ranged = &rangedFor{qs[p.q], in}
		case in.many:
			several[p.in] = append(several[p.in], p.q)
		default:
			out.values[in.name] = m.read(in, qs[p.q])
		}
	}
	for i, said := range several {
		slices.Sort(said)
		out.values[t.Inputs[i].name] = m.readAll(&t.Inputs[i], qs, said)
	}
	m.leave(&out, qs, usedQ)
	m.readWords(t, &out)
	for _, in := range t.Inputs {
		if _, ok := out.values[in.name]; ok {
			out.order = append(out.order, in.name)
		}
	}
	return out
}

// readAll reads several numbers of one input, in the order in which they were said.
func (m matcher) readAll(in *input, qs []quantity, said []int) Value {
	v := m.read(in, qs[said[0]])
	for _, q := range said[1:] {
		more := m.read(in, qs[q])
		v.More = append(v.More, more.Length)
		v.From += ", " + more.From
	}
	return v
}

// leave sorts the numbers that the topic has no use for: what counts something
// else, what somebody else said, and what stands in a sentence of its own that
// the question does not touch, is left aside and named; about the rest the
// person is asked.
func (m matcher) leave(out *match, qs []quantity, used []bool) {
	for i, q := range qs {
		switch {
		case used[i], q.soft, restated(q, qs, used):
		case q.foreign, q.hearsay, out.topic.Leaves, m.besideThePoint(out.topic, qs, used, q):
			out.aside = append(out.aside, q)
		default:
			out.unclear = append(out.unclear, q)
		}
	}
}

// restated tells whether a number only says again what was said: "3½ by 9½,
// 9½ is the height".
func restated(q quantity, qs []quantity, used []bool) bool {
	if len(q.numbers) != 1 || q.unit() == measure.NoUnit && q.counts() {
		return false
	}
	for i, o := range qs {
		if used[i] && len(o.numbers) > 1 && slices.ContainsFunc(o.numbers, func(n measure.Quantity) bool { return n.Number == q.first().Number }) {
			return true
		}
	}
	return false
}

// besideThePoint tells whether a number stands in a sentence that neither names
// the topic nor holds a number that the topic uses, while another sentence does
// both.
func (m matcher) besideThePoint(t *Topic, qs []quantity, used []bool, q quantity) bool {
	from, to := m.sentence(q)
	touched, elsewhere := false, false
	for i, o := range qs {
		if used[i] {
			inside := o.from >= from && o.from < to
			touched = touched || inside
			elsewhere = elsewhere || !inside
		}
	}
	return elsewhere && !touched && !t.namedBy(m.text.Tokens[from:to])
}

// sentence gives the tokens of the sentence around a quantity.
func (m matcher) sentence(q quantity) (from, to int) {
	tokens := m.text.Tokens
	for from = q.from; from > 0 && tokens[from-1].Kind != words.Break; from-- {
	}
	for to = q.to; to < len(tokens) && tokens[to].Kind != words.Break; to++ {
	}
	return from, to
}

// namedBy tells whether one of the tokens names the topic.
func (t *Topic) namedBy(tokens []words.Token) bool {
	return slices.ContainsFunc(tokens, func(k words.Token) bool {
		concept := meaning(k)
		return concept != "" && slices.ContainsFunc(t.Says, func(s signal) bool { return s.concept == concept && s.weight >= named })
	})
}

// pairs gives all possible uses of the numbers, the best first; of equal ones
// the number said first, for the input declared first.
func (m matcher) pairs(t *Topic, qs []quantity) []pairing {
	var out []pairing
	for qi := range qs {
		for ii := range t.Inputs {
			in := &t.Inputs[ii]
			if !m.fitsKind(in, qs[qi]) || !m.speaksOf(in.when) && !m.isKnown(in.name) {
				continue
			}
			if s, cued := m.score(in, qs[qi]); s > 0 {
				out = append(out, pairing{qi, ii, s, cued})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b pairing) int { return b.score - a.score })
	return out
}

// isKnown tells whether an input was given before or has just been asked for.
func (m matcher) isKnown(name string) bool {
	_, ok := m.known[name]
	return ok || name == m.asked && name != ""
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

// readWords takes the topic's choices from the words of the text.
func (m matcher) readWords(t *Topic, o *match) {
	for i := range t.Inputs {
		in := &t.Inputs[i]
		if in.kind != aWord || !m.speaksOf(in.when) && !m.isKnown(in.name) {
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
		case "no", "not", "without", "skip", "never", "isn't", "don't", "minus":
			return true
		}
		if t.Concept != "" {
			return false
		}
	}
	return false
}

// fitsKind tells whether a number can be the input at all. Yards are fabric,
// unless the input takes any unit; a bare number is fabric only where the
// program has just asked for some.
func (m matcher) fitsKind(in *input, q quantity) bool {
	n := q.first()
	if q.soft && in.kind != aCount && in.name != m.asked {
		return false
	}
	single := len(q.numbers) == 1
	bare := n.Unit == measure.NoUnit && !q.percent
	if (q.money && in.kind != aPrice && in.kind != aRate) || q.percent && in.kind != aPercent {
		return false
	}
	switch in.kind {
	case aLength:
		return (single || q.ranged) && (bare || n.Unit.IsLength()) && (n.Unit != measure.YardUnit || in.anyUnit)
	case aCloth:
		return single && (n.Unit.IsLength() && (in.anyUnit || m.isCloth(q)) || bare && in.name == m.asked)
	case aSize:
		return (len(q.numbers) == 2 && !q.ranged || q.square) && n.Unit != measure.DegreeUnit
	case aCount:
		return single && bare && whole(n) && !q.square
	case aGrid:
		return len(q.numbers) == 2 && !q.ranged && q.unit() == measure.NoUnit && whole(n) && whole(q.numbers[1])
	case anAngle:
		return single && (bare || n.Unit == measure.DegreeUnit)
	case aPercent:
		return single && (bare || q.percent)
	case aPrice, aRate:
		return single && bare
	}
	return false
}

// isCloth tells whether a length can be an amount of fabric: yards and metres
// are, inches and centimetres only where "of" follows.
func (m matcher) isCloth(q quantity) bool {
	switch q.unit() {
	case measure.YardUnit, measure.MetreUnit, measure.FootUnit:
		return true
	}
	return q.to < len(m.text.Tokens) && m.text.Tokens[q.to].Is(ofWord)
}

func whole(n measure.Quantity) bool {
	_, ok := n.Number.Whole()
	return ok
}

// read turns the number into the input's value.
func (m matcher) read(in *input, q quantity) Value {
	v := Value{Kind: in.kind, From: q.text, Cut: m.basisOf(q), Each: m.isForEach(q)}
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
	case aCount:
		v.Count = clampCount(n)
	case aGrid:
		v.Count, v.Down = clampCount(n), clampCount(q.numbers[1])
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
