package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// BladeLayout is how blades lie on their strip.
type BladeLayout uint8

// The layouts. The zero value leaves the choice to [WedgeStrips].
const (
	AnyLayout    BladeLayout = iota // across where the strip is as wide as the blade is long, else along
	AlongStrip                      // blades end to end, lengthwise
	HeadToTail                      // blades across the strip, every other one turned round
	AllOneWay                       // blades across the strip, all the same way up, for one-way prints
	layoutsCount                    // how many there are
)

// WedgeStripsRequest asks for the strips that a number of blades is cut from.
type WedgeStripsRequest struct {
	Conventions
	Blades      int
	Length      measure.Length // of a blade as cut
	Narrow      measure.Length // end; 0 where it is not known, which is enough along a strip
	Angle       measure.Angle  // 0 where it is not known
	Wide        measure.Length // end; 0 where Narrow and Angle give it
	Strip       measure.Length // width; 0 for the narrowest that works
	StripLength measure.Length // 0 for fabric cut across its usable width
	Layout      BladeLayout
	OneWay      bool          // the print has a right way up, so no blade may be turned round
	HaveStrips  int           // strips in hand; 0 where nobody asks
	HaveCloth   measure.Cloth // fabric in hand; 0 where nobody asks
}

// WedgeStripsResult is the strips to cut and what else was worth knowing.
type WedgeStripsResult struct {
	Layout         BladeLayout
	BladesPerStrip int
	Strips         int
	StripWidth     measure.Length
	Buy            measure.Cloth
	Length         measure.Length  // of fabric that the strips take, exactly
	SpareBlades    int             // that the last strip still gives
	OneFewerShort  int             // blades that one strip fewer would be short of
	WiderCloth     []StripsOnCloth // fewer strips on wider cloth, where that saves one
	Other          *OtherLayout    // the other way to lay the blades, where the shape is known
	Hand           CountCheck      // strips in hand, where they were given
	Cloth          ClothCheck      // fabric in hand, where it was given
	HandBlades     int             // that the strips or the fabric in hand give
	Working        []Step

	shape WedgeStripsRequest // with every size known, for the outlines
}

// StripsOnCloth is how many strips do on cloth of another usable width.
type StripsOnCloth struct {
	Usable measure.Length
	Strips int
}

// OtherLayout is what the blades take when they lie another way.
type OtherLayout struct {
	Layout         BladeLayout
	BladesPerStrip int
	Strips         int
	StripWidth     measure.Length
	Buy            measure.Cloth
}

// WedgeStrips counts the strips for blades. Along a strip it holds
// floor(strip length ÷ blade length); across one as wide as the blade is long,
// k blades head to tail take k·(wide + narrow)/2 + (wide − narrow)/2.
//
// Source: eight 5 in blades to a 40 in strip (luannsloosethreads.blogspot.com,
// March 2011); head to tail is geometry.
//
// It gives a [*LimitError] for blades that are too wide or too long for the
// strip.
func WedgeStrips(r WedgeStripsRequest) (WedgeStripsResult, error) {
	if r.StripLength == 0 {
		r.StripLength = r.UsableWidth
	}
	if err := r.check(); err != nil {
		return WedgeStripsResult{}, err
	}
	if r.Wide == 0 && r.Narrow > 0 && r.Angle > 0 {
		r.Wide = r.Narrow + newWedge(r.Angle).width(r.Length)
	}
	layout := r.chosenLayout()
	main, err := r.lay(layout, r.Strip)
	if err != nil {
		return WedgeStripsResult{}, err
	}
	return r.result(main), nil
}

func (r WedgeStripsRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantCount("blades", r.Blades), wantLength("blade_length", r.Length),
		wantSpare("narrow_end", r.Narrow), wantSpare("wide_end", r.Wide), wantSpare("strip_width", r.Strip),
		wantLength("strip_length", r.StripLength), wantHave("strips", r.HaveStrips), wantCloth(r.HaveCloth))
	if r.Angle != 0 {
		err = cmp.Or(err, wantAngle("angle", r.Angle, widestBlade))
	}
	if r.Wide > 0 && r.Wide < r.Narrow {
		err = cmp.Or(err, limit("wide_end", step("The wide end, %v, has to be at least as wide as the narrow end, %v.", r.Wide, r.Narrow), Step{}))
	}
	if r.Layout >= layoutsCount {
		err = cmp.Or(err, limit("layout", step("Blades lie along the strip or across it."), Step{}))
	}
	return err
}

// chosenLayout decides where the request leaves it open.
func (r WedgeStripsRequest) chosenLayout() BladeLayout {
	switch {
	case r.Layout == HeadToTail && r.OneWay:
		return AllOneWay
	case r.Layout != AnyLayout:
		return r.Layout
	case r.Wide == 0 || !fitsAcross(r.Length, r.Strip):
		return AlongStrip
	}
	return r.across()
}

// across is the way to lay blades across a strip that the print allows.
func (r WedgeStripsRequest) across() BladeLayout {
	if r.OneWay {
		return AllOneWay
	}
	return HeadToTail
}

// lay lays the blades one way on strips of a width, 0 for the narrowest.
func (r WedgeStripsRequest) lay(layout BladeLayout, strip measure.Length) (OtherLayout, error) {
	if strip == 0 {
		strip = r.CutUp(r.Length)
		if layout == AlongStrip {
			strip = r.CutUp(r.Wide)
		}
	}
	if err := r.roomy(layout, strip); err != nil {
		return OtherLayout{}, err
	}
	l := OtherLayout{Layout: layout, StripWidth: strip, BladesPerStrip: r.perStrip(layout, r.StripLength)}
	if l.BladesPerStrip == 0 {
		return OtherLayout{}, limit("blade_length",
			step("Not one blade %v long fits on a strip of %v.", r.Length, r.StripLength),
			step("Blades can be %v long at most.", r.LimitDown(r.StripLength)))
	}
	l.Strips = ceilDiv(r.Blades, l.BladesPerStrip)
	l.Buy = r.BuyUp(measure.Length(l.Strips) * strip)
	return l, nil
}

