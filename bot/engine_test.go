package bot_test

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"maps"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/memory"
	"counterhand/commands"
)

// listener is a responder that shows what it was given. It understands
// "set NAME VALUE", "drop NAME", "forget me" and "fall over"; what it
// is told otherwise it counts.
type listener struct {
	heard func(commands.Turn) // may be nil
}

func (l listener) Respond(t commands.Turn) commands.Response {
	if l.heard != nil {
		l.heard(t)
	}
	r := commands.Response{State: t.State, Own: t.Own}
	r.State.Misses++
	r.Reply = commands.Reply{Outcome: commands.Answer, Text: fmt.Sprintf("%d: own %s, shared %s", r.State.Misses, shown(t.Own), shown(t.Shared))}
	switch said := strings.Fields(t.Text); said[0] {
	case "set":
		r.Own = maps.Clone(t.Own)
		if r.Own == nil {
			r.Own = commands.Settings{}
		}
		r.Own[said[1]] = said[2]
	case "drop":
		r.Own = maps.Clone(t.Own)
		delete(r.Own, said[1])
	case "forget":
		return commands.Response{Reply: commands.Reply{Outcome: commands.Answer, Text: "Done."}, Forget: true}
	case "fall":
		panic("fell over " + t.Text)
	}
	return r
}

func shown(s commands.Settings) string {
	text, err := json.Marshal(s)
	if err != nil {
		return err.Error()
	}
	return string(text)
}

// clock is a clock that the test sets.
type clock struct {
	mu  sync.Mutex
	now time.Time
}

func newClock() *clock { return &clock{now: time.Date(2026, 3, 14, 12, 0, 0, 0, time.UTC)} }

func (c *clock) Now() time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.now
}

func (c *clock) move(by time.Duration) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.now = c.now.Add(by)
}

// house is an engine with all that it stands on.
type house struct {
	*bot.Engine
	clock *clock
	store *faulty
}

func newHouse(t *testing.T, change func(*bot.EngineConfig)) house {
	t.Helper()
	c := newClock()
	h := house{clock: c, store: &faulty{Store: memory.Open(c.Now)}}
	cfg := bot.EngineConfig{Responder: listener{}, Store: h.store, Now: c.Now, Log: slog.New(slog.NewTextHandler(io.Discard, nil))}
	if change != nil {
		change(&cfg)
	}
	e, err := bot.NewEngine(cfg)
	require.NoError(t, err)
	h.Engine = e
	return h
}

// say sends a text of one person in one channel, and returns the reply's text.
func (h house) say(t *testing.T, m bot.Message) string {
	t.Helper()
	if m.Person == "" {
		m.Person = "chat:7"
	}
	if m.Channel == "" {
		m.Channel = "chat:9"
	}
	reply, err := h.Handle(t.Context(), m)
	require.NoError(t, err)
	return reply.Text
}

func (h house) tell(t *testing.T, text string) string {
	t.Helper()
	return h.say(t, bot.Message{Text: text})
}

// faulty is a store that is away when it is told to be.
type faulty struct {
	bot.Store
	away  atomic.Bool
	calls atomic.Int32 // while away
}

var errFault = errors.New("cannot be reached")

func (f *faulty) fault() error {
	if !f.away.Load() {
		return nil
	}
	f.calls.Add(1)
	return errFault
}

func (f *faulty) Settings(ctx context.Context, owners ...bot.Owner) (map[bot.Owner]bot.Settings, error) {
	if err := f.fault(); err != nil {
		return nil, err
	}
	return f.Store.Settings(ctx, owners...)
}

func (f *faulty) ChangeSettings(ctx context.Context, owner bot.Owner, now time.Time, change func(json.RawMessage) (json.RawMessage, error)) error {
	if err := f.fault(); err != nil {
		return err
	}
	return f.Store.ChangeSettings(ctx, owner, now, change)
}

func (f *faulty) Conversation(ctx context.Context, id bot.ConversationID) (bot.Conversation, error) {
	if err := f.fault(); err != nil {
		return bot.Conversation{}, err
	}
	return f.Store.Conversation(ctx, id)
}

func (f *faulty) SaveConversation(ctx context.Context, c bot.Conversation) error {
	if err := f.fault(); err != nil {
		return err
	}
	return f.Store.SaveConversation(ctx, c)
}

