package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// FitRequest asks for the longest blade that a strip allows where blades lie
// along it, or, without a Strip, for the strip that a length needs. With both
// it tells whether the one fits the other.
type FitRequest struct {
	Conventions
	Angle  measure.Angle
	Narrow measure.Length // end of the template, as cut
	Strip  measure.Length // width; 0 where Length is given
	Length measure.Length // of the blade; 0 where Strip is given
}

// FitResult is a blade and the strip that it is cut along.
type FitResult struct {
	LongestBlade measure.Length // that StripWidth allows, rounded down; with a Length alone that length
	StripWidth   measure.Length // given, or as the length needs it, rounded up
	NarrowEnd    measure.Length
	Angle        measure.Angle
	WideEnd      measure.Length // of the longest blade, to the nearest step
	Fits         bool           // whether the length asked for can be cut from the strip asked about
	StripNeeded  measure.Length // for the length asked for; 0 where none was
	ExactLongest measure.Length // without rounding
	Working      []Step
}

// WedgeFit compares blades with the strips they are cut along: a blade is
// narrow + 2·length·tan(angle/2) at its wide end, and that is the least width
// of the strip. Source: geometry.
//
// It gives a [*LimitError] for a strip that is no wider than the narrow end.
func WedgeFit(r FitRequest) (FitResult, error) {
	err := cmp.Or(r.Conventions.check(), wantAngle("angle", r.Angle, widestBlade),
		wantLength("narrow_end", r.Narrow), wantSpare("strip_width", r.Strip), wantSpare("blade_length", r.Length))
	if err == nil && r.Strip == 0 {
		err = wantLength("blade_length", r.Length)
	}
	if err != nil {
		return FitResult{}, err
	}
	f := FitResult{StripWidth: r.Strip, NarrowEnd: r.Narrow, Angle: r.Angle, Fits: true}
	if r.Length > 0 {
		f = stripForBlade(r, f)
	}
	if r.Strip > 0 {
		return bladeForStrip(r, f)
	}
	return f, nil
}

func stripForBlade(r FitRequest, f FitResult) FitResult {
	wide := r.Narrow + newWedge(r.Angle).width(r.Length)
	f.StripNeeded = r.CutUp(wide)
	f.Working = []Step{roundedStep(wide, f.StripNeeded, "Strip for %v: %v + 2 × %v × tan(%v)",
		r.Length, r.Narrow, r.Length, r.Angle/2)}
	if f.StripNeeded < wide {
		f.Working = append(f.Working, step("That drops less than %v: the corners of the wide end lose a hair.", r.CutSlack))
	}
	if r.Strip == 0 {
		f.LongestBlade, f.ExactLongest, f.StripWidth, f.WideEnd = r.Length, r.Length, f.StripNeeded, r.Template(wide)
	}
	return f
}

func bladeForStrip(r FitRequest, f FitResult) (FitResult, error) {
	w := newWedge(r.Angle)
	f.ExactLongest = w.fromApex(r.Strip - r.Narrow)
	f.LongestBlade = r.LimitDown(f.ExactLongest)
	if f.LongestBlade <= 0 {
		return FitResult{}, limit("strip_width",
			step("A strip of %v leaves nothing for a blade that is %v at its narrow end.", r.Strip, r.Narrow),
			step("From %v on blades can be cut.", r.CutUp(r.Narrow+w.width(r.LimitStep))))
	}
	f.WideEnd = r.Template(r.Narrow + w.width(f.LongestBlade))
	f.Fits = r.Length == 0 || fitsAcross(r.Narrow+w.width(r.Length), r.Strip)
	f.Working = append(f.Working, roundedStep(f.ExactLongest, f.LongestBlade, "Longest blade: (%v − %v) ÷ (2 × tan(%v))",
		r.Strip, r.Narrow, r.Angle/2))
	return f, nil
}
