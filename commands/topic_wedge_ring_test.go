package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestWedgeRing(t *testing.T) {
	ask(t, "wedge-ring", []row{
		// t = tan 11¼° = 0.19891: wide ⅞ + 12t = 3.262. Radii 3.262/2t − ¼/sin 11¼° = 6.918 and 0.918. Cover 2·(0.918/cos 11¼° + ¼) = 2.37, background 13.84 + 4½.
		{
			is: "plain", say: []string{"ring of 16 blades, 6 in long", `how big across is a ring of 16 blades 6" long`},
			figures:    "blades 16; angle 22½°; wide_end 3¼ in; narrow_end ⅞ in; ring_across 13 13/16 in; opening_across 1 13/16 in; cover_circle 2½ in; cover_cut 3 in; background_square 18½ in",
			assumed:    "seam 0.25 in; turn_under 0.25 in; cover_overlap 0.25 in; margin 2 in; ends plain; narrow_end 0.875 in",
			understood: "blades 16; blade_length 6 in; part full",
		},
		// t = tan 9°: wide 2.584. 8.157 − 1.598 − ¼ = 6.309 and 1.559. Cover 2·(1.559/cos 9° + ¼) = 3.66.
		{
			is: "folded tips", say: []string{"18° blades 5 in long with folded tips, 1 in narrow end"},
			figures:    "blades 20; angle 18°; blade_length 5 in; wide_end 2 9/16 in; narrow_end 1 in; ring_across 12⅝ in; opening_across 3⅛ in; cover_circle 3¾ in; cover_cut 4¼ in; background_square 17½ in",
			assumed:    "seam 0.25 in; turn_under 0.25 in; cover_overlap 0.25 in; margin 2 in",
			understood: "angle 18 deg; blade_length 5 in; narrow_end 1 in; ends folded",
		},
		// Finished 1½, so cut 2t·(1½ + 1.598) = 0.981; across 2·(1½ + 5).
		{
			is: "a wanted opening", say: []string{"ring of 20 blades 5 in long with a 3 in opening"},
			figures:    "blades 20; angle 18°; blade_length 5 in; wide_end 2 9/16 in; narrow_end 1 in; ring_across 13 in; opening_across 3 in; cover_circle 3¾ in; cover_cut 4¼ in; background_square 17½ in",
			assumed:    "seam 0.25 in; turn_under 0.25 in; cover_overlap 0.25 in; margin 2 in; ends plain",
			understood: "blades 20; blade_length 5 in; opening_across 3 in; part full",
		},
		// 2.2225 + 30t = 6.974. 22.016 − 4.059 = 17.957 and 2.957.
		{
			is: "metric", say: []string{"ring of 20 blades 15 cm long"},
			figures:    "blades 20; angle 18°; blade_length 15 cm; wide_end 7 cm; narrow_end 2.2 cm; ring_across 35.9 cm; opening_across 5.9 cm; cover_circle 7.5 cm; cover_cut 8.8 cm; background_square 48 cm",
			assumed:    "seam 0.635 cm; turn_under 0.635 cm; cover_overlap 0.635 cm; margin 5.08 cm; ends plain; narrow_end 2.2225 cm",
			understood: "blades 20; blade_length 15 cm; part full",
		},
		// As above, from the contract's own words.
		{
			is: "from strips that are wide enough", say: []string{"ring of 16 wedges, 6 in long, from 3½ strips"},
			figures:    "ring_across 13 13/16 in; wide_end 3¼ in",
			assumed:    "usable_width 40 in",
			understood: "blades 16; blade_length 6 in; strip_width 3.5 in",
			fault:      "goes to wedge-strips",
		},
		// The wide end is 3.262 in.
		{
			is: "from strips that are too narrow", say: []string{"ring of 16 wedges, 6 in long, from 2½ strips"},
			outcome:    commands.Decline,
			understood: "blades 16; blade_length 6 in; strip_width 2.5 in",
			fault:      "says how many strips, of a width that does not hold the blade",
		},
		{
			is: "no length", say: []string{"ring of 16 blades"},
			outcome:    commands.Question,
			understood: "blades 16; part full",
			text:       "How long are the blades?",
		},
	})
}
