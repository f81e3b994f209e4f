package commands

import (
	"counterhand/calc/measure"
	"counterhand/commands/words"
)

const (
	drillWord    words.Concept = "drill"
	questionWord words.Concept = "question to practise on"
	drillStop    words.Concept = "stop the drill"
	passOver     words.Concept = "pass over"
	clothToTry   words.Concept = "something to try out on"
)

// drillOutranks is what the drill's words say for it: more than any other
// topic's name, since that name only says what to be asked about.
const drillOutranks = 40

// drillTopic: questions of the trade to practise on, with numbers of their own.
func drillTopic() Topic {
	return Topic{
		Name: "drill", Group: AroundIt, Title: "questions to practise on, with the sum shown where it went wrong", Alone: true, Leaves: true,
		Terms: []words.Term{
			{Concept: drillWord, Words: "drill, drill me, quiz, quiz me, test me, test my, examine me, question me, ask me something, ask me about, ask me something about, ask me a question, ask me questions, practice question, practise question, practice sum, practise sum, practice round, practise round, practice session, practice exercise, exercise, practise, want to practice, wanna practice, like to practice, need to practice, let me practice, some practice, practice my, practice with me"},
			{Concept: clothToTry, Words: "to practise on, to practice on, practice block, practice piece, practice quilt, practise block, practise piece"},
			{Concept: questionWord, Words: "question, sum"},
			{Concept: drillStop, Words: "stop, stop it, stop now, stop there, stop please, that's all, that is all, thats all, all done, done, i'm done, im done, i am done, no more questions, end the drill, end drill, stop the drill, end the quiz, end quiz, stop the quiz"},
			{Concept: passOver, Words: "skip, skip it, skip that, skip this, pass, next, next one, next question, give up, i give up, idk, tell me, show me the answer, what is it"},
		},
		Says: says(drillOutranks, drillWord),
		Inputs: []input{
			{name: "questions", kind: aCount, usual: [2]float64{1, mostQuestions}, after: of(questionWord, drillWord), before: of(drillWord), label: "the number of questions"},
		},
		Examples: []string{"quiz me on binding", "3 practice questions about half square triangles"},
		Source:   "each answer is worked out by the topic it is about, by that topic's rule; the slips that are named are common practice, no source.",
		Begin:    beginDrill,
	}
}

// beginDrill starts a drill on what the text names, or on everything; where it
// names what there is no drill on, it offers what there is.
func beginDrill(c *conversation, found candidate) Reply {
	n := usualQuestions
	v, given := found.values["questions"]
	if given {
		n = v.Count
	}
	if n < 1 {
		r := decline(drillName, "A drill has at least one question. Like this: quiz me on binding, 3 questions.")
		r.Understood = c.drillUnderstood(found)
		return r
	}
	c.state.Asked, c.state.Choices, c.state.Doubt, c.state.Misses = "", nil, "", 0
	switch {
	case c.has(inMetric):
		c.system = measure.Metric
	case c.has(inInches):
		c.system = measure.Imperial
	}
	on, unknown := c.subjectsNamed()
	c.state.Drill = Drill{Questions: min(n, mostQuestions), Serial: c.state.Drill.Serial, Choosing: unknown, On: on, Metric: c.system == measure.Metric}
	var r Reply
	if unknown {
		r = c.offerSubjects()
	} else {
		r = c.firstQuestion(leftAside(found.aside))
	}
	r.Understood = c.drillUnderstood(found)
	if !given {
		r.Assumed = []Assumed{{"questions", float64(n), "count", counted(n, "question")}}
	}
	return r
}

// drillUnderstood lists what was read of the request for a drill; sizes in it
// are left aside, since a drill draws its own.
func (c *conversation) drillUnderstood(found candidate) []Understood {
	return understood(found.topic, found.values, c.system, found.aside)
}
