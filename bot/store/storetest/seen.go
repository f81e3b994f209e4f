package storetest

import (
	"fmt"
	"sync"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
)

func testSeen(t *testing.T, empty Factory) {
	t.Run("the first claimant has it", func(t *testing.T) {
		s := empty(t)
		mine, err := s.Claim(t.Context(), "chat:5001", "a/1", noon)
		require.NoError(t, err)
		assert.True(t, mine)
		mine, err = s.Claim(t.Context(), "chat:5001", "b/1", noon)
		require.NoError(t, err)
		assert.False(t, mine, "claimed before")
		mine, err = s.Claim(t.Context(), "chat:5001", "a/1", noon)
		require.NoError(t, err)
		assert.True(t, mine, "the same claimant again")
		mine, err = s.Claim(t.Context(), "chat:5002", "b/1", noon)
		require.NoError(t, err)
		assert.True(t, mine, "another message")
	})

	t.Run("of many claimants at once one has it", func(t *testing.T) {
		s := empty(t)
		const messages, claimants = 50, 4
		var claimed [messages]atomic.Int32
		var wg sync.WaitGroup
		for c := range claimants {
			wg.Go(func() {
				for m := range messages {
					mine, err := s.Claim(t.Context(), bot.MessageID(fmt.Sprintf("chat:%d", m)), fmt.Sprintf("%d/%d", c, m), noon)
					if assert.NoError(t, err) && mine {
						claimed[m].Add(1)
					}
				}
			})
		}
		wg.Wait()
		for m := range claimed {
			assert.EqualValues(t, 1, claimed[m].Load(), "message %d", m)
		}
	})
}
