package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/words"
)

const (
	perSquareInch words.Concept = "a square inch"
	perSquareFoot words.Concept = "a square foot"
	centsWord     words.Concept = "cents"
	priceWord     words.Concept = "price"
	quiltPrice    words.Concept = "quilting price"
)

// quiltingPriceTopic: quilting priced by area.
func quiltingPriceTopic() Topic {
	return Topic{
		Name: "quilting-price", Group: FinishIt, Title: "what quilting comes to by the square inch",
		Terms: []words.Term{
			{Concept: perSquareInch, Words: "a square inch, per square inch, square inch, sq in, sq inch, per sq in, per sq inch, psi, the square inch, each square inch, per sq. in"},
			{Concept: perSquareFoot, Words: "a square foot, per square foot, square foot, sq ft, square feet"},
			{Concept: centsWord, Words: "cent, c, pence, p, ¢"},
			{Concept: quiltPrice, Words: "price to quilt, cost to quilt, quilting price, quilting cost, price of quilting, cost of quilting, quilting charge, charge for quilting, price for quilting, cost to have it quilted, longarm price, longarm cost, longarming cost, price per square inch"},
			{Concept: priceWord, Words: "price, cost, costs, charge, charges, charged, pay, how much does it cost, what does it cost"},
		},
		About: of(perSquareInch, perSquareFoot, quiltPrice, quiltingWord, centsWord),
		Says:  append(append(says(9, perSquareInch, perSquareFoot), says(10, quiltPrice)...), says(3, quiltingWord, centsWord, priceWord)...),
		Inputs: []input{
			quiltSize(),
			{name: "rate", kind: aRate, prior: 2, after: of(centsWord, perSquareInch, perSquareFoot, moneyWord), before: of(atPrice, priceWord), label: "the price of a square inch", ask: "What is charged for a square inch?", offer: []string{"2 cents"}},
			{name: "coin", kind: aWord, words: map[words.Concept]string{centsWord: "hundredth"}},
			{name: "per", kind: aWord, words: map[words.Concept]string{perSquareFoot: "foot", perSquareInch: "inch"}},
		},
		Needs:    [][]string{{"quilt"}, {"rate"}},
		Examples: []string{"quilting 60 x 72 at 2 cents a square inch", "longarm quilting 70 x 84 at 0.025 per square inch"},
		Source:   "width × length × the price of a square inch: arithmetic.",
		Work:     workQuiltingPrice,
	}
}

func workQuiltingPrice(w *work) error {
	v, _ := w.value("quilt")
	rate, _ := w.value("rate")
	amount := rate.Number
	if w.word("coin") != "" {
		amount /= 100
	}
	r, err := calc.RateFromFloat(amount)
	if err != nil {
		return err
	}
	per := measure.Inch
	unit := "square inches"
	if w.word("per") == "foot" {
		per, unit = measure.Foot, "square feet"
	}
	p, err := calc.QuiltingPrice(calc.QuiltingPriceRequest{Conventions: w.conventions(), Quilt: v.Size, Rate: r, Per: per})
	if err != nil {
		return err
	}
	w.size = v.Size
	w.reply.Figures = append(w.reply.Figures, Figure{"area", p.Area, "count", trimmed(p.Area, 2)})
	w.figure("price", p.Price)
	w.say("%v for %v.", p.Price, v.Size)
	w.say("%v is %s %s, at %s each.", v.Size, trimmed(p.Area, 2), unit, trimmed(amount, 6))
	w.say("Batting, thread and binding are extra unless your quilter says so.")
	w.show(p.Working)
	return nil
}
