package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestQuarterSquares(t *testing.T) {
	ask(t, "quarter-square-triangles", []row{
		// 4 + 1¼ (karencombs.com, formulas for quilters).
		{
			is: "size", say: []string{"quarter square triangles 4 in finished", "hourglass block 4 in finished"},
			figures:    "square_cut 5¼ in; unfinished 4½ in; finished 4 in",
			assumed:    "seam 0.25 in",
			understood: "finished 4 in",
			text: `
Cut squares of 5¼ in, two for every two units.
Each measures 4½ in before it is sewn in and finishes at 4 in.
If you like to trim to size, cut 5½ in.
Reckoned on ¼ in seams. Say "6 mm seams" or the like if you sew another.
Close the cutter each time you put it down.`,
		},
		// 6 + 1¼; two squares make two.
		{
			is: "counted", say: []string{"12 hourglass units finishing 6 in", "12 qst 6 in finished"},
			figures:    "square_cut 7¼ in; squares 12; units 12; unfinished 6½ in; finished 6 in",
			assumed:    "seam 0.25 in",
			understood: "finished 6 in; units 12",
			fault:      "the width of the fabric is said although nothing rests on it",
		},
		// 5¼ − 1¼.
		{
			is: "square in hand", say: []string{"qst from 5¼ in squares"},
			figures:    "square_cut 5¼ in; unfinished 4½ in; finished 4 in",
			assumed:    "seam 0.25 in",
			understood: "square 5.25 in",
		},
		// 10 + 2·0.635·(1 + √2) = 13.066.
		{
			is: "metric", say: []string{"quarter square triangles 10 cm finished"},
			figures:    "square_cut 13.1 cm; unfinished 11.3 cm; finished 10 cm",
			assumed:    "seam 0.635 cm",
			understood: "finished 10 cm",
		},
		{
			is: "no size", say: []string{"quarter square triangles"},
			outcome: commands.Question,
			text:    "How big is each quarter-square unit, finished?",
		},
	})
}
