package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const settingTri words.Concept = "setting triangles"

// settingTrianglesTopic: the triangles round blocks on point.
func settingTrianglesTopic() Topic {
	return Topic{
		Name: "setting-triangles", Group: CutIt, Title: "side and corner triangles for blocks on point",
		Terms: []words.Term{
			{Concept: settingTri, Words: "setting triangle, side triangle, corner triangle, side setting triangle, fill in triangle, fill-in triangle, filler triangle, edge triangle, side and corner triangle, side and corner setting triangle, edge and corner triangle, setting and corner triangle, triangles round the edge, triangles around the edge, edge triangle for blocks on point, corner setting triangle, outside triangle, end triangle, infill triangle"},
			{Concept: floatWord, Words: "float, floating, to float"},
		},
		Says: append(says(named, settingTri), says(3, onPoint, edge, sideOfIt, triangle)...),
		Inputs: []input{
			{name: "block", kind: aLength, usual: [2]float64{2, 24}, prior: 5, label: "the block",
				after: of(block, finished, unfinished, squarePc), before: of(block, finished, unfinished, settingTri), ask: "How big is the block, finished?", offer: []string{"9 in", "12 in"}},
			blockGrid(), blocksAcross(), blocksDown(),
			{name: "float", kind: aLength, usual: [2]float64{0.25, 3}, after: of(floatWord), before: of(floatWord), label: "how far the blocks float"},
			seamAllowance(),
		},
		Needs:    [][]string{{"block"}},
		Examples: []string{"setting triangles for 12 in blocks on point", "9 in blocks on point, 4 across 5 down, how many squares for the side triangles"},
		Source:   "side squares block × √2 + 1¼, cut twice; corner squares block ÷ √2 + ⅞, cut once (pinemeadowsdesigns.com; christaquilts.com, quilty math).",
		Work:     workSettingTriangles,
	}
}

const floatWord words.Concept = "float"

func workSettingTriangles(w *work) error {
	v, _ := w.value("block")
	across, down := w.counts()
	if (across == 0) != (down == 0) {
		across, down = 0, 0
	}
	parts := []string{"seam"}
	if across > 0 {
		parts = append(parts, "usable_width")
	}
	r := calc.SettingTrianglesRequest{
		Conventions: w.conventions(parts...), Block: v.Length, Unfinished: v.Cut == cutSize,
		Across: across, Down: down, Float: w.length("float"),
	}
	s, err := calc.SettingTriangles(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.SettingTriangles(s, r.System) })
	w.prints(func() scene.Templates { return scene.SettingTriangleTemplates(r, s) })
	w.figure("diagonal", s.Diagonal)
	w.figure("side_square", s.SideSquare)
	if across > 0 {
		w.figure("side_squares", s.SideSquares)
		w.size = measure.Size{Width: measure.Length(across) * s.Diagonal, Length: measure.Length(down) * s.Diagonal}
	}
	w.figure("corner_square", s.CornerSquare)
	w.figure("corner_squares", s.CornerSquares)
	if across > 0 {
		w.figure("buy", s.Buy)
	}
	w.say("Side triangles: cut squares of %v twice, corner to corner, into four. Corners: cut 2 squares of %v once, into two.", s.SideSquare, s.CornerSquare)
	if across > 0 {
		w.say("%v across and %v down take %v side triangles, so %v: %v of fabric with the corners.", across, down, s.SideTriangles, counted(s.SideSquares, "side square"), s.Buy)
	} else {
		w.say("Tell me how many blocks across and down and I count the side squares.")
	}
	if r.Unfinished {
		w.say("The block measures %v with its seams; its finished diagonal is %v.", v.Length, s.Diagonal)
	} else {
		w.say("I took %v as the finished block; its diagonal is %v.", v.Length, s.Diagonal)
	}
	w.say("Cut them a little larger if you like to trim: that keeps the straight grain on the edge and loses no points.")
	w.show(s.Working)
	w.does(cutting)
	return nil
}
