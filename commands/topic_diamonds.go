package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const (
	starWord  words.Concept = "star"
	starBlock words.Concept = "star block"
)

// diamondsTopic: 45° and 60° diamonds cut from strips.
func diamondsTopic() Topic {
	return Topic{
		Name: "diamonds", Group: CutIt, Title: "diamonds of 45° or 60° cut from strips, and the star they make",
		Terms: []words.Term{
			{Concept: starWord, Words: "lemoyne star, 8 pointed star, 8 point star, eight point star, 6 pointed star, lone star, le moyne star, star of diamonds, tumbling block, baby block"},
		},
		Says: says(12, diamond, starWord),
		Inputs: []input{
			{name: "angle", kind: anAngle, prior: 2, usual: [2]float64{30, 60}, after: of(angleWord), before: of(angleWord), label: "the angle", ask: "Are they 45° or 60° diamonds?", offer: []string{"45°", "60°"}},
			{name: "strip_width", kind: aLength, usual: [2]float64{1, 10}, prior: 2, after: of(strip, wide), before: of(strip, fromWord, unfinished), not: of(finished, sideOfIt), label: "the strip", replaces: []string{"side"},
				ask: "How wide are the strips, or how long is a side, finished?", offer: []string{"2½ in strips", "3 in sides"}},
			{name: "side", kind: aLength, usual: [2]float64{0.75, 10}, prior: 2, after: of(sideOfIt, finished, eachSide, long, diamond), before: of(sideOfIt, finished), not: of(strip), label: "one side, finished", replaces: []string{"strip_width"}},
			{name: "star", kind: aLength, usual: [2]float64{4, 40}, after: of(starWord, block), before: of(starWord, block), when: of(starWord, block), label: "the star's block", replaces: []string{"strip_width", "side"}},
			{name: "diamonds", kind: aCount, usual: [2]float64{6, 2000}, prior: 1, after: of(diamond), before: of(need), label: "how many diamonds"},
			{name: "stars", kind: aCount, after: of(starWord), label: "how many stars"},
			{name: "kind", kind: aWord, words: map[words.Concept]string{starWord: "star"}},
			usableWidth(), seamAllowance(),
		},
		Needs:    [][]string{{"strip_width", "side", "star"}},
		Examples: []string{"45° diamonds from 2½ in strips", "60° diamonds 3 in finished, 48 of them"},
		Source:   "strip = side × sin(angle) + ½, cut at the same width along the strip (karencombs.com, formulas for quilters; geometry).",
		Work:     workDiamonds,
	}
}

func workDiamonds(w *work) error {
	r := calc.DiamondRequest{Diamonds: w.count("diamonds"), Stars: w.count("stars")}
	r.Conventions = w.conventions("usable_width", "seam")
	angle, ok := w.value("angle")
	switch {
	case ok:
		r.Angle = measure.Angle(angle.Number)
	case w.given("star") || w.given("stars") || w.word("kind") == "star":
		r.Angle = calc.StarDiamond
	default:
		return w.needs("angle")
	}
	switch {
	case w.given("strip_width"):
		r.Strip = w.length("strip_width")
	case w.given("side"):
		r.Side = w.finished("side", r.Seam)
	default:
		r.StarBlock = w.finished("star", r.Seam)
	}
	d, err := calc.Diamonds(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.Diamond(d, r.System) })
	w.draws(func() scene.Scene { return scene.DiamondsOnStrip(d, r.System) })
	w.prints(func() scene.Templates { return scene.DiamondTemplates(d, r.System) })
	w.figure("strip_width", d.StripWidth)
	w.figure("per_strip", d.PerStrip)
	if d.Strips > 0 {
		w.figure("strips", d.Strips)
		w.figure("diamonds", d.Diamonds)
		w.figure("buy", d.Buy)
		w.say("%v, %v wide, with %v diamonds from each: buy %v.", counted(d.Strips, "strip"), d.StripWidth, d.PerStrip, d.Buy)
	} else {
		w.say("%v diamonds of %v from a strip %v wide.", d.PerStrip, d.Angle, d.StripWidth)
	}
	w.say("Cut across the strip at %v, every %v. They finish %v a side.", d.Angle, d.StripWidth, d.Side)
	if s := d.Star; s != nil {
		w.figure("star_block", s.Block)
		w.figure("corner_square", s.CornerSquare)
		w.figure("side_square", s.SideSquare)
		w.say("Eight make a star %v across: four corner squares of %v, and one square of %v cut twice for the sides.", s.Block, s.CornerSquare, s.SideSquare)
	}
	w.show(d.Working)
	w.does(cutting)
	return nil
}
