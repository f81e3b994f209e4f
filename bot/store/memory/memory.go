// Package memory keeps records in the process. It is a full store for tests and
// for runs that are to leave nothing behind: it keeps every promise of
// [bot.Store] but to outlive the process, and holds a bounded number of
// conversations and message ids, letting go of the least lately used ones.
package memory

import (
	"context"
	"encoding/json"
	"errors"
	"io"
	"slices"
	"sync"
	"time"

	"github.com/hashicorp/golang-lru/v2/simplelru"

	"counterhand/bot"
)

// Bounds on what a store holds.
const (
	MaxConversations = 100_000
	MaxSeen          = 100_000
)

// Store is a store in memory. Make one with [Open].
type Store struct {
	now func() time.Time

	mu            sync.Mutex
	settings      map[bot.Owner]bot.Settings
	conversations *simplelru.LRU[bot.ConversationID, conversation]
	seen          *simplelru.LRU[bot.MessageID, claim]
	leases        map[string]lease
}

type conversation struct {
	person bot.PersonID
	state  string
	at     int64 // milliseconds since 1970
}

type claim struct {
	claimant string
	at       int64 // milliseconds since 1970
}

type lease struct {
	holder  string
	token   int64
	expires time.Time
	ttl     time.Duration
}

var _ bot.Store = (*Store)(nil)

// Open makes an empty store. Leases are judged by the clock now.
func Open(now func() time.Time) *Store {
	conversations, err := simplelru.NewLRU[bot.ConversationID, conversation](MaxConversations, nil)
	if err != nil {
		panic(err) // the bound is a positive constant
	}
	seen, err := simplelru.NewLRU[bot.MessageID, claim](MaxSeen, nil)
	if err != nil {
		panic(err) // the bound is a positive constant
	}
	return &Store{
		now:           now,
		settings:      make(map[bot.Owner]bot.Settings),
		conversations: conversations,
		seen:          seen,
		leases:        make(map[string]lease),
	}
}

// Close does nothing; what was kept is gone when the store is.
func (s *Store) Close() error { return nil }

// Settings implements [bot.SettingsStore].
func (s *Store) Settings(ctx context.Context, owners ...bot.Owner) (map[bot.Owner]bot.Settings, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	found := make(map[bot.Owner]bot.Settings, len(owners))
	for _, o := range owners {
		if kept, ok := s.settings[o]; ok {
			kept.Document = slices.Clone(kept.Document)
			found[o] = kept
		}
	}
	return found, nil
}

// ChangeSettings implements [bot.SettingsStore].
func (s *Store) ChangeSettings(ctx context.Context, owner bot.Owner, now time.Time, change func(json.RawMessage) (json.RawMessage, error)) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	changed, err := change(slices.Clone(s.settings[owner].Document))
	if err != nil {
		return err
	}
	if changed == nil {
		delete(s.settings, owner)
		return nil
	}
	s.settings[owner] = bot.Settings{Document: slices.Clone(changed), Changed: millis(now)}
	return nil
}

// Conversation implements [bot.ConversationStore].
func (s *Store) Conversation(ctx context.Context, id bot.ConversationID) (bot.Conversation, error) {
	if err := ctx.Err(); err != nil {
		return bot.Conversation{}, err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	c, ok := s.conversations.Get(id)
	if !ok {
		return bot.Conversation{}, bot.ErrNotFound
	}
	return c.out(id), nil
}

func (c conversation) out(id bot.ConversationID) bot.Conversation {
	return bot.Conversation{ID: id, Person: c.person, State: json.RawMessage(c.state), At: time.UnixMilli(c.at).UTC()}
}

// SaveConversation implements [bot.ConversationStore].
func (s *Store) SaveConversation(ctx context.Context, c bot.Conversation) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	s.conversations.Add(c.ID, conversation{person: c.Person, state: string(c.State), at: c.At.UnixMilli()})
	return nil
}

