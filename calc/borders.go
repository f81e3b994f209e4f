package calc

import (
	"cmp"
	"fmt"
	"slices"

	"counterhand/calc/measure"
)

// DefaultMitreSpare is what a mitred border is cut longer at each end, beyond the
// border's own width. Practice runs from ½ in to 3 in; this is common practice,
// no source.
const DefaultMitreSpare = 2 * measure.Inch

// Corners says how the corners of a border are made.
type Corners string

// The corners. Butted borders have the sides put on first, then top and bottom
// across them; mitred ones meet on the diagonal; squared ones have a square of
// another fabric in each corner.
const (
	ButtedCorners  Corners = "butted"
	MitredCorners  Corners = "mitred"
	SquaredCorners Corners = "squares"
)

// BordersRequest asks for one border or several, from the inside out.
type BordersRequest struct {
	Conventions
	Quilt      measure.Size     // finished, before the borders
	Widths     []measure.Length // finished, from the inside out
	Corners    Corners
	Spare      measure.Length // at each end of a mitred border
	Join       Join           // of strips that are shorter than a side
	Lengthwise bool           // cut along the fabric, each in one piece
	Straighten measure.Length // kept for squaring up the fabric, once for each border
	Have       measure.Cloth  // of one fabric for all, in hand, 0 where not said
}

// Border says how one border is cut. Sizes are up to the ruler.
type Border struct {
	Width      measure.Length // finished
	SideCut    measure.Length // two of them
	TopCut     measure.Length // two of them
	StripWidth measure.Length
	Strips     int          // cut across the fabric; cut along it, the strips side by side
	Joined     bool         // strips are joined end to end, since a side is longer than one
	Corner     measure.Size // of the squares in the corners, where there are any
	Across     measure.Length
	Need       measure.Length // of fabric; Across of its width is used where it is cut along
	Buy        measure.Cloth

	OneFewerShort measure.Length // what one strip fewer lacks; 0 where strips are not joined
	OneFewerWidth measure.Length // usable width that makes one fewer enough, up to a half inch; likewise
}

// BordersResult has the borders from the inside out, and the quilt with them.
type BordersResult struct {
	Borders                 []Border
	QuiltWidth, QuiltLength measure.Length
	Need                    measure.Length // of one fabric for all of them
	Buy                     measure.Cloth
	Cloth                   ClothCheck // where fabric in hand was given
	Working                 []Step
}

// mostBorders is the number of borders beyond which a request is a mistake.
const mostBorders = 100

// Borders reckons each border on the quilt with those inside it. Butted: sides
// are the quilt's length and seams, top and bottom its width, two borders and
// seams. Mitred: each is its side, two borders and the spare at both ends.
// Squared: each is its side and seams.
// Source: https://www.allpeoplequilt.com (mitering borders);
// http://blog.missouriquiltco.com (how many yards: borders) for the strips.
func Borders(r BordersRequest) (BordersResult, error) {
	if err := r.check(); err != nil {
		return BordersResult{}, err
	}
	quilt := r.Quilt
	var result BordersResult
	for _, width := range r.Widths {
		b, err := r.border(quilt, width)
		if err != nil {
			return BordersResult{}, err
		}
		result.Working = append(result.Working, r.working(b, quilt)...)
		quilt = measure.Size{Width: quilt.Width + 2*width, Length: quilt.Length + 2*width}
		result.Working = append(result.Working, step("With it the quilt is %v.", quilt))
		result.Borders = append(result.Borders, b)
		result.Need += b.Need
	}
	result.QuiltWidth, result.QuiltLength = quilt.Width, quilt.Length
	result.Buy = r.BuyUp(result.Need)
	result.Cloth = checkCloth(r.Have, result.Need)
	return result, nil
}

func (r BordersRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantSize("quilt", r.Quilt), wantSpare("spare", r.Spare),
		wantSpare("straightening", r.Straighten), wantCloth(r.Have))
	if err == nil && (len(r.Widths) == 0 || len(r.Widths) > mostBorders) {
		err = limit("borders", step("%v borders cannot be reckoned.", len(r.Widths)), step("From 1 to %v work.", mostBorders))
	}
	for i, w := range r.Widths {
		if err == nil {
			err = wantLength("border_width", w)
		}
		if short := min(r.Quilt.Width, r.Quilt.Length); err == nil && w > 2*short {
			err = limit(fmt.Sprintf("border%d.width", i+1),
				step("A border of %v is more than twice as wide as the quilt's shorter side, %v.", w, short),
				step("Up to %v works.", 2*short))
		}
	}
	return err
}

