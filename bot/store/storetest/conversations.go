package storetest

import (
	"encoding/json"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
)

func testConversations(t *testing.T, empty Factory) {
	t.Run("one that is not kept is not found", func(t *testing.T) {
		_, err := empty(t).Conversation(t.Context(), "chat:9/chat:1001")
		assert.ErrorIs(t, err, bot.ErrNotFound)
	})

	t.Run("the last one saved is read back", func(t *testing.T) {
		s := empty(t)
		c := bot.Conversation{ID: "chat:9/chat:1001", Person: ada, State: json.RawMessage(`{"topic":"binding"}`), At: noon}
		require.NoError(t, s.SaveConversation(t.Context(), c))
		c.State, c.At = json.RawMessage(`{"topic":"backing","words":"½ × ″"}`), noon.Add(time.Minute)
		require.NoError(t, s.SaveConversation(t.Context(), c))

		got, err := s.Conversation(t.Context(), c.ID)
		require.NoError(t, err)
		assert.JSONEq(t, string(c.State), string(got.State))
		got.State = c.State
		assert.Equal(t, c, got)
	})

	t.Run("one does not show in another", func(t *testing.T) {
		s := empty(t)
		require.NoError(t, s.SaveConversation(t.Context(), bot.Conversation{ID: "a", Person: ada, State: json.RawMessage(`{"n":1}`), At: noon}))
		require.NoError(t, s.SaveConversation(t.Context(), bot.Conversation{ID: "b", Person: bela, State: json.RawMessage(`{"n":2}`), At: noon}))
		got, err := s.Conversation(t.Context(), "a")
		require.NoError(t, err)
		assert.JSONEq(t, `{"n":1}`, string(got.State))
	})
}
