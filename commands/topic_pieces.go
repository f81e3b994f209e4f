package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

// piecesTopic: how many pieces a cut of fabric gives.
func piecesTopic() Topic {
	return Topic{
		Name: "pieces", Group: CutIt, Title: "how many pieces a cut of fabric gives",
		About: of(squarePc, rectangle, piece, strip, block, fatQuarter, fatEighth, longQuarter),
		Says:  append(says(5, fatQuarter, fatEighth, longQuarter), append(says(3, squarePc, rectangle, strip, fromWord, piece, clothAmount, scrap, canGet), append(says(2, fabric, precut), against(blade, halfSquare, gooseWord, hexagon, fourPatch, ninePatch, quarterSquare, squareInSq, diamond, triangle, block, closing, allRound, bindingWord)...)...)...),
		Asks:  says(4, squarePc, rectangle, strip, piece),
		Inputs: []input{
			{name: "size", kind: aSize, after: of(rectangle, piece, squarePc), before: of(rectangle, piece, squarePc), prior: 5, usual: [2]float64{0.75, 30}, not: of(fabric, quilt), label: "the size of the pieces", replaces: []string{"side"}},
			{name: "side", kind: aLength, after: of(squarePc, piece), before: of(squarePc, piece), prior: 4, usual: [2]float64{0.75, 30}, not: of(fabric, strip, precut, usable), label: "the size of the squares", ask: "How big is each piece, and from how much fabric?", offer: []string{"5 in squares from a yard", "2½ in squares from a fat quarter"}, replaces: []string{"size"}},
			{name: "strip_width", kind: aLength, after: of(strip), when: of(strip), prior: 1, usual: [2]float64{1, 12}, label: "the strip"},
			{name: "cloth", kind: aCloth, after: of(fabric, fromWord), before: of(fromWord, fabric, have), prior: 3, usual: [2]float64{3, 400}, not: of(squarePc, rectangle, strip, precut, usable, high, wide), label: "the fabric", ask: "From how much fabric: yards, a fat quarter, a strip?", offer: []string{"1 yd", "a fat quarter"}, replaces: []string{"cut", "from", "precut_square"}},
			{name: "precut_square", kind: aLength, after: of(precut), before: of(precut, fromWord), not: of(strip, rectangle, fatQuarter, fatEighth, longQuarter), usual: [2]float64{4, 20}, label: "the precut square", replaces: []string{"cloth", "cut", "from"}},
			{name: "from", kind: aSize, after: of(fabric, scrap), before: of(fabric, fromWord, scrap), when: of(fabric, fromWord, scrap), usual: [2]float64{5, 130}, label: "the piece of fabric", replaces: []string{"cloth", "cut", "precut_square"}},
			{name: "cut", kind: aWord, words: map[words.Concept]string{fatQuarter: "fat quarter", fatEighth: "fat eighth", longQuarter: "long quarter"}, replaces: []string{"cloth", "from", "precut_square"}},
			{name: "cuts", kind: aCount, after: of(fatQuarter, fatEighth, longQuarter), label: "how many cuts"},
			precutStrip(), oneWayPrint(), usableWidth(),
		},
		Needs:    [][]string{{"size", "side", "strip_width"}, {"cloth", "from", "cut", "precut_square", "precut_strip", "strip_width"}},
		Examples: []string{"how many 5 in squares from a fat quarter", "3½ x 6½ rectangles from 1¼ yd"},
		Source:   "width and length divided by the piece, both ways round, whole pieces only (piecefulliving.blogspot.com, August 2011).",
		Work:     workPieces,
	}
}

// pieceSize gives the size of the pieces, as cut.
func pieceSize(w *work, seam measure.Length) (measure.Size, bool) {
	if v, ok := w.value("size"); ok {
		if v.Cut == finishedSize {
			v.Size.Width += 2 * seam
			v.Size.Length += 2 * seam
		}
		return v.Size, true
	}
	if w.given("side") {
		side := w.cutOf("side", seam)
		return calc.PrecutSquare(side), true
	}
	return measure.Size{}, false
}

func workPieces(w *work) error {
	c := w.conventions()
	piece, ok := pieceSize(w, c.Seam)
	strips := false
	if !ok {
		strips = true
	}
	from, name, err := pieceSource(w, &c, strips)
	if err != nil {
		return err
	}
	if strips {
		piece = measure.Size{Width: from.Width, Length: w.length("strip_width")}
	}
	cuts := max(1, w.count("cuts"))
	r := calc.PiecesRequest{Conventions: c, From: from, Piece: piece, OneWay: w.word("print") != "" || strips}
	p, err := calc.Pieces(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.Pieces(r, p) })
	w.figure("across", p.Across)
	w.figure("down", p.Down)
	w.figure("pieces", p.Pieces*cuts)
	if strips {
		w.figure("strips", p.Pieces*cuts)
		w.say("%v of %v from %s.", counted(p.Pieces*cuts, "strip"), piece.Length, name)
		w.say("Each is %v long. Straightening the edge first may cost one.", from.Width)
		w.show(p.Working)
		w.does(cutting)
		return nil
	}
	w.say("%v pieces of %v from %s: %v across and %v down.", p.Pieces*cuts, piece, name, p.Across, p.Down)
	if p.Other.Pieces > 0 && p.Other.Pieces != p.Pieces {
		w.say("Turned the other way it would be %v.", p.Other.Pieces*cuts)
	}
	if w.given("cut") && p.IfShort < p.Pieces {
		w.say("Many are cut half an inch short; from such a one it is %v.", p.IfShort*cuts)
	}
	w.show(p.Working)
	w.does(cutting)
	return nil
}

// pieceSource gives the piece of fabric that is cut up, and its name.
func pieceSource(w *work, c *calc.Conventions, strips bool) (measure.Size, string, error) {
	wide := func() { *c = w.conventions("usable_width") }
	switch {
	case w.given("precut_square"):
		l := w.length("precut_square")
		return calc.PrecutSquare(l), w.format("a square of %v", l), nil
	case w.given("from"):
		v, _ := w.value("from")
		return v.Size, v.Size.Show(w.system), nil
	case w.given("cloth"):
		wide()
		cloth := measure.Cloth(w.length("cloth"))
		return c.OffTheBolt(cloth), cloth.Show(w.system), nil
	}
	switch w.word("cut") {
	case "fat quarter":
		wide()
		return c.FatQuarter(), cutsNamed(w, "fat quarter"), nil
	case "fat eighth":
		wide()
		return c.FatEighth(), cutsNamed(w, "fat eighth"), nil
	case "long quarter":
		wide()
		return c.LongQuarter(), cutsNamed(w, "long quarter"), nil
	}
	if w.given("strip_width") && !strips {
		wide()
		l := w.length("strip_width")
		return measure.Size{Width: c.UsableWidth, Length: l}, w.format("a strip of %v", l), nil
	}
	if w.given("precut_strip") && !strips {
		wide()
		l := w.assumeLength("precut_strip")
		return measure.Size{Width: c.UsableWidth, Length: l}, w.format("a precut strip of %v", l), nil
	}
	return measure.Size{}, "", w.needs("cloth")
}

func cutsNamed(w *work, noun string) string {
	if n := w.count("cuts"); n > 1 {
		return counted(n, noun)
	}
	return "a " + noun
}
