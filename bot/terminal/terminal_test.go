package terminal_test

import (
	"context"
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/terminal"
	"counterhand/commands"
)

// screen is a terminal that says what it was told to, and keeps what it shows.
type screen struct {
	says   []string
	ends   error // after what it says; io.EOF where nil
	window bool
	shown  []string
}

func (s *screen) ReadMessage(ctx context.Context) (string, error) {
	if ctx.Err() != nil {
		return "", io.EOF
	}
	if len(s.says) == 0 {
		if s.ends != nil {
			return "", s.ends
		}
		return "", io.EOF
	}
	said := s.says[0]
	s.says = s.says[1:]
	return said, nil
}

func (s *screen) Print(parts ...terminal.Part) error {
	for _, p := range parts {
		s.shown = append(s.shown, p.Text)
	}
	return nil
}

func (s *screen) IsWindow() bool { return s.window }

// handler answers with a function.
type handler func(bot.Message) (commands.Reply, error)

func (h handler) Handle(_ context.Context, m bot.Message) (commands.Reply, error) { return h(m) }

// echo answers with what was said.
var echo = handler(func(m bot.Message) (commands.Reply, error) {
	return commands.Reply{Outcome: commands.Answer, Text: "re: " + m.Text}, nil
})

func TestConversationAnswersUntilTheInputEnds(t *testing.T) {
	var got []bot.Message
	s := &screen{says: []string{"binding for 54 x 68", "", " \t", "and for 72 x 90?"}}
	c := terminal.Conversation{Screen: s, Person: "terminal:local", Channel: "terminal:talk", Handler: handler(func(m bot.Message) (commands.Reply, error) {
		got = append(got, m)
		return echo(m)
	})}
	require.NoError(t, c.Run(t.Context()))
	assert.Equal(t, []bot.Message{
		{Person: "terminal:local", Channel: "terminal:talk", Text: "binding for 54 x 68"},
		{Person: "terminal:local", Channel: "terminal:talk", Text: "and for 72 x 90?"},
	}, got)
	assert.Equal(t, []string{"re: binding for 54 x 68", "re: and for 72 x 90?"}, s.shown, "no greeting and no farewell where nobody looks")
}

func TestWindowIsGreetedAndTakenLeaveOf(t *testing.T) {
	s := &screen{window: true}
	c := terminal.Conversation{Screen: s, Handler: echo, Shop: "Fernhollow Patchwork", Examples: []string{"one", "two"}}
	require.NoError(t, c.Run(t.Context()))
	assert.Equal(t, []string{
		"Counterhand, for sizing questions about quilts at Fernhollow Patchwork.",
		"Ask in your own words what to cut, how many, or what to buy. For example:",
		"  one", "  two",
		`Say "help" for all that can be asked, "bye" to leave.`,
		"Bye, and happy sewing.",
	}, s.shown)
}

func TestFarewellsEndTheTalk(t *testing.T) {
	for _, said := range []string{"bye", "Bye!", " quit ", "exit", "goodbye."} {
		s := &screen{says: []string{said, "more"}}
		require.NoError(t, (&terminal.Conversation{Screen: s, Handler: echo}).Run(t.Context()))
		assert.Empty(t, s.shown, said)
	}
	for _, said := range []string{"bye bye binding for 54 x 68", "quit2"} {
		s := &screen{says: []string{said}}
		require.NoError(t, (&terminal.Conversation{Screen: s, Handler: echo}).Run(t.Context()))
		assert.Len(t, s.shown, 1, said)
	}
}

func TestFaultsOfScreenAndHandlerEndTheTalk(t *testing.T) {
	broken := errors.New("broken")
	assert.ErrorIs(t, (&terminal.Conversation{Screen: &screen{ends: broken}, Handler: echo}).Run(t.Context()), broken)

	failing := handler(func(bot.Message) (commands.Reply, error) { return commands.Reply{}, broken })
	assert.ErrorIs(t, (&terminal.Conversation{Screen: &screen{says: []string{"x"}}, Handler: failing}).Run(t.Context()), broken)
}

func TestInterruptWhileAnsweringIsPolite(t *testing.T) {
	ctx, interrupt := context.WithCancel(t.Context())
	s := &screen{says: []string{"x", "never asked"}, window: true}
	c := terminal.Conversation{Screen: s, Handler: handler(func(bot.Message) (commands.Reply, error) {
		interrupt()
		return commands.Reply{}, ctx.Err()
	})}
	require.NoError(t, c.Run(ctx))
	assert.Equal(t, "Bye, and happy sewing.", s.shown[len(s.shown)-1])
	assert.Equal(t, []string{"never asked"}, s.says)
}

func TestParts(t *testing.T) {
	const close = "Close the cutter each time you put it down."
	for _, tt := range []struct {
		name  string
		reply commands.Reply
		want  []terminal.Part
	}{
		{
			"an answer stands out, its reminder stands back",
			commands.Reply{Outcome: commands.Answer, Text: "7 strips.\nThey make 265 in.\n" + close, Reminders: []string{close}},
			[]terminal.Part{{terminal.Headline, "7 strips."}, {terminal.Plain, "They make 265 in."}, {terminal.Aside, close}},
		},
		{
			"a reminder that the text lacks comes last",
			commands.Reply{Outcome: commands.Answer, Text: "7 strips.\nThey make 265 in.", Reminders: []string{close}},
			[]terminal.Part{{terminal.Headline, "7 strips."}, {terminal.Plain, "They make 265 in."}, {terminal.Aside, close}},
		},
		{
			"also after a single line",
			commands.Reply{Outcome: commands.Answer, Text: "7 strips.", Reminders: []string{close}},
			[]terminal.Part{{terminal.Headline, "7 strips."}, {terminal.Aside, close}},
		},
		{
			"a reply that is nothing but the reminder",
			commands.Reply{Outcome: commands.Answer, Text: close, Reminders: []string{close}},
			[]terminal.Part{{terminal.Headline, close}},
		},
		{
			"a question does not stand out",
			commands.Reply{Outcome: commands.Question, Text: "How wide?"},
			[]terminal.Part{{terminal.Plain, "How wide?"}},
		},
	} {
		t.Run(tt.name, func(t *testing.T) { assert.Equal(t, tt.want, terminal.Parts(tt.reply)) })
	}
}

func TestPipeIsBare(t *testing.T) {
	var out strings.Builder
	p := terminal.NewPipe(strings.NewReader("one\r\n\ntwo\x1b[2J\u202e"), &out)
	c := terminal.Conversation{Screen: p, Handler: echo, Examples: []string{"x"}}
	require.NoError(t, c.Run(t.Context()))
	assert.Equal(t, "re: one\n\nre: two[2J\n\n", out.String())
}

func TestPipeStopsWithTheContext(t *testing.T) {
	in, _ := io.Pipe() // nobody ever writes
	ctx, stop := context.WithCancel(t.Context())
	stop()
	require.NoError(t, (&terminal.Conversation{Screen: terminal.NewPipe(in, io.Discard), Handler: echo}).Run(ctx))
}
