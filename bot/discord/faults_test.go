package discord_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/discord"
	"counterhand/bot/discord/link"
	"counterhand/bot/discord/loopback"
	"counterhand/commands"
)

// fault is something that goes wrong. Its name gives the row of the lists that
// the tests were drawn up from: "trap" for the library's traps, "case" for what
// went wrong with chat bots elsewhere, "duty" for what the platform asks for.
type fault struct {
	name    string
	options loopback.Options
	config  func(*discord.Config)
	strike  func(t *testing.T, d *desk, c loopback.Channel)
}

// TestFaults lets each fault strike, and then asks the next question: it is
// answered, and no question was put to the assistant twice.
func TestFaults(t *testing.T) {
	var faults []fault
	for _, list := range [][]fault{gatewayFaults, restFaults, eventFaults, interactionFaults, placeFaults, processFaults} {
		faults = append(faults, list...)
	}
	require.GreaterOrEqual(t, len(faults), 40)
	names := map[string]bool{}
	for _, f := range faults {
		require.False(t, names[f.name], "two faults are named %q", f.name)
		names[f.name] = true
		t.Run(f.name, func(t *testing.T) {
			d := open(t, f.options, f.config)
			c := d.server.NewChannel(d.server.NewGuild(), loopback.Text)
			f.strike(t, d, c)
			d.askedOnce(d.server.NewChannel(d.server.NewGuild(), loopback.Text))
		})
	}
}

// answered asks a question and proves that it has exactly one answer.
func answered(t *testing.T, d *desk, c loopback.Channel, text string) loopback.Posted {
	t.Helper()
	id := d.server.Say(c, loopback.Said{Text: text, Naming: true})
	a := d.server.AwaitAnswer(id)
	require.Len(t, d.server.Answers(id), 1)
	return a
}

// resumed waits for one more resume than before.
func resumed(d *desk, strike func()) {
	before := d.server.Counts().Resumes
	strike()
	d.server.Await("a resume", func() bool { return d.server.Counts().Resumes > before })
}

