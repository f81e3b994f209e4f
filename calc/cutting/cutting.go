// Package cutting finds the least length of fabric for a list of rectangular
// pieces, cut the way a rotary cutter does it: strips across the full width
// first, then cross cuts that free the pieces of each strip. A piece lower than
// its strip is trimmed once; nothing is cut from the trimmings.
//
// What [Best] promises: every plan holds all pieces and can be cut; the same
// request gives the same plan; the work is bounded by [Request.Effort] and ends
// with the context. What it does not promise is that the plan is the best one:
// [Plan.Optimal] says when that is proved, and [Plan.AtLeast] how far the
// length could fall at most. The blade is taken to remove nothing, and
// straightening the fabric is left to the caller.
//
// How it works: a strip of a given height is filled by a content, so many of
// each piece side by side. The least length is an integer program with one
// variable for each content. Its linear relaxation is solved by generating
// contents as they are needed, and the numbers of strips of each height are
// branched on. Source of the model: P. C. Gilmore, R. E. Gomory, "Multistage
// cutting stock problems of two and more dimensions", Operations Research 13
// (1965) 94-120, from memory.
package cutting

import (
	"cmp"
	"context"
	"errors"
	"fmt"

	"counterhand/calc/measure"
)

// Piece is a number of rectangles of one size, as they are cut.
type Piece struct {
	Name   string         // as the caller calls it; not looked at
	Width  measure.Length // across the fabric
	Length measure.Length // along the fabric, so the height of its strip
	Count  int
	OneWay bool // stays as it is, for prints with a top
}

// Request is a list of pieces from fabric of one width.
type Request struct {
	Width  measure.Length // usable width of the fabric
	Pieces []Piece
	Effort int // bound on the work, in thousands of elementary steps; 0 is [DefaultEffort]
}

// DefaultEffort is enough for the lists of a quilt; it is spent in well under a
// second on common machines.
const DefaultEffort = 400_000

// The bounds on a request.
const (
	MaxSizes  = 60     // different pieces
	MaxPieces = 10_000 // of all sizes together
	MaxLength = 1000 * measure.Metre
	least     = measure.Millimetre / 10 // of a side
)

// Plan is a list of strips that yields all pieces.
type Plan struct {
	Strips  []Strip        // the highest first
	Length  measure.Length // of fabric: the sum of the strips' heights
	AtLeast measure.Length // no plan is shorter than this
	Optimal bool           // proved: no plan is shorter than this one
	Waste   float64        // percent of the area that is in no piece
}

// Strip is one strip, or several that are cut alike.
type Strip struct {
	Height measure.Length
	Times  int
	Cuts   []Cut          // from one end to the other
	Used   measure.Length // of the width
}

// Cut is how many of a piece a strip yields.
type Cut struct {
	Piece  int // its place in the request
	Count  int
	Turned bool           // its length lies across the fabric
	Width  measure.Length // across the fabric, of each
	Height measure.Length // along the fabric; less than the strip's where the piece is trimmed
}

// The reasons for which a request is refused.
var (
	ErrNothing   = errors.New("no pieces to cut")
	ErrTooMany   = errors.New("more pieces than a plan is made for")
	ErrDimension = errors.New("a length that cannot be cut")
)

// TooWideError says that a piece does not fit in the fabric.
type TooWideError struct {
	Piece  Piece
	Fabric measure.Length
}

func (e *TooWideError) Error() string {
	return fmt.Sprintf("a piece of %v x %v nm does not fit in fabric of %v nm", int64(e.Piece.Width), int64(e.Piece.Length), int64(e.Fabric))
}

// Best gives the shortest plan that it finds within its effort. It fails with
// one of the errors above, or with the context's error where that ends before
// there is any plan at all; where it ends later, the best plan so far is given.
func Best(ctx context.Context, r Request) (Plan, error) {
	if err := r.check(); err != nil {
		return Plan{}, err
	}
	if err := ctx.Err(); err != nil {
		return Plan{}, err
	}
	effort := int64(cmp.Or(r.Effort, DefaultEffort)) * 1000
	s := newSearch(ctx, newProblem(r), effort)
	s.run()
	return s.plan(r), nil
}

// check refuses what cannot be cut.
func (r Request) check() error {
	if r.Width < least || r.Width > MaxLength || r.Effort < 0 {
		return ErrDimension
	}
	if len(r.Pieces) > MaxSizes {
		return ErrTooMany
	}
	total := 0
	for _, p := range r.Pieces {
		switch {
		case min(p.Width, p.Length) < least || max(p.Width, p.Length) > MaxLength:
			return ErrDimension
		case p.Count < 1:
			return ErrNothing
		case p.Count > MaxPieces || total+p.Count > MaxPieces:
			return ErrTooMany
		case p.Width > r.Width && (p.OneWay || p.Length > r.Width):
			return &TooWideError{p, r.Width}
		}
		total += p.Count
	}
	if total == 0 {
		return ErrNothing
	}
	return nil
}
