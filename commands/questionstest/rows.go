// Package questionstest holds what the question files under testdata/questions
// are judged with: their format, the rules by which a reply is right, asked,
// wrong or declined wrongly, and an independent reckoning of every figure that
// is expected. It shares no arithmetic with package calc on purpose: a figure
// counts as expected only when two routes agree on it.
package questionstest

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
)

// Request is one text on its own, with what must come back.
type Request struct {
	ID     string      `json:"id"`
	Topic  string      `json:"topic"`
	Text   string      `json:"text"`
	Oracle []Oracle    `json:"oracle,omitempty"` // one for each option of Expect that holds figures, in order
	Expect Expectation `json:"expect"`
	Note   string      `json:"note,omitempty"`
}

// Conversation is several texts of one person, in order.
type Conversation struct {
	ID    string `json:"id"`
	Note  string `json:"note,omitempty"`
	Turns []Turn `json:"turns"`
}

// Turn is one text of a conversation. Without an expectation anything goes.
type Turn struct {
	Say    string       `json:"say"`
	Oracle []Oracle     `json:"oracle,omitempty"`
	Expect *Expectation `json:"expect,omitempty"`
}

// Expectation is what a reply must hold. With AnyOf, one of those must be met
// and the other fields are unused.
type Expectation struct {
	AnyOf        []Expectation         `json:"any_of,omitempty"`
	Outcome      Words                 `json:"outcome,omitempty"`
	Topic        string                `json:"topic,omitempty"`
	Figures      map[string]FigureSpec `json:"figures,omitempty"`
	HasAny       []string              `json:"has_any,omitempty"`
	NoFigures    bool                  `json:"no_figures,omitempty"`
	AsksAbout    string                `json:"asks_about,omitempty"`
	AsksKeys     string                `json:"asks_keys,omitempty"`
	Understands  []float64             `json:"understands,omitempty"`
	TextHas      []string              `json:"text_has,omitempty"`
	TextNot      []string              `json:"text_not,omitempty"`
	NeedsAssumed bool                  `json:"needs_assumed,omitempty"`
	NeedsWorking bool                  `json:"needs_working,omitempty"`
}

// Options are the expectations of which one must be met.
func (e Expectation) Options() []Expectation {
	if len(e.AnyOf) > 0 {
		return e.AnyOf
	}
	return []Expectation{e}
}

// FigureSpec is one expected figure: a number, or words, within a tolerance in
// its own unit. An empty unit means any.
type FigureSpec struct {
	Value any     `json:"value"`
	Unit  string  `json:"unit,omitempty"`
	Tol   float64 `json:"tol"`
}

// Words is one word or a list of them in JSON.
type Words []string

// UnmarshalJSON takes "a" as well as ["a", "b"].
func (w *Words) UnmarshalJSON(b []byte) error {
	var one string
	if json.Unmarshal(b, &one) == nil {
		*w = Words{one}
		return nil
	}
	return json.Unmarshal(b, (*[]string)(w))
}

// MarshalJSON writes one word as "a".
func (w Words) MarshalJSON() ([]byte, error) {
	if len(w) == 1 {
		return json.Marshal(w[0])
	}
	return json.Marshal([]string(w))
}

// Load reads a file of one JSON object a line.
func Load[T any](path string) ([]T, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	var rows []T
	lines := bufio.NewScanner(f)
	lines.Buffer(nil, 1<<20)
	for n := 1; lines.Scan(); n++ {
		if len(bytes.TrimSpace(lines.Bytes())) == 0 {
			continue
		}
		var row T
		if err := json.Unmarshal(lines.Bytes(), &row); err != nil {
			return nil, fmt.Errorf("%s:%d: %w", path, n, err)
		}
		rows = append(rows, row)
	}
	return rows, lines.Err()
}

// Save writes rows as one JSON object a line.
func Save[T any](path string, rows []T) error {
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	for _, r := range rows {
		if err := enc.Encode(r); err != nil {
			return err
		}
	}
	return os.WriteFile(path, out.Bytes(), 0o644)
}

// Root is the folder that holds go.mod, seen from the working folder of a test.
func Root() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir, nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", fmt.Errorf("no go.mod above the working folder")
		}
		dir = up
	}
}
