package calc

import (
	"strconv"
	"strings"
)

// Money is an amount in hundredths of whatever the shop counts in. Amounts are
// added as whole numbers and rounded to the nearest hundredth, halves up, once
// after each product.
type Money int64

// maxMoney is the largest price that is accepted from anybody.
const maxMoney Money = 1_000_000_00

// MoneyFromFloat gives an amount to the nearest hundredth. It refuses what is
// not a number and what lies beyond a million.
func MoneyFromFloat(v float64) (Money, error) {
	if !(v >= 0 && v <= float64(maxMoney)/100) {
		return 0, limit("price", step("A price of %v cannot be reckoned with.", v), step("From nothing to %v works.", maxMoney))
	}
	return Money(hundredths(v)), nil
}

// String writes the amount with two decimals: "172.27".
func (m Money) String() string {
	sign, n := "", int64(m)
	if n < 0 {
		sign, n = "-", -n
	}
	cents := strconv.FormatInt(n%100, 10)
	return sign + strconv.FormatInt(n/100, 10) + "." + strings.Repeat("0", 2-len(cents)) + cents
}

// wantMoney refuses a price below nothing or beyond all sense.
func wantMoney(input string, m Money) error {
	if m < 0 || m > maxMoney {
		return limit(input, step("The %v has to be from nothing to %v.", spoken(input), maxMoney), Step{})
	}
	return nil
}
