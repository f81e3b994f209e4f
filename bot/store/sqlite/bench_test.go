package sqlite_test

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/sqlite"
)

// fillConversations imports n open conversations.
func fillConversations(tb testing.TB, s bot.Store, n int) {
	tb.Helper()
	state := json.RawMessage(`{"topic":"binding","inputs":{"width":"54 in","length":"68 in","strip_width":"2.25 in"},"said":["width","cutter"],"asked":""}`)
	i := 0
	require.NoError(tb, s.Import(tb.Context(), func() (bot.Record, error) {
		if i == n {
			return bot.Record{}, io.EOF
		}
		i++
		person := bot.PersonID(fmt.Sprintf("chat:%018d", i))
		return bot.Record{Conversation: &bot.ConversationRecord{
			ID: bot.ConversationID("chat:100000000000000009/" + string(person)), Person: person, At: time.UnixMilli(1.7e12), State: state}}, nil
	}))
}

// BenchmarkSettings reads what takes part in one answer: the settings of a
// person, a channel and the shop, out of ten thousand.
func BenchmarkSettings(b *testing.B) {
	s := open(b, filepath.Join(b.TempDir(), "records.db"))
	i := 0
	require.NoError(b, s.Import(b.Context(), func() (bot.Record, error) {
		if i == 10_000 {
			return bot.Record{}, io.EOF
		}
		i++
		return bot.Record{Settings: &bot.SettingsRecord{Scope: bot.ScopePerson, ID: fmt.Sprintf("chat:%018d", i), Document: json.RawMessage(`{"usable_width":"43 in"}`)}}, nil
	}))
	for name, owners := range map[string][]bot.Owner{
		"person":                   {{Scope: bot.ScopePerson, ID: "chat:000000000000004711"}},
		"person, channel and shop": {{Scope: bot.ScopePerson, ID: "chat:000000000000004711"}, {Scope: bot.ScopeChannel, ID: "chat:9"}, {Scope: bot.ScopeShop}},
	} {
		b.Run(name, func(b *testing.B) {
			ctx, cancel := context.WithTimeout(b.Context(), time.Hour)
			defer cancel()
			for b.Loop() {
				found, err := s.Settings(ctx, owners...)
				if err != nil || len(found) != 1 {
					b.Fatal(found, err)
				}
			}
		})
	}
}

// BenchmarkDurableWrite changes settings in a way that survives the machine.
func BenchmarkDurableWrite(b *testing.B) {
	s := open(b, filepath.Join(b.TempDir(), "records.db"))
	i := 0
	for b.Loop() {
		i++
		owner := bot.OwnerOfPerson(bot.PersonID(fmt.Sprintf("chat:%d", i%1000)))
		err := s.ChangeSettings(b.Context(), owner, time.Now(), func(json.RawMessage) (json.RawMessage, error) {
			return json.RawMessage(`{"usable_width":"43 in"}`), nil
		})
		if err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkTurn is what one message asks of the store.
func BenchmarkTurn(b *testing.B) {
	s := open(b, filepath.Join(b.TempDir(), "records.db"))
	ctx := b.Context()
	i := 0
	for b.Loop() {
		i++
		id := bot.ConversationID(fmt.Sprintf("chat:9/chat:%d", i%1000))
		_, claimErr := s.Claim(ctx, bot.MessageID(fmt.Sprintf("chat:%d", i)), "a/1", time.Now())
		_, readErr := s.Settings(ctx, bot.OwnerOfPerson("chat:1"), bot.OwnerOfChannel("chat:9"), bot.OwnerOfShop(""))
		_, convErr := s.Conversation(ctx, id)
		saveErr := s.SaveConversation(ctx, bot.Conversation{ID: id, Person: "chat:1", State: json.RawMessage(`{"topic":"binding"}`), At: time.Now()})
		if claimErr != nil || readErr != nil || saveErr != nil || (convErr != nil && convErr != bot.ErrNotFound) {
			b.Fatal(claimErr, readErr, convErr, saveErr)
		}
	}
}

// BenchmarkOpen opens a file of a hundred thousand conversations, which
// includes looking for damage.
func BenchmarkOpen(b *testing.B) {
	path := filepath.Join(b.TempDir(), "records.db")
	s := open(b, path)
	fillConversations(b, s, 100_000)
	require.NoError(b, s.Close())
	for b.Loop() {
		s, err := sqlite.Open(b.Context(), path)
		if err != nil {
			b.Fatal(err)
		}
		b.StopTimer()
		require.NoError(b, s.Close())
		b.StartTimer()
	}
}
