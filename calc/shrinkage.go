package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// ShrinkageRequest asks what to buy of fabric that shrinks.
type ShrinkageRequest struct {
	Conventions
	Need    measure.Cloth // after washing
	Percent float64       // that is lost in the wash, to the hundredth
	Have    measure.Cloth // unwashed in hand, 0 where not said
}

// ShrinkageResult gives the fabric before washing.
type ShrinkageResult struct {
	Before  measure.Length // exact, up to the nanometre
	Buy     measure.Cloth
	After   measure.Length // what the fabric bought washes to
	Cloth   ClothCheck
	Working []Step
}

// Shrinkage gives need/(1 − p), not need·(1 + p), which falls short.
// Source: geometry; https://www.quiltingboard.com/6723231-post13.html for the
// usual 3 to 5 percent.
func Shrinkage(r ShrinkageRequest) (ShrinkageResult, error) {
	err := cmp.Or(r.check(), wantLength("need", measure.Length(r.Need)), wantCloth(r.Have))
	if err == nil && !(r.Percent >= 0 && r.Percent <= mostShrinkage) {
		err = limit("shrinkage", step("Fabric that shrinks by %v percent leaves too little to reckon with.", r.Percent),
			step("From 0 to %v percent works.", mostShrinkage))
	}
	if err != nil {
		return ShrinkageResult{}, err
	}
	left := measure.Length(hundred - hundredths(r.Percent))
	before := mulDivUp(measure.Length(r.Need), hundred, left)
	s := ShrinkageResult{Before: before, Buy: r.BuyUp(before), Cloth: checkCloth(r.Have, before)}
	s.After = mulDivDown(measure.Length(s.Buy), left, hundred)
	s.Working = []Step{
		step("Of each length %v percent is left after washing.", 100-r.Percent),
		step("%v ÷ %v × 100 = %v: buy %v.", measure.Length(r.Need), 100-r.Percent, Unrounded(s.Before), s.Buy),
	}
	return s, nil
}

// mostShrinkage is the percentage beyond which no fabric is worth buying.
const mostShrinkage = 90
