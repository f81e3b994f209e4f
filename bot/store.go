package bot

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"time"
)

// Errors that callers of a store tell apart. Any other error from a store means
// that it could not be reached, or could not do what was asked: nothing of that
// call may be relied on, and the same call may succeed later.
var (
	// ErrNotFound says that nothing is kept under that key.
	ErrNotFound = errors.New("nothing kept under that key")
	// ErrLeaseHeld says that another holder has the lease.
	ErrLeaseHeld = errors.New("lease held by another")
	// ErrLeaseLost says that the lease ran out or was taken over: whoever
	// held it must stop the work that it guards.
	ErrLeaseLost = errors.New("lease lost")
)

// Store keeps what must outlive a process. It is put together from one small
// interface for each kind of record, so that a caller can ask for less.
//
// # What every store promises
//
//   - All methods are safe for concurrent use, and stop with the context's
//     error when the context ends.
//   - A write is there for every later read, of any process on the same store,
//     once its method has returned nil. What a method calls durable also
//     survives the machine losing power; the rest survives the process being
//     killed.
//   - Documents are JSON objects. A store gives them back with equal content,
//     not necessarily with equal bytes, and knows nothing of what is in them.
//   - Times are kept to the millisecond, in UTC.
//   - Package storetest holds all of this as tests that each store passes.
type Store interface {
	SettingsStore
	ConversationStore
	SeenStore
	LeaseStore
	PrivacyStore
	TransferStore

	// Close gives back what the store holds open. Calls under way may fail.
	Close() error
}

// Scope says whose a settings document is.
type Scope string

// The scopes, from the strongest to the weakest where two set the same thing.
const (
	ScopePerson  Scope = "person"
	ScopeChannel Scope = "channel"
	ScopeShop    Scope = "shop"
)

// Owner is whoever settings belong to. A shop with the empty id is the only shop.
type Owner struct {
	Scope Scope
	ID    string
}

// OwnerOfPerson is the owner of a person's settings.
func OwnerOfPerson(id PersonID) Owner { return Owner{ScopePerson, string(id)} }

// OwnerOfChannel is the owner of a channel's settings.
func OwnerOfChannel(id ChannelID) Owner { return Owner{ScopeChannel, string(id)} }

// OwnerOfShop is the owner of a shop's settings.
func OwnerOfShop(id ShopID) Owner { return Owner{ScopeShop, string(id)} }

// Settings is one owner's settings document.
type Settings struct {
	Document json.RawMessage
	Changed  time.Time // when it was last written
}

// SettingsStore keeps one settings document for each owner.
type SettingsStore interface {
	// Settings returns the documents of those of the owners that have one, all
	// as they stood at one moment. An owner without one is missing from the map.
	Settings(ctx context.Context, owners ...Owner) (map[Owner]Settings, error)

	// ChangeSettings replaces an owner's document by what change makes of the
	// old one (nil where there is none); nil from change removes the document.
	// It is atomic: of two changes at once, the later one is given what the
	// earlier one made. Change may be called more than once; it must not call
	// the store. It should alter only the fields that it knows, so that an
	// older program keeps the fields of a newer one. An error from change is
	// returned as it is, and nothing is written. The write is durable.
	ChangeSettings(ctx context.Context, owner Owner, now time.Time, change func(old json.RawMessage) (json.RawMessage, error)) error
}

// Conversation is what one person is in the middle of in one channel.
type Conversation struct {
	ID     ConversationID
	Person PersonID
	State  json.RawMessage
	At     time.Time // when its last message was answered
}

// ConversationStore keeps the open conversations.
type ConversationStore interface {
	// Conversation returns ErrNotFound where none is kept.
	Conversation(ctx context.Context, id ConversationID) (Conversation, error)
	// SaveConversation puts c in the place of what was kept under its ID.
	SaveConversation(ctx context.Context, c Conversation) error
}

