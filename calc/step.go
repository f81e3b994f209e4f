package calc

import (
	"math"
	"strconv"
	"strings"

	"counterhand/calc/measure"
)

// Step is one line of the working: a format for the fmt package whose every
// verb is %v, and what fills it. Lengths, cloth and angles are given as their
// types, so that whoever shows the line does so in the person's own units.
type Step struct {
	Format string
	Args   []any
}

// step makes a [Step].
func step(format string, args ...any) Step { return Step{format, args} }

// Unrounded is a length in the middle of a sum. Where no ruler has it, it is
// shown in thousandths of an inch or of a centimetre, so that the lines of a
// working add up for whoever checks them.
type Unrounded measure.Length

// Show writes the length for a person of the system: "2⅝ in", "2.199 in".
func (u Unrounded) Show(s measure.System) string {
	l := measure.Length(u)
	unit, name, step := measure.Inch, " in", measure.Inch/64
	if s == measure.Metric {
		unit, name, step = measure.Centimetre, " cm", measure.Millimetre
	}
	if near := l.RoundNearest(step); near-l <= hair && l-near <= hair {
		return near.Show(s)
	}
	return strconv.FormatFloat(math.Round(l.In(unit)*1000)/1000, 'f', -1, 64) + name
}

// LimitError says that a request cannot be met: which input stands in the way,
// why with the limit, and the nearest request that works.
type LimitError struct {
	Input  string // the input's name in the contract, such as "narrow_end"
	Reason Step   // a sentence for the person, with the limit in it
	Works  Step   // the nearest that works, as a sentence; may be empty
}

// Error gives the reason in bare form, for logs and tests.
func (e *LimitError) Error() string { return e.Input + ": " + e.Reason.Format }

// limit makes a [LimitError].
func limit(input string, reason, works Step) error {
	return &LimitError{Input: input, Reason: reason, Works: works}
}

// counted writes a number of things: "1 join", "7 joins", "49 short sashes".
func counted(n int, thing string) string {
	switch {
	case n == 1:
		return "1 " + thing
	case strings.HasSuffix(thing, "sh"):
		return strconv.Itoa(n) + " " + thing + "es"
	}
	return strconv.Itoa(n) + " " + thing + "s"
}
