package measure

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// scanned is what one row expects: the text that is read, its number, unit and
// form. The unread rest stands behind the bar in the row's input.
type scanned struct {
	in       string // "read|rest"
	num, den int64
	unit     Unit
	form     Form
}

var scanRows = []scanned{
	// Digits.
	{"60|", 60, 1, NoUnit, Plain},
	{"0|", 0, 1, NoUnit, Plain},
	{"007|", 7, 1, NoUnit, Plain},
	{"10| 20 30", 10, 1, NoUnit, Plain},
	{"12|-14", 12, 1, NoUnit, Plain},
	{"9|-patch", 9, 1, NoUnit, Plain},
	{"4|x4", 4, 1, NoUnit, Plain},
	{"45|%", 45, 1, NoUnit, Plain},
	{"60|, 72", 60, 1, NoUnit, Plain},
	{"60|.", 60, 1, NoUnit, Plain},
	{"100|hst", 100, 1, NoUnit, Plain},

	// Points and commas.
	{"2.5|", 5, 2, NoUnit, Decimal},
	{"2.50|", 5, 2, NoUnit, Decimal},
	{".75|", 3, 4, NoUnit, Decimal},
	{"2.5|strips", 5, 2, NoUnit, Decimal},
	{"2,5|", 5, 2, NoUnit, DecimalComma},
	{"0,75|", 3, 4, NoUnit, DecimalComma},
	{"0,125|", 1, 8, NoUnit, DecimalComma},
	{"12,34|", 617, 50, NoUnit, DecimalComma},
	{"1,234|", 1234, 1, NoUnit, ThousandsComma},
	{"1,234.5|", 2469, 2, NoUnit, Decimal},
	{"1.234,5|", 2469, 2, NoUnit, DecimalComma},
	{"1,234,567|", 1234567, 1, NoUnit, Plain},
	{"1.234.567|", 1234567, 1, NoUnit, Plain},
	{"1234,567|", 1234567, 1000, NoUnit, DecimalComma},
	{"8.485281374238570|", 4242640687, 500000000, NoUnit, Decimal},
	{"0.9999999996|", 1, 1, NoUnit, Decimal},
	{"0.0000000005|", 1, 1_000_000_000, NoUnit, Decimal},
	{"0.0000000004|", 0, 1, NoUnit, Decimal},
	{"123456789012.1234567|", 123456789012123457, 1_000_000, NoUnit, Decimal},
	{".5|,1.5", 1, 2, NoUnit, Decimal},
	{"3,4,5|", 0, 1, NoUnit, Unclear},
	{"2.5.3|", 0, 1, NoUnit, Unclear},
	{"1.2.2026|", 0, 1, NoUnit, Unclear},
	{"1,23,456|", 0, 1, NoUnit, Unclear},

	// Fractions.
	{"3/4|", 3, 4, NoUnit, Slashed},
	{"3⁄4|", 3, 4, NoUnit, Slashed},
	{"3∕4|", 3, 4, NoUnit, Slashed},
	{"4/8|", 1, 2, NoUnit, Slashed},
	{"24/7|", 24, 7, NoUnit, Slashed},
	{"7/8ths|", 7, 8, NoUnit, Slashed},
	{"1/3rd| of", 1, 3, NoUnit, Slashed},
	{"⅞|", 7, 8, NoUnit, Glyph},
	{"⅓|", 1, 3, NoUnit, Glyph},
	{"1/1000000|", 1, 1_000_000, NoUnit, Slashed},
	{"1/1000001|", 0, 1, NoUnit, Unclear},
	{"3/0|", 0, 1, NoUnit, Unclear},
	{"24/12/2026|", 0, 1, NoUnit, Unclear},

	// Whole and fraction.
	{"2 1/2|", 5, 2, NoUnit, Mixed},
	{"2-1/2|", 5, 2, NoUnit, Mixed},
	{"2½|", 5, 2, NoUnit, Glyph},
	{"2 ½|", 5, 2, NoUnit, Glyph},
	{"2-½|", 5, 2, NoUnit, Glyph},
	{"2\u00a0½|", 5, 2, NoUnit, Glyph},
	{"2    1/2|", 5, 2, NoUnit, Mixed},
	{"2|     1/2", 2, 1, NoUnit, Plain}, // more blanks than stand within a number
	{"2|\n1/2", 2, 1, NoUnit, Plain},
	{"60 3/4|", 243, 4, NoUnit, Mixed},
	{"5| 7/2", 5, 1, NoUnit, Plain},
	{"5| 2/2", 5, 1, NoUnit, Plain},
	{"2| - 1/2", 2, 1, NoUnit, Plain},
	{"2¼|-2½", 9, 4, NoUnit, Glyph},
	{"3 1/2| x 6 1/2", 7, 2, NoUnit, Mixed},
	{"2 and 1/2|", 5, 2, NoUnit, Mixed},
	{"2 & 1/2|", 5, 2, NoUnit, Mixed},
	{"2 and a half|", 5, 2, NoUnit, Mixed},
	{"2 and a half| strips", 5, 2, NoUnit, Mixed},
	{"2 and five eighths|", 21, 8, NoUnit, Mixed},
	{"2 and 5 eighths|", 21, 8, NoUnit, Mixed},
	{"2| and a half circle", 2, 1, NoUnit, Plain},
	{"2| and half square triangles", 2, 1, NoUnit, Plain},
	{"2| and 3", 2, 1, NoUnit, Plain},
	{"2| and 3/2", 2, 1, NoUnit, Plain},
	{"24| 1/2 square triangles", 24, 1, NoUnit, Plain},
	{"24| ½-square triangles", 24, 1, NoUnit, Plain},
	{"12| 1/2-yard cuts", 12, 1, NoUnit, Plain},
	{"6| ¼ metre pieces", 6, 1, NoUnit, Plain},
	{"12 1/2 yards| of it", 25, 2, YardUnit, Mixed},
	{"2 1/2 inch| pieces", 5, 2, InchUnit, Mixed},
	{"4 1/2| squares", 9, 2, NoUnit, Mixed},
	{"2.5| 1/2", 5, 2, NoUnit, Decimal},

	// Units.
	{`14"|`, 14, 1, InchUnit, Plain},
	{`14''|`, 14, 1, InchUnit, Plain},
	{"14”|", 14, 1, InchUnit, Plain},
	{"14″|", 14, 1, InchUnit, Plain},
	{"14′′|", 14, 1, InchUnit, Plain},
	{`14 "| x 20`, 14, 1, InchUnit, Plain},
	{`14| "blue"`, 14, 1, NoUnit, Plain},
	{"14 in|", 14, 1, InchUnit, Plain},
	{"14in|", 14, 1, InchUnit, Plain},
	{"14 in.|", 14, 1, InchUnit, Plain},
	{"14-inch|", 14, 1, InchUnit, Plain},
	{"14 INCHES|", 14, 1, InchUnit, Plain},
	{"14 ins| wide", 14, 1, InchUnit, Plain},
	{"2 1/2 in| strips", 5, 2, InchUnit, Mixed},
	{"72in|2.5strips", 72, 1, InchUnit, Plain},
	{"60in|x72in", 60, 1, InchUnit, Plain},
	{"60cm|x90cm", 60, 1, CentimetreUnit, Plain},
	{"60|inx", 60, 1, NoUnit, Plain},
	{"60|inchstrip", 60, 1, NoUnit, Plain},
	{"60| into", 60, 1, NoUnit, Plain},
	{"60| in²", 60, 1, NoUnit, Plain},
	{"3'|", 3, 1, FootUnit, Plain},
	{"3'| x 4'", 3, 1, FootUnit, Plain},
	{"3'|x4'", 3, 1, FootUnit, Plain},
	{"3’|", 3, 1, FootUnit, Plain},
	{"5|'s", 5, 1, NoUnit, Plain},
	{"3 feet|", 3, 1, FootUnit, Plain},
	{"1 3/4 yd|", 7, 4, YardUnit, Mixed},
	{"1.75yds|", 7, 4, YardUnit, Decimal},
	{"60cm|", 60, 1, CentimetreUnit, Plain},
	{"1.2m|", 6, 5, MetreUnit, Decimal},
	{"2 m|", 2, 1, MetreUnit, Plain},
	{"2|  m", 2, 1, NoUnit, Plain},
	{"2|-m", 2, 1, NoUnit, Plain},
	{"5| in\u0301", 5, 1, NoUnit, Plain},
	{"1m|20", 1, 1, MetreUnit, Plain},
	{"2|max", 2, 1, NoUnit, Plain},
	{"150 mm|", 150, 1, MillimetreUnit, Plain},
	{"5 centimeters|", 5, 1, CentimetreUnit, Plain},
	{"5 metres|", 5, 1, MetreUnit, Plain},
	{"22.5°|", 45, 2, DegreeUnit, Decimal},
	{"22½ degrees|", 45, 2, DegreeUnit, Glyph},
	{"18 deg|", 18, 1, DegreeUnit, Plain},
	{"18 °|", 18, 1, DegreeUnit, Plain},
	{"60 degree| triangles", 60, 1, DegreeUnit, Plain},
	{"3-in| strips", 3, 1, InchUnit, Plain},
	{"3|-in-1 ruler", 3, 1, NoUnit, Plain},
	{"7/8ths of a yard|", 7, 8, YardUnit, Slashed},
	{"3/4 of a yard|", 3, 4, YardUnit, Slashed},
	{"½ a metre|", 1, 2, MetreUnit, Glyph},
	{"12.50| a yard", 25, 2, NoUnit, Decimal},

	// Signs.
	{"-40|", -40, 1, NoUnit, Plain},
	{"−40 in|", -40, 1, InchUnit, Plain},
	{"-½ in|", -1, 2, InchUnit, Glyph},
	{"minus½|", -1, 2, NoUnit, Glyph},
	{"minus two|", -2, 1, NoUnit, Words},
	{"minus half an inch|", -1, 2, InchUnit, Words},
	{"minus 2 in|", -2, 1, InchUnit, Plain},

	// Words.
	{"two and a half|", 5, 2, NoUnit, Words},
	{"two & a half|", 5, 2, NoUnit, Words},
	{"two-and-a-half inch|", 5, 2, InchUnit, Words},
	{"two and half inches|", 5, 2, InchUnit, Words},
	{"two and five eighths|", 21, 8, NoUnit, Words},
	{"two and three quarters|", 11, 4, NoUnit, Words},
	{"twenty two point five degrees|", 45, 2, DegreeUnit, Words},
	{"two point two five|", 9, 4, NoUnit, Words},
	{"two point twenty-five inches|", 9, 4, InchUnit, Words},
	{"one point zero six|", 53, 50, NoUnit, Words},
	{"one point one two three four five six| seven", 1_123_456 / 64, 1_000_000 / 64, NoUnit, Words},
	{"six| point star", 6, 1, NoUnit, Words},
	{"six| on point", 6, 1, NoUnit, Words},
	{"twenty-five|", 25, 1, NoUnit, Words},
	{"twenty five| blades", 25, 1, NoUnit, Words},
	{"Twenty| 20", 20, 1, NoUnit, Words},
	{"twenty| fifteen", 20, 1, NoUnit, Words},
	{"a hundred and twenty|", 120, 1, NoUnit, Words},
	{"one hundred twenty|", 120, 1, NoUnit, Words},
	{"a hundred and three quarters|", 403, 4, NoUnit, Words},
	{"two thousand three hundred and four|", 2304, 1, NoUnit, Words},
	{"twenty| eighth yard cuts", 20, 1, NoUnit, Words},
	{"nine hundred and ninety-nine billion|", 999_000_000_000, 1, NoUnit, Words},
	{"two million| million", 2_000_000, 1, NoUnit, Words},
	{"two hundred| hundred", 200, 1, NoUnit, Words},
	{"two thousand three| million", 2003, 1, NoUnit, Words},
	{"twenty| zero", 20, 1, NoUnit, Words},
	{"zero|", 0, 1, NoUnit, Words},
	{"twelve hundred|", 1200, 1, NoUnit, Words},
	{"2 hundred|", 200, 1, NoUnit, Plain},
	{"2.5 million|", 2500000, 1, NoUnit, Decimal},
	{"sixteen|", 16, 1, NoUnit, Words},
	{"fourty|", 40, 1, NoUnit, Words},
	{"two| three", 2, 1, NoUnit, Words},
	{"a dozen|", 12, 1, NoUnit, Words},
	{"half a dozen|", 6, 1, NoUnit, Words},
	{"a half dozen|", 6, 1, NoUnit, Words},
	{"two dozen|", 24, 1, NoUnit, Words},
	{"2 dozen| blocks", 24, 1, NoUnit, Plain},
	{"two and a half dozen|", 30, 1, NoUnit, Words},
	{"five eighths|", 5, 8, NoUnit, Words},
	{"5 eighths of an inch|", 5, 8, InchUnit, Words},
	{"three quarters of an inch|", 3, 4, InchUnit, Words},
	{"three-quarters of a yard|", 3, 4, YardUnit, Words},
	{"three quarter inch|", 3, 4, InchUnit, Words},
	{"three| quarter circles", 3, 1, NoUnit, Words},
	{"two| quarter yard cuts", 2, 1, NoUnit, Words},
	{"two| quarter inch seams", 2, 1, NoUnit, Words},
	{"four quarters of a yard|", 1, 1, YardUnit, Words},
	{"two| of a yard", 2, 1, NoUnit, Words},
	{"two| and five quarters of a yard", 2, 1, NoUnit, Words},
	{"1.2.3| dozen", 0, 1, NoUnit, Unclear},
	{"3| quarter yard cuts", 3, 1, NoUnit, Plain},
	{"three| quarter yard cuts", 3, 1, NoUnit, Words},
	{"five quarters of a yard|", 5, 4, YardUnit, Words},
	{"1 quarter inch|", 1, 4, InchUnit, Words},
	{"one| half square triangle", 1, 1, NoUnit, One},
	{"one| quarter circle", 1, 1, NoUnit, One},
	{"3| quarters", 3, 1, NoUnit, Plain},
	{"an eighth of a yard|", 1, 8, YardUnit, Words},
	{"a third of a yard|", 1, 3, YardUnit, Words},
	{"a quarter of an inch|", 1, 4, InchUnit, Words},
	{"quarter inch|", 1, 4, InchUnit, Words},
	{"quarter-inch| seam", 1, 4, InchUnit, Words},
	{"quarter yard|", 1, 4, YardUnit, Words},
	{"half inch|", 1, 2, InchUnit, Words},
	{"half an inch|", 1, 2, InchUnit, Words},
	{"half a metre|", 1, 2, MetreUnit, Words},
	{"half yard|", 1, 2, YardUnit, Words},
	{"one half|", 1, 2, NoUnit, Words},
	{"one-half inch|", 1, 2, InchUnit, Words},
	{"one thirty-second of an inch|", 1, 32, InchUnit, Words},
	{"three sixty-fourths|", 3, 64, NoUnit, Words},
	{"a yard and a half|", 3, 2, YardUnit, Words},
	{"a yard and a quarter|", 5, 4, YardUnit, Words},
	{"an inch and a half|", 3, 2, InchUnit, Words},
	{"1 yard and a half|", 3, 2, YardUnit, Mixed},
	{"2 yards and 3/4|", 11, 4, YardUnit, Mixed},
	{"a yard and a half| in blue", 3, 2, YardUnit, Words},
	{"an inch| and a half inch", 1, 1, InchUnit, Words},
	{"a yard and ½| of blue", 3, 2, YardUnit, Words},
	{"a yard| and 1/2 .5", 1, 1, YardUnit, Words},
	{"2 yards| and 3/4 seams", 2, 1, YardUnit, Plain},
	{"2 yards| and 3/4 x 6", 2, 1, YardUnit, Plain},
	{"18°| and ⅞ at the narrow end", 18, 1, DegreeUnit, Plain},
	{"6 in| and ⅞", 6, 1, InchUnit, Plain},
	{"1 yard| and 1/2 yard", 1, 1, YardUnit, Plain},
	{"a yard| and a half circle", 1, 1, YardUnit, Words},
	{"a yard| and a half dozen buttons", 1, 1, YardUnit, Words},
	{"a metre|", 1, 1, MetreUnit, Words},
	{"one|", 1, 1, NoUnit, One},
	{"one| of them", 1, 1, NoUnit, One},
	{"one inch| hexies", 1, 1, InchUnit, Words},

	// Two quantities in one.
	{"3ft 2in|", 38, 1, InchUnit, Compound},
	{`3' 2"|`, 38, 1, InchUnit, Compound},
	{`3'2"|`, 38, 1, InchUnit, Compound},
	{`3'2½"|`, 77, 2, InchUnit, Compound},
	{"3 feet and 2 inches|", 38, 1, InchUnit, Compound},
	{"1 yd 4 in|", 40, 1, InchUnit, Compound},
	{"1 yd 1 ft 4 in|", 52, 1, InchUnit, Compound},
	{"1 m 20 cm|", 120, 1, CentimetreUnit, Compound},
	{"1 yd| 5 in squares", 1, 1, YardUnit, Plain},
	{"1 m| 90 cm wide", 1, 1, MetreUnit, Plain},
	{"3ft 2in|x4ft", 38, 1, InchUnit, Compound},
	{"3 ft| 2-inch strips", 3, 1, FootUnit, Plain},
	{"3 ft 2 in| wide", 38, 1, InchUnit, Compound},
	{"1 yd 4 inches| of blue", 40, 1, InchUnit, Compound},
	{"4 yds.| 2 inches border", 4, 1, YardUnit, Plain},
	{"1 ft| 12 in", 1, 1, FootUnit, Plain},
	{"99999999999 yd| 2.123456789 ft", 99999999999, 1, YardUnit, Plain},
	{"1 yd| 40 in", 1, 1, YardUnit, Plain},
	{"1 yd| 20 cm", 1, 1, YardUnit, Plain},

	// Too big.
	{"999999999999|", 999999999999, 1, NoUnit, Plain},
	{"1000000000000|", tooBig.Num, 1, NoUnit, TooBig},
	{"1000000000000 in|", tooBig.Num, 1, InchUnit, TooBig},
	{"-99999999999999999999|", -tooBig.Num, 1, NoUnit, TooBig},
	{"10^12 inches|", tooBig.Num, 1, InchUnit, TooBig},
	{"10^3|", 1000, 1, NoUnit, Plain},
	{"1e6|", 1000000, 1, NoUnit, Plain},
	{"1e99999999999999999999|", tooBig.Num, 1, NoUnit, TooBig},
	{"1e-3|", 0, 1, NoUnit, Unclear},
	{"a trillion|", tooBig.Num, 1, NoUnit, TooBig},
}