func (f *faulty) Claim(ctx context.Context, id bot.MessageID, claimant string, now time.Time) (bool, error) {
	if err := f.fault(); err != nil {
		return false, err
	}
	return f.Store.Claim(ctx, id, claimant, now)
}

func (f *faulty) Forget(ctx context.Context, person bot.PersonID) (bot.Forgotten, error) {
	if err := f.fault(); err != nil {
		return bot.Forgotten{}, err
	}
	return f.Store.Forget(ctx, person)
}

func TestEngineNeedsItsParts(t *testing.T) {
	_, err := bot.NewEngine(bot.EngineConfig{Store: memory.Open(time.Now)})
	assert.Error(t, err)
	_, err = bot.NewEngine(bot.EngineConfig{Responder: listener{}})
	assert.Error(t, err)
	_, err = bot.NewEngine(bot.EngineConfig{Responder: listener{}, Store: memory.Open(time.Now), Conversations: -1})
	assert.Error(t, err)
}

func TestConversationGoesOn(t *testing.T) {
	h := newHouse(t, nil)
	assert.Equal(t, "1: own null, shared null", h.tell(t, "hello"))
	assert.Equal(t, "2: own null, shared null", h.tell(t, "hello"))

	t.Run("apart from other people's and other channels'", func(t *testing.T) {
		assert.Equal(t, "1: own null, shared null", h.say(t, bot.Message{Person: "chat:8", Text: "hello"}))
		assert.Equal(t, "1: own null, shared null", h.say(t, bot.Message{Channel: "chat:10", Text: "hello"}))
	})
	t.Run("in another process", func(t *testing.T) {
		other := newHouse(t, func(cfg *bot.EngineConfig) { cfg.Store, cfg.Now = h.store, h.clock.Now })
		assert.Equal(t, "3: own null, shared null", other.tell(t, "hello"))
		assert.Equal(t, "4: own null, shared null", h.tell(t, "hello"), "and back, with what was said there")
	})
	t.Run("until it is too old", func(t *testing.T) {
		h.clock.move(bot.DefaultContextAge)
		assert.Equal(t, "5: own null, shared null", h.tell(t, "hello"))
		h.clock.move(bot.DefaultContextAge + time.Second)
		assert.Equal(t, "1: own null, shared null", h.tell(t, "hello"))
	})
	t.Run("when the clock goes back", func(t *testing.T) {
		h.clock.move(-48 * time.Hour)
		assert.Equal(t, "2: own null, shared null", h.tell(t, "hello"))
	})
	t.Run("afresh where its state makes no sense", func(t *testing.T) {
		require.NoError(t, h.store.SaveConversation(t.Context(), bot.Conversation{
			ID: "chat:9/chat:7", Person: "chat:7", State: json.RawMessage(`{"misses":"many"}`), At: h.clock.Now()}))
		assert.Equal(t, "1: own null, shared null", h.tell(t, "hello"))
	})
}

func TestSettingsApply(t *testing.T) {
	h := newHouse(t, nil)
	set := func(owner bot.Owner, document string) {
		require.NoError(t, h.store.ChangeSettings(t.Context(), owner, h.clock.Now(),
			func(json.RawMessage) (json.RawMessage, error) { return json.RawMessage(document), nil }))
	}
	set(bot.OwnerOfShop(""), `{"defaults":{"seam":"7 mm","units":"metric"}}`)
	set(bot.OwnerOfChannel("chat:9"), `{"rules":{"sign":"??"},"defaults":{"units":"imperial"}}`)
	assert.Equal(t, `1: own null, shared {"seam":"7 mm","units":"imperial"}`, h.tell(t, "hello"), "the channel comes before the shop")
	assert.Equal(t, `1: own null, shared {"seam":"7 mm","units":"metric"}`, h.say(t, bot.Message{Channel: "chat:10", Text: "hello"}))

	h.tell(t, "set seam 6mm")
	h.tell(t, "set usable_width 43in")
	h.tell(t, "drop seam")
	assert.Equal(t, `5: own {"usable_width":"43in"}, shared {"seam":"7 mm","units":"imperial"}`, h.tell(t, "hello"))
	assert.Equal(t, `2: own {"usable_width":"43in"}, shared {"seam":"7 mm","units":"metric"}`, h.say(t, bot.Message{Channel: "chat:10", Text: "hello"}), "in every channel")
	assert.Equal(t, `1: own null, shared {"seam":"7 mm","units":"imperial"}`, h.say(t, bot.Message{Person: "chat:8", Text: "hello"}), "of that person alone")

	t.Run("what a surface keeps of the person is left alone", func(t *testing.T) {
		set(bot.OwnerOfPerson("chat:7"), `{"defaults":{"seam":"6 mm"},"greeted":true}`)
		h.tell(t, "drop seam")
		found, err := h.store.Settings(t.Context(), bot.OwnerOfPerson("chat:7"))
		require.NoError(t, err)
		assert.JSONEq(t, `{"greeted":true}`, string(found[bot.OwnerOfPerson("chat:7")].Document))
	})
	t.Run("a document that makes no sense counts as nothing set", func(t *testing.T) {
		set(bot.OwnerOfShop(""), `{"defaults":17}`)
		assert.Contains(t, h.say(t, bot.Message{Channel: "chat:11", Text: "hello"}), "shared null")
	})
}

