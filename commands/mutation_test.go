package commands_test

import (
	"fmt"
	"hash/fnv"
	"maps"
	"math"
	"math/rand/v2"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/commands"
	"counterhand/commands/questionstest"
)

// unchanged is what share of the noisy requests must get the same answer, of a
// hundred. None may get another number.
const unchanged = 98.0

// A request that is answered rightly must get the same figures when the same
// thing is said in another way or typed less well, or be asked about; never
// another number.
func TestQuestionsSurviveNoise(t *testing.T) {
	fresh := newTalk(t)
	counts := noiseCounts{}
	for _, dir := range questionSets(t) {
		requests, err := questionstest.Load[questionstest.Request](filepath.Join(dir, "requests.jsonl"))
		require.NoError(t, err)
		for _, r := range requests {
			clean := fresh.again().say(r.Text)
			if is, _ := questionstest.Judge(clean, r.Expect); is == questionstest.Right && len(clean.Figures) > 0 {
				counts.add(t, r.ID, r.Text, clean, fresh.again)
			}
		}
	}
	counts.report(t)
}

// The same holds for every turn of a conversation.
func TestQuestionsSurviveNoiseInConversations(t *testing.T) {
	fresh := newTalk(t)
	counts := noiseCounts{}
	for _, dir := range questionSets(t) {
		conversations, err := questionstest.Load[questionstest.Conversation](filepath.Join(dir, "conversations.jsonl"))
		require.NoError(t, err)
		for _, c := range conversations {
			said := fresh.again()
			for i, turn := range c.Turns {
				before := *said
				clean := said.say(turn.Say)
				if turn.Expect == nil {
					continue
				}
				if is, _ := questionstest.Judge(clean, *turn.Expect); is != questionstest.Right {
					break
				}
				if len(clean.Figures) > 0 {
					again := func() *talk { c := before; return &c }
					counts.add(t, fmt.Sprintf("%s.%d", c.ID, i+1), turn.Say, clean, again)
				}
			}
		}
	}
	counts.report(t)
}

// noiseCounts counts, for each noise, what became of the answers.
type noiseCounts map[string]map[string]int

// add makes every noise that a text offers a place for and compares what comes
// back, each in the conversation that begin gives.
func (counts noiseCounts) add(t *testing.T, id, text string, clean commands.Reply, begin func() *talk) {
	for _, n := range noises() {
		noisy, ok := n.make(text, seeded(id+n.name))
		if !ok || noisy == text {
			continue
		}
		if counts[n.name] == nil {
			counts[n.name] = map[string]int{}
		}
		counts[n.name][compare(t, id+"  "+n.name, text, noisy, clean, begin().say(noisy))]++
	}
}

// seeded gives the same random choices for the same name, always.
func seeded(name string) *rand.Rand {
	h := fnv.New64a()
	h.Write([]byte(name))
	return rand.New(rand.NewPCG(h.Sum64(), 1))
}

func compare(t *testing.T, id, text, noisy string, clean, got commands.Reply) string {
	assert.Empty(t, questionstest.Unaccounted(noisy, got), "%s  %q", id, noisy)
	switch {
	case got.Outcome == commands.Answer && sameFigures(clean.Figures, got.Figures):
		return "the same"
	case got.Outcome == commands.Question:
		t.Logf("asked  %s  %q: %.100q", id, noisy, got.Text)
		return "asked"
	case got.Outcome == commands.Answer && len(got.Figures) > 0 && !amongFigures(got.Figures, clean.Figures):
		assert.Fail(t, "another number", "%s\n%q\n%q\nwas %v\nnow %v", id, text, noisy, clean.Figures, got.Figures)
		return "another number"
	}
	t.Logf("lost  %s  %q: %.100q", id, noisy, got.Text)
	return "lost"
}

func (counts noiseCounts) report(t *testing.T) {
	columns := []string{"the same", "asked", "lost", "another number"}
	var table strings.Builder
	total := map[string]int{}
	line := func(name string, of map[string]int) {
		fmt.Fprintf(&table, "\n%-20s", name)
		for _, c := range columns {
			fmt.Fprintf(&table, "%16d", of[c])
		}
	}
	fmt.Fprintf(&table, "\n%-20s", "noise")
	for _, c := range columns {
		fmt.Fprintf(&table, "%16s", c)
	}
	n := 0
	for _, name := range slices.Sorted(maps.Keys(counts)) {
		line(name, counts[name])
		for c, k := range counts[name] {
			total[c] += k
			n += k
		}
	}
	line("all", total)
	if n == 0 {
		t.Skip("no request is answered rightly yet, so there is nothing to add noise to")
	}
	share := 100 * float64(total["the same"]) / float64(n)
	t.Logf("%s\nunchanged: %.1f of a hundred", table.String(), share)
	assert.GreaterOrEqual(t, share, unchanged, "unchanged, of a hundred")
}

// sameFigures compares two lists of figures whatever their order.
func sameFigures(a, b []commands.Figure) bool {
	return len(a) == len(b) && amongFigures(b, a)
}

