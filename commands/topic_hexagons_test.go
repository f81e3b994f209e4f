package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestHexagons(t *testing.T) {
	ask(t, "hexagons", []row{
		// checks.csv E092 and geometry: 1 + 3·3·4.
		{
			is: "round a middle", say: []string{"hexagon rosette of 3 rings, how many", "how many hexagons in a rosette of 3 rings"},
			figures:    "count 37",
			understood: "rings 3",
			text:       "37 hexagons: one in the middle and 3 rings round it.",
		},
		// checks.csv E087: flats 1.732, points 2, fabric 2.232 across the flats; a square of 2½.
		{
			is: "sizes", say: []string{"how big is a 1 in hexagon point to point"},
			figures:    "side 1 in; flat_to_flat 1¾ in; point_to_point 2 in; patch_width 2½ in; patch_height 2¼ in",
			assumed:    "hexagon_allowance 0.25 in",
			understood: "side 1 in",
		},
		// checks.csv E081: side 3, points 6, flats 5.196; E091: fabric flats 5.696, a square of 6½.
		{
			is: "published", say: []string{"3 in hexagons"},
			figures:    "side 3 in; flat_to_flat 5 3/16 in; point_to_point 6 in; patch_width 6½ in; patch_height 5¾ in",
			assumed:    "hexagon_allowance 0.25 in",
			understood: "side 3 in",
		},
		// 3/√3 = 1.732; 2·1.732 = 3.464.
		{
			is: "flats said", say: []string{"hexagons 3 in flat to flat"},
			figures:    "side 1¾ in; flat_to_flat 3 in; point_to_point 3 7/16 in; patch_width 4 in; patch_height 3½ in",
			assumed:    "hexagon_allowance 0.25 in",
			understood: "flat_to_flat 3 in",
		},
		// Columns 1½ apart, 27·1½ + ½ = 41 of 40 wide; 29 in each, (29 + ½)·√3 = 51.1 of 50 long.
		{
			is: "a quilt", say: []string{"1 in hexagons for 40 x 50"},
			figures:    "side 1 in; flat_to_flat 1¾ in; point_to_point 2 in; patch_width 2½ in; patch_height 2¼ in; count 783; buy 3⅜ yd",
			assumed:    "usable_width 40 in; hexagon_allowance 0.25 in",
			understood: "side 1 in; quilt_width 40 in; quilt_length 50 in",
		},
		// Columns 3.75 apart: 27·3.75 + 1.25 = 102.5; 28·4.33 + 2.17 = 123.4.
		{
			is: "metric", say: []string{"2.5 cm hexagons, how many for 100 x 120 cm"},
			figures:    "side 2.5 cm; flat_to_flat 4.3 cm; point_to_point 5 cm; patch_width 6.5 cm; patch_height 5.7 cm; count 756; buy 3 m",
			assumed:    "usable_width 101.6 cm; hexagon_allowance 0.635 cm",
			understood: "side 2.5 cm; quilt_width 100 cm; quilt_length 120 cm",
		},
		{
			is: "no size", say: []string{"hexagons"},
			outcome: commands.Question,
			text:    "How long is one side of the hexagon, as its paper is sold?",
		},
	})
}
