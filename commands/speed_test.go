package commands_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/commands"
)

// What a turn may cost: allocations, and bytes of state for a conversation. The
// most is for answers of several parts, such as a plan, and for conversations
// of nothing but long requests.
const (
	usualAllocations, mostAllocations = 500, 800
	usualStateBytes, mostStateBytes   = 1024, 1200
)

// Every example of every topic is answered within the allocations of a turn.
func TestTurnsAllocateLittle(t *testing.T) {
	a, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(t, err)
	var all []float64
	for _, topic := range a.Topics() {
		for _, example := range topic.Examples {
			got := testing.AllocsPerRun(5, func() { a.Respond(commands.Turn{Text: example}) })
			assert.Less(t, got, float64(mostAllocations), example)
			all = append(all, got)
		}
	}
	slices.Sort(all)
	assert.Less(t, all[len(all)*9/10], float64(usualAllocations), "nine of ten")
}

// What a turn costs grows with its text and no faster: ten times the text
// allocates at most about ten times as much, whatever it is made of.
func TestTurnsGrowWithTheText(t *testing.T) {
	a, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(t, err)
	for _, part := range []string{"binding for the quilt ", "bindng ", "strip strip. ", "how many ", "5 ", "what about that one, "} {
		t.Run(part, func(t *testing.T) {
			cost := func(characters int) float64 {
				text := strings.Repeat(part, characters/len(part))
				return testing.AllocsPerRun(2, func() { a.Respond(commands.Turn{Text: text}) })
			}
			assert.LessOrEqual(t, cost(7000), 14*cost(700)+200)
		})
	}
}

// An idle conversation, however long it was, is kept in little.
func TestConversationsAreSmall(t *testing.T) {
	c := newTalk(t)
	var all []int
	for _, topic := range c.assistant.Topics() {
		for _, example := range topic.Examples {
			c.say(example)
			b, err := json.Marshal(c.state)
			require.NoError(t, err)
			assert.LessOrEqual(t, len(b), mostStateBytes, "after %q: %s", example, b)
			all = append(all, len(b))
		}
	}
	slices.Sort(all)
	assert.LessOrEqual(t, all[len(all)*9/10], usualStateBytes, "nine of ten")
}

// texts are what a benchmark asks: the examples of all topics.
func texts(b *testing.B) (*commands.Assistant, []string) {
	a, err := commands.NewAssistant(commands.ShopDefaults())
	require.NoError(b, err)
	var out []string
	for _, topic := range a.Topics() {
		out = append(out, topic.Examples...)
	}
	return a, out
}

// BenchmarkAnswer answers the topics' examples from text to reply, and reports
// the middle of them and the slowest of a hundred.
func BenchmarkAnswer(b *testing.B) {
	a, asked := texts(b)
	b.ReportAllocs()
	timed(b, func(i int) { a.Respond(commands.Turn{Text: asked[i%len(asked)]}) })
}

// BenchmarkFollowUp changes a request that was answered before.
func BenchmarkFollowUp(b *testing.B) {
	a, _ := texts(b)
	first := a.Respond(commands.Turn{Text: "binding for 54 x 68"})
	b.ReportAllocs()
	timed(b, func(int) { a.Respond(commands.Turn{Text: "and with 2¼ strips?", State: first.State}) })
}

// BenchmarkLong answers a request that stands within more and more talk.
func BenchmarkLong(b *testing.B) {
	a, _ := texts(b)
	talk := "so my sister came over and we looked at all the lovely prints on the table for hours and then "
	for _, n := range []int{100, 1000, 2000, 7900} {
		text := strings.Repeat(talk, n/len(talk)+1)[:n-20] + " binding for 54 x 68"
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			timed(b, func(int) { a.Respond(commands.Turn{Text: text}) })
		})
	}
}

func BenchmarkNewAssistant(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		_, err := commands.NewAssistant(commands.ShopDefaults())
		require.NoError(b, err)
	}
}

// timed reports the median and the 99th of a hundred beside the mean.
func timed(b *testing.B, f func(i int)) {
	took := make([]time.Duration, 0, 1<<17)
	i := 0
	for b.Loop() {
		start := time.Now()
		f(i)
		took = append(took, time.Since(start))
		i++
	}
	slices.Sort(took)
	b.ReportMetric(float64(took[len(took)/2].Nanoseconds()), "ns-median")
	b.ReportMetric(float64(took[len(took)*99/100].Nanoseconds()), "ns-p99")
}
