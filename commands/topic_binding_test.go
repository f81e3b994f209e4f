package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestBinding(t *testing.T) {
	ask(t, "binding", []row{
		// 2(54 + 68) + 10 = 254. Six strips: 6·40 − 5·2½ = 227½, seven: 7·40 − 6·2½ = 265. 7·2½ = 17½ of 18 in.
		{
			is: "four sides", say: []string{"binding for 54 x 68", "how much binding do I need for a quilt 54 by 68", `54" x 68" quilt, how many binding strips?`, "I need to bind my 54×68 inch quilt, how many strips"},
			figures:    "perimeter 244 in; length_needed 254 in; strips 7; strip_width 2½ in; buy ½ yd",
			assumed:    "usable_width 40 in; binding_strip 2.5 in; binding_extra 10 in; joins diagonal",
			understood: "quilt_width 54 in; quilt_length 68 in",
			text: `
7 strips, 2½ in wide: buy ½ yd.
Joined on the diagonal they make 265 in. You need 254 in: 244 in round the quilt and 10 in for corners and the closing join. 6 strips would be 26½ in short.
Reckoned on 40 in of usable fabric, binding strips cut 2½ in and 10 in for corners and the closing join. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// 264 + 10 = 274. Seven: 280 − 6·2¼ = 266½, 7½ short; eight: 320 − 7·2¼ = 304¼. 8·2¼ = 18.
		{
			is: "narrower strips", say: []string{"binding for 60 x 72 with 2¼ in strips", `2 1/4" binding strips for a 60" x 72" quilt`, "bind 60 by 72, strips cut 2.25 wide"},
			figures:    "perimeter 264 in; length_needed 274 in; strips 8; strip_width 2¼ in; buy ½ yd",
			assumed:    "usable_width 40 in; binding_extra 10 in; joins diagonal",
			understood: "quilt_width 60 in; quilt_length 72 in; strip_width 2.25 in",
			text: `
8 strips, 2¼ in wide: buy ½ yd.
Joined on the diagonal they make 304¼ in. You need 274 in: 264 in round the quilt and 10 in for corners and the closing join. 7 strips would be 7½ in short, or just enough on fabric of 41½ in.
Reckoned on 40 in of usable fabric and 10 in for corners and the closing join. Say "fabric is 42 wide" if yours is.
Close the cutter each time you put it down.`,
		},
		// checks.csv G031: 60 x 80, usable 40, strips 2½: 8 strips, 20 in, ⅝ yd.
		{
			is: "the quilt of a published case", say: []string{"binding for 60 x 80"},
			figures:    "perimeter 280 in; length_needed 290 in; strips 8; strip_width 2½ in; buy ⅝ yd",
			assumed:    "usable_width 40 in; binding_strip 2.5 in; binding_extra 10 in; joins diagonal",
			understood: "quilt_width 60 in; quilt_length 80 in",
		},
		// checks.csv G032: 60 x 80, usable 42, strips 2¼: 8 strips, 18 in, ½ yd.
		{
			is: "wider fabric and narrower strips", say: []string{"binding for 60 x 80, fabric is 42 wide, 2¼ in strips"},
			figures:    "perimeter 280 in; length_needed 290 in; strips 8; strip_width 2¼ in; buy ½ yd",
			assumed:    "binding_extra 10 in; joins diagonal",
			understood: "quilt_width 60 in; quilt_length 80 in; strip_width 2.25 in; usable_width 42 in",
		},
		// checks.csv G033: 45 x 60, usable 40, extra 12: 210 + 12, 6 strips, 15 in, ½ yd.
		{
			is: "more for the corners", say: []string{"binding for 45 x 60 with 12 in extra"},
			figures:    "perimeter 210 in; length_needed 222 in; strips 6; strip_width 2½ in; buy ½ yd",
			assumed:    "usable_width 40 in; binding_strip 2.5 in; joins diagonal",
			understood: "quilt_width 45 in; quilt_length 60 in; extra 12 in",
		},
		// 7·42 − 6·2½ = 279 of 274; six would be 6·42 − 12½ = 239½.
		{
			is: "the fabric's width said", say: []string{"binding for 60 x 72, fabric is 42 wide", "how many binding strips for 60 by 72 from 42 inch wide fabric"},
			figures:    "perimeter 264 in; length_needed 274 in; strips 7; strip_width 2½ in; buy ½ yd",
			assumed:    "binding_strip 2.5 in; binding_extra 10 in; joins diagonal",
			understood: "quilt_width 60 in; quilt_length 72 in; usable_width 42 in",
		},
		// 300 + 10. Eight: 320 − 17½ = 302½; nine: 360 − 20 = 340. 9·2½ = 22½, which is ⅝ yd exactly.
		{
			is: "the edge said", say: []string{"binding for a perimeter of 300 in", "binding, 300 inches round the edge"},
			figures:    "perimeter 300 in; length_needed 310 in; strips 9; strip_width 2½ in; buy ⅝ yd",
			assumed:    "usable_width 40 in; binding_strip 2.5 in; binding_extra 10 in; joins diagonal",
			understood: "perimeter 300 in",
		},
		// checks.csv G027: 28 in across are 87.965 in round. Three: 120 − 2·2¼ = 115½ of 97.965.
		{
			is: "a circle", say: []string{"bind a circle 28 in across with 2¼ in strips"},
			figures:    "perimeter 87 15/16 in; length_needed 97 15/16 in; strips 3; strip_width 2¼ in; buy ¼ yd",
			assumed:    "usable_width 40 in; binding_extra 10 in; joins diagonal",
			understood: "across 28 in; strip_width 2.25 in; shape circle",
		},
		// 6·20 + 10 = 130. Three: 120 − 5 = 115; four: 160 − 7½ = 152½. 4·2½ = 10 of 13½ in.
		{
			is: "a hexagon", say: []string{"bind a hexagon quilt, 20 in each side"},
			figures:    "perimeter 120 in; length_needed 130 in; strips 4; strip_width 2½ in; buy ⅜ yd",
			assumed:    "usable_width 40 in; binding_strip 2.5 in; binding_extra 10 in; joins diagonal",
			understood: "side 20 in; shape hexagon",
		},
		// Each join takes ½ in: 7·40 − 6·½ = 277, six 237½ of 254.
		{
			is: "joined straight", say: []string{"binding for 54 x 68 joined straight"},
			figures:    "perimeter 244 in; length_needed 254 in; strips 7; strip_width 2½ in; buy ½ yd",
			assumed:    "usable_width 40 in; binding_strip 2.5 in; binding_extra 10 in; straight_join 0.5 in",
			understood: "quilt_width 54 in; quilt_length 68 in; joins straight",
			fault:      "the ½ in that each straight join takes is not said",
		},
		// As above: 7 are needed.
		{
			is: "strips in hand", say: []string{"will 6 strips bind a 54 x 68 quilt", "i have 6 strips, is that enough to bind 54 x 68"},
			figures:    "perimeter 244 in; length_needed 254 in; strips 7; strip_width 2½ in; buy ½ yd; have 6; enough no; short 1",
			assumed:    "usable_width 40 in; binding_strip 2.5 in; binding_extra 10 in; joins diagonal",
			understood: "quilt_width 54 in; quilt_length 68 in; have_strips 6",
		},
		// 18 in are ½ yd, 17½ are needed.
		{
			is: "fabric in hand", say: []string{"is ½ yd enough to bind 54 x 68", "binding for 54 x 68, I have half a yard"},
			figures:    "perimeter 244 in; length_needed 254 in; strips 7; strip_width 2½ in; buy ½ yd; have ½ yd; enough yes; spare ½ in",
			assumed:    "usable_width 40 in; binding_strip 2.5 in; binding_extra 10 in; joins diagonal",
			understood: "quilt_width 54 in; quilt_length 68 in; have 0.5 yd",
		},
		// 700 + 25.4 cm. Seven: 7·101.6 − 6·6.35 = 673.1, eight: 768.35. 8·6.35 = 50.8 cm.
		{
			is: "metric", say: []string{"binding for 150 x 200 cm", "bind a quilt of 1.5 m x 2 m"},
			figures:    "perimeter 700 cm; length_needed 725.4 cm; strips 8; strip_width 6.4 cm; buy 0.6 m",
			assumed:    "usable_width 101.6 cm; binding_strip 6.35 cm; binding_extra 25.4 cm; joins diagonal",
			understood: "quilt_width 150 cm; quilt_length 200 cm",
		},
		{
			is: "no size", say: []string{"binding", "how many binding strips do I need"},
			outcome: commands.Question,
			text:    "How big is the quilt, width by length?",
		},
		{
			is: "a side of nothing", say: []string{"binding for 0 x 60"},
			outcome: commands.Decline,
			text:    "The quilt has to be more than nothing. Like this: binding for 54 x 68.",
			fault:   "asks what the number is",
		},
	})
}
