package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestSplit(t *testing.T) {
	ask(t, "split", []row{
		// 96 = 7·13 + 5.
		{
			is: "uneven", say: []string{"96 blades over 7 fabrics", "split 96 blades between 7 fabrics", "share 96 blades out over 7 prints"},
			figures:    "each 13; left_over 5",
			understood: "pieces 96; fabrics 7",
			text: `
13 from each fabric, and 5 over.
So 5 of the fabrics give 14 and the other 2 give 13.`,
		},
		// 48/6.
		{
			is: "even", say: []string{"share 48 squares between 6 prints", "48 squares over 6 fabrics, how many from each"},
			figures:    "each 8; left_over 0",
			understood: "pieces 48; fabrics 6",
			text:       "8 from each fabric, with none over.",
		},
		{
			is: "more fabrics than pieces", say: []string{"5 blades over 8 fabrics"},
			figures:    "each 0; left_over 5",
			understood: "pieces 5; fabrics 8",
		},
		{
			is: "no fabrics", say: []string{"split 96 blades"},
			outcome:    commands.Question,
			understood: "pieces 96",
			text:       "Over how many fabrics?",
		},
	})
}
