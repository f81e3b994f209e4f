package calc

import (
	"cmp"
	"math"

	"counterhand/calc/measure"
)

// SettingTrianglesRequest asks for the triangles that fill the edge of blocks
// set on point.
type SettingTrianglesRequest struct {
	Conventions
	Block        measure.Length
	Unfinished   bool           // the block is as it measures with its seams
	Across, Down int            // blocks in the outer rows; 0 where not said
	Float        measure.Length // more than is needed, so that the blocks float; 0 for none
	Have         measure.Cloth  // in hand, 0 where not said
}

// SettingTrianglesResult gives the squares to cut the triangles from, so that
// the straight grain lies along the quilt's edge. Squares are up to the ruler.
type SettingTrianglesResult struct {
	Diagonal      measure.Length // of the finished block, to the nanometre
	SideExact     measure.Length // before it is rounded
	SideSquare    measure.Length // cut twice, into four side triangles
	SideTriangles int            // 0 where the layout was not given
	SideSquares   int            // likewise
	CornerExact   measure.Length
	CornerSquare  measure.Length // cut once, into two corner triangles
	CornerSquares int            // two, for four corners
	Need          measure.Length // of fabric; 0 where the layout was not given
	Buy           measure.Cloth
	Cloth         ClothCheck // where fabric in hand and the layout were given
	Working       []Step
}

// SettingTriangles reckons side squares as block·√2 and the allowance for four
// triangles, corner squares as block/√2 and the allowance for two.
// Source: http://www.pinemeadowsdesigns.com/SewingHints-BlockOnPoint.htm and
// https://christaquilts.com/quilty-math/.
func SettingTriangles(r SettingTrianglesRequest) (SettingTrianglesResult, error) {
	block, err := r.finished("block", r.Block, r.Unfinished)
	if err = cmp.Or(r.check(), err, wantSpare("float", r.Float), wantHave("blocks_across", r.Across),
		wantHave("blocks_down", r.Down), wantCloth(r.Have)); err != nil {
		return SettingTrianglesResult{}, err
	}
	diagonal := diagonals(1, block)
	t := SettingTrianglesResult{
		Diagonal:      diagonal,
		SideExact:     diagonal + r.QuarterSquareAllowance() + r.Float,
		CornerExact:   measure.Length(math.Round(float64(block)/sqrt2)) + r.HalfSquareAllowance() + r.Float,
		CornerSquares: 2,
	}
	t.SideSquare, t.CornerSquare = r.CutUp(t.SideExact), r.CutUp(t.CornerExact)
	t.Working = []Step{
		step("Across the corners of a %v block: %v × √2 = %v.", block, block, Unrounded(diagonal)),
		step("Side triangles: %v + %v = %v, cut squares of %v twice from corner to corner.",
			Unrounded(diagonal), Unrounded(r.QuarterSquareAllowance()), Unrounded(t.SideExact), t.SideSquare),
		step("Corner triangles: %v ÷ √2 + %v = %v, cut 2 squares of %v once.",
			block, Unrounded(r.HalfSquareAllowance()), Unrounded(t.CornerExact), t.CornerSquare),
	}
	if r.Across > 0 && r.Down > 0 {
		t.SideTriangles = 2*(r.Across-1) + 2*(r.Down-1)
		t.SideSquares = ceilDiv(t.SideTriangles, 4)
		t.Working = append(t.Working, step("%v ÷ 4: %v.", counted(t.SideTriangles, "side triangle"), counted(t.SideSquares, "square")))
		err = r.buy(&t)
	}
	return t, err
}

// buy adds up the strips for the squares.
func (r SettingTrianglesRequest) buy(t *SettingTrianglesResult) error {
	corners, err := Yardage(YardageRequest{Conventions: r.Conventions, Count: t.CornerSquares, Piece: PrecutSquare(t.CornerSquare)})
	if err != nil {
		return err
	}
	t.Need = corners.Need
	if t.SideSquares > 0 {
		sides, err := Yardage(YardageRequest{Conventions: r.Conventions, Count: t.SideSquares, Piece: PrecutSquare(t.SideSquare)})
		if err != nil {
			return err
		}
		t.Need += sides.Need
	}
	t.Buy = r.BuyUp(t.Need)
	t.Cloth = checkCloth(r.Have, t.Need)
	t.Working = append(t.Working, step("%v of fabric: buy %v.", t.Need, t.Buy))
	return nil
}

// finished gives the finished side of a block that may be told with its seams.
func (c Conventions) finished(input string, side measure.Length, unfinished bool) (measure.Length, error) {
	if err := wantLength(input, side); err != nil || !unfinished {
		return side, err
	}
	f := side - 2*c.Seam
	if f < leastCut {
		return 0, limit(input, step("A %v of %v is all seam allowance.", spoken(input), side),
			step("More than %v works.", 2*c.Seam))
	}
	return f, nil
}

// diagonals is the length of n squares set corner to corner, to the nanometre.
func diagonals(n int, side measure.Length) measure.Length {
	return measure.Length(math.Round(float64(n) * float64(side) * sqrt2))
}
