// Package storetest is the suite that every store must pass. A store calls
// [Run] from a test of its own with a function that makes an empty store.
//
// A new kind of record adds a file here with its rows, and a line in [Run]; its
// samples go into samples, so that export, import and forgetting cover it.
package storetest

import (
	"encoding/json"
	"testing"
	"time"

	"counterhand/bot"
)

// Factory makes an empty store that is closed when the test ends.
type Factory func(t *testing.T) bot.Store

// Run runs the whole suite.
func Run(t *testing.T, empty Factory) {
	for _, part := range []struct {
		name string
		run  func(*testing.T, Factory)
	}{
		{"settings", testSettings},
		{"conversations", testConversations},
		{"seen messages", testSeen},
		{"leases", testLeases},
		{"forgetting", testForget},
		{"retention", testSweep},
		{"transfer", testTransfer},
		{"contexts", testContexts},
	} {
		t.Run(part.name, func(t *testing.T) { part.run(t, empty) })
	}
}

// noon is when the samples were written. It is whole milliseconds, as stores keep times.
var noon = time.Date(2026, 3, 14, 12, 0, 0, 123e6, time.UTC)

// Two people of the invented shop's chat.
const (
	ada  bot.PersonID = "chat:1001"
	bela bot.PersonID = "chat:1002"
)

// samples are records of every kind, of more than one owner, with texts that a
// careless statement would stumble over.
func samples() []bot.Record {
	return []bot.Record{
		{Settings: &bot.SettingsRecord{Scope: bot.ScopeChannel, ID: "chat:9", Changed: noon, Document: json.RawMessage(`{"metric":true}`)}},
		{Settings: &bot.SettingsRecord{Scope: bot.ScopePerson, ID: string(ada), Changed: noon, Document: json.RawMessage(`{"usable_width":"43 in","note":"it's 22½° \" \\ % $1 ? 針"}`)}},
		{Settings: &bot.SettingsRecord{Scope: bot.ScopePerson, ID: string(bela), Changed: noon, Document: json.RawMessage(`{"seam":"7 mm"}`)}},
		{Settings: &bot.SettingsRecord{Scope: bot.ScopeShop, ID: "", Changed: noon, Document: json.RawMessage(`{"binding_strip":"2.25 in"}`)}},
		{Conversation: &bot.ConversationRecord{ID: "chat:9/chat:1001", Person: ada, At: noon, State: json.RawMessage(`{"topic":"binding"}`)}},
		{Conversation: &bot.ConversationRecord{ID: "chat:9/chat:1002", Person: bela, At: noon, State: json.RawMessage(`{"topic":"backing"}`)}},
		{Conversation: &bot.ConversationRecord{ID: "chat:8/chat:1001", Person: ada, At: noon, State: json.RawMessage(`{}`)}},
		{Seen: &bot.SeenRecord{ID: "chat:5001", Claimant: "a/1", At: noon}},
		{Seen: &bot.SeenRecord{ID: "chat:5002", Claimant: "b/1", At: noon}},
	}
}
