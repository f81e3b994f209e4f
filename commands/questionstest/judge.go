package questionstest

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"counterhand/commands"
)

// Category is how a reply stands to its expectation.
type Category string

const (
	// Right: every expected figure is there, in a unit that converts and within
	// its tolerance; or the question or decline that was expected.
	Right Category = "right"
	// Asked: a question where an answer or a decline was expected.
	Asked Category = "asked"
	// Wrong: an answer with a wrong or missing figure, an answer where a question
	// or a decline was expected, or a reply that breaks another rule of its item.
	Wrong Category = "wrong"
	// DeclinedWrongly: a decline where an answer or a question was expected.
	DeclinedWrongly Category = "declined-wrongly"
)

// Categories in the order in which they are printed.
var Categories = []Category{Right, Asked, Wrong, DeclinedWrongly}

// Judge says how a reply stands to what was expected, and why.
func Judge(r commands.Reply, e Expectation) (Category, []string) {
	var best []fault
	allowed := map[commands.Outcome]bool{}
	for i, option := range e.Options() {
		faults := faultsOf(r, option)
		if len(faults) == 0 {
			return Right, nil
		}
		if i == 0 || closer(faults, best) {
			best = faults
		}
		for _, o := range option.Outcome {
			allowed[commands.Outcome(o)] = true
		}
	}
	var reasons []string
	for _, f := range best {
		reasons = append(reasons, f.words)
	}
	if !allowed[r.Outcome] {
		switch r.Outcome {
		case commands.Question:
			return Asked, reasons
		case commands.Decline, commands.PassedOn:
			return DeclinedWrongly, reasons
		}
	}
	return Wrong, reasons
}

// fault is one way in which a reply misses an expectation.
type fault struct {
	outcome bool // the outcome is another one, so nothing else was looked at
	words   string
}

// closer tells which of two lists of faults misses by less.
func closer(a, b []fault) bool {
	if a[0].outcome != b[0].outcome {
		return !a[0].outcome
	}
	return len(a) < len(b)
}

func faultsOf(r commands.Reply, e Expectation) []fault {
	if len(e.Outcome) > 0 && !slices.Contains(e.Outcome, string(r.Outcome)) {
		return []fault{{true, fmt.Sprintf("outcome %s, expected %s", r.Outcome, strings.Join(e.Outcome, " or "))}}
	}
	var bad []fault
	miss := func(format string, args ...any) {
		bad = append(bad, fault{false, fmt.Sprintf(format, args...)})
	}
	if r.Outcome == commands.Answer {
		checkAnswer(r, e, miss)
	}
	if r.Outcome == commands.Question && e.AsksKeys != "" {
		if !matches(e.AsksKeys, strings.Join(append([]string{r.Text}, r.Choices...), " ")) {
			miss("asks about something else than %q: %.80q", e.AsksKeys, r.Text)
		}
	}
	if e.NoFigures && len(r.Figures) > 0 {
		miss("gives a figure: %s %v", r.Figures[0].Name, r.Figures[0].Value)
	}
	for _, p := range e.TextHas {
		if !matches(p, r.Text) {
			miss("text lacks /%s/: %.80q", p, r.Text)
		}
	}
	for _, p := range e.TextNot {
		if matches(p, r.Text) {
			miss("text has /%s/", p)
		}
	}
	if e.Topic != "" && norm(r.Topic) != norm(e.Topic) {
		miss("topic %q, expected %s", r.Topic, e.Topic)
	}
	return bad
}

