package questionstest

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterhand/commands"
)

func TestJudge(t *testing.T) {
	strips := func(n float64) commands.Reply {
		return commands.Reply{Outcome: commands.Answer, Topic: "binding",
			Figures: []commands.Figure{{Name: "strips", Value: n, Unit: "count"}, {Name: "buy", Value: 0.5, Unit: "yd"}}}
	}
	eight := Expectation{Outcome: Words{"answer"}, Figures: map[string]FigureSpec{"strips": {Value: 8.0, Unit: "count"}}}
	asks := Expectation{Outcome: Words{"question"}, AsksKeys: "size|wide"}
	nothing := Expectation{Outcome: Words{"question", "decline"}, NoFigures: true}
	question := commands.Reply{Outcome: commands.Question, Text: "How wide is the quilt?"}
	decline := commands.Reply{Outcome: commands.Decline, Text: "No."}

	for _, c := range []struct {
		name  string
		reply commands.Reply
		want  Expectation
		is    Category
	}{
		{"the figure", strips(8), eight, Right},
		{"another figure", strips(7), eight, Wrong},
		{"the figure in another unit", strips(8),
			Expectation{Outcome: Words{"answer"}, Figures: map[string]FigureSpec{"buy": {Value: 18.0, Unit: "in", Tol: 0.001}}}, Right},
		{"a unit that does not convert", strips(8),
			Expectation{Outcome: Words{"answer"}, Figures: map[string]FigureSpec{"buy": {Value: 0.5, Unit: "deg"}}}, Wrong},
		{"a figure that is missing", strips(8),
			Expectation{Outcome: Words{"answer"}, Figures: map[string]FigureSpec{"perimeter": {Value: 264.0}}}, Wrong},
		{"a question for an answer", question, eight, Asked},
		{"a decline for an answer", decline, eight, DeclinedWrongly},
		{"the question", question, asks, Right},
		{"a question about something else", commands.Reply{Outcome: commands.Question, Text: "Which colour?"}, asks, Wrong},
		{"a decline for a question", decline, asks, DeclinedWrongly},
		{"an answer for a question", strips(8), asks, Wrong},
		{"either will do", decline, nothing, Right},
		{"one of several", question, Expectation{AnyOf: []Expectation{eight, asks}}, Right},
		{"none of several", strips(7), Expectation{AnyOf: []Expectation{eight, asks}}, Wrong},
		{"a figure of a part", commands.Reply{Outcome: commands.Answer, Figures: []commands.Figure{{Name: "backing.buy", Value: 4.0, Unit: "yd"}}},
			Expectation{Outcome: Words{"answer"}, Figures: map[string]FigureSpec{"backing.buy": {Value: 4.0, Unit: "yd"}}}, Right},
		{"a part known by the topic", strips(8),
			Expectation{Outcome: Words{"answer"}, Figures: map[string]FigureSpec{"binding.strips": {Value: 8.0}}}, Right},
		{"the second border", commands.Reply{Outcome: commands.Answer, Figures: []commands.Figure{
			{Name: "side_cut", Value: 60.5, Unit: "in"}, {Name: "side_cut", Value: 64.5, Unit: "in"}}},
			Expectation{Outcome: Words{"answer"}, Figures: map[string]FigureSpec{"border2.side_cut": {Value: 64.5, Unit: "in"}}}, Right},
		{"a number left out of what was understood", strips(8),
			Expectation{Outcome: Words{"answer"}, Understands: []float64{3}}, Wrong},
		{"words that must not come back", commands.Reply{Outcome: commands.Decline, Text: "hello @everyone"},
			Expectation{Outcome: Words{"decline"}, TextNot: []string{"@everyone"}}, Wrong},
	} {
		is, why := Judge(c.reply, c.want)
		assert.Equal(t, c.is, is, "%s: %v", c.name, why)
	}
}
