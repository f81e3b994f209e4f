package sqlite_test

import (
	"path/filepath"
	"testing"

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
