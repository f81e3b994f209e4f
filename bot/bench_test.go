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

// What one person asks before leaving: one question, or as many as a
// conversation can go back to.
var visits = map[string][]string{
	"one question":   {"binding for 54 x 68"},
	"five questions": {"binding for 54 x 68", "ring of 16 wedges 6 in long from 3½ strips", "backing for 70 x 90", "3 in border on 50 x 60", "yardage for 48 squares 5½ from 42 in fabric"},
}

// BenchmarkIdleConversations has many people come and ask, and reports what
// memory each takes up from then on, all of it in this process.
func BenchmarkIdleConversations(b *testing.B) {
	assistant, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(b, err)
	for name, questions := range visits {
		const conversations = 100_000
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				before := heap()
				engine, err := bot.NewEngine(bot.EngineConfig{Responder: assistant, Store: memory.Open(time.Now)})
				require.NoError(b, err)
				for i := range conversations {
					ask(b, engine, i, questions)
				}
				taken := heap() - before
				b.ReportMetric(float64(taken)/conversations, "B/conversation")
				b.ReportMetric(float64(taken)/1e6, "MB")
				runtime.KeepAlive(engine)
			}
		})
	}
}

// ask has a person ask, with ids as long as the platforms' are.
func ask(b *testing.B, engine *bot.Engine, person int, questions []string) {
	for n, q := range questions {
		m := bot.Message{
			ID:      bot.MessageID(fmt.Sprintf("chat:%d%018d", n+1, person)),
			Person:  bot.PersonID(fmt.Sprintf("chat:2%018d", person)),
			Channel: "chat:3000000000000000009",
			Text:    q,
		}
		if _, err := engine.Handle(b.Context(), m); err != nil {
			b.Fatal(err)
		}
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
