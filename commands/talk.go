package commands

import (
	"slices"
	"strings"

	"counterhand/calc/measure"
	"counterhand/commands/words"
)

// The concepts that steer a conversation.
const (
	startOver   words.Concept = "start over"
	goBack      words.Concept = "go back"
	working     words.Concept = "working"
	why         words.Concept = "why"
	yes         words.Concept = "yes"
	no          words.Concept = "no"
	dontKnow    words.Concept = "don't know"
	thanks      words.Concept = "thanks"
	greeting    words.Concept = "greeting"
	farewell    words.Concept = "farewell"
	helpWord    words.Concept = "help"
	andThen     words.Concept = "and"
	instead     words.Concept = "instead"
	pointing    words.Concept = "that one"
	firstOf     words.Concept = "the first"
	secondOf    words.Concept = "the second"
	thirdOf     words.Concept = "the third"
	otherMethod words.Concept = "the other way"
	asideWord   words.Concept = "leave aside"
	forgetMe    words.Concept = "forget me"
	oneFewer    words.Concept = "round down"
	unitIn      words.Concept = "inch"
	unitFt      words.Concept = "foot"
	unitYd      words.Concept = "yard"
	unitMm      words.Concept = "millimetre"
	unitCm      words.Concept = "centimetre"
	unitM       words.Concept = "metre"
)

var talkTerms = []words.Term{
	{Concept: startOver, Words: "start over, start again, start afresh, new question, reset, clear that, begin again, forget all that, forget that question, scratch that, fresh start, from scratch"},
	{Concept: goBack, Words: "go back, go back to, go back to the, back to, back to the, back to my, back to the one before, the one before, previous one, go back to the first, back to before, undo, as before, back to the last one"},
	{Concept: working, Words: "working, show the working, the working, workings, show me the working, show your working, how did you get, how did you get that, how do you get, how did you work, how did you work that out, how do you work that out, how is that worked out, show the formula, the formula, formula, show the sum, the sums, show me the sums, the arithmetic, the maths, the math, show the maths, show the math, explain, explain that, how come, step by step"},
	{Concept: why, Words: "why, why not, why is, why is it, why are, what for, how come it is"},
	{Concept: yes, Words: "yes, yep, yeah, yup, aye, sure, correct, that's right, ok, okay, right, fine, go on, please do, yes please"},
	{Concept: no, Words: "no, nope, nah, no thanks"},
	{Concept: dontKnow, Words: "don't know, dont know, do not know, no idea, not sure, i don't know, unsure, dunno, no clue, can't tell, cannot tell, haven't a clue, you choose, you pick, whatever you think, whatever is usual, the usual, usual, standard, default, whichever"},
	{Concept: thanks, Words: "thanks, thank you, thx, ta, cheers, many thanks, brilliant, perfect, lovely, great, wonderful, super, thank u, ty"},
	{Concept: greeting, Words: "hello, hi, hey, hiya, good morning, good evening, good afternoon, hello there, morning, evening, howdy, g'day"},
	{Concept: farewell, Words: "bye, goodbye, good night, see you, cheerio, quit, exit"},
	{Concept: andThen, Words: "and, what about, how about, also, too, as well, plus, and what about, and if, what if, and for, and with, now, then, same for, same with, but, make it, make that, change it to, change to, try, suppose, but with, if"},
	{Concept: instead, Words: "instead, rather, actually, sorry, correction, i mean, i meant, meant, no wait, wait, oops, should be, should have been, it's really, not that, measured again, changed my mind, swap it, swapped"},
	{Concept: pointing, Words: "that, it, this, for that, that one, that quilt, this quilt, the same, same quilt, same one, the same quilt, same size, of that size, for it"},
	{Concept: firstOf, Words: "the first, first, first one, the first one, 1st, option 1, number 1"},
	{Concept: secondOf, Words: "the second, second, second one, the second one, 2nd, option 2, number 2, latter, the latter"},
	{Concept: thirdOf, Words: "the third, third, third one, the third one, 3rd, option 3, number 3"},
	{Concept: otherMethod, Words: "other method, the other method, other way, the other way, another way, another method, other way round, turned the other way, alternative, alternatively"},
	{Concept: asideWord, Words: "leave it aside, leave that aside, leave aside, ignore it, ignore that, ignore, nothing to do with it, never mind, nevermind, forget it, irrelevant, doesn't matter, not relevant"},
	{Concept: forgetMe, Words: "forget me, delete my data, delete everything about me, forget everything about me, erase my data, remove my data, delete me"},
	{Concept: oneFewer, Words: "round down, rounding down, one fewer, one less, one strip less, one strip fewer"},
	{Concept: inMetric, Words: "metric, in metric, use metric, always metric, metric please, use cm, use centimetres, use centimeters, work in cm, switch to cm, switch to centimetres, switch to centimeters, go metric, switch to metric, everything in cm, everything in centimetres, only cm, only centimetres, cm only, centimetres only, centimeters only, cms only, change to cm, talk cm, cm from now on"},
	{Concept: inInches, Words: "imperial, in imperial, use imperial, always imperial, imperial please, use inches, switch to inches, switch back to inches, back to inches, inches only, only inches, work in inches, change to inches, everything in inches, switch to imperial, back to imperial"},
	{Concept: unitIn, Words: "inch, in inches, inches, ins, inchs"},
	{Concept: unitFt, Words: "ft, foot, feet, in feet"},
	{Concept: unitYd, Words: "yard, yd, yds, in yards"},
	{Concept: unitMm, Words: "mm, millimetre, millimeter, mms, in mm, in millimetres, in millimeters"},
	{Concept: unitCm, Words: "cm, centimetre, centimeter, cms, in cm, in centimetres, in centimeters, in cms, centimetric"},
	{Concept: unitM, Words: "m, metre, meter, in metres, in meters, mtr"},
}

