//go:build unix

package postgres_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"
	"math/rand/v2"
	"net/url"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/postgres"
	"counterhand/commands"
)

const cuts = 200

// TestCutConnectionLosesNothing cuts the connection after a random number of
// bytes, which is somewhere in a transaction, and compares what the store said
// with what the server has.
func TestCutConnectionLosesNothing(t *testing.T) {
	direct := newDatabase(t)
	w, over := newWire(t, direct)
	s, truth := open(t, over), open(t, direct)
	owner := bot.OwnerOfPerson("chat:1")
	var unknown, told int
	for round := range cuts {
		// To connect takes some 2,000 bytes in both directions, a write of settings
		// some 700, a claim some 200: several of them lie between two cuts.
		w.left.Store(int64(rand.IntN(12_000)))
		for failed := false; !failed; {
			before := count(t, truth, owner)
			err := s.ChangeSettings(t.Context(), owner, time.Now(), countUp)
			after := count(t, truth, owner)
			if err == nil {
				require.Equal(t, before+1, after, "round %d: what was acknowledged is there, once", round)
				told++
			} else {
				failed = true
				require.Contains(t, []int{before, before + 1}, after, "round %d: all or nothing", round)
				if after != before {
					unknown++
				}
			}
			id := bot.MessageID(fmt.Sprintf("chat:%d-%d", round, after))
			mine, err := s.Claim(t.Context(), id, "this test", time.Now())
			if err == nil {
				require.True(t, mine, "round %d: nobody else claims", round)
				others, err := truth.Claim(t.Context(), id, "another", time.Now())
				require.NoError(t, err)
				require.False(t, others, "round %d: what was acknowledged is there", round)
			}
			failed = failed || err != nil
		}
		w.left.Store(uncut)
	}
	require.NoError(t, s.ChangeSettings(t.Context(), owner, time.Now(), countUp), "it recovers by itself")
	t.Logf("%d writes acknowledged, %d committed without the acknowledgement coming through, %d cuts", told, unknown, cuts)
	assert.Greater(t, told, cuts)
}

func countUp(old json.RawMessage) (json.RawMessage, error) {
	document := struct {
		N int `json:"n"`
	}{}
	if old != nil {
		if err := json.Unmarshal(old, &document); err != nil {
			return nil, err
		}
	}
	document.N++
	return json.Marshal(document)
}

func count(t *testing.T, s bot.Store, owner bot.Owner) int {
	t.Helper()
	found, err := s.Settings(t.Context(), owner)
	require.NoError(t, err)
	var document struct {
		N int `json:"n"`
	}
	if kept, ok := found[owner]; ok {
		require.NoError(t, json.Unmarshal(kept.Document, &document))
	}
	return document.N
}

func TestServerThatIsAway(t *testing.T) {
	direct := newDatabase(t)
	w, over := newWire(t, direct)
	w.setDown(true)
	s := open(t, over) // it opens all the same
	assistant, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(t, err)
	engine, err := bot.NewEngine(bot.EngineConfig{
		Responder: assistant, Store: s, RetryPause: time.Nanosecond, StoreTimeout: 10 * time.Second,
		Log: slog.New(slog.DiscardHandler)})
	require.NoError(t, err)
	ask := func() commands.Reply {
		reply, err := engine.Handle(t.Context(), bot.Message{Person: "chat:7", Channel: "chat:9", Text: "binding for 54 x 68"})
		require.NoError(t, err)
		require.Equal(t, commands.Answer, reply.Outcome)
		return reply
	}
	const unread = "Settings cannot be read or saved just now"
	assert.Contains(t, ask().Text, unread)
	w.setDown(false)
	assert.NotContains(t, ask().Text, unread, "it is there now")
	w.setDown(true)
	assert.Contains(t, ask().Text, unread)
	w.setDown(false)
	assert.NotContains(t, ask().Text, unread)
}

func TestFaultsThatLast(t *testing.T) {
	direct := newDatabase(t)
	for _, row := range []struct{ name, url, want string }{
		{"no URL", "postgres://shop:hush@:port/", "database URL"},
		{"no such database", changed(t, direct, func(u *url.URL) { u.Path = "/no_such_database" }), "there is none of that name: make it first"},
		{"a server that takes no changes", changed(t, direct, func(u *url.URL) { u.RawQuery += "&default_transaction_read_only=on" }), "it takes no changes"},
	} {
		t.Run(row.name, func(t *testing.T) {
			_, err := postgres.Open(t.Context(), row.url)
			require.ErrorContains(t, err, row.want)
			assert.NotContains(t, err.Error(), "hush")
		})
	}
	t.Run("a newer schema", func(t *testing.T) {
		newer := newDatabase(t)
		open(t, newer)
		execute(t, newer, "INSERT INTO goose_db_version (version_id, is_applied) VALUES (99, true)")
		_, err := postgres.Open(t.Context(), newer)
		require.EqualError(t, err, "the records are in form 99, and this program knows forms up to 1: they belong to a newer counterhand; use that one")
	})
}

// changed gives a URL with something else in it.
func changed(t *testing.T, direct string, change func(*url.URL)) string {
	t.Helper()
	u, err := url.Parse(direct)
	require.NoError(t, err)
	change(u)
	return u.String()
}

func TestManyOpenANewDatabaseAtOnce(t *testing.T) {
	database := newDatabase(t)
	var wg sync.WaitGroup
	stores := make([]*postgres.Store, 4)
	errs := make([]error, len(stores))
	for i := range stores {
		wg.Go(func() { stores[i], errs[i] = postgres.Open(t.Context(), database) })
	}
	wg.Wait()
	require.NoError(t, errors.Join(errs...))
	for _, s := range stores {
		require.NoError(t, s.ChangeSettings(t.Context(), bot.OwnerOfPerson("chat:1"), time.Now(), countUp))
		require.NoError(t, s.Close())
	}
}

func TestBackupCanBeImported(t *testing.T) {
	s := open(t, newDatabase(t))
	require.NoError(t, s.ChangeSettings(t.Context(), bot.OwnerOfPerson("chat:1"), time.Now(), countUp))
	path := filepath.Join(t.TempDir(), "copy.jsonl")
	require.NoError(t, s.Backup(t.Context(), path))
	content, err := os.ReadFile(path)
	require.NoError(t, err)
	other := open(t, newDatabase(t))
	n, err := bot.Import(t.Context(), other, bytes.NewReader(content))
	require.NoError(t, err)
	assert.Equal(t, 1, n)
	assert.Equal(t, 1, count(t, other, bot.OwnerOfPerson("chat:1")))
}
