package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestCoping(t *testing.T) {
	ask(t, "coping", []row{
		// checks.csv F083 and F084: 46 takes 10 of 5, 2 in a side; 58 takes 12, 1 in.
		{
			is: "both sides", say: []string{"coping strips for a 46 x 58 quilt with 5 in border units", `coping strips for a 46 by 58 quilt, 5" border units`},
			figures:    "width.units 10; width.strip_finished 2 in; width.strip_cut 2½ in; length.units 12; length.strip_finished 1 in; length.strip_cut 1½ in",
			assumed:    "seam 0.25 in",
			understood: "quilt_width 46 in; quilt_length 58 in; unit 5 in",
			text: `
The width takes 10 units, 50 in: add strips that finish at 2 in left and right, cut 2½ in.
The length takes 12 units, 60 in: add strips that finish at 1 in top and bottom, cut 1½ in.
Before its border the quilt is then 50 x 60 in.
Reckoned on ¼ in seams. Say "6 mm seams" or the like if you sew another.
Close the cutter each time you put it down.`,
		},
		// checks.csv F083.
		{
			is: "one side", say: []string{"coping strip for a side of 46 in, 5 in units"},
			figures:    "units 10; strip_finished 2 in; strip_cut 2½ in",
			assumed:    "seam 0.25 in",
			understood: "unit 5 in; side 46 in",
		},
		// 48/4 = 12, 60/4 = 15.
		{
			is: "it fits", say: []string{"pieced border of 4 in units on 48 x 60"},
			figures:    "width.units 12; width.strip_finished 0 in; width.strip_cut 0 in; length.units 15; length.strip_finished 0 in; length.strip_cut 0 in",
			assumed:    "seam 0.25 in",
			understood: "quilt_width 48 in; quilt_length 60 in; unit 4 in",
			text: `
The width of the quilt takes 12 units and needs no strip.
The length of the quilt takes 15 units and needs no strip.
Before its border the quilt is then 48 x 60 in.
Reckoned on ¼ in seams. Say "6 mm seams" or the like if you sew another.
Close the cutter each time you put it down.`,
		},
		// 122/10 takes 13: 130 − 122 = 8; 147 takes 15: 3, half of it 1.5; and a seam of 0.635 twice.
		{
			is: "metric", say: []string{"coping strips for a 122 x 147 cm quilt with 10 cm units"},
			figures:    "width.units 13; width.strip_finished 4 cm; width.strip_cut 5.3 cm; length.units 15; length.strip_finished 1.5 cm; length.strip_cut 2.8 cm",
			assumed:    "seam 0.635 cm",
			understood: "quilt_width 122 cm; quilt_length 147 cm; unit 10 cm",
		},
		{
			is: "nothing said", say: []string{"coping strips"},
			outcome: commands.Question,
			text:    "How big is the quilt, width by length?",
		},
	})
}
