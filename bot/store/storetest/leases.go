package storetest

import (
	"context"
	"errors"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
)

// Times to live: one that outlasts any test, one that a test waits for.
const (
	long  = time.Hour
	short = 50 * time.Millisecond
)

// acquireWhenFree tries until the lease is free; the store judges when that is.
func acquireWhenFree(ctx context.Context, s bot.LeaseStore, name, holder string, ttl time.Duration) (bot.Lease, error) {
	for {
		l, err := s.Acquire(ctx, name, holder, ttl)
		if !errors.Is(err, bot.ErrLeaseHeld) {
			return l, err
		}
	}
}

func testLeases(t *testing.T, empty Factory) {
	t.Run("one holder at a time", func(t *testing.T) {
		s := empty(t)
		l, err := s.Acquire(t.Context(), "timer", "a", long)
		require.NoError(t, err)
		assert.Equal(t, "timer", l.Name)
		assert.Equal(t, "a", l.Holder)
		for _, other := range []string{"a", "b"} {
			_, err = s.Acquire(t.Context(), "timer", other, long)
			assert.ErrorIs(t, err, bot.ErrLeaseHeld, "for %s", other)
		}
		_, err = s.Acquire(t.Context(), "another timer", "b", long)
		assert.NoError(t, err)
	})

	t.Run("a released lease is free, and its token has grown", func(t *testing.T) {
		s := empty(t)
		first, err := s.Acquire(t.Context(), "timer", "a", long)
		require.NoError(t, err)
		require.NoError(t, s.Release(t.Context(), first))
		_, err = s.Renew(t.Context(), first, long)
		assert.ErrorIs(t, err, bot.ErrLeaseLost)
		second, err := s.Acquire(t.Context(), "timer", "b", long)
		require.NoError(t, err)
		assert.Greater(t, second.Token, first.Token)
	})

	t.Run("a lease that ran out is taken over, and is lost to its holder", func(t *testing.T) {
		s := empty(t)
		first, err := s.Acquire(t.Context(), "timer", "a", short)
		require.NoError(t, err)
		second, err := acquireWhenFree(t.Context(), s, "timer", "b", long)
		require.NoError(t, err)
		assert.Greater(t, second.Token, first.Token)
		_, err = s.Renew(t.Context(), first, long)
		assert.ErrorIs(t, err, bot.ErrLeaseLost)

		require.NoError(t, s.Release(t.Context(), first), "nothing of the first holder's to release")
		_, err = s.Acquire(t.Context(), "timer", "c", long)
		assert.ErrorIs(t, err, bot.ErrLeaseHeld, "the second holder still has it")
	})

	t.Run("a renewed lease is held on", func(t *testing.T) {
		s := empty(t)
		first, err := s.Acquire(t.Context(), "timer", "a", time.Minute)
		require.NoError(t, err)
		renewed, err := s.Renew(t.Context(), first, long)
		require.NoError(t, err)
		assert.Equal(t, first.Token, renewed.Token)
		assert.True(t, renewed.Expires.After(first.Expires))
		_, err = s.Acquire(t.Context(), "timer", "b", long)
		assert.ErrorIs(t, err, bot.ErrLeaseHeld)
	})

	t.Run("a lease that was never held cannot be renewed", func(t *testing.T) {
		s := empty(t)
		_, err := s.Renew(t.Context(), bot.Lease{Name: "timer", Holder: "a", Token: 1}, long)
		assert.ErrorIs(t, err, bot.ErrLeaseLost)
		assert.NoError(t, s.Release(t.Context(), bot.Lease{Name: "timer", Holder: "a", Token: 1}))
	})

	t.Run("never two holders at once", func(t *testing.T) {
		s := empty(t)
		var holders, rounds atomic.Int32
		var wg sync.WaitGroup
		for range 4 {
			wg.Go(func() {
				for range 10 {
					l, err := acquireWhenFree(t.Context(), s, "timer", "somebody", long)
					if !assert.NoError(t, err) {
						return
					}
					assert.EqualValues(t, 1, holders.Add(1))
					rounds.Add(1)
					holders.Add(-1)
					assert.NoError(t, s.Release(t.Context(), l))
				}
			})
		}
		wg.Wait()
		assert.EqualValues(t, 40, rounds.Load())
	})
}
