package discord_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"log/slog"
	"strings"
	"sync"
	"testing"
	"time"
	_ "time/tzdata" // quiet hours are tested on machines without a zone database

	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/discord"
	"counterhand/bot/discord/link"
	"counterhand/bot/discord/loopback"
	"counterhand/bot/store/memory"
	"counterhand/commands"
)

// counter stands in for the assistant: it answers with what it was asked, and
// remembers in order what that was.
type counter struct {
	mu    sync.Mutex
	asked []string
	reply func(text string) commands.Reply // nil: the answer names the question
	hold  chan struct{}                    // if set, each answer waits for one value
}

func (c *counter) Respond(t commands.Turn) commands.Response {
	c.mu.Lock()
	c.asked = append(c.asked, t.Text)
	reply, hold := c.reply, c.hold
	c.mu.Unlock()
	if hold != nil {
		<-hold
	}
	if reply == nil {
		return commands.Response{Reply: commands.Reply{Outcome: commands.Answer, Topic: "binding", Text: "Reckoned: " + t.Text}}
	}
	return commands.Response{Reply: reply(t.Text)}
}

func (c *counter) Asked() []string {
	c.mu.Lock()
	defer c.mu.Unlock()
	return append([]string(nil), c.asked...)
}

func (c *counter) Reply(with func(string) commands.Reply) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.reply = with
}

// quickTimes are waits short enough for a test. The platform's own are longer
// by far; which one comes first stays the same.
var quickTimes = link.Times{
	Greet: 2 * time.Second, Retry: 20 * time.Millisecond, Longest: 200 * time.Millisecond,
	Stable: 5 * time.Second, Fresh: 20 * time.Millisecond, Between: time.Millisecond,
}

// desk is a surface at work against the loopback platform.
type desk struct {
	t       *testing.T
	server  *loopback.Server
	store   bot.Store
	counter *counter
	surface *discord.Surface
	handler bot.Handler
	log     *lockedBuffer
	ended   chan error
	end     context.CancelFunc
	standby bool // does not connect while another process does
}

// lockedBuffer is a log that can be read while it is written.
type lockedBuffer struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (l *lockedBuffer) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.Write(p)
}

func (l *lockedBuffer) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.String()
}

// open starts a platform and a surface, and waits until they are connected.
func open(t *testing.T, o loopback.Options, change func(*discord.Config)) *desk {
	t.Helper()
	d := &desk{t: t, server: loopback.New(t, o), store: memory.Open(time.Now), counter: &counter{}}
	d.start(change)
	return d
}

// start starts a surface on the desk's platform and store, as a process does.
func (d *desk) start(change func(*discord.Config)) {
	d.t.Helper()
	d.log = &lockedBuffer{}
	engine, err := bot.NewEngine(bot.EngineConfig{Responder: d.counter, Store: d.store, Log: slog.New(slog.DiscardHandler)})
	require.NoError(d.t, err)
	cfg := discord.Config{
		Token: loopback.Token, Handler: engine, Store: d.store, API: d.server.API(),
		Log: slog.New(slog.NewTextHandler(d.log, &slog.HandlerOptions{Level: slog.LevelDebug})), PerSecond: 10_000,
		Times: quickTimes, Pause: 5 * time.Millisecond, LeaseTTL: 4 * time.Second,
		Families: discord.Families()[:1], Quota: discord.Quota{PersonBurst: 1000, ChannelBurst: 10_000},
	}
	if change != nil {
		change(&cfg)
	}
	d.handler = cfg.Handler
	d.surface, err = discord.New(cfg)
	require.NoError(d.t, err)
	ctx, cancel := context.WithCancel(context.Background())
	d.end, d.ended = cancel, make(chan error, 1)
	surface, ended := d.surface, d.ended
	go func() { ended <- surface.Run(ctx) }()
	d.t.Cleanup(func() {
		_ = d.stop() // told by those tests that look for it
		if d.t.Failed() {
			d.t.Logf("the surface's log:\n%s", d.log)
		}
	})
	if !d.standby && !cfg.HTTPOnly {
		d.server.Await("the surface to be connected", func() bool { return strings.Contains(d.log.String(), "connected to the chat platform") })
	}
}

// stop ends the surface as a signal would, and gives what Run returned.
func (d *desk) stop() error {
	d.end()
	select {
	case err := <-d.ended:
		d.ended <- err
		if text := d.log.String(); strings.Contains(text, loopback.Token) || strings.Contains(text, "token-") {
			d.t.Errorf("a secret stands in the log:\n%s", text)
		}
		return err
	case <-time.After(30 * time.Second):
		d.t.Fatal("the surface does not end")
		return nil
	}
}

// restart stops the process and starts another one on the same store.
func (d *desk) restart(change func(*discord.Config)) {
	d.t.Helper()
	require.NoError(d.t, d.stop())
	d.start(change)
}

// ask writes a question that names the account, and waits for its one answer.
func (d *desk) ask(c loopback.Channel, text string) loopback.Posted {
	d.t.Helper()
	return d.server.AwaitAnswer(d.server.Say(c, loopback.Said{Text: text, Naming: true}))
}

// askedOnce proves that everything still works: the next question is answered,
// and no question was put twice.
func (d *desk) askedOnce(c loopback.Channel) {
	d.t.Helper()
	d.server.AwaitConnected(1)
	text := fmt.Sprintf("proof %d", time.Now().UnixNano())
	id := d.server.Say(c, loopback.Said{Text: text, Naming: true})
	d.server.AwaitAnswer(id)
	require.Len(d.t, d.server.Answers(id), 1)
	seen := map[string]bool{}
	for _, asked := range d.counter.Asked() {
		require.False(d.t, seen[asked], "%q was put twice", asked)
		seen[asked] = true
	}
}

// handlerFunc is a handler made of a function.
type handlerFunc func(context.Context, bot.Message) (commands.Reply, error)

func (f handlerFunc) Handle(ctx context.Context, m bot.Message) (commands.Reply, error) {
	return f(ctx, m)
}

var errStoreAway = errors.New("store is away")
