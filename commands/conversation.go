package commands

import (
	"errors"
	"maps"
	"slices"

	"counterhand/calc/measure"
	"counterhand/commands/words"
)

// conversation is one turn while it is being answered.
type conversation struct {
	assistant *Assistant
	defaults  Defaults
	text      words.Text
	state     State
	own       Settings
	forget    bool
	inFull    bool   // the working was asked for, so the reply may be long
	typed     string // a short answer as it was typed, where it stands for a choice
	example   bool   // the person does not know, so the first choice stands in as an example

	joined, split []quantity // the numbers, with and without "wide ... long ..." made one size
	system        measure.System
}

// respond answers the text. The order matters: somebody who is hurt comes
// first, then what steers the conversation, then what is asked.
func (c *conversation) respond() Reply {
	tokens := c.text.Tokens
	if len(tokens) == 0 && !c.state.Drill.open() {
		return c.puzzled(questionReply("", "What would you like to work out? For example: binding for 54 x 68.", c.assistant.examples()))
	}
	if r, ok := c.hurt(); ok {
		return r
	}
	if expanded, ok := c.shortAnswer(); ok {
		c.typed = c.text.Clean
		c.text = expanded
	}
	c.split = quantities(c.text)
	c.joined = joinSides(c.text, slices.Clone(c.split))
	if len(c.split) > maxMatching {
		return decline("", "That is more numbers than I can keep apart. Ask it in parts, one piece of the quilt at a time.")
	}
	if r, ok := c.inDrill(); ok {
		return r
	}
	if r, ok := c.steer(); ok {
		return r
	}
	if r, ok := c.severalQuestions(); ok {
		return r
	}
	return c.ask()
}

// ask answers a text that holds one request.
func (c *conversation) ask() Reply {
	c.returnTo()
	c.system = systemOf(c.split, c.unitsNow())
	m := matcher{text: c.text, metric: c.system == measure.Metric}
	found := c.assistant.candidates(m, c.joined, c.split)
	follow, following := c.followUp(found)
	switch {
	case following:
		return follow
	case len(found) == 0 || !found[0].names() && found[0].missing != nil:
		if loose, ok := c.readLoosely(); ok {
			found = loose
			break
		}
		if len(found) == 0 {
			return c.lost()
		}
	}
	if rs := c.together(found); len(rs) > 1 {
		return c.answerTogether(rs)
	}
	if len(found) > 1 && found[1].total() == found[0].total() && !found[0].names() && !found[1].names() && found[0].missing == nil && found[1].missing == nil {
		return c.puzzled(questionReply("", capital(found[0].topic.Title)+", or "+found[1].topic.Title+"?", []string{readable(found[0].topic.Name), readable(found[1].topic.Name)}))
	}
	return c.answer(found[0], nil)
}

// readLoosely reads a text that names nothing once more, with common words taken
// for slips of the trade's own ("wading" for wadding), and keeps that reading
// where it names a topic and is complete.
func (c *conversation) readLoosely() ([]candidate, bool) {
	text := c.assistant.vocabulary.ReadLoosely(c.text.Clean)
	split := quantities(text)
	joined := joinSides(text, slices.Clone(split))
	found := c.assistant.candidates(matcher{text: text, metric: c.system == measure.Metric}, joined, split)
	if len(found) == 0 || !found[0].names() || found[0].missing != nil || len(found[0].unclear) > 0 {
		return nil, false
	}
	c.text, c.split, c.joined = text, split, joined
	return found, true
}

// unitsNow gives the system that applies where a text names no unit.
func (c *conversation) unitsNow() measure.System {
	if c.state.Units != "" {
		return systemNamed(c.state.Units)
	}
	return c.defaults.System
}

// answer works a topic out with what the text says and what is known from
// before, and makes it the last request of the conversation.
func (c *conversation) answer(found candidate, known map[string]Value) Reply {
	if found.topic.Begin != nil {
		return found.topic.Begin(c, found)
	}
	values := maps.Clone(known)
	if values == nil {
		values = map[string]Value{}
	}
	maps.Copy(values, found.values)
	if c.typed != "" {
		for _, name := range found.order {
			v := values[name]
			v.From = c.typed
			values[name] = v
		}
	}
	request := Request{Topics: []string{found.topic.Name}, Values: values, Changed: found.order, Metric: c.system == measure.Metric}
	if r, ok := c.doubt(found, request); ok {
		return r
	}
	if found.missing != nil {
		c.borrowSize(found, values)
		if missingStill(found.missing, values) {
			in := found.topic.toAsk(found.missing)
			return c.questionAbout(request, in.name, "", in.ask, in.offer, found)
		}
	}
	if r, ok := c.impossible(found.topic, values); ok {
		c.state = c.state.remember(request)
		r.Understood = understood(found.topic, values, c.system, found.aside)
		return r
	}
	if len(found.topic.Parts) > 0 {
		return c.answerParts(found, values)
	}
	reply, w, err := c.workOut(found.topic, values)
	var missing *question
	switch {
	case errors.As(err, &missing):
		return c.questionAbout(request, missing.input, "", missing.text, missing.choices, found)
	case err != nil:
		c.state = c.state.remember(request)
		r := decline(found.topic.Name, w.explain(err))
		r.Understood = understood(found.topic, values, c.system, found.aside)
		return r
	}
	if c.example && !found.topic.Alone {
		c.sayExample(&reply, w, found)
	}
	request.Size = w.size
	if !found.topic.Alone {
		c.state = c.state.remember(request)
	}
	reply.Understood = understood(found.topic, values, c.system, found.aside)
	c.compose(&reply, w, found.aside, c.text.Tokens)
	return reply
}

