package main

import (
	"context"
	"errors"
	"log/slog"
	"os"
	"os/signal"
	"path/filepath"
	"sync"
	"syscall"

	"github.com/adrg/xdg"
	"github.com/spf13/cobra"

	"counterhand/bot/terminal"
	"counterhand/commands"
)

const talkHelp = `Opens a conversation: each question may build on the one before. The end of
the input, "bye" or an interrupt ends it. Where the input or the output is no
terminal, one line is one message and the replies come bare.

With --json each line of the input gets one JSON object on one line, at once.
Then nothing is remembered beyond the conversation, and nothing that you have
set before takes part, unless --remember is given.

Exit status:
  0  the conversation ended
  2  wrong usage, or a configuration that is not sound
  3  a fault outside: a file, a database, the network`

func newTalk(std streams, o *options) *cobra.Command {
	var v visit
	cmd := &cobra.Command{
		Use:   "talk",
		Short: "Open a conversation (what happens without a command)",
		Long:  talkHelp,
		Args:  noArgs,
	}
	v.addFlags(cmd)
	cmd.RunE = func(cmd *cobra.Command, _ []string) error {
		v.settle(cmd)
		return talk(cmd.Context(), std, o, v)
	}
	return cmd
}

// talk holds one conversation.
func talk(ctx context.Context, std streams, o *options, v visit) error {
	h, err := newHouse(o, std, slog.LevelWarn)
	if err != nil {
		return err
	}
	desk, err := h.openDesk(ctx, v, "terminal:talk", false)
	if err != nil {
		return err
	}
	if v.json {
		_, err = desk.answerAll(ctx, terminal.NewLines(std.in).Next, newPrinter(std.out, true))
	} else {
		err = desk.converse(ctx, std)
	}
	return errors.Join(err, desk.close())
}

// converse talks with a person, or with a pipe, until the talk ends or an
// interrupt does.
func (d *desk) converse(ctx context.Context, std streams) error {
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM)
	defer stop()
	var housekeeping sync.WaitGroup
	defer housekeeping.Wait()
	ctx, done := context.WithCancel(ctx)
	defer done()
	housekeeping.Go(func() { d.engine.Run(ctx) })
	c := terminal.Conversation{
		Handler:  d.handler,
		Screen:   newScreen(std, d.house.config.Terminal.History),
		Person:   d.person,
		Channel:  d.channel,
		Shop:     d.house.config.Shop.Name,
		Examples: examples(d.house.assistant),
	}
	return c.Run(ctx)
}

// greeted are the topics of which the greeting shows a question to try: of
// each kind of work one, and the trade's rings twice.
var greeted = []string{"binding", "wedge-ring", "wedge-fit", "pieces", "backing"}

// examples are the questions that the greeting shows.
func examples(a *commands.Assistant) []string {
	var questions []string
	for _, name := range greeted {
		for _, topic := range a.Topics() {
			if topic.Name == name {
				questions = append(questions, topic.Examples[0])
			}
		}
	}
	return questions
}

// newScreen takes the streams for a window where both are a terminal that can
// be steered, else for a pipe.
func newScreen(std streams, history int) terminal.Screen {
	in, inOK := std.in.(*os.File)
	out, outOK := std.out.(*os.File)
	if !inOK || !outOK || !terminal.IsTerminal(in) || !terminal.IsTerminal(out) || os.Getenv("TERM") == "dumb" {
		return terminal.NewPipe(std.in, std.out)
	}
	file := filepath.Join(xdg.StateHome, "counterhand", "history")
	return terminal.NewWindow(terminal.Console{In: in, Out: out}, terminal.OpenHistory(file, history), os.Getenv("NO_COLOR") == "")
}
