package commands

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/words"
)

const (
	kitWord    words.Concept = "kit"
	markupWord words.Concept = "markup"
)

// kitTopic: what a kit costs and sells for.
func kitTopic() Topic {
	return Topic{
		Name: "kit", Group: BuyIt, Title: "what a kit costs, and its price for a margin or a markup",
		Terms: []words.Term{
			{Concept: kitWord, Words: "kit, kit price, kit cost, price a kit, cost of a kit, cost price, kitted, pack up"},
			{Concept: markupWord, Words: "markup, mark up, mark it up, on top of cost"},
		},
		About: of(kitWord, markupWord, marginWord, priceWord),
		Says:  append(says(14, kitWord), append(says(8, markupWord), append(says(4, marginWord, priceWord, moneyWord), against(perSquareInch, perSquareFoot, quiltPrice, ring)...)...)...),
		Inputs: []input{
			{name: "item", kind: aList, label: "what is in the kit", ask: "What is in the kit, and what does each thing cost? For example: 1½ yd at 12.50, 2 strip packs at 38.", offer: []string{"1½ yd at 12.50, 2 strip packs at 38"}},
			{name: "margin", kind: aPercent, usual: [2]float64{5, 100}, after: of(percentWord, marginWord), before: of(marginWord), when: of(marginWord), prior: 4, label: "the margin", replaces: []string{"markup"}},
			{name: "markup", kind: aPercent, usual: [2]float64{5, 300}, after: of(percentWord, markupWord), before: of(markupWord), when: of(markupWord), prior: 4, label: "the markup", replaces: []string{"margin"}},
		},
		Needs:    [][]string{{"item"}},
		Examples: []string{"kit price: 1½ yd at 12.50, 2 strip packs at 38, 45% margin", "kit: 2 yd at 10.40 and 1 panel at 14, 60% markup"},
		Source:   "cost added up; price = cost ÷ (1 − margin), or cost × (1 + markup): arithmetic. What to charge is for the shop to say.",
		Read:     readKit,
		Work:     workKit,
	}
}

// readKit pairs amounts with prices: "1½ yd at 12.50, 2 packs at 38, pattern at 9".
func readKit(m matcher, qs []quantity) (map[string]Value, []bool) {
	used := make([]bool, len(qs))
	var items []Item
	for i := range qs {
		if used[i] || !m.isPrice(qs[i]) {
			continue
		}
		item := Item{Count: 1, Price: int64(qs[i].first().Number.Float()*100 + 0.5)}
		start := 0
		if i > 0 {
			start = qs[i-1].to
			if !used[i-1] && isAmount(qs[i-1]) && m.joined(qs[i-1].to, qs[i].from) {
				item.amount(qs[i-1])
				start = qs[i-1].from
				used[i-1] = true
			}
		}
		used[i] = true
		if i+1 < len(qs) && isRate(qs[i+1]) && qs[i+1].from <= qs[i].to+1 {
			used[i+1] = true // "12.50 a yard"
			item.Metre = qs[i+1].unit() == measure.MetreUnit
		}
		item.Name = safe(m.text.Clean[m.text.Tokens[start].Pos:m.text.Tokens[qs[i].to-1].End])
		items = append(items, item)
	}
	if len(items) == 0 {
		return nil, nil
	}
	return map[string]Value{"item": {Kind: aList, Items: items, From: fmt.Sprintf("%d lines", len(items))}}, used
}

// amount takes a number as how much of a thing there is.
func (i *Item) amount(q quantity) {
	n := q.first()
	if !n.Unit.IsLength() {
		i.Count = clampCount(n)
		return
	}
	l, err := n.Number.Of(n.Unit.Length())
	if err != nil {
		l = measure.Max + 1
	}
	i.Count, i.Cloth, i.Metre = 0, l, n.Unit.IsMetric()
}

// isPrice tells whether a number is what something costs: it is money, or
// stands behind "at", "for" or "costs".
func (m matcher) isPrice(q quantity) bool {
	if len(q.numbers) != 1 || q.unit() != measure.NoUnit || q.percent {
		return false
	}
	if q.money {
		return true
	}
	t := words.Token{}
	if q.from > 0 {
		t = m.text.Tokens[q.from-1]
	}
	return t.Is(atPrice) || t.Is(priceWord) || t.Word == "for" || t.Word == "="
}

// isAmount tells whether a number can say how much of a thing there is.
func isAmount(q quantity) bool {
	u := q.unit()
	return len(q.numbers) == 1 && !q.percent && !q.money && (u == measure.NoUnit && whole(q.first()) || u == measure.YardUnit || u == measure.MetreUnit)
}

// isRate tells whether a number is the "a yard" behind a price.
func isRate(q quantity) bool {
	u := q.unit()
	return (u == measure.YardUnit || u == measure.MetreUnit) && q.first().Number == measure.Number{Num: 1, Den: 1}
}

// joined tells whether nothing but words stands between two tokens.
func (m matcher) joined(from, to int) bool {
	for _, t := range m.text.Tokens[from:to] {
		if t.Kind == words.Comma && t.Text == "," || t.Kind == words.Break {
			return false
		}
	}
	return true
}

func workKit(w *work) error {
	list, _ := w.value("item")
	var r calc.KitRequest
	for _, i := range list.Items {
		line := calc.KitLine{Name: i.Name, Count: i.Count, Price: calc.Money(i.Price)}
		if i.Cloth > 0 {
			line.Cloth, line.Per = measure.Cloth(i.Cloth), measure.Yard
			if i.Metre {
				line.Per = measure.Metre
			}
		}
		r.Lines = append(r.Lines, line)
	}
	switch {
	case w.given("margin"):
		v, _ := w.value("margin")
		r.Pricing, r.Percent = calc.ByMargin, v.Number
	case w.given("markup"):
		v, _ := w.value("markup")
		r.Pricing, r.Percent = calc.ByMarkup, v.Number
	}
	k, err := calc.Kit(r)
	if err != nil {
		return err
	}
	w.figure("cost", k.Cost)
	if r.Pricing == calc.CostOnly {
		w.say("It costs %v.", k.Cost)
		w.say(`Say "45%% margin" or "60%% markup" for a price.`)
	} else {
		w.figure("price", k.Price)
		w.figure("margin", percent(k.Margin))
		w.say("Price %v; it costs %v.", k.Price, k.Cost)
		w.say("That is a margin of %s %% of the price, or a markup of %s %% on the cost.", trimmed(k.Margin, 1), trimmed(k.Markup, 1))
	}
	for i := range r.Lines {
		w.figure(fmt.Sprintf("line%d", i+1), k.Lines[i])
	}
	if len(r.Lines) > 1 {
		var parts []string
		for _, l := range k.Lines {
			parts = append(parts, l.String())
		}
		w.say("The lines come to %s.", andList(parts))
	}
	w.show(k.Working)
	return nil
}
