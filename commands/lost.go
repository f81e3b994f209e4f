package commands

import "strings"

// lost answers a text that no topic explains: a question about bare numbers,
// else one friendly line and what the program can do.
func (c *conversation) lost() Reply {
	if c.state.Asked != "" || c.state.Doubt != "" {
		return c.askAgain()
	}
	var numbers []string
	for _, q := range c.joined {
		if !q.soft {
			numbers = append(numbers, safe(q.text))
		}
	}
	examples := c.assistant.examples()
	if len(numbers) > 0 && c.aboutTrade() {
		r := questionReply("", "What would you like to know about "+andList(numbers)+"? For example the binding, the backing or the yardage.", examples)
		return c.puzzled(r)
	}
	return c.puzzled(decline("", "That is outside what I do. I work out sizes, cutting and fabric for quilts. Try: "+strings.Join(examples[:2], "; or: ")+"."))
}

// aboutTrade tells whether a text with numbers may well be about a quilt: it
// holds a term of the trade, or nothing but numbers.
func (c *conversation) aboutTrade() bool {
	plain := true
	for _, t := range c.text.Tokens {
		if t.Word == "" || fillers[t.Word] {
			continue
		}
		if len(c.assistant.heard[t.Concept]) > 0 || t.Is(quilt) || t.Is(block) || t.Is(fabric) || t.Is(strip) {
			return true
		}
		plain = false
	}
	return plain
}

// askAgain repeats a question that was not answered, in other words.
func (c *conversation) askAgain() Reply {
	t := c.assistant.topicNamed(c.state.Last.topic())
	if t == nil {
		c.state.Asked, c.state.Doubt = "", ""
		return c.lost()
	}
	c.state.Misses++
	text := rephrase("", t, c.state.Misses)
	if in := t.input(c.state.Asked); in.ask != "" && c.state.Misses < 2 {
		text = "I did not catch that. " + in.ask + " For example: " + t.Examples[0] + "."
	}
	return questionReply(t.Name, text, c.state.Choices)
}

// puzzled counts a miss; after two in a row the reply offers the shop's help.
func (c *conversation) puzzled(r Reply) Reply {
	c.state.Misses++
	if c.state.Misses > 2 {
		r.Text += " Or ask at the shop."
	}
	return r
}

// examples gives one request of each of the first topics, for people who do
// not know how to begin.
func (a *Assistant) examples() []string {
	var out []string
	for _, name := range []string{"binding", "wedge-ring", "backing", "borders", "yardage"} {
		if t := a.topicNamed(name); t != nil && len(t.Examples) > 0 {
			out = append(out, t.Examples[0])
		}
	}
	return out
}
