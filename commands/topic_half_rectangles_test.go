package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestHalfRectangles(t *testing.T) {
	ask(t, "half-rectangles", []row{
		// Sides grow by 1 + ¼/r, r = (2 + 4 − √20)/2 = 0.7639: 2.654 and 5.309.
		{
			is: "size", say: []string{"half rectangles 2 x 4", "half rectangle triangles 2 by 4 finished"},
			figures:    "cut_width 2¾ in; cut_height 5⅜ in; unfinished_width 2½ in; unfinished_height 4½ in",
			assumed:    "seam 0.25 in",
			understood: "size_width 2 in; size_length 4 in",
		},
		// 12 of 2 x 4: half lean each way, two triangles from a rectangle.
		{
			is: "counted", say: []string{"12 half rectangle triangles 2 x 4"},
			figures:    "cut_width 2¾ in; cut_height 5⅜ in; unfinished_width 2½ in; unfinished_height 4½ in; rectangles 6",
			assumed:    "seam 0.25 in",
			understood: "size_width 2 in; size_length 4 in; units 12",
		},
		// r = (9 − √45)/2 = 1.1459: 3.654 and 7.309. Eight each way are four rectangles each of each colour.
		{
			is: "left and right", say: []string{"half rectangle triangles 3 x 6, 8 left and 8 right"},
			figures:    "rectangles 8; cut_width 3¾ in; cut_height 7⅜ in",
			assumed:    "seam 0.25 in",
			understood: "size_width 3 in; size_length 6 in; left 8; right 8",
			fault:      "the second count is lost",
		},
		// r = (15 − √125)/2 = 1.910: 1 + 0.635/1.910 = 1.3325.
		{
			is: "metric", say: []string{"half rectangles 5 x 10 cm"},
			figures:    "cut_width 6.7 cm; cut_height 13.4 cm; unfinished_width 6.3 cm; unfinished_height 11.3 cm",
			assumed:    "seam 0.635 cm",
			understood: "size_width 5 cm; size_length 10 cm",
		},
		{
			is: "no size", say: []string{"half rectangles"},
			outcome: commands.Question,
			text:    "How big is each half rectangle, finished?",
		},
	})
}
