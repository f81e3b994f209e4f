package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestShrinkage(t *testing.T) {
	ask(t, "shrinkage", []row{
		// 2/0.95 = 2.105.
		{
			is: "yards", say: []string{"shrinks 5 %, I need 2 yd after washing", "I need 2 yards after washing and it shrinks 5 percent"},
			figures:    "buy 2⅛ yd",
			understood: "need 2 yd; shrinkage 5 percent",
		},
		// 3/0.96 = 3.125.
		{
			is: "metres", say: []string{"3 m prewashed, 4 % shrinkage"},
			figures:    "buy 3.2 m",
			understood: "need 3 m; shrinkage 4 percent",
			text: `
Buy 3.2 m.
3 m ÷ (1 − 4 %) is 312.5 cm exactly, so that 3 m is left after a wash that takes 4 %.`,
		},
		{
			is: "no length", say: []string{"it shrinks 5 %"},
			outcome:    commands.Question,
			understood: "shrinkage 5 percent",
			text:       "How much do you need after washing?",
		},
		{
			is: "all of it", say: []string{"shrinks 100 %, need 2 yd"},
			outcome:    commands.Decline,
			understood: "need 2 yd; shrinkage 100 percent",
			text:       "Fabric that shrinks by 100 percent leaves too little to reckon with. From 0 to 90 percent works.",
		},
	})
}
