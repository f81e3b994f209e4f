package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// EdgeTrianglesRequest asks for folded triangles along an edge. One of the
// three sizes is given.
type EdgeTrianglesRequest struct {
	Conventions
	Base    measure.Length // as it shows along the seam
	Height  measure.Length // as it shows from seam to tip
	Square  measure.Length // as cut
	Quilt   measure.Size   // finished; zero where only the square is asked for
	Overlap measure.Length // of neighbours along the seam, 0 where they touch
	Have    int            // squares in hand, 0 where not said
	Cloth   measure.Cloth  // in hand, 0 where not said
}

// EdgeTrianglesResult gives the square to fold and how many there are.
type EdgeTrianglesResult struct {
	Square     measure.Length // up to the ruler
	AcrossEach measure.Length // as it shows along the seam
	Height     measure.Length // as it shows

	SidePoints, TopPoints   int // on each side, and on top and bottom each; 0 where no quilt was given
	Points                  int // all round
	SideSpacing, TopSpacing measure.Length
	PerStrip, Strips        int
	Need                    measure.Length
	Buy                     measure.Cloth
	InHand                  CountCheck // where squares in hand were given
	Cloth                   ClothCheck // where fabric in hand was given
	Working                 []Step
}

// EdgeTriangles folds a square S twice: it shows S − 2s along the seam and
// S/2 − s from seam to tip. Touching ones take ⌈edge/(S − 2s)⌉.
// Source: https://www.quiltingdaily.com/prairie-points-edging-lessons-mccalls-quilting/.
func EdgeTriangles(r EdgeTrianglesRequest) (EdgeTrianglesResult, error) {
	if err := r.check(); err != nil {
		return EdgeTrianglesResult{}, err
	}
	e := EdgeTrianglesResult{Square: r.square()}
	e.AcrossEach, e.Height = e.Square-2*r.Seam, e.Square/2-r.Seam
	if e.AcrossEach <= r.Overlap {
		return EdgeTrianglesResult{}, limit("square",
			step("A square of %v shows %v along the seam, which leaves nothing beside seams and overlap.", e.Square, e.AcrossEach),
			step("More than %v works.", 2*r.Seam+r.Overlap))
	}
	e.Working = []Step{
		step("A square of %v shows %v along the seam and %v from seam to tip.", e.Square, e.AcrossEach, e.Height),
	}
	if r.Quilt != (measure.Size{}) {
		if err := r.points(&e); err != nil {
			return EdgeTrianglesResult{}, err
		}
	}
	e.InHand = checkCount(r.Have, e.Points)
	return e, nil
}

func (r EdgeTrianglesRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantSpare("overlap", r.Overlap), wantHave("squares", r.Have), wantCloth(r.Cloth))
	given := 0
	for _, l := range []measure.Length{r.Base, r.Height, r.Square} {
		if l != 0 {
			given++
			err = cmp.Or(err, wantLength("triangle", l))
		}
	}
	if err == nil && given != 1 {
		err = limit("square", step("One size is needed: across, high, or as cut."), Step{})
	}
	if err == nil && r.Quilt != (measure.Size{}) {
		err = wantSize("quilt", r.Quilt)
	}
	return err
}

// square is the square to cut for the size that was given.
func (r EdgeTrianglesRequest) square() measure.Length {
	switch {
	case r.Base > 0:
		return r.CutUp(r.Base + 2*r.Seam)
	case r.Height > 0:
		return r.CutUp(2*r.Height + 2*r.Seam)
	}
	return r.Square
}

// points counts the triangles along each edge and the fabric for them.
func (r EdgeTrianglesRequest) points(e *EdgeTrianglesResult) error {
	pitch := e.AcrossEach - r.Overlap
	if max(r.Quilt.Width, r.Quilt.Length)/pitch > maxCount/8 {
		return limit("square", step("That is more than %v triangles.", maxCount), Step{})
	}
	e.SidePoints, e.TopPoints = int((r.Quilt.Length+pitch-1)/pitch), int((r.Quilt.Width+pitch-1)/pitch)
	e.SideSpacing = r.Quilt.Length / measure.Length(e.SidePoints)
	e.TopSpacing = r.Quilt.Width / measure.Length(e.TopPoints)
	e.Points = 2 * (e.SidePoints + e.TopPoints)
	y, err := Yardage(YardageRequest{Conventions: r.Conventions, Count: e.Points, Piece: PrecutSquare(e.Square)})
	if err != nil {
		return err
	}
	e.PerStrip, e.Strips, e.Need, e.Buy = y.PerStrip, y.Strips, y.Need, y.Buy
	e.Cloth = checkCloth(r.Cloth, y.Need)
	e.Working = append(e.Working,
		step("%v ÷ %v: %v along each side, %v apart.", r.Quilt.Length, pitch, e.SidePoints, e.SideSpacing),
		step("%v ÷ %v: %v along top and bottom, %v apart.", r.Quilt.Width, pitch, e.TopPoints, e.TopSpacing),
		step("2 × %v + 2 × %v = %v.", e.SidePoints, e.TopPoints, counted(e.Points, "triangle")))
	e.Working = append(e.Working, y.Working...)
	return nil
}
