package commands_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/commands"
	"counterhand/commands/questionstest"
)

// What must come out right at the least, of a hundred. No reply may be wrong.
const (
	requestsRight      = 95.0
	conversationsRight = 96.0
)

// talk is one conversation with a fresh person, who has set nothing.
type talk struct {
	assistant *commands.Assistant
	state     commands.State
	own       commands.Settings
}

func newTalk(t testing.TB) *talk {
	a, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(t, err)
	return &talk{assistant: a}
}

// say answers one text. What the conversation holds is written and read back
// between turns, as a store does.
func (c *talk) say(text string) commands.Reply {
	r := c.assistant.Respond(commands.Turn{Text: text, State: c.state, Own: c.own})
	c.state, c.own = stored(r.State), stored(r.Own)
	if r.Forget {
		c.own = nil
	}
	return r.Reply
}

// stored is what is left of a value after a store has kept it.
func stored[T any](v T) T {
	var back T
	b, err := json.Marshal(v)
	if err == nil {
		err = json.Unmarshal(b, &back)
	}
	if err != nil {
		panic(err) // the value is plain data by its contract
	}
	return back
}

// again begins a new conversation with the same assistant.
func (c *talk) again() *talk { return &talk{assistant: c.assistant} }

// questionSets are the folders that hold questions: the project's own and,
// where it stands beside the project, a shared one.
func questionSets(t testing.TB) map[string]string {
	root, err := questionstest.Root()
	require.NoError(t, err)
	sets := map[string]string{"own": filepath.Join(root, "testdata", "questions")}
	shared := filepath.Join(root, "..", "shared", "questions")
	if _, err := os.Stat(filepath.Join(shared, "requests.jsonl")); err == nil {
		sets["shared"] = shared
	} else {
		t.Logf("no shared questions at %s: only the project's own are asked", shared)
	}
	return sets
}

func TestQuestionsRequests(t *testing.T) {
	for name, dir := range questionSets(t) {
		t.Run(name, func(t *testing.T) {
			requests, err := questionstest.Load[questionstest.Request](filepath.Join(dir, "requests.jsonl"))
			require.NoError(t, err)
			c, all := newTalk(t), tally{}
			for _, r := range requests {
				reply := c.again().say(r.Text)
				all.judge(t, r.Topic, r.ID, r.Text, reply, r.Expect)
			}
			all.report(t, requestsRight)
		})
	}
}

func TestQuestionsConversations(t *testing.T) {
	for name, dir := range questionSets(t) {
		t.Run(name, func(t *testing.T) {
			conversations, err := questionstest.Load[questionstest.Conversation](filepath.Join(dir, "conversations.jsonl"))
			require.NoError(t, err)
			fresh, all, whole := newTalk(t), tally{}, 0
			for _, talk := range conversations {
				c, right := fresh.again(), true
				for i, turn := range talk.Turns {
					reply := c.say(turn.Say)
					if turn.Expect == nil {
						continue
					}
					id := fmt.Sprintf("%s.%d", talk.ID, i+1)
					right = all.judge(t, "conversation", id, turn.Say, reply, *turn.Expect) && right
				}
				if right {
					whole++
				}
			}
			t.Logf("conversations right from end to end: %d of %d", whole, len(conversations))
			all.report(t, conversationsRight)
		})
	}
}

// tally counts, for each topic, how replies stood to what was expected.
type tally map[string]map[questionstest.Category]int

// judge counts one reply, says what was not right, and tells whether it was.
func (a tally) judge(t *testing.T, topic, id, said string, r commands.Reply, e questionstest.Expectation) bool {
	category, why := questionstest.Judge(r, e)
	if topic == "" {
		topic = "(none)"
	}
	if a[topic] == nil {
		a[topic] = map[questionstest.Category]int{}
	}
	a[topic][category]++
	switch category {
	case questionstest.Right:
		return true
	case questionstest.Wrong:
		assert.Fail(t, "wrong", "%s  %q\n%s", id, said, strings.Join(why, "\n"))
	default:
		t.Logf("%s  %s  %q\n\t%s", category, id, said, strings.Join(why, "\n\t"))
	}
	return false
}