var gatewayFaults = []fault{
	{name: "connection cut, questions meanwhile are answered after the resume", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		resumed(d, d.server.Drop)
		answered(t, d, c, "after the cut")
		assert.Equal(t, 1, d.server.Counts().Identifies)
		assert.Zero(t, d.server.Counts().Strayed, "trap 10: the address for resuming is used")
	}},
	{name: "trap 12: replayed events are not answered twice", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		id := d.server.Say(c, loopback.Said{Text: "once", Naming: true})
		d.server.AwaitAnswer(id)
		d.server.Repeat(5)
		answered(t, d, c, "next")
		assert.Len(t, d.server.Answers(id), 1)
	}},
	{name: "trap 12: READY comes again", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Await("registration", func() bool { return d.server.Calls("PUT /applications/{app}/commands") == 1 })
		d.server.ReadyAgain()
		answered(t, d, c, "after it")
		assert.Equal(t, 1, d.server.Calls("PUT /applications/{app}/commands"))
	}},
	{name: "case 5: many reconnections, one answer each", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		for n := range 5 {
			resumed(d, d.server.Drop)
			answered(t, d, c, fmt.Sprintf("question %d", n))
		}
	}},
	{name: "server asks to reconnect", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		resumed(d, func() { d.server.Op(7, nil) })
		assert.Equal(t, 1, d.server.Counts().Identifies)
	}},
	{name: "trap 6: reconnect asked for as the first thing after a resume", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Trick(loopback.Trick{FirstResume: 7})
		d.server.Drop()
		d.server.Await("two resumes", func() bool { return d.server.Counts().Resumes == 2 })
	}},
	{name: "trap 10: session invalid but resumable is resumed", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		resumed(d, func() { d.server.Op(9, true) })
		assert.Equal(t, 1, d.server.Counts().Identifies)
	}},
	{name: "trap 10: session lost, a new one begins on a new connection", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Lose()
		d.server.Await("a second login", func() bool { return d.server.Counts().Identifies == 2 })
	}},
	{name: "session lost while away", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Trick(loopback.Trick{LostResume: true})
		d.server.Drop()
		d.server.Await("a second login", func() bool { return d.server.Counts().Identifies == 2 })
	}},
	{name: "trap 8: zombie is noticed after one interval and the session kept", options: loopback.Options{Heartbeat: 60 * time.Millisecond},
		strike: func(t *testing.T, d *desk, c loopback.Channel) {
			resumed(d, func() { d.server.Deaf(true) })
			d.server.Deaf(false)
			counts := d.server.Counts()
			assert.Equal(t, 1, counts.Identifies)
			assert.NotContains(t, counts.Closes, 1000)
			assert.NotContains(t, counts.Closes, 1001)
		}},
	{name: "trap 3: a slow answer does not stop the heart", options: loopback.Options{Heartbeat: 200 * time.Millisecond},
		strike: func(t *testing.T, d *desk, c loopback.Channel) {
			hold := d.holdAnswers()
			id := d.server.Say(c, loopback.Said{Text: "slow", Naming: true})
			before := d.server.Counts().Beats
			d.server.Await("heartbeats", func() bool { return d.server.Counts().Beats > before+5 })
			hold()
			d.server.AwaitAnswer(id)
			assert.Zero(t, d.server.Counts().Resumes)
		}},
	{name: "trap 9: the heart beats before the login is taken up", options: loopback.Options{Heartbeat: 30 * time.Millisecond},
		strike: func(t *testing.T, d *desk, c loopback.Channel) {
			d.server.Trick(loopback.Trick{Ignore: true})
			d.server.Drop()
			d.server.Await("the login", func() bool { return d.server.Counts().Resumes == 1 })
			before := d.server.Counts().Beats
			d.server.Await("heartbeats", func() bool { return d.server.Counts().Beats > before+2 })
		}},
	{name: "heartbeats asked for by the server, a flood of them", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		for range 300 {
			d.server.Op(1, nil) // the double fails the test over 120 frames a minute
		}
		d.server.Await("heartbeats", func() bool { return d.server.Counts().Beats > 0 })
	}},
	{name: "trap 7: server that does not greet", config: shortGreeting, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Trick(loopback.Trick{Silent: true})
		resumed(d, d.server.Drop)
	}},
	{name: "trap 7: server that does not take up the login", config: shortGreeting, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Trick(loopback.Trick{Ignore: true})
		d.server.Drop()
		d.server.Await("a second try", func() bool { return d.server.Counts().Resumes == 2 })
	}},
	{name: "gateway away for a while", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		for range 4 {
			d.server.Trick(loopback.Trick{Refuse: true})
		}
		resumed(d, d.server.Drop)
	}},
	closes(4000), closes(4001), closes(4002), closes(4003), closes(4005), closes(4007), closes(4008), closes(4009), closes(1000), closes(1001), closes(1012),
	{name: "trap 2: frames that are no objects", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		for _, raw := range []string{"null", "[]", "{", `"x"`, `{"op":"x"}`, `{"op":0,"t":"GUILD_CREATE","s":99,"d":null}`, `{"op":0,"t":"PRESENCE_UPDATE","d":{}}`, `{"op":99}`} {
			d.server.Raw(raw)
		}
		answered(t, d, c, "after the rubbish")
	}},
	{name: "trap 13: guilds with many members leave nothing in memory", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		members := make([]map[string]any, 1000)
		for n := range members {
			members[n] = map[string]any{"user": map[string]any{"id": loopback.Person(n), "username": strings.Repeat("x", 30)}, "roles": []any{}}
		}
		before := heap()
		for n := range 100 {
			d.server.Tell("GUILD_CREATE", map[string]any{"id": fmt.Sprint(n), "members": members})
		}
		answered(t, d, c, "after 100,000 members")
		d.server.Forget() // the double's own copies
		assert.Less(t, heap()-before, int64(8<<20), "bytes more than before")
	}},
}

func shortGreeting(cfg *discord.Config) { cfg.Times.Greet = 100 * time.Millisecond }

// closes is the server ending the connection with a code after which a client
// is to connect again.
func closes(code int) fault {
	return fault{name: fmt.Sprintf("server closes with %d", code), strike: func(t *testing.T, d *desk, c loopback.Channel) {
		before := d.server.Counts()
		d.server.Close(code)
		d.server.Await("a connection", func() bool {
			now := d.server.Counts()
			return now.Resumes+now.Identifies > before.Resumes+before.Identifies
		})
		fresh := code == 4007 || code == 4009
		assert.Equal(t, fresh, d.server.Counts().Identifies == 2, "a new session begins exactly if the old one is useless")
	}}
}

func heap() int64 {
	runtime.GC()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int64(m.HeapAlloc)
}

// holdAnswers makes answers wait until the function given back is called.
func (d *desk) holdAnswers() (release func()) {
	hold := make(chan struct{})
	d.counter.mu.Lock()
	d.counter.hold = hold
	d.counter.mu.Unlock()
	return sync.OnceFunc(func() {
		d.counter.mu.Lock()
		d.counter.hold = nil
		d.counter.mu.Unlock()
		close(hold)
	})
}

const send = "/messages"

// failing is the HTTP interface failing n times in one way, after which the
// question is answered all the same.
func failing(name string, n int, f loopback.Fault) fault {
	return fault{name: name, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Fail("POST /api/v10/channels/"+c.ID+send, n, f)
		answered(t, d, c, "while it fails")
		assert.False(t, d.server.Pending(), "the fault was met")
	}}
}

