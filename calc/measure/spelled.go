package measure

// spelledAt reads a number in words from s:
//
//	spelled  = [ "minus" ] ( cardinal [ "and" shares ] | shares )
//	cardinal = [ "a" ] words of [numerals], "and" only after hundreds
//	shares   = ( "a" | cardinal ) ( "half" | "quarter" | "eighths" | … )
//
// The caller must find a unit behind a value that needs one: "half" alone, and
// "a", are no numbers.
func spelledAt(s string) (v value, needsUnit bool) {
	if f, sure := sharesAt(s); f.n > 0 {
		return f, !sure
	}
	v = cardinalAt(s)
	if v.n == 0 {
		if first, n := numeralAt(s); first.part == article {
			return value{Number{1, 1}, Words, n}, true
		}
		return value{}, false
	}
	if v.form == One && len(s) > v.n+1 && s[v.n] == '-' && isLetter(s[v.n+1]) && !unitFollows(s[v.n:]) {
		return value{}, false // "one-way"
	}
	if v.form == TooBig {
		return v, false
	}
	if f := andFraction(s[v.n:]); f.n > 0 {
		return value{v.number.plus(f.number), Words, v.n + f.n}, false
	}
	return v, false
}

// cardinalAt reads a whole number in words. The form of a lone "one" is [One].
func cardinalAt(s string) value {
	var total, group int64
	n, last, ceiling := 0, noPart, int64(largest)*10
	at := 0 // where the next word starts
	if first, w := numeralAt(s); first.part == article {
		at = w + gap(s[w:])
		if next, _ := numeralAt(s[at:]); next.part != hundred && next.part != power && next.part != dozen {
			return value{}
		}
	}
	for {
		word, w := numeralAt(s[at:])
		if word.part == joint && (last == hundred || last == power) {
			and := at + w
			and += gap(s[and:])
			next, width := numeralAt(s[and:])
			if next.part != ones && next.part != teens && next.part != tens || denominatorFollows(s[and+width:]) {
				break
			}
			at, word, w = and, next, width
		}
		if !fits(word, last, group) || word.part == power && word.value >= ceiling {
			if last == tens && (word.part == ordinal || word.part == nth) && !word.plural {
				return value{} // "twenty-first" is no number
			}
			break
		}
		switch word.part {
		case hundred:
			group = max(group, 1) * word.value
		case power:
			if total += max(group, 1) * word.value; total > largest {
				return value{tooBig, TooBig, at + w}
			}
			group, ceiling = 0, word.value
		case dozen:
			group = 12
		default:
			group += word.value
		}
		n, last = at+w, word.part
		at = n + gap(s[n:])
		if at == n || last == dozen {
			break
		}
	}
	if n == 0 {
		return value{}
	}
	form := Words
	if total+group == 1 && last == ones {
		form = One
	}
	return value{Number{total + group, 1}, form, n}
}

// fits tells whether the word may follow within one number whose last word was
// of the part last and whose group below the thousands is worth group so far.
func fits(word numeral, last part, group int64) bool {
	switch word.part {
	case ones:
		return last == noPart || word.value > 0 && (last == tens || last == hundred || last == power)
	case teens, tens:
		return last == noPart || last == hundred || last == power
	case hundred:
		return last == noPart || group > 0 && group < 100
	case power:
		return last == noPart || group > 0
	case dozen:
		return last == noPart
	}
	return false
}

// denominatorFollows tells whether s goes on with the name of a fraction.
func denominatorFollows(s string) bool {
	_, n := denominatorAt(s[gap(s):])
	return n > 0
}

// denominatorAt reads the name of a fraction; its value is the lower number.
func denominatorAt(s string) (numeral, int) {
	first, n := numeralAt(s)
	switch first.part {
	case share, nth:
		return first, n
	case tens:
		g := gap(s[n:])
		next, w := numeralAt(s[n+g:])
		sum := first.value + next.value
		if g > 0 && (next.part == ordinal || next.part == nth) && (sum == 32 || sum == 64) {
			return numeral{nth, sum, next.plural}, n + g + w
		}
	}
	return numeral{}, 0
}

// sharesAt reads a fraction in words at the start of a number: "half", "a
// quarter", "three eighths". It is sure of it where it is counted out in the
// plural, or is one half, and else needs a unit behind it.
func sharesAt(s string) (v value, sure bool) {
	if d, n := denominatorAt(s); n > 0 {
		return value{Number{1, d.value}, Words, n}, false
	}
	first, n := numeralAt(s)
	if first.part == article {
		n += gap(s[n:])
		if d, w := denominatorAt(s[n:]); w > 0 && !d.plural {
			return value{Number{1, d.value}, Words, n + w}, false
		}
		return value{}, false
	}
	count := cardinalAt(s)
	if count.n == 0 || count.form == TooBig {
		return value{}, false
	}
	return countedAt(s, count)
}

// countedAt reads on from a count to the name of a fraction, "three quarters".
// In the singular that is one fraction only where nobody would say it of
// several: "three quarter inch", but two of "two quarter yard" pieces.
func countedAt(s string, count value) (v value, sure bool) {
	at := count.n + gap(s[count.n:])
	d, w := denominatorAt(s[at:])
	if w == 0 || at == count.n {
		return value{}, false
	}
	n, rest := count.number.Num, s[at+w:]
	v = value{ratio(n, d.value), Words, at + w}
	switch {
	case n == 0, shapeAt(rest, true):
		return value{}, false
	case unitFollows(rest):
		if d.plural || n == 1 || n < d.value && gcd(n, d.value) == 1 {
			return v, d.plural || n == 1
		}
	case n < d.value && (d.plural || n == 1):
		return v, true
	}
	return value{}, false
}

// andFraction reads "and a half", "and 1/2", "& three quarters", with what stands
// before them.
func andFraction(s string) value {
	g := gap(s)
	if g == 0 {
		return value{}
	}
	at := g
	if at < len(s) && s[at] == '&' {
		at++
	} else if w, n := numeralAt(s[at:]); w.part == joint {
		at += n
	} else {
		return value{}
	}
	g = gap(s[at:])
	if g == 0 {
		return value{}
	}
	at += g
	v := fractionAt(s[at:])
	if v.n == 0 {
		v = sharesAfterAnd(s[at:])
	}
	if v.n == 0 {
		return value{}
	}
	v.n += at
	return v
}

// sharesAfterAnd reads "a half", "three quarters", "5 eighths"; the word "half"
// alone only with a unit behind it, and none that is a kind of patch.
func sharesAfterAnd(s string) value {
	var v value
	var sure bool
	if d := digits(s); 0 < d && d <= 2 {
		v, sure = countedAt(s, exactly(s[:d], d, Plain))
	} else if v, sure = sharesAt(s); v.n > 0 && !sure {
		first, _ := numeralAt(s)
		sure = first.part == article && !shapeAt(s[v.n:], false)
	}
	if v.n == 0 || !v.number.isProper() || !sure && !unitFollows(s[v.n:]) {
		return value{}
	}
	return v
}
