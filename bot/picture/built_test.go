package picture

import (
	"testing"

	"github.com/stretchr/testify/require"

	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
)

func must[T any](t testing.TB, v T, err error) T {
	t.Helper()
	require.NoError(t, err)
	return v
}

// ringOf reckons a ring with the shop's defaults.
func ringOf(t testing.TB, blades int, length measure.Length, end calc.BladeEnd, turn measure.Angle) calc.RingResult {
	t.Helper()
	r, err := calc.Ring(calc.RingRequest{
		Conventions: calc.ImperialConventions(), Blades: blades, Length: length, Narrow: calc.DefaultNarrowEnd, Turn: turn, End: end,
		Overlap: calc.DefaultCoverOverlap, Turning: calc.DefaultCoverTurning, Margin: calc.DefaultRingMargin,
	})
	return must(t, r, err)
}

// built are scenes as the builders make them, by the names of their goldens.
func built(t testing.TB) map[string]scene.Scene {
	plain := ringOf(t, 16, 6*inch, calc.PlainEnd, 0)
	folded := ringOf(t, 20, 5*inch, calc.FoldedEnd, 0)
	return map[string]scene.Scene{
		"ring":        scene.Ring(plain, measure.Imperial),
		"ring-metric": scene.Ring(folded, measure.Metric),
		"ring-half":   scene.Ring(ringOf(t, 9, 6*inch, calc.RoundedEnd, calc.HalfTurn), measure.Imperial),
		"blade":       scene.Blade(plain, measure.Imperial),
		"folded-tip":  scene.FoldedTip(folded, measure.Imperial),
	}
}

// templates are documents as the builders make them.
func templates(t testing.TB) map[string]scene.Templates {
	return map[string]scene.Templates{
		"ring-templates":       scene.RingTemplates(ringOf(t, 16, 6*inch, calc.FoldedEnd, 0), measure.Imperial),
		"ring-templates-large": scene.RingTemplates(ringOf(t, 8, 14*inch, calc.PlainEnd, 0), measure.Imperial),
	}
}
