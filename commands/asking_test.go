package commands_test

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/commands"
	"counterhand/commands/questionstest"
)

// asked gives the requests of all question files that are answered by a
// question, each with the conversation that has come to it.
func asked(t *testing.T, each func(id, text string, c *talk, question commands.Reply)) {
	fresh := newTalk(t)
	for _, dir := range questionSets(t) {
		requests, err := questionstest.Load[questionstest.Request](filepath.Join(dir, "requests.jsonl"))
		require.NoError(t, err)
		for _, r := range requests {
			c := fresh.again()
			if q := c.say(r.Text); q.Outcome == commands.Question {
				each(r.ID, r.Text, c, q)
			}
		}
	}
}

// Somebody who does not understand a question is not asked it again in the same
// words: in others first, then with an example and a way out.
func TestQuestionsAreNeverRepeated(t *testing.T) {
	asked(t, func(id, text string, c *talk, q commands.Reply) {
		last := q
		for _, noise := range []string{"hmm", "what?"} {
			r := c.say(noise)
			if r.Outcome == commands.Question {
				assert.NotEqual(t, last.Text, r.Text, "%s  %q, then %q", id, text, noise)
			}
			last = r
		}
	})
}

// Who does not know gets something usable: an answer that names what it took,
// or the next thing that is missing.
func TestQuestionsTakeDontKnow(t *testing.T) {
	usable, n := 0, 0
	asked(t, func(id, text string, c *talk, q commands.Reply) {
		r := c.say("I don't know")
		n++
		assert.NotEqual(t, q.Text, r.Text, "%s  %q", id, text)
		if r.Outcome == commands.Answer && len(r.Figures) > 0 {
			usable++
			assert.NotEmpty(t, r.Assumed, "%s  %q: what was taken is not said: %q", id, text, r.Text)
		}
	})
	t.Logf("%d of %d questions lead to an answer when the person does not know", usable, n)
}

// A question ends by asking, offers at most a handful of choices, and gives no figure.
func TestQuestionsAreAskedWell(t *testing.T) {
	asked(t, func(id, text string, _ *talk, q commands.Reply) {
		assert.Contains(t, q.Text, "?", "%s  %q", id, text)
		assert.LessOrEqual(t, len(q.Choices), 10, "%s  %q: %v", id, text, q.Choices)
		assert.Empty(t, q.Figures, "%s  %q", id, text)
	})
}
