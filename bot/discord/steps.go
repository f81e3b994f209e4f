package discord

import (
	"context"
	"errors"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"counterhand/bot"
	"counterhand/bot/discord/link"
	"counterhand/commands"
)

// step is a natural next step after an answer. Pressing its button says its
// words in the same conversation.
type step struct {
	code    string // one letter, in the button
	label   string
	words   string
	same    bool // the answer is about the same request as before
	offered func(commands.Reply) bool
}

// nextSteps are all steps, in the order of the buttons. A new one is one line.
var nextSteps = []step{
	{"w", "Show the working", "show the working", true, func(r commands.Reply) bool { return len(r.Working) > 0 }},
	{"o", "The other way", "the other way", false, func(r commands.Reply) bool { return slices.Contains(twoWays, r.Topic) }},
	{"m", "In centimetres", "in cm", false, func(r commands.Reply) bool { return measuredIn(r, "in", "yd") }},
	{"i", "In inches", "in inches", false, func(r commands.Reply) bool { return measuredIn(r, "cm", "mm", "m") }},
	{sheetStep, "Sheet to print", "print it", true, func(r commands.Reply) bool { return r.Printable() && !r.ToPrint }},
}

// sheetStep is the code of the step whose answer brings along what there is to
// print.
const sheetStep = "s"

// twoWays are topics that can be worked in two ways.
var twoWays = []string{"backing", "borders", "sashing", "half-square-triangles", "flying-geese"}

// chosen is the code of buttons that carry their words themselves: what may be
// said next to a question.
const chosen = "c"

func measuredIn(r commands.Reply, units ...string) bool {
	return slices.ContainsFunc(r.Figures, func(f commands.Figure) bool { return slices.Contains(units, f.Unit) })
}

// A button carries all that it takes to be understood after a restart, by any
// process: "n1", the step's code, the person, the moment of the answer, and for
// choices the words, with dots between.
const stepVersion = "n1"

type carried struct {
	code   string
	person link.UserID
	at     time.Time
	words  string
}

func (c carried) String() string {
	person, _ := strconv.ParseUint(string(c.person), 10, 64) // ids are numbers
	s := strings.Join([]string{stepVersion, c.code, strconv.FormatUint(person, 36), strconv.FormatInt(c.at.UnixMilli(), 36)}, ".")
	if c.words != "" {
		s += "." + c.words
	}
	return s
}

// readCarried is the reverse of String. What an earlier program wrote, or
// nobody did, is not read.
func readCarried(s string) (c carried, ok bool) {
	parts := strings.SplitN(s, ".", 5)
	if len(parts) < 4 || parts[0] != stepVersion {
		return c, false
	}
	person, err := strconv.ParseUint(parts[2], 36, 64)
	if err != nil {
		return c, false
	}
	at, err := strconv.ParseInt(parts[3], 36, 64)
	if err != nil {
		return c, false
	}
	c = carried{code: parts[1], person: link.UserID(strconv.FormatUint(person, 10)), at: time.UnixMilli(at)}
	if c.code == chosen {
		if len(parts) < 5 {
			return c, false
		}
		c.words = parts[4]
		return c, true
	}
	n := slices.IndexFunc(nextSteps, func(s step) bool { return s.code == c.code })
	if n < 0 {
		return c, false
	}
	c.words = nextSteps[n].words
	return c, true
}

func (c carried) same() bool {
	return slices.ContainsFunc(nextSteps, func(s step) bool { return s.code == c.code && s.same })
}

// buttons offers what may be said next.
func (s *Surface) buttons(reply commands.Reply, person link.UserID) []link.Button {
	var list []link.Button
	add := func(label, code, words string) {
		c := carried{code: code, person: person, at: s.cfg.Now(), words: words}.String()
		if utf8.RuneCountInString(c) <= link.MaxCarried && len(list) < 5 {
			list = append(list, link.Button{Label: label, Carries: c})
		}
	}
	switch reply.Outcome {
	case commands.Question:
		for n, choice := range reply.Choices {
			if !slices.Contains(reply.Choices[:n], choice) {
				add(choice, chosen, choice)
			}
		}
	case commands.Answer:
		for _, step := range nextSteps {
			if step.offered(reply) && (step.code != sheetStep || s.cfg.Print != nil) {
				add(step.label, step.code, "")
			}
		}
	}
	return list
}

// chain is a conversation in which only steps about the same request were
// taken since an answer, so that the answer's other buttons are still good.
type chain struct {
	from time.Time // of the answer
	last time.Time // when the last of those steps was answered
}

// sameMoment is how far two readings of one clock may be apart by rounding.
const sameMoment = time.Millisecond

// Words for buttons that do nothing any more.
const (
	buttonStrange = "I do not know that button any more. Ask me again, and you get new ones."
	buttonOthers  = "Those buttons belong to the person who asked. Ask me yourself with /" + askCommand + "."
	buttonOld     = "That answer is too old to go on from. Ask me again, and you get new buttons."
	buttonMoved   = "You have asked me something else since. Ask this again, and its buttons work."
	buttonUnsure  = "I cannot look up just now what that was about. Try again in a minute."
)

// pressed gives what a press says, or why it says nothing.
func (s *Surface) pressed(ctx context.Context, i link.Interaction, conversation bot.ConversationID) (c carried, excuse string) {
	c, ok := readCarried(i.Pressed)
	switch {
	case !ok:
		return c, buttonStrange
	case c.person != i.Person:
		return c, buttonOthers
	case s.cfg.Now().Sub(c.at) > s.cfg.StepAge:
		return c, buttonOld
	}
	ctx, cancel := context.WithTimeout(ctx, time.Second)
	defer cancel()
	kept, err := s.cfg.Store.Conversation(ctx, conversation)
	switch {
	case errors.Is(err, bot.ErrNotFound):
		return c, ""
	case err != nil:
		return c, buttonUnsure
	case s.movedOn(conversation, c.at, kept.At):
		return c, buttonMoved
	}
	return c, ""
}

// movedOn reports whether the conversation is about something else since an answer.
func (s *Surface) movedOn(conversation bot.ConversationID, answer, last time.Time) bool {
	if last.Sub(answer) <= sameMoment {
		return false
	}
	ch, ok := s.chains.Get(conversation)
	return !ok || !ch.from.Equal(answer) || last.Sub(ch.last) > sameMoment
}

// took notes that a step was answered at a moment.
func (s *Surface) took(conversation bot.ConversationID, c carried, at time.Time) {
	if c.same() {
		s.chains.Add(conversation, chain{from: c.at, last: at})
		return
	}
	s.chains.Remove(conversation)
}