var restFaults = []fault{
	failing("trap 17: 500", 2, loopback.Fault{Status: 500}),
	failing("trap 17: 502", 2, loopback.Fault{Status: 502, Body: "<html>bad gateway</html>"}),
	failing("trap 17: 503", 2, loopback.Fault{Status: 503}),
	failing("trap 17: 504", 2, loopback.Fault{Status: 504}),
	failing("trap 17: 429 with a page instead of JSON", 1, loopback.Fault{Status: 429, Header: map[string]string{"Retry-After": "0.05", "Content-Type": "text/html"}, Body: "<html>slow down</html>"}),
	failing("429 for one bucket", 2, loopback.TooMany("0.05", false)),
	failing("429 for everything", 2, loopback.TooMany("0.05", true)),
	failing("429 without a time", 1, loopback.Fault{Status: 429, Body: "{}"}),
	failing("429 of a shared resource", 1, loopback.Fault{Status: 429, Header: map[string]string{"Retry-After": "0.05", "X-RateLimit-Scope": "shared"}, Body: `{"retry_after":0.05,"global":false}`}),
	failing("traps 18 and 24: a nonce: posted, but the connection is cut before the answer", 1, loopback.Fault{Cut: true}),
	{name: "trap 15: a pause for everything holds other calls as well", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		other := d.server.NewChannel(c.Guild, loopback.Text)
		struck := make(chan time.Time, 1)
		d.server.Fail("POST /api/v10/channels/"+c.ID+send, 1, loopback.Fault{
			Status: 429, Header: map[string]string{"Retry-After": "0.3"}, Body: "", Before: func() { struck <- time.Now() },
		})
		first := d.server.Say(c, loopback.Said{Text: "one", Naming: true})
		since := <-struck
		d.server.Await("the client to have read it", func() bool { return strings.Contains(d.log.String(), "everything=true") })
		answered(t, d, other, "two")
		assert.GreaterOrEqual(t, time.Since(since), 300*time.Millisecond)
		d.server.AwaitAnswer(first)
	}},
	{name: "duty: buckets are kept to, and nothing is refused", options: loopback.Options{Limit: 3, Window: 150 * time.Millisecond},
		strike: func(t *testing.T, d *desk, c loopback.Channel) {
			var ids []string
			for n := range 8 {
				ids = append(ids, d.server.Say(c, loopback.Said{Text: fmt.Sprint("question ", n), Person: loopback.Person(n), Naming: true}))
			}
			for _, id := range ids {
				d.server.AwaitAnswer(id)
				assert.Len(t, d.server.Answers(id), 1)
			}
			assert.Zero(t, d.server.Counts().Statuses[429])
		}},
	{name: "a pause of an hour is not waited for, and holds nothing else", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Fail("POST /api/v10/channels/"+c.ID+send, 1, loopback.TooMany("3600", false))
		d.server.Say(c, loopback.Said{Text: "given up", Naming: true})
		d.server.Await("word to the operator", func() bool { return strings.Contains(d.log.String(), "cannot be posted") })
		answered(t, d, d.server.NewChannel(c.Guild, loopback.Text), "elsewhere")
	}},
	{name: "bad form: 400 is not tried again", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Fail("POST /api/v10/channels/"+c.ID+send, 1, loopback.Fault{Status: 400, Body: loopback.Refusal(50035, "Invalid Form Body")})
		d.server.Say(c, loopback.Said{Text: "refused", Naming: true})
		d.server.Await("the refusal", func() bool { return !d.server.Pending() })
		answered(t, d, c, "the next")
		assert.Len(t, d.server.Posts(c.ID), 1)
	}},
	{name: "commands cannot be registered: questions are answered all the same", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Await("registration", func() bool { return strings.Contains(d.log.String(), "registered anew") })
		d.server.Fail("/commands", 1, loopback.Fault{Status: 403, Body: loopback.Refusal(50001, "Missing Access")})
		d.restart(nil)
		answered(t, d, c, "without commands")
		d.server.Await("word to the operator", func() bool { return strings.Contains(d.log.String(), "slash commands cannot be registered") })
	}},
}

func from(change func(map[string]any)) loopback.Said {
	return loopback.Said{Text: "not for us", Naming: true, Change: change}
}

// ignored lets events come that must lead to nothing.
func ignored(name string, say ...loopback.Said) fault {
	return fault{name: name, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		for _, what := range say {
			d.server.Say(c, what)
		}
		answered(t, d, c, "for us")
		assert.Equal(t, []string{"for us"}, d.counter.Asked())
		assert.Len(t, d.server.Posts(c.ID), 1)
	}}
}

