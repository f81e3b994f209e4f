package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestWedgeFit(t *testing.T) {
	ask(t, "wedge-fit", []row{
		// (3 − ⅞)/(2·tan 7½°) = 8.07, down.
		{
			is: "longest", say: []string{"longest 15° blade from a 3 in strip", `how long can a 15 degree blade be from a 3" strip`},
			figures:    "longest_blade 8 in; strip_width 3 in; narrow_end ⅞ in; angle 15°",
			assumed:    "narrow_end 0.875 in",
			understood: "strip_width 3 in; angle 15 deg",
			text: `
8 in at the longest, cut along a strip of 3 in.
At 15° the blade is ⅞ in at the narrow end and 3 in at the wide end.
Reckoned on ⅞ in at the narrow end. Measure your template and tell me if it differs.
Close the cutter each time you put it down.`,
		},
		// 1 + 12·tan 9° = 2.90, up.
		{
			is: "the strip", say: []string{"how wide a strip for 6 in blades of 18°, 1 in at the narrow end"},
			figures:    "longest_blade 6 in; strip_width 3 in; narrow_end 1 in; angle 18°",
			understood: "angle 18 deg; blade_length 6 in; narrow_end 1 in",
		},
		// (3 − ⅞)/(2·tan 9°) = 6.71.
		{
			is: "fitting", say: []string{"does a 6 in blade of 18° fit a 3 in strip"},
			figures:    "longest_blade 6⅝ in; strip_width 3 in; narrow_end ⅞ in; angle 18°; enough yes",
			assumed:    "narrow_end 0.875 in",
			understood: "strip_width 3 in; angle 18 deg; blade_length 6 in",
		},
		// (2½ − ⅞)/(2·tan 9°) = 5.13; 5 in on whole-inch lines is common practice, no source.
		{
			is: "common practice", say: []string{"longest 18° blade from a 2½ in strip"},
			figures:    "longest_blade 5⅛ in; strip_width 2½ in; narrow_end ⅞ in; angle 18°",
			assumed:    "narrow_end 0.875 in",
			understood: "strip_width 2.5 in; angle 18 deg",
		},
		// (7.5 − 2.2225)/(2·tan 9°) = 16.66.
		{
			is: "metric", say: []string{"longest 18° blade from a 7.5 cm strip"},
			figures:    "longest_blade 16.6 cm; strip_width 7.5 cm; narrow_end 2.2 cm; angle 18°",
			assumed:    "narrow_end 2.2225 cm",
			understood: "strip_width 7.5 cm; angle 18 deg",
		},
		// As above.
		{
			is: "the strip, said otherwise", say: []string{"what width strip do I need for 6 inch 18 degree blades, narrow end 1 in"},
			figures:    "strip_width 3 in",
			understood: "angle 18 deg; blade_length 6 in; narrow_end 1 in",
		},
		{
			is: "nothing said", say: []string{"how long can my blades be"},
			outcome: commands.Question,
			text:    "How wide are your strips, and what angle is the template? For example: 18° from 3 in strips.",
		},
		{
			is: "narrower than its end", say: []string{"longest 18° blade from a ¾ in strip"},
			outcome:    commands.Decline,
			understood: "strip_width 0.75 in; angle 18 deg",
			text:       "A strip of ¾ in leaves nothing for a blade that is ⅞ in at its narrow end. From 1 in on blades can be cut.",
		},
	})
}
