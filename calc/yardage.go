package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// YardageRequest asks how much fabric pieces of one size take.
type YardageRequest struct {
	Conventions
	Count      int
	Piece      measure.Size // width across the fabric where it matters
	Finished   bool         // the piece is as it finishes; else as it is cut
	OneWay     bool         // the print has a top, so pieces stay as they are
	Straighten measure.Length
	Waste      float64       // percent added to the length, 0 where not said
	Have       measure.Cloth // in hand, 0 where not said
}

// YardageWay is how pieces lie on the fabric one way round.
type YardageWay struct {
	Across     measure.Length // side of the piece that lies along the strip
	PerStrip   int
	Strips     int
	StripWidth measure.Length
	Length     measure.Length // strips times their width
}

// YardageResult says how to cut and what to buy.
type YardageResult struct {
	Cut        measure.Size // of a piece
	YardageWay              // the way that takes less fabric

	Turned      YardageWay     // the other way round; no strips where it is the same, does not fit or the print forbids it
	Need        measure.Length // the length with straightening and waste
	Buy         measure.Cloth
	LeftOver    measure.Length // of the length bought
	SparePieces int            // that the last strip would still give
	ExactFit    bool           // pieces fill the strip to the last thread, with nothing to spare for a crooked edge
	MoreWidth   measure.Length // usable width at which a strip gives one piece more, up to a half inch

	Cloth      ClothCheck // where fabric in hand was given
	HavePieces int        // that it gives
	Working    []Step
}

// Yardage cuts strips across the fabric and pieces from the strips:
// k = ⌊U/a⌋ a strip, ⌈N/k⌉ strips of the other side. Both ways round are
// worked and the shorter taken, of two alike the one with fewer strips.
// Source: https://www.bobbininquilts.com (how much fabric you need);
// https://www.craftcore.ca/2017-03-20-fabric-calculations-rectangles/.
func Yardage(r YardageRequest) (YardageResult, error) {
	if err := r.check(); err != nil {
		return YardageResult{}, err
	}
	y := YardageResult{Cut: r.cutSize(r.Piece, r.Finished)}
	way, err := r.better(y.Cut)
	if err != nil {
		return YardageResult{}, err
	}
	y.YardageWay, y.Turned = way[0], way[1]
	y.Need = moreByPercent(y.Length, r.Waste) + r.Straighten
	y.Buy = r.BuyUp(y.Need)
	y.LeftOver = max(0, measure.Length(y.Buy)-y.Need) // a hair may have been dropped
	y.SparePieces = y.Strips*y.PerStrip - r.Count
	y.ExactFit = y.PerStrip > 1 && measure.Length(y.PerStrip)*y.Across == r.UsableWidth
	y.MoreWidth = (measure.Length(y.PerStrip+1) * y.Across).RoundUp(r.GroundStep)
	y.Cloth = checkCloth(r.Have, y.Need)
	y.HavePieces = y.PerStrip * fits(max(0, measure.Length(r.Have)-r.Straighten), y.StripWidth)
	y.Working = r.working(y)
	return y, nil
}

func (r YardageRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantCount("pieces", r.Count), wantSize("piece", r.Piece),
		wantSpare("straightening", r.Straighten), wantCloth(r.Have))
	if err == nil && !(r.Waste >= 0 && r.Waste <= 100) {
		err = limit("waste", step("A waste of %v percent makes no sense.", r.Waste), step("From 0 to 100 works."))
	}
	return err
}

// cutSize is a piece as it is cut: as it is, or with its seams, up to the ruler.
func (c Conventions) cutSize(piece measure.Size, finished bool) measure.Size {
	if !finished {
		return piece
	}
	return measure.Size{Width: c.CutUp(piece.Width + 2*c.Seam), Length: c.CutUp(piece.Length + 2*c.Seam)}
}

// better gives the way to cut a piece and the other one, if there is another.
func (r YardageRequest) better(cut measure.Size) ([2]YardageWay, error) {
	along := r.way(cut)
	var other YardageWay
	if !r.OneWay && cut.Width != cut.Length {
		other = r.way(turned(cut))
	}
	switch {
	case along.Strips == 0 && other.Strips == 0:
		return [2]YardageWay{}, r.tooWide(cut)
	case along.Strips == 0,
		other.Strips > 0 && cmp.Or(cmp.Compare(other.Length, along.Length), cmp.Compare(other.Strips, along.Strips)) < 0:
		return [2]YardageWay{other, along}, nil
	}
	return [2]YardageWay{along, other}, nil
}

// tooWide says that a piece does not fit in the fabric.
func (r YardageRequest) tooWide(cut measure.Size) error {
	if r.OneWay {
		return limit("piece_width", step("A piece of %v does not fit upright in fabric of %v.", cut, r.UsableWidth),
			step("Pieces up to %v across work, or join them from two.", r.UsableWidth))
	}
	return limit("piece_width", step("A piece of %v does not fit in fabric of %v either way round.", cut, r.UsableWidth),
		step("Pieces with a side of up to %v work, or join them from two.", r.UsableWidth))
}

// way lays a piece with its width along the strip; no strips where it does not fit.
func (r YardageRequest) way(cut measure.Size) YardageWay {
	per := fits(r.UsableWidth, cut.Width)
	if per == 0 {
		return YardageWay{}
	}
	strips := ceilDiv(r.Count, per)
	return YardageWay{Across: cut.Width, PerStrip: per, Strips: strips, StripWidth: cut.Length,
		Length: measure.Length(strips) * cut.Length}
}

func (r YardageRequest) working(y YardageResult) []Step {
	var lines []Step
	if r.Finished {
		lines = append(lines, step("%v finished and two seams of %v: cut %v.", r.Piece, r.Seam, y.Cut))
	}
	lines = append(lines, r.wayWorking(y.YardageWay)...)
	if y.Turned.Strips > 0 {
		lines = append(lines, step("The other way round it would be %v of %v: %v.", counted(y.Turned.Strips, "strip"), y.Turned.StripWidth, y.Turned.Length))
	}
	if r.Waste > 0 || r.Straighten > 0 {
		lines = append(lines, step("With %v percent and %v for squaring up: %v.", r.Waste, r.Straighten, Unrounded(y.Need)))
	}
	return append(lines, step("%v of fabric: buy %v; %v of it is left over.", Unrounded(y.Need), y.Buy, Unrounded(y.LeftOver)))
}

func (r YardageRequest) wayWorking(w YardageWay) []Step {
	return []Step{
		step("%v ÷ %v: %v a strip.", r.UsableWidth, w.Across, counted(w.PerStrip, "piece")),
		step("%v ÷ %v: %v of %v = %v.", r.Count, w.PerStrip, counted(w.Strips, "strip"), w.StripWidth, w.Length),
	}
}

// moreByPercent adds a percentage, up to the nanometre.
func moreByPercent(l measure.Length, percent float64) measure.Length {
	return mulDivUp(l, measure.Length(hundred+hundredths(percent)), hundred)
}

// Together gives the fabric to buy where several needs are cut from one piece:
// it is rounded up once, for all of them.
func (c Conventions) Together(needs ...measure.Length) (measure.Length, measure.Cloth) {
	var sum measure.Length
	for _, n := range needs {
		sum += n
	}
	return sum, c.BuyUp(sum)
}
