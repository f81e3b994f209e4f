package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// What a binding is taken to be until somebody says otherwise.
// Source: the shop's own defaults; 2½ in and 10 in as in
// https://christaquilts.com/quilty-math/.
const (
	DefaultBindingStrip = 5 * measure.Inch / 2 // cut width, for double fold
	DefaultBindingExtra = 10 * measure.Inch    // for corners and the closing join
)

// BindingRequest asks what strips bind an edge.
type BindingRequest struct {
	Conventions
	Edge       Edge
	StripWidth measure.Length // as cut
	Extra      measure.Length // beyond the edge, for corners and the closing join
	Join       Join
	HaveStrips int           // strips in hand, 0 where not said
	Have       measure.Cloth // fabric in hand, 0 where not said
}

// BindingResult says what to cut and what to buy. Strips are counted up and
// cloth is bought up; every length is exact.
type BindingResult struct {
	Perimeter    measure.Length
	LengthNeeded measure.Length // the perimeter and the extra
	Strips       int
	StripWidth   measure.Length
	Need         measure.Length // of fabric, off the bolt
	Buy          measure.Cloth

	Covers         measure.Length // what the strips make once joined
	Spare          measure.Length // what they make beyond the need
	OneFewerCovers measure.Length // what one strip fewer makes; 0 for a single strip
	OneFewerShort  measure.Length // and what that lacks
	OneFewerWidth  measure.Length // usable width that makes one fewer enough, up to a half inch; 0 for a single strip

	InHand      CountCheck     // where strips in hand were given
	InHandMakes measure.Length // what those make once joined
	InHandShort measure.Length // and what that lacks, 0 where it is enough
	Cloth       ClothCheck     // where fabric in hand was given
	Working     []Step
}

// Binding reckons the strips for an edge: the smallest n with
// n·U − (n−1)·loss at least the length needed, U the usable width and loss what
// a join takes.
// Source: https://christaquilts.com/quilty-math/ for the extra;
// https://www.quiltingboard.com, thread t109880, for the loss.
func Binding(r BindingRequest) (BindingResult, error) {
	if err := r.check(); err != nil {
		return BindingResult{}, err
	}
	loss := r.loss(r.Join, r.StripWidth)
	needed := r.Edge.Perimeter + r.Extra
	n, err := joinedStrips(needed, r.UsableWidth, loss)
	if err != nil {
		return BindingResult{}, err
	}
	need := measure.Length(n) * r.StripWidth
	b := BindingResult{
		Perimeter:    r.Edge.Perimeter,
		LengthNeeded: needed,
		Strips:       n,
		StripWidth:   r.StripWidth,
		Need:         need,
		Buy:          r.BuyUp(need),
		Covers:       joinedLength(n, r.UsableWidth, loss),
		InHand:       checkCount(r.HaveStrips, n),
		InHandMakes:  joinedLength(r.HaveStrips, r.UsableWidth, loss),
		Cloth:        checkCloth(r.Have, need),
	}
	b.Spare = b.Covers - needed
	if n > 1 {
		b.OneFewerCovers = joinedLength(n-1, r.UsableWidth, loss)
		b.OneFewerShort = needed - b.OneFewerCovers
		b.OneFewerWidth = widthForStrips(n-1, needed, loss).RoundUp(r.GroundStep)
	}
	if b.InHand.Given {
		b.InHandShort = max(0, needed-b.InHandMakes)
	}
	b.Working = r.working(b, loss)
	return b, nil
}

// check refuses what cannot be bound.
func (r BindingRequest) check() error {
	return cmp.Or(r.Conventions.check(), r.Edge.check(),
		wantLength("strip_width", r.StripWidth), wantSpare("extra", r.Extra),
		wantHave("strips", r.HaveStrips), wantCloth(r.Have))
}

func (r BindingRequest) working(b BindingResult, loss measure.Length) []Step {
	lines := []Step{
		r.Edge.working,
		step("With %v for corners and the closing join: %v.", r.Extra, Unrounded(b.LengthNeeded)),
	}
	if b.Strips == 1 {
		lines = append(lines, step("1 strip of %v is enough.", r.UsableWidth))
	} else {
		lines = append(lines,
			step("%v of %v less %v of %v = %v.", counted(b.Strips, "strip"), r.UsableWidth, counted(b.Strips-1, "join"), loss, b.Covers),
			step("%v would make %v, %v short.", counted(b.Strips-1, "strip"), b.OneFewerCovers, Unrounded(b.OneFewerShort)))
	}
	return append(lines, step("%v × %v = %v of fabric: buy %v.", b.Strips, b.StripWidth, b.Need, b.Buy))
}

