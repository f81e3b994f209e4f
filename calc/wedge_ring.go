package calc

import (
	"cmp"
	"math"

	"counterhand/calc/measure"
)

// What a ring is reckoned with where nobody says otherwise.
// Source of the values: the shop's own defaults, see the README.
const (
	DefaultNarrowEnd    = measure.Inch * 7 / 8 // of a wedge template, as cut
	DefaultCoverOverlap = measure.Inch / 4     // of the circle over the blades, all round
	DefaultCoverTurning = measure.Inch / 4     // turned under around the circle
	DefaultRingMargin   = 2 * measure.Inch     // of background around the ring
)

// BladeEnd is how the outer end of a blade is finished.
type BladeEnd uint8

// The ends of blades.
const (
	PlainEnd   BladeEnd = iota // left as cut; a turning is said and not subtracted
	FoldedEnd                  // folded lengthwise, sewn across and turned to a right-angled point
	RoundedEnd                 // an arc that touches both seam lines, turned under
	TurnedEnd                  // flat, turned under
)

// RingRequest asks for a ring of equal blades, or for a part of one. Of the
// sizes, enough have to be given for the blade to be known: its length or the
// ring wanted across, and its narrow end, its wide end or the opening wanted.
type RingRequest struct {
	Conventions
	Blades int           // 0 where Angle gives it
	Angle  measure.Angle // of a blade; 0 where Blades gives it
	Turn   measure.Angle // what the blades fill; 0 means a full circle

	Length measure.Length // of a blade as cut
	Narrow measure.Length // end of a blade as cut
	Wide   measure.Length // end of a blade as cut
	Strip  measure.Length // that the blades are cut from lengthwise; 0 where nobody asks whether they fit

	Across  measure.Length // backwards: the ring wanted, sewn
	Opening measure.Length // backwards: the opening wanted, sewn

	End     BladeEnd
	Turning measure.Length // turned under at the outer end, and around the cover circle
	Overlap measure.Length // of the cover circle over the blades
	Margin  measure.Length // of background on each side
}

// RingResult is a ring with its blade. Template sizes and diameters are
// rounded once, to the nearest step; Exact holds what they were rounded from.
type RingResult struct {
	Blades           int
	Angle            measure.Angle
	Turn             measure.Angle
	End              BladeEnd
	BladeLength      measure.Length
	WideEnd          measure.Length
	NarrowEnd        measure.Length
	RingAcross       measure.Length // on the blades' centre lines, to the tips where they are folded
	OpeningAcross    measure.Length // on the blades' centre lines
	CoverCircle      measure.Length // as it finishes
	CoverCut         measure.Length
	BackgroundSquare measure.Length // as cut; the longer side where Background is not square
	Background       measure.Size   // as cut; a part ring lies with one straight edge along the bottom
	// BackgroundOversize is an inch more than BackgroundSquare, for cloth that is
	// trimmed after the ring is sewn on. It is common practice, no source.
	BackgroundOversize measure.Length
	WidthsMiss         measure.Angle  // where both ends were given: by how much a ring of blades cut by these widths would be off
	MinNarrow          measure.Length // the narrow end has to be wider than this, or the opening closes up
	Sections           []Section      // equal ones to sew first, the best first
	Exact              RingExact
	Working            []Step
}

// RingExact is the geometry of a ring without rounding, see [RingResult].
// FromApex distances lie on the cut blade's centre line; radii are sewn ones.
type RingExact struct {
	BladeLength, NarrowEnd, WideEnd    measure.Length
	NarrowFromApex, WideFromApex       measure.Length
	ApexShift                          measure.Length // by which the seams bring every radius in
	WidthLoss                          measure.Length // that the seams take off every width
	OuterRadius                        measure.Length // on a centre line
	CornerRadius                       measure.Length // to the outer corners of plain and turned ends
	ValleyRadius                       measure.Length // where neighbours part, for folded and rounded ends
	TipDepth                           measure.Length // from the shoulders to the tip along the centre line
	CapRadius, CapCentre               measure.Length // of a rounded end: its arc, and the arc's centre from the middle
	OpeningRadius, OpeningCornerRadius measure.Length
	CoverCircle                        measure.Length
}

