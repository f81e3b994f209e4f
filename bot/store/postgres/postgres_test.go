//go:build unix

package postgres_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/postgres"
	"counterhand/bot/store/storetest"
)

// open opens a store and closes it when the test ends.
func open(t testing.TB, url string) *postgres.Store {
	t.Helper()
	s, err := postgres.Open(t.Context(), url)
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, s.Close()) })
	return s
}

func TestConformance(t *testing.T) {
	storetest.Run(t, func(t *testing.T) bot.Store { return open(t, newDatabase(t)) })
}
