package calc

import (
	"cmp"
	"math"

	"counterhand/calc/measure"
)

// The angles of the diamonds that quilts are made of: eight of the narrow ones
// make a star, six of the wide ones a star or three a cube.
const (
	StarDiamond measure.Angle = 45
	CubeDiamond measure.Angle = 60
)

// DiamondRequest asks for diamonds, all sides alike, by the finished side, by
// the strip they are cut from, or by the eight-pointed star they make.
type DiamondRequest struct {
	Conventions
	Angle       measure.Angle  // at the sharp points
	Side        measure.Length // finished
	Strip       measure.Length // width as cut
	StarBlock   measure.Length // finished side of the block of an eight-pointed star; for 45°
	StripLength measure.Length // 0 for fabric cut across its usable width
	Diamonds    int            // wanted; 0 for those of the stars
	Stars       int            // wanted; 0 where nobody asks
}

// DiamondResult is the strip, and the star that the diamonds make.
type DiamondResult struct {
	Angle         measure.Angle
	StripWidth    measure.Length
	PerStrip      int
	Diamonds      int
	Strips        int
	Buy           measure.Cloth
	PerStar       int            // 360° ÷ the angle, where that is whole
	Side          measure.Length // finished, exact
	CutSide       measure.Length // exact
	ExactStrip    measure.Length
	Star          *StarBlock // of 45° diamonds
	OneFewerShort int        // diamonds that one strip fewer would be short of
	Working       []Step

	shape DiamondRequest
}

// StarBlock is the square block of an eight-pointed star of 45° diamonds.
type StarBlock struct {
	Block         measure.Length // finished, exact
	CornerSquare  measure.Length // as cut; four to a star
	SideSquare    measure.Length // as cut, cut twice from corner to corner for four side triangles; one to a star
	ExactSide     measure.Length // SideSquare without rounding
	CornerSquares int            // for all stars
	SideSquares   int
}

// Diamonds works out diamonds: the strip is side·sin(angle) and two seams, cut
// again at the same width along a line that leans by the angle. The slant at
// the end of the strip costs strip·cot(angle). An eight-pointed star is
// side·(2 + √2) wide. Sources: https://karencombs.com/page.php?ID=31 (the star's
// factor, printed as 3.41); geometry.
func Diamonds(r DiamondRequest) (DiamondResult, error) {
	r.StripLength = cmp.Or(r.StripLength, r.UsableWidth)
	if err := r.check(); err != nil {
		return DiamondResult{}, err
	}
	d, err := r.size()
	if err != nil {
		return DiamondResult{}, err
	}
	sin, cos := math.Sincos(r.Angle.Radians())
	slant := scaled(d.StripWidth, cos/sin)
	d.PerStrip = fits(r.StripLength+hair-slant, d.CutSide)
	if d.PerStrip == 0 {
		return DiamondResult{}, limit("strip_width",
			step("A diamond from a strip of %v does not fit on a strip %v long.", d.StripWidth, r.StripLength), Step{})
	}
	if r.Stars > maxCount/72 { // as many as the sharpest diamonds make a star
		return DiamondResult{}, wantCount("diamonds", maxCount+1)
	}
	d.Working = append(d.Working, step("(%v − %v for the slant) ÷ %v gives %v from a strip.", r.StripLength, Unrounded(slant), Unrounded(d.CutSide), d.PerStrip))
	r.count(&d)
	d.shape = r
	return d, nil
}

func (r DiamondRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantAngle("angle", r.Angle, 90), wantSpare("strip_width", r.Strip), wantSpare("side", r.Side),
		wantSpare("star_block", r.StarBlock), wantLength("strip_length", r.StripLength))
	if r.Angle < 5 {
		err = cmp.Or(err, limit("angle", step("Diamonds of %v are too sharp to sew.", r.Angle), step("45° and 60° are usual.")))
	}
	if r.StarBlock > 0 && r.Angle != StarDiamond {
		err = cmp.Or(err, limit("angle", step("The block of an eight-pointed star takes diamonds of 45°, not %v.", r.Angle), Step{}))
	}
	if r.Strip == 0 && r.StarBlock == 0 {
		err = cmp.Or(err, wantLength("side", r.Side))
	}
	if r.Diamonds != 0 {
		err = cmp.Or(err, wantCount("diamonds", r.Diamonds))
	}
	if r.Stars != 0 {
		err = cmp.Or(err, wantCount("stars", r.Stars))
	}
	return err
}

// size works out the diamond from whichever size was given.
func (r DiamondRequest) size() (DiamondResult, error) {
	sin := math.Sin(r.Angle.Radians())
	d := DiamondResult{Angle: r.Angle, StripWidth: r.Strip, ExactStrip: r.Strip}
	switch {
	case r.Strip > 0:
		if r.Strip-2*r.Seam < leastCut {
			return d, limit("strip_width", step("Two seams use up a strip of %v.", r.Strip),
				step("Strips from %v work.", r.CutUp(2*r.Seam+r.CutStep)))
		}
		d.Side = scaled(r.Strip-2*r.Seam, 1/sin)
	case r.Side > 0:
		d.Side = r.Side
	default:
		d.Side = scaled(r.StarBlock, 1/(2+sqrt2))
		d.Working = append(d.Working, step("Side: %v ÷ (2 + √2) = %v", r.StarBlock, Unrounded(d.Side)))
	}
	if r.Strip == 0 {
		d.ExactStrip = scaled(d.Side, sin) + 2*r.Seam
		d.StripWidth = r.CutUp(d.ExactStrip)
		d.Working = append(d.Working, roundedStep(d.ExactStrip, d.StripWidth, "Strip: %v × sin(%v) + 2 × %v", Unrounded(d.Side), r.Angle, Unrounded(r.Seam)))
	}
	d.CutSide = scaled(d.StripWidth, 1/sin)
	if d.StripWidth < leastCut || d.CutSide < leastCut {
		return d, wantLength("side", 0)
	}
	return d, nil
}

// count counts diamonds, and the squares of their stars.
func (r DiamondRequest) count(d *DiamondResult) {
	if n := float64(FullTurn / r.Angle); math.Abs(n-math.Round(n)) < 1e-9 {
		d.PerStar = int(math.Round(n))
	}
	d.Diamonds = cmp.Or(r.Diamonds, r.Stars*d.PerStar)
	d.Strips = ceilDiv(d.Diamonds, d.PerStrip)
	d.Buy = r.BuyUp(measure.Length(d.Strips) * d.StripWidth)
	d.OneFewerShort = max(0, d.Diamonds-(d.Strips-1)*d.PerStrip)
	if r.Angle != StarDiamond {
		return
	}
	side := root2(d.Side) + r.QuarterSquareAllowance()
	d.Star = &StarBlock{
		ExactSide:     side,
		Block:         cmp.Or(r.StarBlock, scaled(d.Side, 2+sqrt2)),
		CornerSquare:  r.CutUp(r.withSeams(d.Side)),
		SideSquare:    r.CutUp(side),
		CornerSquares: 4 * r.Stars, SideSquares: r.Stars,
	}
	d.Working = append(d.Working, step("Star of eight: %v × (2 + √2) = %v; corner squares %v, a square of %v cut twice for the sides",
		Unrounded(d.Side), Unrounded(d.Star.Block), d.Star.CornerSquare, d.Star.SideSquare))
}
