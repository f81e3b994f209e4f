// Package commands turns words into calculations and results into words. It
// takes one message with what its conversation holds, and gives one reply
// value. No number of a message is ignored, and no default goes unsaid. It is
// pure: the same turn gets the same response, there is no clock, network or
// disk here; everything is safe for concurrent use.
package commands

// State is what a conversation carries from one message to the next. It is
// plain data that survives being written as JSON and read back; the zero value
// is a conversation that has not begun.
type State struct{}

// Settings are what somebody has set, by name, each value as a person would
// write it ("usable_width": "43 in", "units": "metric").
type Settings map[string]string

// Turn is one message in a conversation: what was said, what the conversation
// holds so far, and what applies to the person.
type Turn struct {
	Text   string
	State  State
	Own    Settings // what the person has set
	Shared Settings // what the channel and the shop have set, the channel's over the shop's
}

// Response is what a turn leads to.
type Response struct {
	Reply  Reply
	State  State    // what the conversation holds from now on
	Own    Settings // what the person has set from now on; the same map as in the turn where nothing changed
	Forget bool     // the person asked that everything kept of them be deleted
}

// Assistant answers turns. It is immutable and safe for concurrent use.
type Assistant struct{}

// NewAssistant makes an assistant.
func NewAssistant() (*Assistant, error) { return &Assistant{}, nil }

// Respond answers one turn.
func (a *Assistant) Respond(t Turn) Response {
	return Response{Reply: Reply{Outcome: Decline}, State: t.State, Own: t.Own}
}
