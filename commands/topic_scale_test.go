package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestScale(t *testing.T) {
	ask(t, "scale", []row{
		// 12/9.
		{
			is: "larger", say: []string{"9 in block to 12", "scale a 9 inch block up to 12 inches", "turn a 9 in block into 12 in"},
			figures:    "factor 1.333",
			understood: "from 9 in; to 12 in",
			text: `
Multiply every finished size by 1.3333.
9 in to 12 in. Seams do not grow: take ½ in off a cut size, multiply, and add it back.`,
		},
		// (3½ − ½)·10/12 + ½.
		{
			is: "a patch", say: []string{"turn a 12 in block into 10, squares cut 3½"},
			figures:    "factor 0.833; patch1 3 in",
			assumed:    "seam 0.25 in",
			understood: "from 12 in; to 10 in; patch 3.5 in",
			text: `
Multiply every finished size by 0.8333.
12 in to 10 in. Seams do not grow: take ½ in off a cut size, multiply, and add it back.
A patch cut 3½ in becomes 3 in.
Reckoned on ¼ in seams. Say "6 mm seams" or the like if you sew another.`,
		},
		{
			is: "no other size", say: []string{"scale a 12 in block"},
			outcome:    commands.Question,
			understood: "from 12 in",
			text:       "To which size, finished?",
		},
	})
}