// roomy refuses a strip too narrow for the blades.
func (r WedgeStripsRequest) roomy(layout BladeLayout, strip measure.Length) error {
	if layout == AlongStrip {
		if strip == 0 {
			return wantLength("strip_width", strip)
		}
		if fitsAcross(r.Wide, strip) {
			return nil
		}
		reason := step("Blades that are %v at the wide end are too wide for a strip of %v.", r.Template(r.Wide), strip)
		if r.Angle > 0 && r.Narrow > 0 {
			if longest := r.LimitDown(newWedge(r.Angle).fromApex(strip - r.Narrow)); longest > 0 {
				return limit("blade_length", reason, step("From that strip they can be %v long; for %v the strip has to be %v.",
					longest, r.Length, r.CutUp(r.Wide)))
			}
		}
		return limit("strip_width", reason, step("The strip has to be %v wide.", r.CutUp(r.Wide)))
	}
	if r.Wide == 0 {
		return limit("narrow_end", step("To lay blades across a strip both of their ends have to be known."), Step{})
	}
	if !fitsAcross(r.Length, strip) {
		return limit("blade_length", step("Blades %v long do not fit across a strip of %v.", r.Length, strip),
			step("Across it they can be %v long at most.", r.LimitDown(strip)))
	}
	return nil
}

// perStrip counts the blades that lie on a strip of a length. The ends are
// exact where a ruler gave them and else within a nanometre, so a hair decides
// nothing that could be cut.
func (r WedgeStripsRequest) perStrip(layout BladeLayout, length measure.Length) int {
	narrow, space := r.Narrow, length+hair
	switch layout {
	case AlongStrip:
		return fits(length, r.Length)
	case AllOneWay:
		return fits(space, r.Wide)
	}
	return fits(2*space-(r.Wide-narrow), r.Wide+narrow)
}

func (r WedgeStripsRequest) result(main OtherLayout) WedgeStripsResult {
	w := WedgeStripsResult{
		Layout: main.Layout, BladesPerStrip: main.BladesPerStrip, Strips: main.Strips,
		StripWidth: main.StripWidth, Buy: main.Buy,
		Length:        measure.Length(main.Strips) * main.StripWidth,
		SpareBlades:   main.Strips*main.BladesPerStrip - r.Blades,
		OneFewerShort: r.Blades - (main.Strips-1)*main.BladesPerStrip,
		shape:         r,
	}
	if r.StripLength == r.UsableWidth {
		w.WiderCloth = onWiderCloth(r.Conventions, main.Strips, func(usable measure.Length) int {
			return ceilDiv(r.Blades, r.perStrip(main.Layout, usable))
		})
	}
	w.Other = r.other(main)
	r.inHand(&w)
	w.Working = r.working(w)
	return w
}

// other lays the blades the other way, on strips of the width that needs.
func (r WedgeStripsRequest) other(main OtherLayout) *OtherLayout {
	layout := AlongStrip
	if main.Layout == AlongStrip {
		layout = r.across()
	}
	if r.Wide == 0 {
		return nil
	}
	o, err := r.lay(layout, 0)
	if err != nil {
		return nil
	}
	return &o
}

// inHand compares the strips or the fabric that somebody has with the need.
func (r WedgeStripsRequest) inHand(w *WedgeStripsResult) {
	w.Hand = checkCount(r.HaveStrips, w.Strips)
	w.Cloth = checkCloth(r.HaveCloth, w.Length)
	strips := r.HaveStrips + fits(measure.Length(r.HaveCloth), w.StripWidth)
	w.HandBlades = strips * w.BladesPerStrip
}

// onWiderCloth counts strips on cloth of the wider usable widths that are sold,
// and keeps those that need fewer.
func onWiderCloth(c Conventions, strips int, on func(usable measure.Length) int) []StripsOnCloth {
	var fewer []StripsOnCloth
	for _, usable := range []measure.Length{42 * measure.Inch, 44 * measure.Inch} {
		if usable <= c.UsableWidth {
			continue
		}
		if n := on(usable); n < strips {
			fewer = append(fewer, StripsOnCloth{usable, n})
			strips = n
		}
	}
	return fewer
}

func (r WedgeStripsRequest) working(w WedgeStripsResult) []Step {
	var steps []Step
	switch w.Layout {
	case AlongStrip:
		steps = append(steps, step("Blades along the strip: %v ÷ %v gives %v whole ones.", r.StripLength, r.Length, w.BladesPerStrip))
	case AllOneWay:
		steps = append(steps, step("Blades side by side, all one way up: %v ÷ %v gives %v whole ones.", r.StripLength, Unrounded(r.Wide), w.BladesPerStrip))
	default:
		k := measure.Length(w.BladesPerStrip)
		steps = append(steps, step("Head to tail %v blades take %v × (%v + %v) ÷ 2 + (%v − %v) ÷ 2 = %v of %v.",
			w.BladesPerStrip, w.BladesPerStrip, Unrounded(r.Wide), r.Narrow, Unrounded(r.Wide), r.Narrow,
			Unrounded((k*(r.Wide+r.Narrow)+r.Wide-r.Narrow)/2), r.StripLength))
	}
	return append(steps,
		step("%v blades ÷ %v a strip, up to whole strips: %v", r.Blades, w.BladesPerStrip, w.Strips),
		step("%v × %v = %v of fabric: %v", w.Strips, w.StripWidth, w.Length, w.Buy))
}
