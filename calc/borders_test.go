package calc

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// bordersOf is a request with every default.
func bordersOf(quilt measure.Size, widths ...float64) BordersRequest {
	r := BordersRequest{Conventions: ImperialConventions(), Quilt: quilt, Corners: ButtedCorners,
		Spare: DefaultMitreSpare, Join: StraightJoin}
	for _, w := range widths {
		r.Widths = append(r.Widths, measure.Inches(w))
	}
	return r
}

func TestBorders(t *testing.T) {
	// Worked by hand; the three borders round 50 x 60 in add 7 in to a side, as
	// at https://www.quiltingboard.com, thread t168402.
	mitred := bordersOf(inches(42, 60), 4)
	mitred.Corners = MitredCorners
	wide := bordersOf(inches(64, 64), 3.5)
	wide.UsableWidth = 44 * in
	type border struct {
		side, top, strip float64
		strips           int
		yards            float64
	}
	for name, c := range map[string]struct {
		request BordersRequest
		want    []border
		quilt   measure.Size
	}{
		"one":          {bordersOf(inches(48, 62), 3), []border{{62.5, 54.5, 3.5, 6, 0.625}}, inches(54, 68)},
		"mitred":       {mitred, []border{{72, 54, 4.5, 7, 0.875}}, inches(50, 68)},
		"three":        {bordersOf(inches(50, 60), 1, 2.5, 3.5), []border{{60.5, 52.5, 1.5, 6, 0.25}, {62.5, 57.5, 3, 7, 0.625}, {67.5, 64.5, 4, 7, 0.875}}, inches(64, 74)},
		"two":          {bordersOf(inches(45, 60), 2, 5), []border{{60.5, 49.5, 2.5, 6, 0.5}, {64.5, 59.5, 5.5, 7, 1.125}}, inches(59, 74)},
		"44 in fabric": {wide, []border{{64.5, 71.5, 4, 7, 0.875}}, inches(71, 71)},
		// 20½ and 18½ share a strip: 39 of 40 in
		"packed whole": {bordersOf(inches(14, 20), 2), []border{{20.5, 18.5, 2.5, 2, 0.25}}, inches(18, 24)},
	} {
		t.Run(name, func(t *testing.T) {
			b, err := Borders(c.request)
			require.NoError(t, err)
			require.Len(t, b.Borders, len(c.want))
			var need measure.Length
			for i, w := range c.want {
				got := b.Borders[i]
				assert.Equal(t, w, border{got.SideCut.Inches(), got.TopCut.Inches(), got.StripWidth.Inches(), got.Strips,
					measure.Length(got.Buy).In(measure.Yard)}, "border %d", i+1)
				need += got.Need
			}
			assert.Equal(t, c.quilt, measure.Size{Width: b.QuiltWidth, Length: b.QuiltLength})
			assert.Equal(t, need, b.Need)
		})
	}
}

func TestSquaredCorners(t *testing.T) {
	r := bordersOf(inches(48, 62), 3)
	r.Corners = SquaredCorners
	b, err := Borders(r)
	require.NoError(t, err)
	assert.Equal(t, measure.Inches(62.5), b.Borders[0].SideCut)
	assert.Equal(t, measure.Inches(48.5), b.Borders[0].TopCut)
	assert.Equal(t, inches(3.5, 3.5), b.Borders[0].Corner)
}

func TestBordersAlongTheFabric(t *testing.T) {
	// Four strips of 3½ in side by side take 14 in of the width and the length
	// of the longest, 62½ in.
	r := bordersOf(inches(48, 62), 3)
	r.Lengthwise, r.Straighten = true, 2*in
	b, err := Borders(r)
	require.NoError(t, err)
	assert.Equal(t, 14*in, b.Borders[0].Across)
	assert.Equal(t, measure.Inches(64.5), b.Borders[0].Need)
	assert.False(t, b.Borders[0].Joined)

	// Of 15 in strips two fit side by side: a side and a top in each column.
	r = bordersOf(inches(48, 62), 14.5)
	r.Lengthwise = true
	b, err = Borders(r)
	require.NoError(t, err)
	assert.Equal(t, 30*in, b.Borders[0].Across)
	assert.Equal(t, b.Borders[0].SideCut+b.Borders[0].TopCut, b.Borders[0].Need)
}

func TestBordersHangOnTheWidth(t *testing.T) {
	// 2 × (60½ + 52½) = 226 in: 6 strips of 40 in; 5 make it from 45.6 in on.
	b, err := Borders(bordersOf(inches(50, 60), 1))
	require.NoError(t, err)
	assert.Equal(t, 46*in, b.Borders[0].OneFewerWidth)
	assert.Equal(t, measure.Inches(226-198), b.Borders[0].OneFewerShort)
}

func TestBorderToReach(t *testing.T) {
	b, err := BorderToReach(BorderToReachRequest{ImperialConventions(), inches(48, 62), inches(60, 72)})
	require.NoError(t, err)
	assert.Equal(t, []measure.Length{6 * in, 5 * in, 13 * in / 2, 11 * in / 2},
		[]measure.Length{b.SideFinished, b.TopFinished, b.SideStrip, b.TopStrip})

	_, err = BorderToReach(BorderToReachRequest{ImperialConventions(), inches(48, 62), inches(40, 72)})
	var limit *LimitError
	require.ErrorAs(t, err, &limit)
	assert.Equal(t, "wanted", limit.Input)
}

func TestBordersRefuse(t *testing.T) {
	for name, c := range map[string]struct {
		request BordersRequest
		input   string
	}{
		"none":                  {bordersOf(inches(48, 62)), "borders"},
		"of no width":           {bordersOf(inches(48, 62), 2, 0), "border_width"},
		"wider than any sense":  {bordersOf(inches(10, 62), 2, 40), "border2.width"},
		"on no quilt":           {bordersOf(inches(0, 62), 2), "quilt_width"},
		"wider than the fabric": {bordersOf(inches(48, 62), 40), "strip_width"},
	} {
		t.Run(name, func(t *testing.T) {
			r := c.request
			if c.input == "strip_width" {
				r.Join = DiagonalJoin
			}
			_, err := Borders(r)
			var limit *LimitError
			require.ErrorAs(t, err, &limit)
			assert.Equal(t, c.input, limit.Input)
		})
	}
}
