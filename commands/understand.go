package commands

import (
	"cmp"
	"slices"

	"counterhand/calc/measure"
	"counterhand/commands/words"
)

// Weights of understanding, beside those of the match. A topic's own name says
// ten; see [Topic.Says].
const (
	named         = 10 // a concept of this weight names the topic
	perSay        = 3  // what a point of saying weighs against the match's points
	unclearCosts  = 14 // a number that the topic has no use for
	missingCosts  = 20 // an input that it would have to ask for
	sure          = 7  // what a request has to say to stand by itself, though its topic was talked about before
	namedGain     = 10 // the topic is named, not only hinted at
	lastTopicGain = 12 // the topic talked about last, in a follow-up
)

// candidate is a topic that the text may be about.
type candidate struct {
	match
	says    int
	missing []string // the first group of inputs of which none is there
}

// total is how well the topic explains the text.
func (c candidate) total() int {
	t := c.says*perSay + c.score - unclearCosts*len(c.unclear)
	if c.names() {
		t += namedGain
	}
	if c.missing != nil {
		t -= missingCosts
	}
	return t
}

// names tells whether the text names the topic and does not only hint at it.
func (c candidate) names() bool { return c.says >= named }

// signals counts what the concepts of the text say for each topic. Of one
// concept that occurs twice, once counts; any number of hints together say less
// than a topic's name.
func (a *Assistant) signals(tokens []words.Token) []int {
	says := make([]int, len(a.topics))
	hints := make([]int, len(a.topics))
	seen := make([]words.Concept, 0, 16)
	asked := askedFor(tokens)
	for _, t := range tokens {
		concept := meaning(t)
		if concept == "" || slices.Contains(seen, concept) {
			continue
		}
		seen = append(seen, concept)
		for _, h := range a.heard[concept] {
			switch {
			case h.asked && !slices.Contains(asked, concept):
			case h.weight >= named:
				says[h.topic] += h.weight
			default:
				hints[h.topic] += h.weight
			}
		}
	}
	for i, h := range hints {
		says[i] += min(h, named-1)
	}
	return says
}

// meaning gives the concept of a token; a number of degrees speaks of angles, one
// of yards or metres of fabric.
func meaning(t words.Token) words.Concept {
	switch {
	case t.Kind == words.Word:
		return t.Concept
	case t.Kind == words.Number && t.Quantity.Unit == measure.DegreeUnit:
		return angleWord
	case t.Kind == words.Mark && t.Text == "%":
		return percentWord
	case t.Kind == words.Number && (t.Quantity.Unit == measure.YardUnit || t.Quantity.Unit == measure.MetreUnit):
		return clothAmount
	}
	return ""
}

// askedFor gives the concepts that are asked for: the first term behind each
// "how many" and "how much", and what stands with "longest" or "what size".
func askedFor(tokens []words.Token) []words.Concept {
	var out []words.Concept
	for i, t := range tokens {
		if !(t.Is(howMany) || t.Is(howMuch) || t.Is(howBig) || t.Is(howWide) || t.Is(howLong) || t.Is(longest) || t.Is(largest)) {
			continue
		}
		out = append(out, t.Concept)
		for j := i + 1; j < len(tokens) && j <= i+7; j++ {
			n := tokens[j]
			if n.Kind == words.Break {
				break
			}
			if n.Kind != words.Word || n.Concept == "" || passing[n.Concept] {
				continue
			}
			out = append(out, n.Concept)
			break
		}
	}
	return out
}

// passing are concepts that may stand between "how many" and what is counted.
var passing = map[words.Concept]bool{
	finished: true, unfinished: true, cutVerb: true, need: true, have: true, long: true, wide: true,
	eachWord: true, makeIt: true, upTo: true, fromWord: true, high: true, inInches: true, precut: true,
}

// candidates gives the topics that the text speaks for, the best first.
func (a *Assistant) candidates(m matcher, qs, split []quantity) []candidate {
	says := a.signals(m.text.Tokens)
	var out []candidate
	for i := range a.topics {
		if says[i] <= 0 || !m.speaksOf(a.topics[i].About) {
			continue
		}
		out = append(out, a.candidate(m, &a.topics[i], says[i], qs, split, nil))
	}
	slices.SortStableFunc(out, func(x, y candidate) int { return cmp.Compare(y.total(), x.total()) })
	return out
}

// candidate matches the text against one topic, with inputs that are known
// from before.
func (a *Assistant) candidate(m matcher, t *Topic, says int, qs, split []quantity, known map[string]Value) candidate {
	use := qs
	if t.Apart || !slices.ContainsFunc(t.Inputs, func(in input) bool { return in.kind == aSize }) {
		use = split
	}
	c := candidate{match: m.match(t, use), says: says}
	for _, group := range t.Needs {
		if !slices.ContainsFunc(group, func(name string) bool {
			_, now := c.values[name]
			_, before := known[name]
			return now || before
		}) {
			c.missing = group
			break
		}
	}
	return c
}

// systemOf tells what the numbers of the text are measured in: the unit that
// comes first decides, and where none is said the system that applies.
func systemOf(qs []quantity, otherwise measure.System) measure.System {
	for _, q := range qs {
		switch q.unit() {
		case measure.MillimetreUnit, measure.CentimetreUnit, measure.MetreUnit:
			return measure.Metric
		case measure.InchUnit, measure.FootUnit, measure.YardUnit:
			return measure.Imperial
		}
	}
	return otherwise
}
