package calc

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// inches gives a size in whole and half inches, for tables.
func inches(width, length float64) measure.Size {
	return measure.Size{Width: measure.Inches(width), Length: measure.Inches(length)}
}

// bindingOf is a request with every default.
func bindingOf(edge Edge) BindingRequest {
	return BindingRequest{Conventions: ImperialConventions(), Edge: edge,
		StripWidth: DefaultBindingStrip, Extra: DefaultBindingExtra, Join: DiagonalJoin}
}

func TestBinding(t *testing.T) {
	// Quilt 54 x 68 and 60 x 72 in: worked by hand. 150 x 200 cm: the same sum
	// in centimetres. Hexagon of 20 in: 6 × 20. 63½ x 42¾: the perimeter and
	// the strips are published at https://quiltsbyjen.ca. 28 in circle:
	// http://oakvillequiltersguild.ca/tips_and_tutorials_page/binding.html.
	metric := bindingOf(RectangleEdge(measure.Size{Width: 1500 * measure.Millimetre, Length: 2000 * measure.Millimetre}))
	metric.Conventions, metric.StripWidth = MetricConventions(), 65*measure.Millimetre
	narrower := bindingOf(RectangleEdge(inches(54, 68)))
	narrower.StripWidth = measure.Inches(2.25)
	straight := bindingOf(RectangleEdge(inches(60, 72)))
	straight.Join = StraightJoin
	for name, c := range map[string]struct {
		request        BindingRequest
		strips         int
		needed, covers measure.Length
		fewerShort     measure.Length
		buy            measure.Cloth
	}{
		"54 x 68":       {bindingOf(RectangleEdge(inches(54, 68))), 7, measure.Inches(254), measure.Inches(265), measure.Inches(26.5), measure.Cloth(measure.Yard / 2)},
		"54 x 68 at 2¼": {narrower, 7, measure.Inches(254), measure.Inches(266.5), measure.Inches(25.25), measure.Cloth(measure.Yard / 2)},
		"60 x 72":       {bindingOf(RectangleEdge(inches(60, 72))), 8, measure.Inches(274), measure.Inches(302.5), measure.Inches(9), measure.Cloth(measure.Yard * 5 / 8)},
		"straight":      {straight, 7, measure.Inches(274), measure.Inches(277), measure.Inches(36.5), measure.Cloth(measure.Yard / 2)},
		"63½ x 42¾":     {bindingOf(RectangleEdge(inches(63.5, 42.75))), 6, measure.Inches(222.5), measure.Inches(227.5), measure.Inches(32.5), measure.Cloth(measure.Yard / 2)},
		"hexagon":       {bindingOf(PolygonEdge(6, 20*measure.Inch)), 4, measure.Inches(130), measure.Inches(152.5), measure.Inches(15), measure.Cloth(measure.Yard * 3 / 8)},
		"metric":        {metric, 8, 7254 * measure.Millimetre, 7673 * measure.Millimetre, 532 * measure.Millimetre, measure.Cloth(600 * measure.Millimetre)},
	} {
		t.Run(name, func(t *testing.T) {
			b, err := Binding(c.request)
			require.NoError(t, err)
			assert.Equal(t, c.strips, b.Strips, "strips")
			assert.Equal(t, c.needed, b.LengthNeeded, "needed")
			assert.Equal(t, c.covers, b.Covers, "covers")
			assert.Equal(t, c.fewerShort, b.OneFewerShort, "one fewer")
			assert.Equal(t, c.buy, b.Buy, "buy")
			assert.NotEmpty(t, b.Working)
		})
	}
}

func TestBindingOneFewerOnWiderFabric(t *testing.T) {
	// 7 strips make 7U − 15, which is 274 at 41 2/7 in.
	r := bindingOf(RectangleEdge(inches(60, 72)))
	b, err := Binding(r)
	require.NoError(t, err)
	assert.Equal(t, measure.Inches(41.5), b.OneFewerWidth)

	r.UsableWidth = b.OneFewerWidth
	wider, err := Binding(r)
	require.NoError(t, err)
	assert.Equal(t, b.Strips-1, wider.Strips)
	r.UsableWidth -= r.GroundStep
	same, err := Binding(r)
	require.NoError(t, err)
	assert.Equal(t, b.Strips, same.Strips)
}

func TestBindingInHand(t *testing.T) {
	r := bindingOf(RectangleEdge(inches(60, 72)))
	r.HaveStrips, r.Have = 7, measure.Cloth(measure.Yard*5/8)
	b, err := Binding(r)
	require.NoError(t, err)
	assert.Equal(t, CountCheck{Given: true, Have: 7, Short: 1}, b.InHand)
	assert.Equal(t, measure.Inches(265), b.InHandMakes)
	assert.Equal(t, measure.Inches(9), b.InHandShort)
	assert.Equal(t, ClothCheck{Given: true, Enough: true, Have: measure.Inches(22.5), Spare: measure.Inches(2.5)}, b.Cloth)
}

func TestBindingReach(t *testing.T) {
	// 8 strips make 302½ in; less 10 in that is 292½ round, and 73⅛ a side.
	b, err := BindingReach(BindingReachRequest{Conventions: ImperialConventions(), Strips: 8,
		StripWidth: DefaultBindingStrip, Extra: DefaultBindingExtra, Join: DiagonalJoin})
	require.NoError(t, err)
	assert.Equal(t, measure.Inches(302.5), b.Covers)
	assert.Equal(t, measure.Inches(292.5), b.Perimeter)
	assert.Equal(t, measure.Inches(73.125), b.Square)
}

func TestBindingRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*BindingRequest)
		input  string
	}{
		"no edge":                   {func(r *BindingRequest) { r.Edge = Edge{} }, "perimeter"},
		"negative side":             {func(r *BindingRequest) { r.Edge = RectangleEdge(inches(-40, 60)) }, "quilt_width"},
		"no strip":                  {func(r *BindingRequest) { r.StripWidth = 0 }, "strip_width"},
		"strip as wide as fabric":   {func(r *BindingRequest) { r.StripWidth = r.UsableWidth }, "strip_width"},
		"less than nothing extra":   {func(r *BindingRequest) { r.Extra = -1 }, "extra"},
		"two sides":                 {func(r *BindingRequest) { r.Edge = PolygonEdge(2, measure.Inch) }, "sides"},
		"fabric of no width":        {func(r *BindingRequest) { r.UsableWidth = 0 }, "usable_width"},
		"more than can be counted":  {func(r *BindingRequest) { r.UsableWidth = r.StripWidth + 1 }, "strips"},
		"less than nothing in hand": {func(r *BindingRequest) { r.HaveStrips = -1 }, "strips"},
	} {
		t.Run(name, func(t *testing.T) {
			r := bindingOf(RectangleEdge(inches(60, 72)))
			c.change(&r)
			_, err := Binding(r)
			var limit *LimitError
			require.ErrorAs(t, err, &limit)
			assert.Equal(t, c.input, limit.Input)
		})
	}
}
