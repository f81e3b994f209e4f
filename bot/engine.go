package bot

import (
	"context"
	"crypto/rand"
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"
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
//   - When the store is away, questions are answered all the same: the reply
//     says that settings cannot be read or saved, repeats are then recognised
//     within this process only, and the conversation goes on from memory. All
//     of it is put right by itself when the store is back.
type Engine struct {
	cfg      EngineConfig
	process  string // tells this engine's claims from every other's
	attempts atomic.Uint64
	turns    *turnstile
	outage   outage
	answered *lru.Cache[MessageID, struct{}]
	held     *lru.Cache[ConversationID, heldConversation]
}

// heldConversation is a conversation in memory. It is kept as JSON, which is
// compact and has no pointers for the collector to follow.
type heldConversation struct {
	state   []byte
	at      time.Time
	unsaved bool // the store does not have it yet
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
	answered, err := lru.New[MessageID, struct{}](cfg.Conversations)
	if err != nil {
		return nil, fmt.Errorf("conversations in memory: %w", err)
	}
	held, err := lru.New[ConversationID, heldConversation](cfg.Conversations)
	if err != nil {
		return nil, fmt.Errorf("conversations in memory: %w", err)
	}
	return &Engine{
		cfg:      cfg,
		process:  rand.Text(),
		turns:    newTurnstile(),
		outage:   outage{pause: cfg.RetryPause},
		answered: answered,
		held:     held,
	}, nil
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
	ctx = context.WithoutCancel(ctx)

	reply, state := e.respond(m, e.recall(ctx, m))
	e.keep(ctx, m, state)
	return reply, nil
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
	mine := true
	err := e.call(ctx, func(ctx context.Context) (err error) {
		mine, err = e.cfg.Store.Claim(ctx, m.ID, claimant, e.cfg.Now())
		return err
	})
	if err == nil && !mine {
		return ErrRepeat
	}
	if ctx.Err() != nil {
		return ctx.Err()
	}
	e.answered.Add(m.ID, struct{}{})
	return nil
}

// recall returns what the conversation holds so far: nothing where it is new,
// too old, or written by a program whose state this one cannot read.
func (e *Engine) recall(ctx context.Context, m Message) commands.State {
	var fresh commands.State
	held, ok := e.held.Get(m.Conversation())
	if !ok || !held.unsaved {
		err := e.call(ctx, func(ctx context.Context) error {
			c, err := e.cfg.Store.Conversation(ctx, m.Conversation())
			held, ok = heldConversation{state: c.State, at: c.At}, err == nil
			if errors.Is(err, ErrNotFound) {
				return nil
			}
			return err
		})
		if err != nil {
			held, ok = e.held.Get(m.Conversation())
		}
	}
	if !ok || e.cfg.Now().Sub(held.at) > e.cfg.ContextAge {
		return fresh
	}
	var st commands.State
	if err := json.Unmarshal(held.state, &st); err != nil {
		e.cfg.Log.Warn("conversation cannot be read and starts afresh", "err", err)
		return fresh
	}
	return st
}

// respond asks the responder. One message that brings it down must not take
// everybody else's conversation along.
func (e *Engine) respond(m Message, st commands.State) (reply commands.Reply, next commands.State) {
	defer func() {
		if fault := recover(); fault != nil {
			e.cfg.Log.Error("answering failed", "fault", fault, "stack", string(debug.Stack()))
			reply = commands.Reply{Outcome: commands.Decline, Text: "That one went wrong here, and it is not your doing. Ask it in other words, or one part at a time."}
			next = st
		}
	}()
	r := e.cfg.Responder.Respond(commands.Turn{Text: m.Text, State: st})
	return r.Reply, r.State
}

// keep saves where the conversation stands now.
func (e *Engine) keep(ctx context.Context, m Message, st commands.State) {
	state, err := json.Marshal(st)
	if err != nil {
		e.cfg.Log.Error("conversation cannot be written", "err", err)
		return
	}
	now := e.cfg.Now()
	err = e.call(ctx, func(ctx context.Context) error {
		return e.cfg.Store.SaveConversation(ctx, Conversation{ID: m.Conversation(), Person: m.Person, State: state, At: now})
	})
	e.held.Add(m.Conversation(), heldConversation{state: state, at: now, unsaved: err != nil})
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
	if ctx.Err() != nil {
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
