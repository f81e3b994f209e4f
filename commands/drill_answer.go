package commands

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"counterhand/calc/measure"
	"counterhand/commands/words"
)

// solution is an exercise with what its topic makes of it.
type solution struct {
	exercise
	reply  Reply
	figure Figure
	system measure.System
}

// errNoFigure is given where a topic answers without the figure asked for.
var errNoFigure = errors.New("the topic gives no such figure")

// solve works an exercise out by its own topic, as a request would be.
func (c *conversation) solve(e exercise) (solution, error) {
	r, w, err := c.workOut(c.assistant.topicNamed(e.topic), e.values)
	if err != nil {
		return solution{}, err
	}
	r.Text = strings.Join(w.lines, "\n")
	f, ok := figureNamed(r, e.figure)
	if !ok {
		return solution{}, errNoFigure
	}
	return solution{e, r, f, c.system}, nil
}

func figureNamed(r Reply, name string) (Figure, bool) {
	for _, f := range r.Figures {
		if f.Name == name {
			return f, true
		}
	}
	return Figure{}, false
}

// value gives a figure of the solution as the number that it is in its unit.
func (s solution) value(name string) float64 {
	f, _ := figureNamed(s.reply, name)
	v, _ := f.Value.(float64)
	return v
}

// shown writes the answer: "7 strips", "3⅞ in".
func (s solution) shown() string {
	if s.noun != "" {
		v, _ := s.figure.Value.(float64)
		return counted(int(v), s.noun)
	}
	return s.figure.Shown
}

// why gives the line of the working, or else of the answer, that tells why.
func (s solution) why() string {
	for _, line := range append(slices.Clone(s.reply.Working), strings.Split(s.reply.Text, "\n")...) {
		if strings.Contains(line, s.line) {
			return strings.TrimSuffix(line, ".") + "."
		}
	}
	return ""
}

// scale is the unit that an answer is compared in, how far one may be from the
// result and still be it, and how far to count as right: counts exact, lengths
// to one step of the ruler.
type scale struct{ unit, same, near float64 }

// The precision of figures that are no lengths: angles are shown to hundredths
// and factors to thousandths of what they are.
const (
	angleSame, angleNear   = 0.006, 0.05
	factorSame, factorNear = 0.0006, 0.005
)

func (s solution) scale() scale {
	unit := unitOf(s.figure.Unit)
	switch {
	case unit.IsLength() && s.system == measure.Metric:
		return scale{float64(unit.Length()), float64(measure.Millimetre) / 10, float64(measure.Millimetre)}
	case unit.IsLength():
		return scale{float64(unit.Length()), float64(measure.Inch) / 64, float64(eighth)}
	case s.figure.Unit == "deg":
		return scale{1, angleSame, angleNear}
	case s.noun == "":
		return scale{1, factorSame, factorNear}
	}
	return scale{1, 0, 0}
}

// unitOf gives the unit that a figure is in, of lengths and cloth.
func unitOf(name string) measure.Unit {
	for _, u := range []measure.Unit{measure.InchUnit, measure.FootUnit, measure.YardUnit, measure.MillimetreUnit, measure.CentimetreUnit, measure.MetreUnit} {
		if unitName(u) == name {
			return u
		}
	}
	return measure.NoUnit
}

// numbersSaid gives the numbers that may be an answer; a "one" that stands
// alone is one of them.
func (c *conversation) numbersSaid() []quantity {
	if len(c.split) > 0 {
		return c.split
	}
	var out []quantity
	for i, t := range c.text.Tokens {
		if t.Kind == words.Number {
			out = append(out, quantity{numbers: []measure.Quantity{t.Quantity}, from: i, to: i + 1, text: t.Text})
		}
	}
	return out
}

// gradeAnswers takes the one number of the text as the answer. Of several, and
// of a length where a count is asked for, it asks.
func (c *conversation) gradeAnswers(qs []quantity) Reply {
	s, err := c.solve(c.exercise(0))
	if err != nil {
		return c.breakOff(err)
	}
	var r Reply
	given, comparable := s.read(qs[0])
	switch {
	case len(qs) > 1 || len(qs[0].numbers) > 1:
		r = c.openQuestion("Which one is your answer? One number alone will do.")
	case !comparable:
		r = c.openQuestion(fmt.Sprintf("%s is in another unit than what I ask for.", capital(safe(qs[0].text))))
	default:
		r = c.goOn(s, c.grade(s, given))
	}
	for _, q := range qs {
		for _, n := range q.numbers {
			r.Understood = append(r.Understood, Understood{"answer", n.Number.Float(), unitName(n.Unit), safe(q.text)})
		}
	}
	return r
}

// read gives an answer in the unit of the comparison; a bare number is in the
// unit of the figure.
func (s solution) read(q quantity) (v float64, comparable bool) {
	n := q.first()
	v = n.Number.Float()
	want := unitOf(s.figure.Unit)
	switch {
	case q.percent:
		return v / 100, s.figure.Unit == "count" && s.noun == ""
	case n.Unit == measure.NoUnit:
		return v * s.scale().unit, true
	case n.Unit == measure.DegreeUnit:
		return v, s.figure.Unit == "deg"
	case n.Unit.IsLength():
		return v * float64(n.Unit.Length()), want.IsLength()
	}
	return 0, false
}

// grade compares an answer with the result, counts it, and says how it stands.
func (c *conversation) grade(s solution, given float64) string {
	d, by := &c.state.Drill, s.scale()
	right, _ := s.figure.Value.(float64)
	right *= by.unit
	off := math.Abs(given - right)
	slip := ""
	if off > by.same {
		slip = c.slipOf(s, given)
	}
	if slip == "" && off <= by.near {
		d.Right++
		d.Streak++
		if off <= by.same {
			return "Right: " + s.shown() + "."
		}
		return "Right, as near as that goes: " + s.shown() + "."
	}
	d.Streak = 0
	lines := []string{"Not quite: it is " + s.shown() + ". " + s.why()}
	if slip != "" {
		lines = append(lines, slip)
	}
	return strings.Join(lines, "\n")
}

// slipOf names the usual mistake that leads to the answer, if one does.
func (c *conversation) slipOf(s solution, given float64) string {
	by := s.scale()
	right, _ := s.figure.Value.(float64)
	for _, m := range s.slips {
		wrong, ok := c.wrong(s, m)
		wrong *= by.unit
		reach := by.near / 2
		if ok && math.Abs(given-wrong) <= reach && math.Abs(given-wrong) < math.Abs(given-right*by.unit) {
			return m.says
		}
	}
	return ""
}

// wrong gives the result that a mistake leads to, in the figure's unit: that of
// the topic with the mistaken inputs, or what is made of the right figures.
func (c *conversation) wrong(s solution, m slip) (float64, bool) {
	if m.of != nil {
		return m.of(s), true
	}
	mistaken := s.exercise
	mistaken.values = m.values
	if m.figure != "" {
		mistaken.figure = m.figure
	}
	w, err := c.solve(mistaken)
	if err != nil {
		return 0, false
	}
	return w.value(mistaken.figure), true
}
