package main

import (
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
// yet, so that a single question is answered without waiting. The log holds
// nothing below the least level: who asks a question wants no report.
func newHouse(o *options, std streams, least slog.Level) (*house, error) {
	cfg, err := o.load()
	if err != nil {
		return nil, err
	}
	assistant, err := commands.NewAssistant(defaults(cfg))
	if err != nil {
		return nil, err
	}
	log := newLog(cfg.Log, std, least)
	slog.SetDefault(log)
	return &house{cfg, assistant, log}, nil
}

// newLog writes what the operator asked for, from the least level up.
func newLog(cfg config.Log, std streams, least slog.Level) *slog.Logger {
	options := &slog.HandlerOptions{Level: max(cfg.Level, least)}
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
		Retention:    h.retention(),
		Log:          h.log,
	})
}

// forgetful makes an engine that keeps nothing beyond the program's end.
func (h *house) forgetful() (*bot.Engine, error) { return h.engine(memory.Open(time.Now)) }
