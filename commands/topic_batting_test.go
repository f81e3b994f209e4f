package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestBatting(t *testing.T) {
	ask(t, "batting", []row{
		// 60 + 8 by 72 + 8. Packages as published in 2012: twin 72 x 90.
		{
			is: "four sides", say: []string{"batting for 60 x 72", "what size batting for a 60 by 72 quilt", `wadding for a quilt 60" x 72"`},
			figures:    "batting_width 68 in; batting_length 80 in",
			assumed:    "overage 4 in",
			understood: "quilt_width 60 in; quilt_length 72 in",
			text: `
Batting of 68 x 80 in.
That is 4 in over on each side of 60 x 72 in. The smallest package that holds it is the twin, 72 x 90 in.
Reckoned on 4 in over on each side. Say "3 in each side" if your quilter wants another.`,
		},
		// 60 + 6 by 72 + 6.
		{
			is: "its own overage", say: []string{"batting for 60 x 72, 3 in each side"},
			figures:    "batting_width 66 in; batting_length 78 in",
			understood: "quilt_width 60 in; quilt_length 72 in; overage 3 in",
			text: `
Batting of 66 x 78 in.
That is 3 in over on each side of 60 x 72 in. The smallest package that holds it is the twin, 72 x 90 in.`,
		},
		// 150 + 16 by 200 + 16.
		{
			is: "metric", say: []string{"wadding for 150 x 200 cm, 8 cm each side"},
			figures:    "batting_width 166 cm; batting_length 216 cm",
			understood: "quilt_width 150 cm; quilt_length 200 cm; overage 8 cm",
		},
		// 130 + 8.
		{
			is: "beyond every package", say: []string{"batting for 130 x 130"},
			figures:    "batting_width 138 in; batting_length 138 in",
			assumed:    "overage 4 in",
			understood: "quilt_width 130 in; quilt_length 130 in",
			text: `
Batting of 138 x 138 in.
That is 4 in over on each side of 130 x 130 in. No usual package is that large: join two, or buy off the roll.
Reckoned on 4 in over on each side. Say "3 in each side" if your quilter wants another.`,
		},
		{
			is: "no size", say: []string{"how big a batting"},
			outcome: commands.Question,
			text:    "How big is the quilt, width by length?",
		},
	})
}
