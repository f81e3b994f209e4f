package calc

import "counterhand/calc/measure"

// The cuts that shops sell ready made, as what is usable of them; width across
// the fabric first. Quarters and eighths follow the usable width.
// Source: http://www.atimetosewquilts.com/measurements.htm; eighths are common
// practice, no source. A metric fat quarter is half a metre each way.

// ReadyCuts are the sizes of ready cuts in a shop that measures its own. The zero
// value of each means the usual one, which follows the usable width.
type ReadyCuts struct{ FatQuarter, LongQuarter, FatEighth measure.Size }

// FatQuarter is half a yard of half the fabric's width, or half a metre square.
func (c Conventions) FatQuarter() measure.Size {
	if own := c.Cuts.FatQuarter; own != (measure.Size{}) {
		return own
	}
	if c.System == measure.Metric {
		return measure.Size{Width: 50 * measure.Centimetre, Length: 50 * measure.Centimetre}
	}
	return measure.Size{Width: c.UsableWidth / 2, Length: measure.Yard / 2}
}

// LongQuarter is a quarter of a yard of the fabric's whole width.
func (c Conventions) LongQuarter() measure.Size {
	if own := c.Cuts.LongQuarter; own != (measure.Size{}) {
		return own
	}
	return measure.Size{Width: c.UsableWidth, Length: measure.Yard / 4}
}

// FatEighth is a quarter of a yard of half the fabric's width.
func (c Conventions) FatEighth() measure.Size {
	if own := c.Cuts.FatEighth; own != (measure.Size{}) {
		return own
	}
	return measure.Size{Width: c.UsableWidth / 2, Length: measure.Yard / 4}
}

// PrecutStrip is the strip that packs are made of, 2½ in across the fabric.
func (c Conventions) PrecutStrip() measure.Size {
	return measure.Size{Width: c.UsableWidth, Length: 5 * measure.Inch / 2}
}

// PrecutSquare is a ready-cut square; 5 in and 10 in are sold.
func PrecutSquare(side measure.Length) measure.Size {
	return measure.Size{Width: side, Length: side}
}

// OffTheBolt is a length of fabric in its usable width.
func (c Conventions) OffTheBolt(cloth measure.Cloth) measure.Size {
	return measure.Size{Width: c.UsableWidth, Length: measure.Length(cloth)}
}
