package calc

import (
	"encoding/csv"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// check is one row of testdata/checks.csv: a worked value of the trade with
// the source that it was published in, or the words "exact" where it follows
// from geometry alone and was worked out by a second, independent calculation.
type check struct {
	t         *testing.T
	ID, Topic string
	In, Want  map[string]string
	Source    string
	Kind      string
	tolerance float64
	compared  map[string]bool
}

// checker compares one row with what the package gives for it. It must compare
// every expected value, or [TestChecks] fails.
type checker func(c *check)

// checkers gives the checker of a row, by the row's own name or by its topic.
// Each file of checks adds its part here.
func checkers() []map[string]checker {
	return []map[string]checker{ringCheckers(), patchCheckers(), clothCheckers()}
}

// checkedElsewhere are the topics whose rows are tests of other packages, and
// rows that are no sum at all.
var checkedElsewhere = map[string]string{
	"a.units":    "package measure",
	"a.rounding": "package measure",
	"k.safety":   "package commands, which holds the reminders",
	"J004":       "nowhere: it tells how many bobbins somebody used, and no sum leads there",
}

// TestChecks runs every row of testdata/checks.csv and fails on a row, or on a
// value of a row, that nothing compared.
func TestChecks(t *testing.T) {
	for _, c := range loadChecks(t) {
		if checkedElsewhere[c.ID] != "" {
			continue
		}
		run := checkerOf(c)
		if run == nil {
			if checkedElsewhere[c.Topic] == "" {
				t.Errorf("%s %s: no checker", c.ID, c.Topic)
			}
			continue
		}
		t.Run(c.ID, func(t *testing.T) {
			c.t = t
			run(c)
			for name := range c.Want {
				if name != "convention" && !strings.HasPrefix(name, "published") && !c.compared[name] {
					t.Errorf("%s: nothing compared %s=%s", c.ID, name, c.Want[name])
				}
			}
		})
	}
}

func checkerOf(c *check) checker {
	for _, m := range checkers() {
		for _, key := range []string{c.ID, c.Topic} {
			if run, ok := m[key]; ok {
				return run
			}
		}
	}
	return nil
}

// loadChecks reads the table.
func loadChecks(t *testing.T) []*check {
	t.Helper()
	f, err := os.Open("../testdata/checks.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	var checks []*check
	for _, row := range rows[1:] {
		c := &check{ID: row[0], Topic: row[1], In: pairs(row[2]), Want: pairs(row[3]),
			Source: row[5], Kind: row[6], compared: map[string]bool{}}
		c.tolerance, err = strconv.ParseFloat(strings.Fields(row[4])[0], 64)
		require.NoError(t, err, row[0])
		checks = append(checks, c)
	}
	return checks
}

// pairs reads "name=value; name=value".
func pairs(s string) map[string]string {
	m := map[string]string{}
	for _, p := range strings.Split(s, ";") {
		if name, value, ok := strings.Cut(strings.TrimSpace(p), "="); ok {
			m[strings.TrimSpace(name)] = strings.TrimSpace(value)
		}
	}
	return m
}

var number = regexp.MustCompile(`\d+(?:\.\d+)?`)

// numbersIn gives the numbers of a value in their order: "4.5 x 10 in" is 4.5 and 10.
func numbersIn(s string) []float64 {
	var ns []float64
	for _, m := range number.FindAllString(s, -1) {
		n, _ := strconv.ParseFloat(m, 64)
		ns = append(ns, n)
	}
	return ns
}

// in gives the i-th number of an input, 0 where the row does not have it.
func (c *check) in(name string, i int) float64 {
	if ns := numbersIn(c.In[name]); i < len(ns) {
		return ns[i]
	}
	return 0
}

// unitOf gives the unit that a value of the table ends in.
func unitOf(value string) measure.Length {
	switch {
	case strings.HasSuffix(value, "cm"):
		return measure.Centimetre
	case strings.HasSuffix(value, "mm"):
		return measure.Millimetre
	case strings.HasSuffix(value, "yd"):
		return measure.Yard
	case strings.HasSuffix(value, " m"):
		return measure.Metre
	}
	return measure.Inch
}

// length gives an input as a length.
func (c *check) length(name string) measure.Length { return c.lengthAt(name, 0) }

// lengthAt gives the i-th length of an input such as "4 x 8 in".
func (c *check) lengthAt(name string, i int) measure.Length {
	l, err := measure.FromFloat(c.in(name, i), unitOf(c.In[name]))
	require.NoError(c.t, err)
	return l
}

// count gives an input as a count.
func (c *check) count(name string) int { return int(c.in(name, 0)) }

// angle gives an input as an angle.
func (c *check) angle(name string) measure.Angle { return measure.Angle(c.in(name, 0)) }

// want gives the numbers expected under a name and notes that they were compared.
func (c *check) want(name string) []float64 {
	c.compared[name] = true
	require.Contains(c.t, c.Want, name, c.ID)
	return numbersIn(c.Want[name])
}

// near compares numbers with those expected, within the row's tolerance and
// the millionth that the table is printed to.
func (c *check) near(name string, got ...float64) {
	c.t.Helper()
	want := c.want(name)
	require.GreaterOrEqual(c.t, len(want), len(got), "%s %s", c.ID, name)
	for i, g := range got {
		if math.IsNaN(g) || math.Abs(g-want[i]) > c.tolerance+1e-6 {
			c.t.Errorf("%s %s = %v, want %v (%s)", c.ID, name, g, c.Want[name], c.Source)
		}
	}
}

// lengths compares lengths in the unit of the expected value.
func (c *check) lengths(name string, got ...measure.Length) {
	c.t.Helper()
	var ns []float64
	for _, g := range got {
		ns = append(ns, g.In(unitOf(c.Want[name])))
	}
	c.near(name, ns...)
}

// counts compares counts, which have no tolerance.
func (c *check) counts(name string, got ...int) {
	c.t.Helper()
	want := c.want(name)
	require.Len(c.t, want, len(got), "%s %s", c.ID, name)
	for i, g := range got {
		assert.Equal(c.t, want[i], float64(g), "%s %s (%s)", c.ID, name, c.Source)
	}
}

// says compares a word, such as yes or no.
func (c *check) says(name, got string) {
	c.t.Helper()
	c.compared[name] = true
	assert.Equal(c.t, c.Want[name], got, "%s %s (%s)", c.ID, name, c.Source)
}

// has compares a value of the row only where the row gives it.
func (c *check) has(name string) bool { _, ok := c.Want[name]; return ok }

// yes says a truth as the table does.
func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

// degrees gives the angle of a slope that rises y over x.
func degrees(y, x float64) float64 { return math.Atan2(y, x) * 180 / math.Pi }
