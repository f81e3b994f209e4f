package commands

import (
	"counterhand/calc"
	"counterhand/commands/words"
)

const shareOut words.Concept = "share out"

// splitTopic: pieces shared out over fabrics.
func splitTopic() Topic {
	return Topic{
		Name: "split", Group: CutIt, Title: "sharing pieces out over fabrics",
		Terms: []words.Term{
			{Concept: shareOut, Words: "share, shared, split, divide, divided, divide by, spread, share out, shared out, evenly, equally, over, among, amongst, apiece, a piece each, from each fabric, from each, of each, of each fabric, of each colour, of each color, of each print, per fabric, per colour, per color, per print, each fabric, each colour, each color, each print, out of each, out of each fabric, /"},
		},
		Says: append(says(5, colour, fabric), append(says(6, shareOut), says(4, betweenWord)...)...),
		Inputs: []input{
			{name: "pieces", kind: aCount, after: of(blade, squarePc, piece, strip, rectangle, triangle, hexagon, block, diamond, unitPc), before: of(divide), prior: 3, label: "the pieces",
				ask: "How many pieces are there to share out?", offer: []string{"96 blades"}},
			{name: "fabrics", kind: aCount, after: of(colour, fabric, otherThing), before: of(shareOut, betweenWord), prior: 2, label: "the fabrics",
				ask: "Over how many fabrics?", offer: []string{"7 fabrics"}},
		},
		Needs:    [][]string{{"pieces"}, {"fabrics"}},
		Examples: []string{"96 blades over 7 fabrics", "share 48 squares between 5 prints"},
		Source:   "whole pieces; where they do not divide, some fabrics give one more.",
		Work:     workSplit,
	}
}

func workSplit(w *work) error {
	pieces, fabrics := w.count("pieces"), w.count("fabrics")
	s, err := calc.Split(calc.SplitRequest{Pieces: pieces, Fabrics: fabrics})
	if err != nil {
		return err
	}
	w.figure("each", s.Each)
	w.figure("left_over", s.LeftOver)
	switch {
	case s.LeftOver == 0:
		w.say("%v from each fabric, with none over.", s.Each)
	case s.Each == 0:
		w.say("There are more fabrics than pieces: %v give one each and %v give none.", counted(s.LeftOver, "fabric"), fabrics-s.LeftOver)
	default:
		w.say("%v from each fabric, and %v over.", s.Each, s.LeftOver)
		w.say("So %v of the fabrics give %v and the other %v give %v.", s.LeftOver, s.Each+1, fabrics-s.LeftOver, s.Each)
	}
	w.show(s.Working)
	return nil
}
