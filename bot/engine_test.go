package bot_test

import (
	"context"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/memory"
	"counterhand/commands"
)

// echo answers with what it was asked.
type echo struct{}

func (echo) Respond(t commands.Turn) commands.Response {
	return commands.Response{Reply: commands.Reply{Outcome: commands.Answer, Text: t.Text}, State: t.State, Own: t.Own}
}

func newEngine(t *testing.T, change func(*bot.EngineConfig)) *bot.Engine {
	t.Helper()
	cfg := bot.EngineConfig{Responder: echo{}, Store: memory.Open(time.Now)}
	if change != nil {
		change(&cfg)
	}
	e, err := bot.NewEngine(cfg)
	require.NoError(t, err)
	return e
}

func TestRepeatedMessageIsAnsweredOnce(t *testing.T) {
	store := memory.Open(time.Now)
	share := func(cfg *bot.EngineConfig) { cfg.Store = store }
	engines := []*bot.Engine{newEngine(t, share), newEngine(t, share)}
	m := bot.Message{ID: "chat:1", Person: "chat:7", Channel: "chat:9", Text: "binding for 54 x 68"}

	var wg sync.WaitGroup
	errs := make([]error, 10)
	for i := range errs {
		wg.Go(func() { _, errs[i] = engines[i%2].Handle(context.Background(), m) })
	}
	wg.Wait()

	answered := 0
	for _, err := range errs {
		if err == nil {
			answered++
			continue
		}
		assert.ErrorIs(t, err, bot.ErrRepeat)
	}
	assert.Equal(t, 1, answered)
}
