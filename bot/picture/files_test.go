package picture

import (
	"bytes"
	"fmt"
	"image/png"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands"
	"counterhand/commands/scene"
)

// ringReply is the answer about the shop's lighthouse runner: 16 blades of 22½°.
func ringReply(t testing.TB) commands.Reply {
	r := ringOf(t, 16, 6*inch, calc.PlainEnd, 0)
	return commands.Reply{
		Outcome: commands.Answer, Topic: "wedge-ring",
		Text: "13 13/16 in across once sewn, with an opening of 1 13/16 in in the middle.\nCover it with a circle that finishes at 2½ in: cut 3 in and turn ¼ in under. A background of 18½ in square leaves 2 in all round.",
		Figures: []commands.Figure{
			{Name: "blades", Value: 16.0, Unit: "count", Shown: "16"},
			{Name: "angle", Value: 22.5, Unit: "deg", Shown: "22½°"},
			{Name: "blade_length", Value: 6.0, Unit: "in", Shown: "6 in"},
			{Name: "wide_end", Value: 3.25, Unit: "in", Shown: "3¼ in"},
			{Name: "narrow_end", Value: 0.875, Unit: "in", Shown: "⅞ in"},
			{Name: "ring_across", Value: 13.8125, Unit: "in", Shown: "13 13/16 in"},
			{Name: "opening_across", Value: 1.8125, Unit: "in", Shown: "1 13/16 in"},
			{Name: "cover_circle", Value: 2.5, Unit: "in", Shown: "2½ in"},
			{Name: "cover_cut", Value: 3.0, Unit: "in", Shown: "3 in"},
			{Name: "background_square", Value: 18.5, Unit: "in", Shown: "18½ in"},
			{Name: "buy", Value: 0.75, Unit: "yd", Shown: "¾ yd"},
		},
		Assumed:   []commands.Assumed{{Name: "narrow_end", Said: "⅞ in at the narrow end"}, {Name: "seam", Said: "¼ in seams"}, {Name: "ends", Said: "plain blade ends"}},
		Working:   []string{"360° ÷ 16 = 22½°", "Wide end: ⅞ in + 2 × 6 in × tan(11¼°) = 3¼ in"},
		Reminders: []string{"Cut away from yourself, and close the cutter each time you put it down."},
		Scenes: []scene.Source{
			func() scene.Scene { return scene.Ring(r, measure.Imperial) },
			func() scene.Scene { return scene.Blade(r, measure.Imperial) },
		},
		Templates: []scene.TemplateSource{func() scene.Templates { return scene.RingTemplates(r, measure.Imperial) }},
	}
}

func TestFilesOfAnAnswer(t *testing.T) {
	files, err := Files(ringReply(t), Formats{Want: []Format{AsEverything}})
	require.NoError(t, err)
	byName := map[string]commands.File{}
	for _, f := range files {
		byName[f.Name] = f
		assert.Equal(t, len(f.Data), f.Bytes, f.Name)
		assert.NotZero(t, f.Bytes, f.Name)
		assert.Less(t, f.Bytes, 2_000_000, f.Name)
	}
	assert.Len(t, byName, len(files), "no name twice")
	for name, media := range map[string]string{
		"ring.svg": typeSVG, "ring.png": typePNG, "blade.svg": typeSVG, "blade.png": typePNG,
		"ring-templates.pdf": typePDF, "wedge-ring-cutting-sheet.pdf": typePDF, "wedge-ring-cutting-sheet.txt": typeText,
	} {
		assert.Equal(t, media, byName[name].Type, name)
	}
	assert.Len(t, files, 7)
	assert.Contains(t, byName["ring.png"].Alt, "13 13/16 in")
	_, err = png.Decode(bytes.NewReader(byName["ring.png"].Data))
	assert.NoError(t, err)
	assert.True(t, bytes.HasPrefix(byName["ring-templates.pdf"].Data, []byte("%PDF-")))
}

func TestOnlyWantedFilesAreMade(t *testing.T) {
	files, err := Files(ringReply(t), Formats{Want: []Format{AsPNG}})
	require.NoError(t, err)
	assert.Len(t, files, 2)
	files, err = Files(ringReply(t), Formats{})
	require.NoError(t, err)
	assert.Empty(t, files)
}

