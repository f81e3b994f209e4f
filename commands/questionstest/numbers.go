package questionstest

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"counterhand/commands"
)

// digits are what a careful reader sees as numbers, whatever they mean: runs of
// digits and the fractions that have a sign of their own.
var digits = regexp.MustCompile(`\d+|[½¼¾⅓⅔⅛⅜⅝⅞]`)

// glued are runs of letters and digits without a space between.
var glued = regexp.MustCompile(`[\da-zA-Z]*\d[\da-zA-Z]*`)

// joints are the letters that people write between two numbers without a space.
var joints = regexp.MustCompile(`(?i)\d(?:x|by|in|inch|inches|ft|yd|yds|m|cm|mm|deg|st|nd|rd|th)+(?:x|by)?\d`)

// mixed is what is left of a name once the joints are taken out.
var mixed = regexp.MustCompile(`\d[a-zA-Z]+\d`)

// named tells whether a glued run is a name such as E6 or 0F08, which holds
// digits without being a number.
func named(run string) bool {
	if unicode.IsLetter(rune(run[0])) && len(run) > 1 && unicode.IsDigit(rune(run[1])) && run[0]|0x20 != 'x' {
		return true
	}
	for joints.MatchString(run) {
		run = joints.ReplaceAllString(run, "0")
	}
	return mixed.MatchString(run)
}

// values of the fractions that have a sign of their own.
var signs = map[string]float64{
	"½": 1.0 / 2, "¼": 1.0 / 4, "¾": 3.0 / 4, "⅓": 1.0 / 3, "⅔": 2.0 / 3,
	"⅛": 1.0 / 8, "⅜": 3.0 / 8, "⅝": 5.0 / 8, "⅞": 7.0 / 8,
}

// Unaccounted lists the numbers of a request that an answer neither took into
// what it understood nor names in its text. It is empty for any other outcome.
func Unaccounted(request string, r commands.Reply) []string {
	if r.Outcome != commands.Answer {
		return nil
	}
	said := map[string]bool{}
	note := func(text string) {
		for _, d := range digits.FindAllString(text, -1) {
			said[d] = true
		}
	}
	note(r.Text)
	for _, u := range r.Understood {
		note(u.From)
	}
	var left []string
	for _, d := range digits.FindAllString(withoutNames(request), -1) {
		if !said[d] && !understood(d, r.Understood) {
			left = append(left, d)
		}
	}
	return left
}

func withoutNames(text string) string {
	return glued.ReplaceAllStringFunc(text, func(run string) string {
		if named(run) {
			return " "
		}
		return run
	})
}

// understood tells whether a run of digits is a value that was read.
func understood(d string, read []commands.Understood) bool {
	want, ok := signs[d]
	if !ok {
		var err error
		if want, err = strconv.ParseFloat(d, 64); err != nil {
			return false
		}
	}
	for _, u := range read {
		if v, ok := number(u.Value); ok && math.Abs(v-want) < 1e-9 {
			return true
		}
	}
	return false
}

// unwanted are what may never come back from a request: mentions of everybody,
// markup and addresses.
var unwanted = regexp.MustCompile(`(?i)@everyone|@here|<@|<script|<img|<iframe|javascript:|https?://|\]\(`)

// Echoed lists what a reply repeats although it never should.
func Echoed(r commands.Reply) []string {
	all := append([]string{r.Text}, r.Choices...)
	all = append(all, r.Reminders...)
	all = append(all, r.Working...)
	return unwanted.FindAllString(strings.Join(all, "\n"), -1)
}
