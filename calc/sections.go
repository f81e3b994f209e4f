package calc

import (
	"slices"

	"counterhand/calc/measure"
)

// Section is a way of sewing a ring in equal parts before they are joined.
type Section struct {
	Count  int           // of sections
	Blades int           // in each
	Angle  measure.Angle // that each has to have, to be checked before joining
}

// Sections gives the ways to divide blades into equal sections of two blades
// or more. Quarters come first, since they can be laid against a square
// corner, then thirds, halves and whatever is left, the fewest sections first.
// Odd numbers that do not divide have none: they are sewn in pairs with one
// blade over.
//
// Source: pairs, fours, eights, halves (ikwilt.blogspot.com, plate with 16
// petals, 2011); the check of quarters is common practice, no source.
func Sections(blades int, turn measure.Angle) []Section {
	var all []Section
	for n := 2; n*2 <= blades; n++ {
		if blades%n == 0 {
			all = append(all, Section{n, blades / n, turn / measure.Angle(n)})
		}
	}
	rank := func(s Section) int {
		if s.Angle == QuarterTurn {
			return 0
		}
		if i := slices.Index([]int{4, 3, 2}, s.Count); i >= 0 {
			return 1 + i
		}
		return s.Count
	}
	slices.SortStableFunc(all, func(a, b Section) int { return rank(a) - rank(b) })
	return all
}
