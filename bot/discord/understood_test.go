package discord_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot/discord"
	"counterhand/commands"
)

// filled is a command filled in, and the topic that has to come of it. The
// topics and what each needs are those of the project's public interface.
type filled struct {
	command, part string
	inputs        map[string]string
	topic         string
}

var commandsFilledIn = []filled{
	{"binding", "straight", map[string]string{"quilt": "54 x 68", "strip": "2¼ in", "fabric": "42 in"}, "binding"},
	{"binding", "straight", map[string]string{"quilt": "150 x 200 cm", "strip": "6.5 cm"}, "binding"},
	{"binding", "bias", map[string]string{"length": "300 in", "strip": "2 1/4\""}, "bias-binding"},
	{"backing", "fabric", map[string]string{"quilt": "70 x 90", "fabric": "42 in", "extra": "4 in"}, "backing"},
	{"backing", "batting", map[string]string{"quilt": "70 x 90", "extra": "4 in"}, "batting"},
	{"borders", "", map[string]string{"width": "3 in", "centre": "50 x 60", "corners": "mitred", "fabric": "42 in"}, "borders"},
	{"blades", "ring", map[string]string{"blades": "16", "length": "6 in", "narrow": "⅞ in", "tip": "folded", "seam": "¼ in"}, "wedge-ring"},
	{"blades", "count", map[string]string{"angle": "22½°"}, "wedge-count"},
	{"blades", "fit", map[string]string{"angle": "15°", "strip": "3 in", "narrow": "⅞ in"}, "wedge-fit"},
	{"blades", "strips", map[string]string{"blades": "96", "length": "6 in", "strip": "3 in"}, "wedge-strips"},
	{"blocks", "straight", map[string]string{"block": "12 in", "quilt": "60 x 72"}, "layout"},
	{"blocks", "on-point", map[string]string{"block": "12 in", "across": "5", "down": "6"}, "layout"},
	{"blocks", "triangles", map[string]string{"block": "12 in"}, "setting-triangles"},
	{"blocks", "sashing", map[string]string{"block": "9 in", "across": "5", "down": "6", "sash": "2 in", "corners": "with cornerstones"}, "sashing"},
	{"units", "half-square", map[string]string{"size": "3 in", "units": "24", "method": "four at a time"}, "half-square-triangles"},
	{"units", "quarter-square", map[string]string{"size": "4 in", "units": "12"}, "quarter-square-triangles"},
	{"units", "geese", map[string]string{"size": "3 x 6", "units": "16", "method": "four at a time"}, "flying-geese"},
	{"cloth", "buy", map[string]string{"pieces": "48", "size": "5½ in"}, "yardage"},
	{"cloth", "buy", map[string]string{"pieces": "20", "size": "2½ x 6½ in"}, "yardage"},
	{"cloth", "pieces", map[string]string{"size": "5 in", "from": "fat quarter"}, "pieces"},
	{"cloth", "convert", map[string]string{"length": "⅝ yd", "into": "inches"}, "convert"},
	{"bed", "", map[string]string{"bed": "queen", "drop": "12 in"}, "bed"},
}

func respond(t *testing.T, text string) commands.Reply {
	t.Helper()
	assistant, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(t, err)
	return assistant.Respond(commands.Turn{Text: text}).Reply
}

// What a command says is understood by the assistant itself, and every number
// that was filled in is taken into account.
func TestCommandsAreUnderstood(t *testing.T) {
	families := map[string]discord.Family{}
	parts := 0
	for _, f := range discord.Families() {
		families[f.Name] = f
		parts += max(len(f.Parts), 1)
	}
	tried := map[string]bool{}
	for _, row := range commandsFilledIn {
		tried[row.command+" "+row.part] = true
		text := families[row.command].Request(row.part, func(name string) string { return row.inputs[name] })
		t.Run(text, func(t *testing.T) {
			reply := respond(t, text)
			assert.Equal(t, commands.Answer, reply.Outcome, reply.Text)
			assert.Equal(t, row.topic, reply.Topic)
		})
	}
	assert.Len(t, tried, parts, "each command is tried")
}

// Cases 24 to 31 and 37: what phones and people make of a question leads to the
// same figures as the plain form.
func TestQuestionsAsPhonesWriteThem(t *testing.T) {
	want := respond(t, "binding for 54 x 68 with 2 1/4 in strips").Figures
	require.NotEmpty(t, want)
	for name, text := range map[string]string{
		"case 24: curly quotes":        "binding for 54” x 68″ with 2 1/4” strips",
		"case 25: fraction slash":      "binding for 54 x 68 with 2 1⁄4 in strips",
		"case 25: one sign":            "binding for 54 x 68 with 2¼ in strips",
		"case 25: with a hyphen":       "binding for 54 x 68 with 2-1/4 in strips",
		"case 26: star":                "binding for 54 * 68 with 2 1/4 in strips",
		"case 26: sign":                "binding for 54 × 68 with 2 1/4 in strips",
		"case 26: by":                  "binding for 54 by 68 with 2 1/4 in strips",
		"case 28: hidden signs":        "bind\u200bing for \u202a54\u202c x\u00a068 with 2 1/4\u2009in strips\ufeff",
		"case 29: capital and a space": "Binding For 54 X 68 With 2 1/4 In Strips ",
		"case 30: on several lines":    "binding\r\nfor 54 x 68\nwith 2 1/4 in strips",
	} {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, want, respond(t, text).Figures)
		})
	}
	t.Run("case 31: an ambiguous comma is not taken silently", func(t *testing.T) {
		reply := respond(t, "bias binding 1,000 in of 2¼")
		if reply.Outcome == commands.Answer {
			assert.Equal(t, "1000 in", reply.Figures[0].Shown)
		}
	})
	t.Run("case 37: a long message has an end", func(t *testing.T) {
		assert.NotEmpty(t, respond(t, strings.Repeat("((((a+)+)+)+)", 150)).Text)
	})
}

// What the buttons say is understood in the conversation that they belong to.
func TestStepsAreUnderstood(t *testing.T) {
	assistant, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(t, err)
	for _, question := range []string{"backing for 70 x 90", "3 in border on 50 x 60", "24 hst 3 in finished", "16 flying geese 3 x 6"} {
		first := assistant.Respond(commands.Turn{Text: question})
		for _, words := range []string{"show the working", "the other way", "in cm"} {
			next := assistant.Respond(commands.Turn{Text: words, State: first.State, Own: first.Own})
			assert.Equal(t, commands.Answer, next.Reply.Outcome, "%s, %s: %s", question, words, next.Reply.Text)
			assert.Equal(t, first.Reply.Topic, next.Reply.Topic)
		}
	}
}