var eventFaults = []fault{
	{name: "trap 1: events whose parts have unknown kinds", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		id := d.server.Say(c, loopback.Said{Text: "strange parts", Naming: true, Change: func(e map[string]any) {
			e["components"] = []any{map[string]any{"type": 9999}}
			e["embeds"] = "none"
			e["timestamp"] = 5
		}})
		assert.Equal(t, "Reckoned: strange parts", d.server.AwaitAnswer(id).Content)
	}},
	ignored("trap 1: events without author, id or channel",
		from(func(e map[string]any) { e["author"] = nil }), from(func(e map[string]any) { delete(e, "author") }),
		from(func(e map[string]any) { e["id"] = 7 }), from(func(e map[string]any) { e["channel_id"] = nil })),
	ignored("case 3: bots, webhooks and the account itself are not answered",
		from(func(e map[string]any) { e["author"] = map[string]any{"id": "9", "bot": true} }),
		from(func(e map[string]any) { e["webhook_id"] = loopback.Webhook }),
		from(func(e map[string]any) { e["author"] = map[string]any{"id": loopback.Self} })),
	ignored("duty: notices and forwards are not answered",
		from(func(e map[string]any) { e["type"] = 6 }), from(func(e map[string]any) { e["type"] = 7 }),
		from(func(e map[string]any) { e["type"] = 18 }), from(func(e map[string]any) { e["type"] = 21 }),
		from(func(e map[string]any) { e["message_reference"] = map[string]any{"type": 1, "message_id": "5"} })),
	ignored("duty: withheld content is nothing to answer", loopback.Said{Text: "binding for 54 x 68"}, loopback.Said{Text: "talk", Granted: true}),
	ignored("case 32: everybody, a role of our name, and other people are not us",
		loopback.Said{Text: "@everyone", Granted: true, Change: func(e map[string]any) { e["mention_everyone"] = true }},
		loopback.Said{Text: "<@&" + loopback.Self + "> hello", Granted: true}, loopback.Said{Text: "<@12345> hello", Granted: true}),
	{name: "case 32: a mention alone asks for help, and both forms are understood", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		answered(t, d, c, "")
		id := d.server.Say(c, loopback.Said{Naming: true, Change: func(e map[string]any) { e["content"] = "hello <@!" + loopback.Self + ">" }})
		d.server.AwaitAnswer(id)
		assert.Equal(t, []string{"help", "hello"}, d.counter.Asked())
	}},
	{name: "trap 3: questions of one conversation are answered in order", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		var want, ids []string
		for n := range 8 {
			want = append(want, fmt.Sprint("question ", n))
			ids = append(ids, d.server.Say(c, loopback.Said{Text: want[n], Naming: true}))
		}
		for _, id := range ids {
			d.server.AwaitAnswer(id)
		}
		assert.Equal(t, want, d.counter.Asked())
	}},
	{name: "trap 22: a changed message without author", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		id := d.server.Say(c, loopback.Said{Text: "first", Naming: true})
		d.server.AwaitAnswer(id)
		d.server.Tell("MESSAGE_UPDATE", map[string]any{"id": id, "channel_id": c.ID, "content": "other", "edited_timestamp": time.Now().Format(time.RFC3339)})
		answered(t, d, c, "second")
		assert.Equal(t, []string{"first", "second"}, d.counter.Asked())
	}},
	{name: "case 4: a link preview is no change", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		id := d.server.Say(c, loopback.Said{Text: "see https://example.org", Naming: true})
		d.server.AwaitAnswer(id)
		d.server.Preview(id)
		answered(t, d, c, "next")
		assert.Len(t, d.counter.Asked(), 2)
	}},
	{name: "case 4: a changed question changes its answer", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		id := d.server.Say(c, loopback.Said{Text: "binding for 54 x 86", Naming: true})
		d.server.AwaitAnswer(id)
		d.server.Rewrite(id, "binding for 54 x 68")
		d.server.Await("the new answer", func() bool { return d.server.Answers(id)[0].Content == "Reckoned: binding for 54 x 68" })
		assert.Len(t, d.server.Answers(id), 1)
	}},
	{name: "case 4: a change after the window is left alone", config: func(cfg *discord.Config) { cfg.Window = time.Nanosecond }, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		id := d.server.Say(c, loopback.Said{Text: "old", Naming: true})
		d.server.AwaitAnswer(id)
		d.server.Rewrite(id, "new")
		answered(t, d, c, "next")
		assert.Equal(t, []string{"old", "next"}, d.counter.Asked())
	}},
	{name: "a deleted question takes its answer along", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		id := d.server.Say(c, loopback.Said{Text: "never mind", Naming: true})
		d.server.AwaitAnswer(id)
		d.server.Erase(id)
		d.server.Await("the answer to go", func() bool { return len(d.server.Answers(id)) == 0 })
	}},
	{name: "a question deleted before it was answered is not answered", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		release := d.holdAnswers()
		id := d.server.Say(c, loopback.Said{Text: "never mind", Naming: true})
		d.server.Await("the question", func() bool { return len(d.counter.Asked()) == 1 })
		d.server.Erase(id)
		d.server.Say(c, loopback.Said{Text: "marker", Naming: true, Person: loopback.Person(5)})
		d.server.Await("the marker behind the deletion", func() bool { return len(d.counter.Asked()) == 2 })
		release()
		answered(t, d, c, "next")
		assert.Empty(t, d.server.Answers(id))
	}},
	{name: "case 18: a flood gets one notice", config: func(cfg *discord.Config) {
		cfg.Quota = discord.Quota{PersonBurst: 2, PersonEach: time.Hour}
	}, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		flooder := loopback.Person(9)
		for n := range 40 {
			d.server.Say(c, loopback.Said{Text: fmt.Sprint("flood ", n), Naming: true, Person: flooder})
		}
		answered(t, d, c, "somebody else")
		d.server.Await("two answers and a notice", func() bool { return len(d.server.Posts(c.ID)) == 4 })
		assert.Len(t, d.counter.Asked(), 3)
	}},
	{name: "case 18: what waits in a conversation is bounded", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		release := d.holdAnswers()
		for n := range 30 {
			d.server.Say(c, loopback.Said{Text: fmt.Sprint("flood ", n), Naming: true, Person: loopback.Person(9)})
		}
		d.server.Await("the notice", func() bool { return len(d.server.Posts(c.ID)) == 1 })
		release()
		d.server.Await("eight answers", func() bool { return len(d.server.Posts(c.ID)) == 9 })
	}},
	{name: "case 35: an assistant that breaks down", config: func(cfg *discord.Config) {
		next := cfg.Handler
		cfg.Handler = handlerFunc(func(ctx context.Context, m bot.Message) (commands.Reply, error) {
			if m.Text == "break down" {
				panic("secret detail at 0xdead")
			}
			return next.Handle(ctx, m)
		})
	}, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		a := answered(t, d, c, "break down")
		assert.NotContains(t, a.Content, "secret detail")
		assert.Regexp(t, `\([a-z0-9]{6}\)`, a.Content)
		_, rest, _ := strings.Cut(a.Content, "(")
		id, _, _ := strings.Cut(rest, ")")
		assert.Contains(t, d.log.String(), id)
		assert.Contains(t, d.log.String(), "secret detail")
	}},
}

