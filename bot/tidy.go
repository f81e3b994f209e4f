package bot

import (
	"context"
	"errors"
	"time"
)

// How often [Engine.Run] does what.
const (
	catchUpEvery = 5 * time.Second
	sweepEvery   = time.Hour
	sweepTimeout = 10 * time.Minute // it deletes in small batches, and may have many to delete
)

// Run keeps house until the context ends: it brings a store that was away up to
// date soon after it is back, and deletes what is older than the retention
// allows. A process that serves runs it once.
func (e *Engine) Run(ctx context.Context) {
	catchUp, sweep := time.NewTicker(catchUpEvery), time.NewTicker(sweepEvery)
	defer catchUp.Stop()
	defer sweep.Stop()
	e.Sweep(ctx)
	for {
		select {
		case <-ctx.Done():
			return
		case <-catchUp.C:
			e.CatchUp(ctx)
		case <-sweep.C:
			e.Sweep(ctx)
		}
	}
}

// CatchUp writes what could not be written while the store was away, as far as
// the store is back; the rest is left for the next time.
func (e *Engine) CatchUp(ctx context.Context) {
	for _, id := range e.unclaimed.Keys() {
		claimant, ok := e.unclaimed.Peek(id)
		if !ok {
			continue
		}
		// Whoever else claimed it meanwhile has answered it too; that cannot be
		// undone, and needs no claim of ours.
		if _, err := e.claim(ctx, id, claimant); err != nil {
			return
		}
		e.unclaimed.Remove(id)
	}
	for _, id := range e.held.Keys() {
		if held, ok := e.held.Peek(id); ok && (held.behind || len(held.unsaved) > 0) {
			if e.catchUp(ctx, id) != nil {
				return
			}
		}
	}
}

// catchUp writes one conversation and what its person changed.
func (e *Engine) catchUp(ctx context.Context, id ConversationID) error {
	leave, err := e.turns.enter(ctx, id)
	if err != nil {
		return err
	}
	defer leave()
	held, ok := e.held.Peek(id) // it may have gone on while this waited
	if !ok {
		return nil
	}
	var errs [2]error
	if len(held.unsaved) > 0 {
		errs[0] = e.save(ctx, held.person, &held.applying)
	}
	if held.behind {
		errs[1] = e.saveLate(ctx, id, held)
		held.behind = errs[1] != nil
	}
	e.held.Add(id, held)
	return errors.Join(errs[:]...)
}

// saveLate writes a conversation that could not be written at its time, unless
// it has gone on in another process since.
func (e *Engine) saveLate(ctx context.Context, id ConversationID, held heldConversation) error {
	kept, err := e.kept(ctx, id)
	switch {
	case err == nil && kept.At.After(held.at):
		return nil
	case err != nil && !errors.Is(err, ErrNotFound):
		return err
	}
	return e.saveConversation(ctx, id, held)
}

// Sweep deletes from the store what is older than the retention allows.
func (e *Engine) Sweep(ctx context.Context) {
	ctx, cancel := context.WithTimeout(ctx, sweepTimeout)
	defer cancel()
	swept, err := e.cfg.Store.Sweep(ctx, e.cfg.Now(), e.cfg.Retention)
	switch {
	case err == nil:
		e.cfg.Log.Info("swept", "settings", swept.PersonSettings, "conversations", swept.Conversations, "messages", swept.Seen)
	case !errors.Is(err, context.Canceled):
		e.cfg.Log.Error("what is too old cannot be deleted", "err", err)
	}
}