// widthForStrips is the usable width of fabric with which n strips make a
// length, up to the nanometre.
func widthForStrips(n int, needed, loss measure.Length) measure.Length {
	count := measure.Length(n)
	return (needed + (count-1)*loss + count - 1) / count
}

// BindingReachRequest asks how large a quilt the strips in hand bind.
type BindingReachRequest struct {
	Conventions
	Strips            int
	StripWidth, Extra measure.Length
	Join              Join
}

// BindingReachResult says how far strips in hand go.
type BindingReachResult struct {
	Covers    measure.Length // what they make once joined
	Perimeter measure.Length // of the largest quilt they bind
	Square    measure.Length // side of the largest square one, down to the ruler
	Working   []Step
}

// BindingReach turns [Binding] round: the maxLength edge that the strips bind.
func BindingReach(r BindingReachRequest) (BindingReachResult, error) {
	err := cmp.Or(r.check(), wantCount("strips", r.Strips),
		wantLength("strip_width", r.StripWidth), wantSpare("extra", r.Extra))
	if err != nil {
		return BindingReachResult{}, err
	}
	loss := r.loss(r.Join, r.StripWidth)
	b := BindingReachResult{Covers: joinedLength(r.Strips, r.UsableWidth, loss)}
	b.Perimeter = b.Covers - r.Extra
	if b.Perimeter <= 0 {
		return BindingReachResult{}, limit("strips",
			step("Joined, they make %v, and corners and the closing join alone want %v.", b.Covers, r.Extra),
			step("More strips, or a smaller extra, work."))
	}
	b.Square = (b.Perimeter / 4).RoundDown(r.LimitStep)
	b.Working = []Step{
		step("%v of %v less %v of %v = %v.", counted(r.Strips, "strip"), r.UsableWidth, counted(r.Strips-1, "join"), loss, b.Covers),
		step("Less %v for corners and the closing join: %v round the quilt.", r.Extra, b.Perimeter),
		step("A square with that edge: %v ÷ 4 = %v a side.", b.Perimeter, b.Square),
	}
	return b, nil
}

// Fold is how a binding strip is folded before it goes round the edge.
type Fold string

// The two folds. A double one is pressed in half along its length first.
const (
	DoubleFold Fold = "double"
	SingleFold Fold = "single"
)

// BindingWidthRequest asks how wide to cut strips for a finished binding.
type BindingWidthRequest struct {
	Conventions
	Fold     Fold
	Finished measure.Length // as it shows on the front
	Seam     measure.Length // it is sewn on with; as deep as the binding where it is to be filled
	Slack    measure.Length // for the loft of the batting and for covering the stitches
}

// DefaultBindingSlack is the slack for the loft of the batting and for covering the
// stitches at the back, 1/16 in for each.
const DefaultBindingSlack = measure.Inch / 8

// BindingWidth gives the strip to cut, up to the ruler: in double fold
// 2·(seam + 2·finished + slack); in single fold 2·(seam + finished) + slack,
// with the edge turned under as deep as the seam.
// Source: with the seam as deep as the binding and no slack the double one is
// the six times of https://learnhowtoquilt.com (binding, how wide); with a ¼ in
// seam and ¼ in of slack it is the 4f + 1 of https://alongcamequilting.com; with
// no slack the 4f + ½ of https://fmquilters.org; the single one is that of
// https://mixedupcreativeacademy.com (binding width).
func BindingWidth(r BindingWidthRequest) (measure.Length, error) {
	err := cmp.Or(r.check(), wantLength("finished_width", r.Finished),
		wantSpare("seam_allowance", r.Seam), wantSpare("slack", r.Slack))
	if err != nil {
		return 0, err
	}
	if r.Fold == SingleFold {
		return r.CutUp(2*r.Seam + 2*r.Finished + r.Slack), nil
	}
	return r.CutUp(2 * (r.Seam + 2*r.Finished + r.Slack)), nil
}
