package main

import (
	"context"
	"errors"
	"io"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot/store/memory"
	"counterhand/config"
)

// logged is a log whose lines are handed on.
type logged chan string

func (l logged) Write(line []byte) (int, error) {
	l <- string(line)
	return len(line), nil
}

// waitFor gives what the expression finds in the first line that has it.
func (l logged) waitFor(t *testing.T, expression string) string {
	t.Helper()
	find := regexp.MustCompile(expression)
	for {
		select {
		case line := <-l:
			if found := find.FindStringSubmatch(line); found != nil {
				return found[1]
			}
		case <-t.Context().Done():
			require.Fail(t, "the log never says "+expression)
		}
	}
}

func TestServeListensUntilItIsStopped(t *testing.T) {
	c, err := config.Load("", map[string]string{"web.address": "127.0.0.1:0"})
	require.NoError(t, err)
	log := make(logged, 100)
	h := &house{config: c, assistant: assistant(t, nil), log: slog.New(slog.NewTextHandler(log, nil))}
	assert.Equal(t, "it needs chat.token, chat.token_file or COUNTERHAND_CHAT_TOKEN", h.chatLacks())
	require.Empty(t, h.httpLacks())

	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() { ended <- h.serveOn(ctx, memory.Open(time.Now), []surface{{"HTTP", "", openHTTP}}) }()
	address := log.waitFor(t, `address=(\S+)`)

	reply, err := http.Get("http://" + address + "/health")
	require.NoError(t, err)
	body, err := io.ReadAll(reply.Body)
	require.NoError(t, err)
	require.NoError(t, reply.Body.Close())
	assert.Equal(t, http.StatusOK, reply.StatusCode)
	assert.Equal(t, "well\n", string(body))

	reply, err = http.Get("http://" + address + "/other")
	require.NoError(t, err)
	require.NoError(t, reply.Body.Close())
	assert.Equal(t, http.StatusNotFound, reply.StatusCode)

	stop()
	assert.NoError(t, <-ended, "being stopped is no fault")
}

func TestSurfaceThatFailsEndsAll(t *testing.T) {
	h := &house{assistant: assistant(t, nil), log: slog.New(slog.DiscardHandler)}
	broken := errors.New("withdrawn")
	failing := func(*counter) (task, error) { return func(context.Context) error { return broken }, nil }
	waiting := func(*counter) (task, error) {
		return func(ctx context.Context) error { <-ctx.Done(); return nil }, nil
	}
	err := h.serveOn(t.Context(), memory.Open(time.Now), []surface{{"one", "", waiting}, {"two", "", failing}})
	assert.ErrorIs(t, err, broken)
	assert.ErrorContains(t, err, "two: withdrawn")
}

func TestHealthNamesWhoIsUnwell(t *testing.T) {
	var all health
	all.add("chat", func() error { return nil })
	all.add("page", func() error { return errors.New("shard 3 is not connected") })
	w := httptest.NewRecorder()
	all.ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/health", strings.NewReader("")))
	assert.Equal(t, http.StatusServiceUnavailable, w.Code)
	assert.Equal(t, "page: shard 3 is not connected\n", w.Body.String())
}
