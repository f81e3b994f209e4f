package commands

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// work is one topic being worked out: it hands the topic its inputs, notes
// every default that is taken, and gathers the reply.
type work struct {
	conversation *conversation
	topic        *Topic
	defaults     *Defaults
	system       measure.System
	values       map[string]Value
	reply        Reply
	lines        []string
	steps        []calc.Step
	tasks        []task
	size         measure.Size // of the quilt that the topic is about or makes
	used         map[string]bool
}

// question is given by a topic that cannot go on without an input.
type question struct {
	input   string
	text    string
	choices []string
}

func (q *question) Error() string { return "missing " + q.input }

// needs asks for an input in the words of its declaration.
func (w *work) needs(name string) error {
	in := w.topic.input(name)
	return &question{input: name, text: in.ask, choices: in.offer}
}

// refusal is given by a topic where the request is impossible in words.
type refusal struct{ text string }

func (r *refusal) Error() string { return r.text }

// cannot makes a refusal; the arguments are shown in the person's units.
func (w *work) cannot(format string, args ...any) error {
	return &refusal{w.format(format, args...)}
}

func (t *Topic) input(name string) *input {
	for i := range t.Inputs {
		if t.Inputs[i].name == name {
			return &t.Inputs[i]
		}
	}
	return &input{name: name}
}

// has tells whether the topic takes the input.
func (t *Topic) has(name string) bool {
	return slices.ContainsFunc(t.Inputs, func(in input) bool { return in.name == name })
}

// given tells whether the request says the input.
func (w *work) given(name string) bool { _, ok := w.values[name]; return ok }

// value gives an input and notes that it was used.
func (w *work) value(name string) (Value, bool) {
	v, ok := w.values[name]
	if ok {
		w.used[name] = true
	}
	return v, ok
}

// length gives a length that the request says, else zero.
func (w *work) length(name string) measure.Length { v, _ := w.value(name); return v.Length }

// count gives a count that the request says, else zero.
func (w *work) count(name string) int { v, _ := w.value(name); return v.Count }

// word gives a choice that the request says, else the empty word.
func (w *work) word(name string) string { v, _ := w.value(name); return v.Word }

// lengthOr gives a length that the request says under the name, else the
// default, which is then noted as assumed.
func (w *work) lengthOr(name, setting string) measure.Length {
	if v, ok := w.value(name); ok {
		return v.Length
	}
	return w.assumeLength(setting)
}

// assumeLength takes a default length and notes it.
func (w *work) assumeLength(setting string) measure.Length {
	l := w.defaults.Lengths[setting]
	w.assume(setting, l)
	return l
}

// wordOr gives a choice that the request says, else the default, noted.
func (w *work) wordOr(name, setting string) string {
	if v, ok := w.value(name); ok {
		return v.Word
	}
	word := w.defaults.Words[setting]
	w.assume(setting, word)
	return word
}

// assume notes a default that takes part in the result, once.
func (w *work) assume(name string, v any) {
	for _, a := range w.reply.Assumed {
		if a.Name == name {
			return
		}
	}
	w.reply.Assumed = append(w.reply.Assumed, w.assumed(name, v))
}

// assumed gives a default in the words of its setting, where it has them.
func (w *work) assumed(name string, v any) Assumed {
	value, unit, shown := w.measured(v)
	said := readable(name) + ": " + shown
	if def, ok := settingNamed(name); ok && def.say != "" {
		said = w.format(def.say, v)
	}
	return Assumed{name, value, unit, said}
}

// conventions gives the habits of the sums; what the request says goes before
// the defaults, and those that take part are noted as assumed.
func (w *work) conventions(parts ...string) calc.Conventions {
	c := w.defaults.conventions(w.system)
	for _, p := range parts {
		switch p {
		case "usable_width":
			c.UsableWidth = w.lengthOr("usable_width", p)
		case "wide_backing":
			c.WideBacking = w.lengthOr("wide_backing", p)
		case "seam":
			c.Seam = w.lengthOr("seam", p)
		}
	}
	return c
}

