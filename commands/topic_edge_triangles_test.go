package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestEdgeTriangles(t *testing.T) {
	ask(t, "edge-triangles", []row{
		// A square folded twice shows its side less two seams: 3 + ½.
		{
			is: "base", say: []string{"prairie points 3 in wide, what squares"},
			figures:    "square 3½ in; across_each 3 in",
			assumed:    "seam 0.25 in",
			understood: "base 3 in",
			text: `
Cut squares of 3½ in.
Each shows 3 in along the seam and 1½ in high.
Reckoned on ¼ in seams. Say "6 mm seams" or the like if you sew another.
Close the cutter each time you put it down.`,
		},
		// 72/3 = 24 and 60/3 = 20, twice. 11 squares of 3½ in a strip, 8 strips, 28 of 31½ in.
		{
			is: "round a quilt", say: []string{"prairie points from 3½ in squares for 60 x 72, how many"},
			figures:    "square 3½ in; across_each 3 in; points 88; side_points 24; top_points 20; buy ⅞ yd",
			assumed:    "seam 0.25 in; usable_width 40 in",
			understood: "quilt_width 60 in; quilt_length 72 in; square 3.5 in",
		},
		// Half of the base: 1½ is 3 wide.
		{
			is: "height", say: []string{"prairie points 1½ in high"},
			figures:    "square 3½ in; across_each 3 in",
			assumed:    "seam 0.25 in",
			understood: "height 1.5 in",
		},
		// 8 + 1.27 up.
		{
			is: "metric", say: []string{"prairie points 8 cm wide"},
			figures:    "square 9.3 cm; across_each 8 cm",
			assumed:    "seam 0.635 cm",
			understood: "base 8 cm",
		},
		{
			is: "nothing said", say: []string{"prairie points"},
			outcome: commands.Question,
			text:    "How big is the quilt and how wide is each point, or what squares do you fold?",
		},
	})
}
