package link

import (
	"bytes"
	"context"
	"crypto/ed25519"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Trap 25: no way of printing shows the token, and no error shows an address.
func TestNothingPrintsASecret(t *testing.T) {
	const secret = "very-secret"
	token := Token(secret)
	var log bytes.Buffer
	slog.New(slog.NewJSONHandler(&log, nil)).Info("x", "token", token, "struct", struct{ T Token }{token})
	object, err := json.Marshal(token)
	require.NoError(t, err)
	for _, printed := range []string{fmt.Sprint(token), fmt.Sprintf("%s %v %+v %#v %q", token, token, token, token, token), log.String(), string(object)} {
		assert.NotContains(t, printed, secret)
	}

	server := httptest.NewServer(http.NotFoundHandler())
	address := server.URL
	server.Close() // nobody listens there any more
	c := NewClient(token, Options{API: address, Pause: time.Millisecond})
	err = c.Answer(t.Context(), Interaction{ID: "1", token: "interaction-secret"}, Post{Text: "x"})
	require.Error(t, err)
	assert.NotContains(t, err.Error(), "interaction-secret")
	assert.NotContains(t, err.Error(), secret)
}

func TestLanesKeepOrderWithinALane(t *testing.T) {
	l := NewLanes(8, 1000, 10_000, slog.New(slog.DiscardHandler))
	var mu sync.Mutex
	got := map[string][]int{}
	for n := range 500 {
		for _, key := range []string{"a", "b", "c"} {
			require.NoError(t, l.Put(key, func() {
				mu.Lock()
				defer mu.Unlock()
				got[key] = append(got[key], n)
			}))
		}
	}
	require.NoError(t, l.Close(t.Context()))
	for key, list := range got {
		require.Len(t, list, 500, key)
		assert.IsIncreasing(t, list)
	}
	assert.ErrorIs(t, l.Put("a", func() {}), ErrFull)
}

func TestLanesAreBounded(t *testing.T) {
	l := NewLanes(1, 2, 3, slog.New(slog.DiscardHandler))
	block := make(chan struct{})
	wait := func() { <-block }
	require.NoError(t, l.Put("a", wait))
	require.NoError(t, l.Put("a", wait))
	require.ErrorIs(t, l.Put("a", wait), ErrFull)
	require.NoError(t, l.Put("b", wait))
	require.ErrorIs(t, l.Put("c", wait), ErrFull)
	assert.Equal(t, 3, l.Waiting())
	close(block)
	require.NoError(t, l.Close(t.Context()))
}

// Trap 2: the library lets a fault in a handler end the process.
func TestFaultInALaneCostsThatPieceOnly(t *testing.T) {
	l := NewLanes(1, 10, 10, slog.New(slog.DiscardHandler))
	done := make(chan struct{})
	require.NoError(t, l.Put("a", func() { panic("boom") }))
	require.NoError(t, l.Put("a", func() { close(done) }))
	<-done
	require.NoError(t, l.Close(t.Context()))
}

func TestLanesGiveUpInTime(t *testing.T) {
	l := NewLanes(1, 10, 10, slog.New(slog.DiscardHandler))
	block := make(chan struct{})
	defer close(block)
	require.NoError(t, l.Put("a", func() { <-block }))
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	require.ErrorIs(t, l.Close(ctx), context.Canceled)
}

func TestSeen(t *testing.T) {
	now := time.Unix(0, 0)
	s := newSeen(3, time.Minute, func() time.Time { return now })
	assert.True(t, s.first("a"))
	assert.False(t, s.first("a"))
	now = now.Add(61 * time.Second)
	assert.True(t, s.first("b"))
	assert.False(t, s.first("a"), "known for at least a minute")
	now = now.Add(61 * time.Second)
	assert.True(t, s.first("c"))
	assert.True(t, s.first("a"), "forgotten in the end")
	for n := range 1000 {
		s.first(fmt.Sprint(n))
	}
	assert.LessOrEqual(t, len(s.young)+len(s.old), 6, "bounded")
}

// Case 19: sessions that come to nothing make the next one wait, over restarts.
func TestFailedSessionsWait(t *testing.T) {
	g := &Gateway{o: GatewayOptions{Times: Times{}.withDefaults()}}
	s := &shard{gateway: g, session: Session{Begun: time.Now()}}
	var last time.Duration
	for n := 1; n <= 8; n++ {
		s.session.Failures = n
		wait := s.penalty()
		assert.Greater(t, wait, last)
		last = wait
	}
	s.session.Failures = 1000
	assert.LessOrEqual(t, s.penalty(), 16*time.Minute, "at most 90 sessions a day")
	s.session.ID = "kept"
	assert.Zero(t, s.penalty(), "a session to resume costs nothing")
}

func TestRefusals(t *testing.T) {
	is := func(code int) error { return fmt.Errorf("wrapped: %w", &Refusal{Code: code}) }
	for name, row := range map[string]struct {
		judge func(error) bool
		codes []int
	}{
		"gone":      {Gone, []int{10003, 10004, 10008, 50001}},
		"forbidden": {Forbidden, []int{50013, 50001}},
		"unwelcome": {Unwelcome, []int{50007}},
		"shut":      {Shut, []int{50083, 160005, 200000, 240000, 20016, 20028}},
		"expired":   {Expired, []int{10062, 10015}},
		"history":   {NoHistory, []int{160002}},
	} {
		for _, code := range row.codes {
			assert.True(t, row.judge(is(code)), "%s %d", name, code)
		}
		assert.False(t, row.judge(is(1)), name)
		assert.False(t, row.judge(errors.New("other")), name)
		assert.False(t, row.judge(nil), name)
	}
}

func TestPostLimits(t *testing.T) {
	t.Run("case 9: code points are counted, not bytes or halves", func(t *testing.T) {
		b, _, err := Post{Text: strings.Repeat("🧵", MaxText)}.body()
		require.NoError(t, err)
		assert.Equal(t, strings.Repeat("🧵", MaxText), b.Content)
		_, _, err = Post{Text: strings.Repeat("🧵", MaxText+1)}.body()
		assert.ErrorIs(t, err, ErrTooLong)
	})
	t.Run("case 10: a card over the limit is left out", func(t *testing.T) {
		lines := func(n, size int) *Card {
			c := &Card{}
			for range n {
				c.Lines = append(c.Lines, Line{"name", strings.Repeat("x", size)})
			}
			return c
		}
		for _, row := range []struct {
			card *Card
			fits bool
		}{
			{lines(25, 1), true}, {lines(26, 1), false}, {lines(1, 1024), true}, {lines(1, 1025), false},
			{lines(1, 0), false}, {lines(6, 1000), false}, {nil, false}, {&Card{Title: "only"}, false},
		} {
			b, _, err := Post{Text: "x", Card: row.card}.body()
			require.NoError(t, err)
			assert.Equal(t, row.fits, len(b.Embeds) == 1)
		}
	})
	t.Run("nothing", func(t *testing.T) {
		_, _, err := Post{Text: " \n"}.body()
		assert.ErrorIs(t, err, ErrEmpty)
	})
	t.Run("files over the limit are left out", func(t *testing.T) {
		_, files, err := Post{Text: "x", Files: []File{{Name: "a", Data: make([]byte, MaxFile+1)}, {Name: "b"}, {Name: "c", Data: []byte("c")}}}.body()
		require.NoError(t, err)
		require.Len(t, files, 1)
		assert.Equal(t, "c", files[0].Name)
	})
}

// endpoint makes an endpoint whose clock stands, and a function that signs.
func endpoint(t *testing.T) (e *Endpoint, got *[]Interaction, post func(stamp time.Time, body string, change func(*http.Request)) *httptest.ResponseRecorder) {
	t.Helper()
	public, private, err := ed25519.GenerateKey(nil)
	require.NoError(t, err)
	got = &[]Interaction{}
	e, err = NewEndpoint(hex.EncodeToString(public), func(i Interaction) { *got = append(*got, i) })
	require.NoError(t, err)
	e.now = func() time.Time { return time.Unix(1_800_000_000, 0) }
	return e, got, func(stamp time.Time, body string, change func(*http.Request)) *httptest.ResponseRecorder {
		r := httptest.NewRequest(http.MethodPost, "/", strings.NewReader(body))
		at := fmt.Sprint(stamp.Unix())
		r.Header.Set("X-Signature-Timestamp", at)
		r.Header.Set("X-Signature-Ed25519", hex.EncodeToString(ed25519.Sign(private, []byte(at+body))))
		if change != nil {
			change(r)
		}
		w := httptest.NewRecorder()
		e.ServeHTTP(w, r)
		return w
	}
}

const used = `{"id":"1","type":2,"token":"t","channel_id":"2","user":{"id":"3"},"data":{"name":"ask","options":[{"name":"question","type":3,"value":"hi"}]}}`

// Trap 26: the library's check reads without limit and accepts any age.
func TestEndpoint(t *testing.T) {
	e, got, post := endpoint(t)
	now := e.now()
	t.Run("ping", func(t *testing.T) {
		w := post(now, `{"id":"1","type":1}`, nil)
		assert.Equal(t, 200, w.Code)
		assert.JSONEq(t, `{"type":1}`, w.Body.String())
		assert.Equal(t, "application/json", w.Header().Get("Content-Type"))
	})
	t.Run("taken, and a repeat is not taken again", func(t *testing.T) {
		for range 2 {
			w := post(now, used, nil)
			assert.Equal(t, 202, w.Code)
			assert.Empty(t, w.Body.String())
		}
		require.Len(t, *got, 1)
		assert.Equal(t, "hi", (*got)[0].Option("question"))
	})
	for name, row := range map[string]struct {
		stamp  time.Time
		body   string
		change func(*http.Request)
		want   int
	}{
		"too old":          {now.Add(-6 * time.Minute), used, nil, 401},
		"from the future":  {now.Add(6 * time.Minute), used, nil, 401},
		"no signature":     {now, used, func(r *http.Request) { r.Header.Del("X-Signature-Ed25519") }, 401},
		"wrong signature":  {now, used, func(r *http.Request) { r.Header.Set("X-Signature-Ed25519", strings.Repeat("00", 64)) }, 401},
		"short signature":  {now, used, func(r *http.Request) { r.Header.Set("X-Signature-Ed25519", "00") }, 401},
		"no hexadecimal":   {now, used, func(r *http.Request) { r.Header.Set("X-Signature-Ed25519", strings.Repeat("zz", 64)) }, 401},
		"other time":       {now, used, func(r *http.Request) { r.Header.Set("X-Signature-Timestamp", fmt.Sprint(now.Unix()+1)) }, 401},
		"no time":          {now, used, func(r *http.Request) { r.Header.Set("X-Signature-Timestamp", "x") }, 401},
		"too long":         {now, `{"x":"` + strings.Repeat("x", maxInteraction) + `"}`, nil, 401},
		"no JSON":          {now, `{`, nil, 400},
		"nobody asks":      {now, `{"id":"5","type":2,"token":"t"}`, nil, 400},
		"not the way":      {now, used, func(r *http.Request) { r.Method = http.MethodGet }, 405},
		"null is nothing":  {now, `null`, nil, 400},
		"list is nothing":  {now, `[1]`, nil, 400},
		"type is no digit": {now, `{"id":"6","type":"x","token":"t"}`, nil, 400},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, row.want, post(row.stamp, row.body, row.change).Code)
			assert.Len(t, *got, 1)
		})
	}
	_, err := NewEndpoint("zz", nil)
	assert.Error(t, err)
}