// has tells whether the text has a word of any of the concepts.
func (c *conversation) has(concepts ...words.Concept) bool {
	return slices.ContainsFunc(c.text.Tokens, func(t words.Token) bool {
		return t.Kind == words.Word && t.Concept != "" && slices.Contains(concepts, t.Concept)
	})
}

// pointsBack tells whether the text points to what was talked about before.
func (c *conversation) pointsBack() bool {
	return c.has(pointing, goBack) || c.startsWith(andThen, instead)
}

// startsWith tells whether one of the concepts is among the first words.
func (c *conversation) startsWith(concepts ...words.Concept) bool {
	seen := 0
	for _, t := range c.text.Tokens {
		if t.Kind == words.Number || seen == 4 {
			return false
		}
		if t.Kind == words.Word && slices.Contains(concepts, t.Concept) {
			return true
		}
		seen++
	}
	return false
}

// steer handles what steers the conversation and asks for no sum of its own.
func (c *conversation) steer() (Reply, bool) {
	last := !c.state.Last.none()
	switch {
	case c.has(forgetMe):
		c.forget, c.own, c.state = true, nil, State{}
		return answerReply("settings", "Done: what you had set and where we were is forgotten."), true
	case c.has(startOver) && len(c.split) == 0:
		c.state = State{Reminded: c.state.Reminded}
		return answerReply("", "A clean start. What would you like to work out?"), true
	case last && c.has(working, why, oneFewer) && !c.has(howMany, howMuch, ruffles, cups, notFlat) && !c.namesAnother():
		return c.explainLast(), true
	case last && c.asksToSee():
		return c.showLast(), true
	case c.has(helpWord) && len(c.split) == 0 && len(c.text.Tokens) <= 5:
		return c.help(), true
	case last && c.has(goBack) && len(c.split) == 0:
		return c.back(), true
	case last && c.switchesUnits():
		return c.again(""), true
	case len(c.split) == 0 && c.only(thanks, greeting, farewell, yes):
		return c.courtesy(), true
	}
	return Reply{}, false
}

// namesAnother tells whether the text names a topic other than the last.
func (c *conversation) namesAnother() bool {
	says := c.assistant.signals(c.text.Tokens)
	for i, s := range says {
		if s >= named && !slices.Contains(c.state.Last.Topics, c.assistant.topics[i].Name) {
			return true
		}
	}
	return false
}

// only tells whether all words that mean anything are of the concepts.
func (c *conversation) only(concepts ...words.Concept) bool {
	found := false
	for _, t := range c.text.Tokens {
		if t.Kind == words.Number {
			return false
		}
		if t.Kind != words.Word {
			continue
		}
		switch {
		case slices.Contains(concepts, t.Concept) && t.Concept != "":
			found = true
		case t.Concept == pointing, fillers[t.Word]:
		case len(t.Word) > 3:
			return false
		}
	}
	return found
}

// help answers a call for help, with the page of a topic where one is named.
func (c *conversation) help() Reply {
	r, w, err := c.workOut(c.assistant.topicNamed("help"), nil)
	if err != nil {
		return decline("help", w.explain(err))
	}
	r.Text = strings.Join(w.lines, "\n")
	return r
}

// courtesy answers thanks and greetings.
func (c *conversation) courtesy() Reply {
	switch {
	case c.has(farewell):
		return answerReply("", "Good sewing.")
	case c.has(greeting):
		return answerReply("help", "Hello. Tell me what you are making and what you want to know, for example: binding for 54 x 68.")
	}
	return answerReply("", "You are welcome. Anything else to size, cut or buy?")
}

