package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestPieces(t *testing.T) {
	ask(t, "pieces", []row{
		// 101.6/3 = 33 by 50/3 = 16.
		{
			is: "half a metre", say: []string{"how many 3 cm squares from 0.5 m", "how many 3 cm squares from half a metre"},
			figures:    "across 33; down 16; pieces 528",
			assumed:    "usable_width 101.6 cm",
			understood: "side 3 cm; cloth 0.5 m",
			fault:      "half a metre is taken for a precut square",
		},
		// checks.csv b.fat-quarter: 20/5 = 4 by 18/5 = 3.
		{
			is: "fat quarter", say: []string{"how many 5 in squares from a fat quarter", `how many 5" squares can I cut from a fat quarter`, "5 inch squares from a fat quarter, how many"},
			figures:    "across 4; down 3; pieces 12",
			assumed:    "usable_width 40 in",
			understood: "side 5 in; cut fat quarter",
			text: `
12 pieces of 5 x 5 in from a fat quarter: 4 across and 3 down.
Reckoned on 40 in of usable fabric. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// 3·12.
		{
			is: "several", say: []string{"how many 5 in squares from 3 fat quarters"},
			figures:    "across 4; down 3; pieces 36",
			assumed:    "usable_width 40 in",
			understood: "side 5 in; cut fat quarter; cuts 3",
		},
		// 45 in: 40/6½ = 6 by 45/3½ = 12; turned 11 by 6.
		{
			is: "off the bolt", say: []string{"3½ x 6½ rectangles from 1¼ yd", "how many 3½ by 6½ rectangles from 1¼ yards"},
			figures:    "across 6; down 12; pieces 72",
			assumed:    "usable_width 40 in",
			understood: "size_width 3.5 in; size_length 6.5 in; cloth 1.25 yd",
		},
		// 40/4½ = 8 by 9/4½ = 2; cut half an inch short 8 by 1.
		{
			is: "long quarter", say: []string{"how many 4½ in squares from a long quarter"},
			figures:    "across 8; down 2; pieces 16",
			assumed:    "usable_width 40 in",
			understood: "side 4.5 in; cut long quarter",
		},
		// 40/6 = 6 by 36/8 = 4.
		{
			is: "one way", say: []string{"how many 6 x 8 rectangles from 1 yd, one way print", "6 x 8 rectangles from 1 yard of one way print, how many"},
			figures:    "across 6; down 4; pieces 24",
			assumed:    "usable_width 40 in",
			understood: "size_width 6 in; size_length 8 in; cloth 1 yd; print one-way",
		},
		// 36/2½ = 14.
		{
			is: "strips", say: []string{"how many 2½ in strips from 1 yd"},
			figures:    "across 1; down 14; pieces 14; strips 14",
			assumed:    "usable_width 40 in",
			understood: "strip_width 2.5 in; cloth 1 yd",
		},
		// 40/2½ = 16.
		{
			is: "from a strip", say: []string{"how many 2½ in squares from a 2½ in strip"},
			figures:    "pieces 16",
			assumed:    "usable_width 40 in",
			understood: "side 2.5 in; strip_width 2.5 in",
			fault:      "asks for blades",
		},
		// 4½ as cut: 8 by 8.
		{
			is: "finished", say: []string{"how many 4 in finished squares from 1 yd"},
			figures:    "across 8; down 8; pieces 64",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "side 4 in; cloth 1 yd",
			fault:      "the seams that are added are not said",
		},
		// 110/12 = 9 by 100/12 = 8.
		{
			is: "metric", say: []string{"how many 12 cm squares from 1 m of 110 cm fabric"},
			figures:    "across 9; down 8; pieces 72",
			understood: "side 12 cm; cloth 1 m; usable_width 110 cm",
		},
		{
			is: "too large", say: []string{"how many 20 in squares from a fat quarter"},
			outcome:    commands.Decline,
			understood: "side 20 in; cut fat quarter",
			text:       "A piece of 20 x 20 in does not fit in 20 x 18 in. Anything up to 20 x 18 in works.",
		},
		{
			is: "no fabric", say: []string{"how many 5 in squares"},
			outcome:    commands.Question,
			understood: "side 5 in",
			text:       "From how much fabric: yards, a fat quarter, a strip?",
		},
	})
}