func TestSettingsOfTwoConversationsAtOnce(t *testing.T) {
	h := newHouse(t, nil)
	const each = 25
	var wg sync.WaitGroup
	for c := range 4 {
		wg.Go(func() {
			for n := range each {
				h.say(t, bot.Message{Channel: bot.ChannelID(fmt.Sprint("chat:", c)), Text: fmt.Sprintf("set s%d-%d on", c, n)})
			}
		})
	}
	wg.Wait()
	found, err := h.store.Settings(t.Context(), bot.OwnerOfPerson("chat:7"))
	require.NoError(t, err)
	var document struct{ Defaults commands.Settings }
	require.NoError(t, json.Unmarshal(found[bot.OwnerOfPerson("chat:7")].Document, &document))
	assert.Len(t, document.Defaults, 4*each, "none undid another's change")
}

func TestSettingsInUseDoNotGrowOld(t *testing.T) {
	h := newHouse(t, func(cfg *bot.EngineConfig) { cfg.Retention = bot.Retention{PersonSettings: 30 * 24 * time.Hour} })
	h.tell(t, "set units metric")
	for range 10 {
		h.clock.move(20 * 24 * time.Hour)
		assert.Contains(t, h.tell(t, "hello"), `own {"units":"metric"}`)
		h.Sweep(t.Context())
	}
	h.clock.move(31 * 24 * time.Hour)
	h.Sweep(t.Context())
	assert.Contains(t, h.tell(t, "hello"), "own null")
}

func TestRepeatedMessageIsAnsweredOnce(t *testing.T) {
	one := newHouse(t, nil)
	other := newHouse(t, func(cfg *bot.EngineConfig) { cfg.Store = one.store })
	m := bot.Message{ID: "chat:1", Person: "chat:7", Channel: "chat:9", Text: "hello"}
	var wg sync.WaitGroup
	errs := make([]error, 20)
	for i := range errs {
		engine := one
		if i%2 == 1 {
			engine = other
		}
		wg.Go(func() { _, errs[i] = engine.Handle(context.Background(), m) })
	}
	wg.Wait()
	answered := 0
	for _, err := range errs {
		if err == nil {
			answered++
			continue
		}
		assert.ErrorIs(t, err, bot.ErrRepeat)
	}
	assert.Equal(t, 1, answered)

	m.ID = ""
	for range 2 {
		_, err := one.Handle(t.Context(), m)
		assert.NoError(t, err, "a message without an id is no repeat")
	}
}

// TestOrder sends the messages of some conversations at once, each conversation's
// in order, and looks at the order in which they were answered.
func TestOrder(t *testing.T) {
	const conversations, each = 8, 50
	var mu sync.Mutex
	answered := map[string][]string{}
	h := newHouse(t, func(cfg *bot.EngineConfig) {
		cfg.Responder = listener{heard: func(turn commands.Turn) {
			channel, n, _ := strings.Cut(turn.Text, " ")
			mu.Lock()
			defer mu.Unlock()
			answered[channel] = append(answered[channel], n)
		}}
	})
	var want []string
	var wg sync.WaitGroup
	for n := range each {
		want = append(want, fmt.Sprint(n))
		for c := range conversations {
			entered := make(chan struct{})
			ctx := enteredContext{t.Context(), sync.OnceFunc(func() { close(entered) })}
			wg.Go(func() {
				channel := fmt.Sprint("chat:", c)
				_, err := h.Handle(ctx, bot.Message{Person: "chat:7", Channel: bot.ChannelID(channel), Text: channel + " " + fmt.Sprint(n)})
				assert.NoError(t, err)
			})
			<-entered // it has its place in the row
		}
	}
	wg.Wait()
	for c := range conversations {
		assert.Equal(t, want, answered[fmt.Sprint("chat:", c)])
	}
}