// SeenStore remembers which messages were taken on, so that each is answered
// at most once, whichever process receives it.
type SeenStore interface {
	// Claim gives the message to claimant, and reports whether it is the
	// claimant's: false means that somebody else claimed it before. Claiming
	// again with the same claimant is true again, so that a call whose outcome
	// is unknown may be repeated. Claimants of different attempts must differ.
	Claim(ctx context.Context, id MessageID, claimant string, now time.Time) (bool, error)
}

// Lease is the right to do work that only one process may do at a time.
type Lease struct {
	Name   string
	Holder string
	// Token grows with each change of holder. Work that leaves traces
	// elsewhere passes it along, so that a late trace of an earlier holder is
	// told from a present one's.
	Token   int64
	Expires time.Time // by the store's clock
}

// LeaseStore hands out leases. Whether a lease has run out is judged by the
// store's own clock, never by that of the process that asks. Where that clock
// goes back, a lease is held for no longer than its time to live from then on.
type LeaseStore interface {
	// Acquire takes the lease for ttl if nobody holds it, and returns
	// ErrLeaseHeld if somebody does, even the same holder.
	Acquire(ctx context.Context, name, holder string, ttl time.Duration) (Lease, error)
	// Renew holds the lease for ttl from now on. ErrLeaseLost says that it ran
	// out, was given back or taken over, and must not be relied on any more.
	Renew(ctx context.Context, l Lease, ttl time.Duration) (Lease, error)
	// Release gives the lease back. A lease that is no longer held is left alone.
	Release(ctx context.Context, l Lease) error
}

// Forgotten counts what was deleted of one person.
type Forgotten struct {
	Settings      int
	Conversations int
}

// Nothing reports whether there was nothing to delete.
func (f Forgotten) Nothing() bool { return f == Forgotten{} }

// Retention says how old each kind of record may grow. Zero keeps it for ever.
type Retention struct {
	PersonSettings time.Duration // since they were last changed or used
	Conversations  time.Duration // since the last answer
	Seen           time.Duration // since the message was claimed
}

// Swept counts what a sweep deleted.
type Swept struct {
	PersonSettings int
	Conversations  int
	Seen           int
}

// PrivacyStore deletes what is no longer to be kept.
type PrivacyStore interface {
	// Forget deletes every record that belongs to the person, all or nothing,
	// durably. Claimed message ids name no person; they run out by retention.
	Forget(ctx context.Context, person PersonID) (Forgotten, error)
	// Sweep deletes what is older at now than the retention allows. It returns
	// a *ClockError, and deletes nothing, where the store holds records from
	// well after now: then the clock went back, and ages mean nothing.
	Sweep(ctx context.Context, now time.Time, keep Retention) (Swept, error)
}

// ClockTolerance is how far ahead of the clock a record may lie before a sweep
// takes the clock for wrong. Clocks that are set over the network differ by
// much less; a clock that went back by less makes no difference to retention.
const ClockTolerance = time.Minute

// ClockError says that the clock stands before the newest record.
type ClockError struct {
	Now, Newest time.Time
}

func (e *ClockError) Error() string {
	return fmt.Sprintf("the clock says %s, but a record was written at %s: the clock went back, so nothing is deleted by age",
		e.Now.UTC().Format(time.RFC3339), e.Newest.UTC().Format(time.RFC3339))
}

// TransferStore moves a shop's data out and in.
type TransferStore interface {
	// Export gives every record but leases to yield, all as they stood at one
	// moment, and stops with yield's error.
	Export(ctx context.Context, yield func(Record) error) error
	// Import puts the records that next gives in the place of those with the
	// same keys, all or nothing, durably. Next ends with io.EOF.
	Import(ctx context.Context, next func() (Record, error)) error
	// Backup writes a consistent copy to a new file while the store is in use.
	// It refuses to overwrite a file.
	Backup(ctx context.Context, path string) error
}
