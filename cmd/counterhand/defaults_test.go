package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/commands"
	"counterhand/config"
)

// effects has, for every setting that sums rest on, a value other than the
// default, and a question to which the answer must then be another.
var effects = []struct{ key, value, question string }{
	{"work.system", "metric", "binding for 54 x 68"},
	{"work.country", "UK", "king quilt with 12 in drop"},
	{"fabric.usable_width", "45 in", "binding for 54 x 68"},
	{"fabric.wide_backing", "75 in", "backing for 70 x 90 with wide backing"},
	{"fabric.fat_quarter", "20 x 17½ in", "how many 6 in squares from a fat quarter"},
	{"fabric.fat_quarter_metric", "52 x 55 cm", "how many 11 cm squares from a fat quarter"},
	{"fabric.long_quarter", "42 x 9 in", "how many 3 in squares from a long quarter"},
	{"fabric.fat_eighth", "21 x 9 in", "how many 3 in squares from a fat eighth"},
	{"fabric.precut_strip", "3¾ in", "how many 1¼ in squares from a precut strip"},
	{"seams.allowance", "6 mm", "ring of 16 blades, 6 in long"},
	{"seams.straight_join", "4 in", "3 in border on 50 x 60"},
	{"rounding.inches.cut", "¼ in", "24 half square triangles 3 in finished"},
	{"rounding.inches.slack", "0 in", "24 half square triangles 2¼ in finished, four at a time"},
	{"rounding.inches.limit", "½ in", "longest 18° blade from a 3 in strip"},
	{"rounding.inches.buy", "¼ yd", "3 in border on 50 x 60"},
	{"rounding.inches.template", "½ in", "ring of 16 blades, 6 in long"},
	{"rounding.inches.cover", "1 in", "ring of 16 blades, 6 in long"},
	{"rounding.inches.ground", "2 in", "ring of 16 blades, 6 in long"},
	{"rounding.metric.cut", "5 mm", "24 half square triangles 7 cm finished"},
	{"rounding.metric.slack", "0.9 mm", "24 half square triangles 7 cm finished"},
	{"rounding.metric.limit", "1 cm", "longest 15° blade from a 7 cm strip"},
	{"rounding.metric.buy", "25 cm", "binding for 100 x 120 cm"},
	{"rounding.metric.template", "1 cm", "ring of 16 blades, 15 cm long"},
	{"rounding.metric.cover", "2 cm", "ring of 16 blades, 15 cm long"},
	{"rounding.metric.ground", "5 cm", "ring of 16 blades, 15 cm long"},
	{"binding.strip", "2¼ in", "binding for 54 x 68"},
	{"binding.extra", "30 in", "binding for 54 x 68"},
	{"binding.joined", "straight", "binding for 54 x 74"},
	{"backing.overage", "3 in", "backing for 70 x 90"},
	{"backing.panel_seam", "2 in", "backing for 70 x 90"},
	{"borders.corners", "mitred", "3 in border on 50 x 60"},
	{"borders.mitre_spare", "4 in", "3 in mitred border on 50 x 60"},
	{"blades.end", "folded", "ring of 16 blades, 6 in long"},
	{"blades.narrow_end", "1 in", "ring of 16 blades, 6 in long"},
	{"rings.cover_overlap", "½ in", "ring of 16 blades, 6 in long"},
	{"rings.cover_turning", "⅜ in", "ring of 16 blades, 6 in long"},
	{"rings.margin", "3 in", "ring of 16 blades, 6 in long"},
	{"hexagons.allowance", "⅜ in", "1 in hexagons for 40 x 50"},
	{"sashing.laid", "framed", "5 x 6 blocks of 9 in with 2 in sashing"},
	{"sashing.cornerstones", "yes", "5 x 6 blocks of 9 in with 2 in sashing"},
	{"geese.at_a_time", "1", "16 flying geese 3 x 6"},
	{"layout.size", "within", "12 in blocks for 50 x 60"},
}

// assistant makes the assistant of a shop that sets this.
func assistant(t *testing.T, set map[string]string) *commands.Assistant {
	t.Helper()
	c, err := config.Load("", set)
	require.NoError(t, err)
	a, err := commands.NewAssistant(defaults(c))
	require.NoError(t, err)
	return a
}

// figures has a question answered.
func figures(t *testing.T, a *commands.Assistant, question string) []commands.Figure {
	t.Helper()
	r := a.Respond(commands.Turn{Text: question})
	require.Equal(t, commands.Answer, r.Reply.Outcome, "%s: %s", question, r.Reply.Text)
	return r.Reply.Figures
}

func TestEverySettingHasItsEffect(t *testing.T) {
	usual := assistant(t, nil)
	for _, e := range effects {
		t.Run(e.key, func(t *testing.T) {
			other := assistant(t, map[string]string{e.key: e.value})
			assert.NotEqual(t, figures(t, usual, e.question), figures(t, other, e.question))
		})
	}
}

// Settings of these groups are not about sums, and are tested where they act.
var otherGroups = []string{"shop.", "work.paper", "conversation.", "terminal.", "storage.", "chat.", "web.", "log."}

func TestEverySettingIsTested(t *testing.T) {
	tested := map[string]bool{}
	for _, e := range effects {
		assert.False(t, tested[e.key], "%s stands twice", e.key)
		tested[e.key] = true
	}
	for _, key := range config.Keys() {
		other := false
		for _, group := range otherGroups {
			other = other || strings.HasPrefix(key, group)
		}
		assert.True(t, tested[key] || other, "%s: no question shows what it does", key)
	}
}

// What a shop sets nothing about is what the assistant takes by itself.
func TestDefaultsAreTheAssistants(t *testing.T) {
	c, err := config.Load("", nil)
	require.NoError(t, err)
	want, got := commands.ShopDefaults(), defaults(c)
	assert.Equal(t, want.System, got.System)
	assert.Equal(t, want.Inches, got.Inches)
	assert.Equal(t, want.Metric, got.Metric)
	assert.Equal(t, want.Lengths, got.Lengths)
	for word, value := range want.Words {
		if word != "units" { // it is the system
			assert.Equal(t, value, got.Words[word], word)
		}
	}
}
