package commands

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const (
	twoPatch     words.Concept = "two-patch"
	fourPatch    words.Concept = "four-patch"
	ninePatch    words.Concept = "nine-patch"
	sixteenPatch words.Concept = "sixteen-patch"
	railFence    words.Concept = "rail"
	checkerboard words.Concept = "checkerboard"
	setOfStrips  words.Concept = "strip set"
)

// stripSetTopic: patches cut from strips that are sewn together first.
func stripSetTopic() Topic {
	return Topic{
		Name: "strip-set", Group: CutIt, Title: "four-patches, nine-patches, rails and checkerboards from strip sets",
		Terms: []words.Term{
			{Concept: twoPatch, Words: "2 patch, 2 patch block, twopatch"},
			{Concept: fourPatch, Words: "4 patch, 4 patch block, fourpatch, 4 patch unit"},
			{Concept: ninePatch, Words: "9 patch, 9 patch block, ninepatch, 9 patch unit"},
			{Concept: sixteenPatch, Words: "16 patch, 16 patch block, sixteenpatch"},
			{Concept: railFence, Words: "rail fence, rail, rail fence block, 3 rail, split rail"},
			{Concept: checkerboard, Words: "checkerboard, chequerboard, checker board, chequer board, checkered"},
			{Concept: setOfStrips, Words: "strip set, stripset, strip piecing, strip pieced, strata, strip sets"},
		},
		Says: append(says(11, twoPatch, fourPatch, ninePatch, sixteenPatch, railFence, checkerboard, setOfStrips), says(2, strip)...),
		Inputs: []input{
			{name: "strip_width", kind: aLength, usual: [2]float64{1, 8}, prior: 4, after: of(strip, wide, unfinished, cutVerb), before: of(strip, cutVerb, unfinished, fromWord, wide, atPrice), not: of(finished, block), label: "the strip width", replaces: []string{"block"},
				ask: "How wide are the strips, as cut?", offer: []string{"2½ in"}},
			{name: "patch", kind: aLength, usual: [2]float64{0.5, 6}, after: of(squarePc, piece), before: of(squarePc, piece), when: of(finished), label: "one patch, finished", replaces: []string{"strip_width", "block"}},
			{name: "block", kind: aLength, usual: [2]float64{2, 20}, after: of(block, fourPatch, ninePatch, sixteenPatch, railFence, checkerboard, finished), before: of(block, finished), label: "the block", replaces: []string{"strip_width"}},
			{name: "blocks", kind: aCount, usual: [2]float64{2, 500}, prior: 3, after: of(fourPatch, ninePatch, twoPatch, sixteenPatch, railFence, checkerboard, block, ofThem), before: of(need, makeIt, fourPatch, ninePatch, twoPatch), label: "how many blocks"},
			{name: "rails", kind: aCount, usual: [2]float64{2, 8}, after: of(railFence, strip), before: of(railFence), when: of(railFence), label: "the rails"},
			{name: "grid", kind: aGrid, usual: [2]float64{2, 12}, after: of(checkerboard, squarePc), before: of(checkerboard), when: of(checkerboard), label: "the squares of the board"},
			{name: "pattern", kind: aWord, ask: "Which block is it?", offer: []string{"four-patch", "nine-patch", "rail"}, words: map[words.Concept]string{twoPatch: "two-patch", fourPatch: "four-patch", ninePatch: "nine-patch", sixteenPatch: "sixteen-patch", railFence: "rail", checkerboard: "checkerboard"}},
			stripsInHand(),
			precutStrip(), usableWidth(), seamAllowance(),
		},
		Needs:    [][]string{{"pattern"}, {"strip_width", "patch", "block", "precut_strip"}},
		Examples: []string{"four patch from 2½ strips, 40 of them", "20 nine patches finishing 6 in"},
		Source:   "k strips of c make k(c − ½) + ½ wide, and a set gives strip length ÷ c segments (geometry).",
		Work:     workStripSet,
	}
}

func workStripSet(w *work) error {
	r := calc.StripSetRequest{Conventions: w.conventions("usable_width", "seam"), Blocks: w.count("blocks"), HaveStrips: w.count("have_strips")}
	pattern := w.word("pattern")
	switch pattern {
	case "two-patch":
		r.Rows, r.Columns = 2, 1
	case "four-patch":
		r.Rows, r.Columns = 2, 2
	case "nine-patch":
		r.Rows, r.Columns = 3, 3
	case "sixteen-patch":
		r.Rows, r.Columns = 4, 4
	case "rail":
		r.Rail, r.Columns = true, max(3, w.count("rails"))
		r.Rows = 1
		if !w.given("rails") {
			w.assume("rails", r.Columns)
		}
	case "checkerboard":
		v, ok := w.value("grid")
		if !ok {
			return &question{input: "grid", text: "How many squares across and down has the checkerboard?", choices: []string{"4 x 4", "8 x 8"}}
		}
		r.Rows, r.Columns = v.Down, v.Count
	default:
		return w.needs("pattern")
	}
	switch {
	case w.given("strip_width"):
		r.Strip = w.length("strip_width")
	case w.given("patch"):
		r.Finished = w.finished("patch", r.Seam)
	case !w.given("block"):
		r.Strip = w.assumeLength("precut_strip")
	default:
		block := w.finished("block", r.Seam)
		n := measure.Length(max(r.Rows, r.Columns))
		if block%n != 0 {
			return w.cannot("A block of %v does not divide into %v patches on the ruler. %v works.", block, max(r.Rows, r.Columns), (block/n).RoundUp(r.CutStep)*n)
		}
		r.Finished = block / n
	}
	s, err := calc.StripSet(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.StripSet(r, s) })
	if s.Strips > 0 {
		w.figure("strips", s.Strips)
		if s.StripsEach > 0 {
			w.figure("strips_each", s.StripsEach)
		}
		w.figure("segments", s.Segments)
	}
	w.figure("segment_width", s.SegmentWidth)
	w.figure("strip_width", s.Strip)
	w.figure("unfinished", s.Unfinished)
	for i, b := range s.Buy {
		if b == 0 {
			continue
		}
		w.figure(fmt.Sprintf("colour%d.buy", i+1), b)
	}
	w.enoughCount(s.Hand, "strip")
	if s.Strips > 0 {
		each := ""
		if s.StripsEach > 0 && s.StripsEach != s.Strips {
			each = fmt.Sprintf(", %d of each colour", s.StripsEach)
		}
		w.say("%v of %v%s: %v, cut into %v of %v.", counted(s.Strips, "strip"), s.Strip, each, counted(s.Sets, "strip set"), counted(s.Segments, "segment"), s.SegmentWidth)
		if s.StripsEach == 0 {
			w.say("Of the colours it takes %s.", stripsOf(s.StripsOf))
		}
		if s.OneFewerShort > 0 && s.Sets > 1 {
			w.say("One strip set fewer would be %v short.", counted(s.OneFewerShort, "block"))
		}
	} else {
		w.say("Sew strips of %v together and cut segments of %v.", s.Strip, s.SegmentWidth)
		w.say("A strip set gives %v segments.", s.SegmentsPer)
	}
	w.say("The sewn set is %v wide; the block finishes at %v.", s.Unfinished, s.Finished)
	w.show(s.Working)
	w.does(cutting, pressing)
	return nil
}

func stripsOf(counts []int) string {
	var parts []string
	for i, n := range counts {
		parts = append(parts, fmt.Sprintf("%d of colour %d", n, i+1))
	}
	return andList(parts)
}
