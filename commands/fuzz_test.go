package commands_test

import (
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"counterhand/commands"
	"counterhand/commands/questionstest"
)

// longest is the most characters that a message or a reply may have; chat
// services set it.
const longest = 2000

// FuzzRequest asks anything at all. Whatever comes, no number is ignored, the
// reply is one of the four kinds and short enough to send, and nothing harmful
// is repeated; and the same holds for a second message after it.
func FuzzRequest(f *testing.F) {
	for _, dir := range questionSets(f) {
		requests, err := questionstest.Load[questionstest.Request](filepath.Join(dir, "requests.jsonl"))
		require.NoError(f, err)
		for _, r := range requests {
			f.Add(r.Text, "and with 2¼ strips?")
		}
	}
	f.Add(strings.Repeat("9 ", 1000), "why")
	f.Add("binding for "+strings.Repeat("(", 500), "yes")
	f.Add("99999999999999999999 x 1e308 binding", "1/0")
	f.Add("backing ٣٠ x ４０ \x00\xff", "\u202e60 x 80")

	fresh := newTalk(f)
	f.Fuzz(func(t *testing.T, first, second string) {
		c := fresh.again()
		for _, text := range []string{first, second} {
			if utf8.RuneCountInString(text) > longest {
				t.Skip("longer than a message may be")
			}
			checkLaws(t, text, c.say(text))
		}
	})
}

func checkLaws(t *testing.T, text string, r commands.Reply) {
	switch r.Outcome {
	case commands.Answer, commands.Question, commands.Decline, commands.PassedOn:
	default:
		t.Fatalf("outcome %q for %q", r.Outcome, text)
	}
	if left := questionstest.Unaccounted(text, r); len(left) > 0 {
		t.Fatalf("numbers %v of %q are ignored: %q, understood %v", left, text, r.Text, r.Understood)
	}
	if back := questionstest.Echoed(r); len(back) > 0 {
		t.Fatalf("%v comes back from %q: %q", back, text, r.Text)
	}
	if n := utf8.RuneCountInString(r.Text); n > longest {
		t.Fatalf("%d characters for %q", n, text)
	}
}
