package main

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/commands"
)

// asked runs the program on an input and gives the replies.
func asked(t *testing.T, input string, args ...string) ([]commands.Reply, int) {
	t.Helper()
	for _, name := range []string{"XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME"} {
		t.Setenv(name, t.TempDir())
	}
	var out, problems bytes.Buffer
	status := run(t.Context(), args, streams{strings.NewReader(input), &out, &problems})
	assert.Empty(t, problems.String())
	var replies []commands.Reply
	for line := range strings.Lines(out.String()) {
		var r commands.Reply
		require.NoError(t, json.Unmarshal([]byte(line), &r), line)
		replies = append(replies, r)
	}
	return replies, status
}

// Whatever stands in a line, it gets one short reply, and the next its answer.
func TestStrangeLinesGetOneReplyEach(t *testing.T) {
	lines := []string{
		strings.Repeat("binding ", 300_000), // more than two megabytes
		strings.Repeat("9", 1<<20),
		strings.Repeat("½", 1<<19), // cut within a character
		"\x00\xff\xfe\x80 binding \x00 54 x 68",
		"\x1b[2J\x1b]0;title\x07",
		"\u202e86 x 45 rof gnidnib",
		"", " ", "\t",
		"54 68 2 9",
		"binding for 0 x 0",
		"binding for -54 x 68",
		"wedge of 0 degrees",
		"wedges of 200 degrees in a circle",
		"binding for 1000000000000 x 2",
		`{"text": "binding"}`,
	}
	for _, mode := range [][]string{{"ask", "--json", "-"}, {"talk", "--json"}} {
		replies, _ := asked(t, strings.Join(append(lines, "binding for 54 x 68"), "\n"), mode...)
		require.Len(t, replies, len(lines)+1, mode[0])
		for i, r := range replies[:len(lines)] {
			assert.Contains(t, []commands.Outcome{commands.Question, commands.Decline, commands.Answer}, r.Outcome)
			assert.NotEmpty(t, r.Text, "line %d", i+1)
			assert.LessOrEqual(t, len([]rune(r.Text)), 2000, "line %d", i+1)
			assert.NotContains(t, r.Text, "\x1b", "line %d", i+1)
		}
		last := replies[len(lines)]
		assert.Equal(t, commands.Answer, last.Outcome)
		assert.True(t, strings.HasPrefix(last.Text, "7 strips"), last.Text)
	}
}

func TestStatusSaysWhetherAllWereAnswered(t *testing.T) {
	for _, tt := range []struct {
		input string
		want  int
	}{
		{"", statusAnswer},
		{"binding for 54 x 68\nbinding for 72 x 90\n", statusAnswer},
		{"binding for 54 x 68\nbinding\n", statusNoSum},
		{"what is the weather like\nbinding for 54 x 68\n", statusNoSum},
	} {
		_, status := asked(t, tt.input, "ask", "--json", "-")
		assert.Equal(t, tt.want, status, "%q", tt.input)
		_, status = asked(t, tt.input, "talk", "--json")
		assert.Equal(t, statusAnswer, status, "%q", tt.input)
	}
}
