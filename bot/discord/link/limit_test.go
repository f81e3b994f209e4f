package link

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func headers(pairs ...string) http.Header {
	h := http.Header{}
	for n := 0; n < len(pairs); n += 2 {
		h.Set(pairs[n], pairs[n+1])
	}
	return h
}

// Trap 14: the library keeps a bucket for every interaction that it answered.
func TestBucketsDoNotPileUp(t *testing.T) {
	l := newLimiter(1_000_000)
	for n := range 20_000 {
		tk, err := l.take(t.Context(), "POST /interactions/{}/{}/callback", fmt.Sprint(n), true)
		require.NoError(t, err)
		l.done(tk, headers())
	}
	assert.LessOrEqual(t, l.size(), keptBuckets)
}

func TestBucketOfTheSameNameIsShared(t *testing.T) {
	l := newLimiter(1_000_000)
	limits := headers("X-RateLimit-Bucket", "b", "X-RateLimit-Limit", "2", "X-RateLimit-Remaining", "1", "X-RateLimit-Reset-After", "3600")
	for _, route := range []string{"one", "two"} {
		tk, err := l.take(t.Context(), route, "channel", false)
		require.NoError(t, err)
		l.done(tk, limits)
		limits.Set("X-RateLimit-Remaining", "0")
	}
	full, cancel := context.WithCancel(t.Context())
	cancel()
	_, err := l.take(full, "one", "channel", false)
	assert.ErrorIs(t, err, context.Canceled, "the other route used the bucket up")
	tk, err := l.take(t.Context(), "one", "another channel", false)
	require.NoError(t, err)
	l.done(tk, nil)
}

// Trap 16: the library sleeps through a context that has ended.
func TestWaitingEndsWithItsContext(t *testing.T) {
	l := newLimiter(1_000_000)
	tk, err := l.take(t.Context(), "route", "", false)
	require.NoError(t, err)
	l.hold(tk, true, time.Hour)
	l.done(tk, nil)
	ctx, cancel := context.WithCancel(t.Context())
	waiting := make(chan error)
	go func() {
		_, err := l.take(ctx, "other route", "", false)
		waiting <- err
	}()
	cancel()
	require.ErrorIs(t, <-waiting, context.Canceled)
}

func TestPauseForEverythingSparesInteractions(t *testing.T) {
	l := newLimiter(1_000_000)
	tk, err := l.take(t.Context(), "route", "", false)
	require.NoError(t, err)
	l.hold(tk, true, time.Hour)
	l.done(tk, nil)
	_, err = l.take(t.Context(), "callback", "1", true)
	assert.NoError(t, err)
}

func TestTooManyThatWait(t *testing.T) {
	l := newLimiter(1_000_000)
	first, err := l.take(t.Context(), "route", "", false)
	require.NoError(t, err)
	ctx, cancel := context.WithCancel(t.Context())
	defer cancel()
	refused := make(chan error, maxWaiting+1)
	for range maxWaiting + 1 {
		go func() {
			_, err := l.take(ctx, "route", "", false)
			refused <- err
		}()
	}
	require.ErrorIs(t, <-refused, ErrBusy)
	l.done(first, nil)
}

// The platform bans an address after 10,000 refusals in ten minutes.
func TestManyRefusalsStopEverything(t *testing.T) {
	var calls atomic.Int64
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		calls.Add(1)
		w.WriteHeader(http.StatusForbidden)
	}))
	defer server.Close()
	c := NewClient("t", Options{API: server.URL, PerSecond: 1_000_000})
	for range maxRefused {
		c.limits.refuse()
	}
	_, err := c.Entry(t.Context())
	require.ErrorIs(t, err, ErrHeld)
	assert.Zero(t, calls.Load())
}

// Case 20: a refused token is not tried again.
func TestRefusedTokenStopsTheClient(t *testing.T) {
	var calls atomic.Int64
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		calls.Add(1)
		w.WriteHeader(http.StatusUnauthorized)
	}))
	defer server.Close()
	c := NewClient("t", Options{API: server.URL})
	for range 3 {
		_, err := c.Entry(t.Context())
		require.ErrorIs(t, err, ErrRevoked)
	}
	assert.Equal(t, int64(1), calls.Load())
	<-c.Revoked()
}
