package calc

import (
	"math"

	"counterhand/calc/measure"
)

// BladeOutlines are the shapes of one blade. The origin is the middle of the
// sewn ring and the blade's centre line points up, so that turning the sewn
// shape by whole angles of the blade makes the ring.
type BladeOutlines struct {
	Cut  Outline // the raw edge
	Sewn Outline // as it shows in the ring, before the cover circle goes on
}

// Blade gives the shapes of the ring's blade.
func (r RingResult) Blade() BladeOutlines {
	e := r.Exact
	near, far := (e.NarrowFromApex - e.ApexShift).Inches(), (e.WideFromApex - e.ApexShift).Inches()
	narrow, wide := e.NarrowEnd.Inches()/2, e.WideEnd.Inches()/2
	return BladeOutlines{
		Cut:  Outline{{-narrow, near}, {narrow, near}, {wide, far}, {-wide, far}},
		Sewn: append(r.sewnFoot(), r.sewnEnd()...),
	}
}

// sewnFoot gives the two corners at the narrow end.
func (r RingResult) sewnFoot() Outline {
	w := newWedge(r.Angle)
	y := r.Exact.OpeningRadius.Inches()
	return Outline{{-y * w.tan, y}, {y * w.tan, y}}
}

// sewnEnd gives the corners of the outer end, from right to left.
func (r RingResult) sewnEnd() Outline {
	w, e := newWedge(r.Angle), r.Exact
	radius := e.OuterRadius.Inches()
	switch r.End {
	case FoldedEnd:
		shoulder := radius - e.TipDepth.Inches()
		return Outline{{shoulder * w.tan, shoulder}, {0, radius}, {-shoulder * w.tan, shoulder}}
	case RoundedEnd:
		half := r.Angle.Radians() / 2
		return arc(Point{0, e.CapCentre.Inches()}, e.CapRadius.Inches(), -half, math.Pi+half)
	}
	return Outline{{radius * w.tan, radius}, {-radius * w.tan, radius}}
}

// Outlines gives every sewn blade in its place around the origin. The first
// blade's right seam lies on the x axis, and the others follow
// counter-clockwise, so that a part ring stands on a straight edge.
func (r RingResult) Outlines() []Outline {
	sewn := r.Blade().Sewn
	all := make([]Outline, r.Blades)
	for i := range all {
		all[i] = sewn.Turned(r.Angle*measure.Angle(float64(i)+0.5) - 90)
	}
	return all
}

// Cover gives the cover circle as it finishes, around the origin.
func (r RingResult) Cover() Outline { return circle(r.CoverCircle.Inches() / 2) }

// StripOutlines gives the blades of one strip as they are cut, within the
// strip's own outline from the origin to StripLength and StripWidth. It gives
// none where the shape of the blade was not known.
func (w WedgeStripsResult) StripOutlines() (strip Outline, blades []Outline) {
	shape := w.shape
	strip = rectangle(shape.StripLength.Inches(), w.StripWidth.Inches())
	if shape.Wide == 0 {
		return strip, nil
	}
	n := min(w.BladesPerStrip, shape.Blades)
	for i := range n {
		blades = append(blades, shape.onStrip(w.Layout, i))
	}
	return strip, blades
}

// onStrip gives the i-th blade of a strip.
func (r WedgeStripsRequest) onStrip(layout BladeLayout, i int) Outline {
	length, narrow, wide := r.Length.Inches(), r.Narrow.Inches(), r.Wide.Inches()
	upright := Outline{{(wide - narrow) / 2, 0}, {(wide + narrow) / 2, 0}, {wide, length}, {0, length}}
	k := float64(i)
	switch {
	case layout == AlongStrip:
		lying := Outline{{0, (wide - narrow) / 2}, {length, 0}, {length, wide}, {0, (wide + narrow) / 2}}
		return lying.Moved(k*length, 0)
	case layout == AllOneWay:
		return upright.Moved(k*wide, 0)
	case i%2 == 1:
		return upright.Turned(180).Moved(wide+k*(wide+narrow)/2, length)
	}
	return upright.Moved(k*(wide+narrow)/2, 0)
}
