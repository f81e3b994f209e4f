package link

import (
	"context"
	"sync"
	"time"
)

// Session is what it takes to go on where a connection ended.
type Session struct {
	ID       string    `json:"id"`       // empty: there is none, a new one must be begun
	Resume   string    `json:"resume"`   // address to connect to
	Sequence int64     `json:"sequence"` // last event handed over
	Self     UserID    `json:"self"`     // the account, which the platform tells only at the beginning
	Begun    time.Time `json:"begun"`    // last time that a new session was asked for
	Failures int       `json:"failures"` // sessions asked for in a row that came to nothing
}

// Sessions keeps sessions over restarts, so that a new process gets the events
// of the meantime, and so that a process that dies again and again does not use
// up the day's session starts. Names are unique for the application, shard and
// number of shards. It is safe for concurrent use.
type Sessions interface {
	Session(ctx context.Context, name string) (Session, error) // zero where there is none
	KeepSession(ctx context.Context, name string, s Session) error
}

// Leases lets one process at a time hold a name.
type Leases interface {
	// Hold waits until the name is held or ctx ends. The context that it gives
	// ends when the lease is lost or release is called.
	Hold(ctx context.Context, name string) (held context.Context, release func(), err error)
}

// Alone is for a process that shares its work with no other: it keeps sessions
// and leases in its own memory. The zero value is ready.
type Alone struct {
	mu       sync.Mutex
	sessions map[string]Session
	held     map[string]chan struct{}
}

// Session gives what was kept, or the zero session.
func (a *Alone) Session(_ context.Context, name string) (Session, error) {
	a.mu.Lock()
	defer a.mu.Unlock()
	return a.sessions[name], nil
}

// KeepSession keeps the session for as long as the process lives.
func (a *Alone) KeepSession(_ context.Context, name string, s Session) error {
	a.mu.Lock()
	defer a.mu.Unlock()
	if a.sessions == nil {
		a.sessions = map[string]Session{}
	}
	a.sessions[name] = s
	return nil
}

// Hold waits for others in this process only.
func (a *Alone) Hold(ctx context.Context, name string) (context.Context, func(), error) {
	for {
		a.mu.Lock()
		if a.held == nil {
			a.held = map[string]chan struct{}{}
		}
		taken, busy := a.held[name]
		if !busy {
			free := make(chan struct{})
			a.held[name] = free
			a.mu.Unlock()
			held, cancel := context.WithCancel(ctx)
			return held, sync.OnceFunc(func() { cancel(); a.free(name, free) }), nil
		}
		a.mu.Unlock()
		select {
		case <-taken:
		case <-ctx.Done():
			return nil, nil, ctx.Err()
		}
	}
}

func (a *Alone) free(name string, free chan struct{}) {
	a.mu.Lock()
	defer a.mu.Unlock()
	delete(a.held, name)
	close(free)
}
