package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestTriangles60(t *testing.T) {
	ask(t, "triangles-60", []row{
		// 3½ − ¾ = 2¾ high; 2¾/sin 60° = 3.175 a side. Cut side 4.041: (n + 1)/2·4.041 ≤ 40 gives 18.
		{
			is: "from a strip", say: []string{"equilateral triangles from 3½ in strips"},
			figures:    "strip_width 3½ in; per_strip 18",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "strip_width 3.5 in",
			text: `
18 triangles from a strip 3½ in wide, cut up and down.
They finish 2¾ in high and 3 3/16 in a side.
Reckoned on 40 in of usable fabric and ¼ in seams. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// The same.
		{
			is: "the angle said", say: []string{"60 degree triangles from 3½ in strips", "60° triangles from 3½ in strips"},
			figures:    "strip_width 3½ in; per_strip 18",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "angle 60 deg; strip_width 3.5 in",
		},
		// 5 + ¾; ten rows of 5, 7·5.7735 = 40.4 wide: 14 to a row. 11 of them in a strip.
		{
			is: "high", say: []string{"equilateral triangles 5 in high for 40 x 50"},
			figures:    "strip_width 5¾ in; per_strip 11; triangles 140; strips 13; buy 2⅛ yd; rows 10; across 7",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "height 5 in; quilt_width 40 in; quilt_length 50 in",
		},
		// 9 − 3·0.635 = 7.095 high; 8.193 a side.
		{
			is: "metric", say: []string{"equilateral triangles from 9 cm strips"},
			figures:    "strip_width 9 cm; per_strip 18",
			assumed:    "usable_width 101.6 cm; seam 0.635 cm",
			understood: "strip_width 9 cm",
		},
		// 60/18 up is 4; 14 of 18 in.
		{
			is: "counted", say: []string{"60 equilateral triangles from 3½ in strips"},
			figures:    "per_strip 18; strips 4; triangles 60; buy ½ yd",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "strip_width 3.5 in; triangles 60",
		},
		{
			is: "another angle", say: []string{"45 degree triangles from 3½ in strips"},
			outcome:    commands.Decline,
			understood: "angle 45 deg; strip_width 3.5 in",
			text:       "Triangles of three equal sides have 60°. For wedges of 45° ask for a ring or a fan; right-angled ones are half-square or quarter-square triangles.",
		},
		{
			is: "no size", say: []string{"equilateral triangles"},
			outcome: commands.Question,
			text:    "How wide are the strips, or how high are the triangles, finished?",
		},
	})
}
