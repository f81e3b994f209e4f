//go:build unix

package postgres_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"testing"
	"time"

	"counterhand/bot"
)

// BenchmarkTurn is what one message asks of the store.
func BenchmarkTurn(b *testing.B) {
	s := open(b, newDatabase(b))
	ctx := b.Context()
	i := 0
	for b.Loop() {
		i++
		id := bot.ConversationID(fmt.Sprintf("chat:9/chat:%d", i%1000))
		_, claimErr := s.Claim(ctx, bot.MessageID(fmt.Sprintf("chat:%d", i)), "a/1", time.Now())
		_, readErr := s.Settings(ctx, bot.OwnerOfPerson("chat:1"), bot.OwnerOfChannel("chat:9"), bot.OwnerOfShop(""))
		_, convErr := s.Conversation(ctx, id)
		saveErr := s.SaveConversation(ctx, bot.Conversation{ID: id, Person: "chat:1", State: json.RawMessage(`{"topic":"binding"}`), At: time.Now()})
		if claimErr != nil || readErr != nil || saveErr != nil || (convErr != nil && !errors.Is(convErr, bot.ErrNotFound)) {
			b.Fatal(claimErr, readErr, convErr, saveErr)
		}
	}
}