func TestScanQuantity(t *testing.T) {
	for _, row := range scanRows {
		t.Run(row.in, func(t *testing.T) {
			read, rest := cutBar(row.in)
			q, ok := ScanQuantity(read + rest)
			if !assert.True(t, ok) {
				return
			}
			assert.Equal(t, read, (read + rest)[:q.Size])
			assert.Equal(t, Number{row.num, row.den}, q.Number)
			assert.Equal(t, row.unit, q.Unit)
			assert.Equal(t, row.form, q.Form)
		})
	}
}

func cutBar(s string) (before, after string) {
	for i := range len(s) {
		if s[i] == '|' {
			return s[:i], s[i+1:]
		}
	}
	panic("row without a bar: " + s)
}

func TestScanQuantityFindsNone(t *testing.T) {
	for _, in := range []string{
		"", " ", " 5", "strips", "-", "- 5", "-x", "−", ".", ",5", "x 5", `"`, "°",
		"half square triangle", "half-square triangles", "half circle", "half ring", "a half ring",
		"half rectangle", "half", "quarter square triangle", "quarter circle", "a quarter circle",
		"quarter", "a quarter", "a fat quarter", "one-way", "a", "an", "a strip", "an apple", "a in",
		"1st", "2nd", "3RD strip", "first", "second", "third border", "16ths", "a second yard",
		"twenty-first", "twenty second strip", "and a half", "minus", "minus a", "minus -2", "minus minus two", "--2", "-−2", "hundreds", "onesie",
		"tension", "quarters of a yard", "halves", "thirds of an inch", "point five", "points", "metre", "inch", "máquina",
	} {
		t.Run(in, func(t *testing.T) {
			q, ok := ScanQuantity(in)
			assert.False(t, ok, "read %q as %+v", in[:q.Size], q)
		})
	}
}
