package calc

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// money is an amount for tables.
func money(t *testing.T, v float64) Money {
	t.Helper()
	m, err := MoneyFromFloat(v)
	require.NoError(t, err)
	return m
}

func TestMoney(t *testing.T) {
	for v, want := range map[float64]string{0: "0.00", 0.05: "0.05", 12.5: "12.50", 172.275: "172.28", 1000000: "1000000.00"} {
		assert.Equal(t, want, money(t, v).String())
	}
	assert.Equal(t, "-3.07", Money(-307).String())
	for _, v := range []float64{-1, 1e7, math.NaN(), math.Inf(1)} {
		_, err := MoneyFromFloat(v)
		assert.Error(t, err, "%v", v)
	}
}

func TestKit(t *testing.T) {
	yards := func(name string, eighths measure.Length, price float64) KitLine {
		return KitLine{Name: name, Cloth: measure.Cloth(eighths * measure.Yard / 8), Per: measure.Yard, Price: money(t, price)}
	}
	each := func(name string, n int, price float64) KitLine {
		return KitLine{Name: name, Count: n, Price: money(t, price)}
	}
	for name, c := range map[string]struct {
		request     KitRequest
		cost, price string
		margin      float64
	}{
		"cost only": {KitRequest{Lines: []KitLine{each("fat quarter", 3, 3.25), yards("print", 6, 11), each("pattern", 1, 9)}}, "27.00", "0.00", 0},
		"markup": {KitRequest{Lines: []KitLine{yards("print", 16, 10.40), each("panel", 1, 14)}, Pricing: ByMarkup, Percent: 60},
			"34.80", "55.68", 37.5},
		"margin": {KitRequest{Lines: []KitLine{yards("print", 12, 12.50), each("strip pack", 2, 38)}, Pricing: ByMargin, Percent: 45},
			"94.75", "172.27", 44.999129},
		"price": {KitRequest{Lines: []KitLine{each("pattern", 1, 8)}, Pricing: ByPrice, Price: money(t, 6)}, "8.00", "6.00", -33.333333},
	} {
		t.Run(name, func(t *testing.T) {
			k, err := Kit(c.request)
			require.NoError(t, err)
			assert.Equal(t, c.cost, k.Cost.String())
			assert.Equal(t, c.price, k.Price.String())
			assert.InDelta(t, c.margin, k.Margin, 1e-5)
			var sum Money
			for _, l := range k.Lines {
				sum += l
			}
			assert.Equal(t, k.Cost, sum)
		})
	}
}

func TestKitRefuses(t *testing.T) {
	line := KitLine{Name: "fabric", Count: 1, Price: 1200}
	for name, c := range map[string]struct {
		request KitRequest
		input   string
	}{
		"nothing":          {KitRequest{}, "kit"},
		"margin of 100":    {KitRequest{Lines: []KitLine{line}, Pricing: ByMargin, Percent: 100}, "margin"},
		"margin unknown":   {KitRequest{Lines: []KitLine{line}, Pricing: ByMargin, Percent: math.NaN()}, "margin"},
		"markup below 0":   {KitRequest{Lines: []KitLine{line}, Pricing: ByMarkup, Percent: -5}, "markup"},
		"none of a thing":  {KitRequest{Lines: []KitLine{{Price: 100}}}, "things"},
		"price below 0":    {KitRequest{Lines: []KitLine{{Count: 1, Price: -1}}}, "price"},
		"price of no yard": {KitRequest{Lines: []KitLine{{Cloth: 1e9, Price: 1}}}, "price_length"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Kit(c.request)
			var limit *LimitError
			require.ErrorAs(t, err, &limit)
			assert.Equal(t, c.input, limit.Input)
		})
	}
}

func TestQuiltingPrice(t *testing.T) {
	rate := func(v float64) Rate {
		r, err := RateFromFloat(v)
		require.NoError(t, err)
		return r
	}
	v := ImperialConventions()
	for name, c := range map[string]struct {
		request QuiltingPriceRequest
		area    float64
		price   string
		least   bool
	}{
		"two cents":        {QuiltingPriceRequest{v, inches(60, 72), rate(0.02), in, 0}, 4320, "86.40", false},
		"part of a cent":   {QuiltingPriceRequest{v, inches(60, 72), rate(0.0175), in, 0}, 4320, "75.60", false},
		"a square foot":    {QuiltingPriceRequest{v, inches(60, 72), rate(2.5), measure.Foot, 0}, 30, "75.00", false},
		"half a hundredth": {QuiltingPriceRequest{v, inches(1, 1), rate(0.025), in, 0}, 1, "0.03", false},
		"the least charge": {QuiltingPriceRequest{v, inches(20, 20), rate(0.02), in, 5000}, 400, "50.00", true},
		"a square metre":   {QuiltingPriceRequest{v, measure.Size{Width: 1500 * mm, Length: 2000 * mm}, rate(40), measure.Metre, 0}, 3, "120.00", false},
	} {
		t.Run(name, func(t *testing.T) {
			q, err := QuiltingPrice(c.request)
			require.NoError(t, err)
			assert.InDelta(t, c.area, q.Area, 1e-9)
			assert.Equal(t, c.price, q.Price.String())
			assert.Equal(t, c.least, q.IsLeast)
		})
	}
	for _, v := range []float64{0, -1, 1e4, math.NaN()} {
		_, err := RateFromFloat(v)
		assert.Error(t, err)
	}
}

func TestMulDiv(t *testing.T) {
	const most = math.MaxInt64
	for _, c := range []struct{ a, b, c, down, up, nearest int64 }{
		{7, 3, 2, 10, 11, 11},
		{7, 3, 4, 5, 6, 5},
		{10, 10, 10, 10, 10, 10},
		{0, 5, 3, 0, 0, 0},
		{most, most, most, most, most, most},
		{most, 2, 1, most, most, most}, // beyond the range: its end
		{most, 1, 2, most / 2, most/2 + 1, most/2 + 1},
	} {
		assert.Equal(t, []int64{c.down, c.up, c.nearest},
			[]int64{mulDivDown(c.a, c.b, c.c), mulDivUp(c.a, c.b, c.c), mulDivNearest(c.a, c.b, c.c)}, "%+v", c)
	}
}
