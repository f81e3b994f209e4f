package measure

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// writing is one way to write a number or a unit.
type writing struct {
	text   string
	digits bool // it ends in a digit or a character for a fraction
}

// fractions with their writings in digits, as one character and in words.
var fractionWritings = []struct {
	number        Number
	digits, glyph string
	words         []string
}{
	{Number{1, 2}, "1/2", "½", []string{"a half", "one half", "one-half"}},
	{Number{1, 4}, "1/4", "¼", []string{"a quarter", "one quarter", "a fourth"}},
	{Number{3, 4}, "3/4", "¾", []string{"three quarters", "three-quarters", "three fourths", "3 quarters"}},
	{Number{1, 3}, "1/3", "⅓", []string{"a third", "one third"}},
	{Number{2, 3}, "2/3", "⅔", []string{"two thirds", "two-thirds"}},
	{Number{1, 8}, "1/8", "⅛", []string{"an eighth", "one eighth", "an eigth"}},
	{Number{5, 8}, "5/8", "⅝", []string{"five eighths", "five-eighths", "5 eighths"}},
	{Number{7, 8}, "7/8ths", "⅞", []string{"seven eighths"}},
	{Number{13, 16}, "13/16", "", []string{"thirteen sixteenths"}},
	{Number{31, 32}, "31/32", "", nil},
}

var unitWritings = []struct {
	unit         Unit
	words, marks []string
}{
	{NoUnit, []string{""}, nil},
	{InchUnit, []string{"in", "in.", "inch", "inches", "ins", "INCHES"}, []string{`"`, "''", "”", "″", "′′"}},
	{FootUnit, []string{"ft", "ft.", "foot", "feet"}, []string{"'", "’", "′"}},
	{YardUnit, []string{"yd", "yd.", "yds", "yard", "yards", "Yard"}, nil},
	{MillimetreUnit, []string{"mm", "millimetre", "millimeters"}, nil},
	{CentimetreUnit, []string{"cm", "cm.", "cms", "centimetres", "centimeter"}, nil},
	{MetreUnit, []string{"metre", "metres", "meter", "meters"}, []string{"m", " m"}},
	{DegreeUnit, []string{"deg", "degree", "degrees"}, []string{"°", " °", "º"}},
}

// behind is what may stand behind a quantity without being part of it.
var behind = []string{"", ".", ", and", " x 72", " strips", " by 3", "\n1/2", ")", "; 5"}

// numberWritings gives the writings of a whole number with or without a fraction.
func numberWritings(whole int, n Number, digits, glyph string, words []string) []writing {
	w := fmt.Sprint(whole)
	spelled := spell(whole)
	all := []writing{
		{w + " " + digits, true}, {w + "-" + digits, true}, {w + " and " + digits, true}, {w + " & " + digits, true},
		{spelled + " and " + digits, true},
	}
	if glyph != "" {
		all = append(all, writing{w + glyph, true}, writing{w + " " + glyph, true}, writing{w + "-" + glyph, true},
			writing{w + "\u00a0" + glyph, true}, writing{w + "\u202f" + strings.ReplaceAll(digits, "/", "⁄"), true})
	}
	for _, f := range words {
		all = append(all, writing{w + " and " + f, false}, writing{w + " & " + f, false},
			writing{spelled + " and " + f, false}, writing{strings.ToUpper(spelled + " & " + f), false},
			writing{strings.ReplaceAll(spelled+" and "+f, " ", "-"), false})
	}
	return all
}

// TestAllWritings puts together every writing of a fraction, of its whole number
// and of a unit, with what may stand behind them.
func TestAllWritings(t *testing.T) {
	for _, f := range fractionWritings {
		for _, whole := range []int{1, 2, 9, 12, 20, 45, 60, 100, 117} {
			for _, w := range numberWritings(whole, f.number, f.digits, f.glyph, f.words) {
				requireUnits(t, w, Number{int64(whole), 1}.plus(f.number))
			}
		}
		for _, text := range []string{f.digits, f.glyph} {
			if text != "" {
				requireUnits(t, writing{text, true}, f.number)
			}
		}
		for _, text := range f.words {
			if counted := !strings.HasPrefix(text, "a") && text[0] > '9'; counted {
				requireUnits(t, writing{text, false}, f.number)
			}
		}
	}
}

