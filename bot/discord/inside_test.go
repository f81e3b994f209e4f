package discord

import (
	"strings"
	"testing"
	"time"
	_ "time/tzdata" // for machines without a zone database
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot/discord/link"
)

// Case 23: quiet hours go by the clock on the wall. The days are those on which
// London's clocks changed in 2026 (29 March: 01:00 to 02:00 does not exist; 25
// October: it comes twice), by the IANA time zone database.
func TestQuietHoursByTheClockOnTheWall(t *testing.T) {
	at := func(s string) time.Time {
		u, err := time.Parse(time.RFC3339, s)
		require.NoError(t, err)
		return u
	}
	night := hours{From: 22 * 60, To: 7 * 60, Zone: "Europe/London"}
	small := hours{From: 60, To: 120, Zone: "Europe/London"}
	for _, row := range []struct {
		name  string
		h     hours
		at    string
		quiet bool
	}{
		{"evening before the skipped hour", night, "2026-03-28T22:00:00Z", true},
		{"last minute before the night", night, "2026-03-28T21:59:59Z", false},
		{"morning after the skipped hour, 07:00 by the wall", night, "2026-03-29T06:00:00Z", false},
		{"06:59 by the wall", night, "2026-03-29T05:59:00Z", true},
		{"morning after the doubled hour, 07:00 by the wall", night, "2026-10-25T07:00:00Z", false},
		{"06:59 by the wall then", night, "2026-10-25T06:59:00Z", true},
		{"the skipped hour is never there", small, "2026-03-29T01:00:00Z", false},
		{"minute before the skipped hour", small, "2026-03-29T00:59:00Z", false},
		{"the doubled hour, first time", small, "2026-10-25T00:30:00Z", true},
		{"the doubled hour, second time", small, "2026-10-25T01:30:00Z", true},
		{"after the doubled hour", small, "2026-10-25T02:00:00Z", false},
		{"midnight", night, "2026-01-10T00:00:00Z", true},
		{"leap day", night, "2028-02-29T23:00:00Z", true},
		{"none", hours{Zone: "UTC"}, "2026-01-10T00:00:00Z", false},
		{"zone unknown here", hours{From: 0, To: 1439, Zone: "Gone/Away"}, "2026-01-10T10:00:00Z", false},
	} {
		assert.Equal(t, row.quiet, row.h.include(at(row.at)), row.name)
	}
}

func TestClock(t *testing.T) {
	for in, want := range map[string]int{"22:30": 1350, "7": 420, "7.15": 435, "07:00": 420, " 9 pm ": 1260, "12am": 0, "11:45PM": 1425} {
		got, err := clock(in)
		require.NoError(t, err, in)
		assert.Equal(t, want, got, in)
	}
	for _, in := range []string{"", "25", "22:60", "late", "-1"} {
		_, err := clock(in)
		assert.Error(t, err, in)
	}
}

func TestShorten(t *testing.T) {
	for _, row := range []struct {
		name, in string
		max      int
		want     string
	}{
		{"short enough", "abc", 3, "abc"},
		{"after a line", "first line\nsecond line", 15, "first line"},
		{"after a word", "one two three four", 15, "one two three"},
		{"case 9: letters with marks stay whole", strings.Repeat("x", 9) + "e\u0301", 10, strings.Repeat("x", 9)},
		{"case 9: joined emoji stay whole", strings.Repeat("x", 8) + "👩\u200d👩\u200d👧", 10, strings.Repeat("x", 8)},
		{"an escape stays with its sign", strings.Repeat("x", 9) + `\*`, 10, strings.Repeat("x", 9)},
	} {
		assert.Equal(t, row.want, shorten(row.in, row.max), row.name)
	}
}

// undress takes escapes off again.
func undress(s string) string {
	var b strings.Builder
	escaped := false
	for _, r := range s {
		if r == '\\' && !escaped {
			escaped = true
			continue
		}
		escaped = false
		b.WriteRune(r)
	}
	return b.String()
}

func FuzzEscape(f *testing.F) {
	f.Add("**bold** <@1> https://x.y/a_b `c` \\*", 10) // formatting, a mention, an address, an escape
	f.Add("👩\u200d👩\u200d👧 e\u0301", 3)                // letters of several code points
	f.Fuzz(func(t *testing.T, text string, max int) {
		if !utf8.ValidString(text) {
			return // the platform sends valid text only
		}
		shown := escape(text)
		if undress(shown) != text {
			t.Errorf("escape(%q) = %q loses something", text, shown)
		}
		if max >= 0 && max < 5000 {
			if n := utf8.RuneCountInString(shorten(text, max)); n > max {
				t.Errorf("shorten(%q, %d) has %d", text, max, n)
			}
		}
	})
}

func TestCarriedReadsBack(t *testing.T) {
	at := time.UnixMilli(1_800_000_000_123)
	for _, c := range []carried{
		{code: "w", person: "700000000000000001", at: at},
		{code: chosen, person: "1", at: at, words: "16 blades. Folded ends"},
	} {
		got, ok := readCarried(c.String())
		require.True(t, ok)
		if c.code != chosen {
			c.words = "show the working"
		}
		assert.Equal(t, c, got)
	}
	longest := carried{code: "w", person: "18446744073709551615", at: at.AddDate(1000, 0, 0)}
	assert.LessOrEqual(t, len(longest.String()), link.MaxCarried/2, "half of it is left for a choice's words")
}

func TestStepsHaveCodesOfTheirOwn(t *testing.T) {
	seen := map[string]bool{chosen: true}
	for _, s := range nextSteps {
		assert.False(t, seen[s.code], s.code)
		seen[s.code] = true
	}
}

func TestFamiliesSayEverythingThatIsFilledIn(t *testing.T) {
	var check func(f Family)
	check = func(f Family) {
		for _, p := range f.Parts {
			check(p)
		}
		if len(f.Inputs) == 0 {
			return
		}
		request := f.Request("", func(name string) string { return "<" + name + ">" })
		for _, in := range f.Inputs {
			assert.Contains(t, request, "<"+in.Name+">", f.Name)
			assert.Equal(t, 1, strings.Count(in.Words, "{}"), "%s %s", f.Name, in.Name)
		}
		assert.Equal(t, f.Lead, f.Request("", func(string) string { return " " }), "what is left out is not said")
	}
	for _, f := range Families() {
		check(f)
	}
}
