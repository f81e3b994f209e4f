package measure

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"
)

// The reasons of a [ParseError], beside [ErrTooLong].
var (
	ErrNoNumber  = errors.New("no number")
	ErrTooBig    = errors.New("more than twelve digits")
	ErrNoUnit    = errors.New("no unit")
	ErrWrongUnit = errors.New("a unit of something else")
	ErrUnread    = errors.New("unread text")
	ErrAmbiguous = errors.New("a comma that may mark thousands or decimals")
	ErrUnclear   = errors.New("not a number in any writing")
)

// ParseError tells why a text is no length, size or angle.
type ParseError struct {
	What   string // "length", "size" or "angle"
	Input  string // the whole text
	Unread string // what was left of it where the fault was found
	Reason error  // one of the reasons above, or [ErrTooLong]
}

// Error quotes the input, shortened and with control characters escaped.
func (e *ParseError) Error() string {
	s := fmt.Sprintf("%s %s: %v", e.What, quote(e.Input), e.Reason)
	if e.Unread != "" && e.Unread != e.Input {
		s += " at " + quote(e.Unread)
	}
	return s
}

// Unwrap gives the reason.
func (e *ParseError) Unwrap() error { return e.Reason }

// quote quotes at most the first forty characters of s.
func quote(s string) string {
	const most = 40
	n := 0
	for i := range s {
		if n++; n > most {
			return fmt.Sprintf("%+q…", s[:i])
		}
	}
	if !utf8.ValidString(s) {
		return fmt.Sprintf("%+q", s)
	}
	return fmt.Sprintf("%q", s)
}

// ParseLength reads s, all of it, as one length: "2½ in", "3ft 2in", "half a
// metre". A number without a unit counts bare; where bare is [NoUnit] it is
// refused. Errors are of type [*ParseError].
func ParseLength(s string, bare Unit) (Length, error) {
	p := newParser("length", s)
	q, err := p.quantity()
	if err != nil {
		return 0, err
	}
	if err := p.end(); err != nil {
		return 0, err
	}
	return p.length(q, bare)
}

// ParseSize reads s, all of it, as a width and a length: "60x72", "60 by 72 in",
// `60" x 72"`, "1.5 m x 2 m", "60 inches square". A side without a unit takes the
// other one's; where neither has one they count bare.
func ParseSize(s string, bare Unit) (Size, error) {
	p := newParser("size", s)
	first, err := p.quantity()
	if err != nil {
		return Size{}, err
	}
	second := first
	if !p.skipSquare() {
		if !p.skipTimes() {
			return Size{}, p.fail(ErrNoNumber)
		}
		if second, err = p.quantity(); err != nil {
			return Size{}, err
		}
	}
	if err := p.end(); err != nil {
		return Size{}, err
	}
	if second.Unit != NoUnit {
		bare = second.Unit
	}
	if first.Unit != NoUnit {
		bare = first.Unit
	}
	var z Size
	if z.Width, err = p.length(first, bare); err != nil {
		return Size{}, err
	}
	if z.Length, err = p.length(second, bare); err != nil {
		return Size{}, err
	}
	return z, nil
}

// ParseAngle reads s, all of it, as an angle in degrees, with or without its
// unit: "22½°", "18 degrees", "14.4".
func ParseAngle(s string) (Angle, error) {
	p := newParser("angle", s)
	q, err := p.quantity()
	if err != nil {
		return 0, err
	}
	switch {
	case q.Unit.IsLength():
		return 0, p.fail(ErrWrongUnit)
	case q.Form == TooBig:
		return 0, p.fail(ErrTooBig)
	}
	if err := p.end(); err != nil {
		return 0, err
	}
	return Angle(q.Number.Float()), nil
}

// parser reads quantities one behind the other from a whole text.
type parser struct{ what, input, rest string }

func newParser(what, s string) *parser {
	return &parser{what, s, strings.TrimSpace(s)}
}

func (p *parser) fail(reason error) error {
	return &ParseError{p.what, p.input, p.rest, reason}
}

// quantity reads one quantity whose number has one meaning.
func (p *parser) quantity() (Quantity, error) {
	q, ok := ScanQuantity(p.rest)
	switch {
	case !ok:
		return Quantity{}, p.fail(ErrNoNumber)
	case q.Form == ThousandsComma:
		return Quantity{}, p.fail(ErrAmbiguous)
	case q.Form == Unclear:
		return Quantity{}, p.fail(ErrUnclear)
	}
	p.skip(q.Size)
	return q, nil
}

func (p *parser) skip(n int) { p.rest = strings.TrimSpace(p.rest[n:]) }

func (p *parser) length(q Quantity, bare Unit) (Length, error) {
	unit := q.Unit
	if unit == NoUnit {
		unit = bare
	}
	switch {
	case unit == NoUnit:
		return 0, p.fail(ErrNoUnit)
	case !unit.IsLength():
		return 0, p.fail(ErrWrongUnit)
	}
	l, err := q.Number.Of(unit.Length())
	if err != nil {
		return 0, p.fail(err)
	}
	return l, nil
}

// skipTimes passes over what stands between the sides of a size.
func (p *parser) skipTimes() bool {
	for _, t := range []string{"x", "X", "×", "✕", "*", "by", "BY", "By"} {
		if strings.HasPrefix(p.rest, t) {
			p.skip(len(t))
			return true
		}
	}
	return false
}

// skipSquare passes over the word "square".
func (p *parser) skipSquare() bool {
	n := oneOf(p.rest, "square")
	p.skip(n)
	return n > 0
}

// end refuses what is left unread.
func (p *parser) end() error {
	if p.rest != "" {
		return p.fail(ErrUnread)
	}
	return nil
}
