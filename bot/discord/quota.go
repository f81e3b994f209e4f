package discord

import (
	"sync"
	"time"

	lru "github.com/hashicorp/golang-lru/v2"
	"golang.org/x/time/rate"
)

// Quota is how much one person and one channel may ask: so many at once, and
// then one each so often. Zero fields mean the defaults.
type Quota struct {
	PersonBurst  int           // default 8
	PersonEach   time.Duration // default 4 s
	ChannelBurst int           // default 40
	ChannelEach  time.Duration // default 500 ms
}

// noticePause is how long nothing more is said about a quota that is used up.
const noticePause = time.Minute

// verdict is what the quota says to a question.
type verdict int

const (
	fine     verdict = iota
	overOnce         // too many, and to be told so
	over             // too many, and told before
)

// quota counts questions. It remembers the people and channels who asked last.
type quota struct {
	q        Quota
	now      func() time.Time
	mu       sync.Mutex
	people   *lru.Cache[string, *allowance]
	channels *lru.Cache[string, *allowance]
}

type allowance struct {
	left   *rate.Limiter
	noted  time.Time
	hinted bool
}

func newQuota(q Quota, remember int, now func() time.Time) (*quota, error) {
	setDefault(&q.PersonBurst, 8)
	setDefault(&q.PersonEach, 4*time.Second)
	setDefault(&q.ChannelBurst, 40)
	setDefault(&q.ChannelEach, 500*time.Millisecond)
	people, err := lru.New[string, *allowance](remember)
	if err != nil {
		return nil, err
	}
	channels, err := lru.New[string, *allowance](remember)
	if err != nil {
		return nil, err
	}
	return &quota{q: q, now: now, people: people, channels: channels}, nil
}

// take counts one question of a person in a channel.
func (q *quota) take(person, channel string) verdict {
	q.mu.Lock()
	defer q.mu.Unlock()
	now := q.now()
	p := of(q.people, person, q.q.PersonEach, q.q.PersonBurst)
	if !p.left.AllowN(now, 1) {
		return p.refuse(now)
	}
	c := of(q.channels, channel, q.q.ChannelEach, q.q.ChannelBurst)
	if !c.left.AllowN(now, 1) {
		return c.refuse(now)
	}
	return fine
}

// refused is for a question that the quota let through and that found no place.
func (q *quota) refused(person string) verdict {
	q.mu.Lock()
	defer q.mu.Unlock()
	return of(q.people, person, q.q.PersonEach, q.q.PersonBurst).refuse(q.now())
}

func of(all *lru.Cache[string, *allowance], key string, each time.Duration, burst int) *allowance {
	a, ok := all.Get(key)
	if !ok {
		a = &allowance{left: rate.NewLimiter(rate.Every(each), burst)}
		all.Add(key, a)
	}
	return a
}

func (a *allowance) refuse(now time.Time) verdict {
	if a.hinted && now.Sub(a.noted) < noticePause {
		return over
	}
	a.hinted, a.noted = true, now
	return overOnce
}
