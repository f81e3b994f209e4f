package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// maxGrid is how many patches a strip-pieced block has at most on a side.
const maxGrid = 100

// StripSetRequest asks for blocks that are cut from strips sewn side by side.
// A checkerboard of two colours has Rows × Columns patches: a four-patch
// 2 × 2, a nine-patch 3 × 3, a two-patch 1 × 2. With Rail set it is a rail
// block, whose Columns strips run right across it.
type StripSetRequest struct {
	Conventions
	Rows, Columns int
	Rail          bool
	Strip         measure.Length // width as cut; 0 where Finished is given
	Finished      measure.Length // of a patch or a rail
	Blocks        int            // wanted; 0 where nobody said
	StripLength   measure.Length // 0 for fabric cut across its usable width
	HaveStrips    int            // in all; 0 where nobody said
}

// StripSetResult is the strips to cut and sew.
type StripSetResult struct {
	Strip         measure.Length // width as cut
	Sets          int            // strip sets to sew, of both kinds together
	SegmentsPer   int            // that a set gives
	Segments      int
	SegmentWidth  measure.Length
	Strips        int             // in all
	StripsOf      []int           // of each colour, the one in the corner first; of each rail
	StripsEach    int             // the same of every colour; 0 where they differ
	Unfinished    measure.Length  // width of the sewn set, which is the block's where it is square
	Block         measure.Size    // unfinished
	Finished      measure.Size    // block
	Buy           []measure.Cloth // of each colour, in the order of StripsOf
	OneFewerShort int             // blocks that one set fewer would be short of
	WiderCloth    []StripsOnCloth // fewer strips on wider cloth
	Hand          CountCheck      // strips in hand, where they were given
	Working       []Step
}

// StripSet works out blocks from strip sets: k strips of c make a set
// k·(c − 2 seams) + 2 seams wide, and a set gives floor(U ÷ segment width)
// segments. Where a block has an odd number of columns, its rows come from two
// kinds of set; where it is even, every other row is turned end for end.
// Source: geometry; two 2½ in strips make 4½ in
// (avalanden.wordpress.com, sewing strips, 2010).
func StripSet(r StripSetRequest) (StripSetResult, error) {
	if r.StripLength == 0 {
		r.StripLength = r.UsableWidth
	}
	if r.Rail {
		r.Rows = 1
	}
	if err := r.check(); err != nil {
		return StripSetResult{}, err
	}
	s := StripSetResult{}
	r.size(&s)
	s.SegmentsPer = fits(r.StripLength+hair, s.SegmentWidth)
	if s.SegmentsPer == 0 {
		return StripSetResult{}, limit("strip_width",
			step("A segment of %v cannot be cut from strips %v long.", s.SegmentWidth, r.StripLength), Step{})
	}
	if sets, of := r.strips(s.SegmentsPer); sets > maxCount || of[0] > maxCount {
		return StripSetResult{}, wantCount("strips", max(sets, of[0]))
	}
	r.count(&s)
	s.Working = r.working(s)
	return s, nil
}

func (r StripSetRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantCount("rows", r.Rows), wantCount("columns", r.Columns),
		wantHave("strips", r.HaveStrips), wantLength("strip_length", r.StripLength))
	if err == nil && max(r.Rows, r.Columns) > maxGrid {
		err = limit("columns", step("Blocks with more than %v patches on a side are not reckoned here.", maxGrid), Step{})
	}
	if err == nil && r.Columns < 2 {
		err = limit("columns", step("A strip set has at least two strips."), Step{})
	}
	if r.Blocks != 0 {
		err = cmp.Or(err, wantCount("blocks", r.Blocks))
	}
	if r.Finished != 0 {
		return cmp.Or(err, wantLength("finished_size", r.Finished))
	}
	err = cmp.Or(err, wantLength("strip_width", r.Strip))
	if err == nil && r.Strip <= 2*r.Seam {
		err = limit("strip_width", step("A strip of %v is used up by its seams.", r.Strip),
			step("Strips from %v work.", r.CutUp(2*r.Seam+r.CutStep)))
	}
	return err
}

