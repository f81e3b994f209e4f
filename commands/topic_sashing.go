package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const (
	sashingWord words.Concept = "sashing"
	cornerstone words.Concept = "cornerstone"
	frameWord   words.Concept = "frame"
	betweenWord words.Concept = "between the blocks"
)

// sashingTopic: strips between the blocks.
func sashingTopic() Topic {
	return Topic{
		Name: "sashing", Group: CutIt, Title: "sashing between blocks, with or without cornerstones and a frame",
		Terms: []words.Term{
			{Concept: sashingWord, Words: "sashing, sash, sashed, sashings, lattice, latticing, sashing strip, lattice strip, sash strip"},
			{Concept: cornerstone, Words: "cornerstone, corner stone, post, setting square, stones, stone, sashing square"},
			{Concept: frameWord, Words: "frame, framed, outer frame, outer edge, outer edge sashed, outside too, round the outside too, outer sashing, outside sashing, around the outside, edge too, on the outside as well, outside as well, all the way around the outside, border of sashing, outer edge too"},
			{Concept: betweenWord, Words: "between, between them, between the blocks, between blocks, in between"},
		},
		Says: append(append(says(named, sashingWord), says(6, cornerstone)...), says(4, betweenWord, frameWord)...),
		Asks: says(3, sashingWord),
		Inputs: []input{
			{name: "block", kind: aLength, usual: [2]float64{3, 24}, prior: 4, label: "the block", after: of(block, squarePc, finished, unfinished), before: of(block, finished, unfinished, squarePc), not: of(sashingWord, betweenWord, strip),
				ask: "How big is each block, finished?", offer: []string{"9 in", "12 in"}},
			{name: "sash", kind: aLength, usual: [2]float64{0.5, 6}, prior: 3, label: "the sashing", after: of(sashingWord, betweenWord, wide, strip), before: of(sashingWord, betweenWord), not: of(block),
				ask: "How wide is the sashing, finished?", offer: []string{"2 in"}},
			blockGrid(), blocksAcross(), blocksDown(), blocksInAll(),
			{name: "stones", kind: aWord, words: map[words.Concept]string{cornerstone: "cornerstones"}, unless: map[words.Concept]string{cornerstone: "plain"}},
			{name: "outside", kind: aWord, words: map[words.Concept]string{frameWord: "framed", allRound: "framed"}, unless: map[words.Concept]string{frameWord: "inner"}},
			usableWidth(), seamAllowance(), clothInHand(),
		},
		Needs:    [][]string{{"block"}, {"sash"}, {"grid", "across"}, {"grid", "down"}},
		Examples: []string{"sashing 2 in for 5 x 6 blocks of 9 in", "4 across 5 down, 12 in blocks, 2 in sashing with cornerstones and a frame"},
		Source:   "sashes counted between the blocks each way; with cornerstones every sash is short (quiltnotes.com; class handout, slideblast.com lesson 11).",
		Work:     workSashing,
		Other:    otherStones,
	}
}

// otherStones changes between plain sashing and cornerstones.
func otherStones(now, before map[string]Value) {
	word := "cornerstones"
	if before["stones"].Word == word {
		word = "plain"
	}
	now["stones"] = Value{Kind: aWord, Word: word}
}

func workSashing(w *work) error {
	c := w.conventions("usable_width", "seam")
	block := w.finished("block", c.Seam)
	sash := w.finished("sash", c.Seam)
	across, down := w.counts()
	if err := w.checkBlocks(across, down); err != nil {
		return err
	}
	r := calc.SashingRequest{
		Conventions: c, Block: calc.PrecutSquare(block), Sash: sash, Across: across, Down: down,
		Cornerstones: w.wordOr("stones", "stones") == "cornerstones", Frame: w.wordOr("outside", "outside") == "framed",
		Have: measure.Cloth(w.length("have")),
	}
	s, err := calc.Sashing(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.Sashing(r, s) })
	w.size = measure.Size{Width: s.QuiltWidth, Length: s.QuiltLength}
	w.figure("short_sashes", s.ShortSashes)
	w.figure("sash_cut", s.SashCut)
	w.figure("long_sashes", s.LongSashes)
	if s.LongSashes > 0 {
		w.figure("long_cut", s.LongCut)
	}
	w.figure("cornerstones", s.Cornerstones)
	w.figure("strip_width", s.StripWidth)
	w.figure("strips", s.Strips)
	w.figure("buy", s.Buy)
	if s.Cornerstones > 0 {
		w.figure("cornerstones.buy", s.StoneBuy)
	}
	w.figure("quilt_width", s.QuiltWidth)
	w.figure("quilt_length", s.QuiltLength)
	w.enoughCloth(s.Cloth)
	line := w.format("%v of %v by %v", counted(s.ShortSashes, "short sash"), s.StripWidth, s.SashCut)
	if s.LongSashes > 0 {
		line += w.format(" and %v of %v", counted(s.LongSashes, "long one"), s.LongCut)
	}
	if s.Cornerstones > 0 {
		line += w.format(", with %v of %v square", counted(s.Cornerstones, "cornerstone"), s.StripWidth)
	}
	w.say("%s.", line)
	buy := w.format("%v, %v wide: buy %v", counted(s.Strips, "strip"), s.StripWidth, s.Buy)
	if s.Cornerstones > 0 {
		buy += w.format(", and %v for the cornerstones", s.StoneBuy)
	}
	w.say("%s.", buy)
	w.say("The top comes to %v.", w.size)
	if s.LongJoined {
		w.say("The long ones are longer than the fabric is wide and are joined.")
	}
	w.say("%s", sashingWay(r))
	w.show(s.Working)
	w.does(cutting, pressing)
	return nil
}

// sashingWay says which sashing was reckoned and how to ask for another.
func sashingWay(r calc.SashingRequest) string {
	s := "That is sashing between the blocks only"
	if r.Frame {
		s = "That is sashing between the blocks and round the outside"
	}
	if !r.Cornerstones {
		s += ", without cornerstones"
	}
	switch {
	case !r.Frame && !r.Cornerstones:
		return s + `; say "with cornerstones" or "framed" for another way.`
	case !r.Frame:
		return s + `; say "framed" to go round the outside too.`
	}
	return s + "."
}
