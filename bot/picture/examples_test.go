package picture

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/commands"
)

// noPicture are the examples that are cut from and have no picture, each with
// its reason.
var noPicture = map[string]string{
	"96 blades 6 in long from 3 in strips": "neither angle nor ends are said, so the blade has no known shape",
}

// largestPNG is what a picture of an everyday answer takes at the most.
const largestPNG = 150_000

// Every example of every topic that is about to be cut has a picture of bounded
// size, told in words with a figure of the answer in them.
func TestExamplesHavePictures(t *testing.T) {
	a, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(t, err)
	for _, topic := range a.Topics() {
		for _, example := range topic.Examples {
			r := a.Respond(commands.Turn{Text: example}).Reply
			if r.ToCut && noPicture[example] == "" {
				assert.NotEmpty(t, r.Scenes, "%s: %q is cut and has no picture", topic.Name, example)
			}
			if noPicture[example] != "" {
				assert.Empty(t, r.Scenes, "%q has a picture now", example)
			}
			told := ""
			for _, source := range r.Scenes {
				s := source()
				data, err := PNG(s)
				require.NoError(t, err, example)
				assert.Less(t, len(data), largestPNG, example)
				assert.NotEmpty(t, s.Alt, example)
				assert.NotEmpty(t, s.Title, example)
				told += s.Alt
			}
			if len(r.Scenes) > 0 {
				assert.True(t, slices.ContainsFunc(r.Figures, func(f commands.Figure) bool { return strings.Contains(told, f.Shown) }),
					"%q: no figure of the answer in %q", example, told)
			}
		}
	}
}
