// Package calc is the arithmetic of the trade. Each topic is one plain
// function: a request struct in, a result struct with its working out. Results
// name their units by their types, say how they were rounded, and never depend
// on the system a person measures in beyond the step they are rounded to.
//
// A request that cannot be met gives a [*LimitError]; there is no input or
// output here, no clock, no reading of text and no state, so every function is
// safe for concurrent use.
package calc

import (
	"math"

	"counterhand/calc/measure"
)

// Conventions are the habits that sums of the trade rest on: how wide fabric
// is, how deep a seam, and the steps to which results are rounded. They are
// part of every request, since each can be changed by the person who asks.
// Source of the values: the shop's own defaults, see the README.
type Conventions struct {
	System       measure.System // decides between the handbooks' additions and exact ones, see [Conventions.HandbookTriangles]
	UsableWidth  measure.Length // of fabric between the selvages
	WideBacking  measure.Length // usable width of wide backing fabric
	Seam         measure.Length // seam allowance
	StraightJoin measure.Length // what a straight join of two strips takes in length, ¼ in of each
	CutStep      measure.Length // cut sizes go up to this
	CutSlack     measure.Length // an overhang below this is dropped before going up
	TemplateStep measure.Length // templates and diameters go to the nearest of this
	LimitStep    measure.Length // lengths that a strip, a block or a bed limits go down to this
	BuyStep      measure.Length // cloth to buy goes up to this
	CoverStep    measure.Length // a cover circle goes up to this
	GroundStep   measure.Length // a background square, or a square to be cut up, goes up to this
	Cuts         ReadyCuts      // the shop's own, where they do not follow the usable width
}

// ImperialConventions are the defaults for work in inches.
func ImperialConventions() Conventions {
	return Conventions{
		System:       measure.Imperial,
		UsableWidth:  40 * measure.Inch,
		WideBacking:  106 * measure.Inch,
		Seam:         measure.Inch / 4,
		StraightJoin: measure.Inch / 2,
		CutStep:      measure.Inch / 8,
		CutSlack:     measure.Inch / 64,
		TemplateStep: measure.Inch / 16,
		LimitStep:    measure.Inch / 8,
		BuyStep:      measure.Yard / 8,
		CoverStep:    measure.Inch / 4,
		GroundStep:   measure.Inch / 2,
	}
}

// MetricConventions are the same habits for work in centimetres: equal fabric
// and seams, rounded to metric steps.
func MetricConventions() Conventions {
	c := ImperialConventions()
	c.System = measure.Metric
	c.CutStep = measure.Millimetre
	c.CutSlack = 0
	c.TemplateStep = measure.Millimetre
	c.LimitStep = measure.Millimetre
	c.BuyStep = measure.Metre / 10
	c.CoverStep = measure.Centimetre / 2
	c.GroundStep = measure.Centimetre
	return c
}

// HandbookTriangles tells whether triangles take the handbooks' ⅞ in and
// 1¼ in (with ¼ in seams, in inches) or the exact s(2+√2) and 2s(1+√2).
func (c Conventions) HandbookTriangles() bool {
	return c.System == measure.Imperial && c.Seam == measure.Inch/4
}

// HalfSquareAllowance is what a square that is cut once from corner to corner
// has beyond the short side of its two finished triangles: ⅞ in, or exactly
// s(2+√2). Source: https://karencombs.com/page.php?ID=31; geometry.
func (c Conventions) HalfSquareAllowance() measure.Length {
	if c.HandbookTriangles() {
		return 7 * measure.Inch / 8
	}
	return measure.Length(math.Round(float64(c.Seam) * (2 + sqrt2)))
}

// QuarterSquareAllowance is what a square that is cut twice from corner to
// corner has beyond the long side of its four finished triangles: 1¼ in, or
// exactly 2s(1+√2). Sources as for [Conventions.HalfSquareAllowance].
func (c Conventions) QuarterSquareAllowance() measure.Length {
	if c.HandbookTriangles() {
		return 5 * measure.Inch / 4
	}
	return measure.Length(math.Round(float64(c.Seam) * 2 * (1 + sqrt2)))
}

// hair is what a result of floating-point geometry may miss a whole step by
// before it counts as beyond it: ten nanometres, far above the error of the
// sums and far below anything that can be cut.
const hair = 10 * measure.Nanometre

// CutUp rounds an exact cut size up to the ruler, dropping an overhang below
// the slack. Exact sizes on the step stay as they are.
func (c Conventions) CutUp(exact measure.Length) measure.Length {
	return (exact - max(c.CutSlack-1, hair)).RoundUp(c.CutStep)
}

// LimitDown rounds a length that something limits down to the ruler.
func (c Conventions) LimitDown(exact measure.Length) measure.Length {
	return (exact + hair).RoundDown(c.LimitStep)
}

// Template rounds a template's size or a diameter to the nearest step.
func (c Conventions) Template(exact measure.Length) measure.Length {
	return exact.RoundNearest(c.TemplateStep)
}

// BuyUp rounds a need of cloth up to what a shop cuts.
func (c Conventions) BuyUp(need measure.Length) measure.Cloth {
	return measure.Cloth((need - hair).RoundUp(c.BuyStep))
}

// fits counts how many pieces of a length lie end to end in a space, up to
// what any machine's int holds.
func fits(space, piece measure.Length) int {
	if piece <= 0 || space < piece {
		return 0
	}
	return int(min(space/piece, math.MaxInt32))
}

// ceilDiv gives n/d rounded up, for counts of things that come whole.
func ceilDiv(n, d int) int { return (n + d - 1) / d }

// inchesOf gives exact lengths to the functions of package math.
func inchesOf(l measure.Length) float64 { return l.Inches() }

// sqrt2 is the diagonal of a unit square.
const sqrt2 = math.Sqrt2
