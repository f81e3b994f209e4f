package commands

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const (
	innerBorder words.Concept = "inner border"
	outerBorder words.Concept = "outer border"
	midBorder   words.Concept = "middle border"
	mitred      words.Concept = "mitred"
	butted      words.Concept = "butted"
	cornerSqs   words.Concept = "corner squares"
	lengthwise  words.Concept = "along the length"
	bringTo     words.Concept = "bring to"
)

// bordersTopic: one border or several, and the quilt with them.
func bordersTopic() Topic {
	return Topic{
		Name: "borders", Group: SizeIt, Title: "borders: what to cut, and the quilt with them",
		Terms: []words.Term{
			{Concept: innerBorder, Words: "inner border, first border, inside border, narrow border, inner, accent border"},
			{Concept: midBorder, Words: "middle border, second border, next border"},
			{Concept: outerBorder, Words: "outer border, third border, outside border, last border, wide border, outer, final border"},
			{Concept: mitred, Words: "mitred, mitered, mitre, miter, mitred corner, mitered corner, mitring"},
			{Concept: butted, Words: "butted, butt, straight corner, butted corner, square corner"},
			{Concept: cornerSqs, Words: "corner square, border cornerstone, cornerstones in the border, square in each corner, squares in the corner, corner block, corner post"},
			{Concept: lengthwise, Words: "along the length, cut along the length, lengthwise grain, along the grain, cut lengthwise, length of fabric, lof, down the length, parallel to the selvage, parallel to the selvedge, without joins, in one piece"},
			{Concept: bringTo, Words: "bring it to, bring to, bring it up to, reach, get it to, get to, bring up to, take it to, take it up to, so it is, so it ends up, so that it is, end up at, ends up, to make it, grow to, up to, finish up at, make it up to"},
		},
		Says: append(says(named, border, innerBorder, outerBorder, midBorder), says(3, mitred, butted, bringTo, cornerSqs)...),
		Inputs: []input{
			quiltSize(),
			{name: "inner_border", kind: aLength, usual: [2]float64{0.5, 6}, after: of(innerBorder), before: of(innerBorder), label: "the inner border"},
			{name: "middle_border", kind: aLength, usual: [2]float64{0.5, 8}, after: of(midBorder), before: of(midBorder), label: "the middle border"},
			{name: "outer_border", kind: aLength, usual: [2]float64{1, 12}, after: of(outerBorder), before: of(outerBorder), label: "the outer border"},
			{name: "border", kind: aLength, many: true, usual: [2]float64{0.5, 12}, prior: 4, label: "the border",
				after: of(border, wide, finished), before: of(border, wide), not: of(fabric, strip, seam), ask: "How wide is the border, finished?", offer: []string{"3 in", "4 in"}},
			{name: "borders", kind: aCount, after: of(border), when: of(border), label: "how many borders"},
			{name: "wanted", kind: aSize, usual: [2]float64{10, 140}, before: of(bringTo, wantWord), when: of(bringTo, upTo, wantWord), prior: 2, label: "the size it should reach"},
			{name: "corners", kind: aWord, words: map[words.Concept]string{mitred: "mitred", butted: "butted", cornerSqs: "squares"}},
			{name: "grain", kind: aWord, words: map[words.Concept]string{lengthwise: "lengthwise"}},
			usableWidth(), seamAllowance(), clothInHand(), stripsInHand(),
		},
		Needs:    [][]string{{"quilt"}, {"border", "inner_border", "outer_border", "middle_border", "wanted"}},
		Examples: []string{"3 in border on 50 x 60", "borders of 1, 2½ and 4 on 48 x 62, mitred"},
		Source:   "butted borders: the sides first, then top and bottom across them (allpeoplequilt.com); strips joined end to end lose ½ in to each join (quiltingboard.com, t109880).",
		Work:     workBorders,
		Other:    otherCorners,
	}
}

// otherCorners changes between butted and mitred.
func otherCorners(now, before map[string]Value) {
	word := "mitred"
	if before["corners"].Word == word {
		word = "butted"
	}
	now["corners"] = Value{Kind: aWord, Word: word}
}

// borderWidths gives the borders from the inside out.
func borderWidths(w *work, seam measure.Length) []measure.Length {
	var out []measure.Length
	for _, name := range []string{"inner_border", "border", "middle_border", "outer_border"} {
		if v, ok := w.value(name); ok {
			for _, l := range v.lengths() {
				if v.Cut == cutSize {
					l -= 2 * seam
				}
				out = append(out, l)
			}
		}
	}
	return out
}

