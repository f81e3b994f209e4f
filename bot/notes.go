package bot

import (
	"fmt"
	"strings"

	"counterhand/commands"
)

// What the engine itself has to say, after the responder's words.
const (
	notRead   = "Settings cannot be read or saved just now, so this may rest on the shop's figures where you had set your own."
	notSaved  = "That cannot be saved just now. It holds in this conversation; say it again later to have it kept."
	notGone   = "Nothing can be deleted just now, because what is kept cannot be reached. Ask again in a few minutes."
	wentWrong = "That one went wrong here, and it is not your doing. Ask it in other words, or one part at a time."
)

// say puts a sentence after a reply's text.
func say(reply *commands.Reply, sentence string) {
	if reply.Text != "" {
		reply.Text += "\n"
	}
	reply.Text += sentence
}

// deleted says what was forgotten.
func deleted(f Forgotten) string {
	var parts []string
	if f.Settings > 0 {
		parts = append(parts, "your settings")
	}
	switch {
	case f.Conversations == 1:
		parts = append(parts, "one open conversation")
	case f.Conversations > 1:
		parts = append(parts, fmt.Sprintf("%d open conversations", f.Conversations))
	}
	if len(parts) == 0 {
		return "There was nothing kept of you."
	}
	return "Deleted: " + strings.Join(parts, " and ") + "."
}