// Ring works out a ring of wedges: blades of 360° ÷ n, whose seams move every
// radius in by seam ÷ sin(angle/2).
//
// Sources: count and angle as in [WedgeCount]; a folded tip is a right angle
// whatever the blade's, and loses one seam in length (tourmalinethymequilts.com,
// more blade basics); everything else is geometry.
//
// It gives a [*LimitError] for blades that do not close, a narrow end that the
// seams close up, a blade too short for its end, and a blade too wide for its
// strip.
func Ring(r RingRequest) (RingResult, error) {
	if r.Turn == 0 {
		r.Turn = FullTurn
	}
	if err := r.check(); err != nil {
		return RingResult{}, err
	}
	shape, count, err := ringShape(r)
	if err != nil {
		return RingResult{}, err
	}
	if err := shape.fits(r.Strip); err != nil {
		return RingResult{}, err
	}
	return shape.result(count), nil
}

// check refuses inputs that are out of range by themselves.
func (r RingRequest) check() error {
	err := r.Conventions.check()
	for _, in := range []struct {
		name string
		l    measure.Length
	}{
		{"blade_length", r.Length}, {"narrow_end", r.Narrow}, {"wide_end", r.Wide}, {"strip_width", r.Strip},
		{"ring_across", r.Across}, {"opening_across", r.Opening},
		{"turning", r.Turning}, {"overlap", r.Overlap}, {"margin", r.Margin},
	} {
		err = cmp.Or(err, wantSpare(in.name, in.l))
	}
	if r.End > TurnedEnd {
		err = cmp.Or(err, limit("end", step("A blade's end is plain, folded, rounded or turned under."), Step{}))
	}
	return err
}

// bladeShape is a blade of a ring: its request with the sizes all known.
type bladeShape struct {
	RingRequest
	given RingRequest // before the sizes were all known
	wedge
	inner, outer measure.Length // of the cut blade, from the apex
	shift        measure.Length
	widthsMiss   measure.Angle
	backwards    []Step // how wanted sizes led to the blade's
}

// ringShape works out the blade from whatever sizes are given.
func ringShape(r RingRequest) (bladeShape, WedgeCountResult, error) {
	none := func(err error) (bladeShape, WedgeCountResult, error) { return bladeShape{}, WedgeCountResult{}, err }
	count, err := WedgeCount(WedgeCountRequest{Angle: r.Angle, Blades: r.Blades, Turn: r.Turn})
	if err != nil {
		return none(err)
	}
	if err := closes(count.Blades, count.Angle, r.Turn); err != nil {
		return none(err)
	}
	given := r
	r.Blades, r.Angle = count.Blades, r.Turn/measure.Angle(count.Blades)
	b := bladeShape{RingRequest: r, given: given, wedge: newWedge(r.Angle)}
	b.shift = b.apexShift(r.Seam)
	if b.shift > maxLength {
		return none(limit("blades", step("A ring of %v blades would be more than %v across.", r.Blades, maxLength), Step{}))
	}
	if err := b.solve(); err != nil {
		return none(err)
	}
	if b.outer > 10*maxLength {
		return none(limit("blades", step("A ring of %v blades would be more than %v across.", r.Blades, maxLength), Step{}))
	}
	return b, count, b.possible()
}

// solve fills in the narrow end, the length and the wide end.
func (b *bladeShape) solve() error {
	switch {
	case b.Narrow > 0:
		b.inner = b.fromApex(b.Narrow)
	case b.Opening > 0:
		b.inner = b.Opening/2 + b.shift
		b.Narrow = b.width(b.inner)
		b.backwards = append(b.backwards, step("For an opening of %v: 2 × (%v ÷ 2 + %v) × tan(%v) = %v at the narrow end",
			b.Opening, b.Opening, Unrounded(b.shift), b.Angle/2, Unrounded(b.Narrow)))
	case b.Wide > 0 && b.Length > 0:
		b.Narrow = b.Wide - b.width(b.Length)
		b.inner = b.fromApex(b.Narrow)
		if b.Narrow <= 0 {
			return b.noNarrow()
		}
	default:
		return wantLength("narrow_end", b.Narrow)
	}
	switch {
	case b.Length > 0:
		b.outer = b.inner + b.Length
	case b.Across > 0:
		b.outer = b.Across/2 + b.shift + b.endLoss()
		b.Length = b.outer - b.inner
		b.backwards = append(b.backwards, b.lengthStep())
	case b.Wide > 0:
		b.outer = b.fromApex(b.Wide)
		b.Length = b.outer - b.inner
	}
	if b.Length <= 0 {
		return b.noLength()
	}
	return b.solveWide()
}

