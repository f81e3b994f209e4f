package commands

import "counterhand/commands/scene"

// Outcome says what kind of reply a [Reply] is.
type Outcome string

// The outcomes of the contract.
const (
	Answer   Outcome = "answer"
	Question Outcome = "question"  // one thing is missing or ambiguous: the text asks for it
	Decline  Outcome = "decline"   // outside the job, or impossible as asked: the text says why and what would work
	PassedOn Outcome = "passed-on" // kept for the shop's staff
)

// Reply is what one request gets back. Its JSON form is the project's public
// interface; a nil list is written as an empty one.
type Reply struct {
	Outcome    Outcome      `json:"outcome"`
	Topic      string       `json:"topic"`      // one of the topics, or empty
	Text       string       `json:"text"`       // as a terminal shows it: the answer first, then what it rests on
	Understood []Understood `json:"understood"` // every input read from the request, and every number left aside
	Figures    []Figure     `json:"figures"`
	Assumed    []Assumed    `json:"assumed"`   // every default that took part
	Working    []string     `json:"working"`   // the arithmetic, line by line
	Reminders  []string     `json:"reminders"` // safety reminders that fit what is about to be done
	Choices    []string     `json:"choices"`   // what may be picked or said next, where the outcome is a question
	Files      []File       `json:"files"`

	Scenes    []scene.Source         `json:"-"` // pictures that go with the answer, undrawn and unbuilt
	Templates []scene.TemplateSource `json:"-"` // templates to print in true size, likewise
	ToCut     bool                   `json:"-"` // the answer is about to be cut from, so that a cutting sheet is of use
	ToPrint   bool                   `json:"-"` // what there is to print was asked for
}

// Printable tells whether there is something to print: templates or a cutting
// sheet.
func (r Reply) Printable() bool { return r.Outcome == Answer && (r.ToCut || len(r.Templates) > 0) }

// Understood is one input as it was read from the request.
type Understood struct {
	Name  string `json:"name"`
	Value any    `json:"value"` // float64, or string for words
	Unit  string `json:"unit"`
	From  string `json:"from"` // the words that it came from
}

// Figure is one result.
type Figure struct {
	Name  string `json:"name"`
	Value any    `json:"value"` // float64, or string for words
	Unit  string `json:"unit"`
	Shown string `json:"shown"` // as a person reads it
}

// Assumed is one default that took part in the result.
type Assumed struct {
	Name  string `json:"name"`
	Value any    `json:"value"`
	Unit  string `json:"unit"`
	Said  string `json:"-"` // as a person reads it: "¼ in seams"
}

// File is a picture or a sheet that comes with an answer.
type File struct {
	Name  string `json:"name"`
	Type  string `json:"type"` // media type
	Bytes int    `json:"bytes"`
	Data  []byte `json:"-"`
	Alt   string `json:"-"` // what matters in it, in words, for who cannot see it
}
