package sqlite_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/sqlite"
	"counterhand/commands"
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

// BenchmarkDurableWrite changes settings in a way that survives the machine, and
// reports the median besides the mean.
func BenchmarkDurableWrite(b *testing.B) {
	s := open(b, filepath.Join(b.TempDir(), "records.db"))
	var took []time.Duration
	for b.Loop() {
		owner := bot.OwnerOfPerson(bot.PersonID(fmt.Sprintf("chat:%d", len(took)%1000)))
		began := time.Now()
		err := s.ChangeSettings(b.Context(), owner, began, func(json.RawMessage) (json.RawMessage, error) {
			return json.RawMessage(`{"usable_width":"43 in"}`), nil
		})
		if err != nil {
			b.Fatal(err)
		}
		took = append(took, time.Since(began))
	}
	slices.Sort(took)
	b.ReportMetric(float64(took[len(took)/2]), "median-ns/op")
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
		if claimErr != nil || readErr != nil || saveErr != nil || (convErr != nil && !errors.Is(convErr, bot.ErrNotFound)) {
			b.Fatal(claimErr, readErr, convErr, saveErr)
		}
	}
}

// BenchmarkOpen opens a file with as many conversations as its name says, which
// includes looking for damage.
func BenchmarkOpen(b *testing.B) {
	for _, conversations := range []int{10, 100_000} {
		b.Run(fmt.Sprint(conversations), func(b *testing.B) {
			path := filepath.Join(b.TempDir(), "records.db")
			s := open(b, path)
			fillConversations(b, s, conversations)
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
		})
	}
}

// BenchmarkIdleConversations has a file with a hundred thousand open
// conversations, goes on with as many of them as the engine holds in memory, and
// reports by how much the process has grown.
func BenchmarkIdleConversations(b *testing.B) {
	const conversations = 100_000
	assistant, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(b, err)
	for b.Loop() {
		before := resident(b)
		s := open(b, filepath.Join(b.TempDir(), "records.db"))
		fillConversations(b, s, conversations)
		engine, err := bot.NewEngine(bot.EngineConfig{Responder: assistant, Store: s})
		require.NoError(b, err)
		for i := range bot.DefaultConversations {
			_, err := engine.Handle(b.Context(), bot.Message{
				ID:     bot.MessageID(fmt.Sprintf("chat:1%018d", i)),
				Person: bot.PersonID(fmt.Sprintf("chat:%018d", i)), Channel: "chat:100000000000000009", Text: "binding for 54 x 68"})
			require.NoError(b, err)
		}
		grown := resident(b) - before
		b.ReportMetric(float64(grown)/conversations, "B/conversation")
		b.ReportMetric(float64(grown)/1e6, "MB")
	}
}

// resident returns the memory that the process takes up, in bytes: SQLite's own
// is outside the heap.
func resident(b *testing.B) int64 {
	b.Helper()
	debug.FreeOSMemory()
	status, err := os.ReadFile("/proc/self/status")
	if err != nil {
		b.Skip("only Linux tells how much memory a process takes up in this way")
	}
	for line := range strings.Lines(string(status)) {
		var kilobytes int64
		if n, _ := fmt.Sscanf(line, "VmRSS: %d kB", &kilobytes); n == 1 {
			return kilobytes * 1024
		}
	}
	b.Fatal("no VmRSS in /proc/self/status")
	return 0
}
