package commands

import "counterhand/calc/measure"

// State is what a conversation carries from one message to the next. It is
// plain data that survives being written as JSON and read back; the zero value
// is a conversation that has not begun.
type State struct {
	Last     Request   `json:"last,omitzero"`
	Before   []Request `json:"before,omitempty"` // earlier requests, the latest first
	Asked    string    `json:"asked,omitempty"`  // the input that the last reply asked about
	Choices  []string  `json:"choices,omitempty"`
	Doubt    string    `json:"doubt,omitempty"` // the words that the question was about, where it was about a number
	Misses   int       `json:"misses,omitempty"`
	Reminded []string  `json:"reminded,omitempty"`
	Units    string    `json:"units,omitempty"` // for this conversation only
	Drill    Drill     `json:"drill,omitzero"`
}

// Request is a request as it was understood: enough to work it out again.
type Request struct {
	Topics  []string         `json:"topics,omitempty"`
	Values  map[string]Value `json:"values,omitempty"`
	Changed []string         `json:"changed,omitempty"` // inputs, the latest said last
	Metric  bool             `json:"metric,omitempty"`
	Size    measure.Size     `json:"size,omitzero"` // of the quilt that came out or was given, for "backing for that"
}

// none tells whether nothing was asked yet.
func (r Request) none() bool { return len(r.Topics) == 0 }

// topic gives the name of its single topic, or of its first.
func (r Request) topic() string {
	if r.none() {
		return ""
	}
	return r.Topics[0]
}

// keptRequests is how many earlier requests a conversation can go back to.
const keptRequests = 2

// remember makes r the last request.
func (s State) remember(r Request) State {
	if !s.Last.none() {
		s.Before = append([]Request{s.Last}, s.Before...)
		s.Before = s.Before[:min(len(s.Before), keptRequests)]
	}
	s.Last = r
	s.Asked, s.Choices, s.Doubt, s.Misses = "", nil, "", 0
	return s
}
