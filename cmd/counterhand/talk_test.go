package main

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Who tries what the greeting shows gets an answer.
func TestGreetingShowsQuestionsThatAreAnswered(t *testing.T) {
	a := assistant(t, nil)
	questions := examples(a)
	require.Len(t, questions, 5)
	for _, q := range questions {
		assert.NotEmpty(t, figures(t, a, q), q)
	}
}
