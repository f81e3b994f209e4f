package calc

import (
	"cmp"
	"math"
	"math/big"

	"counterhand/calc/measure"
)

// Rate is a price for a unit of area in millionths, fine enough for parts of a
// cent for a square inch: two cents are 20 000.
type Rate int64

// maxRate is the highest rate that is accepted from anybody.
const maxRate Rate = 1000_000_000

// RateFromFloat gives a rate to the nearest millionth: 0.02 is two cents.
func RateFromFloat(v float64) (Rate, error) {
	if !(v > 0 && v <= float64(maxRate)/1e6) {
		return 0, limit("rate", step("A rate of %v cannot be reckoned with.", v), step("More than nothing and up to 1000 works."))
	}
	return Rate(math.Round(v * 1e6)), nil
}

// QuiltingPriceRequest asks what quilting comes to by area.
type QuiltingPriceRequest struct {
	Conventions
	Quilt measure.Size
	Rate  Rate
	Per   measure.Length // side of the square that the rate is for, an inch for a square inch
	Least Money          // charge whatever the size, 0 for none
}

// QuiltingPriceResult gives the area, in squares of the rate, and the price.
type QuiltingPriceResult struct {
	Area    float64
	Price   Money // to the nearest hundredth
	IsLeast bool  // the least charge is more than the area comes to
	Working []Step
}

// QuiltingPrice is width times length times the rate, rounded once at the end.
func QuiltingPrice(r QuiltingPriceRequest) (QuiltingPriceResult, error) {
	err := cmp.Or(r.check(), wantSize("quilt", r.Quilt), wantLength("area_unit", r.Per), wantMoney("least_charge", r.Least))
	if err == nil && (r.Rate <= 0 || r.Rate > maxRate) {
		err = limit("rate", step("The rate has to be more than nothing and up to 1000."), Step{})
	}
	if err != nil {
		return QuiltingPriceResult{}, err
	}
	area := new(big.Rat).Mul(big.NewRat(int64(r.Quilt.Width), int64(r.Per)), big.NewRat(int64(r.Quilt.Length), int64(r.Per)))
	const millionthsInHundredth = 10_000
	price, ok := nearest(new(big.Rat).Mul(area, big.NewRat(int64(r.Rate), millionthsInHundredth)))
	if !ok {
		return QuiltingPriceResult{}, limit("rate", step("That price is beyond all reckoning."), Step{})
	}
	q := QuiltingPriceResult{Price: max(price, r.Least), IsLeast: r.Least > price}
	q.Area, _ = area.Float64()
	q.Working = []Step{
		step("%v × %v is an area of %v.", r.Quilt.Width, r.Quilt.Length, q.Area),
		step("%v × %v = %v.", q.Area, float64(r.Rate)/1e6, price),
	}
	if q.IsLeast {
		q.Working = append(q.Working, step("The least charge is %v.", r.Least))
	}
	return q, nil
}

// nearest is the nearest whole amount, halves up, and whether it can be held.
func nearest(r *big.Rat) (Money, bool) {
	twice := new(big.Int).Lsh(r.Num(), 1)
	n := twice.Add(twice, r.Denom()).Div(twice, new(big.Int).Lsh(r.Denom(), 1))
	return Money(n.Int64()), n.IsInt64()
}
