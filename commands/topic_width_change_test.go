package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestWidthChange(t *testing.T) {
	ask(t, "width-change", []row{
		// 3·44/60 = 2.2.
		{
			is: "wider", say: []string{"3 yd of 44 in as 60 in fabric", "3 yards of 44 inch fabric, as 60 inch"},
			figures:    "buy 2¼ yd",
			understood: "cloth 3 yd; from 44 in; to 60 in",
			text: `
Buy 2¼ yd of the 60 in fabric.
That is by area, a first guess: pieces may lie worse in the other width. Tell me the pieces and I lay them out.`,
		},
		// 4·42/58 = 2.897.
		{
			is: "said otherwise", say: []string{"pattern asks 4 yards of 42, but I have 58 in wide"},
			figures:    "buy 3 yd",
			understood: "cloth 4 yd; from 42 in; to 58 in",
		},
		{
			is: "no other width", say: []string{"3 yd of 44 in as another width"},
			outcome:    commands.Question,
			understood: "cloth 3 yd; from 44 in",
			text:       "How wide is the other fabric?",
		},
	})
}
