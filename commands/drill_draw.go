package commands

import (
	"hash/fnv"
	"maps"
	"math/rand/v2"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// exercise is a question to practise on: a request to a topic, and the figure
// of its answer that is asked for.
type exercise struct {
	topic  string
	values map[string]Value
	figure string
	noun   string // what the figure counts
	line   string // a piece of the line, of working or answer, that tells why
	ask    string
	slips  []slip
}

// slip is a common mistake, told to whoever makes it. The choice of mistakes is
// common practice, no source; what each of them comes to is not stated but
// reckoned from the figures of the topic.
type slip struct {
	values map[string]Value       // what the topic would have been told; or
	of     func(solution) float64 // what is made of the right figures, in the unit of the figure asked for
	figure string                 // the figure that is taken instead, where it is another
	says   string
}

// draw draws the numbers of one exercise. The same subject, serial and system
// give the same numbers.
type draw struct {
	rand      *rand.Rand
	show      *work // for its format
	conv      calc.Conventions
	panelSeam measure.Length
}

func newDraw(subject string, serial int, system measure.System, defaults Defaults) draw {
	h := fnv.New64a()
	h.Write([]byte(subject))
	d := draw{
		rand:      rand.New(rand.NewPCG(h.Sum64(), uint64(serial))),
		show:      &work{system: system},
		conv:      defaults.conventions(system),
		panelSeam: defaults.Lengths["panel_seam"],
	}
	d.conv.Seam = measure.Inch / 4
	if system == measure.Metric {
		d.conv.Seam = 6 * measure.Millimetre
	}
	return d
}

// span is a range of lengths on a step, in inches or centimetres.
type span struct{ from, to, step float64 }

// length draws a length from the span of the system.
func (d draw) length(inches, centimetres span) measure.Length {
	s, unit := inches, measure.Inch
	if d.metric() {
		s, unit = centimetres, measure.Centimetre
	}
	n := int((s.to-s.from)/s.step + 0.5)
	return measure.Length((s.from + s.step*float64(d.rand.IntN(n+1))) * float64(unit))
}

func (d draw) metric() bool { return d.show.system == measure.Metric }

// pick draws one of a list.
func pick[T any](d draw, of ...T) T { return of[d.rand.IntN(len(of))] }

// fabricWidth draws how wide a fabric is, usable.
func (d draw) fabricWidth() measure.Length {
	return d.length(span{40, 42, 1}, span{102, 110, 2})
}

// unit is one of the unit that figures of the system are in.
func (d draw) unit() measure.Length {
	if d.metric() {
		return measure.Centimetre
	}
	return measure.Inch
}

// in gives a length in the unit that figures of the system are in.
func (d draw) in(l measure.Length) float64 { return l.In(d.unit()) }

// cloth gives a length as it is bought, in the unit of cloth.
func (d draw) cloth(l measure.Length) float64 {
	bought := measure.Length(d.conv.BuyUp(l))
	if d.metric() {
		return bought.In(measure.Metre)
	}
	return bought.In(measure.Yard)
}

// buyStep is the step of cloth, in its unit.
func (d draw) buyStep() float64 { return d.cloth(d.conv.BuyStep) }

// swap is what the allowances of half and quarter squares differ by.
func (d draw) swap() float64 {
	return d.in(d.conv.QuarterSquareAllowance() - d.conv.HalfSquareAllowance())
}

// Values as a person would have given them.

func ofLength(l measure.Length) Value { return Value{Kind: aLength, Length: l} }
func ofCount(n int) Value             { return Value{Kind: aCount, Count: n} }
func ofWordSaid(w string) Value       { return Value{Kind: aWord, Word: w} }
func ofAngle(a float64) Value         { return Value{Kind: anAngle, Number: a} }
func ofSize(width, length measure.Length) Value {
	return Value{Kind: aSize, Size: measure.Size{Width: width, Length: length}}
}

// with gives the values with one changed.
func with(values map[string]Value, name string, v Value) map[string]Value {
	out := maps.Clone(values)
	out[name] = v
	return out
}

// inPlaceOf gives the values with one in another's place.
func inPlaceOf(values map[string]Value, gone, name string, v Value) map[string]Value {
	out := with(values, name, v)
	delete(out, gone)
	return out
}

// fixed is a result that does not hang on the right one.
func fixed(v float64) func(solution) float64 { return func(solution) float64 { return v } }

// lessBy is the figure asked for, less something.
func lessBy(v float64) func(solution) float64 {
	return func(s solution) float64 { return s.value(s.figure.Name) - v }
}

const (
	saysRoundedDown = "That is rounded down: what is cut or bought goes up, or it falls short."
	saysNoSeams     = "That leaves the seams out."
	saysOneSeam     = "That adds the seam once; there is one on each side."
)
