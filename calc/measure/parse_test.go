package measure

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestParseLength(t *testing.T) {
	for _, row := range []struct {
		in   string
		want Length
	}{
		{"2½ in", 5 * Inch / 2},
		{"2,5 cm", 25 * Millimetre},
		{"  14”  ", 14 * Inch},
		{"3'", 3 * Foot},
		{"3ft 2in", 38 * Inch},
		{"a yard and a half", 54 * Inch},
		{"half a metre", 50 * Centimetre},
		{"1 m 20 cm", 120 * Centimetre},
		{"⅞", 7 * Inch / 8},
		{"-¼", -Inch / 4},
		{"two and five eighths", 21 * Inch / 8},
		{"0", 0},
		{"1/3 yd", 12 * Inch},
		{"100000 m", Max},
		{"0.000000001 m", Nanometre},
	} {
		got, err := ParseLength(row.in, InchUnit)
		require.NoError(t, err)
		assert.Equal(t, row.want, got, row.in)
	}
	l, err := ParseLength("40", CentimetreUnit)
	require.NoError(t, err)
	assert.Equal(t, 40*Centimetre, l, "a number without a unit counts the one given")
}

func TestParseSize(t *testing.T) {
	for _, row := range []struct {
		in   string
		want Size
	}{
		{"60x72", Size{60 * Inch, 72 * Inch}},
		{"60 X 72", Size{60 * Inch, 72 * Inch}},
		{"60 by 72", Size{60 * Inch, 72 * Inch}},
		{"60 By 72 in", Size{60 * Inch, 72 * Inch}},
		{"60 × 72", Size{60 * Inch, 72 * Inch}},
		{"60*72", Size{60 * Inch, 72 * Inch}},
		{`60" x 72"`, Size{60 * Inch, 72 * Inch}},
		{"60inx72in", Size{60 * Inch, 72 * Inch}},
		{"1.5m x 2m", Size{150 * Centimetre, 2 * Metre}},
		{"150 x 200 cm", Size{150 * Centimetre, 2 * Metre}},
		{"150 cm x 200", Size{150 * Centimetre, 2 * Metre}},
		{"1.5 m x 200 cm", Size{150 * Centimetre, 2 * Metre}},
		{"60 inches square", Size{60 * Inch, 60 * Inch}},
		{"60 square", Size{60 * Inch, 60 * Inch}},
		{"a yard square", Size{Yard, Yard}},
		{"42 ½ x 3 1/2", Size{85 * Inch / 2, 7 * Inch / 2}},
	} {
		got, err := ParseSize(row.in, InchUnit)
		require.NoError(t, err)
		assert.Equal(t, row.want, got, row.in)
	}
}

func TestParseAngle(t *testing.T) {
	for in, want := range map[string]Angle{
		"18": 18, "22½°": 22.5, "22.5 degrees": 22.5, "14,4 deg": 14.4, "eighteen degrees": 18, "-7½°": -7.5, "180º": 180,
	} {
		got, err := ParseAngle(in)
		require.NoError(t, err)
		assert.Equal(t, want, got, in)
	}
}

// TestParseErrors pins the whole text of each error.
func TestParseErrors(t *testing.T) {
	length := func(s string) error { _, err := ParseLength(s, InchUnit); return err }
	noBare := func(s string) error { _, err := ParseLength(s, NoUnit); return err }
	size := func(s string) error { _, err := ParseSize(s, InchUnit); return err }
	angle := func(s string) error { _, err := ParseAngle(s); return err }
	for _, row := range []struct {
		parse  func(string) error
		in     string
		reason error
		text   string
	}{
		{length, "", ErrNoNumber, `length "": no number`},
		{length, "wide", ErrNoNumber, `length "wide": no number`},
		{length, "half", ErrNoNumber, `length "half": no number`},
		{length, "2½ in strips", ErrUnread, `length "2½ in strips": unread text at "strips"`},
		{length, "2½ 3", ErrUnread, `length "2½ 3": unread text at "3"`},
		{length, "12-14 in", ErrUnread, `length "12-14 in": unread text at "-14 in"`},
		{length, "18°", ErrWrongUnit, `length "18°": a unit of something else`},
		{length, "1,234", ErrAmbiguous, `length "1,234": a comma that may mark thousands or decimals`},
		{length, "1.2.3", ErrUnclear, `length "1.2.3": not a number in any writing`},
		{length, "10^12 inches", ErrTooLong, `length "10^12 inches": longer than any fabric`},
		{length, "100001 m", ErrTooLong, `length "100001 m": longer than any fabric`},
		{noBare, "40", ErrNoUnit, `length "40": no unit`},
		{size, "60", ErrNoNumber, `size "60": no number`},
		{size, "60 x", ErrNoNumber, `size "60 x": no number`},
		{size, "60 x wide", ErrNoNumber, `size "60 x wide": no number at "wide"`},
		{size, "60 x 72 x 3", ErrUnread, `size "60 x 72 x 3": unread text at "x 3"`},
		{size, "60 by 1,234", ErrAmbiguous, `size "60 by 1,234": a comma that may mark thousands or decimals at "1,234"`},
		{size, "18° x 3", ErrWrongUnit, `size "18° x 3": a unit of something else`},
		{angle, "18 in", ErrWrongUnit, `angle "18 in": a unit of something else`},
		{angle, "18 x 3", ErrUnread, `angle "18 x 3": unread text at "x 3"`},
		{angle, "1000000000000000", ErrTooBig, `angle "1000000000000000": more than twelve digits`},
		{length, "\x1b[31m\u202e5", ErrNoNumber, `length "\x1b[31m\u202e5": no number`},
		{length, "\xff", ErrNoNumber, `length "\xff": no number`},
		{length, strings.Repeat("w", 1<<20), ErrNoNumber, `length "` + strings.Repeat("w", 40) + `"…: no number`},
	} {
		err := row.parse(row.in)
		require.Error(t, err, row.in)
		assert.ErrorIs(t, err, row.reason, row.in)
		assert.Equal(t, row.text, err.Error())
		var p *ParseError
		require.ErrorAs(t, err, &p)
		assert.Equal(t, row.in, p.Input)
	}
}
