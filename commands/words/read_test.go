package words

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// trade is a small vocabulary to read with.
func trade(t testing.TB) *Vocabulary {
	v, err := NewVocabulary(
		[]Term{
			{"binding", "binding, bind"}, {"backing", "backing"}, {"quilt", "quilt"}, {"strip", "strip"}, {"block", "block"},
			{"half-square", "half square, half square triangle, hst"}, {"triangle", "triangle"},
			{"four-patch", "4 patch, four patch block"}, {"one-way", "one way, one way print"},
			{"wide", "wide"}, {"wide backing", "wide backing"}, {"battens", "battens"}, {"sashing", "sashing"},
			{"applique", "appliqué"}, {"price", "how much is it, #, ¢"}, {"clock", "o'clock"}, {"scallop", "scallop"},
			{"rails", "3 rail"}, {"box", "box"}, {"bodies", "body"},
		},
		[]Term{{"finished", "finished, once sewn"}},
	)
	require.NoError(t, err)
	return v
}

// Texts are written as their tokens: words as they are read, numbers as
// fractions with their unit, other tokens by their kind.
func TestRead(t *testing.T) {
	v := trade(t)
	for _, c := range []struct{ is, in, want string }{
		{"words and numbers", "Binding for 54 x 68", "binding for 54 × 68"},
		{"a unit with a blank", "54 in wide", "54in wide"},
		{"a unit glued on", "54in 3yd 60cm 1.2m", "54in 3yd 60cm 6/5m"},
		{"marks of inches and feet", `54" 3'`, "54in 3ft"},
		{"fractions", "2½ 2 1/2 2-1/2 2.5 .75 ⅞", "5/2 5/2 5/2 5/2 3/4 7/8"},
		{"spoken numbers", "sixty by seventy two", "60 by 72"},
		{"all in one", "60x72in2.5strips", "60 × 72in 5/2 strips"},
		{"glued crosses", `60x72 60X72 60"x72"`, "60 × 72 60 × 72 60in × 72in"},
		{"a cross with blanks", "60 x 72", "60 × 72"},
		{"a cross without a second number", "60 x", "60 ×"},
		{"x that is no cross", "x 5 box", "x 5 box"},
		{"x inside a word", "5 xx 6", "5 xx 6"},
		{"three sizes", "2x3x4", "2 × 3 × 4"},
		{"below zero", "-5 in", "-5in"},
		{"below zero behind a word", "strips -5 wide", "strips -5 wide"},
		{"a range", "5-6 5 - 6 5–6", "5 - 6 5 - 6 5 - 6"},
		{"minus behind a number is a dash", "6 -5", "6 - 5"},
		{"a dash before a word", "- binding", "- binding"},
		{"two dashes", "--5", "- - 5"},
		{"hyphens in a phrase", "half-square triangle", "half square triangle"},
		{"hyphen behind a unit", "2-1/2-inch strips", "5/2in strips"},
		{"ordinals", "13th of the 1st", "13th of the 1st"},
		{"apostrophes", "don't at 3 o'clock", "don't at 3 o'clock"},
		{"a quote is no apostrophe", "'binding' strips'", ", binding , strips ,"},
		{"ends", "Binding? 54 x 68. Why!", "binding . 54 × 68 . why ."},
		{"lines", "binding\n54 x 68", "binding . 54 × 68"},
		{"brackets", "(54 x 68), quilt: [a]", ", 54 × 68 , , quilt , , a ,"},
		{"signs", "$0.03 10% #3 a/b", "$ 3/100 10 % # 3 a / b"},
		{"decimal comma", "1,5 cm", "3/2cm"},
		{"thousands", "1,500 in", "1500in"},
		{"degrees", "18° 18 degrees", "18deg 18deg"},
		{"another script's digits", "binding ٥٤ x ६८", "binding 54 × 68"},
		{"accents apart", "applique\u0301", "appliqué"},
		{"words of another script stay", "Стёжка 5", "стёжка 5"},
		{"digits before letters", "2nds 5abc", "2nds 5 abc"},
		{"blanks only", " \t ", ""},
		{"nothing", "", ""},
	} {
		t.Run(c.is, func(t *testing.T) {
			assert.Equal(t, c.want, written(v.Read(c.in).Tokens))
		})
	}
}

func written(tokens []Token) string {
	var out []string
	for _, t := range tokens {
		switch t.Kind {
		case Word:
			out = append(out, t.Word)
		case Number:
			n := t.Quantity.Number
			s := fmt.Sprint(n.Num)
			if n.Den != 1 {
				s += fmt.Sprint("/", n.Den)
			}
			out = append(out, s+t.Quantity.Unit.String())
		case Cross:
			out = append(out, "×")
		case Dash:
			out = append(out, "-")
		case Comma:
			out = append(out, ",")
		case Break:
			out = append(out, ".")
		default:
			out = append(out, t.Text)
		}
	}
	return strings.Join(out, " ")
}

