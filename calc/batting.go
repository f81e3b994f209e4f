package calc

import (
	"cmp"
	"slices"

	"counterhand/calc/measure"
)

// DefaultBattingOverage is what batting has beyond the quilt on each side.
// Source: https://cranberryquiltingco.com (60 x 70 in takes 68 x 78 in).
const DefaultBattingOverage = 4 * measure.Inch

// BattingPackage is a size that batting is sold in ready cut.
type BattingPackage struct {
	Name string
	Size measure.Size
}

// BattingPackages lists the sizes that are published, by area. Some names are
// sold in two sizes, so the package's own print decides.
// Source: https://project12quilts.blogspot.com/2012/01/quilting-basics-standard-quilt-sizes.html
// and http://www.honeybegood.com/blogs/resources/12653533-common-quilt-and-batting-sizes.
func BattingPackages() []BattingPackage {
	size := func(w, l measure.Length) measure.Size {
		return measure.Size{Width: w * measure.Inch, Length: l * measure.Inch}
	}
	return []BattingPackage{
		{"craft", size(34, 45)},
		{"crib", size(45, 60)},
		{"twin", size(72, 90)},
		{"full", size(81, 96)},
		{"full", size(84, 96)},
		{"queen", size(90, 108)},
		{"king", size(120, 120)},
		{"king", size(124, 120)},
	}
}

// BattingRequest asks for the batting in a quilt.
type BattingRequest struct {
	Conventions
	Quilt   measure.Size
	Overage measure.Length // on each side
	Have    measure.Size   // piece in hand, zero where not said
}

// BattingResult says how large a piece the quilt takes.
type BattingResult struct {
	BattingWidth, BattingLength measure.Length
	Packages                    []BattingPackage // that hold it either way round, the smallest first; may be empty

	InHand BattingCheck // where a piece in hand was given
	Need   measure.Length
	Buy    measure.Cloth // off a roll of the wide backing's width; 0 where the roll is too narrow

	Working []Step
}

// BattingCheck tells whether a piece in hand is enough, turned as it lies best.
type BattingCheck struct {
	Given, Enough           bool
	ShortWidth, ShortLength measure.Length // by how much it is short, 0 where it is not
	Overage                 measure.Length // what it leaves on each side at the tightest; below 0 it does not cover the quilt
}

// Batting gives the quilt and its overage, and the packages that hold it.
func Batting(r BattingRequest) (BattingResult, error) {
	err := cmp.Or(r.check(), wantSize("quilt", r.Quilt), wantSpare("overage", r.Overage))
	if err == nil && r.Have != (measure.Size{}) {
		err = wantSize("have", r.Have)
	}
	if err != nil {
		return BattingResult{}, err
	}
	need := measure.Size{Width: r.Quilt.Width + 2*r.Overage, Length: r.Quilt.Length + 2*r.Overage}
	b := BattingResult{BattingWidth: need.Width, BattingLength: need.Length}
	for _, p := range BattingPackages() {
		if holds(p.Size, need) {
			b.Packages = append(b.Packages, p)
		}
	}
	slices.SortStableFunc(b.Packages, func(p, q BattingPackage) int { return cmp.Compare(area(p.Size), area(q.Size)) })
	b.Need, b.Buy = r.offTheRoll(need)
	b.InHand = r.checkPiece(need)
	b.Working = []Step{step("%v and %v on each side: %v.", r.Quilt, r.Overage, need)}
	if len(b.Packages) > 0 {
		b.Working = append(b.Working, step("The smallest package that holds it is the %v, %v.", b.Packages[0].Name, b.Packages[0].Size))
	}
	return b, nil
}

// offTheRoll gives the shorter length that a roll of the wide backing's width
// gives the batting in, in one piece.
func (r BattingRequest) offTheRoll(need measure.Size) (measure.Length, measure.Cloth) {
	short, long := min(need.Width, need.Length), max(need.Width, need.Length)
	switch {
	case long <= r.WideBacking:
		return short, r.BuyUp(short)
	case short <= r.WideBacking:
		return long, r.BuyUp(long)
	}
	return 0, 0
}

// checkPiece compares the piece in hand with the need, sides in order of length.
func (r BattingRequest) checkPiece(need measure.Size) BattingCheck {
	if r.Have == (measure.Size{}) {
		return BattingCheck{}
	}
	have := r.Have
	if (have.Width > have.Length) != (need.Width > need.Length) {
		have = turned(have)
	}
	return BattingCheck{
		Given:       true,
		Enough:      holds(have, need),
		ShortWidth:  max(0, need.Width-have.Width),
		ShortLength: max(0, need.Length-have.Length),
		Overage:     min(have.Width-r.Quilt.Width, have.Length-r.Quilt.Length) / 2,
	}
}

// holds tells whether a piece fits in a size either way round.
func holds(size, piece measure.Size) bool {
	return max(size.Width, size.Length) >= max(piece.Width, piece.Length) &&
		min(size.Width, size.Length) >= min(piece.Width, piece.Length)
}

// turned is the size by its other side.
func turned(z measure.Size) measure.Size { return measure.Size{Width: z.Length, Length: z.Width} }
