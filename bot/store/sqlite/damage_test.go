package sqlite_test

import (
	"bytes"
	"database/sql"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/sqlite"
)

// wholeFile makes a file with a thousand conversations and returns its bytes.
func wholeFile(t *testing.T, path string) []byte {
	t.Helper()
	s, err := sqlite.Open(t.Context(), path)
	require.NoError(t, err)
	fillConversations(t, s, 1000)
	require.NoError(t, s.Close())
	content, err := os.ReadFile(path)
	require.NoError(t, err)
	return content
}

func TestDamagedFileIsSetAside(t *testing.T) {
	now := func() time.Time { return time.Date(2026, 3, 14, 12, 0, 0, 0, time.UTC) }
	for _, row := range []struct {
		name   string
		damage func(content []byte) []byte
	}{
		{"no file of records at all", func([]byte) []byte { return bytes.Repeat([]byte("a shopping list\n"), 300) }},
		{"the first page overwritten", func(c []byte) []byte { copy(c[:4096], bytes.Repeat([]byte{0xFF}, 4096)); return c }},
		{"the schema overwritten", func(c []byte) []byte { copy(c[100:400], bytes.Repeat([]byte{0xFF}, 300)); return c }},
		{"pages in the middle overwritten", func(c []byte) []byte {
			middle := len(c) / 2 / 4096 * 4096
			copy(c[middle:], bytes.Repeat([]byte{0xFF}, 3*4096))
			return c
		}},
		{"pages in the middle lost", func(c []byte) []byte { clear(c[len(c)/3 : len(c)*2/3]); return c }},
		{"cut off", func(c []byte) []byte { return c[:len(c)/2] }},
		{"cut off within the first page", func(c []byte) []byte { return c[:1000] }},
	} {
		t.Run(row.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "records.db")
			damaged := row.damage(wholeFile(t, path))
			require.NoError(t, os.WriteFile(path, damaged, 0o600))

			s := open(t, path, sqlite.WithClock(now))
			require.Equal(t, path+".damaged-20260314T120000Z", s.SetAside())
			kept, err := os.ReadFile(s.SetAside())
			require.NoError(t, err)
			assert.True(t, bytes.Equal(damaged, kept), "the damaged file is kept as it was")
			require.NoError(t, saveSetting(t, s, "chat:1", `{"n":1}`), "the new file works")

			// The next one on the same second does not overwrite the first.
			require.NoError(t, s.Close())
			require.NoError(t, os.WriteFile(path, []byte("this is no file of records, and not an empty one"), 0o600))
			again := open(t, path, sqlite.WithClock(now))
			assert.Equal(t, path+".damaged-20260314T120000Z-2", again.SetAside())
		})
	}
}

func saveSetting(t *testing.T, s bot.Store, id, document string) error {
	return s.ChangeSettings(t.Context(), bot.Owner{Scope: bot.ScopePerson, ID: id}, time.Now(),
		func(json.RawMessage) (json.RawMessage, error) { return json.RawMessage(document), nil })
}

func TestDamagedFileInUseIsLeftAlone(t *testing.T) {
	path := filepath.Join(t.TempDir(), "records.db")
	content := wholeFile(t, path)
	open(t, path) // another process, as far as locks go
	clear(content[100:400])
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	require.NoError(t, err)
	_, err = f.WriteAt(content[:4096], 0)
	require.NoError(t, err)
	require.NoError(t, f.Close())

	_, err = sqlite.Open(t.Context(), path)
	var fault *sqlite.FileError
	require.ErrorAs(t, err, &fault)
	assert.ErrorContains(t, err, "it is damaged, and cannot be set aside while another process uses it")
	assert.FileExists(t, path)
	others, err := filepath.Glob(path + ".damaged*")
	require.NoError(t, err)
	assert.Empty(t, others)
}

func TestNewerSchemaIsRefused(t *testing.T) {
	path := filepath.Join(t.TempDir(), "records.db")
	wholeFile(t, path)
	db, err := sql.Open("sqlite", "file:"+path)
	require.NoError(t, err)
	_, err = db.ExecContext(t.Context(), "INSERT INTO goose_db_version (version_id, is_applied) VALUES (99, 1)")
	require.NoError(t, err)
	require.NoError(t, db.Close())

	_, err = sqlite.Open(t.Context(), path)
	require.EqualError(t, err, "the records are in form 99, and this program knows forms up to 1: they belong to a newer counterhand; use that one")
	assert.FileExists(t, path)
}
