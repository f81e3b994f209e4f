package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestSashing(t *testing.T) {
	ask(t, "sashing", []row{
		// Uprights 4·6, rows 5 of 5·9 + 4·2 + ½. 4 of 9½ in a strip: 6; 267½ of 7·40 − 3 = 277: 7. 13·2½ = 32½ of 36 in.
		{
			is: "between the blocks", say: []string{"sashing 2 in for 5 x 6 blocks of 9 in", "5 x 6 blocks of 9 with 2 in sashing", `2" sashing between 9" blocks, 5 across and 6 down`},
			figures:    "short_sashes 24; sash_cut 9½ in; long_sashes 5; long_cut 53½ in; cornerstones 0; strip_width 2½ in; strips 13; buy 1 yd; quilt_width 53 in; quilt_length 64 in",
			assumed:    "usable_width 40 in; seam 0.25 in; stones plain; outside inner",
			understood: "block 9 in; sash 2 in; across 5; down 6",
		},
		// checks.csv F072: 31 pieces and 12 cornerstones. 3 of 12½ in a strip: 11, 27½ of 31½ in.
		{
			is: "cornerstones", say: []string{"sashing 2 in for 4 x 5 blocks of 12 in with cornerstones", "4 x 5 blocks of 12 in, 2 in sashing with cornerstones"},
			figures:    "short_sashes 31; sash_cut 12½ in; long_sashes 0; cornerstones 12; strip_width 2½ in; strips 11; buy ⅞ yd; quilt_width 54 in; quilt_length 68 in",
			assumed:    "usable_width 40 in; seam 0.25 in; outside inner",
			understood: "block 12 in; sash 2 in; across 4; down 5; stones cornerstones",
			text: `
31 short sashes of 2½ in by 12½ in, with 12 cornerstones of 2½ in square.
11 strips, 2½ in wide: buy ⅞ yd, and ⅛ yd for the cornerstones.
The top comes to 54 x 68 in.
That is sashing between the blocks only; say "framed" to go round the outside too.
Reckoned on 40 in of usable fabric and ¼ in seams. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// checks.csv F072: 49 and 30. 17·2½ = 42½ of 45 in.
		{
			is: "cornerstones and frame", say: []string{"4 across 5 down, 12 in blocks, 2 in sashing with cornerstones and a frame"},
			figures:    "short_sashes 49; sash_cut 12½ in; long_sashes 0; cornerstones 30; strip_width 2½ in; strips 17; buy 1¼ yd; quilt_width 58 in; quilt_length 72 in",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "block 12 in; sash 2 in; across 4; down 5; stones cornerstones; outside framed",
		},
		// Uprights 5·5, rows 6 of 58½: 9 strips and ⌈351⌉ of 9·40 − 4 = 356: 9.
		{
			is: "frame", say: []string{"sashing 2 in for 4 x 5 blocks of 12 in, framed"},
			figures:    "short_sashes 25; sash_cut 12½ in; long_sashes 6; long_cut 58½ in; cornerstones 0; strip_width 2½ in; strips 18; buy 1¼ yd; quilt_width 58 in; quilt_length 72 in",
			assumed:    "usable_width 40 in; seam 0.25 in; stones plain",
			understood: "block 12 in; sash 2 in; across 4; down 5; outside framed",
		},
		// 15 of 31.27 and 4 of 136.27: 5 and 6 strips of 6.3.
		{
			is: "metric", say: []string{"5 cm sashing for 4 x 5 blocks of 30 cm"},
			figures:    "short_sashes 15; sash_cut 31.3 cm; long_sashes 4; long_cut 136.3 cm; cornerstones 0; strip_width 6.3 cm; strips 11; buy 0.7 m; quilt_width 135 cm; quilt_length 170 cm",
			assumed:    "usable_width 101.6 cm; seam 0.635 cm; stones plain; outside inner",
			understood: "block 30 cm; sash 5 cm; across 4; down 5",
		},
		{
			is: "no blocks", say: []string{"sashing 2 in"},
			outcome:    commands.Question,
			understood: "sash 2 in",
			text:       "How big is each block, finished?",
		},
	})
}
