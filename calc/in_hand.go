package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// ClothCheck tells whether the fabric in hand is enough. Where none was given
// it is the zero value.
type ClothCheck struct {
	Given, Enough      bool
	Have, Spare, Short measure.Length
}

// checkCloth compares the fabric in hand with the exact need, which may be less
// than what a shop would cut.
func checkCloth(have measure.Cloth, need measure.Length) ClothCheck {
	if have <= 0 {
		return ClothCheck{}
	}
	h := measure.Length(have)
	return ClothCheck{Given: true, Enough: h >= need, Have: h, Spare: max(0, h-need), Short: max(0, need-h)}
}

// CountCheck tells whether what is in hand is enough in number. Where nothing
// was given it is the zero value.
type CountCheck struct {
	Given, Enough      bool
	Have, Spare, Short int
}

// checkCount compares a count in hand with the need.
func checkCount(have, need int) CountCheck {
	if have <= 0 {
		return CountCheck{}
	}
	return CountCheck{Given: true, Enough: have >= need, Have: have, Spare: max(0, have-need), Short: max(0, need-have)}
}

// wantSize refuses a size with a side that cannot be cut. The input is the name
// of the thing, whose sides are its width and its length.
func wantSize(input string, z measure.Size) error {
	return cmp.Or(wantLength(input+"_width", z.Width), wantLength(input+"_length", z.Length))
}

// wantHave refuses what nobody can have in hand; nothing means not said.
func wantHave(input string, n int) error {
	if n == 0 {
		return nil
	}
	return wantCount(input, n)
}

// wantCloth refuses fabric that nobody can have in hand; none means not said.
func wantCloth(have measure.Cloth) error { return wantSpare("fabric_in_hand", measure.Length(have)) }