// lengthStep shows how a ring wanted across gave the blade's length.
func (b *bladeShape) lengthStep() Step {
	if loss := b.endLoss(); loss > 0 {
		return step("For %v across: %v ÷ 2 + %v for the seams + %v for the outer end − %v to the narrow end = a blade of %v",
			b.Across, b.Across, Unrounded(b.shift), loss, Unrounded(b.inner), Unrounded(b.Length))
	}
	return step("For %v across: %v ÷ 2 + %v for the seams − %v to the narrow end = a blade of %v",
		b.Across, b.Across, Unrounded(b.shift), Unrounded(b.inner), Unrounded(b.Length))
}

// solveWide works the wide end out and compares it with one that was given,
// which may be off by what a ruler does not show.
func (b *bladeShape) solveWide() error {
	wide := b.Narrow + b.width(b.Length)
	if b.Wide == 0 {
		b.Wide = wide
		return nil
	}
	angle := WedgeAngle(b.Narrow, b.Wide, b.Length)
	if max(wide-b.Wide, b.Wide-wide) > b.TemplateStep {
		return limit("wide_end",
			step("Blades %v long with ends of %v and %v have %v each, which makes %v with %v of them.",
				b.Length, b.Narrow, b.Wide, angle, angle*measure.Angle(b.Blades), b.Blades),
			step("A wide end of %v closes %v.", b.Template(wide), b.Turn))
	}
	if miss := missOf(b.Blades, angle, b.Turn); math.Abs(miss) > float64(flatEnough) {
		b.widthsMiss = measure.Angle(miss)
	}
	b.Wide = wide
	return nil
}

// noNarrow says that a blade comes to a point before its length is reached.
func (b *bladeShape) noNarrow() error {
	reason := step("Blades of %v with a wide end of %v come to a point before they are %v long.", b.Angle, b.Wide, b.Length)
	longest := b.LimitDown(b.fromApex(b.Wide-b.widthLoss(b.Seam)) - 3*hair)
	if longest <= 0 {
		return limit("wide_end", reason, Step{})
	}
	return limit("blade_length", reason, step("They can be %v long at most.", longest))
}

// noLength says why a blade has no length left.
func (b *bladeShape) noLength() error {
	if b.Across == 0 && b.Wide == 0 {
		return wantLength("blade_length", b.Length)
	}
	if b.Across > 0 {
		return limit("ring_across",
			step("A ring of %v blades with a narrow end of %v has an opening of %v, so it cannot be %v across.",
				b.Blades, b.Narrow, b.Template(2*(b.inner-b.shift)), b.Across), Step{})
	}
	return limit("wide_end", step("The wide end, %v, has to be wider than the narrow end, %v.", b.Wide, b.Narrow), Step{})
}

// endLoss is what finishing the outer end takes off the blade's length.
func (b *bladeShape) endLoss() measure.Length {
	switch b.End {
	case FoldedEnd:
		return b.Seam
	case RoundedEnd, TurnedEnd:
		return b.Turning
	}
	return 0
}

// possible refuses a blade whose opening closes up or that has no room for
// its end.
func (b *bladeShape) possible() error {
	if least := b.widthLoss(b.Seam); b.Narrow <= least+hair {
		return limit("narrow_end",
			step("The two seams take %v off the narrow end, so at %v the opening closes up.", least, b.Narrow),
			step("It works from a narrow end of %v.", least.RoundDown(b.TemplateStep)+b.TemplateStep))
	}
	if least := b.leastLength(); b.Length <= least+hair {
		return limit("blade_length",
			step("A blade of %v is too short for its outer end.", b.Length),
			step("It works from %v.", least.RoundDown(b.TemplateStep)+b.TemplateStep))
	}
	return nil
}

