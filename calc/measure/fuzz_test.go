package measure

import (
	"math/big"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"
)

// seeds are the rows of the tables and what once was read wrong or slowly.
func seeds() []string {
	all := []string{
		"minus minus minus two", "----1", "1-1-1-1-1", "2 and 2 and 2", "1/1/1/1/1", "1.1.1.1",
		"60x72in2.5strips", "3 ft 2 in strips", "1 yd 1 yd 1 yd", "½½½", "010/010", "2\u20441", "5 \xc2", "\xe2\x85",
		"a a a a", "half a half a dozen", "one one one", "hundred hundred", "nine hundred ninety nine billion",
		"1e12", "0e99", "0^0", "2^64", "1/1000001", "999999999 1/2", "1000000001 1/2", "999999999999 dozen",
		"999999999999 yd 2.123456789 ft", "999999999999 in and 999999/1000000",
	}
	for _, row := range scanRows {
		read, rest := cutBar(row.in)
		all = append(all, read+rest)
	}
	return all
}

// FuzzScanQuantity holds what callers rely on: sizes within bounds, numbers in
// lowest terms and in range, and the number that a slow reader gets from the
// same text.
func FuzzScanQuantity(f *testing.F) {
	for _, s := range seeds() {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		q, ok := ScanQuantity(s)
		if !ok {
			require.Zero(t, q)
			return
		}
		require.Positive(t, q.NumberSize)
		require.LessOrEqual(t, q.NumberSize, q.Size)
		require.LessOrEqual(t, q.Size, len(s))
		require.Positive(t, q.Number.Den)
		require.Contains(t, s[:q.Size], q.UnitText)
		require.Equal(t, q.Unit == NoUnit, q.UnitText == "")
		n := big.NewRat(q.Number.Num, q.Number.Den)
		require.Equal(t, n.Num().Int64(), q.Number.Num, "in lowest terms")
		if q.Form == TooBig {
			require.Equal(t, tooBig, Number{max(q.Number.Num, -q.Number.Num), q.Number.Den})
			return
		}
		require.LessOrEqual(t, new(big.Rat).Abs(n).Cmp(big.NewRat(13*largest, 1)), 0)

		// What was read is read again when nothing stands behind it.
		again, ok := ScanQuantity(s[:q.Size])
		require.True(t, ok)
		require.Equal(t, q, again)

		if want := slowly(s[:q.NumberSize]); want != nil && q.Form < Words && q.Size == q.NumberSize+unitSize(s, q) {
			diff := new(big.Rat).Sub(want, n)
			require.LessOrEqual(t, diff.Abs(diff).Cmp(slack(s[:q.NumberSize])), 0, "%q is %v", s[:q.NumberSize], q.Number)
		}
	})
}

// unitSize gives the bytes between the number of q and the end of its unit, or
// those of a whole quantity that goes on behind the unit as not fitting.
func unitSize(s string, q Quantity) int {
	i := strings.Index(s[q.NumberSize:q.Size], q.UnitText)
	return i + len(q.UnitText)
}

// slack is what rounding of a number with many decimals or digits may cost: half
// of the ninth decimal, or of the last of eighteen digits.
func slack(s string) *big.Rat {
	if len(s) <= 10 {
		return new(big.Rat)
	}
	return big.NewRat(1, 2_000_000)
}

// slowPatterns are the plain writings of numbers, and what makes them something
// that big.Rat reads. They share nothing with the scanner.
var slowPatterns = []struct {
	pattern *regexp.Regexp
	parts   []string // to be added up
}{
	{regexp.MustCompile(`^(\d*\.?\d+)$`), []string{"$1"}},
	{regexp.MustCompile(`^(\d+),(\d+)$`), []string{"$1.$2"}},
	{regexp.MustCompile(`^0*(\d+)/0*(\d+)$`), []string{"$1/$2"}},
	{regexp.MustCompile(`^0*(\d+)(?:-|\s+| and | & )0*(\d+)/0*(\d+)$`), []string{"$1", "$2/$3"}},
}

var (
	thousands = regexp.MustCompile(`^[1-9]\d{0,2}((,\d{3})+(\.\d+)?|(,\d{3}){2,})$`)
	endings   = regexp.MustCompile(`(?i)(/\d+)(ths?|rds?|nds?)$`)
	slashes   = strings.NewReplacer("⁄", "/", "∕", "/", "−", "-", "\u00a0", " ")
)