func TestNoAnswerNoFiles(t *testing.T) {
	for _, o := range []commands.Outcome{commands.Question, commands.Decline, commands.PassedOn} {
		r := ringReply(t)
		r.Outcome = o
		files, err := Files(r, Formats{Want: []Format{AsEverything}})
		require.NoError(t, err)
		assert.Empty(t, files)
	}
}

func TestAPictureRefusedLeavesTheOthers(t *testing.T) {
	r := ringReply(t)
	r.Scenes = append([]scene.Source{func() scene.Scene { return scene.Scene{Name: "none", Title: "nothing to see"} }}, r.Scenes...)
	files, err := Files(r, Formats{Want: []Format{AsSVG}})
	assert.ErrorIs(t, err, errNothing)
	assert.Len(t, files, 2)
}

func TestNamesAreNumbered(t *testing.T) {
	r := ringReply(t)
	r.Scenes = []scene.Source{r.Scenes[0], r.Scenes[0], r.Scenes[0]}
	files, err := Files(r, Formats{Want: []Format{AsSVG}})
	require.NoError(t, err)
	require.Len(t, files, 3)
	assert.Equal(t, "ring-2.svg", files[1].Name)
	assert.Equal(t, "ring-3.svg", files[2].Name)
}

// What a picture rests on is said under it in the words of the answer, and in
// the person's units.
func TestAssumptionsAreSaid(t *testing.T) {
	a, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(t, err)
	for request, want := range map[string][]string{
		"binding for 54 x 68":          {"40 in of usable fabric", "binding strips cut 2½ in", "10 in for corners and the closing join", "joins: diagonal"},
		"binding for 140 x 170 cm":     {"101.6 cm of usable fabric", "binding strips cut 6.4 cm", "25.4 cm for corners and the closing join", "joins: diagonal"},
		"16 flying geese 3 x 6":        {"¼ in seams", "at a time: 4"},
		"9 in blocks on point, 5 by 6": nil,
	} {
		r := a.Respond(commands.Turn{Text: request}).Reply
		assert.Equal(t, want, assumptions(r.Assumed), request)
		require.NotEmpty(t, r.Scenes, request)
		s := (&filer{assumed: assumptions(r.Assumed)}).captioned(r.Scenes[0]())
		for _, words := range want {
			assert.Contains(t, s.Caption[len(s.Caption)-1], words)
		}
	}
}

func ringSheet(t testing.TB) scene.Sheet {
	r := ringReply(t)
	return scene.NewSheet((&filer{assumed: assumptions(r.Assumed)}).answer(r))
}

func TestSheetsKeepTheMargins(t *testing.T) {
	long := ringSheet(t)
	for range 80 {
		long.Sections[1].Items = append(long.Sections[1].Items, scene.Item{Text: strings.Repeat("a long line ", 20), Tick: true})
	}
	wordy := ringSheet(t)
	wordy.Title = word
	wordy.Sections[0].Items[0].Text = word + word
	p := takePens()
	defer returnPens(p)
	for _, s := range []scene.Sheet{ringSheet(t), long, wordy, {Title: "bare"}} {
		for _, paper := range []Paper{A4, Letter} {
			for i, g := range sheetPages(s, paper, p) {
				checkPage(t, fmt.Sprintf("%.20s, page %d on %s", s.Title, i+1, paper.Name), g, paper)
			}
		}
	}
}

func TestSameSheetSameBytes(t *testing.T) {
	first, err := SheetPDF(ringSheet(t), A4)
	require.NoError(t, err)
	for range 20 {
		again, err := SheetPDF(ringSheet(t), A4)
		require.NoError(t, err)
		require.Equal(t, string(first), string(again))
	}
}

func TestSheetsTooLongAreRefused(t *testing.T) {
	s := scene.Sheet{Title: "long", Rests: make([]string, mostItems+1)}
	_, err := SheetPDF(s, A4)
	var tooMuch *TooMuchError
	require.ErrorAs(t, err, &tooMuch)
	assert.Equal(t, "lines", tooMuch.What)
}
