package commands

import (
	"fmt"
	"slices"

	"counterhand/calc/measure"
	"counterhand/commands/words"
)

// subject is what a drill can be about.
type subject struct {
	name  string
	names []words.Concept // terms that name it
	hints []words.Concept // terms that mean it where nothing else is named
	draws []func(draw) exercise
}

// subjects lists what drills can be about, from the simple to the rest.
func subjects() []subject {
	return []subject{
		{"cut sizes", nil, of(unfinished, finished, cutVerb, seam), []func(draw) exercise{cutSquare, borderStrip, unfinishedUnit}},
		{"binding", of(bindingWord), nil, []func(draw) exercise{bindingStrips, bindingLength, bindingToBuy}},
		{"yardage", of(yardageWord), of(fabric, howMuch, buyWord), []func(draw) exercise{piecesPerStrip, stripsOfSquares, clothForSquares}},
		{"pieces", of(piece, fatQuarter, fatEighth), of(rectangle, squarePc, canGet), []func(draw) exercise{squaresFromCloth, rectanglesFromCloth}},
		{"half-square triangles", of(halfSquare), nil, []func(draw) exercise{halfSquareCut, halfSquareCount, halfSquaresEight}},
		{"quarter-square triangles", of(quarterSquare), nil, []func(draw) exercise{quarterSquareCut, quarterSquareUnfinished}},
		{"setting triangles", of(settingTri), of(onPoint), []func(draw) exercise{sideSquare, cornerSquare}},
		{"borders", of(border, innerBorder, midBorder, outerBorder), nil, []func(draw) exercise{borderSide, borderTop, borderedWidth}},
		{"wedge count", of(blade, fanWord), of(angleWord, ring, circle, closing), []func(draw) exercise{wedgesInRing, angleOfWedges, wedgesInHalf}},
		{"backing", of(backingWord), nil, []func(draw) exercise{backingWidth, backingToBuy}},
		{"scale", of(scaleWord), nil, []func(draw) exercise{scaleFactor, scaledPatch}},
		{"convert", of(convertWord, asDecimal, asFraction), of(unitIn, unitFt, unitYd, unitMm, unitCm, unitM), []func(draw) exercise{otherUnit, clothInOtherUnit}},
	}
}

// subjectNames gives the names of all subjects.
func subjectNames() []string {
	var out []string
	for _, s := range subjects() {
		out = append(out, s.name)
	}
	return out
}

// subjectsNamed gives the subjects that the text names, in the order of the
// list; unknown tells that it names something that there is no drill on.
func (c *conversation) subjectsNamed() (on []string, unknown bool) {
	for _, s := range subjects() {
		if len(s.names) > 0 && c.has(s.names...) {
			on = append(on, s.name)
		}
	}
	if len(on) > 0 {
		return on, false
	}
	if c.namesUndrilled() {
		return nil, true
	}
	for _, s := range subjects() {
		if len(s.hints) > 0 && c.has(s.hints...) {
			return []string{s.name}, false
		}
	}
	return nil, c.speaksOfOther()
}

// namesUndrilled tells whether the text names a topic that there is no drill on.
func (c *conversation) namesUndrilled() bool {
	for i, s := range c.assistant.signals(c.text.Tokens) {
		if s >= named && c.assistant.topics[i].Begin == nil {
			return true
		}
	}
	return false
}

// wholeTrade are words for everything that one could be asked about.
var wholeTrade = wordSet("anything everything something whatever quilting quilt quilts maths math arithmetic numbers sums sewing patchwork general quick short little")

// speaksOfOther tells whether what stands behind "on" or "about" is nothing that
// is known here.
func (c *conversation) speaksOfOther() bool {
	about := false
	for _, t := range c.text.Tokens {
		switch {
		case t.Kind != words.Word:
			about = false
		case t.Word == "on", t.Word == "about", t.Is(drillWord) && len(t.Word) > 6 && t.Word[len(t.Word)-6:] == " about":
			about = true
		case about && !fillers[t.Word] && !t.Is(questionWord) && !t.Is(drillWord):
			return !wholeTrade[t.Word]
		}
	}
	return false
}

// offerSubjects asks what the drill shall be about.
func (c *conversation) offerSubjects() Reply {
	names := subjectNames()
	return questionReply(drillName, fmt.Sprintf("I have no drill on that. There are %s. Which shall it be, or a bit of everything?", andList(names)), append(names, "everything", "stop"))
}

// chooseSubject takes the answer to that. Whatever names no subject gets the
// list once more, and then a bit of everything.
func (c *conversation) chooseSubject() Reply {
	d := &c.state.Drill
	on, _ := c.subjectsNamed()
	all := c.has(dontKnow, yes) || slices.ContainsFunc(c.text.Tokens, func(t words.Token) bool { return wholeTrade[t.Word] || t.Word == "all" || t.Word == "any" })
	if len(on) == 0 && !all && c.state.Misses == 0 {
		c.state.Misses++
		r := c.offerSubjects()
		r.Understood = asideOnly(c.split)
		return r
	}
	d.On, d.Choosing, c.state.Misses = on, false, 0
	r := c.firstQuestion(leftAside(c.split))
	r.Understood = asideOnly(c.split)
	return r
}

// asideOnly lists numbers that are left aside.
func asideOnly(qs []quantity) []Understood { return understood(&Topic{}, nil, measure.Imperial, qs) }

// exercise gives a question of the drill: the open one, or the one that many
// before or behind it. The same drill and serial give the same one, always.
func (c *conversation) exercise(ahead int) exercise {
	d := c.state.Drill
	var on []subject
	for _, s := range subjects() {
		if len(d.On) == 0 || slices.Contains(d.On, s.name) {
			on = append(on, s)
		}
	}
	if len(on) == 0 {
		on = subjects() // names that an older program kept
	}
	n := max(0, d.Serial+ahead)
	s := on[n%len(on)]
	return s.draws[n/len(on)%len(s.draws)](newDraw(s.name, n, d.system(), c.defaults))
}