func (a tally) report(t *testing.T, atLeast float64) {
	var table strings.Builder
	total, n := map[questionstest.Category]int{}, 0
	line := func(name string, of map[questionstest.Category]int) {
		fmt.Fprintf(&table, "\n%-26s", name)
		for _, c := range questionstest.Categories {
			fmt.Fprintf(&table, "%18d", of[c])
		}
	}
	fmt.Fprintf(&table, "\n%-26s", "topic")
	for _, c := range questionstest.Categories {
		fmt.Fprintf(&table, "%18s", c)
	}
	for _, topic := range slices.Sorted(maps.Keys(a)) {
		line(topic, a[topic])
		for c, k := range a[topic] {
			total[c] += k
			n += k
		}
	}
	line("all", total)
	share := 100 * float64(total[questionstest.Right]) / float64(n)
	t.Logf("%s\nright: %.1f of a hundred", table.String(), share)
	assert.GreaterOrEqual(t, share, atLeast, "right, of a hundred")
}

// No number is ignored: where the reply is an answer, every number of the
// request stands in what was understood, or is named as left aside.
func TestQuestionsLeaveNoNumberOut(t *testing.T) {
	for name, dir := range questionSets(t) {
		t.Run(name, func(t *testing.T) {
			requests, err := questionstest.Load[questionstest.Request](filepath.Join(dir, "requests.jsonl"))
			require.NoError(t, err)
			c := newTalk(t)
			for _, r := range requests {
				reply := c.again().say(r.Text)
				assert.Empty(t, questionstest.Unaccounted(r.Text, reply), "%s  %q: %v", r.ID, r.Text, reply.Understood)
			}
		})
	}
}

// The same request gets the same reply, to the letter, every time.
func TestQuestionsAreAnsweredAlike(t *testing.T) {
	for name, dir := range questionSets(t) {
		t.Run(name, func(t *testing.T) {
			requests, err := questionstest.Load[questionstest.Request](filepath.Join(dir, "requests.jsonl"))
			require.NoError(t, err)
			c := newTalk(t)
			for _, r := range requests {
				first, firstPictures := apart(c.again().say(r.Text))
				for range 2 {
					again, pictures := apart(c.again().say(r.Text))
					require.Equal(t, first, again, "%s  %q", r.ID, r.Text)
					require.Equal(t, firstPictures, pictures, "%s  %q", r.ID, r.Text)
				}
			}
		})
	}
}

// apart takes the pictures and templates out of a reply and builds them, since
// what builds them cannot be compared.
func apart(r commands.Reply) (words commands.Reply, built []any) {
	for _, s := range r.Scenes {
		built = append(built, s())
	}
	for _, t := range r.Templates {
		built = append(built, t())
	}
	r.Scenes, r.Templates = nil, nil
	return r, built
}

// BenchmarkQuestions answers every request of the question files in turn, each
// in a new conversation.
func BenchmarkQuestions(b *testing.B) {
	var texts []string
	for _, dir := range questionSets(b) {
		requests, err := questionstest.Load[questionstest.Request](filepath.Join(dir, "requests.jsonl"))
		require.NoError(b, err)
		for _, r := range requests {
			texts = append(texts, r.Text)
		}
	}
	assistant := newTalk(b).assistant
	took := make([]time.Duration, 0, 1<<16)
	i := 0
	for b.Loop() {
		start := time.Now()
		assistant.Respond(commands.Turn{Text: texts[i%len(texts)]})
		took = append(took, time.Since(start))
		i++
	}
	slices.Sort(took)
	b.ReportMetric(float64(took[len(took)/2].Nanoseconds()), "ns-median")
	b.ReportMetric(float64(took[len(took)*99/100].Nanoseconds()), "ns-p99")
}
