package link

import (
	"context"
	"net/http"
	"strconv"
	"sync"
	"time"

	"golang.org/x/time/rate"
)

// limiter keeps to the platform's request limits: one bucket for each of its
// bucket names and channel (or guild, or interaction), a brake over all of them,
// and a count of refused requests.
type limiter struct {
	all *rate.Limiter

	mu      sync.Mutex
	paused  time.Time         // no request before this, by the platform's word
	names   map[string]string // route to the platform's bucket name
	buckets map[string]*bucket
	sweepAt int // number of buckets at which idle ones are dropped

	refused      int
	refusedSince time.Time
}

const (
	keptBuckets   = 2048
	maxWaiting    = 256 // requests that wait for one bucket
	refusalWindow = 10 * time.Minute
	maxRefused    = 8000 // of the 10,000 in the window that cost a ban
)

// bucket is one request limit. Until the platform has told its size, one
// request at a time tries it out.
type bucket struct {
	sized     bool
	limit     int // -1 for none
	remaining int
	reset     time.Time
	inFlight  int
	waiting   int
	changed   chan struct{} // closed when a request ends
}

func newLimiter(perSecond int) *limiter {
	return &limiter{
		all:     rate.NewLimiter(rate.Limit(perSecond), perSecond),
		names:   map[string]string{},
		buckets: map[string]*bucket{},
		sweepAt: keptBuckets,
	}
}

// ticket is the permission to send one request.
type ticket struct {
	route, major string
	bucket       *bucket
	exempt       bool
}

// take waits until a request may be sent. Exempt requests (answers to
// interactions) are outside the brake over all.
func (l *limiter) take(ctx context.Context, route, major string, exempt bool) (ticket, error) {
	if !exempt {
		if err := l.all.Wait(ctx); err != nil {
			return ticket{}, err
		}
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	b := l.bucket(route, major)
	if b.waiting >= maxWaiting {
		return ticket{}, ErrBusy
	}
	b.waiting++
	defer func() { b.waiting-- }()
	for {
		if l.holding(time.Now()) {
			return ticket{}, ErrHeld
		}
		until, free := b.open(time.Now())
		if !exempt && l.paused.After(time.Now()) {
			until, free = l.paused, false
		}
		if free {
			b.inFlight++
			return ticket{route: route, major: major, bucket: b, exempt: exempt}, nil
		}
		if err := l.wait(ctx, b, until); err != nil {
			return ticket{}, err
		}
	}
}

// wait gives up the lock until the bucket changes, or until the given time.
func (l *limiter) wait(ctx context.Context, b *bucket, until time.Time) error {
	if b.changed == nil {
		b.changed = make(chan struct{})
	}
	changed := b.changed
	l.mu.Unlock()
	defer l.mu.Lock()
	var alarm <-chan time.Time
	if !until.IsZero() {
		timer := time.NewTimer(time.Until(until))
		defer timer.Stop()
		alarm = timer.C
	}
	select {
	case <-changed:
		return nil
	case <-alarm:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

// open reports whether a request may go now, or else when to look again (zero:
// when another request has ended).
func (b *bucket) open(now time.Time) (until time.Time, free bool) {
	if b.sized && !now.Before(b.reset) {
		b.remaining = b.limit
	}
	switch {
	case !b.sized && now.Before(b.reset):
		return b.reset, false
	case !b.sized:
		return time.Time{}, b.inFlight == 0
	case b.limit < 0:
		return b.reset, !now.Before(b.reset)
	case b.remaining > b.inFlight:
		return time.Time{}, true
	case b.remaining > 0 || !now.Before(b.reset):
		return time.Time{}, false
	}
	return b.reset, false
}

func (l *limiter) bucket(route, major string) *bucket {
	name := route
	if known, ok := l.names[route]; ok {
		name = known
	}
	return l.named(name + " " + major)
}

func (l *limiter) named(key string) *bucket {
	if b, ok := l.buckets[key]; ok {
		return b
	}
	if len(l.buckets) >= l.sweepAt {
		l.sweep(time.Now())
	}
	b := &bucket{}
	l.buckets[key] = b
	return b
}

// sweep forgets buckets that say no more than a new one would.
func (l *limiter) sweep(now time.Time) {
	for key, b := range l.buckets {
		if b.inFlight == 0 && b.waiting == 0 && !now.Before(b.reset) {
			delete(l.buckets, key)
		}
	}
	l.sweepAt = max(keptBuckets, 2*len(l.buckets))
}

// done gives the ticket back with what the response's headers say; nil where
// there was no response.
func (l *limiter) done(t ticket, h http.Header) {
	l.mu.Lock()
	defer l.mu.Unlock()
	t.bucket.inFlight--
	t.bucket.signal()
	if h == nil {
		return
	}
	b := t.bucket
	if name := h.Get("X-RateLimit-Bucket"); name != "" {
		l.names[t.route] = name
		b = l.named(name + " " + t.major)
	}
	b.learn(h, time.Now())
	b.signal()
}

func (b *bucket) signal() {
	if b.changed != nil {
		close(b.changed)
		b.changed = nil
	}
}

// learn takes over the platform's counts. Of answers that come out of order the
// lower count is believed until the reset.
func (b *bucket) learn(h http.Header, now time.Time) {
	limit, err := strconv.Atoi(h.Get("X-RateLimit-Limit"))
	if err != nil {
		if !b.sized {
			b.sized, b.limit = true, -1
		}
		return
	}
	remaining, errLeft := strconv.Atoi(h.Get("X-RateLimit-Remaining"))
	after, errAfter := seconds(h.Get("X-RateLimit-Reset-After"))
	if errLeft != nil || errAfter != nil {
		return
	}
	fresh := !b.sized || b.limit < 0 || !now.Before(b.reset)
	b.sized, b.limit = true, limit
	if fresh || remaining < b.remaining {
		b.remaining = remaining
	}
	if reset := now.Add(after); fresh || reset.After(b.reset) {
		b.reset = reset
	}
}

// hold closes the ticket's bucket, or everything, for a while.
func (l *limiter) hold(t ticket, everything bool, d time.Duration) {
	l.mu.Lock()
	defer l.mu.Unlock()
	until := time.Now().Add(d)
	if everything {
		if until.After(l.paused) {
			l.paused = until
		}
		return
	}
	b := l.bucket(t.route, t.major)
	b.remaining = 0
	if until.After(b.reset) {
		b.reset = until
	}
}

// refuse counts a request that was refused in a way that can end in a ban.
func (l *limiter) refuse() {
	l.mu.Lock()
	defer l.mu.Unlock()
	if now := time.Now(); now.Sub(l.refusedSince) > refusalWindow {
		l.refused, l.refusedSince = 0, now
	}
	l.refused++
}

func (l *limiter) holding(now time.Time) bool {
	return l.refused >= maxRefused && now.Sub(l.refusedSince) <= refusalWindow
}

func (l *limiter) size() int {
	l.mu.Lock()
	defer l.mu.Unlock()
	return len(l.buckets)
}

func seconds(s string) (time.Duration, error) {
	f, err := strconv.ParseFloat(s, 64)
	if err != nil || f < 0 || f > 86400*365 {
		return 0, strconv.ErrSyntax
	}
	return time.Duration(f * float64(time.Second)), nil
}
