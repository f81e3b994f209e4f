package commands

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// serials is how many questions of each subject are looked at, in each system.
const serials = 200

// eachQuestion calls check with every question of every subject.
func eachQuestion(t *testing.T, check func(t *testing.T, a *Assistant, state State, s solution)) {
	a, err := NewAssistant(ShopDefaults())
	require.NoError(t, err)
	for _, of := range subjects() {
		for _, metric := range []bool{false, true} {
			t.Run(fmt.Sprintf("%s/metric %v", of.name, metric), func(t *testing.T) {
				for n := range serials {
					state := State{Drill: Drill{On: []string{of.name}, Questions: 5, Serial: n, Metric: metric}}
					c := &conversation{assistant: a, defaults: a.defaults, state: state, system: state.Drill.system()}
					s, err := c.solve(c.exercise(0))
					require.NoError(t, err, "%d: %s", n, c.exercise(0).ask)
					check(t, a, state, s)
				}
			})
		}
	}
}

// writings are ways in which a person may write the answer: as the program
// shows it, as a decimal, and as a fraction.
func writings(t *testing.T, s solution) []string {
	v, ok := s.figure.Value.(float64)
	require.True(t, ok, s.ask)
	for den := 1; den <= 64; den++ {
		if n := v * float64(den); math.Abs(n-math.Round(n)) < 1e-9 {
			return []string{s.shown(), trimmed(v, 4), fmt.Sprintf("%.0f/%d", n, den)}
		}
	}
	return []string{s.shown(), trimmed(v, 4), fmt.Sprintf("%.0f/10000", v*10000)}
}

// The program's own answer is right, however it is written, and the line that
// tells why is there.
func TestDrillAcceptsItsOwnAnswers(t *testing.T) {
	eachQuestion(t, func(t *testing.T, a *Assistant, state State, s solution) {
		assert.NotEmpty(t, s.why(), s.ask)
		assert.True(t, strings.HasSuffix(s.ask, "?"), s.ask)
		for _, said := range writings(t, s) {
			r := a.Respond(Turn{Text: said, State: state})
			assert.Equal(t, 1, r.State.Drill.Right, "%s\n%q: %s", s.ask, said, r.Reply.Text)
			assert.Truef(t, strings.HasPrefix(r.Reply.Text, "Right"), "%s\n%q: %s", s.ask, said, r.Reply.Text)
		}
	})
}

// An answer beyond a step of the ruler is not right, nor a count that is off by
// one; and the reply says what it is.
func TestDrillRefusesOtherAnswers(t *testing.T) {
	eachQuestion(t, func(t *testing.T, a *Assistant, state State, s solution) {
		v, _ := s.figure.Value.(float64)
		by := s.scale()
		off := max(1, 1.01*by.near/by.unit)
		if by.near > 0 {
			off = 1.01 * by.near / by.unit
		}
		for _, other := range []float64{v + off, v - off} {
			r := a.Respond(Turn{Text: strconv.FormatFloat(other, 'f', 6, 64), State: state})
			assert.Zero(t, r.State.Drill.Right, "%s\n%v: %s", s.ask, other, r.Reply.Text)
			assert.Contains(t, r.Reply.Text, s.shown(), s.ask)
			assert.Contains(t, r.Reply.Text, s.why(), s.ask)
		}
	})
}

// Whoever makes one of the usual mistakes is told which, unless it happens to
// lead to the right answer or to what another mistake leads to.
func TestDrillNamesMistakes(t *testing.T) {
	named := map[string]bool{}
	eachQuestion(t, func(t *testing.T, a *Assistant, state State, s solution) {
		c := &conversation{assistant: a, defaults: a.defaults, state: state, system: state.Drill.system()}
		v, _ := s.figure.Value.(float64)
		by := s.scale()
		for _, m := range s.slips {
			wrong, ok := c.wrong(s, m)
			if !ok || wrong <= 0 || math.Abs(wrong-v)*by.unit <= by.near || by.near == 0 && wrong != math.Trunc(wrong) {
				continue
			}
			r := a.Respond(Turn{Text: strconv.FormatFloat(wrong, 'f', 6, 64), State: state})
			assert.Zero(t, r.State.Drill.Right, "%s\n%v: %s", s.ask, wrong, r.Reply.Text)
			said := ""
			for _, other := range s.slips {
				if strings.Contains(r.Reply.Text, other.says) {
					said = other.says
				}
			}
			assert.NotEmpty(t, said, "%s\n%v (%s): %s", s.ask, wrong, m.says, r.Reply.Text)
			named[s.topic+s.exercise.figure+said] = true
		}
	})
	for _, of := range subjects() {
		for _, drawn := range of.draws {
			e := drawn(newDraw(of.name, 0, measure.Imperial, ShopDefaults()))
			for _, m := range e.slips {
				assert.True(t, named[e.topic+e.figure+m.says], "never named: %s, %s: %s", e.topic, e.figure, m.says)
			}
		}
	}
}

// The answer hangs on what the question says and on nothing that the person has
// set meanwhile.
func TestDrillQuestionsSayAllTheyRestOn(t *testing.T) {
	own := Settings{
		"usable_width": "36 in", "seam": "3/8 in", "binding_strip": "3 in", "binding_extra": "20 in", "joins": "straight",
		"corners": "mitred", "overage": "7 in", "straight_join": "1 in", "wide_backing": "90 in", "units": "metric",
	}
	require.NoError(t, own.Check())
	eachQuestion(t, func(t *testing.T, a *Assistant, state State, s solution) {
		c := &conversation{assistant: a, defaults: a.defaults.With(own), state: state, system: state.Drill.system()}
		other, err := c.solve(c.exercise(0))
		require.NoError(t, err)
		assert.Equal(t, s.ask, other.ask)
		assert.Equal(t, s.figure, other.figure, s.ask)
	})
}

// The same state asks the same question, and the next one another.
func TestDrillIsPure(t *testing.T) {
	asked := map[string]bool{}
	eachQuestion(t, func(t *testing.T, a *Assistant, state State, s solution) {
		for range 3 {
			r := a.Respond(Turn{Text: "what was that again", State: state})
			assert.Contains(t, r.Reply.Text, s.ask)
			assert.Equal(t, state.Drill, r.State.Drill)
		}
		asked[s.ask] = true
	})
	assert.Greater(t, len(asked), len(subjects())*serials/3, "different questions")
}
