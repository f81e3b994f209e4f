package bot

import (
	"context"
	"encoding/json"
	"errors"
	"time"

	"counterhand/commands"
)

// heldConversation is a conversation in memory, for when the store is away.
// Its state is kept as JSON, which is compact and has no pointers for the
// collector to follow.
type heldConversation struct {
	person PersonID
	state  []byte
	at     time.Time
	behind bool // the store has not got this state yet
	applying
}

// recall returns what the conversation holds so far: nothing where it is new,
// too old, or written by a program whose state this one cannot read.
func (e *Engine) recall(ctx context.Context, m Message) (st commands.State) {
	held, ok := e.held.Get(m.Conversation())
	kept, err := e.kept(ctx, m.Conversation())
	switch {
	case err == nil && !(held.behind && held.at.After(kept.At)):
		held, ok = heldConversation{state: kept.State, at: kept.At}, true
	case errors.Is(err, ErrNotFound) && !held.behind:
		ok = false
	}
	if !ok || e.cfg.Now().Sub(held.at) > e.cfg.ContextAge {
		return st
	}
	if err := json.Unmarshal(held.state, &st); err != nil {
		e.cfg.Log.Warn("conversation cannot be read and starts afresh", "err", err)
		return commands.State{}
	}
	return st
}

// kept reads a conversation from the store. That it is not there is an answer,
// not a fault of the store.
func (e *Engine) kept(ctx context.Context, id ConversationID) (c Conversation, err error) {
	fault := e.call(ctx, func(ctx context.Context) error {
		c, err = e.cfg.Store.Conversation(ctx, id)
		if errors.Is(err, ErrNotFound) {
			return nil
		}
		return err
	})
	return c, errors.Join(err, fault)
}

// keep saves where the conversation stands now.
func (e *Engine) keep(ctx context.Context, m Message, st commands.State, a applying) {
	state, err := json.Marshal(st)
	if err != nil {
		e.cfg.Log.Error("conversation cannot be written", "err", err)
		return
	}
	held := heldConversation{person: m.Person, state: state, at: e.cfg.Now(), applying: a}
	held.behind = e.saveConversation(ctx, m.Conversation(), held) != nil
	e.held.Add(m.Conversation(), held)
}

func (e *Engine) saveConversation(ctx context.Context, id ConversationID, held heldConversation) error {
	return e.call(ctx, func(ctx context.Context) error {
		return e.cfg.Store.SaveConversation(ctx, Conversation{ID: id, Person: held.person, State: held.state, At: held.at})
	})
}

// forget deletes everything of the person, and corrects the reply: it says what
// was deleted, or that nothing could be.
func (e *Engine) forget(ctx context.Context, person PersonID, reply *commands.Reply) {
	for _, id := range e.held.Keys() {
		if held, ok := e.held.Peek(id); ok && held.person == person {
			e.held.Remove(id)
		}
	}
	var forgotten Forgotten
	err := e.call(ctx, func(ctx context.Context) (err error) {
		forgotten, err = e.cfg.Store.Forget(ctx, person)
		return err
	})
	if err != nil {
		reply.Outcome, reply.Text = commands.Decline, notGone
		return
	}
	say(reply, deleted(forgotten))
}
