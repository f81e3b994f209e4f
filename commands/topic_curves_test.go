package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestCurves(t *testing.T) {
	ask(t, "curves", []row{
		// 6π = 18.850, nearest sixteenth 18⅞; 6 + 2·¼.
		{
			is: "circle", say: []string{"circle finishing 6 in, what do I cut"},
			figures:    "around 18⅞ in; template_across 6 in; cut_across 6½ in",
			assumed:    "turn_under 0.25 in",
			understood: "across 6 in",
			text: `
Cut it 6½ in across: it finishes at 6 in with ¼ in turned under all round.
The finished edge is 18⅞ in round.
Reckoned on ¼ in to turn under.
Close the cutter each time you put it down.`,
		},
		// 4 ± ¼; arc 2π = 6.283. Block 5, so pie 4 + ½ and background 5 + ½.
		{
			is: "quarter circle", say: []string{"quarter circle block 4 in radius"},
			figures:    "radius 4 in; pie_radius 4¼ in; background_radius 3¾ in; pie_square 4½ in; background_square 5½ in; around 6 5/16 in",
			assumed:    "seam 0.25 in",
			understood: "radius 4 in; shape quarter",
		},
		// 64/8; half circles of 8: 4π = 12.566, all 100.53.
		{
			is: "scallops", say: []string{"scallops of 8 in along a 64 in edge"},
			figures:    "scallops 8; each_across 8 in; arc 12 9/16 in; depth 4 in",
			understood: "edge 64 in; scallop 8 in; shape scallops",
		},
		// 60/8 = 7½ rounds to 8 of 7½; 72/8 = 9. 7½·π/2 = 11.78.
		{
			is: "scallops round a quilt", say: []string{"scallops about 8 in on a 60 x 72 quilt"},
			figures:    "top.scallops 8; top.each_across 7½ in; top.arc 11¾ in; depth 3¾ in; side.scallops 9; side.each_across 8 in; side.arc 12 9/16 in",
			understood: "scallop 8 in; quilt_width 60 in; quilt_length 72 in; shape scallops",
		},
		// 244 − (8 − 2π)·4 = 237.13.
		{
			is: "rounded corners", say: []string{"rounded corners of 4 in radius on a 54 x 68 quilt, how far round"},
			figures:    "around 237⅛ in",
			understood: "radius 4 in; quilt_width 54 in; quilt_length 68 in; shape corners",
			text: `
237⅛ in round the edge, 6⅞ in less than with square corners.
The corners want bias binding.`,
		},
		// 15π = 47.12; 15 + 1.27 up.
		{
			is: "metric", say: []string{"circle finishing 15 cm"},
			figures:    "around 47.1 cm; template_across 15 cm; cut_across 16.3 cm",
			assumed:    "turn_under 0.635 cm",
			understood: "across 15 cm",
		},
		{
			is: "no edge", say: []string{"scalloped edge"},
			outcome:    commands.Question,
			understood: "shape scallops",
			text:       "How long is the edge?",
			fault:      "asks for a circle",
		},
	})
}
