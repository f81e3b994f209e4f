package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestWedgeCount(t *testing.T) {
	ask(t, "wedge-count", []row{
		// 360/15.
		{
			is: "closing", say: []string{"how many 15 degree wedges make a circle", "how many 15° blades close a full circle", "15 degree wedges, how many for a circle"},
			figures:    "blades 24; angle 15°; left_over 0°",
			understood: "angle 15 deg",
			text: `
24 blades of 15° close a full circle.
6 make a quarter: check each quarter against a square corner before you join them.`,
		},
		// 18° gives 20 blades: common practice, no source.
		{
			is: "common practice", say: []string{"how many 18 degree wedges make a circle"},
			figures:    "blades 20; angle 18°; left_over 0°",
			understood: "angle 18 deg",
		},
		// 360 − 14·25 = 10; 360/14 = 25.714; 360/15 = 24.
		{
			is: "not closing", say: []string{"how many 25 degree wedges make a circle"},
			figures:    "blades 14; angle 25°; left_over 10°",
			understood: "angle 25 deg",
			text: `
14 blades of 25° leave 10° open in a full circle; one more would be 15° too many.
To close it: 14 blades of 25.71° or 15 blades of 24°.`,
		},
		// 360/14.
		{
			is: "the angle", say: []string{"what angle are 14 blades", "what angle does a circle of 14 blades need"},
			figures:    "blades 14; angle 25.71°; left_over 0°",
			understood: "blades 14",
		},
		// 180/18.
		{
			is: "half", say: []string{"how many 18° blades make a half circle", "how many 18 degree wedges in a half ring"},
			figures:    "blades 10; angle 18°; left_over 0°",
			understood: "angle 18 deg; part half",
		},
		// 90/18: common practice, no source.
		{
			is: "quarter", say: []string{"how many 18 degree blades make a quarter circle"},
			figures:    "blades 5; angle 18°; left_over 0°",
			understood: "angle 18 deg; part quarter",
		},
		{
			is: "too many", say: []string{"25 blades of 18 degrees in a circle", "do 25 blades of 18° make a circle"},
			outcome:    commands.Decline,
			understood: "angle 18 deg; blades 25",
			text:       "25 blades of 18° make 450°, a full turn and 90° too many; it would ruffle. 20 blades of 18° close it. For 25 blades the angle is 14.4°.",
		},
		{
			is: "no angle at all", say: []string{"how many 0 degree wedges make a circle"},
			outcome:    commands.Decline,
			understood: "angle 0 deg",
			text:       "The angle of the wedge has to be more than nothing. Like this: how many 15 degree wedges make a circle.",
		},
		{
			is: "too wide", say: []string{"how many 200 degree wedges make a circle"},
			outcome:    commands.Decline,
			understood: "angle 200 deg",
		},
	})
}
