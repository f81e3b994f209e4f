package commands

import (
	"strings"

	"counterhand/calc/measure"
)

// Value is one input as it was understood. It is plain data, kept in [State].
type Value struct {
	Kind   kind             `json:"k,omitempty"`
	Length measure.Length   `json:"l,omitempty"` // of lengths and cloth
	Size   measure.Size     `json:"z,omitzero"`
	Count  int              `json:"c,omitempty"`
	Down   int              `json:"d,omitempty"` // the second count of a grid
	Number float64          `json:"n,omitempty"` // degrees, percent
	Price  int64            `json:"p,omitempty"` // in hundredths
	Word   string           `json:"w,omitempty"`
	More   []measure.Length `json:"m,omitempty"` // further lengths where several may be given
	Items  []Item           `json:"i,omitempty"` // of lists
	Cut    basis            `json:"b,omitempty"`
	Each   bool             `json:"e,omitempty"` // said to be for each of something
	From   string           `json:"f,omitempty"` // the words that it came from
}

// Item is one line of a list: so many pieces of a size, or so much at a price.
type Item struct {
	Count int            `json:"c,omitempty"`
	Cloth measure.Length `json:"l,omitempty"` // instead of a count
	Size  measure.Size   `json:"z,omitzero"`
	Price int64          `json:"p,omitempty"` // of one, or of a yard or metre, in hundredths
	Metre bool           `json:"m,omitempty"` // the price is for a metre
	Name  string         `json:"n,omitempty"`
}

// basis tells whether a size was said to be finished or cut.
type basis uint8

const (
	unsaid basis = iota
	finishedSize
	cutSize
)

// lengths gives all lengths of an input that may be given several times.
func (v Value) lengths() []measure.Length { return append([]measure.Length{v.Length}, v.More...) }

// readable turns a name of the contract into words.
func readable(name string) string { return strings.ReplaceAll(name, "_", " ") }
