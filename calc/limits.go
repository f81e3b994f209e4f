package calc

import (
	"cmp"
	"strings"

	"counterhand/calc/measure"
)

// The ranges that requests are accepted in, far beyond any quilt and narrow
// enough that no product of a length and a count overflows.
const (
	maxCount  = 1_000_000
	maxLength = 1000 * measure.Metre
)

// maxStep is the coarsest that anything is rounded to.
const maxStep = measure.Metre

// wantCount refuses a count below one or above a million.
func wantCount(input string, n int) error {
	what := "number of " + spoken(input)
	switch {
	case n < 1:
		return limit(input, step("The %v has to be 1 or more.", what), Step{})
	case n > maxCount:
		return limit(input, step("The %v can be %v at most.", what, maxCount), Step{})
	}
	return nil
}

// leastCut is the least that counts as a length of anything cut.
const leastCut = measure.Millimetre / 10

// wantLength refuses a length that is nothing, negative or beyond a kilometre.
func wantLength(input string, l measure.Length) error {
	if l < leastCut {
		return limit(input, step("The %v has to be more than nothing.", spoken(input)), Step{})
	}
	return wantSpare(input, l)
}

// wantSpare refuses a length that is negative or beyond a kilometre; none at
// all is fine, as for an overlap or a seam.
func wantSpare(input string, l measure.Length) error {
	switch {
	case l < 0:
		return limit(input, step("The %v cannot be less than nothing.", spoken(input)), Step{})
	case l > maxLength:
		return limit(input, step("The %v can be %v at most.", spoken(input), maxLength), Step{})
	}
	return nil
}

// leastAngle is the smallest angle that is accepted from anybody.
const leastAngle measure.Angle = 0.01

// wantAngle refuses an angle below the least or beyond the most.
func wantAngle(input string, a, most measure.Angle) error {
	if !(a >= leastAngle && a <= most) { // so that NaN is refused too
		return limit(input, step("The %v has to be at least %v and at most %v.", spoken(input), leastAngle, most), Step{})
	}
	return nil
}

// check refuses conventions that no sum can be done with.
func (c Conventions) check() error {
	err := cmp.Or(
		wantLength("usable_width", c.UsableWidth),
		wantLength("wide_backing", c.WideBacking),
		wantSpare("seam_allowance", c.Seam),
		wantSpare("cut_slack", c.CutSlack),
		wantSpare("straight_join", c.StraightJoin),
	)
	for _, s := range []measure.Length{c.CutStep, c.TemplateStep, c.LimitStep, c.BuyStep, c.CoverStep, c.GroundStep} {
		err = cmp.Or(err, wantLength("rounding_step", s))
		if err == nil && s > maxStep {
			err = limit("rounding_step", step("A rounding step can be %v at most.", maxStep), Step{})
		}
	}
	return err
}

// spoken turns an input's name in the contract into the trade's words.
func spoken(input string) string { return strings.ReplaceAll(input, "_", " ") }
