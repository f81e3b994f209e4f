package commands_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/commands"
)

// The drill's words go before the topic that is named beside them.
func TestDrillBegins(t *testing.T) {
	fresh := newTalk(t)
	for _, row := range []struct {
		say, begins string
		questions   float64 // as understood; 0 where the usual number is assumed
	}{
		{"quiz me on binding", "Binding, 5 questions.", 0},
		{"test me, setting triangles, 5 questions pls", "Setting triangles, 5 questions.", 5},
		{"give me 3 practice questions about half square triangles", "Half-square triangles, 3 questions.", 3},
		{"ask me something about setting triangles", "Setting triangles, 5 questions.", 0},
		{"exercises on yardage please", "Yardage, 5 questions.", 0},
		{"i want to practise sums", "A bit of everything, 5 questions.", 0},
		{"can you drill me on cut sizes", "Cut sizes, 5 questions.", 0},
		{"qiuz me", "A bit of everything, 5 questions.", 0},
		{"can we do a practice round, ten questions", "A bit of everything, 10 questions.", 10},
		{"drill me on backing and binding", "Binding and backing, 5 questions.", 0},
		{"quiz me on hourglass units", "Quarter-square triangles, 5 questions.", 0},
		{"quiz me on wedges, 1 question", "Wedge count, 1 question.", 1},
		{"test me on pieces", "Pieces, 5 questions.", 0},
		{"test me on scaling", "Scale, 5 questions.", 0},
		{"quiz me on conversions", "Convert, 5 questions.", 0},
		{"quiz me on borders, 900 questions", "Borders, 50 questions.", 900},
		{"quiz me on elephants", "I have no drill on that.", 0},
		{"quiz me on flying geese", "I have no drill on that.", 0},
	} {
		t.Run(row.say, func(t *testing.T) {
			r := fresh.again().say(row.say)
			assert.Equal(t, commands.Question, r.Outcome)
			assert.Equal(t, "drill", r.Topic)
			assert.Contains(t, r.Text, row.begins)
			assert.Regexp(t, `\?$`, r.Text)
			assert.Contains(t, r.Choices, "stop")
			if row.questions == 0 {
				assert.Equal(t, []commands.Assumed{{Name: "questions", Value: 5.0, Unit: "count", Said: "5 questions"}}, r.Assumed)
			} else {
				require.Len(t, r.Understood, 1)
				assert.Equal(t, row.questions, r.Understood[0].Value)
			}
		})
	}
	r := fresh.again().say("quiz me on binding, 0 questions")
	assert.Equal(t, commands.Decline, r.Outcome)
}

// What only sounds like a drill is none.
func TestDrillIsNotBegunByOtherRequests(t *testing.T) {
	fresh := newTalk(t)
	for say, topic := range map[string]string{
		"i have 2 questions: binding for 54 x 68":                    "binding",
		"how many 6 in squares from 1 yd for a practice quilt":       "pieces",
		"24 hst 3 in finished to practise on":                        "half-square-triangles",
		"2½ yd is what i have, that's all, enough for 48 squares 5½": "yardage",
	} {
		assert.Equal(t, topic, fresh.again().say(say).Topic, say)
	}
}

// A whole drill, to the letter. The answers are checked by hand: finished + ⅞ in
// two at a time, twice that eight at a time, and two units from a pair of
// squares. Source: https://karencombs.com/page.php?ID=31.
func TestDrillGolden(t *testing.T) {
	c := newTalk(t)
	for _, turn := range []struct{ say, text, figures string }{
		{"quiz me on half square triangles, 4 questions", `Half-square triangles, 4 questions. Say "don't know" to see an answer, "stop" to end.
Question 1 of 4: Half-square triangle units finish at 3½ in, sewn two at a time with ¼ in seams. How large are the squares cut?`, ""},
		{"hmm", `I am waiting for a number.
Question 1 of 4: Half-square triangle units finish at 3½ in, sewn two at a time with ¼ in seams. How large are the squares cut?`, ""},
		{"4 or 4 3/8", `Which one is your answer? One number alone will do.
Question 1 of 4: Half-square triangle units finish at 3½ in, sewn two at a time with ¼ in seams. How large are the squares cut?`, ""},
		{"i think it's 4 3/8 inches", `Right: 4⅜ in.
Question 2 of 4: 12 half-square triangle units of 2 in are sewn two at a time. How many squares of each colour do they take?`, "asked 1; right 1; streak 1"},
		{"12", `Not quite: it is 6 squares. 12 units, 2 from each pair: 6 squares of each colour.
That counts one unit from a pair of squares; a pair gives two.
Question 3 of 4: Half-square triangle units finish at 3 in, sewn eight at a time with ¼ in seams. How large are the squares cut?`, "asked 2; right 1; streak 0"},
		{"don't know", `It is 7¾ in. Square: 2 × (3 in + ⅞ in) = 7¾ in.
Question 4 of 4: Half-square triangle units finish at 1½ in, sewn two at a time with ¼ in seams. How large are the squares cut?`, "asked 3; right 1; streak 0"},
		{"why?", `Square: 2 × (3 in + ⅞ in) = 7¾ in
Question 4 of 4: Half-square triangle units finish at 1½ in, sewn two at a time with ¼ in seams. How large are the squares cut?`, ""},
		{"2.375", `Right: 2⅜ in.
That makes 2 of 4 right. Say "quiz me" for another round.`, "asked 4; right 2; streak 1"},
	} {
		r := c.say(turn.say)
		assert.Equal(t, turn.text, r.Text, turn.say)
		assert.Equal(t, "drill", r.Topic)
		shown := map[string]string{}
		for _, f := range r.Figures {
			shown[f.Name] = f.Shown
		}
		assert.Len(t, shown, len(list(turn.figures)), turn.say)
		for _, f := range list(turn.figures) {
			name, value, _ := strings.Cut(f, " ")
			assert.Equal(t, value, shown[name], "%s: %s", turn.say, name)
		}
	}
	r := c.say("quiz me on half square triangles")
	assert.NotContains(t, r.Text, "3½ in", "the next drill goes on with other questions")
}

