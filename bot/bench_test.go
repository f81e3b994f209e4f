package bot_test

import (
	"fmt"
	"runtime"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/memory"
	"counterhand/commands"
)

// BenchmarkIdleConversations has a hundred thousand people ask one question
// each, and reports what memory each takes up from then on.
func BenchmarkIdleConversations(b *testing.B) {
	const conversations = 100_000
	assistant, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(b, err)
	for b.Loop() {
		before := heap()
		store := memory.Open(time.Now)
		engine, err := bot.NewEngine(bot.EngineConfig{Responder: assistant, Store: store})
		require.NoError(b, err)
		for i := range conversations {
			// Ids as long as the platforms' are.
			m := bot.Message{
				ID:      bot.MessageID(fmt.Sprintf("chat:1%018d", i)),
				Person:  bot.PersonID(fmt.Sprintf("chat:2%018d", i)),
				Channel: "chat:3000000000000000009",
				Text:    "binding for 54 x 68",
			}
			if _, err := engine.Handle(b.Context(), m); err != nil {
				b.Fatal(err)
			}
		}
		taken := heap() - before
		b.ReportMetric(float64(taken)/conversations, "B/conversation")
		b.ReportMetric(float64(taken)/1e6, "MB")
		runtime.KeepAlive(engine)
	}
}

// heap returns the bytes in use after everything unreachable is gone.
func heap() uint64 {
	runtime.GC()
	runtime.GC() // what the first one only made ready to go
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// BenchmarkHandle answers one question after another in one conversation.
func BenchmarkHandle(b *testing.B) {
	assistant, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(b, err)
	engine, err := bot.NewEngine(bot.EngineConfig{Responder: assistant, Store: memory.Open(time.Now)})
	require.NoError(b, err)
	i := 0
	for b.Loop() {
		i++
		m := bot.Message{ID: bot.MessageID(fmt.Sprint("chat:", i)), Person: "chat:7", Channel: "chat:9", Text: "binding for 54 x 68"}
		if _, err := engine.Handle(b.Context(), m); err != nil {
			b.Fatal(err)
		}
	}
}
