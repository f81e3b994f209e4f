package commands

import (
	"context"
	"errors"
	"fmt"
	"math"

	strips "counterhand/calc/cutting"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const cuttingPlan words.Concept = "cutting plan"

// cuttingPlanTopic: the least fabric for a list of pieces.
func cuttingPlanTopic() Topic {
	return Topic{
		Name: "cutting-plan", Group: CutIt, Title: "the least fabric for a list of pieces, strip by strip",
		Terms: []words.Term{
			{Concept: cuttingPlan, Words: "cutting plan, cut plan, cutting list, cut list, cutting layout, least fabric, plan the cuts, plan my cuts, plan for cutting, best way to cut, best plan, how little cloth, how little fabric, least cloth, least amount of fabric, smallest amount of fabric, cutting diagram, layout for cutting, efficient way to cut, lay out the pieces, give me strips, minimum fabric"},
		},
		Says: append(says(16, cuttingPlan), says(2, squarePc, rectangle, piece)...),
		Inputs: []input{
			{name: "pieces", kind: aList, label: "the pieces", ask: "Which pieces, how many and what size? For example: 52 squares 4 in, 20 squares 3 in.", offer: []string{"52 squares 4 in, 20 squares 3 in"}},
			usableWidth(), oneWayPrint(),
		},
		Needs:    [][]string{{"pieces"}},
		Examples: []string{"cutting plan: 52 squares 4 in, 20 squares 3 in", "least fabric for 8 squares 10 in and 16 rectangles 3 x 5"},
		Source:   "strips across the fabric first, then cross cuts; the least total of strip widths (Gilmore and Gomory, Operations Research 13, 1965, from memory).",
		Read:     readPieces,
		Work:     workCuttingPlan,
	}
}

// readPieces pairs counts with sizes: "52 squares 4 in, 12 rectangles 4 x 10".
// A single kind of piece is left to the other topics, unless a plan is asked for.
func readPieces(m matcher, qs []quantity) (map[string]Value, []bool) {
	used := make([]bool, len(qs))
	var items []Item
	for i := 0; i+1 < len(qs); i++ {
		count, size := qs[i], qs[i+1]
		if !isCountOf(count) && isCountOf(size) {
			count, size = size, count
		}
		if !isCountOf(count) || !isPieceSize(size) || m.speaksOfFabric(size) {
			continue
		}
		n := clampCount(count.first())
		items = append(items, Item{Count: n, Size: m.pieceSize(size), Name: safe(count.text + " of " + size.text)})
		used[i], used[i+1] = true, true
		i++
	}
	if len(items) < 2 && !m.speaksOf(of(cuttingPlan)) || len(items) == 0 {
		return nil, nil
	}
	return map[string]Value{"pieces": {Kind: aList, Items: items, From: fmt.Sprintf("%d kinds of pieces", len(items))}}, used
}

// isCountOf tells whether a number can be how many pieces there are.
func isCountOf(q quantity) bool {
	return len(q.numbers) == 1 && q.unit() == measure.NoUnit && whole(q.first()) && !q.square && !q.percent && !q.money && !q.foreign
}

// isPieceSize tells whether a number can be the size of a piece.
func isPieceSize(q quantity) bool {
	u := q.unit()
	return !q.ranged && !q.percent && !q.money && !q.foreign && (u == measure.NoUnit || u.IsLength()) && u != measure.YardUnit && len(q.numbers) <= 2
}

// speaksOfFabric tells whether a number is the width of the fabric.
func (m matcher) speaksOfFabric(q quantity) bool {
	return m.near(usable, q) || m.near(fabric, q)
}

// pieceSize gives the size of a piece; one number is a square.
func (m matcher) pieceSize(q quantity) measure.Size {
	v := m.read(&input{kind: aSize}, q)
	return v.Size
}

// planEffort bounds the search for a plan, so that a long list is answered in a
// breath; see package cutting.
const planEffort = 40_000

func workCuttingPlan(w *work) error {
	list, _ := w.value("pieces")
	c := w.conventions("usable_width")
	r := strips.Request{Width: c.UsableWidth, Effort: planEffort}
	for _, i := range list.Items {
		r.Pieces = append(r.Pieces, strips.Piece{Count: i.Count, Width: i.Size.Width, Length: i.Size.Length, OneWay: w.word("print") != ""})
	}
	plan, err := strips.Best(context.Background(), r)
	var wide *strips.TooWideError
	switch {
	case errors.As(err, &wide):
		return w.cannot("A piece of %v does not fit fabric of %v. Wider fabric works, or a piece in two parts.", measure.Size{Width: wide.Piece.Width, Length: wide.Piece.Length}, c.UsableWidth)
	case err != nil:
		return w.cannot("That list is more than I can lay out. Up to %v kinds and %v pieces work.", strips.MaxSizes, strips.MaxPieces)
	}
	w.draws(func() scene.Scene { return scene.CuttingPlan(r, plan, w.system) })
	buy := c.BuyUp(plan.Length)
	w.figure("length", plan.Length)
	w.figure("buy", buy)
	w.figure("waste", percent(math.Round(plan.Waste*100)/100))
	w.say("Buy %v: the strips take %v of it.", buy, plan.Length)
	shown := 0
	for i, s := range plan.Strips {
		yields := stripYields(w, s)
		w.figure(fmt.Sprintf("strip%d.width", i+1), s.Height)
		w.figure(fmt.Sprintf("strip%d.times", i+1), s.Times)
		w.step("%v of %v: %v.", counted(s.Times, "strip"), s.Height, yields)
		if shown < maxPlanLines {
			w.say("%v of %v: %s.", counted(s.Times, "strip"), s.Height, yields)
			shown++
		}
	}
	if len(plan.Strips) > shown {
		w.say("Say \"show the working\" for the other %v.", len(plan.Strips)-shown)
	}
	w.say("%s %% of the fabric is left over.", trimmed(plan.Waste, 1))
	if !plan.Optimal {
		w.say("I did not prove it the least: nothing below %v can be.", plan.AtLeast)
	}
	w.say("I took the sizes as they are cut.")
	w.does(cutting)
	return nil
}

// maxPlanLines is how many kinds of strips are told before the working.
const maxPlanLines = 4

// stripYields says what one strip gives.
func stripYields(w *work, s strips.Strip) string {
	var parts []string
	for _, cut := range s.Cuts {
		parts = append(parts, w.format("%v of %v", cut.Count, measure.Size{Width: cut.Width, Length: cut.Height}))
	}
	return andList(parts)
}
