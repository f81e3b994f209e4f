package calc

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// clothNeed is what one topic needs of a quilt on fabric of a width: a number of
// strips or panels, and a length.
type clothNeed func(t *testing.T, quilt measure.Size, usable measure.Length) (count int, need measure.Length)

// clothNeeds are the topics whose need grows with the quilt.
func clothNeeds() map[string]clothNeed {
	on := func(usable measure.Length) Conventions {
		v := ImperialConventions()
		v.UsableWidth = usable
		return v
	}
	border := func(corners Corners, join Join) clothNeed {
		return func(t *testing.T, quilt measure.Size, usable measure.Length) (int, measure.Length) {
			r := bordersOf(quilt, 3)
			r.UsableWidth, r.Corners, r.Join = usable, corners, join
			b, err := Borders(r)
			require.NoError(t, err)
			return b.Borders[0].Strips, b.Need
		}
	}
	binding := func(join Join) clothNeed {
		return func(t *testing.T, quilt measure.Size, usable measure.Length) (int, measure.Length) {
			r := bindingOf(RectangleEdge(quilt))
			r.UsableWidth, r.Join = usable, join
			b, err := Binding(r)
			require.NoError(t, err)
			return b.Strips, b.Need
		}
	}
	return map[string]clothNeed{
		"binding, diagonal": binding(DiagonalJoin),
		"binding, straight": binding(StraightJoin),
		"border, butted":    border(ButtedCorners, StraightJoin),
		"border, mitred":    border(MitredCorners, StraightJoin),
		"border, squares":   border(SquaredCorners, StraightJoin),
		"backing": func(t *testing.T, quilt measure.Size, usable measure.Length) (int, measure.Length) {
			r := backingOf(quilt)
			r.UsableWidth = usable
			b, err := Backing(r)
			require.NoError(t, err)
			return 0, b.Need // the better way may have more panels of less length
		},
		"backing, one way": func(t *testing.T, quilt measure.Size, usable measure.Length) (int, measure.Length) {
			r := backingOf(quilt)
			r.UsableWidth, r.OneWay = usable, true
			b, err := Backing(r)
			require.NoError(t, err)
			return b.Panels, b.Need
		},
		"edge triangles": func(t *testing.T, quilt measure.Size, usable measure.Length) (int, measure.Length) {
			e, err := EdgeTriangles(EdgeTrianglesRequest{Conventions: on(usable), Square: 3 * in, Quilt: quilt})
			require.NoError(t, err)
			return e.Strips, e.Need
		},
		"sashing": func(t *testing.T, quilt measure.Size, usable measure.Length) (int, measure.Length) {
			s, err := Sashing(SashingRequest{Conventions: on(usable), Block: inches(6, 6), Sash: in,
				Across: wholes(quilt.Width, 6*in), Down: wholes(quilt.Length, 6*in), Cornerstones: true, Frame: true})
			require.NoError(t, err)
			return s.Strips, s.Need
		},
	}
}

func TestMoreQuiltNeverNeedsLess(t *testing.T) {
	for name, need := range clothNeeds() {
		t.Run(name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(1, 1))
			for range 1000 {
				quilt := inches(float64(40+rng.IntN(400))/4, float64(40+rng.IntN(400))/4)
				larger := measure.Size{Width: quilt.Width + measure.Length(rng.IntN(20))*in/4, Length: quilt.Length + measure.Length(rng.IntN(20))*in/4}
				count, length := need(t, quilt, 40*in)
				moreCount, moreLength := need(t, larger, 40*in)
				assert.GreaterOrEqual(t, moreCount, count, "%v, %v", quilt, larger)
				assert.GreaterOrEqual(t, moreLength, length, "%v, %v", quilt, larger)
			}
		})
	}
}

func TestWiderFabricNeverNeedsMore(t *testing.T) {
	for name, need := range clothNeeds() {
		t.Run(name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(2, 2))
			for range 1000 {
				quilt := inches(float64(40+rng.IntN(400))/4, float64(40+rng.IntN(400))/4)
				usable := measure.Length(70+rng.IntN(40)) * in / 2
				count, length := need(t, quilt, usable)
				lessCount, lessLength := need(t, quilt, usable+measure.Length(rng.IntN(40))*in/4)
				assert.LessOrEqual(t, lessCount, count, "%v on %v", quilt, usable)
				assert.LessOrEqual(t, lessLength, length, "%v on %v", quilt, usable)
			}
		})
	}
}

// Twice the edge takes at most twice the strips.
func TestTwiceTheEdgeTakesAtMostTwiceTheStrips(t *testing.T) {
	for quarter := measure.Length(40); quarter < 2000; quarter += 3 {
		once := bindingOf(MeasuredEdge(quarter * in / 4))
		once.Extra = 0
		twice := once
		twice.Edge = MeasuredEdge(quarter * in / 2)
		a, err := Binding(once)
		require.NoError(t, err)
		b, err := Binding(twice)
		require.NoError(t, err)
		// Joining the two halves costs one join, for which a spare width is needed.
		if 2*a.Spare >= once.StripWidth {
			assert.LessOrEqual(t, b.Strips, 2*a.Strips)
		} else {
			assert.LessOrEqual(t, b.Strips, 2*a.Strips+1)
		}
	}
}

// A person who works in centimetres gets what one who works in inches does,
// where both round to the same steps. Handbooks' triangles and the metric fat
// quarter are the only differences between the systems.
func TestNothingDependsOnTheSystem(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	depend := map[string]bool{"setting triangles": true, "scale": true}
	for range 200 {
		l := func() measure.Length { return measure.Length(1+rng.IntN(2000)) * measure.Millimetre }
		a, b, c, d, n, m, p := l(), l(), l(), l(), 1+rng.IntN(30), 1+rng.IntN(30), float64(rng.IntN(50))
		imperial := ImperialConventions()
		metric := imperial
		metric.System = measure.Metric
		inches, centimetres := clothAnswers(imperial, a, b, c, d, n, m, p), clothAnswers(metric, a, b, c, d, n, m, p)
		require.Len(t, centimetres, len(inches))
		for name, answer := range inches {
			if !depend[name] {
				assert.Equal(t, answer, centimetres[name], name)
			}
		}
	}
}

// Every published default is one that the topic takes.
func TestDefaultsAreTaken(t *testing.T) {
	for name, v := range map[string]Conventions{"inches": ImperialConventions(), "centimetres": MetricConventions()} {
		t.Run(name, func(t *testing.T) {
			require.NoError(t, v.check())
			for _, err := range []error{
				wantLength("binding", DefaultBindingStrip), wantSpare("extra", DefaultBindingExtra),
				wantSpare("backing", DefaultBackingOverage), wantSpare("seam", DefaultPanelSeam),
				wantSpare("batting", DefaultBattingOverage), wantSpare("mitre", DefaultMitreSpare),
				wantLength("spool", DefaultSpool), wantLength("bobbin", DefaultBobbin),
			} {
				assert.NoError(t, err)
			}
		})
	}
}
