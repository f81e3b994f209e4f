package discord

import (
	"context"
	"crypto/rand"
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"
	"sync"
	"time"

	"counterhand/bot"
	"counterhand/bot/discord/link"
)

// sessions keeps connections' sessions among the settings, so that a new
// process goes on where the last one stopped.
type sessions struct {
	store bot.SettingsStore
	now   func() time.Time
}

func (s sessions) owner(name string) bot.Owner {
	return bot.OwnerOfChannel(bot.ChannelID(surfaceName + "connection " + name))
}

// Session is part of link.Sessions.
func (s sessions) Session(ctx context.Context, name string) (link.Session, error) {
	kept, err := readField[link.Session](ctx, s.store, s.owner(name), "session")
	return kept, err
}

// KeepSession is part of link.Sessions.
func (s sessions) KeepSession(ctx context.Context, name string, session link.Session) error {
	return s.store.ChangeSettings(ctx, s.owner(name), s.now(), func(old json.RawMessage) (json.RawMessage, error) {
		return withField(old, "session", session)
	})
}

// readField gives one field of a settings document, or the zero value.
func readField[T any](ctx context.Context, store bot.SettingsStore, owner bot.Owner, field string) (value T, err error) {
	all, err := store.Settings(ctx, owner)
	if err != nil {
		return value, err
	}
	kept, ok := all[owner]
	if !ok {
		return value, nil
	}
	return fieldOf[T](kept.Document, field)
}

func fieldOf[T any](document json.RawMessage, field string) (value T, err error) {
	var fields map[string]json.RawMessage
	if err := json.Unmarshal(document, &fields); err != nil {
		return value, fmt.Errorf("settings document: %w", err)
	}
	if fields[field] == nil {
		return value, nil
	}
	if err := json.Unmarshal(fields[field], &value); err != nil {
		return value, fmt.Errorf("settings field %s: %w", field, err)
	}
	return value, nil
}

// withField sets one field of a settings document and leaves the others alone.
func withField(document json.RawMessage, field string, value any) (json.RawMessage, error) {
	fields := map[string]json.RawMessage{}
	if len(document) > 0 {
		if err := json.Unmarshal(document, &fields); err != nil {
			return nil, fmt.Errorf("settings document: %w", err)
		}
	}
	raw, err := json.Marshal(value)
	if err != nil {
		return nil, err
	}
	fields[field] = raw
	return json.Marshal(fields)
}

// leases shares work out between processes through the store.
type leases struct {
	store bot.LeaseStore
	ttl   time.Duration
	log   *slog.Logger
}

// Hold is part of link.Leases. A lease that could not be renewed in time ends
// the context before the store gives it to somebody else.
func (l leases) Hold(ctx context.Context, name string) (context.Context, func(), error) {
	holder := rand.Text()
	lease, err := l.acquire(ctx, name, holder)
	if err != nil {
		return nil, nil, err
	}
	held, cancel := context.WithCancel(ctx)
	var renewing sync.WaitGroup
	renewing.Go(func() {
		defer cancel()
		lease = l.renew(held, lease)
	})
	return held, sync.OnceFunc(func() {
		cancel()
		renewing.Wait()
		release, end := context.WithTimeout(context.WithoutCancel(ctx), l.ttl/3)
		defer end()
		if err := l.store.Release(release, lease); err != nil {
			l.log.Warn("lease cannot be given back and will run out", "lease", name, "error", err)
		}
	}), nil
}

func (l leases) acquire(ctx context.Context, name, holder string) (bot.Lease, error) {
	told := false
	for {
		lease, err := l.store.Acquire(ctx, name, holder, l.ttl)
		if err == nil {
			return lease, nil
		}
		if ctx.Err() != nil {
			return bot.Lease{}, ctx.Err()
		}
		if !told {
			told = true
			if errors.Is(err, bot.ErrLeaseHeld) {
				l.log.Info("another process does this; standing by", "lease", name)
			} else {
				l.log.Warn("lease cannot be asked for", "lease", name, "error", err)
			}
		}
		if err := pause(ctx, l.ttl/4); err != nil {
			return bot.Lease{}, err
		}
	}
}

// renew holds the lease until ctx ends or it is lost, and gives its last state.
func (l leases) renew(ctx context.Context, lease bot.Lease) bot.Lease {
	good := time.Now()
	for {
		if pause(ctx, l.ttl/4) != nil {
			return lease
		}
		asked := time.Now()
		limit, cancel := context.WithDeadline(ctx, good.Add(l.ttl*3/4))
		renewed, err := l.store.Renew(limit, lease, l.ttl)
		cancel()
		switch {
		case err == nil:
			lease, good = renewed, asked
		case errors.Is(err, bot.ErrLeaseLost), time.Since(good) >= l.ttl*3/4:
			if ctx.Err() == nil {
				l.log.Warn("lease is lost", "lease", lease.Name, "error", err)
			}
			return lease
		}
	}
}

func pause(ctx context.Context, d time.Duration) error {
	timer := time.NewTimer(d)
	defer timer.Stop()
	select {
	case <-timer.C:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}
