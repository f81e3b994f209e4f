package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestFlyingGeese(t *testing.T) {
	ask(t, "flying-geese", []row{
		// 6 + 1¼ and 3 + ⅞; one large and four small make four (karencombs.com, formulas for quilters).
		{
			is: "four at a time", say: []string{"16 flying geese 3 x 6", `sixteen flying geese, 3" x 6" finished`},
			figures:    "large_square 7¼ in; small_square 3⅞ in; large_squares 4; small_squares 16; geese 16",
			assumed:    "seam 0.25 in; at_a_time 4",
			understood: "size_width 3 in; size_length 6 in; geese 16",
			text: `
Cut 4 large squares of 7¼ in and 16 small ones of 3⅞ in, four geese at a time.
Each goose finishes at 3 x 6 in and measures 3½ x 6½ in before it is sewn in.
Say "singly" for a rectangle and two corner squares each.
Reckoned on ¼ in seams. Say "6 mm seams" or the like if you sew another.
Close the cutter each time you put it down.`,
		},
		// (2 + ½) x (4 + ½) and two of 2½ each.
		{
			is: "singly", say: []string{"a dozen geese 2 x 4 singly", "12 flying geese 2 x 4, one at a time"},
			figures:    "goose_width 4½ in; goose_height 2½ in; corner_square 2½ in; geese 12; corners 24",
			assumed:    "seam 0.25 in",
			understood: "size_width 2 in; size_length 4 in; geese 12; way one",
			text: `
Cut 12 rectangles of 2½ x 4½ in and 24 squares of 2½ in.
Flip a square over each corner of the rectangle, sew across and trim.
Each goose finishes at 2 x 4 in and measures 2½ x 4½ in before it is sewn in.
Reckoned on ¼ in seams. Say "6 mm seams" or the like if you sew another.
Close the cutter each time you put it down.`,
		},
		// 3½ x 6½ less the seams is 3 x 6.
		{
			is: "unfinished", say: []string{"8 flying geese 3½ x 6½ unfinished"},
			figures:    "large_square 7¼ in; small_square 3⅞ in; large_squares 2; small_squares 8; geese 8",
			assumed:    "seam 0.25 in; at_a_time 4",
			understood: "size_width 3.5 in; size_length 6.5 in; geese 8",
		},
		// 10/4 up is 3: twelve geese.
		{
			is: "not by fours", say: []string{"10 flying geese 2 x 4"},
			figures:    "large_square 5¼ in; small_square 2⅞ in; large_squares 3; small_squares 12; geese 10",
			assumed:    "seam 0.25 in; at_a_time 4",
			understood: "size_width 2 in; size_length 4 in; geese 10",
		},
		// 10 + 2·0.635·(1 + √2) = 13.066; 5 + 0.635·(2 + √2) = 7.168.
		{
			is: "metric", say: []string{"8 flying geese 5 x 10 cm"},
			figures:    "large_square 13.1 cm; small_square 7.2 cm; large_squares 2; small_squares 8; geese 8",
			assumed:    "seam 0.635 cm; at_a_time 4",
			understood: "size_width 5 cm; size_length 10 cm; geese 8",
		},
		{
			is: "not twice as wide", say: []string{"flying geese 3 x 5"},
			outcome:    commands.Decline,
			understood: "size_width 3 in; size_length 5 in",
			text:       "Flying geese are twice as wide as high, and 5 in is not twice 3 in. At 3 in high they are 6 in wide; a unit of 5 x 3 in is made of half rectangles.",
		},
		{
			is: "no size", say: []string{"flying geese"},
			outcome: commands.Question,
			text:    "How big are the geese, finished?",
		},
	})
}
