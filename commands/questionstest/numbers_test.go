package questionstest

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterhand/commands"
)

func TestUnaccounted(t *testing.T) {
	answer := func(text string, read ...commands.Understood) commands.Reply {
		return commands.Reply{Outcome: commands.Answer, Text: text, Understood: read}
	}
	size := commands.Understood{Name: "quilt_width", Value: 60.0, From: "60x72"}
	for _, c := range []struct {
		name, request string
		reply         commands.Reply
		left          []string
	}{
		{"all taken", "binding for 60x72", answer("8 strips", size), nil},
		{"one forgotten", "3 kids, binding for 60x72", answer("8 strips", size), []string{"3"}},
		{"one named as left aside", "3 kids, binding for 60x72", answer("8 strips. I left the 3 aside.", size), nil},
		{"a value is enough", "60 wide", answer("8 strips", commands.Understood{Value: 60.0}), nil},
		{"a fraction sign", "2½ strips, 60x72", answer("8 strips", size), []string{"2", "½"}},
		{"glued numbers count", "binding60x72in3strips", answer("8 strips", size), []string{"3"}},
		{"names are no numbers", "error E6 on model 7F08, 60x72", answer("8 strips", size), nil},
		{"nothing is owed by a question", "3 kids", commands.Reply{Outcome: commands.Question, Text: "What?"}, nil},
	} {
		assert.Equal(t, c.left, Unaccounted(c.request, c.reply), c.name)
	}
}

func TestEchoed(t *testing.T) {
	assert.Empty(t, Echoed(commands.Reply{Text: "8 strips of 2½ in"}))
	assert.NotEmpty(t, Echoed(commands.Reply{Text: "hello @everyone"}))
	assert.NotEmpty(t, Echoed(commands.Reply{Text: "ok", Choices: []string{"<script>"}}))
	assert.NotEmpty(t, Echoed(commands.Reply{Text: "see http://example.com"}))
}
