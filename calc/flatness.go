package calc

import (
	"cmp"
	"math"
	"slices"

	"counterhand/calc/measure"
)

// BladeGroup is a number of blades of one angle; rings may mix them.
type BladeGroup struct {
	Blades int
	Angle  measure.Angle
}

// FlatnessRequest asks what a ring does that does not lie flat.
type FlatnessRequest struct {
	Conventions
	Groups     []BladeGroup   // the blades as they are, all around
	Turn       measure.Angle  // what they have to fill; 0 means a full circle
	AngleError measure.Angle  // of each blade, below 0 for too small; 0 where the angles above are right
	SeamError  measure.Length // by which each seam is too deep, below 0 for too shallow
	Tapering   bool           // the seams are off at the wide end only, else all along
	Length     measure.Length // of a blade; needed for tapering seams and to say how much each seam is off
}

// Lie is what a ring does when it is laid down.
type Lie uint8

// The ways a ring lies.
const (
	LiesFlat Lie = iota
	Ruffles      // too many degrees
	Cups         // too few: it cups where it is pulled together, else it gapes
)

// flatEnough is the miss that pressing takes up over a whole ring.
// It is common practice, no source.
const flatEnough measure.Angle = 0.5

// FlatnessResult is how a ring lies, and what would mend it.
type FlatnessResult struct {
	Blades       int
	Covered      measure.Angle  // by all blades, with the errors of seams and angles
	Miss         measure.Angle  // what is too much; below 0 for what is missing
	Lie          Lie            // what it does
	Closing      []Closing      // how blades of about this angle close, and then this number of blades, where that is another way
	PerSeam      measure.Angle  // by which each seam would have to turn in to close it
	SeamAtWide   measure.Length // the same at the wide end: how much deeper each seam has to be there, below 0 for shallower
	QuarterMiss  measure.Angle  // what shows when a quarter of the blades is laid against a square corner; 0 without whole quarters
	RadiusChange measure.Length // of a ring whose seams are evenly too deep: by this it is smaller, below 0 for larger
	AcrossChange measure.Length // twice RadiusChange
	Working      []Step
}

// Flatness tells why a ring ruffles or cups. An error of each blade's angle
// counts once for every blade. A seam that is too deep at the wide end only
// takes atan(error ÷ length) off both blades that it joins; one that is too
// deep all along leaves the ring flat and makes it smaller by
// error ÷ sin(angle/2). Source: geometry.
func Flatness(r FlatnessRequest) (FlatnessResult, error) {
	if r.Turn == 0 {
		r.Turn = FullTurn
	}
	if err := r.check(); err != nil {
		return FlatnessResult{}, err
	}
	f := FlatnessResult{}
	for _, g := range r.Groups {
		f.Blades += g.Blades
		f.Covered += g.Angle * measure.Angle(g.Blades)
		f.Working = append(f.Working, step("%v × %v = %v", g.Blades, g.Angle, g.Angle*measure.Angle(g.Blades)))
	}
	if f.Blades > maxCount {
		return FlatnessResult{}, wantCount("blades", f.Blades)
	}
	mean := f.Covered/measure.Angle(f.Blades) + r.AngleError
	if !(mean >= leastAngle && mean <= HalfTurn) {
		return FlatnessResult{}, limit("angle_error",
			step("With an error of %v the blades would have %v each, which makes no ring.", r.AngleError, mean), Step{})
	}
	r.addErrors(&f)
	f.Miss = f.Covered - r.Turn
	switch {
	case f.Miss > flatEnough:
		f.Lie = Ruffles
	case f.Miss < -flatEnough:
		f.Lie = Cups
	}
	r.mend(&f)
	return f, nil
}

