package calc

import (
	"cmp"
	"math"

	"counterhand/calc/measure"
)

// sqrt3 is the distance between the flats of a hexagon with sides of 1.
const sqrt3 = 1.7320508075688772

// HexagonRequest asks for hexagons by one of three sizes. The size of a paper
// is its side; strip tools and some books mean flat to flat.
type HexagonRequest struct {
	Conventions
	Side         measure.Length // finished, of which one is given: the side,
	FlatToFlat   measure.Length // the distance between two flat sides,
	PointToPoint measure.Length // or between two points
	AsCut        bool           // the size is that of the fabric, with its allowance
	Allowance    measure.Length // of fabric around the paper; 0 for the seam allowance
	Quilt        measure.Size   // to fill; none where nobody asks
	Rings        int            // of a rosette, around its middle; 0 where nobody asks
	Hexagons     int            // wanted; 0 for as many as the quilt or the rosette takes
}

// HexagonResult is a hexagon with its fabric, and how many there are.
type HexagonResult struct {
	Side         measure.Length // to the nearest step, as all three
	FlatToFlat   measure.Length
	PointToPoint measure.Length
	PatchWidth   measure.Length // of the fabric to cut, point to point, and of a square that does as well
	PatchHeight  measure.Length // flat to flat
	Area         float64        // finished, in square inches
	Count        int            // that fill the quilt or the rosette, or as many as were wanted
	Cover        *HexagonCover  // how they fill the quilt
	StripWidth   measure.Length // that hexagons are cut from
	Cloth        PatchCloth     // for the hexagons counted, from such strips
	Exact        HexagonExact
	Working      []Step
}

// HexagonExact is the geometry without rounding.
type HexagonExact struct {
	Side, FlatToFlat, PointToPoint measure.Length // finished
	CutSide, CutFlat, CutPoint     measure.Length // of the fabric, with the allowance on all sides
}

// HexagonCover is how hexagons fill a quilt: rows that lie half a hexagon
// apart. The quilt is measured to the middle of its zigzag edges: what stands
// out there makes up for what is missing.
type HexagonCover struct {
	Rows, PerRow int
	PointsUp     bool // the rows run across the quilt's width and the hexagons stand on a point; else they are columns
	ToTrim       int  // hexagons that cover the quilt when all edges are trimmed straight
}

// Hexagons works out hexagons: with a side of 1 they are 2 from point to point
// and √3 from flat to flat, and an allowance all round adds itself twice to the
// flats and 4/√3 of itself to the points. Sources: geometry; the paper's size
// is its side (debbykratovilquilts.blogspot.com, August 2019).
func Hexagons(r HexagonRequest) (HexagonResult, error) {
	r.Allowance = cmp.Or(r.Allowance, r.Seam)
	if err := r.check(); err != nil {
		return HexagonResult{}, err
	}
	e := r.exact()
	if e.Side < leastCut {
		return HexagonResult{}, limit("side", step("The allowance of %v all round leaves nothing of the hexagon.", r.Allowance), Step{})
	}
	h := HexagonResult{Exact: e,
		Side: r.Template(e.Side), FlatToFlat: r.Template(e.FlatToFlat), PointToPoint: r.Template(e.PointToPoint),
		PatchWidth: (e.PointToPoint + 2*r.Allowance - hair).RoundUp(r.CoverStep), PatchHeight: r.CutUp(e.CutFlat),
		StripWidth: r.CutUp(e.CutFlat), Area: 1.5 * sqrt3 * e.Side.Inches() * e.Side.Inches(), Count: r.Hexagons,
	}
	if r.Side > 0 && !r.AsCut {
		h.Side = r.Side
	}
	h.Working = []Step{
		step("Point to point: 2 × %v = %v; flat to flat: √3 × %v = %v",
			Unrounded(e.Side), Unrounded(e.PointToPoint), Unrounded(e.Side), Unrounded(e.FlatToFlat)),
		roundedStep(e.PointToPoint+2*r.Allowance, h.PatchWidth, "Fabric across the points: %v + 2 × %v", Unrounded(e.PointToPoint), Unrounded(r.Allowance)),
		roundedStep(e.CutFlat, h.PatchHeight, "Fabric across the flats: %v + 2 × %v", Unrounded(e.FlatToFlat), Unrounded(r.Allowance)),
	}
	if err := r.count(&h); err != nil {
		return HexagonResult{}, err
	}
	h.Cloth = r.stripCloth(r.CutUp(e.CutPoint), h.StripWidth, h.Count)
	return h, nil
}

