package commands_test

import (
	"testing"

	"counterhand/commands"
)

func TestKit(t *testing.T) {
	ask(t, "kit", []row{
		// 1½·12.50 + 2·38 = 94.75; ÷ 0.55 = 172.27; 0.45/0.55 = 0.818.
		{
			is: "margin", say: []string{"kit price: 1½ yd at 12.50, 2 strip packs at 38, 45% margin"},
			figures:    "cost 94.75; price 172.27; margin 45 %; line1 18.75; line2 76.00",
			understood: "item_fabric 1.5 yd; item_price 12.5 money; item_count 2; item_price 38 money; margin 45 percent",
			text: `
Price 172.27; it costs 94.75.
That is a margin of 45 % of the price, or a markup of 81.8 % on the cost.
The lines come to 18.75 and 76.00.`,
		},
		// 2·10.40 + 14 = 34.80; ·1.6; 0.6/1.6.
		{
			is: "markup", say: []string{"kit: 2 yd at 10.40 and 1 panel at 14, 60% markup"},
			figures:    "cost 34.80; price 55.68; margin 37.5 %; line1 20.80; line2 14.00",
			understood: "item_fabric 2 yd; item_price 10.4 money; item_count 1; item_price 14 money; markup 60 percent",
			text: `
Price 55.68; it costs 34.80.
That is a margin of 37.5 % of the price, or a markup of 60 % on the cost.
The lines come to 20.80 and 14.00.`,
		},
		{
			is: "all of it profit", say: []string{"kit price: 1½ yd at 12.50, 100% margin"},
			outcome:    commands.Decline,
			understood: "item_fabric 1.5 yd; item_price 12.5 money; margin 100 percent",
			text:       "No price has a margin of 100 percent: all of it would have to be profit. Anything under 100 works; a markup of 100 percent is a margin of 50.",
		},
		{
			is: "nothing said", say: []string{"kit price"},
			outcome: commands.Question,
			text:    "What is in the kit, and what does each thing cost? For example: 1½ yd at 12.50, 2 strip packs at 38.",
		},
	})
}