// workOut runs a topic on its inputs.
func (c *conversation) workOut(t *Topic, values map[string]Value) (Reply, *work, error) {
	w := &work{conversation: c, topic: t, defaults: &c.defaults, system: c.system, values: values, used: map[string]bool{}}
	w.reply = Reply{Outcome: Answer, Topic: t.Name}
	err := t.Work(w)
	for _, s := range w.steps {
		w.reply.Working = append(w.reply.Working, w.format(s.Format, s.Args...))
	}
	return w.reply, w, err
}

// sayExample says that a value was taken only because the person does not know
// it: the answer is an example then.
func (c *conversation) sayExample(r *Reply, w *work, found candidate) {
	for _, name := range found.order {
		in, v := found.topic.input(name), found.values[name]
		for _, u := range understood(&Topic{Inputs: []input{*in}}, map[string]Value{name: v}, c.system, nil) {
			r.Assumed = append(r.Assumed, Assumed{u.Name, u.Value, u.Unit, safe(v.From) + " for " + in.spoken()})
		}
		w.lines = append([]string{"As an example, with " + safe(v.From) + " for " + in.spoken() + ":"}, w.lines...)
	}
}

// missingStill tells whether none of a group of inputs is known.
func missingStill(group []string, values map[string]Value) bool {
	return !slices.ContainsFunc(group, func(name string) bool { _, ok := values[name]; return ok })
}

// toAsk gives the input of a group that the program asks for: the first that
// has a question.
func (t *Topic) toAsk(group []string) *input {
	for _, name := range group {
		if in := t.input(name); in.ask != "" {
			return in
		}
	}
	return t.input(group[0])
}

// borrowSize takes the size of the quilt talked about before, where the text
// points to it: "backing for that", "and the binding?".
func (c *conversation) borrowSize(found candidate, values map[string]Value) {
	size := c.state.Last.Size
	if size == (measure.Size{}) && len(c.state.Last.Values) == 0 || !c.pointsBack() {
		return
	}
	c.borrowBlocks(found, values)
	for _, name := range found.missing {
		if in := found.topic.input(name); in.kind == aSize && size != (measure.Size{}) {
			values[name] = Value{Kind: aSize, Size: size, From: "the one before"}
			return
		}
	}
}

// borrowBlocks takes the blocks talked about before, and how they are set.
func (c *conversation) borrowBlocks(found candidate, values map[string]Value) {
	for _, name := range []string{"block", "grid", "across", "down"} {
		v, ok := c.state.Last.Values[name]
		if _, said := values[name]; ok && !said && found.topic.has(name) {
			values[name] = v
		}
	}
}

// doubt asks about a number that the topic has no use for, or that could be
// two things.
func (c *conversation) doubt(found candidate, request Request) (Reply, bool) {
	var q quantity
	var offer []string
	switch {
	case found.ranged != nil:
		return c.askRange(found, request), true
	case found.rivals != nil:
		q = found.rivals.q
		for _, in := range found.rivals.options {
			offer = append(offer, in.spoken())
			delete(request.Values, in.name)
		}
	case len(found.unclear) > 0:
		q = found.unclear[0]
		m := matcher{text: c.text}
		for i := range found.topic.Inputs {
			in := &found.topic.Inputs[i]
			if _, taken := request.Values[in.name]; !taken && m.fitsKind(in, q) {
				offer = append(offer, in.spoken())
			}
		}
		offer = append(offer, "leave it aside")
	default:
		return Reply{}, false
	}
	text := "What is the " + safe(q.text) + "?"
	if len(offer) > 0 {
		text += " " + capital(orList(offer)) + "?"
	}
	r := c.questionAbout(request, "", q.text, text, offer, found)
	return r, true
}

// askRange asks which end of a range is meant, where one length is needed.
func (c *conversation) askRange(found candidate, request Request) Reply {
	q, in := found.ranged.q, found.ranged.in
	var ends []string
	for _, n := range q.numbers {
		unit := n.Unit
		if unit == measure.NoUnit {
			unit = q.unit()
		}
		l, err := n.Number.Of(matcher{metric: c.system == measure.Metric}.lengthUnit(unit, in.kind))
		if err != nil {
			return decline(found.topic.Name, tooLarge)
		}
		ends = append(ends, l.Show(c.system))
	}
	return c.questionAbout(request, in.name, "", capital(in.spoken())+": shall I take "+orList(ends)+"?", ends, found)
}

// questionAbout asks for one input and keeps what is known so far.
func (c *conversation) questionAbout(request Request, input, doubtful, text string, choices []string, found candidate) Reply {
	again := c.state.Asked == input && (input != "" || doubtful != "" && doubtful == c.state.Doubt) && c.state.Last.topic() == request.topic()
	misses := c.state.Misses
	if again {
		misses++
	} else {
		misses = 0
	}
	if found.topic.Alone {
		return questionReply(found.topic.Name, text, choices)
	}
	c.state = c.state.remember(request)
	c.state.Asked, c.state.Doubt, c.state.Choices, c.state.Misses = input, doubtful, choices, misses
	if again {
		text = rephrase(text, found.topic, misses)
	}
	r := questionReply(found.topic.Name, text, choices)
	r.Understood = understood(found.topic, request.Values, c.system, found.aside)
	return r
}

// rephrase asks again in other words, since the same question twice helps
// nobody: with a whole request that works, and then with the shop's help.
func rephrase(text string, t *Topic, misses int) string {
	example := ""
	if len(t.Examples) > 0 {
		example = " Say it in one go, like this: " + t.Examples[0] + "."
	}
	if misses >= 2 {
		return "I still lack one thing." + example + " Or ask at the shop, they know it by heart."
	}
	return "I did not catch that." + example
}
