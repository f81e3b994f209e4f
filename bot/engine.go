package bot

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"log/slog"
	"runtime"
	"runtime/debug"
	"strconv"
	"sync/atomic"
	"time"

	lru "github.com/hashicorp/golang-lru/v2"

	"counterhand/commands"
)

// ErrRepeat says that the message was answered before, here or in another
// process: nothing is to be sent.
var ErrRepeat = errors.New("message was answered before")

// Responder decides what is said. It must be safe for concurrent use.
type Responder interface {
	Respond(t commands.Turn) commands.Response
}

// EngineConfig is what an engine works with. Responder and Store are needed;
// a zero in any other field means the default.
type EngineConfig struct {
	Responder Responder
	Store     Store

	// ContextAge is how long after its last answer a conversation is still
	// taken up where it was left. Default 12 hours.
	ContextAge time.Duration
	// Conversations is how many of the latest conversations are also held in
	// memory, for when the store is away. Default 10,000.
	Conversations int
	// StoreTimeout is the deadline of each call to the store. Default 1 second.
	StoreTimeout time.Duration
	// RetryPause is how long a store that failed is left alone before it is
	// tried again. Default 1 second.
	RetryPause time.Duration
	// Retention is how long the store keeps what; [Engine.Run] sees to it. The
	// default keeps everything for ever.
	Retention Retention

	Now func() time.Time // default time.Now
	Log *slog.Logger     // default slog.Default(); never given what people wrote
}

// Defaults of [EngineConfig].
const (
	DefaultContextAge    = 12 * time.Hour
	DefaultConversations = 10_000
	DefaultStoreTimeout  = time.Second
	DefaultRetryPause    = time.Second
)

// Engine is the conversation that all surfaces share. It keeps to these rules:
//
//   - The messages of one conversation are answered one at a time, in the order
//     in which Handle was called; different conversations run side by side.
//   - A message is claimed in the store before it is answered, so that it is
//     answered at most once among all processes on that store. A message
//     without an id is always answered.
//   - A conversation is taken up where it was left, in any process, until it is
//     older than the context age.
//   - What a person has set comes before what the channel has set, and that
//     before what the shop has set; all of them come before the responder's own
//     defaults.
//   - When the store is away, questions are answered all the same: the reply
//     says that settings cannot be read or saved, repeats are then recognised
//     within this process only, and the conversation goes on from memory. All
//     of it is put right by itself when the store is back.
//   - Of what people write nothing is logged, and nothing is kept but the
//     state that the responder makes of it.
type Engine struct {
	cfg       EngineConfig
	process   string // tells this engine's claims from every other's
	attempts  atomic.Uint64
	turns     *turnstile
	outage    outage
	answered  *lru.Cache[MessageID, struct{}]
	unclaimed *lru.Cache[MessageID, string] // answered while the store was away, with their claimants
	held      *lru.Cache[ConversationID, heldConversation]
}

var _ Handler = (*Engine)(nil)

// NewEngine makes an engine.
func NewEngine(cfg EngineConfig) (*Engine, error) {
	if cfg.Responder == nil || cfg.Store == nil {
		return nil, errors.New("an engine needs a responder and a store")
	}
	setDefault(&cfg.ContextAge, DefaultContextAge)
	setDefault(&cfg.Conversations, DefaultConversations)
	setDefault(&cfg.StoreTimeout, DefaultStoreTimeout)
	setDefault(&cfg.RetryPause, DefaultRetryPause)
	if cfg.Now == nil {
		cfg.Now = time.Now
	}
	if cfg.Log == nil {
		cfg.Log = slog.Default()
	}
	e := &Engine{cfg: cfg, process: rand.Text(), turns: newTurnstile(), outage: outage{pause: cfg.RetryPause}}
	var errs [3]error
	e.answered, errs[0] = lru.New[MessageID, struct{}](cfg.Conversations)
	e.unclaimed, errs[1] = lru.New[MessageID, string](cfg.Conversations)
	e.held, errs[2] = lru.New[ConversationID, heldConversation](cfg.Conversations)
	if err := errors.Join(errs[:]...); err != nil {
		return nil, fmt.Errorf("hold %d conversations in memory: %w", cfg.Conversations, err)
	}
	return e, nil
}

