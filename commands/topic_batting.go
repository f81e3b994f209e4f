package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/words"
)

const battingWord words.Concept = "batting"

// battingTopic: the batting inside a quilt.
func battingTopic() Topic {
	return Topic{
		Name: "batting", Group: FinishIt, Title: "batting, and which package holds it", Together: true,
		Terms: []words.Term{
			{Concept: battingWord, Words: "batting, batt, wadding, filling, quilt batting"},
		},
		Says:     says(14, battingWord),
		Inputs:   []input{quiltSize(), overEachSide(), noOverage()},
		Needs:    [][]string{{"quilt"}},
		Examples: []string{"batting for 60 x 72", "wadding for 150 x 200 cm, 8 cm each side"},
		Source:   "at least 2 to 4 in over on each side (quiltsandtreasures.com; quiltedimpressions.com); package sizes as published in 2012.",
		Work:     workBatting,
	}
}

func workBatting(w *work) error {
	v, _ := w.value("quilt")
	over := w.overageOr()
	b, err := calc.Batting(calc.BattingRequest{Conventions: w.conventions(), Quilt: v.Size, Overage: over})
	if err != nil {
		return err
	}
	w.size = v.Size
	w.figure("batting_width", b.BattingWidth)
	w.figure("batting_length", b.BattingLength)
	w.say("Batting of %v.", measure.Size{Width: b.BattingWidth, Length: b.BattingLength})
	line := w.format("That is %v over on each side of %v.", over, v.Size)
	if len(b.Packages) > 0 {
		p := b.Packages[0]
		line += w.format(" The smallest package that holds it is the %s, %v.", p.Name, p.Size)
	} else {
		line += " No usual package is that large: join two, or buy off the roll."
	}
	w.say("%s", line)
	w.show(b.Working)
	return nil
}
