package sqlite

import (
	"context"
	"encoding/json"
	"log/slog"
	"os"
	"slices"
	"sync"
	"time"

	"github.com/hashicorp/golang-lru/v2/simplelru"

	"counterhand/bot"
)

// changesSuffix names the file whose length counts the changes of settings by
// all processes: each appends one byte once its change is in the file of
// records. To look at the length takes a fraction of what a read of the records
// takes, and is enough to know whether what was read before still holds.
const changesSuffix = ".changes"

const (
	maxCached = 10_000 // owners
	// maxCacheAge bounds for how long others do not see a change whose process
	// died, or found the disk full, before it appended its byte.
	maxCacheAge = time.Minute
)

// settingsCache holds settings that were read, for as long as nobody changes any.
type settingsCache struct {
	changes *os.File

	mu     sync.Mutex
	length int64 // of changes, before the first of owners was read
	since  time.Time
	owners *simplelru.LRU[bot.Owner, bot.Settings] // without a document where there are none
}

func openCache(path string) (*settingsCache, error) {
	changes, err := os.OpenFile(path+changesSuffix, os.O_WRONLY|os.O_CREATE|os.O_APPEND, 0o600)
	if err != nil {
		return nil, &FileError{Path: path, Problem: "the count of changes beside it cannot be kept", Err: err}
	}
	owners, err := simplelru.NewLRU[bot.Owner, bot.Settings](maxCached, nil)
	if err != nil {
		panic(err) // the bound is a positive constant
	}
	return &settingsCache{changes: changes, owners: owners}, nil
}

func (c *settingsCache) close() error { return c.changes.Close() }

// now returns the count of changes, after emptying the cache if that or its age
// says that it may no longer hold.
func (c *settingsCache) now() (int64, error) {
	info, err := c.changes.Stat()
	if err != nil {
		return 0, err
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	if info.Size() != c.length || time.Since(c.since) > maxCacheAge {
		c.owners.Purge()
		c.length, c.since = info.Size(), time.Now()
	}
	return info.Size(), nil
}

// get returns the owners' settings if all of them are held.
func (c *settingsCache) get(owners []bot.Owner) (map[bot.Owner]bot.Settings, bool) {
	found := make(map[bot.Owner]bot.Settings, len(owners))
	c.mu.Lock()
	defer c.mu.Unlock()
	for _, o := range owners {
		kept, ok := c.owners.Get(o)
		if !ok {
			return nil, false
		}
		if kept.Document != nil {
			kept.Document = slices.Clone(kept.Document)
			found[o] = kept
		}
	}
	return found, true
}

// put holds what was read after the count of changes was as given.
func (c *settingsCache) put(length int64, owners []bot.Owner, found map[bot.Owner]bot.Settings) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if length != c.length {
		return // something changed since, and this may be from before
	}
	for _, o := range owners {
		kept := found[o]
		kept.Document = slices.Clone(kept.Document)
		c.owners.Add(o, kept)
	}
}

// changed tells all processes that settings may have changed.
func (c *settingsCache) changed() {
	if _, err := c.changes.Write([]byte{'.'}); err != nil {
		slog.Warn("other processes see changed settings late", "err", err)
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	c.owners.Purge()
	c.length = -1 // and what is being read now is not held
}

// Settings implements [bot.SettingsStore]. What was read before is not read
// again while no process changes any settings.
func (s *Store) Settings(ctx context.Context, owners ...bot.Owner) (map[bot.Owner]bot.Settings, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	length, err := s.cache.now()
	if err != nil {
		return s.Store.Settings(ctx, owners...)
	}
	if found, ok := s.cache.get(owners); ok {
		return found, nil
	}
	found, err := s.Store.Settings(ctx, owners...)
	if err == nil {
		s.cache.put(length, owners, found)
	}
	return found, err
}

// ChangeSettings implements [bot.SettingsStore].
func (s *Store) ChangeSettings(ctx context.Context, owner bot.Owner, now time.Time, change func(json.RawMessage) (json.RawMessage, error)) error {
	defer s.cache.changed()
	return s.Store.ChangeSettings(ctx, owner, now, change)
}

// Import implements [bot.TransferStore].
func (s *Store) Import(ctx context.Context, next func() (bot.Record, error)) error {
	defer s.cache.changed()
	return s.Store.Import(ctx, next)
}

// Sweep implements [bot.PrivacyStore].
func (s *Store) Sweep(ctx context.Context, now time.Time, keep bot.Retention) (bot.Swept, error) {
	defer s.cache.changed()
	return s.Store.Sweep(ctx, now, keep)
}

// Forget implements [bot.PrivacyStore]. What is deleted is overwritten in the
// file, and the log in which it may still stand is emptied.
func (s *Store) Forget(ctx context.Context, person bot.PersonID) (bot.Forgotten, error) {
	forgotten, err := s.Store.Forget(ctx, person)
	s.cache.changed()
	if err != nil {
		return forgotten, err
	}
	if _, err := s.durable.ExecContext(ctx, "PRAGMA wal_checkpoint(TRUNCATE)"); err != nil {
		// It is deleted all the same, and the log is emptied by itself later.
		slog.Warn("the log of the records is not emptied yet", "file", s.path, "err", err)
	}
	return forgotten, nil
}
