package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestThread(t *testing.T) {
	ask(t, "thread", []row{
		{
			is: "no size", say: []string{"how much thread do I need"},
			outcome: commands.Question,
			text:    "How big is the quilt, width by length?",
		},
	})
}
