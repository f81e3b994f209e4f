package link

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"sync"
	"sync/atomic"
	"time"

	"golang.org/x/sync/errgroup"
)

// GatewayOptions are what the gateway can be told. The zero value of a field
// means its default.
type GatewayOptions struct {
	Listen    bool     // read messages that do not name the account; needs the message-content right
	Shards    int      // over all processes; default: as many as the platform recommends
	PerPeer   int      // shards that this process takes at most; default: all
	Sessions  Sessions // default: in memory, and sessions end with the process
	Leases    Leases   // default: in memory
	Times     Times
	Log       *slog.Logger
	Remembers int // events known as handed over, by id; default 20,000
}

// Times are the gateway's waits. Zero fields mean the defaults.
type Times struct {
	Greet   time.Duration // for the server to speak first, and to accept a session; 20 s
	Retry   time.Duration // first pause before connecting again; 1 s
	Longest time.Duration // longest such pause; 2 min
	Stable  time.Duration // a connection that lives so long was a success; 30 s
	Fresh   time.Duration // between a lost session and a new one; 1 to 5 s at random by the platform's wish: 3 s
	Between time.Duration // between two sessions asked for; 5 s
}

func (t Times) withDefaults() Times {
	set := func(d *time.Duration, to time.Duration) {
		if *d <= 0 {
			*d = to
		}
	}
	set(&t.Greet, 20*time.Second)
	set(&t.Retry, time.Second)
	set(&t.Longest, 2*time.Minute)
	set(&t.Stable, 30*time.Second)
	set(&t.Fresh, 3*time.Second)
	set(&t.Between, 5*time.Second)
	return t
}

// Gateway receives. Make it with [NewGateway].
type Gateway struct {
	client *Client
	events Events
	o      GatewayOptions
	log    *slog.Logger
	seen   *seen
	self   atomic.Value // UserID

	starts  sync.WaitGroup // places in the queue for new sessions that are being given back
	goodbye bool           // nobody goes on with a session when the process ends

	mu     sync.Mutex
	states map[int]State
}

// State is how a shard does.
type State string

// The states of a shard.
const (
	Waiting    State = "waiting for its lease"
	Connecting State = "connecting"
	Connected  State = "connected"
)

// NewGateway makes a gateway that hands what happens to events.
func NewGateway(c *Client, events Events, o GatewayOptions) *Gateway {
	alone := &Alone{}
	goodbye := o.Sessions == nil
	if goodbye {
		o.Sessions = alone
	}
	if o.Leases == nil {
		o.Leases = alone
	}
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
	if o.Remembers <= 0 {
		o.Remembers = 20_000
	}
	o.Times = o.Times.withDefaults()
	return &Gateway{
		client: c,
		events: events,
		o:      o,
		log:    o.Log,
		seen:   newSeen(o.Remembers, 10*time.Minute, time.Now),
		states: map[int]State{},

		goodbye: goodbye,
	}
}

// States gives how each shard of this process does.
func (g *Gateway) States() map[int]State {
	g.mu.Lock()
	defer g.mu.Unlock()
	copied := make(map[int]State, len(g.states))
	for id, s := range g.states {
		copied[id] = s
	}
	return copied
}

func (g *Gateway) state(id int, s State) {
	g.mu.Lock()
	defer g.mu.Unlock()
	g.states[id] = s
}

// Run connects and receives until ctx ends, which is no error, or until the
// platform says that going on is useless ([Stopped], [ErrRevoked]).
func (g *Gateway) Run(ctx context.Context) error {
	entry, err := g.entry(ctx)
	if err != nil {
		return ignoreEnd(ctx, err)
	}
	count := g.o.Shards
	if count <= 0 {
		count = max(entry.Shards, 1)
	}
	mine := count
	if g.o.PerPeer > 0 {
		mine = min(mine, g.o.PerPeer)
	}
	defer g.starts.Wait()
	places := make(chan struct{}, mine)
	group, ctx := errgroup.WithContext(ctx)
	for id := range count {
		s := &shard{gateway: g, id: id, count: count, log: g.log.With("shard", id)}
		group.Go(func() error { return g.share(ctx, s, places) })
	}
	return ignoreEnd(ctx, group.Wait())
}

func ignoreEnd(ctx context.Context, err error) error {
	if ctx.Err() != nil && errors.Is(err, ctx.Err()) {
		return nil
	}
	return err
}

// share runs a shard whenever this process has a place for it and holds its lease.
func (g *Gateway) share(ctx context.Context, s *shard, places chan struct{}) error {
	name := fmt.Sprintf("chat shard %d of %d", s.id, s.count)
	for ctx.Err() == nil {
		g.state(s.id, Waiting)
		if len(places) == cap(places) { // enough shards here: leave it to another process
			_ = sleep(ctx, g.o.Times.Retry)
			continue
		}
		held, release, err := g.o.Leases.Hold(ctx, name)
		if ctx.Err() != nil {
			return nil
		}
		if err != nil {
			g.log.Warn("lease cannot be had; trying again", "lease", name, "error", err)
			_ = sleep(ctx, g.o.Times.Retry) // the loop sees the end of ctx
			continue
		}
		select {
		case places <- struct{}{}:
			err = s.run(held)
			<-places
		default:
		}
		release()
		if err != nil {
			return err
		}
		_ = sleep(ctx, g.o.Times.Retry)
	}
	return nil
}

// entry asks where to connect to until the platform answers.
func (g *Gateway) entry(ctx context.Context) (Entry, error) {
	for pause := g.o.Times.Retry; ; pause = min(2*pause, g.o.Times.Longest) {
		e, err := g.client.Entry(ctx)
		var refused *Refusal
		if err == nil || errors.Is(err, ErrRevoked) || errors.As(err, &refused) && refused.Status < 500 {
			return e, err
		}
		g.log.Warn("chat platform cannot be reached; trying again", "error", err)
		if err := sleep(ctx, jitter(pause)); err != nil {
			return Entry{}, err
		}
	}
}

// turn waits until a new session may be asked for: one at a time in each of the
// platform's groups over all processes, and none when the day's starts run out.
func (g *Gateway) turn(ctx context.Context, id int) (done func(), err error) {
	for {
		e, err := g.entry(ctx)
		if err != nil {
			return nil, err
		}
		if e.Starts.Remaining > 0 {
			group := id % max(e.Starts.Concurrency, 1)
			_, release, err := g.o.Leases.Hold(ctx, fmt.Sprintf("chat session start %d", group))
			return release, err
		}
		wait := time.Duration(e.Starts.ResetAfter) * time.Millisecond
		g.log.Error("no session starts left today", "wait", wait)
		if err := sleep(ctx, wait+g.o.Times.Between); err != nil {
			return nil, err
		}
	}
}

// Self is the account, or empty before the platform has told it.
func (g *Gateway) Self() UserID {
	self, _ := g.self.Load().(UserID)
	return self
}
