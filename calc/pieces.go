package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// cutShort is what ready cuts are known to lack in length.
// Source: http://www.quiltingboard.com/main-f1/fast-fat-quarter-facts-t73923.html.
const cutShort = measure.Inch / 2

// PiecesRequest asks how many pieces a cut of fabric gives. A cut off the bolt
// is [Conventions.OffTheBolt]; others are [Conventions.FatQuarter] and its kin.
type PiecesRequest struct {
	Conventions
	From   measure.Size
	Piece  measure.Size // as cut
	OneWay bool         // pieces stay as they are
	Wanted int          // pieces wanted, 0 where not said
}

// PiecesWay is how many pieces fit one way round.
type PiecesWay struct{ Across, Down, Pieces int }

// PiecesResult says how many pieces there are and what stays.
type PiecesResult struct {
	PiecesWay                       // the better way round
	IsTurned         bool           // pieces lie with their length across
	Other            PiecesWay      // the other way round; zero where it is the same or the print forbids it
	LeftAcross, Left measure.Length // what stays beside the pieces, and below them
	IfShort          int            // pieces from a cut that is half an inch short, as some are sold
	Wanted           CountCheck     // where a number was wanted: the pieces are what is in hand
	Working          []Step
}

// Pieces counts ⌊width/a⌋ × ⌊length/b⌋ both ways round and takes the better.
// Source: http://piecefulliving.blogspot.com/2011/08/number-of-squares-from-fat-quarter.html.
func Pieces(r PiecesRequest) (PiecesResult, error) {
	err := cmp.Or(r.check(), wantSize("fabric", r.From), wantSize("piece", r.Piece), wantHave("pieces", r.Wanted))
	if err != nil {
		return PiecesResult{}, err
	}
	p := r.best(r.From)
	switch {
	case p.Pieces == 0:
		return PiecesResult{}, limit("piece", step("A piece of %v does not fit in %v.", r.Piece, r.From),
			step("Anything up to %v works.", r.From))
	case p.Pieces > maxCount:
		return PiecesResult{}, limit("piece", step("That is more than %v pieces.", maxCount), Step{})
	}
	lying := r.Piece
	if p.IsTurned {
		lying = turned(lying)
	}
	p.LeftAcross = r.From.Width - measure.Length(p.Across)*lying.Width
	p.Left = r.From.Length - measure.Length(p.Down)*lying.Length
	p.IfShort = r.best(measure.Size{Width: r.From.Width, Length: r.From.Length - cutShort}).Pieces
	if r.Wanted > 0 {
		p.Wanted = checkCount(p.Pieces, r.Wanted)
	}
	p.Working = []Step{
		step("%v ÷ %v: %v across.", r.From.Width, lying.Width, p.Across),
		step("%v ÷ %v: %v down.", r.From.Length, lying.Length, p.Down),
		step("%v × %v = %v.", p.Across, p.Down, counted(p.Pieces, "piece")),
	}
	if p.Other.Pieces > 0 {
		p.Working = append(p.Working, step("The other way round: %v × %v = %v.", p.Other.Across, p.Other.Down, p.Other.Pieces))
	}
	return p, nil
}

// best counts both ways round on a cut.
func (r PiecesRequest) best(from measure.Size) PiecesResult {
	upright := piecesIn(from, r.Piece)
	if r.OneWay || r.Piece.Width == r.Piece.Length {
		return PiecesResult{PiecesWay: upright}
	}
	if t := piecesIn(from, turned(r.Piece)); t.Pieces > upright.Pieces {
		return PiecesResult{PiecesWay: t, IsTurned: true, Other: upright}
	} else {
		return PiecesResult{PiecesWay: upright, Other: t}
	}
}

func piecesIn(from, piece measure.Size) PiecesWay {
	w := PiecesWay{Across: fits(from.Width, piece.Width), Down: fits(from.Length, piece.Length)}
	if w.Down > 0 && w.Across > maxCount/w.Down {
		w.Pieces = maxCount + 1 // more than is counted
		return w
	}
	w.Pieces = w.Across * w.Down
	return w
}

// FromCutsRequest asks how many ready cuts, such as fat quarters, precut strips
// or squares, hold a number of pieces.
type FromCutsRequest struct {
	Conventions
	Count    int
	Piece    measure.Size
	Finished bool // the piece is as it finishes; else as it is cut
	From     measure.Size
	OneWay   bool
	Have     int // cuts in hand, 0 where not said
}

// FromCutsResult says how many cuts to take.
type FromCutsResult struct {
	Cut         measure.Size // of a piece
	PerCut      int
	Cuts        int
	SparePieces int
	IfShort     int // cuts where each is half an inch short; 0 where such a one gives no piece
	InHand      CountCheck
	Working     []Step
}

// FromCuts counts the pieces of one cut as [Pieces] does, and the cuts from that.
func FromCuts(r FromCutsRequest) (FromCutsResult, error) {
	err := cmp.Or(wantCount("pieces", r.Count), wantHave("cuts", r.Have), r.check(), wantSize("piece", r.Piece))
	if err != nil {
		return FromCutsResult{}, err
	}
	cut := r.cutSize(r.Piece, r.Finished)
	one, err := Pieces(PiecesRequest{Conventions: r.Conventions, From: r.From, Piece: cut, OneWay: r.OneWay})
	if err != nil {
		return FromCutsResult{}, err
	}
	f := FromCutsResult{Cut: cut, PerCut: one.Pieces, Cuts: ceilDiv(r.Count, one.Pieces)}
	f.SparePieces = f.Cuts*f.PerCut - r.Count
	if one.IfShort > 0 {
		f.IfShort = ceilDiv(r.Count, one.IfShort)
	}
	f.InHand = checkCount(r.Have, f.Cuts)
	f.Working = append(one.Working, step("%v ÷ %v: %v of %v.", counted(r.Count, "piece"), f.PerCut, counted(f.Cuts, "cut"), r.From))
	return f, nil
}
