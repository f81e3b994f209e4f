package main

import (
	"fmt"
	"log/slog"
	"time"

	"counterhand/bot"
	"counterhand/bot/store/memory"
	"counterhand/commands"
	"counterhand/config"
)

// house is what stands behind every surface: the configuration, the assistant
// that it makes, and the log.
type house struct {
	config    config.Config
	assistant *commands.Assistant
	log       *slog.Logger
}

// newHouse reads the configuration and makes the assistant. Nothing is opened
// yet, so that a single question is answered without waiting.
func newHouse(o *options, std streams) (*house, error) {
	cfg, err := o.load()
	if err != nil {
		return nil, err
	}
	assistant, err := commands.NewAssistant(defaults(cfg))
	if err != nil {
		return nil, err
	}
	log := newLog(cfg.Log, std)
	slog.SetDefault(log)
	return &house{cfg, assistant, log}, nil
}

// newLog writes what the operator asked for.
func newLog(cfg config.Log, std streams) *slog.Logger {
	var level slog.Level
	if err := level.UnmarshalText([]byte(cfg.Level)); err != nil {
		panic(fmt.Sprintf("a loaded configuration has no such level: %v", err))
	}
	options := &slog.HandlerOptions{Level: level}
	if cfg.JSON {
		return slog.New(slog.NewJSONHandler(std.err, options))
	}
	return slog.New(slog.NewTextHandler(std.err, options))
}

// engine joins the assistant to a store.
func (h *house) engine(store bot.Store) (*bot.Engine, error) {
	return bot.NewEngine(bot.EngineConfig{
		Responder:    h.assistant,
		Store:        store,
		ContextAge:   h.config.Conversation.Age,
		StoreTimeout: h.config.Storage.Timeout,
		Log:          h.log,
	})
}

// forgetful makes an engine that keeps nothing beyond the program's end.
func (h *house) forgetful() (*bot.Engine, error) { return h.engine(memory.Open(time.Now)) }
