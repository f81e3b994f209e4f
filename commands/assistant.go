// Package commands turns words into calculations and results into words.
package commands

// State is what a conversation carries from one message to the next. It is
// plain data that survives being written as JSON and read back.
type State struct{}

// Assistant answers requests. It is immutable and safe for concurrent use.
type Assistant struct{}

// NewAssistant makes an assistant with the shop's defaults.
func NewAssistant() *Assistant { return &Assistant{} }

// Respond answers one text, given what the conversation holds so far, and
// gives back what it holds from now on.
func (a *Assistant) Respond(text string, st State) (Reply, State) {
	return Reply{Outcome: Decline}, st
}
