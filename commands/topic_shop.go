package commands

import "counterhand/commands/words"

const (
	shopHours   words.Concept = "opening hours"
	shopPlace   words.Concept = "where the shop is"
	shopContact words.Concept = "how to reach the shop"
	shopStock   words.Concept = "what the shop has"
	shopWish    words.Concept = "a wish to the shop"
	shopClasses words.Concept = "classes"
)

// shopTopic: what only the people at the shop can say or do.
func shopTopic() Topic {
	return Topic{
		Name: "shop", Group: AroundIt, Title: "opening hours, where the shop is, and what only the people there can do", Alone: true, Leaves: true,
		Terms: []words.Term{
			{Concept: shopHours, Words: "are you open, open now, opening hours, opening times, what time do you open, what time do you close, when do you close, what time do you shut, when do you shut, are you shut, when do you open, open on, shop hours, hours, closing time, when are you open, are you closed, open today, open tomorrow, still open"},
			{Concept: shopPlace, Words: "where is the shop, where are you, the address, your address, directions, how do i get there, parking, find the shop, where do i find you"},
			{Concept: shopContact, Words: "phone number, your number, telephone, email, e-mail, ring you, call you, contact, speak to a person, talk to a person, speak to someone, talk to someone, real person, a human, speak to somebody, ring me, call me, ring me back, call me back"},
			{Concept: shopStock, Words: "in stock, do you have, do you sell, do you stock, have you got, got any, do you carry, sell me, available, fabric in stock"},
			{Concept: shopWish, Words: "put aside, set aside, hold for me, keep for me, keep it for me, reserve, save me, put by, order for me, can you order, post to, do you post, ship to, do you ship, deliver, delivery, return it, like to return, refund, exchange, voucher, gift card, pay you, my order, put aside the, aside for me, keep 2 yards, please keep"},
			{Concept: shopClasses, Words: "class, classes, run beginners classes, beginners class, workshop, lesson, course, do you teach, sign up"},
		},
		Says:     append(says(12, shopHours, shopPlace, shopContact, shopWish), says(6, shopStock, shopClasses)...),
		Inputs:   []input{{name: "about", kind: aWord, words: map[words.Concept]string{shopHours: "hours", shopPlace: "address", shopContact: "contact", shopStock: "stock", shopWish: "wish", shopClasses: "classes"}}},
		Examples: []string{"are you open now?", "where is the shop?"},
		Source:   "what the shop has told me; everything else is for the people there.",
		Work:     workShop,
	}
}

func workShop(w *work) error {
	facts := w.defaults.Facts
	about := w.word("about")
	name := facts["name"]
	if name == "" {
		name = "the shop"
	}
	reach := "Ask at " + name + "."
	if c := facts["contact"]; c != "" {
		reach = "Ask at " + name + ": " + c + "."
	}
	switch fact := facts[about]; {
	case about == "hours" && fact != "":
		w.say("%s is open %s.", capital(name), fact)
	case fact != "":
		w.say("%s: %s.", capital(name), fact)
	case about == "hours":
		w.say("I do not know the opening hours. %s", reach)
	case about == "contact" && facts["contact"] != "":
		w.say("%s", reach)
	default:
		w.say("That is for the people at the shop, and I cannot pass it on from here. %s", reach)
	}
	return nil
}