// leastLength is what a blade has to be longer than, so that its shoulders lie
// beyond its narrow end.
func (b *bladeShape) leastLength() measure.Length {
	opening := b.inner - b.shift
	switch b.End {
	case FoldedEnd: // the shoulders lie at R ÷ (1 + tan)
		return b.Seam + measure.Inches(opening.Inches()*b.tan)
	case RoundedEnd: // the arc leaves the edges at R·cos² ÷ (1 + sin) = R·(1 − sin)
		return b.Turning + measure.Inches(opening.Inches()*b.sin/(1-b.sin))
	case TurnedEnd:
		return b.Turning
	}
	return 0
}

// fits refuses a blade that is wider than the strip it is cut from lengthwise.
func (b *bladeShape) fits(strip measure.Length) error {
	if strip == 0 || fitsAcross(b.Wide, strip) || fitsAcross(b.Length, strip) {
		return nil
	}
	longest := b.LimitDown(b.fromApex(strip) - b.inner)
	reason := step("Blades of %v that are %v long are %v at the wide end, too wide for a strip of %v.",
		b.Angle, b.Length, b.Template(b.Wide), strip)
	if longest <= 0 {
		return limit("blade_length", reason, step("They need a strip of %v.", b.CutUp(b.Wide)))
	}
	return limit("blade_length", reason,
		step("From that strip they can be %v long; for %v the strip has to be %v.", longest, b.Length, b.CutUp(b.Wide)))
}

// exact gives the ring's geometry.
func (b *bladeShape) exact() RingExact {
	radius := b.outer - b.shift - b.endLoss()
	opening := b.inner - b.shift
	e := RingExact{
		BladeLength: b.Length, NarrowEnd: b.Narrow, WideEnd: b.Wide,
		NarrowFromApex: b.inner, WideFromApex: b.outer,
		ApexShift: b.shift, WidthLoss: b.widthLoss(b.Seam),
		OuterRadius:         radius,
		OpeningRadius:       opening,
		OpeningCornerRadius: scaled(opening, 1/b.cos),
	}
	switch b.End {
	case FoldedEnd:
		e.ValleyRadius = scaled(radius, 1/(b.cos+b.sin))
		e.TipDepth = scaled(radius, b.tan/(1+b.tan))
	case RoundedEnd:
		e.CapRadius = scaled(radius, b.sin/(1+b.sin))
		e.CapCentre = radius - e.CapRadius
		e.ValleyRadius = scaled(radius, b.cos/(1+b.sin))
		e.TipDepth = radius - scaled(e.ValleyRadius, b.cos)
	default:
		e.CornerRadius = scaled(radius, 1/b.cos)
	}
	e.CoverCircle = 2 * (e.OpeningCornerRadius + b.Overlap)
	return e
}

// scaled multiplies a length by a factor of geometry.
func scaled(l measure.Length, by float64) measure.Length { return measure.Inches(l.Inches() * by) }

// result rounds the geometry and shows the sums.
func (b *bladeShape) result(count WedgeCountResult) RingResult {
	e := b.exact()
	out := RingResult{
		Blades: b.Blades, Angle: b.Angle, Turn: b.Turn, End: b.End,
		BladeLength:   cmp.Or(b.given.Length, b.Template(e.BladeLength)),
		WideEnd:       b.Template(e.WideEnd),
		NarrowEnd:     cmp.Or(b.given.Narrow, b.Template(e.NarrowEnd)),
		RingAcross:    b.Template(2 * e.OuterRadius),
		OpeningAcross: b.Template(2 * e.OpeningRadius),
		CoverCircle:   (e.CoverCircle - hair).RoundUp(b.CoverStep),
		MinNarrow:     e.WidthLoss,
		WidthsMiss:    b.widthsMiss,
		Sections:      Sections(b.Blades, b.Turn),
		Exact:         e,
	}
	out.CoverCut = b.CutUp(out.CoverCircle + 2*b.Turning)
	out.Background = b.background(e)
	out.BackgroundSquare = max(out.Background.Width, out.Background.Length)
	out.BackgroundOversize = out.BackgroundSquare + measure.Inch
	out.Working = append(b.bladeWorking(count, e), b.ringWorking(e, out)...)
	return out
}

