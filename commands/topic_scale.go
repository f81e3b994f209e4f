package commands

import (
	"fmt"

	"counterhand/calc"
	"counterhand/commands/words"
)

const (
	scaleWord  words.Concept = "scale"
	resizedTo  words.Concept = "into"
	wantWord   words.Concept = "want"
	shrinkVerb words.Concept = "shrink"
)

// scaleTopic: a block in another size.
func scaleTopic() Topic {
	return Topic{
		Name: "scale", Apart: true, Group: SizeIt, Title: "a block or pattern in another size",
		Terms: []words.Term{
			{Concept: scaleWord, Words: "scale, resize, enlarge, reduce, scale up, scale down, blow up, make bigger, make smaller, turn a, turn my, resizing, scaling, enlarging, by how much, what factor, factor, bigger block, smaller block, upsize, downsize, change the size, convert the block, rescale, scaled"},
			{Concept: shrinkVerb, Words: "shrink, shrink a block"},
			{Concept: wantWord, Words: "i want it, want it, i want, want, so it's, so that it's, instead of, rather than, it should be"},
		},
		About: of(scaleWord, shrinkVerb, block),
		Says:  append(says(6, scaleWord, shrinkVerb), append(says(2, block, wantWord, upTo), against(percentWord)...)...),
		Inputs: []input{
			{name: "from", kind: aLength, usual: [2]float64{2, 24}, prior: 3, after: of(block, quilt), before: of(scaleWord, shrinkVerb, fromWord, block), not: of(wantWord, upTo), label: "the size now", ask: "From which size to which, finished? For example: 9 in block to 12."},
			{name: "to", kind: aLength, usual: [2]float64{2, 30}, prior: 2, before: of(upTo, wantWord), label: "the size wanted", ask: "To which size, finished?", offer: []string{"to 12 in"}},
			{name: "patch", kind: aLength, many: true, usual: [2]float64{0.5, 14}, after: of(piece, squarePc, unfinished), before: of(cutVerb, squarePc, piece, unfinished), when: of(piece, squarePc, unfinished), label: "a patch as cut"},
			seamAllowance(),
		},
		Needs:    [][]string{{"from"}, {"to"}},
		Examples: []string{"9 in block to 12", "turn a 12 in block into 10, squares cut 3½"},
		Source:   "finished sizes scale, seams do not: take them off, multiply, put them back (comestitchwithme.com; onwilliamsstreet.com).",
		Work:     workScale,
	}
}

func workScale(w *work) error {
	v, _ := w.value("from")
	if v.Length == 0 {
		return w.cannot("A block has to be larger than nothing.")
	}
	c := w.conventions()
	r := calc.ScaleRequest{Conventions: c, From: w.finished("from", c.Seam), To: w.finished("to", c.Seam)}
	if p, ok := w.value("patch"); ok {
		r.Conventions = w.conventions("seam")
		for _, l := range p.lengths() {
			r.Patches = append(r.Patches, calc.ScalePatch{Patch: calc.RectanglePatch, Cut: calc.PrecutSquare(l)})
		}
	}
	s, err := calc.Scale(r)
	if err != nil {
		return err
	}
	w.figure("factor", factor(s.Factor))
	w.say("Multiply every finished size by %s.", trimmed(s.Factor, 4))
	w.say("%v to %v. Seams do not grow: take %v off a cut size, multiply, and add it back.", r.From, r.To, 2*c.Seam)
	for i, p := range s.Patches {
		w.figure(fmt.Sprintf("patch%d", i+1), p.Cut.Width)
		w.say("A patch cut %v becomes %v.", r.Patches[i].Cut.Width, p.Cut.Width)
	}
	w.show(s.Working)
	return nil
}
