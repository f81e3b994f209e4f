// Package terminal is the conversation at a shop's counter in a terminal window,
// or in a pipe.
//
// It only carries: a line in is a message, a reply's text goes out, wrapped to
// the window. On a window it edits lines, keeps a history and sets the answer
// in bold and the reminder faint; pasted lines are one message. In a pipe it
// writes the bare replies and nothing else. It shows no pictures and offers no
// buttons. It stops at the end of the input, at "bye" or "quit", and when the
// context ends, which is how an interrupt arrives; each time politely.
package terminal

import (
	"context"
	"errors"
	"io"
	"slices"
	"strings"

	"counterhand/bot"
	"counterhand/commands"
)

// Screen is what the conversation needs of a terminal. It is used by one
// goroutine at a time.
type Screen interface {
	// ReadMessage waits for what the person says, and gives io.EOF once there
	// is no more to come: the input ended, the person broke it off, or the
	// context did. After that the screen can be printed on and not read.
	ReadMessage(ctx context.Context) (string, error)

	// Print shows a text in parts that each begin a new line.
	Print(parts ...Part) error

	// IsWindow tells whether a person looks at it, who wants a greeting.
	IsWindow() bool
}

// Part is a piece of text with what it is, from which a screen decides how it
// looks.
type Part struct {
	Role Role
	Text string
}

// Role says what a [Part] is.
type Role uint8

// The roles. A screen without colours shows all of them alike.
const (
	Plain    Role = iota
	Headline      // the answer itself
	Aside         // a reminder, or what may be said next
)

// Conversation is one person's talk at one terminal.
type Conversation struct {
	Handler  bot.Handler
	Screen   Screen
	Person   bot.PersonID
	Channel  bot.ChannelID
	Shop     string   // its name, for the greeting; may be empty
	Examples []string // questions to try, for the greeting
}

// farewells are what ends the talk.
var farewells = []string{"quit", "exit", "bye", "goodbye"}

// Run greets and answers until the talk ends. The error is the screen's, or
// nil however politely the talk ended.
func (c *Conversation) Run(ctx context.Context) error {
	if err := c.greet(); err != nil {
		return err
	}
	for {
		said, err := c.Screen.ReadMessage(ctx)
		switch {
		case errors.Is(err, io.EOF):
			return c.part()
		case err != nil:
			return err
		case strings.TrimSpace(said) == "":
			continue
		case isFarewell(said):
			return c.part()
		}
		if err := c.answer(ctx, said); err != nil {
			return err
		}
		if ctx.Err() != nil {
			return c.part()
		}
	}
}

// answer shows the reply to one message.
func (c *Conversation) answer(ctx context.Context, said string) error {
	reply, err := c.Handler.Handle(ctx, bot.Message{Person: c.Person, Channel: c.Channel, Text: said})
	if errors.Is(err, context.Canceled) {
		return nil
	}
	if err != nil {
		return err
	}
	return c.Screen.Print(Parts(reply)...)
}

// Parts divides a reply into what a screen tells apart: the answer, what it
// rests on, and the reminders. Reminders that the text does not have come last.
func Parts(r commands.Reply) []Part {
	var parts []Part
	for i, line := range strings.Split(strings.TrimSpace(r.Text), "\n") {
		parts = append(parts, Part{roleOf(r, i, line), line})
	}
	for _, reminder := range r.Reminders {
		if !strings.Contains(r.Text, reminder) {
			parts = append(parts, Part{Aside, reminder})
		}
	}
	return parts
}

// roleOf says what line i of a reply's text is.
func roleOf(r commands.Reply, i int, line string) Role {
	switch {
	case i == 0 && r.Outcome == commands.Answer:
		return Headline
	case i > 0 && slices.Contains(r.Reminders, strings.TrimSpace(line)):
		return Aside
	}
	return Plain
}

// greet says what this is for and what to try.
func (c *Conversation) greet() error {
	if !c.Screen.IsWindow() {
		return nil
	}
	where := "."
	if c.Shop != "" {
		where = " at " + c.Shop + "."
	}
	parts := []Part{
		{Headline, "Counterhand, for sizing questions about quilts" + where},
		{Plain, "Ask in your own words what to cut, how many, or what to buy. For example:"},
	}
	for _, e := range c.Examples {
		parts = append(parts, Part{Plain, "  " + e})
	}
	return c.Screen.Print(append(parts, Part{Aside, `Say "help" for all that can be asked, "bye" to leave.`})...)
}

// part takes leave.
func (c *Conversation) part() error {
	if !c.Screen.IsWindow() {
		return nil
	}
	return c.Screen.Print(Part{Plain, "Bye, and happy sewing."})
}

func isFarewell(said string) bool {
	return slices.Contains(farewells, strings.ToLower(strings.Trim(said, " \t\r\n.!")))
}

// await waits for a read, or for the context's end, which gives io.EOF. A read
// that does not come to an end is left behind: nothing can break off a read of
// a terminal, and the program is about to end.
func await(ctx context.Context, read func() (string, error)) (string, error) {
	type result struct {
		text string
		err  error
	}
	done := make(chan result, 1)
	go func() {
		text, err := read()
		done <- result{text, err}
	}()
	select {
	case r := <-done:
		return r.text, r.err
	case <-ctx.Done():
		return "", io.EOF
	}
}
