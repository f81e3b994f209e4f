package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// WidthChangeRequest asks for fabric of one width in place of another.
type WidthChangeRequest struct {
	Conventions
	Cloth    measure.Cloth
	From, To measure.Length // usable widths
	Count    int            // of pieces that it is for, 0 where they are not known
	Piece    measure.Size   // as cut
	OneWay   bool
	Have     measure.Cloth // of the other width in hand, 0 where not said
}

// WidthChangeResult gives what to buy of the other width.
type WidthChangeResult struct {
	Need    measure.Length // up to the nanometre
	Buy     measure.Cloth
	ByArea  bool       // pieces were not known, so this is a first guess
	InHand  ClothCheck // where fabric in hand was given
	Working []Step
}

// WidthChange goes by area, length·from/to, which is a first guess: pieces may
// lie worse in the other width. Where the pieces are known it lays them out as
// [Yardage] does. Common practice, no source.
func WidthChange(r WidthChangeRequest) (WidthChangeResult, error) {
	err := cmp.Or(r.check(), wantLength("fabric", measure.Length(r.Cloth)), wantLength("usable_width", r.From),
		wantLength("usable_width", r.To), wantHave("pieces", r.Count), wantCloth(r.Have))
	if err != nil {
		return WidthChangeResult{}, err
	}
	if r.Count > 0 {
		return r.byPieces()
	}
	need := mulDivUp(measure.Length(r.Cloth), r.From, r.To)
	if need > maxLength {
		return WidthChangeResult{}, limit("fabric", step("That is more than %v.", maxLength), Step{})
	}
	w := WidthChangeResult{Need: need, Buy: r.BuyUp(need), ByArea: true, InHand: checkCloth(r.Have, need)}
	w.Working = []Step{step("By area: %v × %v ÷ %v = %v: buy %v.", measure.Length(r.Cloth), r.From, r.To, Unrounded(w.Need), w.Buy)}
	return w, nil
}

// byPieces lays the pieces out on the new width.
func (r WidthChangeRequest) byPieces() (WidthChangeResult, error) {
	c := r.Conventions
	c.UsableWidth = r.To
	y, err := Yardage(YardageRequest{Conventions: c, Count: r.Count, Piece: r.Piece, OneWay: r.OneWay})
	if err != nil {
		return WidthChangeResult{}, err
	}
	return WidthChangeResult{Need: y.Need, Buy: y.Buy, InHand: checkCloth(r.Have, y.Need), Working: y.Working}, nil
}
