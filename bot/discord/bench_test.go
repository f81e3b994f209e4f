//go:build unix

package discord_test

import (
	"context"
	"fmt"
	"log/slog"
	"slices"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/bwmarrin/discordgo"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/discord"
	"counterhand/bot/discord/loopback"
	"counterhand/bot/store/memory"
	"counterhand/commands"
)

// crowd is people who each ask again as soon as they are answered.
type crowd struct {
	server   *loopback.Server
	channels []loopback.Channel
	posted   chan string
}

// inFlight is how many people ask at the same time.
const inFlight = 64

func newCrowd(b *testing.B) *crowd {
	c := &crowd{posted: make(chan string, 4*inFlight)}
	c.server = loopback.New(b, loopback.Options{Unchecked: true, Heartbeat: 40 * time.Second, Posted: func(to string) { c.posted <- to }})
	for range 50 {
		guild := c.server.NewGuild()
		for range 10 {
			c.channels = append(c.channels, c.server.NewChannel(guild, loopback.Text))
		}
	}
	return c
}

// ask has n questions answered, and gives the time that each took.
func (c *crowd) ask(n int) []time.Duration {
	took := make([]time.Duration, 0, n)
	begun := map[string]time.Time{}
	asked := 0
	say := func() {
		now := time.Now()
		id := c.server.Say(c.channels[asked%len(c.channels)], loopback.Said{
			Text: "binding for 54 x 68", Naming: true, Person: loopback.Person(asked % 1000),
		})
		begun[id] = now
		asked++
	}
	for asked < min(inFlight, n) {
		say()
	}
	for len(took) < n {
		id := <-c.posted
		took = append(took, time.Since(begun[id]))
		delete(begun, id)
		if asked < n {
			say()
		}
		if asked%10_000 == 0 {
			c.server.Forget()
		}
	}
	return took
}

// BenchmarkQuestions has questions answered over the loopback gateway, by the
// surface and, in the same run, by an echo bot that is the library and nothing
// else. It reports questions a second, the time within which 99 of 100 were
// answered, and the ratio of the two.
func BenchmarkQuestions(b *testing.B) {
	echo := benchmarkEcho(b, b.N)
	c := newCrowd(b)
	stop := startSurface(b, c.server)
	defer stop()
	c.ask(1000) // connections are opened, buckets are known
	b.ResetTimer()
	begun, worked := time.Now(), processorTime(b)
	took := c.ask(b.N)
	worked = processorTime(b) - worked
	perSecond := float64(b.N) / time.Since(begun).Seconds()
	b.StopTimer()
	slices.Sort(took)
	b.ReportMetric(perSecond, "questions/s")
	b.ReportMetric(float64(took[len(took)*99/100].Microseconds())/1000, "ms-p99")
	b.ReportMetric(perSecond/echo, "of-echo")
	b.ReportMetric(float64(worked.Microseconds())/float64(b.N), "cpu-µs/question")
}

// processorTime is the processor time that this process used, platform and
// all. Unlike the time by the clock it does not hang on what else the machine does.
func processorTime(b *testing.B) time.Duration {
	b.Helper()
	var u syscall.Rusage
	require.NoError(b, syscall.Getrusage(syscall.RUSAGE_SELF, &u))
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

func startSurface(b *testing.B, server *loopback.Server) (stop func()) {
	b.Helper()
	store := memory.Open(time.Now)
	engine, err := bot.NewEngine(bot.EngineConfig{Responder: brief{}, Store: store, Log: slog.New(slog.DiscardHandler)})
	require.NoError(b, err)
	surface, err := discord.New(discord.Config{
		Token: loopback.Token, Handler: engine, Store: store, API: server.API(), Log: slog.New(slog.DiscardHandler), PerSecond: 1_000_000,
		Quota: discord.Quota{PersonBurst: 1 << 30, ChannelBurst: 1 << 30}, Times: quickTimes,
	})
	require.NoError(b, err)
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- surface.Run(ctx) }()
	server.AwaitConnected(1)
	server.Await("registration", func() bool { return server.Calls("PUT /applications/{app}/commands") == 1 })
	return func() {
		cancel()
		require.NoError(b, <-ended)
	}
}

// brief answers as short as an echo does.
type brief struct{}

func (brief) Respond(t commands.Turn) commands.Response {
	return commands.Response{Reply: commands.Reply{Outcome: commands.Answer, Text: t.Text}}
}

// echoOnce guards the library's addresses, which are variables of its package.
var echoOnce sync.Mutex

// benchmarkEcho gives the questions a second that the bare library answers.
func benchmarkEcho(b *testing.B, n int) float64 {
	b.Helper()
	echoOnce.Lock()
	defer echoOnce.Unlock()
	c := newCrowd(b)
	discordgo.APIVersion = "10"
	discordgo.EndpointGateway = c.server.API() + "/gateway"
	discordgo.EndpointChannels = c.server.API() + "/channels/"
	session, err := discordgo.New("Bot " + loopback.Token)
	require.NoError(b, err)
	session.StateEnabled = false
	session.Identify.Token = loopback.Token
	session.Identify.Intents = discordgo.IntentsGuildMessages
	session.AddHandler(func(s *discordgo.Session, m *discordgo.MessageCreate) {
		text := strings.TrimSpace(strings.TrimPrefix(m.Content, "<@"+loopback.Self+">"))
		if _, err := s.ChannelMessageSendReply(m.ChannelID, text, m.Reference()); err != nil {
			b.Error(fmt.Errorf("echo: %w", err))
		}
	})
	require.NoError(b, session.Open())
	defer session.Close()
	c.ask(1000)
	begun := time.Now()
	c.ask(n)
	return float64(n) / time.Since(begun).Seconds()
}
