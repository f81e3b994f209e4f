package commands

import (
	"maps"
	"slices"
	"strings"

	"counterhand/calc/measure"
)

// together gives the topics that the text asks for at once: "backing, batting
// and binding for 56 x 70". They are topics that can be answered side by side,
// each named and each complete.
func (c *conversation) together(found []candidate) []candidate {
	var out []candidate
	for _, f := range found {
		if f.topic.Together && f.names() && f.missing == nil && f.rivals == nil {
			out = append(out, f)
		}
	}
	if len(out) < 2 || unexplained(out) || !slices.ContainsFunc(out, func(f candidate) bool { return f.topic == found[0].topic }) {
		return nil
	}
	// In the order of the topics, which is the order of the work.
	var sorted []candidate
	for i := range c.assistant.topics {
		for _, f := range out {
			if f.topic == &c.assistant.topics[i] {
				sorted = append(sorted, f)
			}
		}
	}
	return sorted
}

// unexplained tells whether a number is of no use to any of the topics.
func unexplained(found []candidate) bool {
	return slices.ContainsFunc(found[0].unclear, func(q quantity) bool {
		return !slices.ContainsFunc(found, func(f candidate) bool {
			return !slices.ContainsFunc(f.unclear, func(o quantity) bool { return o.from == q.from })
		})
	})
}

// answerTogether answers several topics in one reply.
func (c *conversation) answerTogether(found []candidate) Reply {
	request := Request{Values: map[string]Value{}, Metric: c.system == measure.Metric}
	var replies []Reply
	state := c.state
	for _, f := range found {
		r := c.answer(candidate{match: match{topic: f.topic, values: f.values, order: f.order}}, nil)
		if r.Outcome != Answer {
			return r
		}
		request.Topics = append(request.Topics, f.topic.Name)
		maps.Copy(request.Values, c.state.Last.Values)
		request.Size = c.state.Last.Size
		replies = append(replies, r)
	}
	reminded := c.state.Reminded
	c.state = state.remember(request)
	c.state.Reminded = reminded
	return merge(replies)
}

// answerParts answers a topic by the topics that it is made of.
func (c *conversation) answerParts(found candidate, values map[string]Value) Reply {
	var parts []candidate
	for _, name := range found.topic.Parts {
		t := c.assistant.topicNamed(name)
		parts = append(parts, candidate{match: match{topic: t, values: partOf(values, t)}})
	}
	return c.answerTogether(parts)
}

// followTogether changes parts of a request of several topics.
func (c *conversation) followTogether(found []candidate) (Reply, bool) {
	last := c.state.Last
	if len(found) > 0 && found[0].names() && found[0].missing == nil && !c.pointsBack() {
		return Reply{}, false
	}
	m := matcher{text: c.text, metric: c.system == measure.Metric, known: last.Values}
	var parts []candidate
	changed := false
	for _, name := range last.Topics {
		t := c.assistant.topicNamed(name)
		if t == nil {
			continue
		}
		f := c.assistant.candidate(m, t, 0, c.joined, c.split, last.Values)
		values := partOf(last.Values, t)
		if f.cued > 0 || len(f.values) > 0 && len(f.unclear) == 0 {
			maps.Copy(values, f.values)
			changed = true
		}
		f.values = values
		parts = append(parts, f)
	}
	if !changed {
		return Reply{}, false
	}
	return c.answerTogether(parts), true
}

// partOf gives those of the values that the topic takes.
func partOf(values map[string]Value, t *Topic) map[string]Value {
	out := map[string]Value{}
	for _, in := range t.Inputs {
		if v, ok := values[in.name]; ok {
			out[in.name] = v
		}
	}
	return out
}

// merge makes one reply of several answers; figures get their topic's name.
func merge(replies []Reply) Reply {
	out := Reply{Outcome: Answer, Topic: "plan"}
	var text []string
	for _, r := range replies {
		text = append(text, capital(readable(strings.ReplaceAll(r.Topic, "-", " ")))+": "+r.Text)
		for _, f := range r.Figures {
			f.Name = r.Topic + "." + f.Name
			out.Figures = append(out.Figures, f)
		}
		for _, u := range r.Understood {
			if !contains(out.Understood, u) {
				out.Understood = append(out.Understood, u)
			}
		}
		for _, a := range r.Assumed {
			if !contains(out.Assumed, a) {
				out.Assumed = append(out.Assumed, a)
			}
		}
		out.ToCut = out.ToCut || r.ToCut
		for _, l := range r.Working {
			out.Working = append(out.Working, r.Topic+": "+l)
		}
		out.Scenes, out.Templates = append(out.Scenes, r.Scenes...), append(out.Templates, r.Templates...)
		for _, m := range r.Reminders {
			if !contains(out.Reminders, m) {
				out.Reminders = append(out.Reminders, m)
			}
		}
	}
	out.Text = strings.Join(text, "\n")
	return out
}

func contains[T comparable](list []T, x T) bool {
	for _, y := range list {
		if x == y {
			return true
		}
	}
	return false
}