func setDefault[T comparable](field *T, value T) {
	var zero T
	if *field == zero {
		*field = value
	}
}

// Handle answers one message. It returns ErrRepeat for a message that was
// answered before, and the context's error where that ended before the message
// was taken on; from then on, every fault is answered in the reply's text.
func (e *Engine) Handle(ctx context.Context, m Message) (commands.Reply, error) {
	leave, err := e.turns.enter(ctx, m.Conversation())
	if err != nil {
		return commands.Reply{}, err
	}
	defer leave()

	if err := e.takeOn(ctx, m); err != nil {
		return commands.Reply{}, err
	}
	// The message is taken on: whoever else receives it will not answer it, so
	// a surface that gives up now must not stop the answer from being kept.
	return e.answer(context.WithoutCancel(ctx), m), nil
}

// takeOn claims the message.
func (e *Engine) takeOn(ctx context.Context, m Message) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	if m.ID == "" {
		return nil
	}
	if e.answered.Contains(m.ID) {
		return ErrRepeat
	}
	claimant := e.process + "/" + strconv.FormatUint(e.attempts.Add(1), 36)
	mine, err := e.claim(ctx, m.ID, claimant)
	switch {
	case err == nil && !mine:
		return ErrRepeat
	case err != nil && ctx.Err() != nil:
		return ctx.Err()
	case err != nil:
		e.unclaimed.Add(m.ID, claimant)
	}
	e.answered.Add(m.ID, struct{}{})
	return nil
}

func (e *Engine) claim(ctx context.Context, id MessageID, claimant string) (mine bool, err error) {
	err = e.call(ctx, func(ctx context.Context) (err error) {
		mine, err = e.cfg.Store.Claim(ctx, id, claimant, e.cfg.Now())
		return err
	})
	return mine, err
}

// answer asks the responder, with all that applies to the message, and keeps
// what comes of it.
func (e *Engine) answer(ctx context.Context, m Message) commands.Reply {
	applying, read := e.settings(ctx, m)
	turn := commands.Turn{Text: m.Text, State: e.recall(ctx, m), Own: applying.own, Shared: applying.shared}
	response := e.respond(turn)
	reply := response.Reply
	if response.Forget {
		e.forget(ctx, m.Person, &reply)
		return reply
	}
	change := changeBetween(turn.Own, response.Own)
	applying.own = response.Own
	applying.unsaved = applying.unsaved.then(change)
	if len(change) > 0 && e.save(ctx, m.Person, &applying) != nil {
		say(&reply, notSaved)
	} else if !read {
		say(&reply, notRead)
	}
	e.keep(ctx, m, response.State, applying)
	return reply
}

// respond asks the responder. One message that brings it down must not take
// everybody else's conversation along.
func (e *Engine) respond(t commands.Turn) (r commands.Response) {
	defer func() {
		if fault := recover(); fault != nil {
			e.cfg.Log.Error("answering failed", "fault", faultOf(fault), "stack", string(debug.Stack()))
			r = commands.Response{Reply: commands.Reply{Outcome: commands.Decline, Text: wentWrong}, State: t.State, Own: t.Own}
		}
	}()
	return e.cfg.Responder.Respond(t)
}

// faultOf names what brought the responder down, without repeating what anybody
// wrote: only the runtime's own words are known to hold none of that.
func faultOf(fault any) string {
	if err, ok := fault.(runtime.Error); ok {
		return err.Error()
	}
	return fmt.Sprintf("%T", fault)
}

// errAway stands for a call that was not made because the store is away.
var errAway = errors.New("the store is away")

// call makes one call to the store, within its deadline, unless the store is
// known to be away.
func (e *Engine) call(ctx context.Context, do func(context.Context) error) error {
	if !e.outage.mayCall(e.cfg.Now()) {
		return errAway
	}
	within, cancel := context.WithTimeout(ctx, e.cfg.StoreTimeout)
	defer cancel()
	err := do(within)
	if err != nil && ctx.Err() != nil {
		return err // the caller gave up, which says nothing about the store
	}
	if e.outage.report(e.cfg.Now(), err) {
		if err != nil {
			e.cfg.Log.Error("the store is away", "err", err)
		} else {
			e.cfg.Log.Info("the store is back")
		}
	}
	return err
}
