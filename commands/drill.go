package commands

import (
	"fmt"
	"slices"
	"strings"

	"counterhand/calc/measure"
	"counterhand/commands/words"
)

const (
	drillName      = "drill"
	usualQuestions = 5
	mostQuestions  = 50
)

// Drill is a round of questions to practise on. The questions are not kept:
// Serial and On give the same one again, always. The zero value is no drill.
type Drill struct {
	On        []string `json:"on,omitempty"`        // names of subjects; none means all
	Choosing  bool     `json:"choosing,omitempty"`  // the person was asked what to be asked about
	Questions int      `json:"questions,omitempty"` // how many are wished; 0 where no drill goes on
	Asked     int      `json:"asked,omitempty"`     // answered or given up so far
	Right     int      `json:"right,omitempty"`
	Streak    int      `json:"streak,omitempty"` // right ones in a row, up to now
	Serial    int      `json:"serial,omitempty"` // of the open question; it goes on counting from drill to drill
	Metric    bool     `json:"metric,omitempty"`
}

// open tells whether a drill goes on.
func (d Drill) open() bool { return d.Questions > 0 }

// closed is what is left of a drill that is over: the next one goes on counting.
func (d Drill) closed() Drill { return Drill{Serial: d.Serial} }

// system is what the drill measures in.
func (d Drill) system() measure.System {
	if d.Metric {
		return measure.Metric
	}
	return measure.Imperial
}

// inDrill takes the text as a turn of the drill that goes on. What steers the
// whole conversation and what is a request of its own ends the drill and is
// answered as it would be without one.
func (c *conversation) inDrill() (Reply, bool) {
	d := &c.state.Drill
	if !d.open() {
		return Reply{}, false
	}
	c.system = d.system()
	if c.has(forgetMe, startOver, helpWord) || c.leavesDrill() {
		*d = d.closed()
		return Reply{}, false
	}
	answers := c.numbersSaid()
	bare := len(answers) == 0
	switch {
	case bare && c.only(drillStop, enough, farewell, finished):
		return c.endDrill(), true
	case d.Choosing:
		return c.chooseSubject(), true
	case bare && c.changesDrillUnits():
		return c.openQuestion("In " + map[bool]string{true: "centimetres", false: "inches"}[d.Metric] + ", then."), true
	case bare && c.has(dontKnow, passOver):
		return c.passQuestion(), true
	case bare && c.has(why, working):
		return c.explainQuestion(), true
	case bare:
		return c.askForNumber(), true
	case len(answers) == 1 && c.wishesQuestions(answers[0]):
		return c.setQuestions(answers[0]), true
	}
	return c.gradeAnswers(answers), true
}

// asking are the concepts of a request for a sum, beside a topic's name.
var asking = []words.Concept{howMany, howMuch, howBig, howWide, howLong, longest, largest, canGet, buyWord, fromWord}

// leavesDrill tells whether the text is a request of its own, in full.
func (c *conversation) leavesDrill() bool {
	found := c.assistant.candidates(matcher{text: c.text, metric: c.system == measure.Metric}, c.joined, c.split)
	if len(found) == 0 {
		return false
	}
	best := found[0]
	switch {
	case best.topic.Begin != nil:
		return true
	case best.missing != nil && best.names() && c.has(pointing) && c.state.Last.Size != (measure.Size{}):
		return true // "backing for that", of the quilt before the drill
	case best.missing != nil || len(best.unclear) > 0 || best.ranged != nil:
		return false
	case len(best.topic.Needs) == 0:
		return best.says >= named-4 || len(best.values) > 0
	}
	asks := c.has(asking...) || slices.ContainsFunc(c.text.Tokens, func(t words.Token) bool { return t.Word == "what" || t.Word == "which" })
	if asks {
		return true
	}
	answersIt := len(c.split) == 1 && len(c.split[0].numbers) == 1 && !c.state.Drill.Choosing && best.topic.Name == c.exercise(0).topic
	return best.names() && !answersIt
}

// changesDrillUnits changes between inches and centimetres where the text asks
// for that alone; the open question then comes with other numbers.
func (c *conversation) changesDrillUnits() bool {
	before := c.state.Units
	if !c.has(inMetric, inInches, unitIn, unitYd, unitFt, unitMm, unitCm, unitM) || !c.switchesUnits() {
		c.state.Units = before
		return false
	}
	c.state.Drill.Metric = c.system == measure.Metric
	return true
}

