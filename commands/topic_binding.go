package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const bindingWord words.Concept = "binding"

// bindingTopic: strips that bind the edge of a quilt.
func bindingTopic() Topic {
	return Topic{
		Name: "binding", Group: FinishIt, Title: "binding strips round a quilt", Together: true,
		Terms: []words.Term{
			{Concept: bindingWord, Words: "binding, binding fabric, bind, bound, bind it, binding strip, double fold binding, bindng, edge binding, binds"},
		},
		Says: append(says(14, bindingWord), says(4, perimeter, around, closing, allRound)...),
		Inputs: []input{
			quiltSize(),
			{name: "perimeter", kind: aLength, anyUnit: true, usual: [2]float64{60, 600}, after: of(perimeter, around, allRound), before: of(perimeter, around, allRound), label: "the length round the edge"},
			{name: "across", kind: aLength, usual: [2]float64{10, 120}, after: of(across, circle), before: of(across, circle), when: of(circle, across), prior: 2, not: of(strip), label: "the size across"},
			{name: "side", kind: aLength, usual: [2]float64{5, 60}, after: of(eachSide, sideOfIt), before: of(eachSide, sideOfIt), when: of(hexagon), prior: 2, not: of(strip), label: "one side"},
			{name: "strip_width", kind: aLength, usual: [2]float64{1, 4}, prior: 3, label: "the strip width",
				after: of(strip, bindingWord, wide, cutVerb), before: of(strip, cutVerb, bindingWord, wide, atPrice), not: of(border, fabric, extra, seam)},
			{name: "extra", kind: aLength, zero: true, usual: [2]float64{2, 30}, after: of(extra), before: of(extra), label: "the extra for corners and joins"},
			{name: "shape", kind: aWord, words: map[words.Concept]string{hexagon: "hexagon", circle: "circle"}},
			{name: "joins", kind: aWord, words: map[words.Concept]string{straightJoin: "straight"}},
			usableWidth(), stripsInHand(), clothInHand(),
		},
		Needs:    [][]string{{"quilt", "perimeter", "across", "side"}},
		Examples: []string{"binding for 54 x 68", "bind a circle 28 in across with 2¼ in strips"},
		Source:   "strips are joined on the diagonal, and each join uses up one strip width (quiltingboard.com, t109880; christaquilts.com, quilty math).",
		Work:     workBinding,
	}
}

func workBinding(w *work) error {
	r := calc.BindingRequest{
		Conventions: w.conventions("usable_width"),
		StripWidth:  w.lengthOr("strip_width", "binding_strip"),
		Extra:       w.lengthOr("extra", "binding_extra"),
		Join:        calc.DiagonalJoin,
		HaveStrips:  w.count("have_strips"),
		Have:        measure.Cloth(w.length("have")),
	}
	if w.wordOr("joins", "joins") == "straight" {
		r.Join = calc.StraightJoin
	}
	round := "the quilt"
	switch {
	case w.given("quilt"):
		v, _ := w.value("quilt")
		r.Edge, w.size = calc.RectangleEdge(v.Size), v.Size
	case w.given("across"):
		r.Edge, round = calc.CircleEdge(w.length("across")), "the circle"
	case w.given("side"):
		r.Edge, round = calc.PolygonEdge(6, w.length("side")), "the hexagon"
	default:
		r.Edge, round = calc.MeasuredEdge(w.length("perimeter")), "the edge"
	}
	b, err := calc.Binding(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.Binding(r, b) })
	w.figure("perimeter", b.Perimeter)
	w.figure("length_needed", b.LengthNeeded)
	w.figure("strips", b.Strips)
	w.figure("strip_width", b.StripWidth)
	w.figure("buy", b.Buy)
	w.enoughStrips(b.InHand, b.InHandShort)
	w.enoughCloth(b.Cloth)

	w.say("%v, %v wide: buy %v.", counted(b.Strips, "strip"), b.StripWidth, b.Buy)
	joined := "Joined on the diagonal they make"
	if r.Join == calc.StraightJoin {
		joined = "Joined straight they make"
	}
	if b.Strips == 1 {
		joined = "It makes"
	}
	line := w.format("%s %v. You need %v: %v round %s and %v for corners and the closing join.", joined, b.Covers, b.LengthNeeded, b.Perimeter, round, r.Extra)
	if b.Strips > 1 {
		line += " " + w.format("%v would be %v short", counted(b.Strips-1, "strip"), b.OneFewerShort)
		if b.OneFewerWidth > 0 && b.OneFewerWidth <= widestCotton {
			line += w.format(", or just enough on fabric of %v", b.OneFewerWidth)
		}
		line += "."
	}
	w.say("%s", line)
	if r.Edge.Perimeter > 0 && w.given("across") {
		w.say("A curved edge wants bias strips; ask me for bias binding.")
	}
	w.show(b.Working)
	w.does(cutting)
	return nil
}
