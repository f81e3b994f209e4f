package calc

import "counterhand/calc/measure"

// NestedRingsRequest asks for two rings around one centre: an inner one that
// is sewn on top of an outer one and covers its opening. The outer ring may
// leave its narrow end open; it is then the narrowest that still lies under
// the inner ring by Overlap.
type NestedRingsRequest struct {
	Inner, Outer RingRequest
	Overlap      measure.Length // of the inner ring over the outer one, all round
}

// NestedRingsResult is the two rings and how they lie on each other.
type NestedRingsResult struct {
	Inner, Outer RingResult
	Overlap      measure.Length // where it is least; below 0 where a gap shows
	Covers       bool           // whether the overlap is what was asked for
	Working      []Step
}

// NestedRings fits two rings of different blades around one centre. The inner
// ring covers a circle as wide as its narrowest place: the valleys between
// folded or rounded tips, the flats of plain and turned ends. The outer ring's
// opening reaches out to its corners. Source: geometry.
func NestedRings(r NestedRingsRequest) (NestedRingsResult, error) {
	none := NestedRingsResult{}
	if err := wantSpare("overlap", r.Overlap); err != nil {
		return none, err
	}
	inner, err := Ring(r.Inner)
	if err != nil {
		return none, err
	}
	covered := inner.Exact.coveredRadius()
	if r.Outer.Narrow == 0 && r.Outer.Opening == 0 && (r.Outer.Wide == 0 || r.Outer.Length == 0) {
		if r.Outer.Opening, err = openingUnder(r, covered); err != nil {
			return none, err
		}
	}
	outer, err := Ring(r.Outer)
	if err != nil {
		return none, err
	}
	n := NestedRingsResult{Inner: inner, Outer: outer, Overlap: covered - outer.Exact.OpeningCornerRadius}
	n.Covers = n.Overlap >= r.Overlap-hair
	n.Working = []Step{
		step("The inner ring covers %v from the middle where it is narrowest.", Unrounded(covered)),
		step("The outer ring's opening reaches %v from the middle at its corners.", Unrounded(outer.Exact.OpeningCornerRadius)),
		step("Overlap: %v − %v = %v", Unrounded(covered), Unrounded(outer.Exact.OpeningCornerRadius), Unrounded(n.Overlap)),
	}
	return n, nil
}

// coveredRadius is the radius of the largest circle that the sewn ring and its
// cover hide.
func (e RingExact) coveredRadius() measure.Length {
	if e.ValleyRadius > 0 {
		return e.ValleyRadius
	}
	return e.OuterRadius
}

// openingUnder gives the outer ring's opening that the inner ring covers.
func openingUnder(r NestedRingsRequest, covered measure.Length) (measure.Length, error) {
	if covered <= r.Overlap {
		return 0, limit("overlap", step("The inner ring reaches only %v from the middle, which leaves no overlap of %v.", covered, r.Overlap), Step{})
	}
	count, err := WedgeCount(WedgeCountRequest{Angle: r.Outer.Angle, Blades: r.Outer.Blades, Turn: r.Outer.Turn})
	if err != nil {
		return 0, err
	}
	return 2 * scaled(covered-r.Overlap, newWedge(count.Turn/measure.Angle(count.Blades)).cos), nil
}
