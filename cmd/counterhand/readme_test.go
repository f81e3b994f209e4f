package main

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/commands"
)

const readme = "../../README.md"

// made are the parts of README that the program makes: each stands between a
// line that names it and the line "<!-- end -->".
var made = map[string]func(*testing.T) string{
	"transcript": transcript,
	"topics":     topicTable,
}

// What README shows is what the program says. UPDATE_README=1 writes it anew;
// read the difference before you keep it.
func TestReadmeShowsTheProgram(t *testing.T) {
	content, err := os.ReadFile(readme)
	require.NoError(t, err)
	text := string(content)
	for name, make := range made {
		begin := "<!-- " + name + " -->\n"
		before, rest, ok := strings.Cut(text, begin)
		require.True(t, ok, "README has no %s", name)
		shown, after, ok := strings.Cut(rest, "<!-- end -->\n")
		require.True(t, ok, "%s does not end", name)
		want := "\n" + make(t) + "\n"
		if os.Getenv("UPDATE_README") != "" {
			text = before + begin + want + "<!-- end -->\n" + after
			continue
		}
		assert.Equal(t, want, shown, name)
	}
	if os.Getenv("UPDATE_README") != "" {
		require.NoError(t, os.WriteFile(readme, []byte(text), 0o666))
	}
}

// said is the conversation that README shows.
var said = []string{
	"binding for 54 x 68",
	"and with 2¼ strips?",
	"ring of 16 blades, 6 in long",
	"25 blades of 18 degrees in a circle",
	"how long can my blades be?",
	"18° from 3 in strips",
}

// transcript holds the conversation as a shop that sets nothing would.
func transcript(t *testing.T) string {
	h := &house{assistant: assistant(t, nil)}
	engine, err := h.forgetful()
	require.NoError(t, err)
	var turns []string
	for _, text := range said {
		reply, err := engine.Handle(t.Context(), bot.Message{Person: "reader", Channel: "readme", Text: text})
		require.NoError(t, err)
		lines := strings.ReplaceAll(reply.Text, "\n", "  \n> ")
		turns = append(turns, fmt.Sprintf("> **%s**\n>\n> %s\n", text, lines))
	}
	return strings.Join(turns, "\n")
}

// groupNames are the headings of the topics, in the order of the table.
var groupNames = []struct {
	group commands.Group
	name  string
}{
	{commands.SizeIt, "size it"}, {commands.CutIt, "cut it"}, {commands.BuyIt, "buy it"},
	{commands.FinishIt, "finish it"}, {commands.AroundIt, "around it"},
}

// topicTable lists what can be asked, with a question for each.
func topicTable(t *testing.T) string {
	topics := assistant(t, nil).Topics()
	rows, listed := []string{"| to | topic | it works out | for example |", "| --- | --- | --- | --- |"}, 0
	for _, g := range groupNames {
		for _, topic := range topics {
			if topic.Group != g.group {
				continue
			}
			rows = append(rows, fmt.Sprintf("| %s | `%s` | %s | %s |", g.name, topic.Name, topic.Title, topic.Examples[0]))
			listed++
		}
	}
	assert.Equal(t, len(topics), listed, "every topic has a group of the table")
	return strings.Join(rows, "\n") + "\n"
}
