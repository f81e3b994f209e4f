package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestSquareInSquare(t *testing.T) {
	ask(t, "square-in-square", []row{
		// 12/√2 + ½ = 8.985; 6 + ⅞.
		{
			is: "block", say: []string{"square in a square 12 in finished", "economy block 12 in finished"},
			figures:    "centre_cut 9 in; corner_square 6⅞ in; corner_squares 2; unfinished 12½ in",
			assumed:    "seam 0.25 in",
			understood: "block 12 in",
			text: `
Cut 1 square of 9 in for the middle and 2 squares of 6⅞ in for the corners, each of those once from corner to corner.
The block measures 12½ in before it is sewn in and finishes at 12 in; its centre finishes at 8½ in.
Reckoned on ¼ in seams. Say "6 mm seams" or the like if you sew another.
Close the cutter each time you put it down.`,
		},
		// 6/√2 + ⅞ = 5.118; two squares a block, each cut once.
		{
			is: "centre", say: []string{"square in square with a 6 in centre, 20 blocks"},
			figures:    "centre_cut 6½ in; corner_square 5⅛ in; corner_squares 40; unfinished 9 in",
			assumed:    "seam 0.25 in",
			understood: "centre 6 in; blocks 20",
		},
		// 20/√2 + 1.27 = 15.412; 10 + 2.168.
		{
			is: "metric", say: []string{"square in a square 20 cm finished"},
			figures:    "centre_cut 15.5 cm; corner_square 12.2 cm; corner_squares 2; unfinished 21.3 cm",
			assumed:    "seam 0.635 cm",
			understood: "block 20 cm",
		},
		{
			is: "no size", say: []string{"square in a square"},
			outcome: commands.Question,
			text:    "How big is the block, finished?",
		},
	})
}