func question(text string) loopback.Used {
	return loopback.Used{Command: "ask", Options: map[string]any{"question": text}}
}

func quick(cfg *discord.Config) { cfg.Patience = 20 * time.Millisecond }

var interactionFaults = []fault{
	{name: "case 16: a slow answer is announced, then put in its place", config: quick, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		release := d.holdAnswers()
		id := d.server.Use(c, question("slow"))
		d.server.Await("the announcement", func() bool { a := d.server.Answers(id); return len(a) == 1 && a[0].Loading })
		release()
		assert.Equal(t, "Reckoned: slow", d.server.AwaitAnswer(id).Content)
		assert.Len(t, d.server.Answers(id), 1)
	}},
	{name: "case 17: answered, but the connection is cut before the platform says so", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Fail("/callback", 1, loopback.Fault{Cut: true})
		id := d.server.Use(c, question("cut"))
		d.server.AwaitAnswer(id)
		answered(t, d, c, "next")
		assert.Len(t, d.server.Answers(id), 1)
		d.server.Await("the repeat to be told that it is answered", func() bool { return d.server.Counts().Statuses[400] == 1 })
	}},
	{name: "case 17: announced, but the connection is cut before the platform says so", config: quick, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		release := d.holdAnswers()
		d.server.Fail("/callback", 1, loopback.Fault{Cut: true})
		id := d.server.Use(c, question("cut"))
		d.server.Await("the repeat", func() bool { return d.server.Counts().Statuses[400] == 1 })
		release()
		assert.Equal(t, "Reckoned: cut", d.server.AwaitAnswer(id).Content)
	}},
	{name: "an interaction that ran out is not called again", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		release := d.holdAnswers()
		id := d.server.Use(c, question("late"))
		d.server.Expire(id)
		release()
		d.server.Await("the refusal", func() bool { return d.server.Counts().Statuses[404] == 1 })
	}},
	{name: "500 for an interaction", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Fail("/callback", 2, loopback.Fault{Status: 500})
		assert.Equal(t, "Reckoned: retried", d.server.AwaitAnswer(d.server.Use(c, question("retried"))).Content)
	}},
	{name: "interaction delivered twice", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		id := d.server.Use(c, question("twice"))
		d.server.AwaitAnswer(id)
		d.server.Repeat(3)
		answered(t, d, c, "next")
		assert.Len(t, d.server.Answers(id), 1)
	}},
	{name: "trap 22: in direct messages the person stands elsewhere", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		id := d.server.Use(d.server.DirectWith(loopback.Person(3)), question("direct"))
		assert.Equal(t, "Reckoned: direct", d.server.AwaitAnswer(id).Content)
	}},
	{name: "trap 21: a form that was never offered", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		a := d.server.AwaitAnswer(d.server.Use(c, loopback.Used{Form: true}))
		assert.True(t, a.Private)
	}},
	{name: "a command of an earlier program", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		a := d.server.AwaitAnswer(d.server.Use(c, loopback.Used{Command: "former"}))
		assert.True(t, a.Private)
		assert.Contains(t, a.Content, "/ask")
	}},
	{name: "trap 23: nothing fits what is typed", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		for _, typed := range []string{"zzz", "", "2¼"} {
			id := d.server.Use(c, loopback.Used{Command: "binding", Sub: "straight", Typing: "strip", Options: map[string]any{"strip": typed}})
			d.server.Await("suggestions", func() bool { return len(d.server.Suggestions(id)) > 0 })
		}
	}},
	{name: "case 33: what is suggested is what is sent, and what was typed is taken", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		id := d.server.Use(c, loopback.Used{Command: "binding", Sub: "straight", Typing: "strip", Options: map[string]any{"strip": "2¼"}})
		d.server.Await("suggestions", func() bool { return len(d.server.Suggestions(id)) > 0 })
		assert.Equal(t, []string{"2¼", "2¼ in"}, d.server.Suggestions(id))
		id = d.server.Use(c, loopback.Used{Command: "binding", Sub: "straight", Options: map[string]any{"quilt": "54 x 68", "strip": "2 3/8\""}})
		assert.Equal(t, "Reckoned: binding, quilt 54 x 68, strip width 2 3/8\"", d.server.AwaitAnswer(id).Content)
	}},
	{name: "interactions over the quota are told so privately", config: func(cfg *discord.Config) {
		cfg.Quota = discord.Quota{PersonBurst: 1, PersonEach: time.Hour}
	}, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		flooder := question("one")
		flooder.Person = loopback.Person(8)
		d.server.AwaitAnswer(d.server.Use(c, flooder))
		assert.True(t, d.server.AwaitAnswer(d.server.Use(c, flooder)).Private)
	}},
}

