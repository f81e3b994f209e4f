package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestConvert(t *testing.T) {
	ask(t, "convert", []row{
		// 2¾·91.44 = 251.46.
		{
			is: "yards", say: []string{"2¾ yd in cm", "convert 2¾ yards to centimetres", "2.75 yd in cm"},
			figures:    "result 251.46 cm",
			understood: "length 99 in; to cm",
			text:       "2¾ yd is 251.46 cm.",
		},
		// 13/16 = 0.8125.
		{
			is: "decimal", say: []string{"13/16 as a decimal", "13/16 in as a decimal"},
			figures:    "result 0.8125",
			understood: "length 0.8125 in; to decimal",
			text:       "13/16 in as a decimal is 0.8125.",
		},
		// 0.8125·16 = 13.
		{
			is: "fraction", say: []string{"0.8125 as a fraction"},
			figures:    "result 13/16 in",
			understood: "length 0.8125 in; to fraction",
		},
		// checks.csv A022: ⅝ yd is 22½ in.
		{
			is: "published", say: []string{"how many inches in ⅝ yard"},
			figures:    "result 22½ in",
			understood: "length 22.5 in; to in",
		},
		// 3·0.9144 = 2.7432.
		{
			is: "metres", say: []string{"3 yd in metres", "3 yards in m"},
			figures:    "result 2.743 m",
			understood: "length 108 in; to m",
		},
		// 15/2.54 = 5.9055; ·16 = 94.5, nearest below 94.49: 5 14/16.
		{
			is: "a ruler's mark", say: []string{"15 cm in inches"},
			figures:    "result 5.906 in",
			understood: "length 15 cm; to in",
		},
		// 6·12.
		{
			is: "feet", say: []string{"6 ft in inches"},
			figures:    "result 72 in",
			understood: "length 72 in; to in",
		},
		{
			is: "no length", say: []string{"how many grams in 2 yards"},
			outcome:    commands.Decline,
			understood: "length 72 in; to none",
			text:       "A length has no weight or volume. Inches, feet, yards, millimetres, centimetres and metres work.",
		},
		{
			is: "no unit", say: []string{"convert 12 in"},
			outcome:    commands.Question,
			understood: "length 12 in",
			text:       "In which unit: inches, yards, centimetres or metres?",
		},
	})
}
