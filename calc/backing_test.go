package calc

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// backingOf is a request with every default.
func backingOf(quilt measure.Size) BackingRequest {
	return BackingRequest{Conventions: ImperialConventions(), Quilt: quilt,
		Overage: DefaultBackingOverage, PanelSeam: DefaultPanelSeam}
}

func TestBacking(t *testing.T) {
	// 112 x 88 in on 42 in: https://www.quiltersclubofamerica.com, forum 24983,
	// which rounds each panel up first. The others are n·U − (n−1) by hand.
	wide42 := backingOf(inches(112, 88))
	wide42.UsableWidth = 42 * in
	flannel := backingOf(inches(60, 80))
	flannel.UsableWidth = 60 * in
	metric := backingOf(measure.Size{Width: 145 * measure.Centimetre, Length: 193 * measure.Centimetre})
	metric.Conventions = MetricConventions()
	oneWay := backingOf(inches(36, 42))
	oneWay.OneWay = true
	for name, c := range map[string]struct {
		request BackingRequest
		want    BackingWay
	}{
		"112 x 88 on 42 in": {wide42, BackingWay{VerticalSeams, 3, 96 * in, 124 * in, 288 * in, measure.Cloth(8 * measure.Yard)}},
		"30 x 36, one panel": {backingOf(inches(30, 36)),
			BackingWay{NoSeams, 1, 44 * in, 40 * in, 44 * in, measure.Cloth(measure.Yard * 5 / 4)}},
		"60 x 80 on 60 in": {flannel, BackingWay{HorizontalSeams, 2, 68 * in, 119 * in, 136 * in, measure.Cloth(measure.Yard * 31 / 8)}},
		"36 x 42":          {backingOf(inches(36, 42)), BackingWay{HorizontalSeams, 2, 44 * in, 79 * in, 88 * in, measure.Cloth(measure.Yard * 5 / 2)}},
		"36 x 42, one way": {oneWay, BackingWay{VerticalSeams, 2, 50 * in, 79 * in, 100 * in, measure.Cloth(measure.Yard * 23 / 8)}},
		"145 x 193 cm": {metric, BackingWay{VerticalSeams, 2, 21332 * mm / 10, 20066 * mm / 10,
			42664 * mm / 10, measure.Cloth(4300 * mm)}},
	} {
		t.Run(name, func(t *testing.T) {
			b, err := Backing(c.request)
			require.NoError(t, err)
			assert.Equal(t, c.want, b.BackingWay)
			if c.request.OneWay {
				assert.Zero(t, b.Turned)
			} else {
				assert.GreaterOrEqual(t, b.Turned.Need, b.Need)
			}
		})
	}
}

func TestBackingInHand(t *testing.T) {
	// 60 x 70 in on 42 in takes 2 × 68 = 136 in; 4 yd are 144.
	r := backingOf(inches(60, 70))
	r.UsableWidth = 42 * in
	r.Have, r.HavePanels = measure.Cloth(4*measure.Yard), 1
	b, err := Backing(r)
	require.NoError(t, err)
	assert.Equal(t, measure.Cloth(measure.Yard*31/8), b.Buy)
	assert.Equal(t, ClothCheck{Given: true, Enough: true, Have: 144 * in, Spare: 8 * in}, b.Cloth)
	assert.Equal(t, CountCheck{Given: true, Have: 1, Short: 1}, b.InHand)

	r.Have = measure.Cloth(measure.Yard * 15 / 4)
	b, err = Backing(r)
	require.NoError(t, err)
	assert.Equal(t, ClothCheck{Given: true, Have: 135 * in, Short: 1 * in}, b.Cloth)
}