// background is the cloth behind the ring: its extent, a margin on each side
// and two seams. A part ring lies with one straight edge along the bottom.
func (b *bladeShape) background(e RingExact) measure.Size {
	wide, high := 2*e.OuterRadius, 2*e.OuterRadius
	reach := max(e.OuterRadius, e.CornerRadius)
	sin, cos := math.Sincos(b.Turn.Radians())
	switch {
	case b.Turn <= QuarterTurn:
		wide, high = reach, scaled(reach, sin)
	case b.Turn <= HalfTurn:
		wide, high = reach+scaled(reach, -cos), reach
	case b.Turn <= 270:
		wide, high = 2*reach, reach+scaled(reach, -sin)
	}
	up := func(l measure.Length) measure.Length {
		return (l + 2*b.Margin + 2*b.Seam - hair).RoundUp(b.GroundStep)
	}
	return measure.Size{Width: up(wide), Length: up(high)}
}

func (b *bladeShape) bladeWorking(count WedgeCountResult, e RingExact) []Step {
	half := b.Angle / 2
	steps := append([]Step{}, count.Working...)
	if b.Angle != count.Angle {
		steps = append(steps, step("Reckoned with %v ÷ %v = %v.", b.Turn, b.Blades, b.Angle))
	}
	steps = append(steps, b.backwards...)
	if b.widthsMiss != 0 {
		steps = append(steps, step("Cut by the angle: %v blades cut to these widths would be off by %v.", b.Blades, b.widthsMiss))
	}
	return append(steps,
		nearStep(e.WideEnd, b.Template(e.WideEnd), "Wide end: %v + 2 × %v × tan(%v)", Unrounded(e.NarrowEnd), Unrounded(e.BladeLength), half),
		step("The cut edges would meet %v ÷ (2 × tan(%v)) = %v beyond the narrow end.", Unrounded(e.NarrowEnd), half, Unrounded(e.NarrowFromApex)),
		step("The seams bring every radius in by %v ÷ sin(%v) = %v.", Unrounded(b.Seam), half, Unrounded(e.ApexShift)))
}

func (b *bladeShape) ringWorking(e RingExact, out RingResult) []Step {
	from, shift, corners := Unrounded(e.NarrowFromApex), Unrounded(e.ApexShift), 2*e.OpeningCornerRadius
	across := nearStep(2*e.OuterRadius, out.RingAcross, "Across: 2 × (%v + %v − %v)", from, Unrounded(e.BladeLength), shift)
	if loss := b.endLoss(); loss > 0 {
		across = nearStep(2*e.OuterRadius, out.RingAcross, "Across: 2 × (%v + %v − %v − %v for the outer end)",
			from, Unrounded(e.BladeLength), shift, loss)
	}
	steps := append([]Step{across}, b.endWorking(e)...)
	return append(steps,
		nearStep(2*e.OpeningRadius, out.OpeningAcross, "Opening: 2 × (%v − %v)", from, shift),
		step("To its corners: %v ÷ cos(%v) = %v", Unrounded(2*e.OpeningRadius), b.Angle/2, Unrounded(corners)),
		roundedStep(e.CoverCircle, out.CoverCircle, "Cover circle: %v + 2 × %v of overlap", Unrounded(corners), Unrounded(b.Overlap)),
		roundedStep(out.CoverCircle+2*b.Turning, out.CoverCut, "Cut it %v + 2 × %v", out.CoverCircle, Unrounded(b.Turning)),
		step("Background: %v, 2 × %v of margin and two seams of %v, up to %v", out.RingAcross, Unrounded(b.Margin), Unrounded(b.Seam), out.Background))
}

// endWorking shows where folded and rounded ends part.
func (b *bladeShape) endWorking(e RingExact) []Step {
	half, across := b.Angle/2, Unrounded(2*e.OuterRadius)
	switch b.End {
	case FoldedEnd:
		return []Step{step("In the valleys between the tips: %v ÷ (cos(%v) + sin(%v)) = %v across; a tip stands %v beyond its shoulders.",
			across, half, half, Unrounded(2*e.ValleyRadius), Unrounded(e.TipDepth))}
	case RoundedEnd:
		return []Step{step("Each end is an arc with a radius of %v × sin(%v) ÷ (1 + sin(%v)) = %v; in the valleys between them it is %v across.",
			Unrounded(e.OuterRadius), half, half, Unrounded(e.CapRadius), Unrounded(2*e.ValleyRadius))}
	}
	return nil
}
