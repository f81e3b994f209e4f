package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestWedgeStrips(t *testing.T) {
	ask(t, "wedge-strips", []row{
		// 40/6 = 6, 96/6 = 16 strips, 48 of 49½ in. From 42 in 7 each.
		{
			is: "along", say: []string{"96 blades 6 in long from 3 in strips", `how many 3" strips for 96 blades 6 inches long`},
			figures:    "blades_per_strip 6; strips 16; strip_width 3 in; buy 1⅜ yd",
			assumed:    "usable_width 40 in",
			understood: "blades 96; blade_length 6 in; strip_width 3 in",
			text: `
16 strips, 3 in wide, with 6 blades from each: buy 1⅜ yd.
The blades lie along the strip. 15 strips would be 6 blades short.
With 42 in fabric 14 are enough.
Reckoned on 40 in of usable fabric. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// Wide ⅞ + 10·tan 9° = 2.459: k·3.334/2 + 1.584/2 ≤ 40 gives 23.
		{
			is: "head to tail", say: []string{"20 blades of 18°, 5 in long, head to tail"},
			figures:    "blades_per_strip 23; strips 1; strip_width 5 in; buy ¼ yd",
			assumed:    "usable_width 40 in; narrow_end 0.875 in",
			understood: "blades 20; blade_length 5 in; angle 18 deg; lie head to tail",
			text: `
1 strip, 5 in wide, with 23 blades from each: buy ¼ yd.
The blades lie across the strip, head to tail. The last strip would give 3 more.
Along the strip it would take 3 strips, 2½ in wide: ¼ yd.
Reckoned on 40 in of usable fabric and ⅞ in at the narrow end. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// 60/6.
		{
			is: "strips in hand", say: []string{"will 10 strips of 3 in do for 60 blades 6 in long"},
			figures:    "blades_per_strip 6; strips 10; strip_width 3 in; buy ⅞ yd; have 10; enough yes; spare 0",
			assumed:    "usable_width 40 in",
			understood: "blades 60; blade_length 6 in; strip_width 3 in; have_strips 10",
		},
		// 20/6 = 3 in each of 18/3 = 6 strips: 96/18 up.
		{
			is: "fat quarters", say: []string{"how many fat quarters for 96 blades 6 in long from 3 in strips"},
			figures:    "blades_per_cut 18; cuts 6; strip_width 3 in",
			assumed:    "usable_width 40 in",
			understood: "blades 96; blade_length 6 in; strip_width 3 in; source fat quarter",
		},
		// 101.6/15 = 6: 7 strips, 56 cm.
		{
			is: "metric", say: []string{"40 blades 15 cm long from 8 cm strips"},
			figures:    "blades_per_strip 6; strips 7; strip_width 8 cm; buy 0.6 m",
			assumed:    "usable_width 101.6 cm",
			understood: "blades 40; blade_length 15 cm; strip_width 8 cm",
		},
		{
			is: "no length", say: []string{"how many strips for 96 blades"},
			outcome:    commands.Question,
			understood: "blades 96",
			text:       "How long are the blades?",
		},
		{
			is: "longer than the fabric is wide", say: []string{"96 blades 50 in long from 3 in strips"},
			outcome:    commands.Decline,
			understood: "blades 96; blade_length 50 in; strip_width 3 in",
			text:       "Not one blade 50 in long fits on a strip of 40 in. Blades can be 40 in long at most.",
		},
	})
}
