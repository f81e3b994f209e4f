package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestDiamonds(t *testing.T) {
	ask(t, "diamonds", []row{
		// (2½ − ½)/sin 45° = 2.828 a side. Along the strip 2½/sin 45° = 3.536 each, 2½ lost at the end: 37½/3.536 = 10. Star 2.828·(2 + √2) = 9.657; corners 2.828 + ½; sides 2.828·√2 + 1¼ = 5¼.
		{
			is: "45°", say: []string{"45° diamonds from 2½ in strips", `45 degree diamonds from 2½" strips`},
			figures:    "strip_width 2½ in; per_strip 10; star_block 9 11/16 in; corner_square 3⅜ in; side_square 5¼ in",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "angle 45 deg; strip_width 2.5 in",
			text: `
10 diamonds of 45° from a strip 2½ in wide.
Cut across the strip at 45°, every 2½ in. They finish 2 13/16 in a side.
Eight make a star 9 11/16 in across: four corner squares of 3⅜ in, and one square of 5¼ in cut twice for the sides.
Reckoned on 40 in of usable fabric and ¼ in seams. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// 3·sin 60° + ½ = 3.098, up. (40 − 3⅛/tan 60°)/(3⅛/sin 60°) = 10.6. 5·3⅛ = 15⅝ of 18 in.
		{
			is: "60°, counted", say: []string{"60° diamonds 3 in finished, 48 of them", "48 sixty degree diamonds, 3 in finished"},
			figures:    "strip_width 3⅛ in; per_strip 10; strips 5; diamonds 48; buy ½ yd",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "angle 60 deg; side 3 in; diamonds 48",
		},
		// Side 12/(2 + √2) = 3.5147; strip 3.5147·sin 45° + ½ = 2.985; corner 4.0147, whose hair over 4 is dropped; side 3.5147·√2 + 1¼ = 6.2205.
		{
			is: "star", say: []string{"lemoyne star 12 in block"},
			figures:    "strip_width 3 in; per_strip 8; star_block 12 in; corner_square 4 in; side_square 6¼ in",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "star 12 in; kind star",
		},
		// (6 − 1.27)/sin 45° = 6.689; (101.6 − 6)/8.485 = 11.3.
		{
			is: "metric", say: []string{"45° diamonds from 6 cm strips"},
			figures:    "strip_width 6 cm; per_strip 11; star_block 22.8 cm; corner_square 8 cm; side_square 12.6 cm",
			assumed:    "usable_width 101.6 cm; seam 0.635 cm",
			understood: "angle 45 deg; strip_width 6 cm",
		},
		{
			is: "no angle", say: []string{"diamonds from 2½ in strips"},
			outcome:    commands.Question,
			understood: "strip_width 2.5 in",
			text:       "Are they 45° or 60° diamonds?",
		},
		{
			is: "no size", say: []string{"60° diamonds"},
			outcome:    commands.Question,
			understood: "angle 60 deg",
			text:       "How wide are the strips, or how long is a side, finished?",
		},
	})
}
