package measure

import (
	"encoding/csv"
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The outside reference for conversions is GNU Units, whose definitions are
// those of NIST. Its answers to a thousand random conversions are kept in
// testdata, so that they are compared on every machine; where the program is
// installed, another thousand are asked of it each time.

const conversionsFile = "../../testdata/conversions.csv"

var updateConversions = flag.Bool("update-conversions", false, "ask GNU Units for the conversions in testdata again")

// conversion is one length in two units, each as text.
type conversion struct{ amount, from, to, result string }

func TestRecordedConversions(t *testing.T) {
	if *updateConversions {
		recordConversions(t)
	}
	f, err := os.Open(conversionsFile)
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 1+1000)
	for _, row := range rows[1:] {
		compareConversion(t, conversion{row[0], row[1], row[2], row[3]})
	}
}

func TestConversionsOfGNUUnits(t *testing.T) {
	needUnits(t)
	seed := rand.Uint64()
	t.Logf("seed %d", seed)
	for _, c := range askUnits(t, conversionsFrom(seed)) {
		compareConversion(t, c)
	}
}

// compareConversion reads the amount as a person would type it and compares it
// with the reference: within half a nanometre for our rounding, and the last
// digits of a float64 on either side.
func compareConversion(t *testing.T, c conversion) {
	t.Helper()
	l, err := ParseLength(c.amount+" "+c.from, NoUnit)
	require.NoError(t, err)
	want, err := strconv.ParseFloat(c.result, 64)
	require.NoError(t, err)
	to := unitWords[c.to].Length()
	within := 0.5/float64(to) + math.Abs(want)*1e-15
	assert.InDelta(t, want, l.In(to), within, "%s %s in %s", c.amount, c.from, c.to)
}

// conversionsFrom gives a thousand conversions between two different units, of
// decimals and of fractions of a ruler.
func conversionsFrom(seed uint64) []conversion {
	r := rand.New(rand.NewPCG(seed, 0))
	units := []string{"in", "ft", "yd", "mm", "cm", "m"}
	var all []conversion
	for range 1000 {
		from := r.IntN(len(units))
		to := (from + 1 + r.IntN(len(units)-1)) % len(units)
		c := conversion{from: units[from], to: units[to]}
		if r.IntN(2) == 0 {
			c.amount = strconv.FormatFloat(r.Float64()*math.Pow10(r.IntN(5)), 'f', r.IntN(7), 64)
		} else {
			den := 1 << (1 + r.IntN(6))
			c.amount = fmt.Sprintf("%d %d/%d", 1+r.IntN(500), 1+r.IntN(den-1), den)
		}
		all = append(all, c)
	}
	return all
}

// askUnits fills in the results, from one run of the program for all.
func askUnits(t *testing.T, all []conversion) []conversion {
	t.Helper()
	var in strings.Builder
	for _, c := range all {
		fmt.Fprintf(&in, "(%s) %s\n%s\n", strings.ReplaceAll(c.amount, " ", "+"), c.from, c.to)
	}
	cmd := exec.Command("units", "--terse", "--output-format", "%.17g", "--quiet")
	cmd.Stdin = strings.NewReader(in.String())
	out, err := cmd.Output()
	require.NoError(t, err)
	results := strings.Fields(string(out))
	require.Len(t, results, len(all))
	for i := range all {
		all[i].result = results[i]
	}
	return all
}

func recordConversions(t *testing.T) {
	t.Helper()
	needUnits(t)
	version, err := exec.Command("units", "--version").Output()
	require.NoError(t, err)
	name, _, _ := strings.Cut(string(version), "\n")
	f, err := os.Create(conversionsFile)
	require.NoError(t, err)
	defer f.Close()
	fmt.Fprintf(f, "# Random conversions of lengths, answered by %s (https://www.gnu.org/software/units/).\n", name)
	fmt.Fprintf(f, "# Made by: go test ./calc/measure -run RecordedConversions -update-conversions\n")
	w := csv.NewWriter(f)
	require.NoError(t, w.Write([]string{"amount", "from", "to", "result"}))
	for _, c := range askUnits(t, conversionsFrom(1)) {
		require.NoError(t, w.Write([]string{c.amount, c.from, c.to, c.result}))
	}
	w.Flush()
	require.NoError(t, w.Error())
}

// needUnits skips the test where GNU Units is not installed, unless all tests
// were asked for.
func needUnits(t *testing.T) {
	t.Helper()
	_, err := exec.LookPath("units")
	if err == nil {
		return
	}
	if os.Getenv("COUNTERHAND_TEST_ALL") == "1" {
		t.Fatal("the program units is needed: apt-get install units")
	}
	t.Skip("needs the program units (Debian package units)")
}
