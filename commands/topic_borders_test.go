package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestBorders(t *testing.T) {
	ask(t, "borders", []row{
		// Sides 60 + ½, top 50 + 6 + ½. 2(60½ + 56½) = 234: six strips give 240 − 5·½ = 237½, five 198. 6·3½ = 21 of 22½ in.
		{
			is: "butted", say: []string{"3 in border on 50 x 60", `border 3" wide for a 50 by 60 quilt`},
			figures:    "side_cut 60½ in; top_cut 56½ in; strip_width 3½ in; strips 6; buy ⅝ yd; quilt_width 56 in; quilt_length 66 in",
			assumed:    "usable_width 40 in; seam 0.25 in; straight_join 0.5 in; corners butted",
			understood: "quilt_width 50 in; quilt_length 60 in; border 3 in",
			fault:      "the ½ in that each join takes is not said",
		},
		// 60 + 6 + 4 and 50 + 6 + 4: 260 in. Seven: 280 − 3 = 277; six 237½. 7·3½ = 24½ of 27 in.
		{
			is: "mitred", say: []string{"3 in mitred border on 50 x 60", "3 inch border with mitered corners on a 50 by 60 quilt"},
			figures:    "side_cut 70 in; top_cut 60 in; strip_width 3½ in; strips 7; buy ¾ yd; quilt_width 56 in; quilt_length 66 in",
			assumed:    "usable_width 40 in; seam 0.25 in; mitre_spare 2 in",
			understood: "quilt_width 50 in; quilt_length 60 in; border 3 in; corners mitred",
			text: `
Cut two of 70 in and two of 60 in, from strips 3½ in wide: 7 strips, buy ¾ yd. Mitre the corners and trim.
Join them end to end. 6 strips would be 22½ in short, or just enough on fabric of 44 in.
With the border the quilt is 56 x 66 in.
Reckoned on 40 in of usable fabric, ¼ in seams and 2 in spare at each mitred end. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// Sides 60½, top 50½: 222 in, six strips (237½), five are 198.
		{
			is: "squares in the corners", say: []string{"3 in border with corner squares on 50 x 60"},
			figures:    "side_cut 60½ in; top_cut 50½ in; strip_width 3½ in; strips 6; corner_square 3½ in; buy ⅝ yd; quilt_width 56 in; quilt_length 66 in",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "quilt_width 50 in; quilt_length 60 in; border 3 in; corners squares",
		},
		// 1 in: 50½ and 42½, 186 of 198 in. 4 in round 42 x 52: 52½ and 50½, 206 of 237½ in. 7½ and 27 in of fabric.
		{
			is: "two borders", say: []string{"1 in inner border and 4 in outer border on 40 x 50", `inner border 1", outer border 4", centre 40 x 50`},
			figures:    "border1.side_cut 50½ in; border1.top_cut 42½ in; border1.strip_width 1½ in; border1.strips 5; border1.buy ¼ yd; border2.side_cut 52½ in; border2.top_cut 50½ in; border2.strip_width 4½ in; border2.strips 6; border2.buy ¾ yd; quilt_width 50 in; quilt_length 60 in",
			assumed:    "usable_width 40 in; seam 0.25 in; corners butted",
			understood: "quilt_width 40 in; quilt_length 50 in; inner_border 1 in; outer_border 4 in",
		},
		// 226, 240 and 266 in: 6, 7 and 7 strips of 1½, 3 and 4½: 9, 21 and 31½ in, together 61½.
		{
			is: "three borders", say: []string{"borders of 1, 2½ and 4 on 48 x 62"},
			figures:    "border1.side_cut 62½ in; border1.top_cut 50½ in; border1.strip_width 1½ in; border1.strips 6; border1.buy ¼ yd; border2.side_cut 64½ in; border2.top_cut 55½ in; border2.strip_width 3 in; border2.strips 7; border2.buy ⅝ yd; border3.side_cut 69½ in; border3.top_cut 63½ in; border3.strip_width 4½ in; border3.strips 7; border3.buy ⅞ yd; quilt_width 63 in; quilt_length 77 in",
			assumed:    "usable_width 40 in; seam 0.25 in; corners butted",
			understood: "quilt_width 48 in; quilt_length 62 in; border 1 in; border 2.5 in; border 4 in",
		},
		// checks.csv F082: 40 x 50, 5 in: six strips of 5½, 33 in, 1 yd.
		{
			is: "published", say: []string{"5 in border on 40 x 50"},
			figures:    "side_cut 50½ in; top_cut 50½ in; strip_width 5½ in; strips 6; buy 1 yd; quilt_width 50 in; quilt_length 60 in",
			assumed:    "usable_width 40 in; seam 0.25 in; corners butted",
			understood: "quilt_width 40 in; quilt_length 50 in; border 5 in",
		},
		// (58 − 50)/2 = (68 − 60)/2 = 4. 2(60½ + 58½) = 238 of 277 in, so seven strips of 4½, 31½ in.
		{
			is: "to reach a size", say: []string{"what border brings 50 x 60 to 58 x 68", "how wide a border to bring a 50 x 60 quilt up to 58 x 68"},
			figures:    "side_cut 60½ in; top_cut 58½ in; strips 7; buy ⅞ yd; border 4 in; strip_width 4½ in; quilt_width 58 in; quilt_length 68 in",
			assumed:    "usable_width 40 in; seam 0.25 in",
			understood: "quilt_width 50 in; quilt_length 60 in; wanted_width 58 in; wanted_length 68 in",
		},
		// 4·4½ = 18 of 40 in, so the longest decides: 80½ in are 2¼ yd (81 in).
		{
			is: "along the length", say: []string{"4 in border on 60 x 80 cut along the length"},
			figures:    "side_cut 80½ in; top_cut 68½ in; strip_width 4½ in; strips 4; buy 2¼ yd; quilt_width 68 in; quilt_length 88 in",
			assumed:    "usable_width 40 in; seam 0.25 in; corners butted",
			understood: "quilt_width 60 in; quilt_length 80 in; border 4 in; grain lengthwise",
		},
		// 3½ as cut finishes at 3.
		{
			is: "the cut width", say: []string{"border strips cut 3½ wide on 50 x 60"},
			figures:    "side_cut 60½ in; top_cut 56½ in; strip_width 3½ in; strips 6; buy ⅝ yd; quilt_width 56 in; quilt_length 66 in",
			assumed:    "usable_width 40 in; seam 0.25 in; corners butted",
			understood: "quilt_width 50 in; quilt_length 60 in; border 3.5 in",
		},
		// Two of 16½ and two of 20½: one of each from a strip, 37 of 40 in. 5 in of fabric.
		{
			is: "short enough for one strip each", say: []string{"2 in border on 16 x 16"},
			figures:    "side_cut 16½ in; top_cut 20½ in; strip_width 2½ in; strips 2; buy ¼ yd; quilt_width 20 in; quilt_length 20 in",
			assumed:    "usable_width 40 in; seam 0.25 in; corners butted",
			understood: "quilt_width 16 in; quilt_length 16 in; border 2 in",
		},
		// 151.27 and 137.27 up to a millimetre: 577.2 of 6·101.6 − 5·1.27 = 603.25 cm. 6·9.3 = 55.8 cm.
		{
			is: "metric", say: []string{"8 cm border on 120 x 150 cm"},
			figures:    "side_cut 151.3 cm; top_cut 137.3 cm; strip_width 9.3 cm; strips 6; buy 0.6 m; quilt_width 136 cm; quilt_length 166 cm",
			assumed:    "usable_width 101.6 cm; seam 0.635 cm; corners butted",
			understood: "quilt_width 120 cm; quilt_length 150 cm; border 8 cm",
		},
		{
			is: "no width", say: []string{"border for 50 x 60"},
			outcome:    commands.Question,
			understood: "quilt_width 50 in; quilt_length 60 in",
			text:       "How wide is the border, finished?",
		},
	})
}
