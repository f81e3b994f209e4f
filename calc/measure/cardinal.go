package measure

import "math"

// cardinal is a whole number in words while it is read.
type cardinal struct {
	total, group int64 // what "thousand" and above have closed, and what is open
	last         part  // of the last word
	ceiling      int64 // what the next "thousand" or "million" must be below
}

// cardinalAt reads a whole number in words, "a hundred and twenty", "twelve
// hundred". The form of a lone "one" is [One].
func cardinalAt(s string) value {
	c := cardinal{ceiling: math.MaxInt64}
	n, at := 0, articleBefore(s)
	for {
		word, w := c.next(s[at:])
		if !c.take(word) {
			if c.isOrdinal(word, s[at+w:]) {
				return value{}
			}
			break
		}
		n = at + w
		if c.total+c.group > largest {
			return tooBigAt(n)
		}
		g := gap(s[n:])
		if at = n + g; g == 0 {
			break
		}
	}
	switch {
	case n == 0:
		return value{}
	case c.last == ones && c.total+c.group == 1:
		return value{number: Number{1, 1}, form: One, n: n}
	}
	return value{number: Number{c.total + c.group, 1}, form: Words, n: n}
}

// articleBefore takes the article of "a hundred" and "a dozen".
func articleBefore(s string) int {
	first, n := numeralAt(s)
	if first.part != article {
		return 0
	}
	n += gap(s[n:])
	switch next, _ := numeralAt(s[n:]); next.part {
	case hundred, power, dozen:
		return n
	}
	return 0
}

// next reads the next word at the start of s, and passes over the "and" behind
// hundreds, where it does not lead to a fraction, "a hundred and three quarters".
func (c *cardinal) next(s string) (word numeral, n int) {
	word, n = numeralAt(s)
	if word.part != joint || c.last != hundred && c.last != power {
		return word, n
	}
	n += gap(s[n:])
	word, w := numeralAt(s[n:])
	n += w
	if _, d := denominatorAt(s[n+gap(s[n:]):]); d > 0 {
		return numeral{}, 0
	}
	return word, n
}

// take adds the word to the number, or tells that it does not belong there.
func (c *cardinal) take(w numeral) bool {
	first := c.last == noPart
	open := first || c.last == hundred || c.last == power
	switch {
	case w.part == ones && (open || c.last == tens) && (first || w.value > 0),
		(w.part == teens || w.part == tens) && open,
		w.part == dozen && first:
		c.group += w.value
	case w.part == hundred && (first || 0 < c.group && c.group < 100):
		c.group = max(c.group, 1) * w.value
	case w.part == power && (first || c.group > 0) && w.value < c.ceiling:
		c.total += max(c.group, 1) * w.value
		c.group, c.ceiling = 0, w.value
	default:
		return false
	}
	c.last = w.part
	return true
}

// isOrdinal tells whether the word makes the number one place in a row, "twenty
// first", and not several pieces of what stands behind it, "twenty eighth yard
// cuts".
func (c *cardinal) isOrdinal(w numeral, behind string) bool {
	return c.last == tens && !w.plural && (w.part == ordinal || w.part == nth && unitFollows(behind) == 0)
}
