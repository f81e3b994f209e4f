package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

// yardageTopic: the fabric that a number of pieces takes.
func yardageTopic() Topic {
	return Topic{
		Name: "yardage", Group: BuyIt, Title: "fabric for a number of pieces",
		Says: append(says(8, yardageWord), append(says(5, howMuch), append(says(2, squarePc, rectangle, fabric, buyWord, piece, oneWay, strip, canGet, enough), against(blade, halfSquare, gooseWord, hexagon, fourPatch, ninePatch, quarterSquare, squareInSq, diamond)...)...)...),
		Asks: append(says(3, fabric, howMuch, yardageWord, unitYd, unitM), says(5, fatQuarter, fatEighth, longQuarter, stripPack, squarePack)...),
		Inputs: []input{
			{name: "pieces", kind: aCount, after: of(squarePc, rectangle, piece, unitPc, ofThem), before: of(need), prior: 2, usual: [2]float64{4, 2000}, label: "the number of pieces",
				ask: "Which pieces, how many and what size? For example: 48 squares of 5½ in.", offer: []string{"48 squares 5½", "20 rectangles 2½ x 6½"}, not: of(strip)},
			{name: "strips", kind: aCount, after: of(strip), usual: [2]float64{2, 400}, label: "the number of strips", replaces: []string{"pieces"}},
			{name: "blocks", kind: aCount, after: of(block), label: "the blocks"},
			{name: "size", kind: aSize, after: of(rectangle, piece, squarePc), before: of(rectangle, piece, squarePc, unfinished), prior: 5, usual: [2]float64{0.75, 60}, label: "the size of the pieces", not: of(quilt), replaces: []string{"side"}},
			{name: "side", kind: aLength, after: of(squarePc, piece, eachWord, strip, wide), before: of(squarePc, piece, unfinished, finished, atPrice), prior: 4, usual: [2]float64{0.75, 60}, label: "the size of the squares", not: of(fabric, usable), replaces: []string{"size"},
				ask: "What size is each piece?", offer: []string{"5½ in square"}},
			{name: "source", kind: aWord, words: map[words.Concept]string{fatQuarter: "fat quarter", fatEighth: "fat eighth", longQuarter: "long quarter"}},
			{name: "waste", kind: aPercent, after: of(percentWord, extra), label: "the allowance for waste"},
			oneWayPrint(), usableWidth(), seamAllowance(), clothInHand(),
			{name: "have_cuts", kind: aCount, when: of(have, enough), after: of(fatQuarter, fatEighth, longQuarter), label: "the cuts you have"},
		},
		Needs:    [][]string{{"pieces", "strips"}, {"size", "side"}},
		Examples: []string{"how much fabric for 48 squares 5½", "20 rectangles 2½ x 6½ from fat quarters, how many"},
		Source:   "whole pieces to a strip, whole strips, both ways round, the shorter taken (bobbininquilts.com; craftcore.ca).",
		Work:     workYardage,
	}
}

func workYardage(w *work) error {
	c := w.conventions("usable_width")
	count := w.count("pieces")
	if n := w.count("blocks"); n > 0 && count > 0 {
		w.say("%v for each of %v blocks: %v in all.", count, n, count*n)
		count *= n
	}
	piece := measure.Size{}
	cut := unsaid
	if v, ok := w.value("size"); ok {
		piece, cut = v.Size, v.Cut
	} else {
		v, _ := w.value("side")
		piece, cut = calc.PrecutSquare(v.Length), v.Cut
	}
	if n := w.count("strips"); n > 0 && !w.given("pieces") {
		count, piece = n, measure.Size{Width: c.UsableWidth, Length: piece.Width}
	}
	if cut == finishedSize {
		c.Seam = w.conventions("seam").Seam
	}
	if w.given("source") {
		return workFromCuts(w, c, count, piece, cut)
	}
	r := calc.YardageRequest{
		Conventions: c, Count: count, Piece: piece, Finished: cut == finishedSize, OneWay: w.word("print") != "",
		Waste: w.percentage("waste"), Have: measure.Cloth(w.length("have")),
	}
	y, err := calc.Yardage(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.Yardage(r, y) })
	w.figure("per_strip", y.PerStrip)
	w.figure("strips", y.Strips)
	w.figure("strip_width", y.StripWidth)
	w.figure("length", y.Need)
	w.figure("buy", y.Buy)
	w.enoughCloth(y.Cloth)
	if y.Cloth.Given {
		w.figure("pieces", y.HavePieces)
	}
	w.say("Buy %v: %v, %v wide, %v pieces from each.", y.Buy, counted(y.Strips, "strip"), y.StripWidth, y.PerStrip)
	line := w.format("That is %v of fabric, exactly", y.Need)
	if y.LeftOver > 0 {
		line += w.format(", and %v over", y.LeftOver)
	}
	if y.SparePieces > 0 {
		line += w.format("; the last strip would give %v more", y.SparePieces)
	}
	w.say("%s.", line)
	switch {
	case cut == finishedSize:
		w.say("Each is cut %v to finish at %v.", y.Cut, piece)
	default:
		w.say("I took %v as the size to cut.", y.Cut)
	}
	if y.Turned.Strips > 0 && y.Turned.Length != y.Length {
		w.say("Cut the other way round it would take %v.", y.Turned.Length)
	}
	if y.ExactFit {
		w.say("The pieces fill the strip to the last thread: check that your fabric really gives %v.", c.UsableWidth)
	}
	w.show(y.Working)
	w.does(cutting)
	return nil
}

// workFromCuts counts the fat quarters or the like that the pieces take.
func workFromCuts(w *work, c calc.Conventions, count int, piece measure.Size, cut basis) error {
	noun := w.word("source")
	from := map[string]measure.Size{"fat quarter": c.FatQuarter(), "fat eighth": c.FatEighth(), "long quarter": c.LongQuarter()}[noun]
	f, err := calc.FromCuts(calc.FromCutsRequest{Conventions: c, Count: count, Piece: piece, Finished: cut == finishedSize, From: from, OneWay: w.word("print") != "", Have: w.count("have_cuts")})
	if err != nil {
		return err
	}
	one := calc.PiecesRequest{Conventions: c, From: from, Piece: f.Cut, OneWay: w.word("print") != ""}
	p, err := calc.Pieces(one)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.Pieces(one, p) })
	w.figure("per_cut", f.PerCut)
	w.figure("cuts", f.Cuts)
	w.figure("spare_pieces", f.SparePieces)
	w.enoughCount(f.InHand, noun)
	w.say("%v, %v pieces from each of %v.", counted(f.Cuts, noun), f.PerCut, from)
	if f.SparePieces > 0 {
		w.say("They would give %v more.", f.SparePieces)
	}
	if f.IfShort > f.Cuts {
		w.say("Many are cut half an inch short; of such ones it takes %v.", f.IfShort)
	}
	w.show(f.Working)
	w.does(cutting)
	return nil
}
