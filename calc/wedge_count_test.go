package calc

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

func TestWedgeCount(t *testing.T) {
	for name, c := range map[string]struct {
		in       WedgeCountRequest
		blades   int
		angle    measure.Angle
		leftOver measure.Angle
	}{
		"full circle":              {WedgeCountRequest{Angle: 18}, 20, 18, 0},
		"half circle":              {WedgeCountRequest{Angle: 22.5, Turn: HalfTurn}, 8, 22.5, 0},
		"fan of a turn":            {WedgeCountRequest{Angle: 12, Turn: 60}, 5, 12, 0},
		"does not divide":          {WedgeCountRequest{Angle: 25}, 14, 25, 10},
		"angle for a count":        {WedgeCountRequest{Blades: 25}, 25, 14.4, 0},
		"binary fractions":         {WedgeCountRequest{Angle: 7.2}, 50, 7.2, 0},
		"angle rounded to two":     {WedgeCountRequest{Angle: 51.43}, 7, 51.43, 0},
		"angle rounded to one":     {WedgeCountRequest{Angle: 27.7}, 13, 27.7, -0.1}, // not 12 blades with 27.6° open
		"both given":               {WedgeCountRequest{Blades: 16, Angle: 22.5}, 16, 22.5, 0},
		"both given, rounded":      {WedgeCountRequest{Blades: 14, Angle: 25.7}, 14, 25.7, 0.2},
		"off by half a degree":     {WedgeCountRequest{Blades: 40, Angle: 9.01}, 40, 9.01, -0.4},
		"a single blade of a fan":  {WedgeCountRequest{Blades: 1, Turn: 30}, 1, 30, 0},
		"the widest blades":        {WedgeCountRequest{Blades: 3}, 3, 120, 0},
		"the smallest angle":       {WedgeCountRequest{Angle: 0.01}, 36000, 0.01, 0},
		"no fraction of a blade":   {WedgeCountRequest{Angle: 100}, 3, 100, 60},
		"quarter that is not even": {WedgeCountRequest{Angle: 24, Turn: QuarterTurn}, 3, 24, 18},
	} {
		t.Run(name, func(t *testing.T) {
			w, err := WedgeCount(c.in)
			require.NoError(t, err)
			assert.Equal(t, c.blades, w.Blades)
			assert.InDelta(t, float64(c.angle), float64(w.Angle), 1e-9)
			assert.InDelta(t, float64(c.leftOver), float64(w.LeftOver), 1e-9)
			for _, n := range w.Nearest {
				assert.InDelta(t, float64(w.Turn), float64(n.Angle)*float64(n.Blades), 1e-9, "the nearest close")
			}
			assert.NotEmpty(t, w.Working)
		})
	}
}

func TestWedgeCountWorking(t *testing.T) {
	w, err := WedgeCount(WedgeCountRequest{Angle: 25})
	require.NoError(t, err)
	assert.Equal(t, []string{
		"360° ÷ 25° = 14.4",
		"14 × 25° = 350°",
		"14 blades close with 360° ÷ 14 = 25.71°.",
		"15 blades close with 360° ÷ 15 = 24°.",
	}, saidAll(w.Working))
}

func TestWedgeCountRefuses(t *testing.T) {
	for want, in := range map[string]WedgeCountRequest{
		"blades: 25 blades of 18° make 450°, a full turn and 90° too many; it would ruffle. " +
			"20 blades of 18° close it. For 25 blades the angle is 14.4°.": {Blades: 25, Angle: 18},
		"blades: 14 blades of 18° make 252°, 108° short of 360°; it would stay open, or cup if it were pulled together. " +
			"20 blades of 18° close it. For 14 blades the angle is 25.71°.": {Blades: 14, Angle: 18},
		"blades: 12 blades of 18° make 216°, 36° more than 180°; it would ruffle. " +
			"10 blades of 18° close it. For 12 blades the angle is 15°.": {Blades: 12, Angle: 18, Turn: HalfTurn},
		"blades: 15 blades of 25° make 375°, a full turn and 15° too many; it would ruffle. " +
			"No number of blades of 25° closes it. For 15 blades the angle is 24°.": {Blades: 15, Angle: 25},
		"blades: Blades of 180° are no wedges; the widest is 120°. It takes at least 3 blades.": {Blades: 2},
		"blades: 2 blades of 100° make 200°, 160° short of 360°; it would stay open, or cup if it were pulled together. " +
			"3 blades of 120° close it.": {Blades: 2, Angle: 100},
		"blades: 40 blades of 9.02° make 360.8°, a full turn and 0.8° too many; it would ruffle. " +
			"No number of blades of 9.02° closes it. For 40 blades the angle is 9°.": {Blades: 40, Angle: 9.02},
		"blades: The number of blades has to be 1 or more. ":           {Blades: -1},
		"blades: The number of blades can be 1000000 at most. ":        {Blades: maxCount + 1},
		"angle: The angle has to be at least 0.01° and at most 120°. ": {},
		"angle: The angle has to be at least 0.01° and at most 90°. ":  {Angle: 91, Turn: QuarterTurn},
		"turn: The turn has to be at least 0.01° and at most 360°. ":   {Angle: 10, Turn: 400},
	} {
		_, err := WedgeCount(in)
		assert.Equal(t, want, refusal(t, err), "%+v", in)
	}
}

func TestSections(t *testing.T) {
	for blades, want := range map[int]Section{
		20: {4, 5, 90}, 18: {3, 6, 120}, 16: {4, 4, 90}, 24: {4, 6, 90}, 15: {3, 5, 120}, 14: {2, 7, 180}, 10: {2, 5, 180},
		25: {5, 5, 72}, 9: {3, 3, 120}, 12: {4, 3, 90}, 4: {2, 2, 180}, 6: {3, 2, 120},
	} {
		all := Sections(blades, FullTurn)
		require.NotEmpty(t, all, blades)
		assert.Equal(t, want, all[0], "%d blades", blades)
		for _, s := range all {
			assert.Equal(t, blades, s.Count*s.Blades)
		}
	}
	assert.Equal(t, Section{2, 4, 90}, Sections(8, HalfTurn)[0], "a half ring of eight is two quarters")
	assert.Empty(t, Sections(13, FullTurn), "a prime number is sewn in pairs and one over")
}
