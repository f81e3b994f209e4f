package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const gooseWord words.Concept = "flying geese"

// flyingGeeseTopic: rectangles with a triangle.
func flyingGeeseTopic() Topic {
	return Topic{
		Name: "flying-geese", Group: CutIt, Title: "flying geese, singly or four at a time",
		Terms: []words.Term{
			{Concept: gooseWord, Words: "flying geese, flying goose, geese, goose, flying geese unit, fg unit, flyinggeese"},
		},
		Says: append(says(12, gooseWord), says(3, noWaste, fourAtATime, oneAtATime)...),
		Inputs: []input{
			{name: "size", kind: aSize, usual: [2]float64{0.5, 16}, prior: 6, after: of(gooseWord, finished, unitPc), before: of(gooseWord, finished), label: "the size, finished",
				ask: "How big are the geese, finished?", offer: []string{"2 x 4", "3 x 6"}},
			{name: "height", kind: aLength, usual: [2]float64{0.5, 6}, after: of(high), before: of(high), label: "the height"},
			{name: "width", kind: aLength, usual: [2]float64{1, 12}, after: of(wide, long), before: of(wide), label: "the width"},
			{name: "geese", kind: aCount, usual: [2]float64{2, 1000}, prior: 3, after: of(gooseWord, unitPc, ofThem), before: of(need, makeIt), label: "how many geese"},
			{name: "square", kind: aLength, usual: [2]float64{3, 20}, after: of(squarePc, precut), before: of(fromWord, have), when: of(fromWord, have, precut), label: "the large square in hand"},
			atATimeInput(), wayInput(), usableWidth(), seamAllowance(),
		},
		Needs:    [][]string{{"size", "height", "width", "square"}},
		Examples: []string{"16 flying geese 3 x 6", "a dozen geese 2 x 4 singly"},
		Source:   "four at a time: width + 1¼ and four squares of height + ⅞ (alinequilts.blogspot.com, March 2011); singly: a rectangle and two squares flipped over its corners, common practice, no source.",
		Work:     workFlyingGeese,
		Other:    otherGeese,
	}
}

// otherGeese changes between singly and four at a time.
func otherGeese(now, before map[string]Value) {
	n := 4
	if before["way"].Word == "four" || before["at_a_time"].Count == 4 || before["way"].Word == "" && before["at_a_time"].Count == 0 {
		n = 1
	}
	delete(before, "way")
	now["at_a_time"] = Value{Kind: aCount, Count: n}
}

func workFlyingGeese(w *work) error {
	r := calc.GeeseRequest{AtATime: w.atATime(), Geese: w.count("geese"), Width: w.length("width"), Height: w.length("height"), LargeSquare: w.length("square")}
	parts := []string{"seam"}
	r.Conventions = w.conventions(parts...)
	if v, ok := w.value("size"); ok {
		r.Width, r.Height = max(v.Size.Width, v.Size.Length), min(v.Size.Width, v.Size.Length)
		if v.Cut == cutSize {
			r.Width, r.Height = r.Width-2*r.Seam, r.Height-2*r.Seam
		}
	}
	if r.AtATime == 0 && w.defaults.Words["geese"] == "singly" {
		r.AtATime = 1
		w.assume("at_a_time", 1)
	}
	g, err := calc.FlyingGeese(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.FlyingGeese(r, g) })
	if r.AtATime == 0 {
		w.assume("at_a_time", g.AtATime)
	}
	if g.AtATime == 1 {
		w.figure("goose_width", g.GooseWidth)
		w.figure("goose_height", g.GooseHeight)
		w.figure("corner_square", g.CornerSquare)
		if g.Geese > 0 {
			w.figure("geese", g.Geese)
			w.figure("corners", g.Corners)
			w.say("Cut %v of %v and %v of %v.", counted(g.Geese, "rectangle"), measure.Size{Width: g.GooseHeight, Length: g.GooseWidth}, counted(g.Corners, "square"), g.CornerSquare)
		} else {
			w.say("For each: one rectangle of %v and two squares of %v.", measure.Size{Width: g.GooseHeight, Length: g.GooseWidth}, g.CornerSquare)
		}
		w.say("Flip a square over each corner of the rectangle, sew across and trim.")
	} else {
		w.figure("large_square", g.LargeSquare)
		w.figure("small_square", g.SmallSquare)
		if g.Geese > 0 {
			w.figure("large_squares", g.LargeSquares)
			w.figure("small_squares", g.SmallSquares)
			w.figure("geese", g.Geese)
			w.say("Cut %v of %v and %v of %v, four geese at a time.", counted(g.LargeSquares, "large square"), g.LargeSquare, counted(g.SmallSquares, "small one"), g.SmallSquare)
		} else {
			w.say("One large square of %v and four small ones of %v make four geese.", g.LargeSquare, g.SmallSquare)
		}
	}
	line := w.format("Each goose finishes at %v and measures %v before it is sewn in.", measure.Size{Width: g.Height, Length: g.Width}, measure.Size{Width: g.Unfinished.Length, Length: g.Unfinished.Width})
	if g.Unfinished.Width < g.Unfinished.Length {
		line = w.format("Each goose finishes at %v and measures %v before it is sewn in.", measure.Size{Width: g.Height, Length: g.Width}, g.Unfinished)
	}
	w.say("%s", line)
	if g.Made > g.Geese && g.Geese > 0 {
		w.say("That makes %v, so %v are over.", g.Made, g.Made-g.Geese)
	}
	if g.AtATime == 4 {
		w.say(`Say "singly" for a rectangle and two corner squares each.`)
	}
	w.show(g.Working)
	w.does(cutting, pressing)
	return nil
}