// enteredContext tells when the engine first looks at it, which is after the
// message got its place in the row.
type enteredContext struct {
	context.Context
	entered func()
}

func (c enteredContext) Done() <-chan struct{} {
	c.entered()
	return c.Context.Done()
}

func (c enteredContext) Err() error {
	c.entered()
	return c.Context.Err()
}

func TestCallerThatGivesUp(t *testing.T) {
	release := make(chan struct{})
	started := make(chan struct{}, 1)
	h := newHouse(t, func(cfg *bot.EngineConfig) {
		cfg.Responder = listener{heard: func(turn commands.Turn) {
			if turn.Text == "slow" {
				started <- struct{}{}
				<-release
			}
		}}
	})
	slow := bot.Message{ID: "chat:1", Person: "chat:7", Channel: "chat:9", Text: "slow"}
	var wg sync.WaitGroup
	wg.Go(func() {
		_, err := h.Handle(context.Background(), slow)
		assert.NoError(t, err)
	})
	<-started

	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	waiting := slow
	waiting.ID, waiting.Text = "chat:2", "hello"
	_, err := h.Handle(ctx, waiting)
	assert.ErrorIs(t, err, context.Canceled, "it gave up while it waited")
	close(release)
	wg.Wait()

	_, err = h.Handle(ctx, waiting)
	assert.ErrorIs(t, err, context.Canceled)
	reply, err := h.Handle(t.Context(), waiting)
	require.NoError(t, err, "it was never taken on, so it is no repeat")
	assert.Equal(t, "2: own null, shared null", reply.Text)
}

func TestFaultOfTheResponderStaysInItsConversation(t *testing.T) {
	var log bytes.Buffer
	h := newHouse(t, func(cfg *bot.EngineConfig) { cfg.Log = slog.New(slog.NewTextHandler(&log, nil)) })
	h.tell(t, "hello")
	reply, err := h.Handle(t.Context(), bot.Message{Person: "chat:7", Channel: "chat:9", Text: "fall over my-secret"})
	require.NoError(t, err)
	assert.Equal(t, commands.Decline, reply.Outcome)
	assert.Contains(t, log.String(), "answering failed")
	assert.NotContains(t, log.String(), "my-secret", "what people write is not logged")
	assert.Equal(t, "2: own null, shared null", h.tell(t, "hello"), "the conversation is as it was")
}

func TestForgetMe(t *testing.T) {
	h := newHouse(t, nil)
	h.tell(t, "set units metric")
	h.say(t, bot.Message{Channel: "chat:10", Text: "hello"})
	h.say(t, bot.Message{Person: "chat:8", Text: "set units metric"})

	assert.Equal(t, "Done.\nDeleted: your settings and 2 open conversations.", h.tell(t, "forget me"))
	assert.Equal(t, "Done.\nThere was nothing kept of you.", h.tell(t, "forget me"))
	assert.Equal(t, "1: own null, shared null", h.tell(t, "hello"))
	assert.Equal(t, "Done.\nDeleted: one open conversation.", h.tell(t, "forget me"))
	assert.Contains(t, h.say(t, bot.Message{Person: "chat:8", Text: "hello"}), `2: own {"units":"metric"}`, "others keep theirs")

	h.store.away.Store(true)
	reply, err := h.Handle(t.Context(), bot.Message{Person: "chat:8", Channel: "chat:9", Text: "forget me"})
	require.NoError(t, err)
	assert.Equal(t, commands.Decline, reply.Outcome)
	assert.Equal(t, "Nothing can be deleted just now, because what is kept cannot be reached. Ask again in a few minutes.", reply.Text)
}

