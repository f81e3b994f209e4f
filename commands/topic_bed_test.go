package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestBed(t *testing.T) {
	ask(t, "bed", []row{
		// 60 + 24 by 80 + 12.
		{
			is: "drop", say: []string{"queen with 12 in drop", "how big a quilt for a queen bed with a 12 inch drop"},
			figures:    "mattress_width 60 in; mattress_length 80 in; quilt_width 84 in; quilt_length 92 in",
			assumed:    "country US",
			understood: "drop 12 in; bed queen",
		},
		// checks.csv F116: 60 x 80 with 13 in.
		{
			is: "a published case", say: []string{"queen with 13 in drop"},
			figures:    "mattress_width 60 in; mattress_length 80 in; quilt_width 86 in; quilt_length 93 in",
			assumed:    "country US",
			understood: "drop 13 in; bed queen",
		},
		// checks.csv F115: 54 x 75 with 13 in.
		{
			is: "a published mattress", say: []string{"54 x 75 mattress, 13 in drop"},
			figures:    "mattress_width 54 in; mattress_length 75 in; quilt_width 80 in; quilt_length 88 in",
			understood: "mattress_width 54 in; mattress_length 75 in; drop 13 in",
		},
		// 76 + 28 by 80 + 14 + 10.
		{
			is: "pillow tuck", say: []string{"king with 14 in drop and 10 in pillow tuck"},
			figures:    "mattress_width 76 in; mattress_length 80 in; quilt_width 104 in; quilt_length 104 in",
			assumed:    "country US",
			understood: "drop 14 in; tuck 10 in; bed king",
		},
		// 80 + 15.
		{
			is: "another drop at the foot", say: []string{"queen with 12 in drop and 15 in at the foot"},
			figures:    "mattress_width 60 in; mattress_length 80 in; quilt_width 84 in; quilt_length 95 in",
			assumed:    "country US",
			understood: "drop 12 in; foot_drop 15 in; bed queen",
		},
		// 135 x 190 cm (the published UK double) with 30 cm.
		{
			is: "British", say: []string{"UK double with 30 cm drop"},
			figures:    "mattress_width 135 cm; mattress_length 190 cm; quilt_width 195 cm; quilt_length 220 cm",
			understood: "drop 30 cm; bed double; country UK",
		},
		// 39 + 28 by 75 + 14.
		{
			is: "a mattress", say: []string{"quilt for a mattress 39 x 75 with 14 in drop"},
			figures:    "mattress_width 39 in; mattress_length 75 in; quilt_width 67 in; quilt_length 89 in",
			understood: "mattress_width 39 in; mattress_length 75 in; drop 14 in",
		},
		// (86 − 76)/2 = 5; 93 − 80 = 13.
		{
			is: "which beds", say: []string{"which beds does an 86 x 93 quilt fit"},
			figures:    "bed king; drop 5 in",
			assumed:    "country US",
			understood: "quilt_width 86 in; quilt_length 93 in",
		},
		{
			is: "no drop", say: []string{"how big a quilt for a queen bed"},
			outcome:    commands.Question,
			understood: "bed queen",
			text:       "How far should the quilt hang down at the sides?",
		},
		{
			is: "smaller than all", say: []string{"which bed does a 20 x 30 quilt fit"},
			outcome:    commands.Decline,
			understood: "quilt_width 20 in; quilt_length 30 in",
			text:       "20 x 30 in is smaller than every published mattress. It is a throw, or a quilt for a cot.",
		},
	})
}
