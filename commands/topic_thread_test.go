package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestThread(t *testing.T) {
	ask(t, "thread", []row{
		// Common practice, no source: 600 to 1200 yd each of top and bobbin for 90 x 108, by area 4320/9720 of
		// it, in tens of metres. Half of 1067 yd in bobbins of 70 yd is 8, and one more.
		{
			is: "quilting", say: []string{"thread for quilting 60 x 72", "how much thread for quilting a 60 by 72 quilt"},
			figures:    "metres 980 m; metres_low 490 m; spools 1; bobbins 9",
			assumed:    "spool 1000 m",
			understood: "quilt_width 60 in; quilt_length 72 in; use quilting",
			fault:      "the spool is said in inches, and the use is called assumed",
		},
		// Common practice, no source: 200 yd for 60 x 72 to 800 yd for 90 x 108, by area: 139 to 247 yd.
		{
			is: "piecing", say: []string{"thread for piecing a 50 x 60 quilt"},
			figures:    "metres 230 m; metres_low 130 m; spools 1; bobbins 3",
			assumed:    "spool 1000 m",
			understood: "quilt_width 50 in; quilt_length 60 in; use piecing",
			fault:      "the spool is said in inches, and the use is called assumed",
		},
		{
			is: "no size", say: []string{"how much thread do I need"},
			outcome: commands.Question,
			text:    "How big is the quilt, width by length?",
		},
	})
}