// border reckons one border round a quilt.
func (r BordersRequest) border(quilt measure.Size, width measure.Length) (Border, error) {
	b := Border{Width: width, StripWidth: r.CutUp(width + 2*r.Seam)}
	switch r.Corners {
	case MitredCorners:
		b.SideCut = r.CutUp(quilt.Length + 2*width + 2*r.Spare)
		b.TopCut = r.CutUp(quilt.Width + 2*width + 2*r.Spare)
	case SquaredCorners:
		b.SideCut, b.TopCut = r.CutUp(quilt.Length+2*r.Seam), r.CutUp(quilt.Width+2*r.Seam)
		b.Corner = measure.Size{Width: b.StripWidth, Length: b.StripWidth}
	default:
		b.SideCut, b.TopCut = r.CutUp(quilt.Length+2*r.Seam), r.CutUp(quilt.Width+2*width+2*r.Seam)
	}
	if r.Lengthwise {
		return b, r.cutAlong(&b)
	}
	return b, r.cutAcross(&b)
}

// cutAcross counts strips across the fabric: joined end to end where a side is
// longer than one, else each side in one piece.
func (r BordersRequest) cutAcross(b *Border) error {
	b.Strips = wholeStrips(b.sides(), r.UsableWidth)
	if max(b.SideCut, b.TopCut) > r.UsableWidth {
		total, loss := 2*(b.SideCut+b.TopCut), r.loss(r.Join, b.StripWidth)
		var err error
		if b.Strips, err = joinedStrips(total, r.UsableWidth, loss); err != nil {
			return err
		}
		b.Joined = true
		b.OneFewerShort = total - joinedLength(b.Strips-1, r.UsableWidth, loss)
		b.OneFewerWidth = widthForStrips(b.Strips-1, total, loss).RoundUp(r.GroundStep)
	}
	b.Across = r.UsableWidth
	b.Need = measure.Length(b.Strips)*b.StripWidth + r.Straighten
	b.Buy = r.BuyUp(b.Need)
	return nil
}

// cutAlong lays the four sides along the fabric in as many columns as fit, the
// maxLength first and each in the shortest column.
// Source: common practice; the border lengthwise has no joins and stretches less.
func (r BordersRequest) cutAlong(b *Border) error {
	columns := min(4, fits(r.UsableWidth, b.StripWidth))
	if columns == 0 {
		return limit("border_width", step("A strip of %v does not fit in fabric of %v.", b.StripWidth, r.UsableWidth),
			step("Up to %v of finished border works.", r.UsableWidth-2*r.Seam))
	}
	length := make([]measure.Length, columns)
	for _, side := range b.sides() {
		length[slices.Index(length, slices.Min(length))] += side
	}
	b.Strips = columns
	b.Across = measure.Length(columns) * b.StripWidth
	b.Need = slices.Max(length) + r.Straighten
	b.Buy = r.BuyUp(b.Need)
	return nil
}

// sides lists the four sides as cut, the maxLength first.
func (b Border) sides() []measure.Length {
	long, short := max(b.SideCut, b.TopCut), min(b.SideCut, b.TopCut)
	return []measure.Length{long, long, short, short}
}

func (r BordersRequest) working(b Border, quilt measure.Size) []Step {
	lines := []Step{r.sidesWorking(b, quilt), step("Strip: %v and two seams of %v = %v.", b.Width, r.Seam, b.StripWidth)}
	switch {
	case r.Lengthwise:
		lines = append(lines, step("Cut along the fabric, %v side by side use %v of its width and %v of its length.",
			counted(b.Strips, "strip"), b.Across, b.Need))
	case b.Joined:
		total, loss := 2*(b.SideCut+b.TopCut), r.loss(r.Join, b.StripWidth)
		lines = append(lines,
			step("All round: 2 × %v + 2 × %v = %v.", b.SideCut, b.TopCut, total),
			step("%v of %v less %v of %v = %v.", counted(b.Strips, "strip"), r.UsableWidth, counted(b.Strips-1, "join"), loss,
				joinedLength(b.Strips, r.UsableWidth, loss)))
	default:
		lines = append(lines, step("%v of %v: the four sides fit without a join.", counted(b.Strips, "strip"), r.UsableWidth))
	}
	if r.Straighten > 0 {
		lines = append(lines, step("%v of fabric with %v to square up: buy %v.", b.Need, r.Straighten, b.Buy))
		return lines
	}
	return append(lines, step("%v of fabric: buy %v.", b.Need, b.Buy))
}

