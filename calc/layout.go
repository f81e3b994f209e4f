package calc

import (
	"cmp"
	"math"

	"counterhand/calc/measure"
)

// Setting says how blocks lie in a quilt.
type Setting string

// The settings. On point the blocks stand on a corner, with whole blocks in
// the gaps between them and triangles along the edge.
const (
	StraightSetting Setting = "straight"
	OnPointSetting  Setting = "on point"
)

// LayoutRequest asks how blocks make a quilt: how many for a wanted size, or
// how large a quilt a number of them makes.
type LayoutRequest struct {
	Conventions
	Block        measure.Size // on point its sides are equal
	Unfinished   bool         // the block is as it measures with its seams
	Setting      Setting
	Across, Down int          // 0 where a size is wanted
	Wanted       measure.Size // zero where the counts are given
	Within       bool         // stay within the wanted size, where at least one block does, instead of covering it
	Have         int          // blocks in hand, 0 where not said
}

// LayoutCount is a number of blocks and the size that they make.
type LayoutCount struct {
	Across, Down, Blocks    int
	QuiltWidth, QuiltLength measure.Length // to the nanometre
}

// LayoutResult is the layout that covers the wanted size or stays within it, or
// that was given.
type LayoutResult struct {
	Block measure.Size // finished
	LayoutCount
	Covers        bool        // the wanted size is not a whole number of blocks, and the layout is larger
	Smaller       LayoutCount // the next smaller layout, where it covers; no blocks where there is none
	Larger        LayoutCount // the layout that would cover, where it stays within and falls short; else no blocks
	SideTriangles int         // on point
	Corners       int         // corner triangles, on point
	InHand        CountCheck
	Working       []Step
}

// Layout counts ⌈width/block⌉ × ⌈length/block⌉ blocks. On point a block takes
// its diagonal, block·√2, and blocks = r·c + (r−1)(c−1).
// Source: https://apqs.com/reference-chart-for-squares-on-point; geometry.
func Layout(r LayoutRequest) (LayoutResult, error) {
	block, err := r.check()
	if err != nil {
		return LayoutResult{}, err
	}
	l := LayoutResult{Block: block}
	across, down := r.Across, r.Down
	if r.Wanted != (measure.Size{}) {
		across, down = r.covering(block.Width, r.Wanted.Width), r.covering(block.Length, r.Wanted.Length)
	}
	if across > maxCount/down {
		return LayoutResult{}, limit("block", step("That is more than %v blocks.", maxCount), Step{})
	}
	l.LayoutCount = r.count(block, across, down)
	if r.Wanted != (measure.Size{}) {
		wide, long := l.QuiltWidth > r.Wanted.Width, l.QuiltLength > r.Wanted.Length
		if l.Covers = wide || long; l.Covers {
			l.Smaller = r.count(block, across-intOf(wide), down-intOf(long))
		}
		if r.Within && l.Smaller.Blocks > 0 {
			l.LayoutCount, l.Smaller, l.Larger, l.Covers = l.Smaller, LayoutCount{}, l.LayoutCount, false
			across, down = l.Across, l.Down
		}
	}
	if r.Setting == OnPointSetting {
		l.SideTriangles, l.Corners = 2*(across-1)+2*(down-1), 4
	}
	l.InHand = checkCount(r.Have, l.Blocks)
	l.Working = r.working(l)
	return l, nil
}

// check refuses what cannot be laid out, and gives the finished block.
func (r LayoutRequest) check() (measure.Size, error) {
	width, errWidth := r.finished("block", r.Block.Width, r.Unfinished)
	length, errLength := r.finished("block", r.Block.Length, r.Unfinished)
	err := cmp.Or(r.Conventions.check(), errWidth, errLength, wantHave("blocks", r.Have))
	if r.Wanted != (measure.Size{}) {
		err = cmp.Or(err, wantSize("quilt", r.Wanted))
	} else {
		err = cmp.Or(err, wantCount("blocks_across", r.Across), wantCount("blocks_down", r.Down))
	}
	if err == nil && r.Setting == OnPointSetting && width != length {
		err = limit("block", step("On point only square blocks leave straight edges, and %v is not square.", r.Block),
			step("%v square works.", width))
	}
	return measure.Size{Width: width, Length: length}, err
}