func TestStoreThatIsAway(t *testing.T) {
	const unread = "\nSettings cannot be read or saved just now, so this may rest on the shop's figures where you had set your own."
	h := newHouse(t, nil)
	h.tell(t, "set units metric")

	h.store.away.Store(true)
	assert.Equal(t, `2: own {"units":"metric"}, shared null`+unread, h.tell(t, "hello"), "it goes on from memory")
	assert.Equal(t, "1: own null, shared null"+unread, h.say(t, bot.Message{Person: "chat:8", Text: "hello"}), "and strangers are answered")
	assert.Contains(t, h.tell(t, "set seam 6mm"), "\nThat cannot be saved just now. It holds in this conversation; say it again later to have it kept.")
	assert.Equal(t, `4: own {"seam":"6mm","units":"metric"}, shared null`+unread, h.tell(t, "hello"))

	m := bot.Message{ID: "chat:1", Person: "chat:8", Channel: "chat:9", Text: "hello"}
	assert.Equal(t, "2: own null, shared null"+unread, h.say(t, m))
	_, err := h.Handle(t.Context(), m)
	assert.ErrorIs(t, err, bot.ErrRepeat, "within this process repeats are known")

	t.Run("it is asked once in each pause", func(t *testing.T) {
		h.store.calls.Store(0)
		for range 10 {
			h.tell(t, "hello")
		}
		assert.Zero(t, h.store.calls.Load())
		h.clock.move(bot.DefaultRetryPause)
		for range 10 {
			h.tell(t, "hello")
		}
		assert.EqualValues(t, 1, h.store.calls.Load())
	})

	t.Run("when it is back, nothing is missing", func(t *testing.T) {
		h.store.away.Store(false)
		h.clock.move(bot.DefaultRetryPause)
		assert.Equal(t, `25: own {"seam":"6mm","units":"metric"}, shared null`, h.tell(t, "hello"), "said no more")
		h.CatchUp(t.Context())

		other := newHouse(t, func(cfg *bot.EngineConfig) { cfg.Store, cfg.Now = h.store, h.clock.Now })
		assert.Equal(t, `26: own {"seam":"6mm","units":"metric"}, shared null`, other.tell(t, "hello"))
		assert.Equal(t, "3: own null, shared null", other.say(t, bot.Message{Person: "chat:8", Text: "hello"}), "saved without another message")
		_, err := other.Handle(t.Context(), m)
		assert.ErrorIs(t, err, bot.ErrRepeat, "what was answered meanwhile is known to all")
	})
}

func TestOutageOfOneProcessSpoilsNothing(t *testing.T) {
	h := newHouse(t, nil)
	h.tell(t, "hello")
	h.store.away.Store(true)
	h.tell(t, "hello")
	h.store.away.Store(false)
	h.clock.move(time.Minute)
	other := newHouse(t, func(cfg *bot.EngineConfig) { cfg.Store, cfg.Now = h.store.Store, h.clock.Now })
	assert.Contains(t, other.tell(t, "hello"), "2: ", "it does not know of the second message")
	h.CatchUp(t.Context())
	assert.Contains(t, other.tell(t, "hello"), "3: ", "and the late state does not replace the newer one")
	assert.Contains(t, h.tell(t, "hello"), "4: ")
}

// TestStoreThatHangs has a store that answers nothing until the deadline.
func TestStoreThatHangs(t *testing.T) {
	h := newHouse(t, func(cfg *bot.EngineConfig) {
		cfg.Store = hanging{cfg.Store}
		cfg.StoreTimeout = time.Millisecond
	})
	assert.Contains(t, h.tell(t, "hello"), "Settings cannot be read or saved just now")
}

type hanging struct{ bot.Store }

func (hanging) Settings(ctx context.Context, _ ...bot.Owner) (map[bot.Owner]bot.Settings, error) {
	<-ctx.Done()
	return nil, ctx.Err()
}

func TestSweepFollowsRetention(t *testing.T) {
	h := newHouse(t, func(cfg *bot.EngineConfig) { cfg.Retention = bot.Retention{Conversations: time.Hour} })
	h.tell(t, "hello")
	h.clock.move(time.Hour + time.Second)
	h.Sweep(t.Context())
	_, err := h.store.Conversation(t.Context(), "chat:9/chat:7")
	assert.ErrorIs(t, err, bot.ErrNotFound)
}