// finished gives a size that the request says, as it finishes: what was said
// to be cut loses its seams.
func (w *work) finished(name string, seam measure.Length) measure.Length {
	v, _ := w.value(name)
	if v.Cut == cutSize {
		return v.Length - 2*seam
	}
	return v.Length
}

// cutOf gives a size that the request says, as it is cut.
func (w *work) cutOf(name string, seam measure.Length) measure.Length {
	v, _ := w.value(name)
	if v.Cut == finishedSize {
		return v.Length + 2*seam
	}
	return v.Length
}

// figure adds a result. Lengths are in inches or centimetres, cloth in yards
// or metres, by the person's system.
func (w *work) figure(name string, v any) {
	value, unit, shown := w.measured(v)
	w.reply.Figures = append(w.reply.Figures, Figure{name, value, unit, shown})
}

// percent and factor are figures of those units.
type (
	percent float64
	factor  float64
)

// measured gives a value as the contract writes it: number, unit, and as shown.
func (w *work) measured(v any) (value any, unit, shown string) {
	metric := w.system == measure.Metric
	switch v := v.(type) {
	case measure.Length:
		if metric {
			return v.In(measure.Centimetre), "cm", v.Show(w.system)
		}
		return v.Inches(), "in", v.Show(w.system)
	case measure.Cloth:
		if metric {
			return measure.Length(v).In(measure.Metre), "m", v.Show(w.system)
		}
		return measure.Length(v).In(measure.Yard), "yd", v.Show(w.system)
	case measure.Angle:
		return float64(v), "deg", v.Show()
	case int:
		return float64(v), "count", fmt.Sprint(v)
	case factor:
		return float64(v), "count", trimmed(float64(v), 3)
	case percent:
		return float64(v), "percent", trimmed(float64(v), 2) + " %"
	case calc.Money:
		return float64(v) / 100, "money", v.String()
	}
	return fmt.Sprint(v), "words", fmt.Sprint(v)
}

// trimmed writes a number with at most the given places.
func trimmed(v float64, places int) string {
	s := fmt.Sprintf("%.*f", places, v)
	if places == 0 {
		return s
	}
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// format fills a format whose verbs are %v, showing lengths, cloth, sizes and
// angles in the person's units.
func (w *work) format(format string, args ...any) string {
	shown := make([]any, len(args))
	for i, a := range args {
		switch a := a.(type) {
		case string:
			shown[i] = a
		case measure.Size:
			shown[i] = a.Show(w.system)
		case calc.Unrounded:
			shown[i] = a.Show(w.system)
		case float64:
			shown[i] = trimmed(a, 4)
		default:
			_, _, shown[i] = w.measured(a)
		}
	}
	return fmt.Sprintf(format, shown...)
}

// say adds a line to the reply.
func (w *work) say(format string, args ...any) {
	if line := strings.TrimSpace(w.format(format, args...)); line != "" {
		w.lines = append(w.lines, line)
	}
}

// step adds one line of working.
func (w *work) step(format string, args ...any) {
	w.steps = append(w.steps, calc.Step{Format: format, Args: args})
}

// show adds the working.
func (w *work) show(steps []calc.Step) { w.steps = append(w.steps, steps...) }

// does notes what the answer is about to make the person do.
func (w *work) does(tasks ...task) { w.tasks = append(w.tasks, tasks...) }

// explain turns the error of a sum into a reply's text.
func (w *work) explain(err error) string {
	var limit *calc.LimitError
	var no *refusal
	switch {
	case errors.As(err, &limit):
		text := w.format(limit.Reason.Format, limit.Reason.Args...)
		if limit.Works.Format != "" {
			text += " " + w.format(limit.Works.Format, limit.Works.Args...)
		}
		return text
	case errors.As(err, &no):
		return no.text
	}
	return "I cannot work that out. Ask the shop."
}

// counted writes a count with its noun: "1 strip", "7 strips".
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	if strings.HasSuffix(noun, "ch") || strings.HasSuffix(noun, "sh") {
		return fmt.Sprintf("%d %ses", n, noun)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// percentage gives a percentage that the request says, else zero.
func (w *work) percentage(name string) float64 { v, _ := w.value(name); return v.Number }
