package picture

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/commands"
	"counterhand/commands/questionstest"
	"counterhand/commands/scene"
)

// answers gives the replies to the project's own requests, by the request.
func answers(t testing.TB) map[string]commands.Reply {
	t.Helper()
	a, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(t, err)
	requests, err := questionstest.Load[questionstest.Request]("../../testdata/questions/requests.jsonl")
	require.NoError(t, err)
	replies := map[string]commands.Reply{}
	for _, r := range requests {
		if reply := a.Respond(commands.Turn{Text: r.Text}).Reply; reply.Outcome == commands.Answer {
			replies[r.Text] = reply
		}
	}
	return replies
}

// Every answer's pictures, templates and sheet can be drawn, their words keep
// apart, and each says what it shows.
func TestEverythingThatIsAnsweredCanBeDrawn(t *testing.T) {
	p := takePens()
	defer returnPens(p)
	pictured := map[string]bool{}
	for text, r := range answers(t) {
		for _, source := range r.Scenes {
			s := (&filer{assumed: assumptions(r.Assumed)}).captioned(source())
			if _, err := SVG(s); !assert.NoError(t, err, text) {
				continue
			}
			checkWords(t, text, laid(t, s))
			assert.NotEmpty(t, s.Alt, text)
			pictured[r.Topic] = true
		}
		for _, source := range r.Templates {
			doc := source()
			pages, err := templatePages(doc, A4, p)
			var tooMuch *TooMuchError
			if errors.As(err, &tooMuch) {
				continue // a tablecloth is not printed
			}
			if !assert.NoError(t, err, text) {
				continue
			}
			for _, g := range pages {
				checkPage(t, text, g, A4)
			}
		}
		for _, g := range sheetPages(scene.NewSheet((&filer{assumed: assumptions(r.Assumed)}).answer(r)), Letter, p) {
			checkPage(t, text, g, Letter)
		}
		if t.Failed() {
			return
		}
	}
	for _, topic := range []string{"wedge-ring", "wedge-strips", "binding", "bias-binding", "backing", "borders", "sashing", "layout", "setting-triangles",
		"half-square-triangles", "quarter-square-triangles", "flying-geese", "square-in-square", "strip-set", "yardage", "pieces", "cutting-plan",
		"hexagons", "triangles-60", "diamonds", "half-rectangles", "curves", "coping", "edge-triangles", "bed"} {
		assert.True(t, pictured[topic], "a picture of %s", topic)
	}
}
