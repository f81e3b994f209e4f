package commands

import (
	"bytes"
	"encoding/json"
)

// MarshalJSON writes every list, also one that is nil, as a list, and leaves
// signs such as < as they are.
func (r Reply) MarshalJSON() ([]byte, error) {
	type plain Reply // without this method
	r.Understood = listOf(r.Understood)
	r.Figures = listOf(r.Figures)
	r.Assumed = listOf(r.Assumed)
	r.Working = listOf(r.Working)
	r.Reminders = listOf(r.Reminders)
	r.Choices = listOf(r.Choices)
	r.Files = listOf(r.Files)
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(plain(r)); err != nil {
		return nil, err
	}
	return bytes.TrimSuffix(b.Bytes(), []byte("\n")), nil
}

func listOf[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}
