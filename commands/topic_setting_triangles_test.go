package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestSettingTriangles(t *testing.T) {
	ask(t, "setting-triangles", []row{
		// 12·√2 = 16.97; + 1¼ = 18.22; 12/√2 + ⅞ = 9.36 (pinemeadowsdesigns.com).
		{
			is: "one block", say: []string{"setting triangles for 12 in blocks on point", `side and corner triangles for 12" blocks on point`},
			figures:    "diagonal 17 in; side_square 18¼ in; corner_square 9⅜ in; corner_squares 2",
			assumed:    "seam 0.25 in",
			understood: "block 12 in",
		},
		// 9·√2 = 12.73: 13.98 and 7.24. 2·(4 + 5) − 4 = 14 sides, four to a square.
		{
			is: "counted", say: []string{"9 in blocks on point, 4 across 5 down, how many squares for the side triangles"},
			figures:    "diagonal 12¾ in; side_square 14 in; side_squares 4; corner_square 7¼ in; corner_squares 2; buy 1 yd",
			assumed:    "seam 0.25 in; usable_width 40 in",
			understood: "block 9 in; across 4; down 5",
			fault:      "the width of the fabric is not said",
		},
		// 12½ − ½.
		{
			is: "with seams", say: []string{"setting triangles for blocks that measure 12½ unfinished"},
			figures:    "diagonal 17 in; side_square 18¼ in; corner_square 9⅜ in; corner_squares 2",
			assumed:    "seam 0.25 in",
			understood: "block 12.5 in",
		},
		// 42.43 + 3.066 and 21.21 + 2.168.
		{
			is: "metric", say: []string{"setting triangles for 30 cm blocks on point"},
			figures:    "diagonal 42.4 cm; side_square 45.5 cm; corner_square 23.4 cm; corner_squares 2",
			assumed:    "seam 0.635 cm",
			understood: "block 30 cm",
		},
		{
			is: "no block", say: []string{"setting triangles"},
			outcome: commands.Question,
			text:    "How big is the block, finished?",
		},
	})
}
