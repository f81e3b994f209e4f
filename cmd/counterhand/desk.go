package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"

	"github.com/spf13/cobra"

	"counterhand/bot"
	"counterhand/commands"
)

// visit is what the person at this machine says of how to be answered.
type visit struct {
	json     bool   // replies are objects, one a line
	remember bool   // what was set before takes part, and is kept
	files    string // pictures and sheets go to this folder; empty for none
}

// addFlags puts a visit on the command line.
func (v *visit) addFlags(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&v.json, "json", false, "reply as one JSON object on one line")
	cmd.Flags().BoolVar(&v.remember, "remember", false, "use and keep what you have set (without --json that is usual)")
	cmd.Flags().StringVar(&v.files, "files", "", "write pictures and sheets into this folder")
}

// settle decides what was left open: scripts keep nothing, people do.
func (v *visit) settle(cmd *cobra.Command) {
	if !cmd.Flags().Changed("remember") {
		v.remember = !v.json
	}
}

// desk is where the person at this machine is answered.
type desk struct {
	house   *house
	person  bot.PersonID
	channel bot.ChannelID
	handler bot.Handler
	engine  *bot.Engine // nil where each message is a stranger's
	store   bot.Store   // nil where nothing is remembered
}

// openDesk opens what the visit needs and no more. Alone, each message is
// answered as if it were the first.
func (h *house) openDesk(ctx context.Context, v visit, channel bot.ChannelID, alone bool) (*desk, error) {
	d := &desk{house: h, person: "terminal:local", channel: channel}
	var err error
	if v.remember {
		if d.person, err = h.self(); err != nil {
			return nil, err
		}
		d.store = h.storeOrAway(ctx)
	}
	if err = d.open(alone); err == nil && v.files != "" {
		d.handler, err = newFiling(d.handler, v.files, h.paper(), h.log)
	}
	if err != nil {
		return nil, errors.Join(err, d.close())
	}
	return d, nil
}

// open makes what answers.
func (d *desk) open(alone bool) (err error) {
	switch {
	case d.store == nil && alone:
		d.handler = strangers{d.house}
		return nil
	case d.store == nil:
		d.engine, err = d.house.forgetful()
	case alone:
		d.engine, err = d.house.engine(settingsOnly{d.store})
	default:
		d.engine, err = d.house.engine(d.store)
	}
	d.handler = d.engine
	return err
}

// close gives back what the desk holds open.
func (d *desk) close() error {
	if d.store == nil {
		return nil
	}
	return d.store.Close()
}

// answerAll answers texts in turn until there are no more, and tells whether
// each reply was an answer.
func (d *desk) answerAll(ctx context.Context, next func() (string, error), show printer) (answered bool, err error) {
	answered = true
	for {
		text, err := next()
		if errors.Is(err, io.EOF) {
			return answered, nil
		}
		if err != nil {
			return false, fmt.Errorf("reading the input: %w", err)
		}
		reply, err := d.handler.Handle(ctx, bot.Message{Person: d.person, Channel: d.channel, Text: text})
		if err != nil {
			return false, err
		}
		if err := show.print(reply); err != nil {
			return false, err
		}
		answered = answered && isAnswer(reply)
	}
}

// isAnswer tells whether a reply is neither a question nor a decline.
func isAnswer(r commands.Reply) bool {
	return r.Outcome == commands.Answer || r.Outcome == commands.PassedOn
}

// strangers answers each message as that of somebody who never came before.
type strangers struct{ house *house }

// Handle implements [bot.Handler].
func (s strangers) Handle(ctx context.Context, m bot.Message) (commands.Reply, error) {
	engine, err := s.house.forgetful()
	if err != nil {
		return commands.Reply{}, err
	}
	return engine.Handle(ctx, m)
}

// settingsOnly is a store that keeps no conversation.
type settingsOnly struct{ bot.Store }

// Conversation finds none.
func (settingsOnly) Conversation(context.Context, bot.ConversationID) (bot.Conversation, error) {
	return bot.Conversation{}, bot.ErrNotFound
}

// SaveConversation saves none.
func (settingsOnly) SaveConversation(context.Context, bot.Conversation) error { return nil }

// self is the person at this machine. Where several machines share a database
// the id tells them apart; else it stays the same whatever the machine is called.
func (h *house) self() (bot.PersonID, error) {
	if h.config.Storage.Postgres.IsEmpty() {
		return "terminal:local", nil
	}
	host, err := os.Hostname()
	if err != nil {
		return "", fmt.Errorf("finding out this machine's name: %w", err)
	}
	return bot.PersonID(fmt.Sprintf("terminal:%d@%s", os.Getuid(), host)), nil
}
