package commands_test

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/commands"
)

// row is one case of a topic's table: some ways of saying the same thing, each
// in a new conversation, and what must come of it. Lists are written with "; "
// between their parts, numbers as they are shown.
type row struct {
	is         string           // the case
	say        []string         // all of them must come to the same
	outcome    commands.Outcome // an answer where it is empty
	figures    string           // these must be among the figures: "strips 7; buy ½ yd"
	assumed    string           // the whole list: "usable_width 40 in; joins diagonal"
	understood string           // the whole list: "quilt_width 54 in; quilt_length 68 in"
	text       string           // the whole reply to the first; not compared where it is empty
	fault      string           // what is known to be wrong about it, until it is mended
}

// ask asks every row of a table and compares.
func ask(t *testing.T, topic string, rows []row) {
	fresh := newTalk(t)
	for _, r := range rows {
		for i, say := range r.say {
			t.Run(r.is+"/"+say, func(t *testing.T) {
				faults := r.compare(topic, i == 0, fresh.again().say(say))
				if len(faults) > 0 && r.fault != "" {
					t.Skipf("known fault: %s\n%s", r.fault, strings.Join(faults, "\n"))
				}
				assert.Empty(t, faults)
			})
		}
	}
}

// compare lists how a reply differs from what the row says.
func (r row) compare(topic string, whole bool, got commands.Reply) []string {
	var faults []string
	differ := func(what, want, is string) {
		if want != is {
			faults = append(faults, fmt.Sprintf("%s\n  want %s\n  is   %s", what, want, is))
		}
	}
	outcome := r.outcome
	if outcome == "" {
		outcome = commands.Answer
	}
	differ("outcome", string(outcome), string(got.Outcome))
	differ("topic", topic, got.Topic)
	shown := map[string]string{}
	for _, f := range got.Figures {
		shown[f.Name] = f.Shown
	}
	for _, f := range list(r.figures) {
		name, value, _ := strings.Cut(f, " ")
		differ("figure "+name, value, shown[name])
	}
	if outcome != commands.Answer && len(got.Figures) > 0 {
		faults = append(faults, fmt.Sprintf("figures in a %s: %v", outcome, got.Figures))
	}
	differ("assumed", inOrder(list(r.assumed)), inOrder(assumedOf(got)))
	differ("understood", strings.Join(list(r.understood), "; "), strings.Join(understoodOf(got), "; "))
	if whole && r.text != "" {
		differ("text", strings.TrimSpace(r.text), got.Text)
	}
	return faults
}

// list takes a list apart, which may be written on several lines.
func list(s string) []string {
	var out []string
	for part := range strings.SplitSeq(s, ";") {
		if part = strings.Join(strings.Fields(part), " "); part != "" {
			out = append(out, part)
		}
	}
	return out
}

// inOrder joins a list whose order does not matter.
func inOrder(parts []string) string {
	slices.Sort(parts)
	return strings.Join(parts, "; ")
}

func assumedOf(r commands.Reply) []string {
	var parts []string
	for _, a := range r.Assumed {
		parts = append(parts, named(a.Name, a.Value, a.Unit))
	}
	return parts
}

func understoodOf(r commands.Reply) []string {
	var parts []string
	for _, u := range r.Understood {
		parts = append(parts, named(u.Name, u.Value, u.Unit))
	}
	return parts
}

// named writes a value with its name, and its unit where it is a measure.
func named(name string, value any, unit string) string {
	s := fmt.Sprint(value)
	if v, ok := value.(float64); ok {
		s = strconv.FormatFloat(math.Round(v*1e6)/1e6, 'f', -1, 64)
	}
	if unit == "count" || unit == "words" {
		unit = ""
	}
	return strings.TrimSpace(name + " " + s + " " + unit)
}

// Every topic that is declared has a table of its own beside its file, and says
// what its help needs.
func TestTopicsAreDeclaredWhole(t *testing.T) {
	a, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(t, err)
	for _, topic := range a.Topics() {
		t.Run(topic.Name, func(t *testing.T) {
			assert.NotEmpty(t, topic.Title)
			assert.NotEmpty(t, topic.Group)
			assert.NotEmpty(t, topic.Source)
			assert.GreaterOrEqual(t, len(topic.Examples), 2)
			assert.NotEmpty(t, topic.Says)
		})
	}
}
