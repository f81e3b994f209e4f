package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestBiasBinding(t *testing.T) {
	ask(t, "bias-binding", []row{
		// q(q − 1)/2¼ ≥ 300: q = (1 + √2701)/2 = 26.49, up to 26½, which makes 26½·25½/2¼ = 300⅓.
		{
			is: "a length", say: []string{"bias binding 300 in of 2¼", `300 inches of 2 1/4" bias`, "how big a square for 300 in of bias binding cut 2¼"},
			figures:    "length_needed 300 in; square_side 26½ in; strip_width 2¼ in; buy ¾ yd",
			assumed:    "usable_width 40 in",
			understood: "length 300 in; strip_width 2.25 in",
			text: `
A square of 26½ in, cut into bias of 2¼ in: buy ¾ yd.
It really makes 300¼ in; you need 300 in.
Cut one by one, slanting across the whole width, it is 6 strips of 56½ in, from 59 1/16 in of fabric.
Reckoned on 40 in of usable fabric. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// 180 + 10 = 190: q = (1 + √1901)/2 = 22.30. 22½·21½/2½ = 193½. 22½ in are ⅝ yd.
		{
			is: "a quilt", say: []string{"bias binding for a 40 x 50 quilt", "bias binding for a quilt 40 by 50"},
			figures:    "length_needed 190 in; square_side 22½ in; strip_width 2½ in; buy ⅝ yd",
			assumed:    "usable_width 40 in; binding_strip 2.5 in; binding_extra 10 in",
			understood: "quilt_width 40 in; quilt_length 50 in",
		},
		// 50π + 10 = 167.08: q = (1 + √1504.7)/2 = 19.90.
		{
			is: "a circle", say: []string{"bias for a 50 in circle, cut 2¼"},
			figures:    "length_needed 167 1/16 in; square_side 20 in; strip_width 2¼ in; buy ⅝ yd",
			assumed:    "usable_width 40 in; binding_extra 10 in",
			understood: "across 50 in; strip_width 2.25 in",
		},
		// q(q − 2.54)/6 ≥ 750: q = (2.54 + √18006.5)/2 = 68.36, up to a whole centimetre.
		{
			is: "metric", say: []string{"750 cm of bias cut 6 cm"},
			figures:    "length_needed 750 cm; square_side 69 cm; strip_width 6 cm; buy 0.7 m",
			assumed:    "usable_width 101.6 cm",
			understood: "length 750 cm; strip_width 6 cm",
		},
		{
			is: "nothing said", say: []string{"bias binding"},
			outcome: commands.Question,
			text:    "How much bias do you need, in length, or what is it for?",
		},
	})
}
