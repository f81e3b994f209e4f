package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const dividesIt words.Concept = "a block that divides it"

// layoutTopic: how many blocks make a quilt, and how large it is.
func layoutTopic() Topic {
	return Topic{
		Name: "layout", Group: SizeIt, Title: "how many blocks make a quilt, set straight or on point, and how big it is",
		Terms: []words.Term{
			{Concept: dividesIt, Words: "what block divides, what block size divides, which block divides, which block size, what size block, what size blocks, which size block, block size that divides, blocks that divide, block that divides, what block fits, which block fits, what block size, which blocks divide, divides evenly, divide evenly, divides into, which blocks"},
		},
		About: of(block, squarePc, onPoint, straightSet, across, downward, row, perRow, dividesIt),
		Says:  append(append(says(4, block, dividesIt, onPoint, straightSet), says(3, across, downward, row, perRow, quilt)...), append(says(2, squarePc, howBig, finished, makeIt, queenBed, kingBed, twinBed, fullBed, doubleBed, singleBed, cribBed, perRow), against(halfSquare, gooseWord, hexagon, squareInSq, fourPatch, ninePatch, quarterSquare)...)...),
		Asks:  append(says(4, block), says(3, squarePc)...),
		Inputs: []input{
			blocksQuilt(),
			{name: "block", kind: aLength, usual: [2]float64{1, 24}, prior: 4, label: "the block", replaces: []string{"block_size"},
				after: of(block, squarePc, finished, unfinished), before: of(block, squarePc, finished, unfinished), not: of(strip, border),
				ask: "How big is each block, finished?", offer: []string{"9 in", "12 in"}},
			{name: "block_size", kind: aSize, usual: [2]float64{1, 24}, after: of(block, rectangle), before: of(block, rectangle), label: "the block", replaces: []string{"block"}},
			blockGrid(), blocksAcross(), blocksDown(),
			{name: "have_blocks", kind: aCount, after: of(block, squarePc, ofThem), before: of(have), usual: [2]float64{4, 2000}, label: "the blocks you have"},
			{name: "setting", kind: aWord, words: map[words.Concept]string{onPoint: "on point", straightSet: "straight"}},
			{name: "bed", kind: aWord, words: bedWords},
			{name: "country", kind: aWord, words: countryWords},
			{name: "wish", kind: aWord, words: map[words.Concept]string{dividesIt: "divides"}},
			seamAllowance(),
		},
		Needs:    [][]string{{"block", "block_size", "wish"}, {"quilt", "grid", "across", "down", "bed"}},
		Examples: []string{"12 in blocks for a quilt of 60 x 72", "9 in blocks on point, 5 by 6"},
		Source:   "set straight: whole blocks each way; on point a block takes block × √2 and r·c + (r−1)(c−1) blocks fill it (geometry).",
		Work:     workLayout,
		Other:    otherSetting,
	}
}

// otherSetting changes between straight and on point.
func otherSetting(now, before map[string]Value) {
	word := "on point"
	if before["setting"].Word == word {
		word = "straight"
	}
	now["setting"] = Value{Kind: aWord, Word: word}
}

