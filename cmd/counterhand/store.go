package main

import (
	"context"

	"counterhand/bot"
	"counterhand/bot/store/postgres"
	"counterhand/bot/store/sqlite"
)

// openStore opens what the configuration names: the database that several
// processes share, or the file on this machine.
func (h *house) openStore(ctx context.Context) (bot.Store, error) {
	if url := h.config.Storage.Postgres; !url.IsEmpty() {
		return opened(postgres.Open(ctx, url.Unwrap()))
	}
	return opened(sqlite.Open(ctx, h.config.Storage.SQLite))
}

// opened keeps a store that could not be opened from being taken for one.
func opened[S bot.Store](store S, err error) (bot.Store, error) {
	if err != nil {
		return nil, err
	}
	return store, nil
}

// storeOrAway opens the store, or gives one that is away for good: questions
// are answered all the same, and each reply says that nothing is kept.
func (h *house) storeOrAway(ctx context.Context) bot.Store {
	store, err := h.openStore(ctx)
	if err != nil {
		return away{err}
	}
	return store
}

// retention is how long the store keeps what.
func (h *house) retention() bot.Retention {
	s := h.config.Storage
	return bot.Retention{PersonSettings: s.KeepSettings, Conversations: s.KeepConversations, Seen: s.KeepMessageIDs}
}
