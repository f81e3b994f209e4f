package commands_test

import "testing"

func TestSettings(t *testing.T) {
	ask(t, "settings", []row{
		{
			is: "width", say: []string{"my fabric is 43 wide"},
			figures:    "usable_width 43 in",
			understood: "usable_width 43 in",
			text: `
Noted: 43 in of usable fabric from now on.
Say "forget that" to go back to the shop's own.`,
		},
		{
			is: "metric", say: []string{"always metric"},
			figures:    "units metric",
			understood: "units metric",
			text: `
Noted: centimetres and metres from now on.
Say "forget that" to go back to the shop's own.`,
		},
		{
			is: "country", say: []string{"I live in the UK"},
			figures:    "country UK",
			understood: "country UK",
			text: `
Noted: UK mattress sizes and words from now on.
Say "forget that" to go back to the shop's own.`,
		},
		{
			is: "nothing set", say: []string{"what have I set", "what do you know about me"},
			understood: "wants show",
			text:       "You have set nothing. I reckon with the shop's own: 40 in of usable fabric and ¼ in seams, in inches and yards.",
		},
		{
			is: "scant seam", say: []string{"I use a scant seam"},
			understood: "scant scant",
		},
	})
}
