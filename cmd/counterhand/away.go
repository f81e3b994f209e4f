package main

import (
	"context"
	"encoding/json"
	"time"

	"counterhand/bot"
)

// away is a store that could not be opened: every call fails with the reason.
type away struct{ err error }

var _ bot.Store = away{}

// Settings implements [bot.SettingsStore].
func (a away) Settings(context.Context, ...bot.Owner) (map[bot.Owner]bot.Settings, error) {
	return nil, a.err
}

// ChangeSettings implements [bot.SettingsStore].
func (a away) ChangeSettings(context.Context, bot.Owner, time.Time, func(json.RawMessage) (json.RawMessage, error)) error {
	return a.err
}

// Conversation implements [bot.ConversationStore].
func (a away) Conversation(context.Context, bot.ConversationID) (bot.Conversation, error) {
	return bot.Conversation{}, a.err
}

// SaveConversation implements [bot.ConversationStore].
func (a away) SaveConversation(context.Context, bot.Conversation) error { return a.err }

// Claim implements [bot.SeenStore].
func (a away) Claim(context.Context, bot.MessageID, string, time.Time) (bool, error) {
	return false, a.err
}

// Acquire implements [bot.LeaseStore].
func (a away) Acquire(context.Context, string, string, time.Duration) (bot.Lease, error) {
	return bot.Lease{}, a.err
}

// Renew implements [bot.LeaseStore].
func (a away) Renew(context.Context, bot.Lease, time.Duration) (bot.Lease, error) {
	return bot.Lease{}, a.err
}

// Release implements [bot.LeaseStore].
func (a away) Release(context.Context, bot.Lease) error { return a.err }

// Forget implements [bot.PrivacyStore].
func (a away) Forget(context.Context, bot.PersonID) (bot.Forgotten, error) {
	return bot.Forgotten{}, a.err
}

// Sweep implements [bot.PrivacyStore].
func (a away) Sweep(context.Context, time.Time, bot.Retention) (bot.Swept, error) {
	return bot.Swept{}, a.err
}

// Export implements [bot.TransferStore].
func (a away) Export(context.Context, func(bot.Record) error) error { return a.err }

// Import implements [bot.TransferStore].
func (a away) Import(context.Context, func() (bot.Record, error)) error { return a.err }

// Backup implements [bot.TransferStore].
func (a away) Backup(context.Context, string) error { return a.err }

// Close implements [bot.Store]; nothing is open.
func (a away) Close() error { return nil }
