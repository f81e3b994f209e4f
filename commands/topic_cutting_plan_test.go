package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestCuttingPlan(t *testing.T) {
	ask(t, "cutting-plan", []row{
		// 52 = 5·10 + 2, and beside the two 32 in hold 10 of 3: 5·4 + 4 + 3 = 27 in. 1012 of 27·40 square inches.
		{
			is: "two sizes", say: []string{"cutting plan: 52 squares 4 in, 20 squares 3 in"},
			figures:    "length 27 in; buy ¾ yd; waste 6.3 %; strip1.width 4 in; strip1.times 5; strip2.width 4 in; strip2.times 1; strip3.width 3 in; strip3.times 1",
			assumed:    "usable_width 40 in",
			understood: "pieces_count 52; pieces_width 4 in; pieces_length 4 in; pieces_count 20; pieces_width 3 in; pieces_length 3 in",
			text: `
Buy ¾ yd: the strips take 27 in of it.
5 strips of 4 in: 10 of 4 x 4 in.
1 strip of 4 in: 2 of 4 x 4 in and 10 of 3 x 3 in.
1 strip of 3 in: 10 of 3 x 3 in.
6.3 % of the fabric is left over.
I took the sizes as they are cut.
Reckoned on 40 in of usable fabric. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// Two strips of 4 squares, two of 8 rectangles: 2·10 + 2·3; 1040 of 26·40 square inches.
		{
			is: "nothing left", say: []string{"least fabric for 8 squares 10 in and 16 rectangles 3 x 5"},
			figures:    "length 26 in; buy ¾ yd; waste 0 %; strip1.width 10 in; strip1.times 2; strip2.width 3 in; strip2.times 2",
			assumed:    "usable_width 40 in",
			understood: "pieces_count 8; pieces_width 10 in; pieces_length 10 in; pieces_count 16; pieces_width 3 in; pieces_length 5 in",
			text: `
Buy ¾ yd: the strips take 26 in of it.
2 strips of 10 in: 4 of 10 x 10 in.
2 strips of 3 in: 8 of 5 x 3 in.
0 % of the fabric is left over.
I took the sizes as they are cut.
Reckoned on 40 in of usable fabric. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		{
			is: "nothing said", say: []string{"cutting plan"},
			outcome: commands.Question,
			text:    "Which pieces, how many and what size? For example: 52 squares 4 in, 20 squares 3 in.",
		},
	})
}
