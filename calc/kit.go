package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// Pricing says what a kit's price is reckoned from.
type Pricing string

// The ways of pricing. A markup is a share of the cost, a margin a share of the
// price.
const (
	CostOnly Pricing = ""
	ByMarkup Pricing = "markup"
	ByMargin Pricing = "margin"
	ByPrice  Pricing = "price"
)

// KitRequest asks for the cost and the price of a kit.
type KitRequest struct {
	Lines   []KitLine
	Pricing Pricing
	Percent float64 // markup or margin, to the hundredth
	Price   Money   // where the price is given
}

// KitLine is one thing in a kit: fabric by length, or things by number.
type KitLine struct {
	Name  string
	Cloth measure.Cloth  // 0 where things are counted
	Per   measure.Length // of fabric that the price is for: a yard or a metre
	Count int
	Price Money
}

// KitResult gives amounts to the nearest hundredth, percentages unrounded.
type KitResult struct {
	Cost    Money
	Lines   []Money // cost of each line
	Price   Money   // 0 where only the cost is asked for
	Profit  Money   // price less cost; below nothing where the kit is sold at a loss
	Margin  float64 // percent of the price
	Markup  float64 // percent of the cost
	Working []Step
}

// mostKitLines is the number of lines beyond which a request is a mistake.
const mostKitLines = 1000

// Kit adds up the lines. With a markup the price is cost·(1 + markup), with a
// margin cost/(1 − margin); margin = markup/(1 + markup). Source: arithmetic.
func Kit(r KitRequest) (KitResult, error) {
	if err := r.check(); err != nil {
		return KitResult{}, err
	}
	var k KitResult
	for _, l := range r.Lines {
		cost := l.cost()
		k.Lines = append(k.Lines, cost)
		k.Cost += cost
		k.Working = append(k.Working, l.working(cost))
	}
	k.Working = append(k.Working, step("Together: %v.", k.Cost))
	if r.Pricing == CostOnly {
		return k, nil
	}
	share := Money(hundredths(r.Percent))
	switch r.Pricing {
	case ByMarkup:
		k.Price = mulDivNearest(k.Cost, hundred+share, hundred)
		k.Working = append(k.Working, step("%v and %v percent of it = %v.", k.Cost, r.Percent, k.Price))
	case ByMargin:
		k.Price = mulDivNearest(k.Cost, hundred, hundred-share)
		k.Working = append(k.Working, step("%v ÷ (100 − %v) × 100 = %v.", k.Cost, r.Percent, k.Price))
	case ByPrice:
		k.Price = r.Price
	}
	k.Profit = k.Price - k.Cost
	if k.Price > 0 {
		k.Margin = 100 * float64(k.Profit) / float64(k.Price)
	}
	if k.Cost > 0 {
		k.Markup = 100 * float64(k.Profit) / float64(k.Cost)
	}
	return k, nil
}

func (r KitRequest) check() error {
	if len(r.Lines) == 0 || len(r.Lines) > mostKitLines {
		return limit("kit", step("A kit of %v things cannot be reckoned.", len(r.Lines)), step("From 1 to %v work.", mostKitLines))
	}
	for _, l := range r.Lines {
		if err := l.check(); err != nil {
			return err
		}
	}
	switch r.Pricing {
	case CostOnly:
	case ByPrice:
		return wantMoney("price", r.Price)
	case ByMarkup:
		if !(r.Percent >= 0 && r.Percent <= mostMarkup) {
			return limit("markup", step("A markup of %v percent makes no sense.", r.Percent), step("From 0 to %v works.", mostMarkup))
		}
	case ByMargin:
		if !(r.Percent >= 0 && r.Percent <= mostMargin) {
			return limit("margin", step("No price has a margin of %v percent: all of it would have to be profit.", r.Percent),
				step("Anything under 100 works; a markup of 100 percent is a margin of 50."))
		}
	default:
		return limit("pricing", step("A kit is priced by markup, by margin or by its price."), Step{})
	}
	return nil
}

// The most that is taken on a cost, and of a price.
const (
	mostMarkup = 10_000
	mostMargin = 99
)

func (l KitLine) check() error {
	if l.Cloth != 0 && l.Per < measure.Centimetre {
		return limit("price_length", step("A price for %v of fabric makes no sense.", l.Per), step("A yard or a metre works."))
	}
	if l.Cloth != 0 {
		return cmp.Or(wantMoney("price", l.Price), wantLength("fabric", measure.Length(l.Cloth)), wantLength("price_length", l.Per))
	}
	return cmp.Or(wantMoney("price", l.Price), wantCount("things", l.Count))
}

// cost is the line's price times its length or its count.
func (l KitLine) cost() Money {
	if l.Cloth != 0 {
		return mulDivNearest(Money(l.Cloth), l.Price, Money(l.Per))
	}
	return Money(l.Count) * l.Price
}

func (l KitLine) working(cost Money) Step {
	if l.Cloth != 0 {
		return step("%v: %v at %v = %v.", l.Name, l.Cloth, l.Price, cost)
	}
	return step("%v: %v × %v = %v.", l.Name, l.Count, l.Price, cost)
}