func workBorders(w *work) error {
	quilt, _ := w.value("quilt")
	c := w.conventions("usable_width", "seam")
	widths := borderWidths(w, c.Seam)
	if wanted, ok := w.value("wanted"); ok && len(widths) == 0 {
		if wanted.Size.Width < quilt.Size.Width {
			quilt, wanted = wanted, quilt
		}
		return workBorderToReach(w, c, quilt.Size, wanted.Size)
	}
	if n := w.count("borders"); n > 1 && n != len(widths) {
		if len(widths) > 1 {
			return w.cannot("You speak of %v borders and give %v widths. Tell me each width from the inside out, like this: borders of 1, 2½ and 4 on 50 x 60.", n, len(widths))
		}
		return &question{input: "border", text: fmt.Sprintf("How wide is each of the %d borders, from the inside out?", n), choices: nil}
	}
	r := calc.BordersRequest{
		Conventions: c, Quilt: quilt.Size, Widths: widths, Corners: calc.ButtedCorners,
		Join: calc.StraightJoin, Lengthwise: w.word("grain") != "", Have: measure.Cloth(w.length("have")),
	}
	switch w.wordOr("corners", "corners") {
	case "mitred":
		r.Corners, r.Spare = calc.MitredCorners, w.assumeLength("mitre_spare")
	case "squares":
		r.Corners = calc.SquaredCorners
	}
	b, err := calc.Borders(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.Borders(r, b) })
	w.size = measure.Size{Width: b.QuiltWidth, Length: b.QuiltLength}
	w.enoughCloth(b.Cloth)
	if n := w.count("have_strips"); n > 0 {
		need := 0
		for _, one := range b.Borders {
			need += one.Strips
		}
		w.enoughCount(calc.CountCheck{Given: true, Have: n, Enough: n >= need, Spare: max(0, n-need), Short: max(0, need-n)}, "strip")
	}
	for i, one := range b.Borders {
		sayBorder(w, r, one, borderName(i, len(b.Borders)))
	}
	w.figure("quilt_width", b.QuiltWidth)
	w.figure("quilt_length", b.QuiltLength)
	w.say("With %s the quilt is %v.", theBorders(len(b.Borders)), w.size)
	if len(b.Borders) > 1 && len(b.Borders) <= 3 {
		w.say("All from one fabric: %v.", b.Buy)
	}
	w.show(b.Working)
	w.does(cutting, pressing)
	return nil
}

func theBorders(n int) string {
	if n == 1 {
		return "the border"
	}
	return "the borders"
}

// borderName tells the figures of several borders apart.
func borderName(i, n int) string {
	if n == 1 {
		return ""
	}
	return fmt.Sprintf("border%d.", i+1)
}

// sayBorder gives the figures and the words for one border.
func sayBorder(w *work, r calc.BordersRequest, b calc.Border, prefix string) {
	w.figure(prefix+"side_cut", b.SideCut)
	w.figure(prefix+"top_cut", b.TopCut)
	w.figure(prefix+"strip_width", b.StripWidth)
	w.figure(prefix+"strips", b.Strips)
	if b.Corner.Width > 0 {
		w.figure(prefix+"corner_square", b.Corner.Width)
	}
	w.figure(prefix+"buy", b.Buy)
	head := "Cut"
	if prefix != "" {
		head = w.format("The %v border: cut", b.Width)
	}
	line := w.format("%s two sides %v, and a top and a bottom %v, from strips %v wide: %v, buy %v.", head, b.SideCut, b.TopCut, b.StripWidth, counted(b.Strips, "strip"), b.Buy)
	switch r.Corners {
	case calc.MitredCorners:
		line = w.format("%s two of %v and two of %v, from strips %v wide: %v, buy %v. Mitre the corners and trim.", head, b.SideCut, b.TopCut, b.StripWidth, counted(b.Strips, "strip"), b.Buy)
	case calc.SquaredCorners:
		line += w.format(" Four corner squares of %v.", b.Corner.Width)
	}
	w.say("%s", line)
	switch {
	case r.Lengthwise:
		w.say("Cut along the length, side by side, in one piece each.")
	case prefix == "" && b.Joined && b.OneFewerShort > 0:
		line := w.format("Join them end to end. %v would be %v short", counted(b.Strips-1, "strip"), b.OneFewerShort)
		if b.OneFewerWidth > 0 && b.OneFewerWidth <= widestCotton {
			line += w.format(", or just enough on fabric of %v", b.OneFewerWidth)
		}
		w.say("%s.", line)
	}
}

// workBorderToReach answers the question turned round: the border that brings
// a quilt to a size.
func workBorderToReach(w *work, c calc.Conventions, quilt, wanted measure.Size) error {
	b, err := calc.BorderToReach(calc.BorderToReachRequest{Conventions: c, Quilt: quilt, Wanted: wanted})
	if err != nil {
		return err
	}
	w.size = wanted
	if b.SideFinished == b.TopFinished {
		r := calc.BordersRequest{Conventions: c, Quilt: quilt, Widths: []measure.Length{b.SideFinished}, Corners: calc.ButtedCorners, Join: calc.StraightJoin}
		all, err := calc.Borders(r)
		if err != nil {
			return err
		}
		w.draws(func() scene.Scene { return scene.Borders(r, all) })
		one := all.Borders[0]
		w.figure("side_cut", one.SideCut)
		w.figure("top_cut", one.TopCut)
		w.figure("strips", one.Strips)
		w.figure("buy", one.Buy)
		w.figure("border", b.SideFinished)
		w.figure("strip_width", b.SideStrip)
		w.say("A border that finishes at %v all round: cut strips %v wide.", b.SideFinished, b.SideStrip)
	} else {
		w.figure("side_border", b.SideFinished)
		w.figure("top_border", b.TopFinished)
		w.figure("side_strip", b.SideStrip)
		w.figure("top_strip", b.TopStrip)
		w.say("It takes %v left and right and %v at top and bottom, finished: strips of %v and %v.", b.SideFinished, b.TopFinished, b.SideStrip, b.TopStrip)
	}
	w.figure("quilt_width", wanted.Width)
	w.figure("quilt_length", wanted.Length)
	w.say("That brings %v to %v.", quilt, wanted)
	w.show(b.Working)
	w.does(cutting)
	return nil
}