// Claim implements [bot.SeenStore].
func (s *Store) Claim(ctx context.Context, id bot.MessageID, claimant string, now time.Time) (bool, error) {
	if err := ctx.Err(); err != nil {
		return false, err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if c, ok := s.seen.Get(id); ok {
		return c.claimant == claimant, nil
	}
	s.seen.Add(id, claim{claimant, now.UnixMilli()})
	return true, nil
}

// Acquire implements [bot.LeaseStore].
func (s *Store) Acquire(ctx context.Context, name, holder string, ttl time.Duration) (bot.Lease, error) {
	if err := ctx.Err(); err != nil {
		return bot.Lease{}, err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	now, l := s.now(), s.leases[name]
	if now.Before(l.expires) {
		if latest := now.Add(l.ttl); l.expires.After(latest) { // the clock went back
			l.expires = latest
			s.leases[name] = l
		}
		return bot.Lease{}, bot.ErrLeaseHeld
	}
	l = lease{holder: holder, token: l.token + 1, expires: now.Add(ttl), ttl: ttl}
	s.leases[name] = l
	return l.out(name), nil
}

func (l lease) out(name string) bot.Lease {
	return bot.Lease{Name: name, Holder: l.holder, Token: l.token, Expires: l.expires}
}

// Renew implements [bot.LeaseStore].
func (s *Store) Renew(ctx context.Context, held bot.Lease, ttl time.Duration) (bot.Lease, error) {
	if err := ctx.Err(); err != nil {
		return bot.Lease{}, err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	now, l := s.now(), s.leases[held.Name]
	if l.token != held.Token || !now.Before(l.expires) {
		return bot.Lease{}, bot.ErrLeaseLost
	}
	l.expires, l.ttl = now.Add(ttl), ttl
	s.leases[held.Name] = l
	return l.out(held.Name), nil
}

// Release implements [bot.LeaseStore].
func (s *Store) Release(ctx context.Context, held bot.Lease) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if l := s.leases[held.Name]; l.token == held.Token {
		l.expires = time.Time{}
		s.leases[held.Name] = l
	}
	return nil
}

// Forget implements [bot.PrivacyStore].
func (s *Store) Forget(ctx context.Context, person bot.PersonID) (bot.Forgotten, error) {
	if err := ctx.Err(); err != nil {
		return bot.Forgotten{}, err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	var f bot.Forgotten
	if owner := bot.OwnerOfPerson(person); s.settings[owner].Document != nil {
		delete(s.settings, owner)
		f.Settings = 1
	}
	f.Conversations = s.dropConversations(func(c conversation) bool { return c.person == person })
	return f, nil
}

func (s *Store) dropConversations(drop func(conversation) bool) (dropped int) {
	for _, id := range s.conversations.Keys() {
		if c, _ := s.conversations.Peek(id); drop(c) {
			s.conversations.Remove(id)
			dropped++
		}
	}
	return dropped
}

// Sweep implements [bot.PrivacyStore].
func (s *Store) Sweep(ctx context.Context, now time.Time, keep bot.Retention) (bot.Swept, error) {
	if err := ctx.Err(); err != nil {
		return bot.Swept{}, err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if newest := s.newest(); newest.After(now.Add(bot.ClockTolerance)) {
		return bot.Swept{}, &bot.ClockError{Now: now, Newest: newest}
	}
	var swept bot.Swept
	if keep.PersonSettings > 0 {
		for owner, kept := range s.settings {
			if owner.Scope == bot.ScopePerson && now.Sub(kept.Changed) > keep.PersonSettings {
				delete(s.settings, owner)
				swept.PersonSettings++
			}
		}
	}
	if keep.Conversations > 0 {
		before := now.Add(-keep.Conversations).UnixMilli()
		swept.Conversations = s.dropConversations(func(c conversation) bool { return c.at < before })
	}
	if keep.Seen > 0 {
		before := now.Add(-keep.Seen).UnixMilli()
		for _, id := range s.seen.Keys() {
			if c, _ := s.seen.Peek(id); c.at < before {
				s.seen.Remove(id)
				swept.Seen++
			}
		}
	}
	return swept, nil
}

// newest returns the time of the latest record.
func (s *Store) newest() time.Time {
	var newest time.Time
	for _, kept := range s.settings {
		newest = later(newest, kept.Changed)
	}
	for _, c := range s.conversations.Values() {
		newest = later(newest, time.UnixMilli(c.at))
	}
	for _, c := range s.seen.Values() {
		newest = later(newest, time.UnixMilli(c.at))
	}
	return newest
}

func later(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}

// Export implements [bot.TransferStore].
func (s *Store) Export(ctx context.Context, yield func(bot.Record) error) error {
	if err := ctx.Err(); err != nil {
		return err
	}
	for _, r := range s.records() {
		if err := yield(r); err != nil {
			return err
		}
	}
	return nil
}

// records copies what is kept, so that a slow reader holds nobody up.
func (s *Store) records() []bot.Record {
	s.mu.Lock()
	defer s.mu.Unlock()
	var all []bot.Record
	for owner, kept := range s.settings {
		all = append(all, bot.Record{Settings: &bot.SettingsRecord{
			Scope: owner.Scope, ID: owner.ID, Changed: kept.Changed, Document: slices.Clone(kept.Document)}})
	}
	for _, id := range s.conversations.Keys() {
		c, _ := s.conversations.Peek(id)
		all = append(all, bot.Record{Conversation: &bot.ConversationRecord{
			ID: id, Person: c.person, At: time.UnixMilli(c.at).UTC(), State: json.RawMessage(c.state)}})
	}
	for _, id := range s.seen.Keys() {
		c, _ := s.seen.Peek(id)
		all = append(all, bot.Record{Seen: &bot.SeenRecord{ID: id, Claimant: c.claimant, At: time.UnixMilli(c.at).UTC()}})
	}
	return all
}

// Import implements [bot.TransferStore].
func (s *Store) Import(ctx context.Context, next func() (bot.Record, error)) error {
	var all []bot.Record
	for {
		r, err := next()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return err
		}
		all = append(all, r)
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, r := range all {
		s.put(r)
	}
	return nil
}

func (s *Store) put(r bot.Record) {
	switch {
	case r.Settings != nil:
		s.settings[bot.Owner{Scope: r.Settings.Scope, ID: r.Settings.ID}] =
			bot.Settings{Document: slices.Clone(r.Settings.Document), Changed: millis(r.Settings.Changed)}
	case r.Conversation != nil:
		c := r.Conversation
		s.conversations.Add(c.ID, conversation{person: c.Person, state: string(c.State), at: c.At.UnixMilli()})
	case r.Seen != nil:
		s.seen.Add(r.Seen.ID, claim{r.Seen.Claimant, r.Seen.At.UnixMilli()})
	}
}

// Backup implements [bot.TransferStore]: it writes the records as JSON lines.
func (s *Store) Backup(ctx context.Context, path string) error {
	return bot.ExportFile(ctx, s, path)
}

func millis(t time.Time) time.Time { return time.UnixMilli(t.UnixMilli()).UTC() }