func checkAnswer(r commands.Reply, e Expectation, miss func(string, ...any)) {
	for name, spec := range e.Figures {
		found := candidates(r, name)
		switch {
		case len(found) == 0:
			miss("%s: missing, expected %v %s", name, spec.Value, spec.Unit)
		case !slices.ContainsFunc(found, func(f commands.Figure) bool { return meets(f, spec) }):
			miss("%s: got %v %s, expected %v %s", name, found[0].Value, found[0].Unit, spec.Value, spec.Unit)
		}
	}
	if len(e.HasAny) > 0 && !slices.ContainsFunc(r.Figures, func(f commands.Figure) bool {
		return slices.ContainsFunc(e.HasAny, func(n string) bool { return lastName(f.Name) == norm(n) })
	}) {
		miss("none of %s", strings.Join(e.HasAny, ", "))
	}
	if e.NeedsAssumed && len(r.Assumed) == 0 {
		miss("nothing said to be assumed")
	}
	if e.NeedsWorking && len(r.Working) == 0 {
		miss("no working")
	}
	for _, n := range e.Understands {
		if !slices.ContainsFunc(r.Understood, func(u commands.Understood) bool {
			v, ok := number(u.Value)
			return ok && math.Abs(v-n) < 1e-6
		}) {
			miss("the number %v is not in understood", n)
		}
	}
}

// matches tells whether a pattern occurs in a text, case aside.
func matches(pattern, text string) bool {
	return regexp.MustCompile("(?i)" + pattern).MatchString(text)
}

var gaps = regexp.MustCompile(`[\s\-]+`)

// norm is a name without regard to case, hyphens and spaces.
func norm(name string) string {
	return gaps.ReplaceAllString(strings.ToLower(strings.TrimSpace(name)), "_")
}

func lastName(name string) string {
	n := norm(name)
	return n[strings.LastIndexByte(n, '.')+1:]
}

var borderPart = regexp.MustCompile(`^border_?(\d+)$`)

// candidates are the figures that an expected name may mean: the figure of that
// name; else border2.side_cut also means the second figure called side_cut, and
// backing.buy a figure of that last name whose own name or topic says backing.
func candidates(r commands.Reply, name string) []commands.Figure {
	want := norm(name)
	hit := pick(r.Figures, func(f commands.Figure) bool { return norm(f.Name) == want })
	dot := strings.LastIndexByte(want, '.')
	if len(hit) > 0 || dot < 0 {
		return hit
	}
	part, last := want[:dot], want[dot+1:]
	tails := pick(r.Figures, func(f commands.Figure) bool { return lastName(f.Name) == last })
	if m := borderPart.FindStringSubmatch(part); m != nil {
		k, err := strconv.Atoi(m[1])
		if err != nil || k < 1 || k > len(tails) {
			return nil
		}
		return tails[k-1 : k]
	}
	return pick(tails, func(f commands.Figure) bool {
		return strings.Contains(norm(f.Name), part) || (norm(r.Topic) == part && norm(f.Name) == last)
	})
}

func pick(figures []commands.Figure, is func(commands.Figure) bool) []commands.Figure {
	var out []commands.Figure
	for _, f := range figures {
		if is(f) {
			out = append(out, f)
		}
	}
	return out
}

// inches in one of each unit of length.
var inches = map[string]float64{"in": 1, "cm": 1 / 2.54, "mm": 1 / 25.4, "yd": 36, "m": 100 / 2.54, "ft": 12}

// convert gives a value in another unit; false where the two do not convert.
func convert(value float64, unit, want string) (float64, bool) {
	if want == "" || unit == "" || unit == want {
		return value, true
	}
	from, ok1 := inches[unit]
	to, ok2 := inches[want]
	return value * from / to, ok1 && ok2
}

func number(v any) (float64, bool) {
	switch n := v.(type) {
	case float64:
		return n, !math.IsInf(n, 0) && !math.IsNaN(n)
	case int:
		return float64(n), true
	}
	return 0, false
}

// meets tells whether a figure is the expected one.
func meets(f commands.Figure, spec FigureSpec) bool {
	if words, ok := spec.Value.(string); ok {
		got := f.Value
		if got == nil {
			got = f.Shown
		}
		return norm(fmt.Sprint(got)) == norm(words)
	}
	want, ok := number(spec.Value)
	if !ok {
		return false
	}
	got, ok := number(f.Value)
	if !ok {
		return false
	}
	got, ok = convert(got, f.Unit, spec.Unit)
	return ok && math.Abs(got-want) <= spec.Tol+1e-9
}
