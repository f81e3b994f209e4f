package commands

import (
	"slices"
	"strings"

	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/words"
)

// Bounds of a reply.
const (
	maxReply = 2000 // characters, unless working was asked for
	maxQuote = 40   // characters of the person's words that are said back
)

const tooLong = "That is a very long message. Tell me the one thing you want to work out, in a sentence or two."

const noLinks = "I do not follow links. Tell me the sizes in words and I work them out, for example: binding for 54 x 68."

const tooLarge = "That is larger than any quilt. Check the number and its unit, and ask again: inches, feet, yards, centimetres and metres all work."

func answerReply(topic, text string) Reply { return Reply{Outcome: Answer, Topic: topic, Text: text} }
func decline(topic, text string) Reply     { return Reply{Outcome: Decline, Topic: topic, Text: text} }
func questionReply(topic, text string, choices []string) Reply {
	return Reply{Outcome: Question, Topic: topic, Text: text, Choices: choices}
}

// compose puts the reply's text together: the answer and what it covers as the
// topic said them, then what it rests on, what was left aside, a correction
// that mattered, and at most one reminder.
func (c *conversation) compose(r *Reply, w *work, aside []quantity, tokens []words.Token) {
	lines := w.lines
	if s := w.restsOn(); s != "" {
		lines = append(lines, s)
	}
	if s := leftAside(aside); s != "" {
		lines = append(lines, s)
	}
	if s := corrected(tokens, w.topic); s != "" {
		lines = append(lines, s)
	}
	if s := c.remind(w.tasks); s != "" {
		r.Reminders = []string{s}
		lines = append(lines, s)
	}
	r.ToCut = slices.Contains(w.tasks, cutting)
	r.Text = strings.Join(lines, "\n")
}

// restsOn says the defaults that took part, and how to change the first that
// can be.
func (w *work) restsOn() string {
	var parts []string
	change := ""
	for _, a := range w.reply.Assumed {
		def, ok := settingNamed(a.Name)
		if !ok || def.say == "" {
			continue
		}
		if def.kind == aWord {
			parts = append(parts, w.format(def.say, w.defaults.Words[a.Name]))
		} else {
			parts = append(parts, w.format(def.say, w.defaults.Lengths[a.Name]))
		}
		if change == "" && !w.defaults.own[a.Name] {
			change = def.change
		}
	}
	if len(parts) == 0 {
		return ""
	}
	s := "Reckoned on " + andList(parts) + "."
	if change != "" {
		if w.system == measure.Metric {
			change = strings.NewReplacer(`"fabric is 42 wide"`, `"fabric is 110 cm wide"`, `"2¼ in strips"`, `"6 cm strips"`, `"with 12 in extra"`, `"with 30 cm extra"`, `"3 in each side"`, `"8 cm each side"`, `"3 in margin"`, `"8 cm margin"`, `"⅜ in allowance"`, `"1 cm allowance"`).Replace(change)
		}
		s += " " + change
	}
	return s
}

// leftAside names the numbers that were not used.
func leftAside(aside []quantity) string {
	if len(aside) == 0 {
		return ""
	}
	var parts []string
	for _, q := range aside {
		parts = append(parts, safe(q.text))
	}
	return "I left the " + andList(parts) + " aside."
}

// corrected says what a word was taken for, where that made the topic.
func corrected(tokens []words.Token, t *Topic) string {
	for _, tok := range tokens {
		if !tok.Mended {
			continue
		}
		for _, s := range t.Says {
			if tok.Concept == s.concept && s.weight >= named {
				return "I read \"" + safe(tok.Text) + "\" as " + tok.Word + "."
			}
		}
	}
	return ""
}

