package questionstest

import (
	"flag"
	"path/filepath"
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the reckoned figures into testdata/questions")

// Every figure that a question expects is reckoned again here and compared
// with the stored one, so that none stands there unverified.
func TestStoredFiguresAreReckoned(t *testing.T) {
	root, err := Root()
	require.NoError(t, err)
	dir := filepath.Join(root, "testdata", "questions")

	requests, err := Load[Request](filepath.Join(dir, "requests.jsonl"))
	require.NoError(t, err)
	for i := range requests {
		r := &requests[i]
		t.Run(r.ID, func(t *testing.T) { reckon(t, r.Oracle, &r.Expect) })
	}
	conversations, err := Load[Conversation](filepath.Join(dir, "conversations.jsonl"))
	require.NoError(t, err)
	for _, c := range conversations {
		for i := range c.Turns {
			turn := &c.Turns[i]
			t.Run(c.ID, func(t *testing.T) {
				if turn.Expect != nil {
					reckon(t, turn.Oracle, turn.Expect)
				}
			})
		}
	}
	if *update && !t.Failed() {
		require.NoError(t, Save(filepath.Join(dir, "requests.jsonl"), requests))
		require.NoError(t, Save(filepath.Join(dir, "conversations.jsonl"), conversations))
	}
}

// reckon compares the options that hold figures with the sums behind them.
func reckon(t *testing.T, oracles []Oracle, e *Expectation) {
	options := e.Options()
	k := 0
	for i := range options {
		if options[i].Figures == nil {
			continue
		}
		require.Less(t, k, len(oracles), "figures without a sum behind them")
		want, err := oracles[k].Figures()
		require.NoError(t, err)
		require.NotEmpty(t, want)
		if *update {
			options[i].Figures = want
		} else {
			require.True(t, reflect.DeepEqual(want, options[i].Figures), "stored %v, reckoned %v", options[i].Figures, want)
		}
		k++
	}
	require.Equal(t, k, len(oracles), "a sum without an option that holds its figures")
	if len(e.AnyOf) == 0 {
		*e = options[0]
	}
}
