package calc

import "cmp"

// SplitRequest asks how pieces are shared out over fabrics.
type SplitRequest struct {
	Pieces  int // blades, squares, whatever is cut
	Fabrics int
}

// SplitResult is how many pieces each fabric gives: whole ones, so LeftOver of
// the fabrics give one more than Each.
type SplitResult struct {
	Each     int
	LeftOver int
	Working  []Step
}

// Split shares pieces out over fabrics.
func Split(r SplitRequest) (SplitResult, error) {
	if err := cmp.Or(wantCount("pieces", r.Pieces), wantCount("fabrics", r.Fabrics)); err != nil {
		return SplitResult{}, err
	}
	s := SplitResult{Each: r.Pieces / r.Fabrics, LeftOver: r.Pieces % r.Fabrics}
	if s.LeftOver == 0 {
		s.Working = []Step{step("%v ÷ %v = %v", r.Pieces, r.Fabrics, s.Each)}
		return s, nil
	}
	s.Working = []Step{
		step("%v = %v × %v + %v", r.Pieces, r.Fabrics, s.Each, s.LeftOver),
		step("%v of the fabrics give %v and %v give %v.", s.LeftOver, s.Each+1, r.Fabrics-s.LeftOver, s.Each),
	}
	return s, nil
}
