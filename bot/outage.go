package bot

import (
	"sync"
	"time"
)

// outage remembers that the store is away, so that not every message waits for
// a deadline that the last one already met. While it is away, one call in each
// pause is let through to find out whether it is back.
type outage struct {
	pause time.Duration

	mu    sync.Mutex
	away  bool
	retry time.Time // when the next call may go through
}

// mayCall reports whether a call may go to the store now.
func (o *outage) mayCall(now time.Time) bool {
	o.mu.Lock()
	defer o.mu.Unlock()
	if !o.away {
		return true
	}
	// A retry further ahead than a pause was set before the clock went back.
	if now.Before(o.retry) && o.retry.Sub(now) <= o.pause {
		return false
	}
	o.retry = now.Add(o.pause)
	return true
}

// report takes the outcome of a call, and says whether the store came back or
// went away with it.
func (o *outage) report(now time.Time, err error) (changed bool) {
	o.mu.Lock()
	defer o.mu.Unlock()
	was := o.away
	o.away = err != nil
	if o.away {
		o.retry = now.Add(o.pause)
	}
	return o.away != was
}
