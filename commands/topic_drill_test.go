package commands_test

import (
	"testing"

	"counterhand/commands"
)

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