// Trap 1: whatever comes, decoding neither fails as a whole nor panics.
func FuzzEvents(f *testing.F) {
	f.Add([]byte(used))
	f.Add([]byte(`{"id":"1","channel_id":"2","author":{"id":"3"},"content":"x","type":19,"referenced_message":{"author":null}}`))
	f.Add([]byte(`{"id":1,"author":[],"mentions":{"a":1}}`))
	f.Add([]byte(`null`))
	f.Fuzz(func(t *testing.T, data []byte) {
		if m, ok := message(data, "9"); ok && (m.ID == "" || m.Channel == "" || m.Author == "" || m.Author == "9") {
			t.Errorf("taken without what it needs: %+v", m)
		}
		if i, ok := interaction(data); ok && (i.ID == "" || i.Person == "" || i.token == "") {
			t.Errorf("taken without what it needs: %+v", i)
		}
		removed(data)
	})
}

func TestEntryRetriesWhileThePlatformIsAway(t *testing.T) {
	calls := 0
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		if calls++; calls < 8 {
			w.WriteHeader(http.StatusServiceUnavailable)
			return
		}
		_, _ = w.Write([]byte(`{"url":"ws://x","shards":3}`))
	}))
	defer server.Close()
	c := NewClient("t", Options{API: server.URL, Pause: time.Millisecond})
	g := NewGateway(c, nil, GatewayOptions{Times: Times{Retry: time.Millisecond}})
	e, err := g.entry(t.Context())
	require.NoError(t, err)
	assert.Equal(t, 3, e.Shards)
}