// A drill ends when it is told to, or gives way to a request of its own.
func TestDrillEnds(t *testing.T) {
	fresh := newTalk(t)
	for _, row := range []struct {
		say, topic string
		outcome    commands.Outcome
		text       string
	}{
		{"stop", "drill", commands.Answer, "That makes 1 of 1 right."},
		{"enough", "drill", commands.Answer, "That makes 1 of 1 right."},
		{"ok that's all, thanks", "drill", commands.Answer, "That makes 1 of 1 right."},
		{"bye", "drill", commands.Answer, "That makes 1 of 1 right."},
		{"backing for 70 x 90", "backing", commands.Answer, "5½ yd"},
		{"how many 5 in squares from a fat quarter", "pieces", commands.Answer, "12 pieces"},
		{"binding for 60 x 72 please", "binding", commands.Answer, "8 strips"},
		{"backing for that", "backing", commands.Answer, "over on each side of 54 x 68 in"},
		{"my fabric is 42 wide", "settings", commands.Answer, "42 in"},
		{"start over", "", commands.Answer, "A clean start."},
	} {
		t.Run(row.say, func(t *testing.T) {
			c := fresh.again()
			c.say("binding for 54 x 68")
			c.say("quiz me on wedges")
			require.Contains(t, c.say("20").Text, "Right: 20 blades.") // 360 ÷ 18
			r := c.say(row.say)
			assert.Equal(t, row.topic, r.Topic)
			assert.Equal(t, row.outcome, r.Outcome)
			assert.Contains(t, r.Text, row.text)
			assert.NotContains(t, c.say("25").Text, "Question", "no drill goes on")
		})
	}
}

// What holds no answer and asks for nothing else keeps the question open.
func TestDrillStaysOpen(t *testing.T) {
	fresh := newTalk(t)
	for _, say := range []string{"hmm", "what?", "binding", "20 in", "18 or 20", "yes", "😀", "how do i work that out", "make it 9 questions"} {
		c := fresh.again()
		open := c.say("quiz me on wedges").Text
		r := c.say(say)
		assert.Equal(t, commands.Question, r.Outcome, say)
		assert.Contains(t, r.Text, "How many blades of 18° close a full circle?", "%s after %s", say, open)
		assert.Contains(t, c.say("20 blades").Text, "Right: 20 blades.", say)
	}
}

// The subject is asked for once, and then it is a bit of everything.
func TestDrillOffersItsSubjects(t *testing.T) {
	fresh := newTalk(t)
	c := fresh.again()
	r := c.say("quiz me on hexagons, 3 questions")
	for _, name := range []string{"cut sizes", "binding", "yardage", "pieces", "setting triangles", "half-square triangles", "quarter-square triangles", "borders", "wedge count", "backing", "scale", "convert"} {
		assert.Contains(t, r.Choices, name)
		assert.Contains(t, fresh.again().say("quiz me on "+name).Text, "5 questions.", name)
	}
	assert.Contains(t, c.say("borders").Text, "Borders, 3 questions.")
	for _, all := range []string{"everything", "anything", "you choose"} {
		c := fresh.again()
		c.say("quiz me on hexagons")
		assert.Contains(t, c.say(all).Text, "A bit of everything, 5 questions.", all)
	}
	c = fresh.again()
	c.say("quiz me on hexagons")
	c.say("elephants")
	assert.Contains(t, c.say("elephants").Text, "A bit of everything")
}

// In metric a drill asks and answers in centimetres.
func TestDrillInMetric(t *testing.T) {
	c := newTalk(t)
	assert.Contains(t, c.say("quiz me on borders, in metric").Text, " cm ")
	c = c.again()
	c.say("quiz me on borders")
	assert.Contains(t, c.say("cm please").Text, "In centimetres, then.")
}

func TestDrill(t *testing.T) {
	ask(t, "drill", []row{
		{
			is: "on a topic", say: []string{"quiz me on binding"},
			outcome: commands.Question,
			assumed: "questions 5",
		},
		{
			is: "on anything", say: []string{"quiz me"},
			outcome: commands.Question,
			assumed: "questions 5",
		},
		{
			is: "a number of them", say: []string{"3 practice questions about half square triangles"},
			outcome:    commands.Question,
			understood: "questions 3",
		},
	})
}