func workLayout(w *work) error {
	c := w.conventions()
	block, unfinished := w.blockOf("block")
	if v, ok := w.value("block_size"); ok {
		block, unfinished = v.Size, v.Cut == cutSize
	}
	if unfinished {
		c = w.conventions("seam")
	}
	r := calc.LayoutRequest{Conventions: c, Block: block, Unfinished: unfinished, Setting: calc.StraightSetting, Within: w.defaults.Words["blocks_that"] == "within"}
	if w.word("setting") == "on point" {
		r.Setting = calc.OnPointSetting
	}
	r.Across, r.Down = w.counts()
	if v, ok := w.value("quilt"); ok {
		r.Wanted = v.Size
		r.Across, r.Down = 0, 0
	} else if w.given("bed") && r.Across == 0 {
		m, err := w.mattress()
		if err != nil {
			return err
		}
		r.Wanted = m.Size
		w.say("I took the top of a %s %s mattress, %v, without any drop.", string(m.Country), m.Name, m.Size)
	}
	if !w.given("block") && !w.given("block_size") {
		if r.Wanted == (measure.Size{}) || !w.given("wish") {
			return w.needs("block")
		}
		return workDividing(w, c, r.Wanted)
	}
	if n := w.count("have_blocks"); n > 0 && r.Wanted == (measure.Size{}) {
		switch {
		case r.Across > 0 && r.Down == 0:
			r.Down = (n + r.Across - 1) / r.Across
		case r.Down > 0 && r.Across == 0:
			r.Across = (n + r.Down - 1) / r.Down
		case r.Across == 0:
			return w.needs("grid")
		}
	}
	if r.Wanted == (measure.Size{}) && (r.Across == 0) != (r.Down == 0) {
		if r.Across == 0 {
			return w.needs("across")
		}
		return w.needs("down")
	}
	r.Have = w.count("have_blocks")
	l, err := calc.Layout(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.Layout(r, l) })
	w.size = measure.Size{Width: l.QuiltWidth, Length: l.QuiltLength}
	w.figure("across", l.Across)
	w.figure("down", l.Down)
	w.figure("blocks", l.Blocks)
	w.figure("quilt_width", l.QuiltWidth)
	w.figure("quilt_length", l.QuiltLength)
	if l.InHand.Given && !(l.InHand.Enough && l.InHand.Spare == 0) {
		w.enoughCount(l.InHand, "block")
	}
	set := ""
	if r.Setting == calc.OnPointSetting {
		set = " on point"
	}
	w.say("%v%s, %v across and %v down: %v.", counted(l.Blocks, "block"), set, l.Across, l.Down, w.size)
	if r.Setting == calc.OnPointSetting {
		w.say("Along the edge go %v side triangles and %v corners; ask me for setting triangles.", l.SideTriangles, l.Corners)
	}
	if l.Covers {
		w.say("That is more than %v, since the blocks do not divide it.", r.Wanted)
		if l.Smaller.Blocks > 0 {
			w.say("The next smaller layout is %v by %v: %v.", l.Smaller.Across, l.Smaller.Down, measure.Size{Width: l.Smaller.QuiltWidth, Length: l.Smaller.QuiltLength})
		}
	}
	if l.Larger.Blocks > 0 {
		w.say("That stays within %v, since the blocks do not divide it.", r.Wanted)
		w.say("The next larger layout is %v by %v: %v.", l.Larger.Across, l.Larger.Down, measure.Size{Width: l.Larger.QuiltWidth, Length: l.Larger.QuiltLength})
	}
	if unfinished {
		w.say("The blocks measure %v with their seams and finish at %v.", block.Width, l.Block.Width)
	} else {
		w.say("I took %v as the finished size of a block.", l.Block.Width)
	}
	w.show(l.Working)
	return nil
}

// blockOf gives a square block and whether it was said with its seams.
func (w *work) blockOf(name string) (measure.Size, bool) {
	v, ok := w.value(name)
	if !ok {
		return measure.Size{}, false
	}
	return calc.PrecutSquare(v.Length), v.Cut == cutSize
}

// workDividing answers which blocks divide a size.
func workDividing(w *work, c calc.Conventions, wanted measure.Size) error {
	blocks, err := calc.DividingBlocks(calc.DividingBlocksRequest{Conventions: c, Wanted: wanted, Least: 3 * measure.Inch, Most: 20 * measure.Inch})
	if err != nil {
		return err
	}
	if len(blocks) == 0 {
		return w.cannot("No square block from 3 in to 20 in divides %v both ways. Sashing or a border takes up the rest.", wanted)
	}
	w.size = wanted
	var parts []string
	for _, b := range blocks {
		parts = append(parts, w.format("%v (%v by %v)", b.Block, b.Across, b.Down))
	}
	first := blocks[len(blocks)/2]
	w.figure("block", first.Block)
	w.figure("across", first.Across)
	w.figure("down", first.Down)
	w.figure("blocks", first.Blocks)
	w.say("Blocks that divide %v: %s.", wanted, andList(parts[:min(len(parts), 8)]))
	return nil
}
