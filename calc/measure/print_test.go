package measure

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestShow(t *testing.T) {
	const ruler = Inch / 64
	for _, row := range []struct {
		l                Length
		imperial, metric string
	}{
		{0, "0 in", "0 cm"},
		{Inch, "1 in", "2.5 cm"},
		{2*Inch + 5*Inch/8, "2⅝ in", "6.7 cm"},
		{13*Inch + 13*Inch/16, "13 13/16 in", "35.1 cm"},
		{Inch / 3, "5/16 in", "0.8 cm"}, // off every 1/64 in: to the nearest 1/16
		{ruler, "1/64 in", "0 cm"},
		{-Inch / 2, "-½ in", "-1.3 cm"},
		{-3 * Inch / 2, "-1½ in", "-3.8 cm"},
		{150 * Centimetre, "59 1/16 in", "150 cm"},
		{5*Centimetre + 7*Millimetre, "2¼ in", "5.7 cm"},
		{254 * Metre, "10000 in", "25400 cm"},
	} {
		assert.Equal(t, row.imperial, row.l.Show(Imperial))
		assert.Equal(t, row.metric, row.l.Show(Metric))
	}
}

func TestClothShow(t *testing.T) {
	for _, row := range []struct {
		c                Length
		imperial, metric string
	}{
		{0, "0 yd", "0 m"},
		{Yard * 5 / 8, "⅝ yd", "0.57 m"},
		{Yard / 3, "⅓ yd", "0.3 m"},
		{Yard * 5 / 3, "1⅔ yd", "1.52 m"},
		{3 * Yard, "3 yd", "2.74 m"},
		{60 * Centimetre, "⅝ yd", "0.6 m"},
		{2 * Metre, "2⅛ yd", "2 m"},
	} {
		assert.Equal(t, row.imperial, Cloth(row.c).Show(Imperial))
		assert.Equal(t, row.metric, Cloth(row.c).Show(Metric))
	}
}

func TestLong(t *testing.T) {
	for want, got := range map[string]string{
		"0 inches":             Length(0).Long(Imperial),
		"½ inch":               (Inch / 2).Long(Imperial),
		"-½ inch":              (-Inch / 2).Long(Imperial),
		"1 inch":               Inch.Long(Imperial),
		"-1 inch":              (-Inch).Long(Imperial),
		"1½ inches":            (Inch * 3 / 2).Long(Imperial),
		"12 inches":            Foot.Long(Imperial),
		"0 centimetres":        Length(0).Long(Metric),
		"0.5 centimetres":      (5 * Millimetre).Long(Metric),
		"1 centimetre":         Centimetre.Long(Metric),
		"2.5 centimetres":      Inch.Long(Metric),
		"0 yards":              Cloth(0).Long(Imperial),
		"⅝ yard":               Cloth(Yard * 5 / 8).Long(Imperial),
		"1 yard":               Cloth(Yard).Long(Imperial),
		"2½ yards":             Cloth(Yard * 5 / 2).Long(Imperial),
		"0.6 metres":           Cloth(60 * Centimetre).Long(Metric),
		"1 metre":              Cloth(Metre).Long(Metric),
		"2 metres":             Cloth(2 * Metre).Long(Metric),
		"100000 metres":        Cloth(Max).Long(Metric),
		"-1 metre":             Cloth(-Metre).Long(Metric),
		"10000000 centimetres": Max.Long(Metric),
	} {
		assert.Equal(t, want, got)
	}
	// What rounds to one is one.
	assert.Equal(t, "1 inch", (Inch + 1).Long(Imperial))
	assert.Equal(t, "1 inch", (Inch - 1).Long(Imperial))
	assert.Equal(t, "0 inches", Nanometre.Long(Imperial))
}

func TestSizeAndAngleShow(t *testing.T) {
	z := Size{60 * Inch, 72*Inch + Inch/2}
	assert.Equal(t, "60 x 72½ in", z.Show(Imperial))
	assert.Equal(t, "152.4 x 184.2 cm", z.Show(Metric))
	for a, want := range map[Angle]string{18: "18°", 22.5: "22½°", 14.4: "14.4°", 7.25: "7¼°", 0: "0°", -7.5: "-7½°", 360.0 / 7: "51.43°", 1e12: "1000000000000°"} {
		assert.Equal(t, want, a.Show())
	}
}

func TestNamesOfSystems(t *testing.T) {
	assert.Equal(t, "imperial", Imperial.String())
	assert.Equal(t, "metric", Metric.String())
	assert.InDelta(t, math.Pi, Angle(180).Radians(), 1e-15)
}

// printed are lengths on the step that a system prints to: random ones, all the
// steps of the first units, and both extremes.
func printed(step Length) []Length {
	ends := Max.RoundDown(step)
	all := []Length{ends, -ends, ends - step, step - ends}
	for n := range Length(300) {
		all = append(all, n*step, -n*step)
	}
	r := rand.New(rand.NewPCG(1, uint64(step)))
	for range 2000 {
		reach := Length(1) << r.IntN(47) // short and long ones alike
		all = append(all, min(Length(r.Int64N(int64(reach))), ends).RoundDown(step))
	}
	return all
}

func TestLengthsReadBack(t *testing.T) {
	for _, s := range []struct {
		system System
		step   Length
	}{{Imperial, Inch / 64}, {Metric, Millimetre}} {
		for _, l := range printed(s.step) {
			for _, text := range []string{l.Show(s.system), l.Long(s.system)} {
				got, err := ParseLength(text, NoUnit)
				require.NoError(t, err)
				require.Equal(t, l, got, text)
			}
		}
	}
}

func TestClothReadsBack(t *testing.T) {
	for _, s := range []struct {
		system System
		step   Length
	}{{Imperial, Yard / 8}, {Imperial, Yard / 3}, {Metric, Centimetre}} {
		for _, l := range printed(s.step) {
			for _, text := range []string{Cloth(l).Show(s.system), Cloth(l).Long(s.system)} {
				got, err := ParseLength(text, NoUnit)
				require.NoError(t, err)
				require.Equal(t, l, got, text)
			}
		}
	}
}

func TestSizesReadBack(t *testing.T) {
	for _, s := range []struct {
		system System
		step   Length
	}{{Imperial, Inch / 64}, {Metric, Millimetre}} {
		lengths := printed(s.step)
		for i, l := range lengths {
			z := Size{l, lengths[len(lengths)-1-i]}
			got, err := ParseSize(z.Show(s.system), NoUnit)
			require.NoError(t, err)
			require.Equal(t, z, got, z.Show(s.system))
		}
	}
}

func TestAnglesReadBack(t *testing.T) {
	for n := range 36_001 {
		for _, a := range []Angle{Angle(n) / 100, Angle(n) / 4, -Angle(n) / 100} {
			got, err := ParseAngle(a.Show())
			require.NoError(t, err)
			require.Equal(t, a, got, a.Show())
		}
	}
	_, err := ParseAngle(Angle(math.MaxFloat64).Show())
	assert.ErrorIs(t, err, ErrTooBig)
}
