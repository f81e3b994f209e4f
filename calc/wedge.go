package calc

import (
	"math"

	"counterhand/calc/measure"
)

// wedge is the geometry of a blade's angle. Distances along a blade are
// measured on its centre line from the apex, the point where its cut edges
// would meet; widths are straight across.
type wedge struct{ sin, cos, tan float64 } // of half the angle

func newWedge(a measure.Angle) wedge {
	sin, cos := math.Sincos(a.Radians() / 2)
	return wedge{sin, cos, sin / cos}
}

// width gives the width across at a distance from the apex: 2·r·tan(angle/2).
func (w wedge) width(fromApex measure.Length) measure.Length {
	return measure.Inches(2 * fromApex.Inches() * w.tan)
}

// fromApex gives the distance from the apex at which the blade has a width.
func (w wedge) fromApex(width measure.Length) measure.Length {
	return measure.Inches(width.Inches() / (2 * w.tan))
}

// apexShift is how far seams on both edges move the apex out:
// seam ÷ sin(angle/2). Every radius of the sewn ring is that much shorter than
// on the cut blade.
func (w wedge) apexShift(seam measure.Length) measure.Length {
	return measure.Inches(seam.Inches() / w.sin)
}

// widthLoss is what seams on both edges take off every width:
// 2 × seam ÷ cos(angle/2).
func (w wedge) widthLoss(seam measure.Length) measure.Length {
	return measure.Inches(2 * seam.Inches() / w.cos)
}

// unseen is the overhang that cut sizes drop and that nobody cuts to.
const unseen = measure.Inch / 64

// fitsAcross tells whether a piece is no wider than its strip, whichever system
// it was measured in.
func fitsAcross(piece, strip measure.Length) bool { return piece < strip+unseen }

// WedgeAngle gives the angle of a template from its two widths and its length:
// 2·atan((wide − narrow) ÷ (2·length)). The length has to be more than nothing.
func WedgeAngle(narrow, wide, length measure.Length) measure.Angle {
	half := math.Atan2((wide-narrow).Inches()/2, length.Inches())
	return measure.Angle(2 * half * 180 / math.Pi)
}
