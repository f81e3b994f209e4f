package calc

import (
	"math"

	"counterhand/calc/measure"
)

// PatchCloth is the fabric that square patches of one kind are cut from, strips
// across the fabric first. It has no strips where a patch is wider than the
// fabric, or where nobody said how many patches there are.
type PatchCloth struct {
	YardageWay
	Buy           measure.Cloth
	OneFewerShort int // patches that one strip fewer would be short of
}

// patchCloth lays squares on strips of their own width.
func (c Conventions) patchCloth(side measure.Length, n int) PatchCloth {
	return c.stripCloth(side, side, n)
}

// stripCloth lays pieces that take some length of a strip of some width.
func (c Conventions) stripCloth(along, width measure.Length, n int) PatchCloth {
	p := PatchCloth{YardageWay: YardageWay{Across: along, PerStrip: fits(c.UsableWidth+hair, along), StripWidth: width}}
	if p.PerStrip == 0 {
		return p
	}
	p.Strips = ceilDiv(n, p.PerStrip)
	p.Length = measure.Length(p.Strips) * width
	p.Buy = c.BuyUp(p.Length)
	p.OneFewerShort = max(0, n-(p.Strips-1)*p.PerStrip)
	return p
}

// withSeams gives a finished length with a seam at either end, unrounded.
func (c Conventions) withSeams(finished measure.Length) measure.Length { return finished + 2*c.Seam }

// roundedStep makes a line of working that ends in a length and in what it was
// rounded to: "= 3⅞ in", "= 5.45 in, up to 5½ in".
func roundedStep(exact, result measure.Length, format string, args ...any) Step {
	way := ", up to %v"
	switch {
	case exact-hair <= result && result <= exact+hair:
		return step(format+" = %v", append(args, result)...)
	case result < exact:
		way = ", down to %v"
	}
	return step(format+" = %v"+way, append(args, Unrounded(exact), result)...)
}

// nearStep makes a line of working that ends in a length to the nearest step.
func nearStep(exact, result measure.Length, format string, args ...any) Step {
	if exact-hair <= result && result <= exact+hair {
		return step(format+" = %v", append(args, result)...)
	}
	return step(format+" = %v, which is %v to the nearest mark", append(args, Unrounded(exact), result)...)
}

// exactTriangles gives the conventions without the handbooks' rounding of
// triangles, which is generous by 1/47 and 1/23 in.
func (c Conventions) exactTriangles() Conventions {
	c.System = measure.Metric
	return c
}

// root2 gives l·√2 to the nanometre.
func root2(l measure.Length) measure.Length { return measure.Length(math.Round(float64(l) * sqrt2)) }

// overRoot2 gives l/√2 to the nanometre.
func overRoot2(l measure.Length) measure.Length {
	return measure.Length(math.Round(float64(l) / sqrt2))
}

// trimRoom is what is added to a square whose triangles are trimmed to size
// after sewing: 1⅛ in beyond the finished size instead of ⅞, 1½ instead of 1¼.
// Source: north-hampshire-quilters.org.uk, half and quarter square triangles.
const trimRoom = measure.Inch / 4