// slowly reads a number in digits, or gives nil for one in another writing.
// Characters for fractions are taken apart by Unicode's own decomposition.
func slowly(s string) *big.Rat {
	s = slashes.Replace(s)
	s, negative := strings.CutPrefix(s, "-")
	for _, r := range s {
		if c := string(r); norm.NFKC.String(c) != c && strings.ContainsRune(norm.NFKC.String(c), '⁄') {
			s = strings.Replace(s, c, " "+norm.NFKC.String(c), 1)
		}
	}
	s = strings.TrimSpace(slashes.Replace(strings.ReplaceAll(s, "- ", " ")))
	s = endings.ReplaceAllString(s, "$1")
	if thousands.MatchString(s) {
		s = strings.ReplaceAll(s, ",", "")
	}
	for _, p := range slowPatterns {
		m := p.pattern.FindStringSubmatchIndex(s)
		if m == nil {
			continue
		}
		sum := new(big.Rat)
		for _, part := range p.parts {
			r, ok := new(big.Rat).SetString(string(p.pattern.ExpandString(nil, part, s, m)))
			if !ok {
				return nil
			}
			sum.Add(sum, r)
		}
		if negative {
			sum.Neg(sum)
		}
		return sum
	}
	return nil
}

// FuzzParseLength holds that a length is never out of range, is what the slow
// reader gets, and that what is printed of it reads back.
func FuzzParseLength(f *testing.F) {
	for _, s := range seeds() {
		f.Add(s, uint8(InchUnit))
	}
	f.Fuzz(func(t *testing.T, s string, u uint8) {
		bare := Unit(u) % (DegreeUnit + 1)
		l, err := ParseLength(s, bare)
		if err != nil {
			require.Zero(t, l)
			require.Less(t, len(err.Error()), 1000)
			return
		}
		require.LessOrEqual(t, max(l, -l), Max)
		if want := slowly(strings.TrimSpace(s)); want != nil && bare.IsLength() {
			nm := new(big.Rat).Mul(want, big.NewRat(int64(bare.Length()), 1))
			diff := nm.Sub(nm, big.NewRat(int64(l), 1))
			require.LessOrEqual(t, diff.Abs(diff).Cmp(big.NewRat(3, 2)), 0, "%q is %d nm", s, l)
		}
		readsBack(t, l, Inch/64, Imperial)
		readsBack(t, l, Millimetre, Metric)
	})
}

// readsBack holds that a length on the printed step is printed to be read back.
func readsBack(t *testing.T, l, step Length, system System) {
	l = l.RoundNearest(step)
	if l > Max || l < -Max {
		return
	}
	got, err := ParseLength(l.Show(system), NoUnit)
	require.NoError(t, err)
	require.Equal(t, l, got, l.Show(system))
}

func TestSlowReaderReadsPlainNumbers(t *testing.T) {
	for in, want := range map[string]string{
		"60": "60", ".75": "3/4", "2,5": "5/2", "1,234": "1234", "3/4": "3/4", "7/8ths": "7/8", "2 1/2": "5/2", "2-1/2": "5/2",
		"2½": "5/2", "2 ½": "5/2", "2-½": "5/2", "⅞": "7/8", "-40": "-40", "1,234.5": "2469/2", "2 and 1/2": "5/2",
	} {
		got := slowly(in)
		require.NotNil(t, got, in)
		require.Equal(t, want, got.RatString(), in)
	}
}

// TestGlyphsAreThoseOfUnicode compares the characters for fractions with their
// decomposition in the Unicode Character Database.
func TestGlyphsAreThoseOfUnicode(t *testing.T) {
	count := 0
	for r := rune(0x80); r < 0x3000; r++ {
		text := norm.NFKC.String(string(r))
		above, below, ok := strings.Cut(text, "⁄")
		if !ok || below == "" || r == '↉' { // nought thirds are a score in baseball, and no length
			continue
		}
		want, ok := new(big.Rat).SetString(above + "/" + below)
		require.True(t, ok, text)
		n, w := glyph(string(r))
		require.Equal(t, len(string(r)), w, "%c", r)
		require.Equal(t, want.RatString(), big.NewRat(n.Num, n.Den).RatString(), "%c", r)
		count++
	}
	require.Equal(t, len(latinFractions)+len(numberForms), count)
}

// TestScanQuantityTakesLinearTime reads a quarter of a megabyte at each of its words. It has no
// clock: with a scanner that looks ahead without a bound it would not end.
func TestScanQuantityTakesLinearTime(t *testing.T) {
	for _, unit := range []string{
		"minus ", "-", "1-", "1 ", "2 and ", "1/", "1.", "1,", "9", "a ", "half ", "half a ", "one ", "hundred and ",
		"1 yd ", "1yd1ft", "3'", "½", "¼ ", " ", "x", "1e", "2^", "and a half ", "a yard and ",
	} {
		s := strings.Repeat(unit, 1<<18/len(unit))
		for s != "" {
			q, ok := ScanQuantity(s)
			if ok {
				s = s[q.Size:]
				continue
			}
			n := max(letters(s), 1)
			s = s[n:]
		}
	}
}
