package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestBacking(t *testing.T) {
	ask(t, "backing", []row{
		// 78 x 98. Side by side 2·40 − 1 = 79 of 78: 2·98 = 196 in, 5½ yd. Turned: 3·40 − 2 = 118 of 98: 3·78 = 234 in, 6½ yd. Wide: 78 in of 106.
		{
			is: "two panels", say: []string{"backing for 70 x 90", "how much backing fabric for a 70 by 90 quilt", `I need a back for a quilt 70" x 90"`},
			figures:    "backing_width 78 in; backing_length 98 in; panels 2; panel_length 98 in; seams vertical; buy 5½ yd",
			assumed:    "usable_width 40 in; overage 4 in; panel_seam 0.5 in",
			understood: "quilt_width 70 in; quilt_length 90 in",
			text: `
Buy 5½ yd: 2 panels of 98 in, seams running top to bottom.
The backing is 78 x 98 in, 4 in over on each side of 70 x 90 in.
With seams running side to side it would take 6½ yd.
Wide backing of 106 in would save 1 seam: 2¼ yd of it.
Reckoned on 40 in of usable fabric, 4 in over on each side and ½ in of seam on each panel edge. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// 38 x 48 from 40: 48 in are 1⅓ yd. Turned: two of 38, 76 in.
		{
			is: "one piece", say: []string{"backing for 30 x 40", "backing fabric for a 30 by 40 baby quilt"},
			figures:    "backing_width 38 in; backing_length 48 in; panels 1; panel_length 48 in; seams none; buy 1⅜ yd",
			assumed:    "usable_width 40 in; overage 4 in; panel_seam 0.5 in",
			understood: "quilt_width 30 in; quilt_length 40 in",
		},
		// 98 of 106 in across, so 78 in long: 2⅙ yd.
		{
			is: "wide fabric", say: []string{"backing for 70 x 90 from wide backing fabric"},
			figures:    "backing_width 78 in; backing_length 98 in; panels 1; panel_length 78 in; seams none; buy 2¼ yd",
			assumed:    "wide_backing 106 in; overage 4 in; panel_seam 0.5 in",
			understood: "quilt_width 70 in; quilt_length 90 in; bolt wide",
		},
		// 66 x 86: two panels of 86 are 172 in, 4⅞ yd; turned 3·66 = 198 in, 5½ yd.
		{
			is: "its own overage", say: []string{"backing for 60 x 80, 3 in each side", "backing 60 by 80 with 3 inches extra on each side"},
			figures:    "backing_width 66 in; backing_length 86 in; panels 2; panel_length 86 in; seams vertical; buy 4⅞ yd",
			assumed:    "usable_width 40 in; panel_seam 0.5 in",
			understood: "quilt_width 60 in; quilt_length 80 in; overage 3 in",
		},
		// 68 x 78: 2·42 − 1 = 83 in of 78, so two of 68 in side to side, 136 of the 144 in.
		{
			is: "enough", say: []string{"is 4 yards of 42 in fabric enough to back 60 x 70", "I have 4 yd of 42 inch fabric, will that back 60 by 70?"},
			figures:    "backing_width 68 in; backing_length 78 in; panels 2; panel_length 68 in; seams horizontal; buy 3⅞ yd; have 4 yd; enough yes; spare 8 in",
			assumed:    "overage 4 in; panel_seam 0.5 in",
			understood: "quilt_width 60 in; quilt_length 70 in; usable_width 42 in; have 4 yd",
			text: `
Yes, 4 yd is enough, with 8 in to spare.
Buy 3⅞ yd: 2 panels of 68 in, seams running side to side.
The backing is 68 x 78 in, 4 in over on each side of 60 x 70 in.
With seams running top to bottom it would take 4⅜ yd.
Wide backing of 106 in would save 1 seam: 2 yd of it.
Reckoned on 4 in over on each side and ½ in of seam on each panel edge. Say "3 in each side" if your quilter wants another.
Close the cutter each time you put it down.`,
		},
		// 136 − 108 = 28 in.
		{
			is: "not enough", say: []string{"is 3 yd enough to back 60 x 70"},
			figures:    "backing_width 68 in; backing_length 78 in; panels 2; panel_length 68 in; seams horizontal; buy 3⅞ yd; have 3 yd; enough no; short 28 in",
			assumed:    "usable_width 40 in; overage 4 in; panel_seam 0.5 in",
			understood: "quilt_width 60 in; quilt_length 70 in; have 3 yd",
		},
		// The other way of the first row.
		{
			is: "seams the other way", say: []string{"backing for 70 x 90 with horizontal seams", "backing for 70 x 90, seams running across"},
			figures:    "backing_width 78 in; backing_length 98 in; panels 3; panel_length 78 in; seams horizontal; buy 6½ yd",
			assumed:    "usable_width 40 in; overage 4 in; panel_seam 0.5 in",
			understood: "quilt_width 70 in; quilt_length 90 in; seams horizontal",
		},
		// 180 in: two panels of 90, so 79 − 8 by 90 − 8; one of 180: 40 − 8 by 172.
		{
			is: "the largest quilt", say: []string{"how big a quilt can I back with 5 yd", "largest quilt I can back from 5 yards"},
			figures:    "quilt_width 71 in; quilt_length 82 in; panels 2; panel_length 90 in",
			assumed:    "usable_width 40 in; overage 4 in; panel_seam 0.5 in",
			understood: "have 5 yd",
		},
		// 170.32 x 220.32 cm: 2·101.6 − 2.54 = 200.66, so 2·220.32 = 440.64 cm.
		{
			is: "metric", say: []string{"backing for 150 x 200 cm"},
			figures:    "backing_width 170.3 cm; backing_length 220.3 cm; panels 2; panel_length 220.3 cm; seams vertical; buy 4.5 m",
			assumed:    "usable_width 101.6 cm; overage 10.16 cm; panel_seam 1.27 cm",
			understood: "quilt_width 150 cm; quilt_length 200 cm",
		},
		{
			is: "no size", say: []string{"how much backing do I need", "backing please"},
			outcome: commands.Question,
			text:    "How big is the quilt, width by length?",
		},
	})
}