// size works out the set and the block; a finished size is rounded once.
func (r StripSetRequest) size(s *StripSetResult) {
	shows := r.Finished
	if shows == 0 {
		shows = r.Strip - 2*r.Seam
	}
	s.Strip = r.CutUp(r.withSeams(shows))
	s.Finished = measure.Size{Width: measure.Length(r.Columns) * shows, Length: measure.Length(r.Rows) * shows}
	if r.Rail {
		s.Finished.Length = s.Finished.Width
	}
	s.Block = measure.Size{Width: r.CutUp(r.withSeams(s.Finished.Width)), Length: r.CutUp(r.withSeams(s.Finished.Length))}
	if r.Finished == 0 { // a strip given as cut stays as it is
		s.Strip = r.Strip
		s.Block = measure.Size{Width: r.withSeams(s.Finished.Width), Length: r.withSeams(s.Finished.Length)}
	}
	s.Unfinished = s.Block.Width
	s.SegmentWidth = s.Strip
	if r.Rail {
		s.SegmentWidth = s.Unfinished
	}
}

// kinds gives how many segments a block has of either kind of set: those that
// begin with the first colour and those that begin with the second.
func (r StripSetRequest) kinds() (first, second int) {
	if r.Rail || r.Columns%2 == 0 {
		return r.Rows, 0
	}
	return ceilDiv(r.Rows, 2), r.Rows / 2
}

func (r StripSetRequest) count(s *StripSetResult) {
	s.Sets, s.StripsOf = r.strips(s.SegmentsPer)
	s.Segments = r.Blocks * r.Rows
	s.StripsEach = s.StripsOf[0]
	for _, n := range s.StripsOf {
		s.Strips += n
		s.Buy = append(s.Buy, r.BuyUp(measure.Length(n)*s.Strip))
		if n != s.StripsOf[0] {
			s.StripsEach = 0
		}
	}
	if first, second := r.kinds(); r.Blocks > 0 && second == 0 {
		s.OneFewerShort = r.Blocks - (s.Sets-1)*s.SegmentsPer/first
	}
	if r.StripLength == r.UsableWidth {
		s.WiderCloth = onWiderCloth(r.Conventions, s.Strips, func(usable measure.Length) int {
			_, of := r.strips(fits(usable+hair, s.SegmentWidth))
			total := 0
			for _, n := range of {
				total += n
			}
			return total
		})
	}
	s.Hand = checkCount(r.HaveStrips, s.Strips)
}

// strips counts the sets, and the strips of each colour, for sets that give so
// many segments.
func (r StripSetRequest) strips(segmentsPer int) (sets int, of []int) {
	first, second := r.kinds()
	a, b := ceilDiv(first*r.Blocks, segmentsPer), ceilDiv(second*r.Blocks, segmentsPer)
	if r.Rail {
		of = make([]int, r.Columns)
		for i := range of {
			of[i] = a
		}
		return a, of
	}
	more, fewer := ceilDiv(r.Columns, 2), r.Columns/2
	return a + b, []int{a*more + b*fewer, a*fewer + b*more}
}

func (r StripSetRequest) working(s StripSetResult) []Step {
	shows := s.Finished.Width / measure.Length(r.Columns)
	steps := []Step{step("A set of %v strips, of each of which %v shows: %v × %v + 2 × %v = %v",
		r.Columns, shows, r.Columns, shows, r.Seam, s.Unfinished)}
	steps = append(steps, step("%v ÷ %v gives %v segments from a set.", r.StripLength, s.SegmentWidth, s.SegmentsPer))
	if r.Blocks == 0 {
		return steps
	}
	first, second := r.kinds()
	if second == 0 {
		return append(steps, step("%v blocks × %v = %v segments: %v sets, %v strips in all", r.Blocks, first, s.Segments, s.Sets, s.Strips))
	}
	return append(steps, step("%v blocks × %v and × %v segments of two kinds: %v sets, %v strips of the one colour and %v of the other",
		r.Blocks, first, second, s.Sets, s.StripsOf[0], s.StripsOf[1]))
}

// RowMiss is how much shorter a row of patches ends up when each seam takes
// too much of both edges: 2·(n − 1)·error; below 0 for a longer row.
// Source: geometry.
func RowMiss(patches int, errorPerEdge measure.Length) (measure.Length, error) {
	if err := cmp.Or(wantCount("patches", patches), wantSpare("seam_error", max(errorPerEdge, -errorPerEdge))); err != nil {
		return 0, err
	}
	return 2 * measure.Length(patches-1) * errorPerEdge, nil
}
