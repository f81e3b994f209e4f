package commands_test

import (
	"encoding/json"
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/commands"
	"counterhand/commands/questionstest"
)

// largestState is the most bytes that a conversation may hold once stored, so
// that a hundred thousand of them stay in memory with ease.
const largestState = 1024

func TestConversationsStaySmall(t *testing.T) {
	fresh := newTalk(t)
	largest := 0
	for _, dir := range questionSets(t) {
		conversations, err := questionstest.Load[questionstest.Conversation](filepath.Join(dir, "conversations.jsonl"))
		require.NoError(t, err)
		for _, conversation := range conversations {
			c := fresh.again()
			for _, turn := range conversation.Turns {
				c.say(turn.Say)
				b, err := json.Marshal(c.state)
				require.NoError(t, err)
				assert.LessOrEqual(t, len(b), largestState, "%s after %q: %s", conversation.ID, turn.Say, b)
				largest = max(largest, len(b))
			}
		}
	}
	t.Logf("the largest conversation takes %d bytes", largest)
}

// BenchmarkLength answers texts of growing length, so that work that grows
// faster than the text shows.
func BenchmarkLength(b *testing.B) {
	assistant := newTalk(b).assistant
	story := "my neighbour's quilt for the lighthouse room, with 3 borders, came out at 60 x 72 after 2 weeks, and then "
	for _, n := range []int{100, 1_000, 10_000} {
		for _, c := range []struct{ kind, part string }{{"story", story}, {"numbers", "2½ x 60, "}, {"word", "bindin"}} {
			text := strings.Repeat(c.part, n/len(c.part)+1)[:n]
			b.Run(fmt.Sprintf("%s of %d", c.kind, n), func(b *testing.B) {
				for b.Loop() {
					assistant.Respond(commands.Turn{Text: text})
				}
			})
		}
	}
}