func (r HexagonRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantSpare("side", r.Side), wantSpare("flat_to_flat", r.FlatToFlat),
		wantSpare("point_to_point", r.PointToPoint), wantSpare("allowance", r.Allowance))
	if r.FlatToFlat == 0 && r.PointToPoint == 0 {
		err = cmp.Or(err, wantLength("side", r.Side))
	}
	if r.Quilt != (measure.Size{}) {
		err = cmp.Or(err, wantSize("quilt", r.Quilt))
	}
	if r.Hexagons != 0 {
		err = cmp.Or(err, wantCount("hexagons", r.Hexagons))
	}
	if r.Rings < 0 || r.Rings > 500 {
		err = cmp.Or(err, limit("rings", step("A rosette has from 1 to %v rings.", 500), Step{}))
	}
	return err
}

// exact gives the hexagon from whichever size was given.
func (r HexagonRequest) exact() HexagonExact {
	side := r.Side
	switch {
	case side > 0:
	case r.FlatToFlat > 0:
		side = scaled(r.FlatToFlat, 1/sqrt3)
	default:
		side = r.PointToPoint / 2
	}
	more := scaled(r.Allowance, 2/sqrt3)
	if r.AsCut {
		side -= more
	}
	e := HexagonExact{Side: side, FlatToFlat: scaled(side, sqrt3), PointToPoint: 2 * side,
		CutSide: side + more, CutFlat: scaled(side, sqrt3) + 2*r.Allowance, CutPoint: 2 * (side + more)}
	if !r.AsCut && r.Side == 0 && r.FlatToFlat > 0 {
		e.FlatToFlat, e.CutFlat = r.FlatToFlat, r.FlatToFlat+2*r.Allowance
	}
	return e
}

// count fills the quilt or the rosette.
func (r HexagonRequest) count(h *HexagonResult) error {
	switch {
	case r.Quilt != (measure.Size{}):
		up, flat := r.cover(r.Quilt, h.Exact), r.cover(turned(r.Quilt), h.Exact)
		up.PointsUp = true
		if flat.Rows*flat.PerRow < up.Rows*up.PerRow {
			up = flat
		}
		if up.Rows > maxCount/max(up.PerRow, 1) {
			return wantCount("hexagons", maxCount+1)
		}
		h.Cover, h.Count = &up, up.Rows*up.PerRow
		h.Working = append(h.Working,
			step("Rows lie 1½ sides = %v apart: %v of them, with %v hexagons of %v in each, makes %v.",
				Unrounded(h.Exact.Side*3/2), up.Rows, up.PerRow, Unrounded(h.Exact.FlatToFlat), h.Count),
			step("That measures to the middle of the zigzag edges; to trim them straight it takes %v.", up.ToTrim))
	case r.Rings > 0:
		h.Count = RosetteCount(r.Rings)
		h.Working = append(h.Working, step("1 + 3 × %v × %v = %v hexagons; the outer ring has %v", r.Rings, r.Rings+1, h.Count, 6*r.Rings))
	}
	return nil
}

// RosetteCount is how many hexagons a rosette of rings around its middle has:
// 1 + 3n(n + 1), as each ring has six more than the one inside it.
func RosetteCount(rings int) int { return 1 + 3*rings*(rings+1) }

// cover fills a size with hexagons that stand on a point. Rows lie 1½ sides
// apart; a row is as many flat widths as it has hexagons.
func (r HexagonRequest) cover(z measure.Size, e HexagonExact) HexagonCover {
	side, flat := float64(e.Side), float64(e.FlatToFlat)
	slack := float64(hair)
	up := func(v float64) int { return int(min(math.Ceil(v), 2*maxCount)) }
	c := HexagonCover{
		Rows:   up((float64(z.Length) - slack) / (1.5 * side)),
		PerRow: up((float64(z.Width) - slack) / flat),
	}
	// Trimmed straight, the first and the last row are used to their shoulders
	// and every other row sticks out half a hexagon.
	rows, perRow := up((float64(z.Length)-slack+side/2)/(1.5*side)), c.PerRow
	longer := perRow + 1
	if (float64(perRow)-0.5)*flat >= float64(z.Width)-slack {
		longer = perRow
	}
	c.ToTrim = ceilDiv(rows, 2)*perRow + rows/2*longer
	return c
}
