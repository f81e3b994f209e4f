package commands

import (
	"strings"

	"counterhand/commands/words"
)

const canDo words.Concept = "what it can do"

// helpTopic: what can be asked, and each topic's own page.
func helpTopic() Topic {
	return Topic{
		Name: "help", Group: AroundIt, Title: "what I can work out, and how to ask", Alone: true,
		Terms: []words.Term{
			{Concept: helpWord, Words: "help, help me, manual, guide, menu, commands, usage"},
			{Concept: canDo, Words: "what can you do, what can you work out, what do you do, what are you for, what can i ask, what sort of things, what kind of things, what else can you do, can you help me, can you work out, can you do, how should i ask, how do i ask, how do i use you, how does this work, special words, what are you, who are you, are you a bot, are you human, how do you work, what questions, list your topics, your topics, which topics, what kinds of questions, what kind of questions, use this thing, use this, how do i use this, how do i use this thing"},
		},
		Says:     says(8, canDo),
		Examples: []string{"help", "help binding"},
		Source:   "the topics themselves.",
		Work:     workHelp,
	}
}

func workHelp(w *work) error {
	if t := w.topicInHelp(); t != nil {
		return helpPage(w, t)
	}
	w.say("Ask in your own words, with your sizes; no special words are needed.")
	for _, g := range []Group{SizeIt, CutIt, BuyIt, FinishIt, AroundIt} {
		var names []string
		for _, t := range w.conversation.assistant.topics {
			if t.Group == g && t.Name != "help" {
				names = append(names, strings.ReplaceAll(t.Name, "-", " "))
			}
		}
		w.say("%s: %s.", capital(string(g)), strings.Join(names, ", "))
	}
	w.say("For example: %s. Say \"help binding\" for more about one of them.", strings.Join(w.conversation.assistant.examples()[:3], "; "))
	return nil
}

// topicInHelp gives the topic that the text names beside "help".
func (w *work) topicInHelp() *Topic {
	c := w.conversation
	best, bestSays := (*Topic)(nil), named-3
	for i, s := range c.assistant.signals(c.text.Tokens) {
		t := &c.assistant.topics[i]
		if t.Name != "help" && s > bestSays {
			best, bestSays = t, s
		}
	}
	text := strings.ReplaceAll(strings.ToLower(c.text.Clean), "-", " ")
	longest := ""
	for i := range c.assistant.topics {
		t := &c.assistant.topics[i]
		name := strings.ReplaceAll(t.Name, "-", " ")
		if t.Name != "help" && len(name) > len(longest) && strings.Contains(text, name) {
			best, longest = t, name
		}
	}
	return best
}

// helpPage tells what one topic takes, two examples and where its rule comes from.
func helpPage(w *work, t *Topic) error {
	w.say("%s: %s.", capital(strings.ReplaceAll(t.Name, "-", " ")), t.Title)
	var takes []string
	for _, in := range t.Inputs {
		if in.kind != aWord {
			takes = append(takes, in.spoken())
		}
	}
	if len(takes) > 0 {
		w.say("It takes %s.", andList(takes))
	}
	if len(t.Examples) > 0 {
		w.say("For example: %s.", strings.Join(t.Examples, "; or: "))
	}
	w.say("The rule: %s", t.Source)
	return nil
}
