package storetest

import (
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
)

// clock is a clock that the test sets.
type clock struct {
	mu  sync.Mutex
	now time.Time
}

func (c *clock) Now() time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.now
}

func (c *clock) move(by time.Duration) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.now = c.now.Add(by)
}

// RunClock runs what needs a store whose own clock can be set.
func RunClock(t *testing.T, empty func(t *testing.T, now func() time.Time) bot.Store) {
	t.Run("a lease is held for its time and no longer", func(t *testing.T) {
		c := &clock{now: noon}
		s := empty(t, c.Now)
		first, err := s.Acquire(t.Context(), "timer", "a", 10*time.Second)
		require.NoError(t, err)
		assert.Equal(t, noon.Add(10*time.Second), first.Expires.UTC())
		c.move(10*time.Second - time.Millisecond)
		_, err = s.Acquire(t.Context(), "timer", "b", 10*time.Second)
		assert.ErrorIs(t, err, bot.ErrLeaseHeld)
		c.move(time.Millisecond)
		_, err = s.Renew(t.Context(), first, 10*time.Second)
		assert.ErrorIs(t, err, bot.ErrLeaseLost, "it ran out, though nobody took it")
		_, err = s.Acquire(t.Context(), "timer", "b", 10*time.Second)
		assert.NoError(t, err)
	})

	t.Run("a clock that went back does not keep a dead holder's lease", func(t *testing.T) {
		c := &clock{now: noon}
		s := empty(t, c.Now)
		_, err := s.Acquire(t.Context(), "timer", "dead", 10*time.Second)
		require.NoError(t, err)
		c.move(-time.Hour)
		_, err = s.Acquire(t.Context(), "timer", "b", 10*time.Second)
		assert.ErrorIs(t, err, bot.ErrLeaseHeld, "its holder may be alive")
		c.move(10 * time.Second)
		_, err = s.Acquire(t.Context(), "timer", "b", 10*time.Second)
		assert.NoError(t, err)
	})

	t.Run("a clock that went back does not take a live holder's lease", func(t *testing.T) {
		c := &clock{now: noon}
		s := empty(t, c.Now)
		held, err := s.Acquire(t.Context(), "timer", "alive", 10*time.Second)
		require.NoError(t, err)
		c.move(-time.Hour)
		for range 5 {
			_, err = s.Acquire(t.Context(), "timer", "b", 10*time.Second)
			require.ErrorIs(t, err, bot.ErrLeaseHeld)
			c.move(5 * time.Second)
			held, err = s.Renew(t.Context(), held, 10*time.Second)
			require.NoError(t, err)
		}
	})

	t.Run("records from after the clock are kept and read", func(t *testing.T) {
		c := &clock{now: noon}
		s := empty(t, c.Now)
		fill(t, s, samples())
		c.move(-24 * time.Hour)
		got, err := s.Conversation(t.Context(), "chat:9/chat:1001")
		require.NoError(t, err)
		assert.Equal(t, noon, got.At)
		mine, err := s.Claim(t.Context(), "chat:5001", "c/1", c.Now())
		require.NoError(t, err)
		assert.False(t, mine)
	})
}