// TestSpelledNumbers spells the numbers up to ten thousand in each usual way.
func TestSpelledNumbers(t *testing.T) {
	for n := range 10_001 {
		s := spell(n)
		ways := []string{s, strings.ReplaceAll(s, "-", " "), strings.ReplaceAll(s, " and ", " "), strings.ReplaceAll(s, " ", "-")}
		if rest, ok := strings.CutPrefix(s, "one "); ok {
			ways = append(ways, "a "+rest, rest)
		}
		for _, text := range ways {
			q, ok := ScanQuantity(text)
			require.True(t, ok, text)
			require.Equal(t, Number{int64(n), 1}, q.Number, text)
			require.Equal(t, len(text), q.Size, text)
		}
	}
}

// requireUnits requires that the writing is read as n with each unit behind it.
func requireUnits(t *testing.T, w writing, n Number) {
	t.Helper()
	for _, u := range unitWritings {
		var texts []string
		for _, word := range u.words {
			if word == "" {
				texts = append(texts, w.text)
				continue
			}
			texts = append(texts, w.text+" "+word, w.text+"-"+word)
			if w.digits {
				if !isLetter(w.text[len(w.text)-1]) { // not "7/8thsin"
					texts = append(texts, w.text+word)
				}
			}
		}
		for _, mark := range u.marks {
			if w.digits && !isLetter(w.text[len(w.text)-1]) {
				texts = append(texts, w.text+mark)
			}
		}
		for _, text := range texts {
			for _, rest := range behind {
				q, ok := ScanQuantity(text + rest)
				whole := q.Size == len(text) || rest == "." // the full stop of an abbreviation
				if !ok || q.Number != n || q.Unit != u.unit || !whole {
					t.Fatalf("ScanQuantity(%q) = %+v, want %v %v", text+rest, q, n, u.unit)
				}
			}
		}
	}
}

var (
	smallWords = strings.Fields("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen")
	tensWords  = strings.Fields("- - twenty thirty forty fifty sixty seventy eighty ninety")
)

// spell writes a number below a million in British English, from memory:
// "two thousand three hundred and forty-five".
func spell(n int) string {
	switch {
	case n < 20:
		return smallWords[n]
	case n < 100 && n%10 == 0:
		return tensWords[n/10]
	case n < 100:
		return tensWords[n/10] + "-" + smallWords[n%10]
	}
	unit, name, and := 1000, " thousand", " "
	if n < 1000 {
		unit, name = 100, " hundred"
	}
	s := spell(n/unit) + name
	if n%unit == 0 {
		return s
	}
	if n%unit < 100 {
		and = " and "
	}
	return s + and + spell(n%unit)
}

// TestSharesByName reads each name of a fraction, in the singular and the plural.
func TestSharesByName(t *testing.T) {
	for name, den := range map[string]int64{
		"half": 2, "third": 3, "quarter": 4, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9,
		"tenth": 10, "twelfth": 12, "sixteenth": 16, "thirty-second": 32, "thirty second": 32, "sixty-fourth": 64,
	} {
		for _, text := range []string{"a " + name + " of an inch", name + " of a inch", "one " + name + " of an inch", "one " + name + " inch"} {
			q, ok := ScanQuantity(text)
			require.True(t, ok, text)
			require.Equal(t, Quantity{Number: Number{1, den}, Unit: InchUnit, Form: Words, Size: len(text),
				NumberSize: strings.Index(text, name) + len(name), UnitText: "inch"}, q, text)
		}
		if den > 2 {
			text := "two " + name + "s"
			q, ok := ScanQuantity(text)
			require.True(t, ok, text)
			require.Equal(t, ratio(2, den), q.Number, text)
			require.Equal(t, len(text), q.Size, text)
		}
	}
}

// TestSlipsOfThePen reads words that are often misspelt.
func TestSlipsOfThePen(t *testing.T) {
	for text, want := range map[string]Number{
		"fourty": {40, 1}, "fivty": {50, 1}, "ninty": {90, 1}, "eigthy": {80, 1}, "forteen": {14, 1}, "eightteen": {18, 1},
		"ninteen": {19, 1}, "thre": {3, 1}, "twelf": {12, 1}, "fourty-two": {42, 1},
		"a quater inch": {1, 4}, "three quaters": {3, 4}, "an eigth of an inch": {1, 8}, "five eigths": {5, 8},
		"two halfs of a yard": {1, 1}, "two halves of a yard": {1, 1},
		"5 inchs": {5, 1}, "5 inche": {5, 1}, "5 yrds": {5, 1}, "1 yrd": {1, 1}, "18 degress": {18, 1},
	} {
		q, ok := ScanQuantity(text)
		require.True(t, ok, text)
		require.Equal(t, want, q.Number, text)
		require.Equal(t, len(text), q.Size, text)
	}
}
