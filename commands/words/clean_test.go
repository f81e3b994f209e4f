package words

import (
	"fmt"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

func TestClean(t *testing.T) {
	for _, c := range []struct{ is, in, want string }{
		{"plain text stays", "binding for 54 x 68", "binding for 54 x 68"},
		{"line ends stay", "one\ntwo\r\nthree\u2028four\u2029five", "one\ntwo\n\nthree\nfour\nfive"},
		{"fraction signs stay", "2½ 1¼ ¾ ⅛ ⅜ ⅝ ⅞ ⅓ ⅔ ⅚ ⅐", "2½ 1¼ ¾ ⅛ ⅜ ⅝ ⅞ ⅓ ⅔ ⅚ ⅐"},
		{"a numerator's sign", "⅟3", "1/3"},
		{"double primes", `14″ 14” 14“ 14„ 14‟ 14ʺ 14〃`, `14" 14" 14" 14" 14" 14" 14"`},
		{"angle quotes", "«quilt»", `"quilt"`},
		{"single primes and apostrophes", "3′ don’t ‘a’ 3ʹ it`s it´s", "3' don't 'a' 3' it's it's"},
		{"crosses", "60×72 60✕72 60✖72 60⨯72 60❌72", "60x72 60x72 60x72 60x72 60x72"},
		{"hyphens and minus", "half‐square half‑square 2‒3 −5 －5", "half-square half-square 2-3 -5 -5"},
		{"dashes part", "a–b a—b a―b", "a - b a - b a - b"},
		{"slashes", "1⁄2 1∕2 1╱2 1／2", "1/2 1/2 1/2 1/2"},
		{"dots", "well…", "well..."},
		{"degrees", "18º 18˚ 18°", "18° 18° 18°"},
		{"arrows", "9→12", "9 to 12"},
		{"no more than", "≤5 ≈5", " at most 5 about 5"},
		{"runs of blanks", "54   x  68", "54 x 68"},
		{"blanks of all widths", "60\u00a0x\u202f72\u2009in\u3000\tok", "60 x 72 in ok"},
		{"zero width", "bin\u200bding\u200d \ufeff54\u2060 x 68", "binding 54 x 68"},
		{"direction marks", "\u202ebinding\u202c \u200f54\u200e x \u206668\u2069", "binding 54 x 68"},
		{"soft hyphen", "bind\u00ading", "binding"},
		{"variation selectors", "60✖️72", "60x72"},
		{"control codes", "a\x00b\x07c\x1b[31md\x7fe", "a b c [31md e"},
		{"what is no UTF-8", "54\xff\xfe x 68", "54 x 68"},
		{"half a character", "54 x 68\xe2\x82", "54 x 68 "},
		{"emoji", "🧵 binding 🙂👍🏽", " binding "},
		{"wide letters and digits", "ＢＩＮＤ ５４ ｘ ６８", "BIND 54 x 68"},
		{"ligatures and unit signs", "oﬀcut 5㎝", "offcut 5cm"},
		{"digits of other scripts", "٥٤ x ६८ ۱۲", "54 x 68 12"},
		{"raised digits do not join", "5¹ 60² 3①", "5 1 60 squared 3 1 "},
		{"accents, in one or apart", "appliqu\u00e9 applique\u0301", "appliqué appliqué"},
		{"money", "£5 €5 ¥5 5¢ $5", "£5 €5 ¥5 5¢ $5"},
		{"asterisk between numbers", `60*72 60 * 72 2½*3 60"*72" 60 in * 72 in 60cm*72cm`, `60x72 60 x 72 2½x3 60"x72" 60 in x 72 in 60cmx72cm`},
		{"other asterisks", "60∗72 60＊72", "60x72 60x72"},
		{"asterisk in markup", "*binding* **54** x **68** * item", " binding 54 x 68 item"},
		{"asterisk behind a word", "quilt* 54", "quilt 54"},
		{"nothing", "", ""},
	} {
		t.Run(c.is, func(t *testing.T) {
			assert.Equal(t, c.want, Clean(c.in))
		})
	}
}

// Every mark of the table comes out as it says, wherever it stands, and so does
// what has no meaning at all.
func TestCleanOfEveryCharacter(t *testing.T) {
	for r := rune(0); r <= unicode.MaxRune; r++ {
		if !utf8.ValidRune(r) {
			continue
		}
		got := Clean("a" + string(r) + "z")
		if m, ok := marks[r]; ok {
			assert.Equal(t, "a"+m+"z", got, "%U", r)
		}
		if !sound(got) {
			assert.Fail(t, "not plain", "%U gives %q", r, got)
		}
		if again := Clean(got); again != got {
			assert.Fail(t, "not settled", "%U gives %q, then %q", r, got, again)
		}
	}
}

// sound tells whether a cleaned text holds nothing that the lexer does not
// expect.
func sound(s string) bool {
	return utf8.ValidString(s) && !strings.ContainsFunc(s, func(r rune) bool {
		return r != '\n' && unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || unicode.IsDigit(r) && r > '9' || r == '\u2044'
	})
}

// A text that cannot be read whole is cleaned in one pass: twice the text is
// twice the work. What is counted is the bytes that come out.
func TestCleanGrowsWithTheText(t *testing.T) {
	for _, part := range []string{"½ ", "×", "* ", "5*", "a\u0301", "\u202e", "🧵", "\xff", "≤", "²"} {
		t.Run(fmt.Sprintf("%q", part), func(t *testing.T) {
			one, ten := Clean(strings.Repeat(part+"a", 1000)), Clean(strings.Repeat(part+"a", 10000))
			assert.LessOrEqual(t, len(one), 14*1000)
			assert.InDelta(t, 10*len(one), len(ten), 20)
		})
	}
}

func FuzzClean(f *testing.F) {
	for _, s := range []string{"60\u00a0×\u202f72½″", "\u202e54\x00\xff", "ﷺ*5", "5*5", "a\u0301\u0323"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := Clean(s)
		if !sound(got) {
			t.Fatalf("%q gives %q", s, got)
		}
		if len(got) > 18*len(s) { // the longest compatible form is that of U+FDFA
			t.Fatalf("%d bytes of %d", len(got), len(s))
		}
	})
}
