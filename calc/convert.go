package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// Unit is a unit of length by its short name.
type Unit string

// The units that lengths are converted between.
const (
	InInches      Unit = "in"
	InFeet        Unit = "ft"
	InYards       Unit = "yd"
	InMillimetres Unit = "mm"
	InCentimetres Unit = "cm"
	InMetres      Unit = "m"
)

// Length gives one of the unit, and none for a unit that there is not.
func (u Unit) Length() measure.Length {
	switch u {
	case InInches:
		return measure.Inch
	case InFeet:
		return measure.Foot
	case InYards:
		return measure.Yard
	case InMillimetres:
		return measure.Millimetre
	case InCentimetres:
		return measure.Centimetre
	case InMetres:
		return measure.Metre
	}
	return 0
}

// ConvertRequest asks for a length in another unit.
type ConvertRequest struct {
	Conventions
	Length measure.Length
	To     Unit
}

// ConvertResult gives the length in the unit, and where a ruler shows it.
type ConvertResult struct {
	Result    float64 // in the unit, unrounded
	Unit      Unit
	Length    measure.Length
	Sixteenth measure.Length // the nearest 1/16 in
	OnRuler   bool           // the length lies on 1/16 in itself
	Buy       measure.Cloth  // the length as a shop cuts it, up
	Working   []Step
}

// Convert gives a length in another unit. 1 in = 25.4 mm and 1 yd = 0.9144 m,
// exact since 1959. Source: NIST Handbook 44, Appendix C.
func Convert(r ConvertRequest) (ConvertResult, error) {
	if err := cmp.Or(r.check(), wantSpare("length", r.Length)); err != nil {
		return ConvertResult{}, err
	}
	unit := r.To.Length()
	if unit == 0 {
		return ConvertResult{}, limit("unit", step("A length cannot be told in %v.", r.To),
			step("in, ft, yd, mm, cm and m work."))
	}
	c := ConvertResult{
		Result:    r.Length.In(unit),
		Unit:      r.To,
		Length:    r.Length,
		Sixteenth: r.Length.RoundNearest(measure.Inch / 16),
		OnRuler:   r.Length.IsOn(measure.Inch / 16),
		Buy:       r.BuyUp(r.Length),
	}
	c.Working = []Step{step("%v = %v %v, since 1 in is 25.4 mm exactly.", Unrounded(r.Length), c.Result, r.To)}
	return c, nil
}