// wishesQuestions tells whether a number counts questions: "make it 10 questions".
func (c *conversation) wishesQuestions(q quantity) bool {
	return q.to < len(c.text.Tokens) && c.text.Tokens[q.to].Is(questionWord) && whole(q.first())
}

// setQuestions changes how many questions the drill has, at least up to the
// open one.
func (c *conversation) setQuestions(q quantity) Reply {
	d := &c.state.Drill
	d.Questions = min(max(clampCount(q.first()), d.Asked+1), mostQuestions)
	r := c.openQuestion(counted(d.Questions, "question") + ", then.")
	r.Understood = []Understood{{"questions", q.first().Number.Float(), "count", safe(q.text)}}
	return r
}

// firstQuestion opens a drill.
func (c *conversation) firstQuestion(aside string) Reply {
	d := c.state.Drill
	on := "A bit of everything"
	if len(d.On) > 0 {
		on = capital(andList(d.On))
	}
	lead := fmt.Sprintf("%s, %s. Say \"don't know\" to see an answer, \"stop\" to end.", on, counted(d.Questions, "question"))
	if aside != "" {
		lead += "\n" + aside
	}
	return c.openQuestion(lead)
}

// openQuestion asks the open question, behind what is said first.
func (c *conversation) openQuestion(lead string) Reply {
	d := c.state.Drill
	text := fmt.Sprintf("Question %d of %d: %s", d.Asked+1, d.Questions, c.exercise(0).ask)
	if lead != "" {
		text = lead + "\n" + text
	}
	return questionReply(drillName, text, []string{"don't know", "stop"})
}

// askForNumber asks once more where a text holds no answer.
func (c *conversation) askForNumber() Reply {
	c.state.Misses++
	lead := "I am waiting for a number."
	if c.state.Misses > 1 {
		lead = "A number will do as the answer; \"don't know\" shows it and \"stop\" ends the drill."
	}
	return c.openQuestion(lead)
}

// passQuestion tells the answer of a question that is given up.
func (c *conversation) passQuestion() Reply {
	s, err := c.solve(c.exercise(0))
	if err != nil {
		return c.breakOff(err)
	}
	c.state.Drill.Streak = 0
	return c.goOn(s, fmt.Sprintf("It is %s. %s", s.shown(), s.why()))
}

// explainQuestion shows the working of the question before the open one.
func (c *conversation) explainQuestion() Reply {
	if c.state.Drill.Asked == 0 {
		return c.openQuestion("First your answer, then the sum; or say \"don't know\".")
	}
	s, err := c.solve(c.exercise(-1))
	if err != nil {
		return c.breakOff(err)
	}
	r := c.openQuestion(strings.Join(s.reply.Working, "\n"))
	r.Working = s.reply.Working
	return r
}

// goOn counts the question as asked and comes to the next, or to the end.
func (c *conversation) goOn(s solution, verdict string) Reply {
	d := &c.state.Drill
	d.Asked++
	d.Serial++
	c.state.Misses = 0
	var r Reply
	if d.Asked >= d.Questions {
		r = c.endDrill()
		r.Text = verdict + "\n" + r.Text
	} else {
		r = c.openQuestion(verdict)
		r.Figures = d.figures()
	}
	r.Working = s.reply.Working
	return r
}

// endDrill ends the drill and says how it went.
func (c *conversation) endDrill() Reply {
	d := c.state.Drill
	c.state.Drill = d.closed()
	c.state.Misses = 0
	text := "We stop before the first answer."
	if d.Asked > 0 {
		text = fmt.Sprintf("That makes %d of %d right", d.Right, d.Asked)
		if d.Right == 0 {
			text = fmt.Sprintf("None of %d this time, but now you have seen the sums", d.Asked)
		}
		if d.Streak > 1 && d.Streak < d.Asked {
			text += fmt.Sprintf(", the last %d in a row", d.Streak)
		}
		text += "."
	}
	r := answerReply(drillName, text+" Say \"quiz me\" for another round.")
	r.Figures = d.figures()
	return r
}

// breakOff ends the drill where a question has no answer, as with settings that
// leave no sum to do.
func (c *conversation) breakOff(err error) Reply {
	c.state.Drill = c.state.Drill.closed()
	return decline(drillName, "I break the drill off: "+(&work{system: c.system}).explain(err))
}

// figures are how the drill stands.
func (d Drill) figures() []Figure {
	w := &work{}
	w.figure("asked", d.Asked)
	w.figure("right", d.Right)
	w.figure("streak", d.Streak)
	return w.reply.Figures
}