// switchesUnits changes between inches and centimetres where the text says no
// more than that.
func (c *conversation) switchesUnits() bool {
	if len(c.split) > 0 || c.state.Last.topic() == "convert" {
		return false
	}
	for _, t := range c.text.Tokens {
		if t.Kind != words.Word || fillers[t.Word] {
			continue
		}
		switch t.Concept {
		case unitMm, unitCm, unitM, inMetric:
			c.state.Units = "metric"
		case unitIn, unitYd, unitFt, inInches:
			c.state.Units = "imperial"
		case andThen, instead, thanks, pointing, makeIt, yes, upTo:
		default:
			return false
		}
	}
	if c.state.Units == "" {
		return false
	}
	c.system = systemNamed(c.state.Units)
	return true
}

// again works the last request out once more: in other units, or with the
// working where more is set to it.
func (c *conversation) again(more string) Reply {
	last := c.state.Last
	if c.system == measure.Imperial && c.state.Units == "" && last.Metric {
		c.system = measure.Metric
	}
	kept := c.state
	r := c.rework(last)
	if c.state.Asked == "" {
		c.state.Before = kept.Before
	}
	return r
}

// rework answers a request that is known already.
func (c *conversation) rework(r Request) Reply {
	var found []candidate
	for _, name := range r.Topics {
		if t := c.assistant.topicNamed(name); t != nil {
			found = append(found, candidate{match: match{topic: t, values: map[string]Value{}}})
		}
	}
	if len(found) == 1 {
		return c.answer(found[0], r.Values)
	}
	for i := range found {
		found[i].values = partOf(r.Values, found[i].topic)
	}
	return c.answerTogether(found)
}

// back returns to the request before the last one.
func (c *conversation) back() Reply {
	if len(c.state.Before) == 0 {
		return c.rework(c.state.Last)
	}
	target, rest := c.state.Before[0], c.state.Before[1:]
	c.system = systemOf(nil, c.unitsNow())
	if target.Metric {
		c.system = measure.Metric
	}
	r := c.rework(target)
	c.state.Before = rest
	return r
}

// returnTo makes an earlier request the last one again, where the text goes back
// to it and changes it: "back to the binding, with 2¼ strips".
func (c *conversation) returnTo() {
	if !c.has(goBack) {
		return
	}
	for i, r := range c.state.Before {
		if t := c.assistant.topicNamed(r.topic()); t != nil && t.namedBy(c.text.Tokens) {
			before := slices.Delete(slices.Clone(c.state.Before), i, i+1)
			c.state.Before = append([]Request{c.state.Last}, before...)
			c.state.Last = r
			return
		}
	}
}

// explainLast answers "why" and "how did you get that" from the working.
func (c *conversation) explainLast() Reply {
	c.inFull = true
	asked := c.split
	c.system = c.unitsNow()
	if c.state.Last.Metric {
		c.system = measure.Metric
	}
	tokens := c.text.Tokens
	c.text.Tokens = nil
	r := c.again("")
	c.text.Tokens = tokens
	if r.Outcome != Answer {
		return r
	}
	lines := []string{firstLine(r.Text)}
	if c.has(why, oneFewer) {
		lines = append([]string(nil), restLines(r.Text)...)
	}
	lines = append(lines, r.Working...)
	for _, name := range c.state.Last.Topics {
		if t := c.assistant.topicNamed(name); t != nil && t.Source != "" {
			lines = append(lines, "The rule: "+t.Source)
		}
	}
	r.Text = strings.Join(lines, "\n")
	for _, q := range asked {
		r.Understood = append(r.Understood, Understood{"asked_about", q.first().Number.Float(), unitName(q.unit()), q.text})
	}
	return r
}

func firstLine(s string) string { line, _, _ := strings.Cut(s, "\n"); return line }

// restLines gives what a reply says behind its first line, or that line where
// there is no more.
func restLines(s string) []string {
	lines := strings.Split(s, "\n")
	if len(lines) > 1 {
		return lines[1:]
	}
	return lines
}

// shortAnswer turns a short answer to the program's own question into the words
// that it stands for: "the second", "yes", "don't know", "the strips".
func (c *conversation) shortAnswer() (words.Text, bool) {
	if len(c.state.Choices) == 0 && c.state.Doubt == "" {
		return words.Text{}, false
	}
	pick := -1
	switch {
	case c.only(firstOf), c.only(yes) && len(c.state.Choices) == 1:
		pick = 0
	case c.only(secondOf):
		pick = 1
	case c.only(thirdOf):
		pick = 2
	case c.only(dontKnow, yes) && c.has(dontKnow):
		pick, c.example = 0, true
	}
	answer := ""
	if pick >= 0 && pick < len(c.state.Choices) {
		answer = c.state.Choices[pick]
	}
	if c.state.Doubt != "" && !slices.ContainsFunc(c.text.Tokens, func(t words.Token) bool { return t.Kind == words.Number }) {
		if answer == "" {
			answer = c.text.Clean
		}
		answer += " " + c.state.Doubt
	}
	if answer == "" {
		return words.Text{}, false
	}
	return c.assistant.vocabulary.Read(answer), true
}
