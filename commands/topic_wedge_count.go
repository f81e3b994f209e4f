package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/words"
)

const closing words.Concept = "closing"

// turnInput says how much of a circle the blades fill.
func turnInput() input {
	return input{name: "part", kind: aWord, words: map[words.Concept]string{halfRing: "half", quarterOf: "quarter", quarterCirc: "quarter", fanWord: "quarter", ring: "full", allRound: "full"}}
}

const fanWord words.Concept = "fan"

// turnOf gives the turn that the blades fill.
func turnOf(w *work) measure.Angle {
	switch w.word("part") {
	case "half":
		return calc.HalfTurn
	case "quarter":
		return calc.QuarterTurn
	}
	return calc.FullTurn
}

// partNames call the parts of a circle by name.
var partNames = map[measure.Angle]string{calc.FullTurn: "a full circle", calc.HalfTurn: "a half circle", calc.QuarterTurn: "a quarter circle"}

// wedgeCountTopic: how many wedges close a circle.
func wedgeCountTopic() Topic {
	return Topic{
		Name: "wedge-count", Family: "wedges", Group: SizeIt, Title: "how many wedges of an angle close a circle, or the angle for a number of them",
		Terms: []words.Term{
			{Concept: closing, Words: "close, closes, closing, to close, go round, make a circle, make up a circle, complete, go into, fit into a circle, fill a circle, fill, full turn, lie flat, lay flat, one flat circle"},
			{Concept: fanWord, Words: "fan"},
		},
		About: of(blade, ring, angleWord, fanWord, halfRing, quarterOf, template, closing, quarterCirc),
		Says:  append(append(says(4, blade, angleWord, closing, halfRing, quarterOf, quarterCirc), says(3, ring, circle, fanWord, template)...), append(says(2, allRound), against(triangle, diamond, hexagon, halfSquare, quarterSquare, foldedEdge, longest, longest, howLong, howWide)...)...),
		Asks:  says(5, blade, angleWord),
		Inputs: []input{
			bladeAngle(),
			{name: "blades", kind: aCount, usual: [2]float64{3, 72}, after: of(blade, ofThem), before: of(blade, ring), prior: 1, when: of(angleWord, closing, quarterCirc, fanWord), label: "the number of blades"},
			turnInput(),
		},
		Needs:    [][]string{{"angle", "blades"}},
		Examples: []string{"how many 15 degree wedges make a circle", "what angle are 14 blades"},
		Source:   "a full circle is 360°, divided by the angle of one wedge (hqstitch.com, how to make a plate from wedges, part 2).",
		Work:     workWedgeCount,
	}
}

func workWedgeCount(w *work) error {
	turn := turnOf(w)
	v, _ := w.value("angle")
	r, err := calc.WedgeCount(calc.WedgeCountRequest{Angle: measure.Angle(v.Number), Blades: w.count("blades"), Turn: turn})
	if err != nil {
		return err
	}
	w.figure("blades", r.Blades)
	w.figure("angle", r.Angle)
	w.figure("left_over", r.LeftOver)
	part := partNames[turn]
	switch {
	case r.LeftOver == 0 && v.Number == 0:
		w.say("%v blades close %s at %v each.", r.Blades, part, r.Angle)
	case r.LeftOver == 0:
		w.say("%v blades of %v close %s.", r.Blades, r.Angle, part)
	case r.LeftOver > 0:
		w.say("%v blades of %v leave %v open in %s; one more would be %v too many.", r.Blades, r.Angle, r.LeftOver, part, r.Angle-r.LeftOver)
	default:
		w.say("%v blades of %v are %v too many for %s.", r.Blades, r.Angle, -r.LeftOver, part)
	}
	for i, near := range r.Nearest {
		if i == 0 {
			w.say("To close it: %s.", nearestAngles(w, r.Nearest))
		}
		_ = near
	}
	if turn == calc.FullTurn && r.LeftOver == 0 && r.Blades%4 == 0 {
		w.say("%v make a quarter: check each quarter against a square corner before you join them.", r.Blades/4)
	}
	w.show(r.Working)
	return nil
}

// nearestAngles lists the angles that would close.
func nearestAngles(w *work, near []calc.Closing) string {
	var parts []string
	for _, n := range near {
		parts = append(parts, w.format("%v blades of %v", n.Blades, n.Angle))
	}
	return orList(parts)
}