func TestPhrases(t *testing.T) {
	v := trade(t)
	for _, c := range []struct {
		is, in string
		want   []Concept
	}{
		{"one word", "binding", []Concept{"binding"}},
		{"the longest", "wide backing wide binding", []Concept{"wide backing", "wide", "binding"}},
		{"one that breaks off", "one way only, one way print", []Concept{"one-way", "one-way"}},
		{"plural", "quilts strips boxes bodies half square triangles", []Concept{"quilt", "strip", "box", "bodies", "half-square"}},
		{"possessive", "the quilt's strip", []Concept{"quilt", "strip"}},
		{"a number in figures", "4 patch", []Concept{"four-patch"}},
		{"a number in words", "four patch", []Concept{"four-patch"}},
		{"a term with its number in words", "4 patch blocks, four patch block", []Concept{"four-patch", "four-patch"}},
		{"a number that is no part of it", "4 strips", []Concept{"strip"}},
		{"a number with a unit is no part of it", "4 in patch", nil},
		{"hyphens", "half-square 4-patch four-patch one-way 3-rail", []Concept{"half-square", "four-patch", "four-patch", "one-way", "rails"}},
		{"a free dash parts", "half - square", nil},
		{"a comma parts", "half, square", nil},
		{"a line parts", "half\nsquare", nil},
		{"capitals", "HALF Square TRIANGLES", []Concept{"half-square"}},
		{"signs", "# 5¢", []Concept{"price", "price"}},
		{"an apostrophe", "O’clock", []Concept{"clock"}},
		{"mended inside a phrase", "half sqaure traingle", []Concept{"half-square"}},
		{"from the second list", "once sewn", []Concept{"finished"}},
	} {
		t.Run(c.is, func(t *testing.T) {
			var got []Concept
			for _, token := range v.Read(c.in).Tokens {
				if token.Concept != "" {
					got = append(got, token.Concept)
				}
			}
			assert.Equal(t, c.want, got)
		})
	}
}

func TestVocabularyRefuses(t *testing.T) {
	_, err := NewVocabulary([]Term{{"backing", "back"}, {"behind", "back"}})
	assert.ErrorContains(t, err, `"back" means both backing and behind`)
	_, err = NewVocabulary([]Term{{"backing", "back, , lining"}})
	assert.ErrorContains(t, err, "empty phrase")
	_, err = NewVocabulary([]Term{{"a", "4 patch"}, {"b", "four patch"}})
	assert.ErrorContains(t, err, "means both a and b", "a number in words is the number")
	_, err = NewVocabulary([]Term{{"one", "strip"}, {"many", "strips"}})
	assert.NoError(t, err, "a plural that is made up gives way")
	_, err = NewVocabulary([]Term{{"same", "strip, strip"}})
	assert.NoError(t, err)
}

func TestSpelling(t *testing.T) {
	v := trade(t)
	for _, c := range []struct{ is, in, want string }{
		{"a letter dropped", "bindng", "binding"},
		{"a letter doubled", "binnding", "binding"},
		{"letters swapped", "bidning", "binding"},
		{"a wrong letter", "bibding", "binding"},
		{"a letter too many", "bindingg", "binding"},
		{"the first two swapped", "ibnding", "binding"},
		{"two slips in a long word", "tringlee", "triangle"},
		{"two slips far apart in it", "traingel", "traingel"},
		{"two slips in a short one", "qiult", "quilt"},
		{"three slips are too many", "trainegl x", "trainegl x"},
		{"two slips in a word of seven", "bndng", "bndng"},
		{"another first letter", "hinding", "hinding"},
		{"too short to mend", "hts", "hts"},
		{"between two equally near", "bacting", "backing"},
		{"common English stays", "finding quiet trial building stops stroke", "finding quiet trial building stops stroke"},
		{"the vocabulary stays", "sashing battens", "sashing battens"},
		{"ordinals stay", "5th", "5th"},
		{"a long word stays", strings.Repeat("binding", 9), strings.Repeat("binding", 9)},
		{"capitals", "BINDNG", "binding"},
	} {
		t.Run(c.is, func(t *testing.T) {
			tokens := v.Read(c.in).Tokens
			assert.Equal(t, c.want, written(tokens))
			for _, token := range tokens {
				if token.Kind == Word {
					assert.Equal(t, token.Word != strings.ToLower(token.Text), token.Mended, token.Text)
				}
			}
		})
	}
}

