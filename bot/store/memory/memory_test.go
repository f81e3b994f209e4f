package memory_test

import (
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/memory"
	"counterhand/bot/store/storetest"
)

func TestConformance(t *testing.T) {
	storetest.Run(t, func(*testing.T) bot.Store { return memory.Open(time.Now) })
}

func TestClockThatGoesBack(t *testing.T) {
	storetest.RunClock(t, func(_ *testing.T, now func() time.Time) bot.Store { return memory.Open(now) })
}

func TestTheLeastLatelyUsedGoFirst(t *testing.T) {
	s := memory.Open(time.Now)
	id := func(n int) bot.ConversationID { return bot.ConversationID(strconv.Itoa(n)) }
	for n := range memory.MaxConversations {
		require.NoError(t, s.SaveConversation(t.Context(), bot.Conversation{ID: id(n), State: []byte(`{}`)}))
	}
	_, err := s.Conversation(t.Context(), id(0))
	require.NoError(t, err)
	require.NoError(t, s.SaveConversation(t.Context(), bot.Conversation{ID: "one more", State: []byte(`{}`)}))
	_, err = s.Conversation(t.Context(), id(0))
	assert.NoError(t, err, "it was used since")
	_, err = s.Conversation(t.Context(), id(1))
	assert.ErrorIs(t, err, bot.ErrNotFound)
}