func (r BordersRequest) sidesWorking(b Border, quilt measure.Size) Step {
	switch r.Corners {
	case MitredCorners:
		return step("Sides: %v + 2 × %v + 2 × %v = %v; top and bottom: %v.", quilt.Length, b.Width, r.Spare, b.SideCut, b.TopCut)
	case SquaredCorners:
		return step("Sides: %v and two seams = %v; top and bottom: %v and two seams = %v; corner squares %v.",
			quilt.Length, b.SideCut, quilt.Width, b.TopCut, b.Corner)
	}
	return step("Sides: %v and two seams = %v; top and bottom: %v + 2 × %v and two seams = %v.",
		quilt.Length, b.SideCut, quilt.Width, b.Width, b.TopCut)
}

// BorderToReachRequest asks for the border that brings a quilt to a size.
type BorderToReachRequest struct {
	Conventions
	Quilt, Wanted measure.Size
}

// BorderToReachResult gives the border finished and as cut. Where the two
// differ, the sides and the top and bottom want borders of different widths.
type BorderToReachResult struct {
	SideFinished, TopFinished measure.Length // left and right; top and bottom
	SideStrip, TopStrip       measure.Length // as cut, up to the ruler
	Working                   []Step
}

// BorderToReach turns [Borders] round: half of what the width and the length lack.
func BorderToReach(r BorderToReachRequest) (BorderToReachResult, error) {
	err := cmp.Or(r.check(), wantSize("quilt", r.Quilt), wantSize("wanted", r.Wanted))
	if err != nil {
		return BorderToReachResult{}, err
	}
	side, top := (r.Wanted.Width-r.Quilt.Width)/2, (r.Wanted.Length-r.Quilt.Length)/2
	if side < 0 || top < 0 || side+top == 0 {
		return BorderToReachResult{}, limit("wanted", step("A border only adds, and %v is not larger than %v.", r.Wanted, r.Quilt),
			step("Anything larger than %v works.", r.Quilt))
	}
	return BorderToReachResult{
		SideFinished: side, TopFinished: top,
		SideStrip: r.borderStrip(side), TopStrip: r.borderStrip(top),
		Working: []Step{
			step("Left and right: (%v − %v) ÷ 2 = %v finished.", r.Wanted.Width, r.Quilt.Width, side),
			step("Top and bottom: (%v − %v) ÷ 2 = %v finished.", r.Wanted.Length, r.Quilt.Length, top),
			step("Two seams of %v more as cut: %v and %v.", r.Seam, r.borderStrip(side), r.borderStrip(top)),
		},
	}, nil
}

// borderStrip is the strip for a finished border, none for no border.
func (c Conventions) borderStrip(finished measure.Length) measure.Length {
	if finished == 0 {
		return 0
	}
	return c.CutUp(finished + 2*c.Seam)
}

// MeasuredAcross is the mean of a quilt measured in several places, as edges
// stretch, and the ruler's nearest step to it, which borders are cut from.
// Source: https://quiltyfolk.blogspot.com/2014/05/measuring-for-coping-border-when-you.html.
func (c Conventions) MeasuredAcross(measured ...measure.Length) (mean, use measure.Length, err error) {
	if err := cmp.Or(c.check(), wantCount("measurements", len(measured))); err != nil {
		return 0, 0, err
	}
	for _, m := range measured {
		if err := wantLength("measurement", m); err != nil {
			return 0, 0, err
		}
		mean += m
	}
	mean /= measure.Length(len(measured))
	return mean, mean.RoundNearest(c.CutStep), nil
}
