package commands_test

import "testing"

func TestShop(t *testing.T) {
	ask(t, "shop", []row{
		{
			is: "hours", say: []string{"are you open now?"},
			understood: "about hours",
			text:       "I do not know the opening hours. Ask at the shop.",
		},
		{
			is: "where", say: []string{"where is the shop?"},
			understood: "about address",
			text:       "That is for the people at the shop, and I cannot pass it on from here. Ask at the shop.",
		},
	})
}
