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

// asksEnough gives words such as "do" the meaning of "enough" where a sentence
// asks whether what is there will do: "will 10 strips do", "is 1 yd enough".
func asksEnough(tokens []words.Token) {
	asking := false
	for i := range tokens {
		t := &tokens[i]
		switch {
		case t.Kind == words.Break:
			asking = false
		case t.Kind != words.Word:
		case t.Word == "will" || t.Word == "would" || t.Word == "does" || t.Word == "is" || t.Word == "are" || t.Word == "can":
			if i+1 < len(tokens) && (tokens[i+1].Kind == words.Number || tokens[i+1].Word == "my" || tokens[i+1].Word == "these" || tokens[i+1].Word == "the" || tokens[i+1].Is(pointing)) {
				asking = true
			}
		case asking && (t.Word == "do" || t.Word == "make" || t.Word == "cover" || t.Word == "stretch" || t.Word == "last" || t.Word == "suffice"):
			t.Concept = enough
		}
	}
}
