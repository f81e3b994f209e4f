package commands

import (
	"maps"
	"slices"

	"counterhand/calc/measure"
	"counterhand/commands/words"
)

// followUp answers a text that changes the last request or adds to it: "and
// for 72 x 90?", "14 instead", "7/8". It is not one where the text names
// another topic, or states a request of its own that needs nothing from before.
func (c *conversation) followUp(found []candidate) (Reply, bool) {
	last := c.state.Last
	if last.none() {
		return Reply{}, false
	}
	if len(last.Topics) > 1 {
		return c.followTogether(found)
	}
	t := c.assistant.topicNamed(last.topic())
	if t == nil || t.Alone {
		return Reply{}, false
	}
	before := c.system
	if last.Metric && c.state.Units == "" {
		c.system = systemOf(c.split, measure.Metric)
	}
	m := matcher{text: c.text, metric: c.system == measure.Metric, known: last.Values, asked: c.state.Asked, changed: last.Changed}
	f := c.assistant.candidate(m, t, c.saysFor(t), c.joined, c.split, last.Values)
	if relative, ok := c.inFamily(m, t, f); ok {
		f, t = relative, relative.topic
		last.Values = partOf(last.Values, t)
	}
	if c.has(otherMethod) && t.Other != nil {
		t.Other(f.values, last.Values)
	}
	if len(c.split) == 0 && len(f.values) == 0 && len(found) == 0 && c.has(finished, unfinished) {
		f.values = c.rebased(last)
	}
	if !c.continues(f, found) {
		c.system = before
		return Reply{}, false
	}
	known := maps.Clone(last.Values)
	for name := range f.values {
		for _, gone := range t.input(name).replaces {
			if _, again := f.values[gone]; !again {
				delete(known, gone)
			}
		}
	}
	if missingStillGroup(t, known, f.values) == nil {
		f.missing = nil
	}
	return c.answer(f, known), true
}

// inFamily gives the topic of the same family that has a use for all numbers of
// the text, where the last topic has not.
func (c *conversation) inFamily(m matcher, t *Topic, f candidate) (candidate, bool) {
	if t.Family == "" || len(f.unclear) == 0 {
		return candidate{}, false
	}
	for i := range c.assistant.topics {
		other := &c.assistant.topics[i]
		if other == t || other.Family != t.Family {
			continue
		}
		m.known = partOf(c.state.Last.Values, other)
		r := c.assistant.candidate(m, other, c.saysFor(other), c.joined, c.split, m.known)
		if len(r.unclear) == 0 && r.missing == nil {
			return r, true
		}
	}
	return candidate{}, false
}

// rebased takes the sizes that were said last as cut or as finished: "no, that
// was the cut size".
func (c *conversation) rebased(last Request) map[string]Value {
	out := map[string]Value{}
	for _, name := range last.Changed {
		v := last.Values[name]
		if v.Kind != aLength && v.Kind != aSize || name == "usable_width" || name == "seam" {
			continue
		}
		v.Cut = finishedSize
		if c.has(unfinished) {
			v.Cut = cutSize
		}
		out[name] = v
	}
	return out
}

// saysFor gives what the text's concepts say for the topic.
func (c *conversation) saysFor(t *Topic) int {
	says := c.assistant.signals(c.text.Tokens)
	for i := range c.assistant.topics {
		if &c.assistant.topics[i] == t {
			return says[i]
		}
	}
	return 0
}

// missingStillGroup gives the first group of needed inputs that neither knows.
func missingStillGroup(t *Topic, known, now map[string]Value) []string {
	for _, group := range t.Needs {
		if missingStill(group, known) && missingStill(group, now) {
			return group
		}
	}
	return nil
}

// continues decides between the last topic, with f as what the text changes of
// it, and the topics found in the text alone.
func (c *conversation) continues(f candidate, found []candidate) bool {
	if len(f.values) == 0 && len(f.unclear) == 0 {
		return c.state.Asked != "" && len(found) == 0
	}
	if len(found) == 0 {
		return len(f.values) > 0 || c.state.Asked != "" || c.pointsBack()
	}
	best := found[0]
	if best.topic != f.topic {
		if best.names() && (c.state.Asked == "" || best.missing == nil) {
			return false
		}
		return f.total()+lastTopicGain >= best.total()
	}
	fresh := best.says >= sure && best.missing == nil && len(best.unclear) == 0
	return !fresh || c.state.Asked != "" || c.pointsBack()
}

// severalQuestions answers a message with more than one question in it, each
// on its own, where each sentence can be answered by itself.
func (c *conversation) severalQuestions() (Reply, bool) {
	parts := sentences(c.text)
	if len(parts) < 2 {
		return Reply{}, false
	}
	var asks []words.Text
	for _, p := range parts {
		qs := quantities(p)
		m := matcher{text: p, metric: systemOf(qs, c.unitsNow()) == measure.Metric}
		found := c.assistant.candidates(m, joinSides(p, slices.Clone(qs)), qs)
		whole := len(found) > 0 && found[0].names() && found[0].missing == nil && len(found[0].unclear) == 0 && !found[0].topic.Alone
		switch {
		case whole:
			asks = append(asks, p)
		case len(qs) > 0:
			return Reply{}, false
		}
	}
	if len(asks) < 2 {
		return Reply{}, false
	}
	var replies []Reply
	for _, p := range asks {
		c.text = p
		c.split = quantities(p)
		c.joined = joinSides(p, slices.Clone(c.split))
		c.system = systemOf(c.split, c.unitsNow())
		m := matcher{text: p, metric: c.system == measure.Metric}
		found := c.assistant.candidates(m, c.joined, c.split)
		r := c.answer(found[0], nil)
		if r.Outcome != Answer {
			return r, true
		}
		replies = append(replies, r)
	}
	return merge(replies), true
}

// sentences splits a text at its breaks; texts without a word are dropped.
func sentences(t words.Text) []words.Text {
	var out []words.Text
	start := 0
	flush := func(end int) {
		if slices.ContainsFunc(t.Tokens[start:end], func(k words.Token) bool { return k.Kind == words.Word }) {
			out = append(out, words.Text{Clean: t.Clean, Tokens: t.Tokens[start:end:end]})
		}
		start = end + 1
	}
	for i, k := range t.Tokens {
		if k.Kind == words.Break {
			flush(i)
		}
	}
	if start < len(t.Tokens) {
		flush(len(t.Tokens))
	}
	return out
}