// Where two words are equally near, neither is taken.
func TestSpellingTies(t *testing.T) {
	v, err := NewVocabulary([]Term{{"a", "zolder"}, {"b", "zotder"}})
	require.NoError(t, err)
	assert.Equal(t, "zoxder", written(v.Read("zoxder").Tokens))

	one, err := NewVocabulary([]Term{{"a", "zolder"}})
	require.NoError(t, err)
	assert.Equal(t, "zolders", written(one.Read("zolderss").Tokens), "two forms of one word are no tie")
}

// The same slip is mended alike by every vocabulary of the same terms.
func TestSpellingIsSteady(t *testing.T) {
	words := []string{"bindingg", "stripps", "quilst", "blocs", "sashin", "trianglse"}
	first := written(trade(t).Read(strings.Join(words, " ")).Tokens)
	for range 20 {
		require.Equal(t, first, written(trade(t).Read(strings.Join(words, " ")).Tokens))
	}
}

// No common English word is ever changed, whatever the vocabulary.
func TestSpellingLeavesEnglishAlone(t *testing.T) {
	v := trade(t)
	for _, w := range v.english {
		tokens := v.Read(w).Tokens
		for _, token := range tokens {
			require.False(t, token.Mended, "%q became %q", w, token.Word)
		}
	}
}

func TestEnglishIsSortedAndUnique(t *testing.T) {
	list := commonEnglish()
	assert.Greater(t, len(list), 5000)
	for i, w := range list {
		assert.Regexp(t, `^[a-z']+$`, w)
		if i > 0 {
			assert.Less(t, list[i-1], w)
		}
	}
	assert.True(t, slices.Contains(list, "quiet"))
}

func TestSlips(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"binding", "binding", 0}, {"binding", "bindng", 1}, {"binding", "bidning", 1}, {"binding", "bxndxng", 2},
		{"binding", "backing", 3}, {"sashing", "sagging", 2}, {"binding", "bin", 3}, {"", "ab", 2}, {"ab", "", 2}, {"abc", "xyz", 3},
		{"abcdef", strings.Repeat("z", 40), 3},
	} {
		assert.Equal(t, c.want, slips(c.a, c.b), "%s %s", c.a, c.b)
		assert.Equal(t, c.want, slips(c.b, c.a), "%s %s", c.b, c.a)
	}
}

// placed tells that tokens lie in order within the text, and hold what they say.
func placed(text Text) error {
	end := 0
	for _, t := range text.Tokens {
		switch {
		case t.Pos < end || t.End <= t.Pos || t.End > len(text.Clean):
			return fmt.Errorf("%q at %d to %d, behind %d", t.Text, t.Pos, t.End, end)
		case text.Clean[t.Pos:t.End] != t.Text:
			return fmt.Errorf("%q is not %q", t.Text, text.Clean[t.Pos:t.End])
		case t.Kind == Word && t.Word == "":
			return fmt.Errorf("a word without letters at %d", t.Pos)
		}
		end = t.End
	}
	return nil
}

// What reading costs is counted, not timed: tokens are never more than
// characters, and a text ten times as long allocates about ten times as much.
func TestReadingGrowsWithTheText(t *testing.T) {
	v := trade(t)
	for _, part := range []string{"binding ", "bindng ", "5 ", "-", "60x", "half-", "one way ", "((", "½", "* ", "a'", "5*", "\u0301", "zzzzzzzzzzzz ", "2 1/2 "} {
		t.Run(part, func(t *testing.T) {
			cost := func(characters int) float64 {
				s := strings.Repeat(part, characters/len(part))
				text := v.Read(s)
				require.NoError(t, placed(text))
				require.LessOrEqual(t, len(text.Tokens), len(text.Clean))
				return testing.AllocsPerRun(3, func() { v.Read(s) })
			}
			thousand, ten := cost(1000), cost(10000)
			assert.LessOrEqual(t, ten, 11*thousand+50, "allocations")
		})
	}
}

func FuzzRead(f *testing.F) {
	for _, s := range []string{"binding for 54 x 68", "60x72in2.5strips", "٥٤\u202e½½-", "a'b'c''", "1/0 -½x--", "99999999999999999999/3"} {
		f.Add(s)
	}
	v := trade(f)
	f.Fuzz(func(t *testing.T, s string) {
		if len(s) > MaxText {
			t.Skip("longer than what is read")
		}
		if err := placed(v.Read(s)); err != nil {
			t.Fatalf("%q: %v", s, err)
		}
	})
}
