package link

import (
	"sync"
	"time"
)

// seen remembers ids for a while, so that what comes twice is known. It holds
// at most two generations of at most max ids each.
type seen struct {
	mu     sync.Mutex
	max    int
	keep   time.Duration
	now    func() time.Time
	turned time.Time
	young  map[string]struct{}
	old    map[string]struct{}
}

// newSeen remembers each id for at least keep, unless more than max come in that time.
func newSeen(max int, keep time.Duration, now func() time.Time) *seen {
	return &seen{max: max, keep: keep, now: now, turned: now(), young: map[string]struct{}{}}
}

// first reports whether id comes for the first time, and remembers it.
func (s *seen) first(id string) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	if now := s.now(); now.Sub(s.turned) >= s.keep || len(s.young) >= s.max {
		s.old, s.young, s.turned = s.young, make(map[string]struct{}), now
	}
	if _, known := s.young[id]; known {
		return false
	}
	if _, known := s.old[id]; known {
		return false
	}
	s.young[id] = struct{}{}
	return true
}