// amongFigures tells whether every figure of the first list stands in the second.
func amongFigures(some, all []commands.Figure) bool {
	values := map[string]commands.Figure{}
	for _, f := range all {
		values[f.Name] = f
	}
	for _, f := range some {
		was, ok := values[f.Name]
		if !ok || was.Unit != f.Unit {
			return false
		}
		x, ok1 := was.Value.(float64)
		y, ok2 := f.Value.(float64)
		if ok1 != ok2 || (ok1 && math.Abs(x-y) > 1e-6) || (!ok1 && was.Value != f.Value) {
			return false
		}
	}
	return true
}

// noise is one way of saying or typing the same thing otherwise. It gives false
// where a text offers no place for it.
type noise struct {
	name string
	make func(text string, r *rand.Rand) (string, bool)
}

func noises() []noise {
	return []noise{
		{"letter dropped", slip(func(w []rune, i int) []rune { return slices.Delete(w, i, i+1) })},
		{"letter doubled", slip(func(w []rune, i int) []rune { return slices.Insert(w, i, w[i]) })},
		{"letters swapped", slip(func(w []rune, i int) []rune { w[i], w[i-1] = w[i-1], w[i]; return w })},
		{"capitals", always(strings.ToUpper)},
		{"small letters", always(strings.ToLower)},
		{"polite before", before("Hello, could you please tell me: ", "hi there. ", "Good morning! ", "quick question - ", "please help, ")},
		{"polite after", after(" Thanks so much!", " ta", " please", " cheers", ", thank you")},
		{"filler", before("um, ", "ok so ", "right then, ", "erm ", "well... ")},
		{"decoration", after(" 🙂", " !!", "??", "…", "\n")},
		{"wider spaces", always(func(s string) string { return strings.ReplaceAll(s, " ", "  ") })},
		{"no space at units", pattern(`(\d|[½¼¾⅛⅜⅝⅞]) (in|inches|cm|yd|yards|deg|degrees)\b`, "$1$2")},
		{"by for x", pattern(`(\d|[½¼¾⅛⅜⅝⅞]) ?[x×] ?(\d)`, "$1 by $2")},
		{"x for by", pattern(`(\d|[½¼¾⅛⅜⅝⅞]) by (\d)`, "$1 x $2")},
		{"tight x", pattern(`(\d) ?[xX×] ?(\d)`, "${1}x$2")},
		{"other fractions", fractions(map[string]string{"½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8"})},
		{"decimals", fractions(map[string]string{"½": ".5", "¼": ".25", "¾": ".75", "⅛": ".125", "⅜": ".375", "⅝": ".625", "⅞": ".875"})},
		{"spoken fractions", fractions(map[string]string{"½": " and a half", "¼": " and a quarter", "¾": " and three quarters"})},
		{"hyphened fractions", pattern(`(\d)[  ]?½`, "$1-1/2")},
		{"numbers in words", inWords},
		{"inch signs", pattern(`(\d|[½¼¾⅛⅜⅝⅞]) ?(in|inch|inches)\b`, "$1″")},
		{"inches spelled", pattern(`(\d|[½¼¾⅛⅜⅝⅞]) ?(in\b|"|″)`, "$1 inches")},
		{"millimetres", metric(`(\d+(?:[.,]\d+)?) ?cm\b`, 10, "mm")},
		{"centimetres", metric(`(\d+(?:[.,]\d+)?) ?m\b`, 100, "cm")},
		{"yards spelled", pattern(`(\d|[½¼¾⅛⅜⅝⅞]) ?yd\b`, "$1 yards")},
		{"degree signs", pattern(`(\d|[½¼]) ?(degrees|degree|deg)\b`, "$1°")},
		{"the other way round", pattern(`^([a-zA-Z ]{4,40}?) for (?:an? )?(\d+ ?(?:[x×]|by) ?\d+)$`, "$2, $1")},
	}
}

func always(f func(string) string) func(string, *rand.Rand) (string, bool) {
	return func(s string, _ *rand.Rand) (string, bool) { return f(s), true }
}

func before(words ...string) func(string, *rand.Rand) (string, bool) {
	return func(s string, r *rand.Rand) (string, bool) { return words[r.IntN(len(words))] + s, true }
}

func after(words ...string) func(string, *rand.Rand) (string, bool) {
	return func(s string, r *rand.Rand) (string, bool) { return s + words[r.IntN(len(words))], true }
}

func pattern(find, put string) func(string, *rand.Rand) (string, bool) {
	re := regexp.MustCompile(find)
	return func(s string, _ *rand.Rand) (string, bool) { return re.ReplaceAllString(s, put), re.MatchString(s) }
}

// tradeWord matches words of the trade that are long enough to be recognised
// with one letter wrong.
var tradeWord = regexp.MustCompile(`(?i)\b(binding|backing|batting|wadding|borders?|sashing|cornerstones?|mitred|strips?|` +
	`blocks?|squares?|triangles?|hexagons?|diamonds?|wedges?|blades?|degrees?|inches|yards?|finished|quilt|fabric|` +
	`template|narrow|flying|geese|mattress|shrinks?|scallops?|perimeter|margin)\b`)

