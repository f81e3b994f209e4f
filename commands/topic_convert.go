package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/words"
)

const (
	convertWord words.Concept = "convert"
	asDecimal   words.Concept = "as a decimal"
	asFraction  words.Concept = "as a fraction"
	notALength  words.Concept = "no length"
	onRuler     words.Concept = "on the ruler"
)

// convertTopic: a length in another unit.
func convertTopic() Topic {
	units := map[words.Concept]string{unitIn: "in", unitFt: "ft", unitYd: "yd", unitMm: "mm", unitCm: "cm", unitM: "m", asDecimal: "decimal", asFraction: "fraction", notALength: "none", onRuler: "in"}
	return Topic{
		Name: "convert", Group: AroundIt, Title: "inches, yards, centimetres, fractions and decimals",
		Terms: []words.Term{
			{Concept: convertWord, Words: "convert, converted, conversion, in other units, translate, equal, equals, equivalent, =, what's that in, what is that in, same as"},
			{Concept: asDecimal, Words: "decimal, as a decimal, as decimal, in decimals, in decimal"},
			{Concept: asFraction, Words: "as a fraction, fraction, in fractions, as fraction"},
			{Concept: notALength, Words: "kilogram, kilo, kg, gram, gramme, ounce, oz, litre, liter, pint, gallon, celsius, fahrenheit, pound weight"},
			{Concept: onRuler, Words: "on my ruler, on a ruler, on the ruler, on the tape, on my tape"},
		},
		Says: append(append(says(8, convertWord, asDecimal, asFraction), says(5, unitIn, unitFt, unitYd, unitMm, unitCm, unitM, notALength)...), says(3, onRuler)...),
		Inputs: []input{
			{name: "length", kind: aLength, anyUnit: true, prior: 6, label: "the length", ask: "Which length shall I convert, and to what? For example: 2¾ yd in cm."},
			{name: "to", kind: aWord, words: units, ask: "In which unit: inches, yards, centimetres or metres?", offer: []string{"in inches", "in cm"}},
		},
		Needs:    [][]string{{"length"}},
		Examples: []string{"2¾ yd in cm", "13/16 as a decimal"},
		Source:   "1 in is 25.4 mm and 1 yd is 0.9144 m, exactly, since 1959 (NIST Handbook 44, Appendix C).",
		Work:     workConvert,
	}
}

func workConvert(w *work) error {
	v, _ := w.value("length")
	to := w.word("to")
	switch to {
	case "none":
		return w.cannot("A length has no weight or volume. Inches, feet, yards, millimetres, centimetres and metres work.")
	case "":
		return w.needs("to")
	case "decimal":
		inches := v.Length.Inches()
		w.reply.Figures = append(w.reply.Figures, Figure{"result", inches, "in", trimmed(inches, 6)})
		w.say("%s in as a decimal is %s.", v.Length.RulerInches(), trimmed(inches, 6))
		return nil
	case "fraction":
		w.figure("result", v.Length.RoundNearest(measure.Inch/16))
		w.say("%s in is %s in on a ruler.", trimmed(v.Length.Inches(), 4), v.Length.RoundNearest(measure.Inch/16).RulerInches())
		return nil
	}
	c, err := calc.Convert(calc.ConvertRequest{Conventions: w.conventions(), Length: v.Length, To: calc.Unit(to)})
	if err != nil {
		return err
	}
	shown := trimmed(c.Result, 3) + " " + to
	if to == "in" {
		shown = v.Length.RulerInches() + " in"
		if !c.OnRuler {
			shown = trimmed(c.Result, 3) + " in"
		}
	}
	w.reply.Figures = append(w.reply.Figures, Figure{"result", c.Result, to, shown})
	w.say("%s is %s.", safe(v.From), shown)
	switch {
	case to == "in" && !c.OnRuler:
		w.say("On a ruler that is nearest to %s in.", c.Sixteenth.RulerInches())
	case to == "in" && v.Length >= measure.Inch:
		w.say("That is where it stands on a ruler, to the mark.")
	}
	w.show(c.Working)
	return nil
}
