package discord_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"runtime"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/discord"
	"counterhand/bot/discord/loopback"
	"counterhand/commands"
)

// TestSoak asks in 500 channels of 50 guilds while something goes wrong every
// second: nothing is lost, nothing answered twice, and nothing piles up. It runs
// for a minute where COUNTERHAND_TEST_ALL is 1, and for a few seconds elsewhere.
func TestSoak(t *testing.T) {
	rounds, length := 2, 2*time.Second
	if os.Getenv("COUNTERHAND_TEST_ALL") == "1" {
		rounds, length = 12, 5*time.Second
	}
	d := open(t, loopback.Options{CheckEach: 50, Heartbeat: 300 * time.Millisecond}, func(cfg *discord.Config) {
		cfg.Remember, cfg.LeaseTTL = 500, 10*time.Second
		cfg.Quota = discord.Quota{PersonBurst: 1 << 30, ChannelBurst: 1 << 30} // twenty people ask all the questions
		// No engine behind it, which would hide what is handed over twice and
		// whose own memory fills up for hours.
		cfg.Handler = handlerFunc(func(_ context.Context, m bot.Message) (commands.Reply, error) {
			return commands.Reply{Outcome: commands.Answer, Text: m.Text}, nil
		})
	})
	var channels []loopback.Channel
	for range 50 {
		guild := d.server.NewGuild()
		for range 10 {
			channels = append(channels, d.server.NewChannel(guild, loopback.Text))
		}
	}
	s := &soak{desk: d, channels: channels, dice: rand.New(rand.NewPCG(1, 2))} // the same faults in each run
	var settled usage
	for n := range rounds {
		s.round(t, length)
		if n <= rounds/4 { // caches fill, and the checks compile what they need
			settled = s.least()
		}
		now := s.usage(usage{settled.goroutines + 10, settled.heap + 4<<20})
		t.Logf("round %d: %d questions, %d faults, %d goroutines, %d KiB", n, s.asked, s.faults, now.goroutines, now.heap>>10)
	}
}

type soak struct {
	desk     *desk
	channels []loopback.Channel
	dice     *rand.Rand
	open     []string // asked and not proved to be answered
	asked    int
	faults   int
}

type usage struct {
	goroutines int
	heap       int64
}

// round asks for a while, with a fault each second, and then proves that every
// question has exactly one answer.
func (s *soak) round(t *testing.T, length time.Duration) {
	t.Helper()
	end := time.Now().Add(length)
	strike := time.Now().Add(time.Second / 2)
	for time.Now().Before(end) {
		for range 10 {
			s.ask()
		}
		s.await(100) // keep pace with a busy machine
		if time.Now().After(strike) {
			strike = strike.Add(time.Second)
			s.faults++
			s.strike(t)
		}
	}
	s.await(0)
	for _, id := range s.open {
		require.Len(t, s.desk.server.Answers(id), 1)
	}
	s.open = nil
	s.desk.server.Forget()
}

func (s *soak) ask() {
	c := s.channels[s.dice.IntN(len(s.channels))]
	s.asked++
	id := s.desk.server.Say(c, loopback.Said{Text: fmt.Sprint("question ", s.asked), Naming: true, Person: loopback.Person(s.dice.IntN(20))})
	if s.desk.server.Heard(id) {
		s.open = append(s.open, id)
	}
}

// await waits until no more than a number of questions is without an answer.
func (s *soak) await(left int) {
	s.desk.server.Await("answers", func() bool {
		missing := 0
		for _, id := range s.open {
			if len(s.desk.server.Answers(id)) == 0 {
				missing++
			}
		}
		return missing <= left
	})
}

func (s *soak) strike(t *testing.T) {
	t.Helper()
	server := s.desk.server
	switch kind := s.dice.IntN(12); kind {
	case 0:
		server.Drop()
	case 1:
		server.Op(7, nil)
	case 2:
		server.Op(9, true)
	case 3: // what is said to a session that is lost is lost with the platform
		s.await(0)
		server.Lose()
		server.AwaitConnected(1)
	case 4:
		before := server.Counts().Resumes
		server.Deaf(true)
		server.Await("a resume", func() bool { return server.Counts().Resumes > before })
		server.Deaf(false)
	case 5:
		server.Close(4000)
	case 6:
		server.Repeat(50)
	case 7:
		server.Fail("POST", 5, loopback.Fault{Status: 500})
	case 8:
		server.Fail("POST", 3, loopback.TooMany("0.1", false))
	case 9:
		server.Fail("POST", 2, loopback.TooMany("0.1", true))
	case 10:
		server.Fail("POST", 5, loopback.Fault{Cut: true})
	case 11:
		server.Trick(loopback.Trick{FirstResume: 7})
		server.Drop()
	}
}

// least gives the least usage of several looks, which is that at rest.
func (s *soak) least() usage {
	least, looks := usage{1 << 30, 1 << 40}, 0
	s.desk.server.AwaitConnected(1)
	s.desk.server.Await("rest", func() bool {
		s.desk.server.CloseIdle()
		least.goroutines, least.heap = min(least.goroutines, runtime.NumGoroutine()), min(least.heap, heap())
		looks++
		return looks == 20
	})
	return least
}

// usage measures once everything has come to rest, which it has when it is
// within a bound: what has piled up never comes down to it.
func (s *soak) usage(bound usage) (now usage) {
	s.desk.server.AwaitConnected(1)
	defer func() {
		if s.desk.t.Failed() {
			s.desk.t.Logf("at the last look: %+v", now)
		}
	}()
	s.desk.server.Await(fmt.Sprintf("no more than %d goroutines and %d KiB", bound.goroutines, bound.heap>>10), func() bool {
		s.desk.server.CloseIdle() // courtesies may still be on their way
		now = usage{goroutines: runtime.NumGoroutine(), heap: heap()}
		return now.goroutines <= bound.goroutines && now.heap <= bound.heap
	})
	return now
}