// slip makes one typing slip inside one trade word, never at its first letter.
func slip(change func(word []rune, i int) []rune) func(string, *rand.Rand) (string, bool) {
	return func(s string, r *rand.Rand) (string, bool) {
		found := tradeWord.FindAllStringIndex(s, -1)
		if len(found) == 0 {
			return s, false
		}
		at := found[r.IntN(len(found))]
		word := []rune(s[at[0]:at[1]])
		i := 2 + r.IntN(len(word)-2)
		return s[:at[0]] + string(change(word, i)) + s[at[1]:], true
	}
}

// fractions writes fraction signs that follow a whole number otherwise, and
// those on their own without the space or the "and".
func fractions(spelled map[string]string) func(string, *rand.Rand) (string, bool) {
	sign := regexp.MustCompile(`(\d?) ?([½¼¾⅛⅜⅝⅞])`)
	return func(s string, _ *rand.Rand) (string, bool) {
		ok := true
		out := sign.ReplaceAllStringFunc(s, func(m string) string {
			part := sign.FindStringSubmatch(m)
			put, known := spelled[part[2]]
			if !known {
				ok = false
			}
			if part[1] != "" {
				return part[1] + put
			}
			alone := strings.TrimSpace(strings.TrimPrefix(put, " and "))
			return strings.Repeat(" ", strings.Count(m, " ")) + alone
		})
		return out, ok && sign.MatchString(s)
	}
}

// metric writes lengths in a smaller unit, of equal value.
func metric(find string, times float64, unit string) func(string, *rand.Rand) (string, bool) {
	re := regexp.MustCompile(find)
	return func(s string, _ *rand.Rand) (string, bool) {
		return re.ReplaceAllStringFunc(s, func(m string) string {
			v, err := strconv.ParseFloat(strings.Replace(re.FindStringSubmatch(m)[1], ",", ".", 1), 64)
			if err != nil {
				return m
			}
			return strconv.FormatFloat(math.Round(v*times*1000)/1000, 'f', -1, 64) + " " + unit
		}), re.MatchString(s) && !regexp.MustCompile(`\d ?(?:x|×|by) ?\d+ ?(?:cm|m)\b`).MatchString(s)
	}
}

// wholeNumber is a number of one or two digits that stands on its own.
var wholeNumber = regexp.MustCompile(`(^|[ (])(\d{1,2})([ ,?)]|$)`)

// runsOn is what would join a number in words before it: "20 nine patches" is
// not "twenty nine patches".
var runsOn = regexp.MustCompile(`^ ?(\d+/|[½¼¾⅛⅜⅝⅞]|(?i:one|two|three|four|five|six|seven|eight|nine|ten|hundred)\b)`)

// inWords says the first whole number in words, unless what follows would join it.
func inWords(s string, _ *rand.Rand) (string, bool) {
	for _, at := range wholeNumber.FindAllStringSubmatchIndex(s, -1) {
		if runsOn.MatchString(s[at[5]:]) {
			continue
		}
		n, err := strconv.Atoi(s[at[4]:at[5]])
		if err != nil {
			continue
		}
		return s[:at[4]] + words(n) + s[at[5]:], true
	}
	return s, false
}

// words says a number below a hundred.
func words(n int) string {
	small := strings.Fields("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen " +
		"sixteen seventeen eighteen nineteen")
	tens := strings.Fields("twenty thirty forty fifty sixty seventy eighty ninety")
	switch {
	case n < 20:
		return small[n]
	case n%10 == 0:
		return tens[n/10-2]
	}
	return tens[n/10-2] + " " + small[n%10]
}

// The noise itself must leave the meaning alone; these are checked by eye.
func TestNoiseKeepsTheMeaning(t *testing.T) {
	text := "binding for 60 x 72, 2½ in strips, ¾ yd"
	want := map[string]string{
		"capitals":           "BINDING FOR 60 X 72, 2½ IN STRIPS, ¾ YD",
		"by for x":           "binding for 60 by 72, 2½ in strips, ¾ yd",
		"tight x":            "binding for 60x72, 2½ in strips, ¾ yd",
		"other fractions":    "binding for 60 x 72, 2 1/2 in strips, 3/4 yd",
		"decimals":           "binding for 60 x 72, 2.5 in strips, .75 yd",
		"spoken fractions":   "binding for 60 x 72, 2 and a half in strips, three quarters yd",
		"hyphened fractions": "binding for 60 x 72, 2-1/2 in strips, ¾ yd",
		"inch signs":         "binding for 60 x 72, 2½″ strips, ¾ yd",
		"numbers in words":   "binding for sixty x 72, 2½ in strips, ¾ yd",
		"no space at units":  "binding for 60 x 72, 2½in strips, ¾yd",
	}
	for _, n := range noises() {
		if expected, ok := want[n.name]; ok {
			got, made := n.make(text, seeded("check"))
			assert.True(t, made, n.name)
			assert.Equal(t, expected, got, n.name)
		}
	}
	reordered, made := noises()[len(noises())-1].make("binding for 60 x 72", seeded("check"))
	assert.True(t, made)
	assert.Equal(t, "60 x 72, binding", reordered)
}
