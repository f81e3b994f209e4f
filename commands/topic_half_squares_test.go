package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestHalfSquares(t *testing.T) {
	ask(t, "half-square-triangles", []row{
		// 3 + ⅞; two squares make two. 10 of 3⅞ in a strip, so 2 strips, 7¾ of 9 in.
		{
			is: "two at a time", say: []string{"24 half square triangles 3 in finished", "24 hst finishing 3 in", `I need 24 HSTs, 3" finished`},
			figures:    "square_cut 3⅞ in; squares 12; units 24; unfinished 3½ in; finished 3 in; buy ¼ yd",
			assumed:    "seam 0.25 in; usable_width 40 in; at_a_time 2",
			understood: "finished 3 in; units 24",
			text: `
Cut 12 squares of 3⅞ in of each colour: two at a time they make 24 units.
Each measures 3½ in before it is sewn in and finishes at 3 in.
That takes ¼ yd of each colour.
Four at a time it would be 6 squares of 5½ in of each.
Reckoned on ¼ in seams and 40 in of usable fabric. Say "6 mm seams" or the like if you sew another.
Close the cutter each time you put it down.`,
		},
		// 2·3⅞ (north-hampshire-quilters.org.uk).
		{
			is: "eight at a time", say: []string{"32 hst 3 in finished, 8 at a time", "32 hst 3 in finished, magic 8"},
			figures:    "square_cut 7¾ in; squares 4; units 32; unfinished 3½ in; finished 3 in; buy ¼ yd",
			assumed:    "seam 0.25 in; usable_width 40 in",
			understood: "finished 3 in; units 32; way eight",
		},
		// 3½·√2 + ½ = 5.4497; checks.csv E017 for the bias edges.
		{
			is: "four at a time", say: []string{"24 hst 3 in finished, four at a time"},
			figures:    "square_cut 5½ in; squares 6; units 24; unfinished 3½ in; finished 3 in; buy ¼ yd",
			assumed:    "seam 0.25 in; usable_width 40 in",
			understood: "finished 3 in; units 24; way four",
			text: `
Cut 6 squares of 5½ in of each colour: four at a time they make 24 units.
Each measures 3½ in before it is sewn in and finishes at 3 in.
That takes ¼ yd of each colour.
Four at a time leaves bias on all outer edges: starch first and do not pull.
Reckoned on ¼ in seams and 40 in of usable fabric. Say "6 mm seams" or the like if you sew another.
Close the cutter each time you put it down.`,
		},
		// A square cut once is two triangles.
		{
			is: "one at a time", say: []string{"10 hst 3 in finished, one at a time"},
			figures:    "square_cut 3⅞ in; squares 5; units 10; unfinished 3½ in; finished 3 in; buy ⅛ yd",
			assumed:    "seam 0.25 in; usable_width 40 in",
			understood: "finished 3 in; units 10; way one",
		},
		// 5 − ⅞.
		{
			is: "square in hand", say: []string{"hst from 5 in squares, what do they finish at", "what size hst do I get from 5 inch squares"},
			figures:    "square_cut 5 in; unfinished 4⅝ in; finished 4⅛ in",
			assumed:    "seam 0.25 in; at_a_time 2",
			understood: "square 5 in",
		},
		// 6/2 = 3: four units from two squares of each.
		{
			is: "pinwheel", say: []string{"pinwheel block 6 in finished"},
			figures:    "square_cut 3⅞ in; squares 2; units 4; unfinished 3½ in; finished 3 in; buy ⅛ yd",
			assumed:    "seam 0.25 in; usable_width 40 in; at_a_time 2",
			understood: "block 6 in",
			fault:      "fabric is said to buy without the width that it rests on",
		},
		// 3½ − ½ = 3.
		{
			is: "unfinished", say: []string{"half square triangles 3½ unfinished"},
			figures:    "square_cut 3⅞ in; finished 3 in",
			assumed:    "seam 0.25 in; at_a_time 2",
			understood: "finished 3.5 in",
		},
		// 8 + 0.635·(2 + √2) = 10.168; 9 in 101.6 cm, 2 strips, 20.4 cm.
		{
			is: "metric", say: []string{"20 hst 8 cm finished"},
			figures:    "square_cut 10.2 cm; squares 10; units 20; unfinished 9.3 cm; finished 8 cm; buy 0.3 m",
			assumed:    "seam 0.635 cm; usable_width 101.6 cm; at_a_time 2",
			understood: "finished 8 cm; units 20",
		},
		{
			is: "too small a square", say: []string{"hst from ½ in squares"},
			outcome:    commands.Decline,
			understood: "square 0.5 in",
			text:       "A square of ½ in is used up by the seams. A square of 1 in makes units that finish at ⅛ in.",
		},
		{
			is: "no size", say: []string{"half square triangles"},
			outcome: commands.Question,
			text:    "How big is each half-square triangle, finished?",
		},
	})
}