// many is a reply with a card, a file and a picture.
func many(string) commands.Reply {
	return commands.Reply{
		Outcome: commands.Answer, Topic: "binding", Text: "7 strips, 2½ in wide: buy ½ yd.",
		Figures: []commands.Figure{{Name: "strips", Shown: "7"}, {Name: "strip_width", Shown: "2½ in"}, {Name: "buy", Shown: "½ yd"}},
		Files:   []commands.File{{Name: "sheet.pdf", Type: "application/pdf", Data: []byte("%PDF-")}},
	}
}

// quietly is a place that takes no answer. There is one try, and no more.
func quietly(name string, l loopback.Lack) fault {
	return fault{name: name, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Take(c.ID, l)
		d.server.Say(c, loopback.Said{Text: "into the void", Naming: true})
		d.server.Await("the refusal", func() bool { return d.server.Calls("POST /channels/{c}/messages") == 1 })
		answered(t, d, d.server.NewChannel(c.Guild, loopback.Text), "elsewhere")
		assert.Equal(t, 2, d.server.Calls("POST /channels/{c}/messages"))
	}}
}

var placeFaults = []fault{
	quietly("case 13: channel deleted", loopback.Lack{Gone: true}),
	quietly("case 15: thread archived", loopback.Lack{Archived: true}),
	quietly("case 15: thread locked", loopback.Lack{Locked: true}),
	{name: "case 11: no right to show cards", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.counter.Reply(many)
		d.server.Take(c.ID, loopback.Lack{Embed: true})
		a := answered(t, d, c, "card?")
		assert.Empty(t, a.Embeds)
		assert.Equal(t, []string{"sheet.pdf"}, a.Files)
		assert.Contains(t, a.Content, "7 strips")
	}},
	{name: "case 11: no right to show cards or attach files", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.counter.Reply(many)
		d.server.Take(c.ID, loopback.Lack{Embed: true, Attach: true})
		a := answered(t, d, c, "anything?")
		assert.Empty(t, a.Embeds)
		assert.Empty(t, a.Files)
		assert.Equal(t, 3, d.server.Calls("POST /channels/{c}/messages"))
		answered(t, d, c, "again?")
		assert.Equal(t, 4, d.server.Calls("POST /channels/{c}/messages"), "the refusals are remembered")
	}},
	{name: "case 11: interactions say what is allowed", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.counter.Reply(many)
		use := question("plain")
		use.Ours = 1 << 11
		a := d.server.AwaitAnswer(d.server.Use(c, use))
		assert.Empty(t, a.Embeds)
		assert.Empty(t, a.Files)
	}},
	{name: "case 11: no right to write, the owner is told once", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Take(c.ID, loopback.Lack{Send: true})
		owner := d.server.DirectWith(loopback.Owner)
		d.server.Say(c, loopback.Said{Text: "one", Naming: true})
		d.server.Await("word to the owner", func() bool { return len(d.server.Posts(owner.ID)) == 1 })
		d.server.Say(c, loopback.Said{Text: "two", Naming: true})
		d.server.Await("the second try", func() bool { return strings.Count(d.log.String(), "a right is missing") == 2 })
		answered(t, d, d.server.NewChannel(c.Guild, loopback.Text), "elsewhere")
		assert.Len(t, d.server.Posts(owner.ID), 1)
	}},
	{name: "no access to the channel", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Take(c.ID, loopback.Lack{View: true})
		d.server.Say(c, loopback.Said{Text: "one", Naming: true})
		owner := d.server.DirectWith(loopback.Owner)
		d.server.Await("word to the owner", func() bool { return len(d.server.Posts(owner.ID)) == 1 })
	}},
	{name: "case 15: no right to read what a reply refers to", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Take(c.ID, loopback.Lack{History: true})
		d.server.Say(c, loopback.Said{Text: "no history", Naming: true})
		d.server.Await("a plain post", func() bool { return len(d.server.Posts(c.ID)) == 1 })
		assert.Empty(t, d.server.Posts(c.ID)[0].Answers)
	}},
	{name: "answer deleted by somebody before its question is changed", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		id := d.server.Say(c, loopback.Said{Text: "first", Naming: true})
		d.server.AwaitAnswer(id)
		d.server.Fail("PATCH", 1, loopback.Fault{Status: 404, Body: loopback.Refusal(10008, "Unknown Message")})
		d.server.Rewrite(id, "second")
		d.server.Await("the refusal", func() bool { return !d.server.Pending() })
	}},
	{name: "case 10: figures too long for a card", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.counter.Reply(func(text string) commands.Reply {
			r := many(text)
			if text == "long" {
				r.Figures[0].Shown = strings.Repeat("x", 1025)
			}
			return r
		})
		a := answered(t, d, c, "long")
		assert.Empty(t, a.Embeds)
		assert.Contains(t, a.Content, "7 strips")
	}},
	{name: "case 10: too many figures for a card", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.counter.Reply(func(text string) commands.Reply {
			r := many(text)
			for n := range 30 {
				r.Figures = append(r.Figures, commands.Figure{Name: fmt.Sprint("f", n), Shown: "1"})
			}
			return r
		})
		assert.Empty(t, answered(t, d, c, "many").Embeds)
	}},
	{name: "case 8: an answer over 2000 characters", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.counter.Reply(func(text string) commands.Reply {
			return commands.Reply{Outcome: commands.Answer, Text: strings.Repeat("a line of *working* out\n", 200)}
		})
		a := answered(t, d, c, "long")
		assert.Equal(t, []string{"answer.txt"}, a.Files)
		assert.LessOrEqual(t, len([]rune(a.Content)), 2000)
	}},
	{name: "case 14: quiet hours, and the person takes no direct messages", config: func(cfg *discord.Config) { cfg.Zone = time.UTC }, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		setQuiet(d, c)
		person := loopback.Person(6)
		direct := d.server.DirectWith(person)
		d.server.Take(direct.ID, loopback.Lack{Refused: true})
		d.server.Say(c, loopback.Said{Text: "hush", Naming: true, Person: person})
		d.server.Await("one try", func() bool { return strings.Contains(d.log.String(), "takes no answer just now") })
		assert.Empty(t, d.server.Answers(c.ID))
	}},
}