// covering is the least number of blocks that covers a length.
func (r LayoutRequest) covering(block, length measure.Length) int {
	if r.Setting == OnPointSetting {
		return max(1, int(math.Ceil(float64(length-hair)/(float64(block)*sqrt2))))
	}
	return max(1, int((length+block-1)/block))
}

// count gives the blocks and the size of a layout; none for no rows or columns.
func (r LayoutRequest) count(block measure.Size, across, down int) LayoutCount {
	if across < 1 || down < 1 {
		return LayoutCount{}
	}
	if r.Setting == OnPointSetting {
		return LayoutCount{across, down, across*down + (across-1)*(down-1),
			diagonals(across, block.Width), diagonals(down, block.Length)}
	}
	return LayoutCount{across, down, across * down,
		measure.Length(across) * block.Width, measure.Length(down) * block.Length}
}

func (r LayoutRequest) working(l LayoutResult) []Step {
	var lines []Step
	if r.Unfinished {
		lines = append(lines, step("%v less two seams of %v finishes at %v.", r.Block, r.Seam, l.Block))
	}
	if r.Setting == OnPointSetting {
		each := Unrounded(diagonals(1, l.Block.Width))
		lines = append(lines,
			step("On point each block takes %v × √2 = %v.", l.Block.Width, each),
			step("%v × %v = %v across; %v × %v = %v down.", l.Across, each, Unrounded(l.QuiltWidth),
				l.Down, each, Unrounded(l.QuiltLength)),
			step("%v × %v and %v × %v in the gaps: %v.", l.Across, l.Down, l.Across-1, l.Down-1, counted(l.Blocks, "block")))
	} else {
		lines = append(lines,
			step("%v × %v = %v across; %v × %v = %v down.", l.Across, l.Block.Width, l.QuiltWidth,
				l.Down, l.Block.Length, l.QuiltLength),
			step("%v × %v = %v.", l.Across, l.Down, counted(l.Blocks, "block")))
	}
	if l.Covers && l.Smaller.Blocks > 0 {
		lines = append(lines, step("The next smaller, %v × %v, makes %v.", l.Smaller.Across, l.Smaller.Down,
			measure.Size{Width: l.Smaller.QuiltWidth, Length: l.Smaller.QuiltLength}))
	}
	if l.Larger.Blocks > 0 {
		lines = append(lines, step("The next larger, %v × %v, makes %v.", l.Larger.Across, l.Larger.Down,
			measure.Size{Width: l.Larger.QuiltWidth, Length: l.Larger.QuiltLength}))
	}
	return lines
}

// intOf counts a yes as one.
func intOf(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// DividingBlocksRequest asks which square blocks fill a size exactly.
type DividingBlocksRequest struct {
	Conventions
	Wanted      measure.Size
	Least, Most measure.Length // of the finished block
}

// DividingBlock is a finished block that fills the size, and how many it takes.
type DividingBlock struct {
	Block measure.Length
	LayoutCount
}

// DividingBlocks lists the square blocks on the ruler's half inches, or whole
// centimetres, that divide both sides, the smallest first.
func DividingBlocks(r DividingBlocksRequest) ([]DividingBlock, error) {
	err := cmp.Or(r.check(), wantSize("quilt", r.Wanted), wantLength("least_block", r.Least), wantLength("most_block", r.Most))
	if err != nil {
		return nil, err
	}
	var list []DividingBlock
	straight := LayoutRequest{Conventions: r.Conventions, Setting: StraightSetting}
	for b := r.Least.RoundUp(r.GroundStep); b <= min(r.Most, r.Wanted.Width, r.Wanted.Length); b += r.GroundStep {
		if len(list) == 100 || b-r.Least > maxCount*r.GroundStep {
			break // more than anybody reads
		}
		if r.Wanted.Width.IsOn(b) && r.Wanted.Length.IsOn(b) {
			across, down := int(r.Wanted.Width/b), int(r.Wanted.Length/b)
			list = append(list, DividingBlock{b, straight.count(PrecutSquare(b), across, down)})
		}
	}
	return list, nil
}
