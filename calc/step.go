package calc

// Step is one line of the working: a format for the fmt package whose every
// verb is %v, and what fills it. Lengths, cloth and angles are given as their
// types, so that whoever shows the line does so in the person's own units.
type Step struct {
	Format string
	Args   []any
}

// step makes a [Step].
func step(format string, args ...any) Step { return Step{format, args} }

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