// understood lists the inputs as they were read, and every number left aside.
func understood(t *Topic, values map[string]Value, s measure.System, aside []quantity) []Understood {
	var out []Understood
	w := work{system: s}
	put := func(name string, v any, from string) {
		value, unit, _ := w.measured(v)
		out = append(out, Understood{name, value, unit, safe(from)})
	}
	for _, in := range t.Inputs {
		v, ok := values[in.name]
		if !ok {
			continue
		}
		switch v.Kind {
		case aLength:
			for _, l := range v.lengths() {
				put(in.name, l, v.From)
			}
		case aCloth:
			put(in.name, measure.Cloth(v.Length), v.From)
		case aSize:
			put(in.name+"_width", v.Size.Width, v.From)
			put(in.name+"_length", v.Size.Length, v.From)
		case aCount:
			put(in.name, v.Count, v.From)
		case aGrid:
			put("across", v.Count, v.From)
			put("down", v.Down, v.From)
		case anAngle:
			put(in.name, measure.Angle(v.Number), v.From)
		case aPercent:
			put(in.name, percent(v.Number), v.From)
		case aList:
			for _, i := range v.Items {
				out = append(out, understoodItem(&w, in.name, i)...)
			}
		case aRate:
			out = append(out, Understood{in.name, v.Number, "money", safe(v.From)})
		case aPrice:
			put(in.name, calc.Money(v.Price), v.From)
		case aWord:
			put(in.name, v.Word, v.From)
		}
	}
	for _, q := range aside {
		for _, n := range q.numbers {
			out = append(out, Understood{"left_aside", n.Number.Float(), unitName(n.Unit), safe(q.text)})
		}
	}
	return out
}

// understoodItem lists what was read of one line of a list.
func understoodItem(w *work, name string, i Item) []Understood {
	var out []Understood
	put := func(part string, v any) {
		value, unit, _ := w.measured(v)
		out = append(out, Understood{name + "_" + part, value, unit, i.Name})
	}
	if i.Cloth > 0 {
		put("fabric", measure.Cloth(i.Cloth))
	} else {
		put("count", i.Count)
	}
	if i.Size.Width > 0 {
		put("width", i.Size.Width)
		put("length", i.Size.Length)
	}
	if i.Price > 0 {
		put("price", calc.Money(i.Price))
	}
	return out
}

// unitName is how the contract calls the unit of a number.
func unitName(u measure.Unit) string {
	switch {
	case u == measure.NoUnit:
		return "count"
	case u == measure.FootUnit:
		return "ft"
	}
	return u.String()
}

// safe gives a person's words back without anything that a surface could act
// on: letters, digits, blanks and the signs of numbers only, and not too many.
func safe(s string) string {
	var b strings.Builder
	n := 0
	for _, r := range s {
		if n++; n > maxQuote {
			b.WriteString("...")
			break
		}
		switch {
		case r == '<', r == '>', r == '@', r == '&', r == '*', r == '_', r == '`', r == '|', r == '~', r == '[', r == ']', r == '\\', r == '#', r < ' ', r == ':':
			b.WriteByte(' ')
		default:
			b.WriteRune(r)
		}
	}
	return strings.Join(strings.Fields(b.String()), " ")
}

// bounded keeps a reply to what a person reads at once.
func bounded(r Reply) Reply {
	r.Text = shorten(r.Text, maxReply)
	return r
}

// shorten cuts a text at the last line that fits, or else within the line.
func shorten(s string, characters int) string {
	if len(s) <= characters {
		return s
	}
	runes := []rune(s)
	if len(runes) <= characters {
		return s
	}
	cut := string(runes[:characters-3])
	if i := strings.LastIndexByte(cut, '\n'); i > characters/2 {
		return cut[:i]
	}
	return cut + "..."
}

// andList joins with commas and a last "and".
func andList(parts []string) string { return joinList(parts, " and ") }

// orList joins with commas and a last "or".
func orList(parts []string) string { return joinList(parts, " or ") }

func joinList(parts []string, last string) string {
	if len(parts) < 2 {
		return strings.Join(parts, "")
	}
	return strings.Join(parts[:len(parts)-1], ", ") + last + parts[len(parts)-1]
}

// capital gives the text with its first letter in upper case.
func capital(s string) string {
	if s == "" || s[0] < 'a' || s[0] > 'z' {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