// setQuiet makes the whole day quiet in a channel, but one minute from now on
// the day before.
func setQuiet(d *desk, c loopback.Channel) {
	now := time.Now().UTC()
	id := d.server.Use(c, loopback.Used{Command: "channel-rules", Sub: "quiet", Rights: 1 << 4, Options: map[string]any{
		"from": now.Add(-2 * time.Hour).Format("15:04"), "to": now.Add(2 * time.Hour).Format("15:04"), "zone": "UTC",
	}})
	d.server.AwaitAnswer(id)
}

var processFaults = []fault{
	fatal(4004), fatal(4010), fatal(4011), fatal(4012), fatal(4013), fatal(4014),
	{name: "trap 5: stopping while a reconnection is waited for", config: func(cfg *discord.Config) { cfg.Times.Retry = time.Hour }, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Drop()
		d.server.Await("the connection to be gone", func() bool { return strings.Contains(d.log.String(), "connecting again") })
		d.restart(nil)
		counts := d.server.Counts()
		assert.Equal(t, 2, counts.Identifies+counts.Resumes, "one connection before, one after")
	}},
	{name: "trap 11: questions between two processes are answered", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		require.NoError(t, d.stop())
		id := d.server.Say(c, loopback.Said{Text: "anybody there?", Naming: true})
		require.True(t, d.server.Heard(id), "the session outlives the process")
		d.start(nil)
		d.server.AwaitAnswer(id)
		assert.Equal(t, 1, d.server.Counts().Identifies)
	}},
	{name: "case 6: an event delivered again after a restart", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		id := d.server.Say(c, loopback.Said{Text: "once", Naming: true})
		d.server.AwaitAnswer(id)
		d.restart(nil)
		d.server.Repeat(10)
		answered(t, d, c, "next")
		assert.Len(t, d.server.Answers(id), 1)
	}},
	{name: "case 7: two processes with one token", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		second := *d
		first := *d
		second.startStandby()
		answered(t, d, c, "one of us")
		assert.Equal(t, 1, d.server.Counts().Identifies)
		require.NoError(t, first.stop())
		d.server.Await("the other to take over", func() bool { return d.server.Counts().Resumes > 0 })
		answered(t, d, c, "still one")
	}},
	{name: "case 21: buttons after a restart", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.counter.Reply(func(text string) commands.Reply {
			return commands.Reply{Outcome: commands.Answer, Text: "Reckoned: " + text, Working: []string{"1 + 1 = 2"}}
		})
		a := answered(t, d, c, "binding for 54 x 68")
		require.NotEmpty(t, a.Buttons)
		d.restart(nil)
		id := d.server.Use(c, loopback.Used{Press: a.Buttons[0].Carries, On: a.ID})
		assert.Equal(t, "Reckoned: show the working", d.server.AwaitAnswer(id).Content)
	}},
	{name: "trap 27: what was taken on is answered before the end", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		release := d.holdAnswers()
		id := d.server.Say(c, loopback.Said{Text: "last call", Naming: true})
		d.server.Await("the question", func() bool { return len(d.counter.Asked()) == 1 })
		d.end()
		d.server.Await("the connection to be gone", func() bool { return d.server.Counts().Connections == 0 })
		release()
		require.NoError(t, d.stop())
		assert.Len(t, d.server.Answers(id), 1)
		d.start(nil)
	}},
	{name: "trap 16: the end does not wait for a pause that the platform asked for", config: func(cfg *discord.Config) { cfg.Farewell = 50 * time.Millisecond }, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Fail("POST /api/v10/channels/"+c.ID+send, 1, loopback.TooMany("20", false))
		d.server.Say(c, loopback.Said{Text: "stuck", Naming: true})
		d.server.Await("the pause", func() bool { return strings.Contains(d.log.String(), "slow down") })
		require.ErrorContains(t, d.stop(), "1 questions could not be answered")
		d.start(nil)
	}},
	{name: "case 19: no starts left today", strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Starts(0)
		d.server.Lose()
		d.server.Await("word to the operator", func() bool { return strings.Contains(d.log.String(), "no session starts left") })
		assert.Equal(t, 1, d.server.Counts().Identifies)
		d.server.Starts(10)
	}},
	{name: "case 22: the store is away", config: func(cfg *discord.Config) { cfg.Store = brokenStore{cfg.Store} }, strike: func(t *testing.T, d *desk, c loopback.Channel) {
		answered(t, d, c, "without rules")
		d.counter.Reply(func(text string) commands.Reply {
			return commands.Reply{Outcome: commands.Answer, Text: text, Working: []string{"1 + 1 = 2"}}
		})
		a := answered(t, d, c, "with a button")
		id := d.server.Use(c, loopback.Used{Press: a.Buttons[0].Carries, On: a.ID})
		assert.Contains(t, d.server.AwaitAnswer(id).Content, "Try again in a minute")
	}},
}

