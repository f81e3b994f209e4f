package scene

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func bordersAnswer() Answer {
	return Answer{
		Topic: "borders", Text: "Two borders.\n\nBuy 1⅛ yd in all.",
		Figures: []Figure{
			{"border1.side_cut", "60½ in"}, {"border1.top_cut", "56½ in"}, {"border1.strip_width", "3½ in"}, {"border1.strips", "6"}, {"border1.buy", "⅝ yd"},
			{"border2.side_cut", "66½ in"}, {"border2.strip_width", "2½ in"}, {"border2.strips", "1"}, {"border2.buy", "½ yd"},
			{"quilt_width", "60 in"}, {"cornerstones", "0"},
		},
		Assumed:   []string{"seam allowance ¼ in"},
		Working:   []string{"50 + 2 × 3 = 56"},
		Reminders: []string{"Change a dull needle.", "Fresh blades bite.", "Good light helps.", "Steam burns."},
	}
}

func section(t *testing.T, s Sheet, heading string) []Item {
	t.Helper()
	for _, x := range s.Sections {
		if x.Heading == heading {
			return x.Items
		}
	}
	require.Failf(t, "no section", "%q in %v", heading, s.Sections)
	return nil
}

func TestSheetSortsFigures(t *testing.T) {
	s := NewSheet(bordersAnswer())
	assert.Equal(t, "borders-cutting-sheet", s.Name)
	assert.Equal(t, "Borders", s.Title)
	assert.Equal(t, []string{"Two borders.", "Buy 1⅛ yd in all."}, s.Lead)
	assert.Equal(t, []Item{{"Border 1: ⅝ yd", true}, {"Border 2: ½ yd", true}}, section(t, s, "Buy"))
	assert.Equal(t, []Item{
		{"Fresh blades bite.", false},
		{"6 strips, 3½ in wide", true}, {"2 sides, 60½ in long", true}, {"2 for the top and the bottom, 56½ in long", true},
	}, section(t, s, "Cut: border 1"))
	assert.Equal(t, []Item{{"1 strip, 2½ in wide", true}, {"2 sides, 66½ in long", true}}, section(t, s, "Cut: border 2"))
	assert.Equal(t, []Item{{"Quilt width: 60 in", false}, {"Cornerstones: 0", false}}, section(t, s, "Sizes to know"))
	assert.Contains(t, section(t, s, "Sew"), Item{"Change a dull needle.", false})
	assert.Contains(t, section(t, s, "Press"), Item{"Steam burns.", false})
	assert.Equal(t, []Item{{"Good light helps.", false}}, section(t, s, "Take care"))
	assert.Equal(t, []string{"Taken: seam allowance ¼ in."}, s.Rests)
}

// Whatever the topic, no figure and no reminder is lost on the way to paper.
func TestSheetKeepsEverything(t *testing.T) {
	a := bordersAnswer()
	for topic := range assembly {
		a.Topic = topic
		text := NewSheet(a).Text()
		for _, f := range a.Figures {
			assert.Contains(t, text, f.Shown, "%s, %s", topic, f.Name)
		}
		for _, r := range append(a.Reminders, a.Working...) {
			assert.Equal(t, 1, strings.Count(text, r), "%s: %s", topic, r)
		}
	}
	a.Topic = ""
	for _, r := range a.Reminders {
		assert.Contains(t, NewSheet(a).Text(), r)
	}
}

func TestUsualCautionsStandWhereNoReminderDoes(t *testing.T) {
	a := bordersAnswer()
	a.Reminders = nil
	s := NewSheet(a)
	assert.Equal(t, cutCaution, section(t, s, "Cut: border 1")[0].Text)
	press := section(t, s, "Press")
	assert.Equal(t, ironCaution, press[len(press)-1].Text)
}

func TestSheetTextIsPlain(t *testing.T) {
	a := bordersAnswer()
	a.Scenes = []Source{func() Scene { return Scene{Title: "Borders", Alt: "A quilt with two borders."} }}
	text := NewSheet(a).Text()
	assert.Contains(t, text, "\nPicture: A quilt with two borders.\n")
	assert.Contains(t, text, "\nCut: border 1\n")
	assert.Contains(t, text, "\nStep 2: 2 sides, 60½ in long\n")
	assert.NotContains(t, text, "\t")
	assert.False(t, strings.ContainsAny(text, "│─□☐[]"), "no signs that a reader spells out")
}

func TestSheetOfSeveralTopics(t *testing.T) {
	s := NewSheet(Answer{
		Topic: "plan", Reminders: []string{"Steam burns.", "Count your pins."},
		Figures: []Figure{{"backing.panels", "2"}, {"backing.panel_length", "62 in"}, {"backing.buy", "3½ yd"}, {"binding.strips", "7"}, {"binding.strip_width", "2½ in"}, {"binding.buy", "½ yd"},
			{"borders.border1.side_cut", "60½ in"}, {"borders.border1.strips", "6"}, {"borders.border1.strip_width", "3½ in"}},
	})
	assert.Equal(t, []Item{{"Backing: 3½ yd", true}, {"Binding: ½ yd", true}}, section(t, s, "Buy"))
	assert.Equal(t, []Item{{cutCaution, false}, {"Backing: 2 panels, 62 in long", true}, {"Binding: 7 strips, 2½ in wide", true}}, section(t, s, "Cut"))
	assert.Len(t, section(t, s, "Cut: borders border 1"), 2)
	assert.NotEmpty(t, section(t, s, "Sew: backing"))
	assert.NotEmpty(t, section(t, s, "Press: binding"))
	for _, r := range []string{"Steam burns.", "Count your pins."} {
		assert.Equal(t, 1, strings.Count(s.Text(), r), r)
	}
}

func TestSheetOfACuttingPlan(t *testing.T) {
	s := NewSheet(Answer{Topic: "cutting-plan", Figures: []Figure{
		{"length", "46½ in"}, {"buy", "1⅜ yd"}, {"strip1.width", "9½ in"}, {"strip1.times", "2"}, {"strip2.width", "4½ in"}, {"strip2.times", "1"}}})
	assert.Equal(t, []Item{{cutCaution, false}, {"Strip 1: 2 strips, 9½ in wide", true}, {"Strip 2: 1 strip, 4½ in wide", true}}, section(t, s, "Cut"))
}
