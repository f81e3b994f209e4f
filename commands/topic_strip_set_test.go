package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestStripSet(t *testing.T) {
	ask(t, "strip-set", []row{
		// 16 segments of 2½ in a set, 80 of them: 5 sets; four would give 64. 5·2½ = 12½ of 13½ in.
		{
			is: "four-patch", say: []string{"four patch from 2½ strips, 40 of them", "40 four patches from 2½ in strips"},
			figures:    "strips 10; strips_each 5; segments 80; segment_width 2½ in; strip_width 2½ in; unfinished 4½ in; colour1.buy ⅜ yd; colour2.buy ⅜ yd",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "strip_width 2.5 in; blocks 40; pattern four-patch",
			text: `
10 strips of 2½ in, 5 of each colour: 5 strip sets, cut into 80 segments of 2½ in.
One strip set fewer would be 8 blocks short.
The sewn set is 4½ in wide; the block finishes at 4 x 4 in.
Reckoned on 40 in of usable fabric and ¼ in seams. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// 60 segments, 40 of one kind (3 sets) and 20 of the other (2). Of the colours 2·3 + 1·2 = 8 and 1·3 + 2·2 = 7.
		{
			is: "nine-patch", say: []string{"20 nine patches finishing 6 in"},
			figures:    "strips 15; segments 60; segment_width 2½ in; strip_width 2½ in; unfinished 6½ in; colour1.buy ⅝ yd; colour2.buy ½ yd",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "block 6 in; blocks 20; pattern nine-patch",
		},
		// 16 of 6 in 101.6; 40 segments: 3 sets.
		{
			is: "metric", say: []string{"20 four patches from 6 cm strips"},
			figures:    "strips 6; strips_each 3; segments 40; segment_width 6 cm; strip_width 6 cm; unfinished 10.7 cm; colour1.buy 0.2 m; colour2.buy 0.2 m",
			assumed:    "usable_width 101.6 cm; seam 0.635 cm",
			understood: "strip_width 6 cm; blocks 20; pattern four-patch",
		},
		// 6/3 + ½; segments of 6½.
		{
			is: "rail", say: []string{"rail fence 6 in block, 3 rails"},
			figures:    "strip_width 2½ in; segment_width 6½ in; unfinished 6½ in",
			assumed:    "usable_width 40 in; seam 0.25 in; rails 3",
			understood: "block 6 in; pattern rail",
		},
		// 8·2 + ½.
		{
			is: "checkerboard", say: []string{"checkerboard 8 x 8 from 2½ in strips"},
			figures:    "strip_width 2½ in; segment_width 2½ in; unfinished 16½ in",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "strip_width 2.5 in; across 8; down 8; pattern checkerboard",
		},
		{
			is: "not dividing", say: []string{"nine patch finishing 7 in"},
			outcome:    commands.Decline,
			understood: "block 7 in; pattern nine-patch",
			text:       "A block of 7 in does not divide into 3 patches on the ruler. 7⅛ in works.",
		},
		{
			is: "no width", say: []string{"40 four patches"},
			outcome:    commands.Question,
			understood: "blocks 40; pattern four-patch",
			text:       "How wide are the strips, as cut?",
		},
		{
			is: "no pattern", say: []string{"strip set from 2½ strips"},
			outcome:    commands.Question,
			understood: "strip_width 2.5 in",
			text:       "Which block is it?",
		},
	})
}