// fatal is a close code after which a client must not connect again: the
// surface ends and says why, and only a new process connects.
func fatal(code int) fault {
	return fault{name: fmt.Sprintf("trap 4: closed with %d", code), strike: func(t *testing.T, d *desk, c loopback.Channel) {
		d.server.Close(code)
		err := <-d.ended
		d.ended <- err
		var stopped *link.Stopped
		require.ErrorAs(t, err, &stopped)
		assert.Equal(t, code, stopped.Code)
		assert.Equal(t, code == 4004, errors.Is(err, discord.ErrRevoked))
		counts := d.server.Counts()
		assert.Equal(t, 1, counts.Identifies+counts.Resumes)
		d.start(nil)
	}}
}

// brokenStore fails at everything but leases.
type brokenStore struct{ discord.Store }

func (brokenStore) Settings(context.Context, ...bot.Owner) (map[bot.Owner]bot.Settings, error) {
	return nil, errStoreAway
}

func (brokenStore) ChangeSettings(context.Context, bot.Owner, time.Time, func(json.RawMessage) (json.RawMessage, error)) error {
	return errStoreAway
}

func (brokenStore) Conversation(context.Context, bot.ConversationID) (bot.Conversation, error) {
	return bot.Conversation{}, errStoreAway
}

// startStandby starts a second process on the same platform and store, which
// does not connect while the first one does.
func (d *desk) startStandby() {
	d.t.Helper()
	d.standby = true
	d.start(nil)
	d.server.Await("the second process to stand by", func() bool { return strings.Contains(d.log.String(), "standing by") })
}