func TestBackingHangsOnOneAssumption(t *testing.T) {
	// 36 x 42 in takes two panels with 4 in on each side. With 2 in, or on
	// fabric of 44 in, one panel is wide enough.
	r := backingOf(inches(36, 42))
	b, err := Backing(r)
	require.NoError(t, err)
	assert.Equal(t, 2, b.Panels)
	assert.Equal(t, 1, b.WideSaves)
	assert.Equal(t, 1, b.Wide.Panels)
	assert.Equal(t, 2*in, b.OneFewerOverage)
	assert.Equal(t, 44*in, b.OneFewerWidth)

	less, wider := r, r
	less.Overage = b.OneFewerOverage
	wider.UsableWidth = b.OneFewerWidth
	for _, r := range []BackingRequest{less, wider} {
		b, err := Backing(r)
		require.NoError(t, err)
		assert.Equal(t, 1, b.Panels)
		assert.Equal(t, NoSeams, b.Seams)
		assert.Zero(t, b.OneFewerWidth)
	}
}

func TestBackingReach(t *testing.T) {
	// 4 yd of 42 in: one panel backs 34 x 136, two 75 x 64, three 116 x 40 in.
	v := ImperialConventions()
	v.UsableWidth = 42 * in
	reach, err := BackingReach(BackingReachRequest{Conventions: v, Have: measure.Cloth(4 * measure.Yard),
		Overage: DefaultBackingOverage, PanelSeam: DefaultPanelSeam})
	require.NoError(t, err)
	assert.Equal(t, BackedQuilt{2, 72 * in, inches(75, 64)}, reach.Largest)
	assert.Equal(t, []measure.Size{inches(34, 136), inches(75, 64), inches(116, 40)},
		[]measure.Size{reach.All[0].Quilt, reach.All[1].Quilt, reach.All[2].Quilt})

	_, err = BackingReach(BackingReachRequest{Conventions: v, Have: measure.Cloth(8 * in), Overage: DefaultBackingOverage})
	var limit *LimitError
	require.ErrorAs(t, err, &limit)
	assert.Equal(t, "have", limit.Input)
}

// Every quilt that a length is said to back is backed by it.
func TestBackingReachIsBacked(t *testing.T) {
	for eighths := measure.Length(3); eighths < 100; eighths += 7 {
		have := eighths * measure.Yard / 8
		reach, err := BackingReach(BackingReachRequest{Conventions: ImperialConventions(), Have: measure.Cloth(have),
			Overage: DefaultBackingOverage, PanelSeam: DefaultPanelSeam})
		require.NoError(t, err)
		for _, q := range reach.All {
			b, err := Backing(backingOf(q.Quilt))
			require.NoError(t, err)
			assert.LessOrEqual(t, b.Need, have, "%v", q)
		}
	}
}

func TestBatting(t *testing.T) {
	// 60 x 70 in takes 68 x 78: https://cranberryquiltingco.com.
	b, err := Batting(BattingRequest{Conventions: ImperialConventions(), Quilt: inches(60, 70), Overage: DefaultBattingOverage})
	require.NoError(t, err)
	assert.Equal(t, 68*in, b.BattingWidth)
	assert.Equal(t, 78*in, b.BattingLength)
	assert.Equal(t, "twin", b.Packages[0].Name)
	assert.Equal(t, 68*in, b.Need, "off a roll of 106 in")

	r := BattingRequest{Conventions: ImperialConventions(), Quilt: inches(45.5, 57.5), Overage: 3 * in, Have: inches(60, 50)}
	b, err = Batting(r)
	require.NoError(t, err)
	assert.Equal(t, inches(51.5, 63.5), measure.Size{Width: b.BattingWidth, Length: b.BattingLength})
	assert.Equal(t, BattingCheck{Given: true, ShortWidth: measure.Inches(1.5), ShortLength: measure.Inches(3.5), Overage: measure.Inches(1.25)}, b.InHand)

	b, err = Batting(BattingRequest{Conventions: ImperialConventions(), Quilt: inches(130, 130), Overage: DefaultBattingOverage})
	require.NoError(t, err)
	assert.Empty(t, b.Packages)
	assert.Zero(t, b.Need, "no roll is as wide")
}