func (r FlatnessRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantAngle("turn", r.Turn, FullTurn), wantSpare("blade_length", r.Length),
		wantSpare("seam_error", max(r.SeamError, -r.SeamError)))
	if len(r.Groups) == 0 {
		err = cmp.Or(err, wantCount("blades", 0))
	}
	for _, g := range r.Groups {
		err = cmp.Or(err, wantCount("blades", g.Blades), wantAngle("angle", g.Angle, HalfTurn))
	}
	if !(math.Abs(float64(r.AngleError)) < 180) {
		err = cmp.Or(err, limit("angle_error", step("The error of an angle has to be less than %v.", HalfTurn), Step{}))
	}
	if r.Tapering && r.SeamError != 0 {
		err = cmp.Or(err, wantLength("blade_length", r.Length))
	}
	return err
}

// seams counts the seams of the ring; a part ring has one fewer than blades.
func (r FlatnessRequest) seams(blades int) int {
	if r.Turn < FullTurn {
		return blades - 1
	}
	return blades
}

// addErrors adds what wrong angles and seams do.
func (r FlatnessRequest) addErrors(f *FlatnessResult) {
	n := measure.Angle(f.Blades)
	if r.AngleError != 0 {
		f.Covered += n * r.AngleError
		f.Working = append(f.Working, step("%v blades, each off by %v: %v in all", f.Blades, r.AngleError, n*r.AngleError))
	}
	if r.SeamError == 0 {
		return
	}
	if r.Tapering {
		each := WedgeAngle(0, 2*r.SeamError, r.Length) // 2·atan(error ÷ length), off both blades
		total := -measure.Angle(r.seams(f.Blades)) * each
		f.Covered += total
		f.Working = append(f.Working, step("%v seams off by %v at the wide end: 2 × %v × atan(%v ÷ %v) = %v",
			r.seams(f.Blades), r.SeamError, r.seams(f.Blades), r.SeamError, r.Length, -total))
		return
	}
	mean := f.Covered / n
	f.RadiusChange = newWedge(mean).apexShift(r.SeamError)
	f.AcrossChange = 2 * f.RadiusChange
	f.Working = append(f.Working, step("Seams that are off by %v all along leave it flat: %v ÷ sin(%v) = %v in the radius, %v across",
		r.SeamError, r.SeamError, mean/2, Unrounded(f.RadiusChange), Unrounded(f.AcrossChange)))
}

// mend says what would close the ring.
func (r FlatnessRequest) mend(f *FlatnessResult) {
	n := measure.Angle(f.Blades)
	mean := f.Covered / n
	if f.Blades%4 == 0 && r.Turn == FullTurn {
		f.QuarterMiss = f.Miss / 4
	}
	if f.Lie == LiesFlat {
		return
	}
	if mean >= leastAngle {
		f.Closing = closings(float64(r.Turn/mean), r.Turn)
	}
	if own := (Closing{f.Blades, r.Turn / n}); own.Angle <= widestBlade && !slices.Contains(f.Closing, own) {
		f.Closing = append(f.Closing, own)
	}
	if seams := r.seams(f.Blades); seams > 0 {
		f.PerSeam = f.Miss / measure.Angle(seams)
		if half := f.PerSeam / 2; r.Length > 0 && math.Abs(float64(half)) < 45 {
			f.SeamAtWide = scaled(r.Length, math.Tan(half.Radians()))
			f.Working = append(f.Working, r.seamStep(*f, seams))
		}
	}
}

// seamStep shows what each seam would have to do.
func (r FlatnessRequest) seamStep(f FlatnessResult, seams int) Step {
	atWide := max(f.SeamAtWide, -f.SeamAtWide)
	if r.System == measure.Imperial {
		atWide = atWide.RoundNearest(measure.Inch / 64)
	}
	if f.Miss > 0 {
		return step("%v too many ÷ %v seams is %v a seam: each %v deeper at the wide end", f.Miss, seams, f.PerSeam, atWide)
	}
	return step("%v missing ÷ %v seams is %v a seam: each %v shallower at the wide end", -f.Miss, seams, -f.PerSeam, atWide)
}
