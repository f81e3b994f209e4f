package commands

import (
	"counterhand/calc/measure"
	"counterhand/commands/words"
)

// Inputs that several topics take, declared once so that people can say them
// in the same way everywhere.

func of(concepts ...words.Concept) []words.Concept { return concepts }

// quiltSize is the size of the quilt, the most usual input of all.
func quiltSize() input {
	return input{
		name: "quilt", kind: aSize, prior: 8, usual: [2]float64{6, 140}, label: "the quilt",
		after: of(quilt, centre, sizeWord), before: of(quilt, centre, sizeWord),
		ask: "How big is the quilt, width by length?", offer: []string{"54 x 68", "60 x 80"},
		not: of(block, piece, rectangle, fabric),
	}
}

// usableWidth is how wide the fabric is.
func usableWidth() input {
	return input{
		name: "usable_width", kind: aLength, usual: [2]float64{36, 120}, least: 20, label: "the width of the fabric",
		after: of(fabric, usable), before: of(usable, fabric, mineIs),
		not: of(strip, quilt, block),
	}
}

// wideWidth is how wide wide backing is.
func wideWidth() input {
	return input{
		name: "wide_backing", kind: aLength, usual: [2]float64{100, 130}, least: 100, label: "the width of the wide backing",
		after: of(wideFabric, wide, fabric, backingWord), before: of(wideFabric), not: of(usable),
	}
}

// seamAllowance is how deep the seams are.
func seamAllowance() input {
	return input{
		name: "seam", kind: aLength, usual: [2]float64{0.1, 0.7}, label: "the seam allowance",
		after: of(seam), before: of(seam),
	}
}

// clothInHand is fabric that a person has.
func clothInHand() input {
	return input{
		name: "have", kind: aCloth, label: "the fabric you have",
		when:  of(have, enough, largest, canGet),
		after: of(enough, fabric, have), before: of(have, enough, fromWord, largest), prior: 3,
		not: of(strip),
	}
}

// stripsInHand are strips that a person has.
func stripsInHand() input {
	return input{
		name: "have_strips", kind: aCount, label: "the strips you have",
		when: of(have, enough), after: of(strip), before: of(have, enough),
	}
}

// oneWayPrint says that the print has a right way up.
func oneWayPrint() input {
	return input{name: "print", kind: aWord, words: map[words.Concept]string{oneWay: "one-way"}}
}

// overEachSide is what backing and batting go beyond the quilt.
func overEachSide() input {
	return input{
		name: "overage", kind: aLength, zero: true, usual: [2]float64{0.5, 10}, label: "what goes over on each side",
		after: of(overage, eachSide, allRound, extra), before: of(overage, extra, allRound),
	}
}

// narrowEndInput is the narrow end of a wedge template.
func narrowEndInput() input {
	return input{
		name: "narrow_end", kind: aLength, usual: [2]float64{0.4, 2.5}, label: "the narrow end",
		after: of(narrowEnd), before: of(narrowEnd), ask: "How wide is your template at the narrow end?", offer: []string{"⅞ in", "1 in"},
	}
}

// bladeAngle is the angle of a wedge.
func bladeAngle() input {
	return input{
		name: "angle", kind: anAngle, usual: [2]float64{3, 90}, label: "the angle of the wedge",
		after: of(angleWord), before: of(angleWord),
		ask: "What angle is the wedge?", offer: []string{"18°", "22½°"},
	}
}

// bladeLength is how long a blade is cut.
func bladeLength() input {
	return input{
		name: "blade_length", kind: aLength, usual: [2]float64{2, 24}, prior: 2, label: "the length of the blades",
		after: of(long, blade), before: of(long, blade), not: of(narrowEnd, wideEnd, strip, across, wide),
		ask: "How long are the blades?", offer: []string{"5 in", "6 in"},
	}
}

// blockGrid, blocksAcross and blocksDown are the counts of a layout, said in
// one ("5 x 6") or one by one ("5 across, 6 down").
func blockGrid() input {
	return input{
		name: "grid", kind: aGrid, prior: 5, usual: [2]float64{2, 16}, label: "the blocks across and down",
		after: of(block, row, onPoint), before: of(onPoint, straightSet), not: of(quilt, centre),
		ask: "How many blocks across and down?", offer: []string{"5 x 6"}, replaces: []string{"across", "down", "quilt"},
	}
}

func blocksAcross() input {
	return input{
		name: "across", kind: aCount, usual: [2]float64{1, 40}, label: "the blocks across",
		after: of(across, perRow, wide), before: of(across), replaces: []string{"grid", "quilt"},
		ask: "How many blocks across and down?", offer: []string{"5 across and 6 down"},
	}
}

func blocksDown() input {
	return input{
		name: "down", kind: aCount, usual: [2]float64{1, 40}, label: "the blocks down",
		after: of(downward, row, high, long), before: of(downward), replaces: []string{"grid", "quilt"},
		ask: "How many blocks down?", offer: []string{"6 down"},
	}
}

// counts gives the blocks across and down, however they were said.
func (w *work) counts() (across, down int) {
	if v, ok := w.value("grid"); ok {
		return v.Count, v.Down
	}
	return w.count("across"), w.count("down")
}

// noOverage says that nothing goes over on the sides.
func noOverage() input {
	return input{name: "without", kind: aWord, unless: map[words.Concept]string{overage: "overage", extra: "overage"}}
}

// overageOr gives what goes over on each side: as said, nothing where that is
// said, else the default.
func (w *work) overageOr() measure.Length {
	if w.word("without") != "" {
		return 0
	}
	return w.lengthOr("overage", "overage")
}

// blocksQuilt is the size of a quilt of blocks: larger than its counts.
func blocksQuilt() input {
	in := quiltSize()
	in.usual = [2]float64{20, 140}
	in.replaces = []string{"grid", "across", "down"}
	return in
}

// precutStrip is a strip from a pack, whose width goes without saying.
func precutStrip() input {
	return input{name: "precut_strip", kind: aWord, words: map[words.Concept]string{precut: "precut"}, when: of(strip)}
}

// blocksInAll is the number of blocks, said beside how they are set.
func blocksInAll() input {
	return input{name: "blocks", kind: aCount, after: of(block, ofThem), usual: [2]float64{2, 1000}, label: "the blocks in all"}
}

// checkBlocks refuses a number of blocks that is not what the rows make.
func (w *work) checkBlocks(across, down int) error {
	if n := w.count("blocks"); n > 0 && n != across*down {
		return w.cannot("%v across and %v down are %v blocks, and you speak of %v. Tell me which is right, like this: %v across and %v down.", across, down, across*down, n, across, down)
	}
	return nil
}
