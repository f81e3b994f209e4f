package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestQuiltingPrice(t *testing.T) {
	ask(t, "quilting-price", []row{
		// 4320 square inches at 0.02.
		{
			is: "cents", say: []string{"quilting 60 x 72 at 2 cents a square inch", "longarm quilting 60 x 72, 2 cents per square inch"},
			figures:    "area 4320; price 86.40",
			understood: "quilt_width 60 in; quilt_length 72 in; rate 2 money; coin hundredth; per inch",
		},
		// 70·84 = 5880; ·0.025.
		{
			is: "a rate below a cent's step", say: []string{"longarm quilting 70 x 84 at 0.025 per square inch"},
			figures:    "area 5880; price 147.00",
			understood: "quilt_width 70 in; quilt_length 84 in; rate 0.025 money; per inch",
		},
		// 4320·0.03.
		{
			is: "dollars", say: []string{"quilting 60 x 72 at $0.03 per square inch"},
			figures:    "area 4320; price 129.60",
			understood: "quilt_width 60 in; quilt_length 72 in; rate 0.03 money; per inch",
		},
		// 5·6 square feet at 3.
		{
			is: "by the foot", say: []string{"quilting 60 x 72 at 3 dollars a square foot"},
			figures:    "area 30; price 90.00",
			understood: "quilt_width 60 in; quilt_length 72 in; rate 3 money; per foot",
		},
		{
			is: "no rate", say: []string{"quilting price for 60 x 72"},
			outcome:    commands.Question,
			understood: "quilt_width 60 in; quilt_length 72 in",
			text:       "What is charged for a square inch?",
		},
	})
}
