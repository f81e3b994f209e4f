package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestYardage(t *testing.T) {
	ask(t, "yardage", []row{
		// 40/5½ = 7; 48/7 up 7; 38½ of 40½ in.
		{
			is: "squares", say: []string{"how much fabric for 48 squares 5½", "yardage for 48 squares of 5½ in", "how much fabric do I need for 48 5½ inch squares"},
			figures:    "per_strip 7; strips 7; strip_width 5½ in; length 38½ in; buy 1⅛ yd",
			assumed:    "usable_width 40 in",
			understood: "pieces 48; side 5.5 in",
			text: `
Buy 1⅛ yd: 7 strips, 5½ in wide, 7 pieces from each.
That is 38½ in of fabric, exactly, and 2 in over; the last strip would give 1 more.
I took 5½ x 5½ in as the size to cut.
Reckoned on 40 in of usable fabric. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// 40/6½ = 6: 4 strips, 10 in; the other way 16 to a strip, 2·6½ = 13 in.
		{
			is: "rectangles", say: []string{"how much for 20 rectangles 2½ x 6½"},
			figures:    "per_strip 6; strips 4; strip_width 2½ in; length 10 in; buy ⅜ yd",
			assumed:    "usable_width 40 in",
			understood: "pieces 20; size_width 2.5 in; size_length 6.5 in",
		},
		// 5 + ½.
		{
			is: "finished", say: []string{"how much fabric for 48 squares finishing 5 in"},
			figures:    "per_strip 7; strips 7; strip_width 5½ in; length 38½ in; buy 1⅛ yd",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "pieces 48; side 5 in",
		},
		// 20 x 18: 3 by 7 = 21.
		{
			is: "fat quarters", say: []string{"20 rectangles 2½ x 6½ from fat quarters, how many"},
			figures:    "per_cut 21; cuts 1; spare_pieces 1",
			assumed:    "usable_width 40 in",
			understood: "pieces 20; size_width 2.5 in; size_length 6.5 in; source fat quarter",
		},
		// 60/12.
		{
			is: "more fat quarters", say: []string{"how many fat quarters for 60 squares of 5 in"},
			figures:    "per_cut 12; cuts 5; spare_pieces 0",
			assumed:    "usable_width 40 in",
			understood: "pieces 60; side 5 in; source fat quarter",
		},
		// 38½ − 36; from 36 in 6 strips of 7.
		{
			is: "not enough", say: []string{"is 1 yd enough for 48 squares of 5½"},
			figures:    "per_strip 7; strips 7; strip_width 5½ in; length 38½ in; buy 1⅛ yd; have 1 yd; enough no; short 2½ in; pieces 42",
			assumed:    "usable_width 40 in",
			understood: "pieces 48; side 5.5 in; have 1 yd",
		},
		// 40/4 = 10 upright: 2·9 = 18 in.
		{
			is: "one way", say: []string{"how much fabric for 20 rectangles 4 x 9, one way print"},
			figures:    "per_strip 10; strips 2; strip_width 9 in; length 18 in; buy ½ yd",
			assumed:    "usable_width 40 in",
			understood: "pieces 20; size_width 4 in; size_length 9 in; print one-way",
		},
		// 38½·1.1 = 42.35.
		{
			is: "something over for waste", say: []string{"yardage for 48 squares 5½ with 10 % extra"},
			figures:    "per_strip 7; strips 7; strip_width 5½ in; length 42⅜ in; buy 1¼ yd",
			assumed:    "usable_width 40 in",
			understood: "pieces 48; side 5.5 in; waste 10 percent",
		},
		// 80 squares, 11 to a strip, 8 strips.
		{
			is: "for each block", say: []string{"how much fabric for 4 squares of 3½ per block, 20 blocks"},
			figures:    "per_strip 11; strips 8; strip_width 3½ in; length 28 in; buy ⅞ yd",
			assumed:    "usable_width 40 in",
			understood: "pieces 4; blocks 20; side 3.5 in",
		},
		// 101.6/12 = 8: 5 strips.
		{
			is: "metric", say: []string{"how much fabric for 40 squares of 12 cm"},
			figures:    "per_strip 8; strips 5; strip_width 12 cm; length 60 cm; buy 0.6 m",
			assumed:    "usable_width 101.6 cm",
			understood: "pieces 40; side 12 cm",
		},
		// 10·2½.
		{
			is: "strips", say: []string{"how much fabric for 10 strips 2½ in"},
			figures:    "per_strip 1; strips 10; strip_width 2½ in; length 25 in; buy ¾ yd",
			assumed:    "usable_width 40 in",
			understood: "strips 10; side 2.5 in",
		},
		{
			is: "no size", say: []string{"how much fabric for 48 squares"},
			outcome:    commands.Question,
			understood: "pieces 48",
			text:       "What size is each piece?",
		},
		{
			is: "nothing said", say: []string{"how much fabric do I need"},
			outcome: commands.Question,
			text:    "Which pieces, how many and what size? For example: 48 squares of 5½ in.",
		},
		{
			is: "wider than the fabric", say: []string{"how much fabric for 10 squares of 50 in"},
			outcome:    commands.Decline,
			understood: "pieces 10; side 50 in",
			text:       "A piece of 50 x 50 in does not fit in fabric of 40 in either way round. Pieces with a side of up to 40 in work, or join them from two.",
		},
	})
}
