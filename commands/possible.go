package commands

import (
	"counterhand/calc/measure"
	"counterhand/commands/words"
)

// impossible refuses what no sum can take: sizes and counts of nothing or less.
func (c *conversation) impossible(t *Topic, values map[string]Value) (Reply, bool) {
	for i := range t.Inputs {
		in := &t.Inputs[i]
		v, ok := values[in.name]
		if !ok || v.possible(in.zero) {
			continue
		}
		text := capital(in.spoken()) + " has to be more than nothing."
		if v.tooLarge() {
			text = tooLarge
		} else if len(t.Examples) > 0 {
			text += " Like this: " + t.Examples[0] + "."
		}
		return decline(t.Name, text), true
	}
	return Reply{}, false
}

// possible tells whether a value can be worked with; nothing at all only where
// zero is a fair answer.
func (v Value) possible(zero bool) bool {
	ok := func(positive, none bool) bool { return positive || zero && none }
	switch v.Kind {
	case aLength, aCloth:
		for _, l := range v.lengths() {
			if !ok(l > 0, l == 0) || l > measure.Max {
				return false
			}
		}
	case aSize:
		return v.Size.Width > 0 && v.Size.Length > 0 && v.Size.Width <= measure.Max && v.Size.Length <= measure.Max
	case aCount:
		return ok(v.Count > 0, v.Count == 0)
	case aList:
		for _, i := range v.Items {
			if i.Count < 0 || i.Cloth < 0 || i.Count == 0 && i.Cloth == 0 || i.Size.Width < 0 || i.Size.Length < 0 || i.Price < 0 || i.Size.Width > measure.Max || i.Size.Length > measure.Max {
				return false
			}
		}
	case aGrid:
		return v.Count > 0 && v.Down > 0
	case anAngle:
		return v.Number > 0
	case aPercent, aRate:
		return v.Number >= 0
	case aPrice:
		return v.Price >= 0
	}
	return true
}

// tooLarge tells whether a length is beyond what is reckoned with.
func (v Value) tooLarge() bool {
	return v.Length > measure.Max || v.Size.Width > measure.Max || v.Size.Length > measure.Max
}

// asksEnough gives the first word of a sentence that asks whether what is there
// will do the meaning of "enough": "will 10 strips do", "is 1 yd enough",
// "do 2 yards back a 36 x 60".
func asksEnough(tokens []words.Token) {
	asked := false
	for i := range tokens {
		t := &tokens[i]
		switch {
		case t.Word == "in" && i > 0 && tokens[i-1].Is(upTo) && (i+1 == len(tokens) || tokens[i+1].Kind != words.Word && tokens[i+1].Kind != words.Number):
			t.Concept = unitIn // "250 cm to in"
		case t.Kind == words.Break:
			asked = false
		case t.Is(howMany), t.Is(howMuch), t.Is(howBig), t.Is(howWide), t.Is(howLong):
			asked = true
		case asked || i+1 >= len(tokens) || !auxiliaries[t.Word]:
		case tokens[i+1].Kind == words.Number && tokens[i+1].Quantity.Unit != measure.DegreeUnit:
			t.Concept = enough
		}
	}
}

// auxiliaries are the verbs that begin a question whether something will do.
var auxiliaries = wordSet("will would do does is are can could")
