package sqlite_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/sqlite"
	"counterhand/bot/store/storetest"
)

// open opens a store and closes it when the test ends.
func open(t testing.TB, path string, with ...sqlite.Option) *sqlite.Store {
	t.Helper()
	s, err := sqlite.Open(t.Context(), path, with...)
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, s.Close()) })
	return s
}

func TestConformance(t *testing.T) {
	storetest.Run(t, func(t *testing.T) bot.Store {
		return open(t, filepath.Join(t.TempDir(), "it's a 100% # new? folder", "records.db"))
	})
}

func TestClockThatGoesBack(t *testing.T) {
	storetest.RunClock(t, func(t *testing.T, now func() time.Time) bot.Store {
		return open(t, filepath.Join(t.TempDir(), "records.db"), sqlite.WithClock(now))
	})
}

func TestOnlyTheUserMayReadTheFile(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "share", "counterhand")
	s := open(t, filepath.Join(folder, "records.db"))
	require.NoError(t, saveSetting(t, s, "chat:1", `{"n":1}`))
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(entries), 3, "with the log and its index")
	for _, e := range entries {
		info, err := e.Info()
		require.NoError(t, err)
		assert.Zero(t, info.Mode().Perm()&0o077, "%s is %s", e.Name(), info.Mode())
	}
	info, err := os.Stat(folder)
	require.NoError(t, err)
	assert.Zero(t, info.Mode().Perm()&0o077)
}

func TestTwoProcessesShareTheFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "records.db")
	one, two := open(t, path), open(t, path)
	owner := bot.OwnerOfPerson("chat:1")
	for n := range 20 {
		document := fmt.Sprintf(`{"n":%d}`, n)
		require.NoError(t, saveSetting(t, one, "chat:1", document))
		found, err := two.Settings(t.Context(), owner)
		require.NoError(t, err)
		require.JSONEq(t, document, string(found[owner].Document))
		one, two = two, one
	}
	mine, err := one.Claim(t.Context(), "chat:5001", "one", time.Now())
	require.NoError(t, err)
	assert.True(t, mine)
	mine, err = two.Claim(t.Context(), "chat:5001", "two", time.Now())
	require.NoError(t, err)
	assert.False(t, mine)
}

// TestReadIsNeverBehind has one process change settings and others read them,
// which must find at least what was changed before they began.
func TestReadIsNeverBehind(t *testing.T) {
	path := filepath.Join(t.TempDir(), "records.db")
	writer := open(t, path)
	readers := []*sqlite.Store{writer, open(t, path), open(t, path)}
	owner := bot.OwnerOfPerson("chat:1")
	const changes = 200
	var done atomic.Int64
	var wg sync.WaitGroup
	for _, reader := range readers {
		wg.Go(func() {
			for done.Load() < changes {
				before := done.Load()
				found, err := reader.Settings(t.Context(), owner)
				if !assert.NoError(t, err) {
					return
				}
				var document struct {
					N int64 `json:"n"`
				}
				if kept, ok := found[owner]; ok {
					assert.NoError(t, json.Unmarshal(kept.Document, &document))
				}
				assert.GreaterOrEqual(t, document.N, before)
			}
		})
	}
	for n := 1; n <= changes; n++ {
		require.NoError(t, saveSetting(t, writer, "chat:1", fmt.Sprintf(`{"n":%d}`, n)))
		done.Store(int64(n))
	}
	wg.Wait()
}

func TestManyOpenANewFileAtOnce(t *testing.T) {
	path := filepath.Join(t.TempDir(), "records.db")
	var wg sync.WaitGroup
	stores := make([]*sqlite.Store, 8)
	errs := make([]error, len(stores))
	for i := range stores {
		wg.Go(func() { stores[i], errs[i] = sqlite.Open(t.Context(), path) })
	}
	wg.Wait()
	require.NoError(t, errors.Join(errs...))
	for _, s := range stores {
		require.NoError(t, saveSetting(t, s, "chat:1", `{"n":1}`))
		require.NoError(t, s.Close())
	}
}

// TestBackupIsConsistent copies a store in which pairs of records are always
// written together, while they are being written.
func TestBackupIsConsistent(t *testing.T) {
	s := open(t, filepath.Join(t.TempDir(), "records.db"))
	done := make(chan struct{})
	var writer sync.WaitGroup
	writer.Go(func() {
		for n := 0; ; n++ {
			select {
			case <-done:
				return
			default:
				assert.NoError(t, writePair(t, s, n))
			}
		}
	})
	for i := range 10 {
		path := filepath.Join(t.TempDir(), "copy.db")
		require.NoError(t, s.Backup(t.Context(), path))
		info, err := os.Stat(path)
		require.NoError(t, err)
		assert.Zero(t, info.Mode().Perm()&0o077)
		one, other := readPair(t, open(t, path))
		assert.Equal(t, one, other, "copy %d", i)
	}
	close(done)
	writer.Wait()
}

var pair = []bot.Owner{bot.OwnerOfPerson("chat:1"), bot.OwnerOfPerson("chat:2")}

func writePair(t *testing.T, s bot.Store, n int) error {
	left := len(pair)
	return s.Import(t.Context(), func() (bot.Record, error) {
		if left == 0 {
			return bot.Record{}, io.EOF
		}
		left--
		return bot.Record{Settings: &bot.SettingsRecord{
			Scope: pair[left].Scope, ID: pair[left].ID, Document: json.RawMessage(fmt.Sprintf(`{"n":%d}`, n))}}, nil
	})
}

func readPair(t *testing.T, s bot.Store) (one, other string) {
	t.Helper()
	found, err := s.Settings(t.Context(), pair...)
	require.NoError(t, err)
	return string(found[pair[0]].Document), string(found[pair[1]].Document)
}

func TestForgottenIsGoneFromTheDisk(t *testing.T) {
	folder := t.TempDir()
	s := open(t, filepath.Join(folder, "records.db"))
	const secret = "the-width-of-the-kitchen-table"
	for i := range 200 {
		require.NoError(t, saveSetting(t, s, fmt.Sprintf("chat:%d", i), `{"n":1}`))
	}
	require.NoError(t, saveSetting(t, s, "chat:77", `{"note":"`+secret+`"}`))
	require.NoError(t, s.SaveConversation(t.Context(), bot.Conversation{
		ID: "chat:9/chat:77", Person: "chat:77", State: json.RawMessage(`{"said":"` + secret + `"}`), At: time.Now()}))
	require.True(t, onDisk(t, folder, secret))

	forgotten, err := s.Forget(t.Context(), "chat:77")
	require.NoError(t, err)
	assert.Equal(t, bot.Forgotten{Settings: 1, Conversations: 1}, forgotten)
	assert.False(t, onDisk(t, folder, secret))
}

// onDisk reports whether any file of the folder contains the text.
func onDisk(t *testing.T, folder, text string) bool {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	for _, e := range entries {
		content, err := os.ReadFile(filepath.Join(folder, e.Name()))
		require.NoError(t, err)
		if bytes.Contains(content, []byte(text)) {
			return true
		}
	}
	return false
}
