package calc

import (
	"cmp"
	"math"

	"counterhand/calc/measure"
)

// SashingRequest asks for the strips between blocks.
type SashingRequest struct {
	Conventions
	Block        measure.Size // finished
	Sash         measure.Length
	Across, Down int
	Cornerstones bool          // squares where sashes cross
	Frame        bool          // sashing round the outside too
	Have         measure.Cloth // of the sashing's fabric in hand, 0 where not said
}

// SashingResult counts the sashes. Cut sizes are up to the ruler.
type SashingResult struct {
	ShortSashes  int            // in all
	SashCut      measure.Length // of a short sash beside a block
	LevelSashes  int            // of the short ones, those above and below blocks; with cornerstones only
	LevelCut     measure.Length // their length, which differs where blocks are not square
	LongSashes   int            // rows from edge to edge, without cornerstones only
	LongCut      measure.Length
	LongJoined   bool // they are longer than the fabric is wide
	Cornerstones int
	StripWidth   measure.Length // of every sash, and the side of a cornerstone
	Strips       int
	Need         measure.Length
	Buy          measure.Cloth
	StoneStrips  int // strips for the cornerstones, of their own fabric
	StoneNeed    measure.Length
	StoneBuy     measure.Cloth

	QuiltWidth, QuiltLength measure.Length

	Cloth   ClothCheck
	Working []Step
}

// Sashing counts the sashes of R rows of C blocks. Between the blocks only:
// R(C−1) beside them and C(R−1) above and below; with a frame R(C+1) and
// C(R+1). Without cornerstones those above and below become rows in one piece.
// Source: https://quiltnotes.com/learning-center/how-much-fabric-do-i-need-for-quilt-sashing/
// and the class handout "Lesson 11" at https://slideblast.com.
func Sashing(r SashingRequest) (SashingResult, error) {
	if err := r.check(); err != nil {
		return SashingResult{}, err
	}
	columns, rows := r.Across-1, r.Down-1 // of sashing
	if r.Frame {
		columns, rows = r.Across+1, r.Down+1
	}
	s := SashingResult{
		StripWidth:  r.CutUp(r.Sash + 2*r.Seam),
		SashCut:     r.CutUp(r.Block.Length + 2*r.Seam),
		ShortSashes: r.Down * columns,
		QuiltWidth:  measure.Length(r.Across)*r.Block.Width + measure.Length(columns)*r.Sash,
		QuiltLength: measure.Length(r.Down)*r.Block.Length + measure.Length(rows)*r.Sash,
	}
	if r.Cornerstones {
		s.LevelSashes, s.LevelCut = r.Across*rows, r.CutUp(r.Block.Width+2*r.Seam)
		s.ShortSashes += s.LevelSashes
		s.Cornerstones = columns * rows
	} else if rows > 0 {
		s.LongSashes, s.LongCut = rows, r.CutUp(s.QuiltWidth+2*r.Seam)
	}
	if s.ShortSashes+s.LongSashes == 0 {
		return SashingResult{}, limit("blocks", step("A single block has nothing between."), step("Two blocks, or a frame, work."))
	}
	if err := r.strips(&s); err != nil {
		return SashingResult{}, err
	}
	s.Cloth = checkCloth(r.Have, s.Need)
	s.Working = r.working(s)
	return s, nil
}

func (r SashingRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantSize("block", r.Block), wantLength("sash_width", r.Sash),
		wantCount("blocks_across", r.Across), wantCount("blocks_down", r.Down), wantCloth(r.Have))
	if err == nil && r.Across+2 > maxCount/(r.Down+2)/2 {
		err = limit("blocks", step("%v × %v blocks are more than this counts.", r.Across, r.Down), Step{})
	}
	if err != nil {
		return err
	}
	width, length := measure.Length(r.Across+1)*(r.Block.Width+r.Sash), measure.Length(r.Down+1)*(r.Block.Length+r.Sash)
	if max(width, length) > maxLength {
		return limit("blocks", step("A quilt of that many blocks is longer than %v.", maxLength), Step{})
	}
	return nil
}

// strips counts strips across the fabric: short sashes as many as fit in each,
// long ones too, joined end to end where they are longer than one.
func (r SashingRequest) strips(s *SashingResult) error {
	upright, err := r.stripsOf(s.ShortSashes-s.LevelSashes, s.SashCut)
	if err != nil {
		return err
	}
	level, err := r.stripsOf(s.LevelSashes, s.LevelCut)
	if err != nil {
		return err
	}
	if s.LevelCut == s.SashCut { // they share strips
		if upright, err = r.stripsOf(s.ShortSashes, s.SashCut); err != nil {
			return err
		}
		level = 0
	}
	long, err := r.stripsOf(s.LongSashes, s.LongCut)
	if err != nil {
		return err
	}
	s.LongJoined = s.LongCut > r.UsableWidth
	s.Strips = upright + level + long
	s.Need = measure.Length(s.Strips) * s.StripWidth
	s.Buy = r.BuyUp(s.Need)
	if s.StoneStrips, err = r.stripsOf(s.Cornerstones, s.StripWidth); err != nil {
		return err
	}
	s.StoneNeed = measure.Length(s.StoneStrips) * s.StripWidth
	s.StoneBuy = r.BuyUp(s.StoneNeed)
	return nil
}

// stripsOf counts the strips across the fabric for pieces of one length, which
// are joined end to end where they are longer than a strip.
func (c Conventions) stripsOf(pieces int, cut measure.Length) (int, error) {
	if pieces == 0 {
		return 0, nil
	}
	if per := fits(c.UsableWidth, cut); per > 0 {
		return ceilDiv(pieces, per), nil
	}
	return joinedStrips(measure.Length(pieces)*cut, c.UsableWidth, c.StraightJoin)
}

func (r SashingRequest) working(s SashingResult) []Step {
	lines := []Step{
		step("Strips: %v and two seams of %v = %v.", r.Sash, r.Seam, s.StripWidth),
		step("%v of %v.", counted(s.ShortSashes, "short sash"), s.SashCut),
	}
	if s.LevelSashes > 0 && s.LevelCut != s.SashCut {
		lines = append(lines, step("%v of them, above and below the blocks, are %v.", s.LevelSashes, s.LevelCut))
	}
	if s.LongSashes > 0 {
		lines = append(lines, step("%v of %v.", counted(s.LongSashes, "long sash"), s.LongCut))
	}
	if s.Cornerstones > 0 {
		lines = append(lines, step("%v of %v square, in %v.", counted(s.Cornerstones, "cornerstone"), s.StripWidth, counted(s.StoneStrips, "strip")))
	}
	return append(lines,
		step("%v × %v = %v of fabric: buy %v.", counted(s.Strips, "strip"), s.StripWidth, s.Need, s.Buy),
		step("The quilt is %v.", measure.Size{Width: s.QuiltWidth, Length: s.QuiltLength}))
}

// SuggestedSash is a sash that looks right beside a block, a quarter of the
// block by the golden ratio, to the nearest step of the ruler.
// Source: https://sherriquiltsalot.com/2020/04/15/mathing-the-yardage-ii/.
func (c Conventions) SuggestedSash(block measure.Length) measure.Length {
	return measure.Length(math.Round(float64(block) * math.Phi / 4)).RoundNearest(c.CutStep)
}
