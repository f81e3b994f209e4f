package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestPlan(t *testing.T) {
	ask(t, "plan", []row{
		// As backing, batting and binding say for 60 x 72: 2·80 of 79 in, 68 x 80, and 274 of 8·40 − 17½ in.
		{
			is: "a quilt", say: []string{"plan a 60 x 72 quilt", "plan: backing, batting and binding for 60 x 72"},
			figures:    "backing.backing_width 68 in; backing.backing_length 80 in; backing.panels 2; backing.panel_length 80 in; backing.seams vertical; backing.buy 4½ yd; batting.batting_width 68 in; batting.batting_length 80 in; binding.perimeter 264 in; binding.length_needed 274 in; binding.strips 8; binding.strip_width 2½ in; binding.buy ⅝ yd",
			assumed:    "usable_width 40 in; overage 4 in; panel_seam 0.5 in; binding_strip 2.5 in; binding_extra 10 in; joins diagonal",
			understood: "quilt_width 60 in; quilt_length 72 in",
		},
		// 64 x 78: 2·64 side to side, since 79 in hold 78; 252 + 10 = 262 of 7·40 − 15 in.
		{
			is: "named one by one", say: []string{"backing, batting and binding for 56 x 70"},
			figures:    "backing.backing_width 64 in; backing.backing_length 78 in; backing.panels 2; backing.panel_length 64 in; backing.seams horizontal; backing.buy 3⅝ yd; batting.batting_width 64 in; batting.batting_length 78 in; binding.perimeter 252 in; binding.length_needed 262 in; binding.strips 7; binding.strip_width 2½ in; binding.buy ½ yd",
			assumed:    "usable_width 40 in; overage 4 in; panel_seam 0.5 in; binding_strip 2.5 in; binding_extra 10 in; joins diagonal",
			understood: "quilt_width 56 in; quilt_length 70 in",
		},
		{
			is: "no size", say: []string{"plan a quilt"},
			outcome: commands.Question,
			text:    "What size is the quilt, width by length? I then reckon backing, batting and binding together.",
		},
	})
}
