package measure

// spelledAt reads a number in words:
//
//	spelled  = cardinal [ "point" decimals | "and" shares ] | shares | article
//	cardinal = [ article ] words of [numerals], with "and" only after hundreds
//	shares   = [ article | cardinal ] ( "half" | "quarter" | "eighths" | … )
//	article  = "a" | "an"
func spelledAt(s string) value {
	if v := sharesAt(s); v.n > 0 {
		return v
	}
	v := cardinalAt(s)
	switch {
	case v.n == 0:
		if first, n := numeralAt(s); first.part == article {
			return value{number: Number{1, 1}, form: Words, n: n, needsUnit: true}
		}
		return value{}
	case v.form == TooBig:
		return v
	}
	if d := pointAt(s[v.n:]); d.n > 0 {
		return value{number: v.number.plus(d.number), form: Words, n: v.n + d.n}
	}
	if f := andFraction(s[v.n:]); f.n > 0 {
		return value{number: v.number.plus(f.number), form: Words, n: v.n + f.n}
	}
	if v.form == One && opensCompoundWord(s[v.n:]) {
		return value{}
	}
	return v
}

// pointAt reads decimals in words with the point before them: "point two five",
// "point twenty-five".
func pointAt(s string) value {
	at := gap(s)
	w, n := numeralAt(s[at:])
	if at == 0 || w.part != point {
		return value{}
	}
	at += n + gap(s[at+n:])
	var num int64
	den, end := int64(1), 0
	for den < pow10(6) {
		digit, n := numeralAt(s[at:])
		if digit.part != ones {
			break
		}
		num, den, end = num*10+digit.value, den*10, at+n
		at = end + gap(s[end:])
	}
	if c := cardinalAt(s[at:]); end == 0 && c.n > 0 && 10 <= c.number.Num && c.number.Num < 100 {
		num, den, end = c.number.Num, 100, at+c.n
	}
	if end == 0 {
		return value{}
	}
	return value{number: ratio(num, den), form: Words, n: end}
}

// opensCompoundWord tells whether the word before s is the first part of one
// with a hyphen, "one-way", and not of a quantity, "one-inch".
func opensCompoundWord(s string) bool {
	return len(s) > 1 && s[0] == '-' && isLetter(s[1]) && unitFollows(s) == 0
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
// quarter", "three eighths".
func sharesAt(s string) value {
	if d, n := denominatorAt(s); n > 0 && !d.plural {
		return value{number: Number{1, d.value}, form: Words, n: n, needsUnit: true}
	}
	first, n := numeralAt(s)
	if first.part == article {
		n += gap(s[n:])
		if d, w := denominatorAt(s[n:]); w > 0 && !d.plural {
			return value{number: Number{1, d.value}, form: Words, n: n + w, needsUnit: true}
		}
		return value{}
	}
	if count := cardinalAt(s); count.n > 0 && count.form != TooBig {
		return countedAt(s, count)
	}
	return value{}
}

// countedAt reads on from a count to the name of a fraction, "three quarters".
// In the singular that is one fraction only where nobody would say it of
// several: "three quarter inch", but two of "two quarter yard" pieces, and three
// of "3 quarter yard" ones.
func countedAt(s string, count value) value {
	at := count.n + gap(s[count.n:])
	d, w := denominatorAt(s[at:])
	n, rest := count.number.Num, s[at+w:]
	if w == 0 || at == count.n || n == 0 || shapeAt(rest, true) {
		return value{}
	}
	v := value{number: ratio(n, d.value), form: Words, n: at + w, shares: true}
	unit := unitFollows(rest)
	switch {
	case d.plural, n == 1:
		if unit > 0 || n < d.value {
			return v
		}
	case unit > 0 && count.form == Words && n < d.value && gcd(n, d.value) == 1 && !piecesFollow(rest[unit:]):
		return v
	}
	return value{}
}

// piecesFollow tells whether s goes on with several pieces of cloth.
func piecesFollow(s string) bool { return nextOf(s, "cuts", "pieces", "lengths", "bundles") > 0 }

// andFraction reads "and a half", "and 1/2", "& three quarters", with what stands
// before them.
func andFraction(s string) value {
	at := gap(s)
	w, n := numeralAt(s[at:])
	switch {
	case at == 0:
		return value{}
	case w.part == joint:
		at += n
	case at < len(s) && s[at] == '&':
		at++
	default:
		return value{}
	}
	g := gap(s[at:])
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

// sharesAfterAnd reads "a half", "three quarters", "5 eighths", where they are no
// kind of patch; the word "half" alone only with a unit behind it.
func sharesAfterAnd(s string) value {
	var v value
	if d := digits(s); d == 0 {
		v = sharesAt(s)
	} else if d <= 2 {
		v = countedAt(s, exactly(s[:d], d, Plain))
	}
	if v.n == 0 || !v.number.isProper() {
		return value{}
	}
	if !v.needsUnit || unitFollows(s[v.n:]) > 0 {
		return v
	}
	if first, _ := numeralAt(s); first.part != article || shapeAt(s[v.n:], false) {
		return value{}
	}
	return v
}
