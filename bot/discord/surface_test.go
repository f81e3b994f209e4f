package discord_test

import (
	"bytes"
	"crypto/ed25519"
	"encoding/hex"
	"errors"
	"fmt"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot/discord"
	"counterhand/bot/discord/link"
	"counterhand/bot/discord/loopback"
	"counterhand/bot/store/memory"
	"counterhand/commands"
	"counterhand/commands/scene"
)

func TestWaysToAsk(t *testing.T) {
	d := open(t, loopback.Options{}, nil)
	guild := d.server.NewGuild()
	for name, kind := range map[string]loopback.Kind{
		"text": loopback.Text, "thread": loopback.Thread, "forum post": loopback.ForumPost,
		"announcements": loopback.Announcement, "voice": loopback.Voice,
	} {
		t.Run("mention in "+name, func(t *testing.T) {
			c := d.server.NewChannel(guild, kind)
			answer := d.ask(c, "binding for 54 x 68")
			assert.Equal(t, "Reckoned: binding for 54 x 68", answer.Content)
			assert.Equal(t, c.ID, answer.Channel)
		})
	}
	t.Run("direct message", func(t *testing.T) {
		id := d.server.Say(d.server.NewChannel("", loopback.Direct), loopback.Said{Text: "backing for 70 x 90"})
		assert.Equal(t, "Reckoned: backing for 70 x 90", d.server.AwaitAnswer(id).Content)
	})
	t.Run("reply to an answer", func(t *testing.T) {
		c := d.server.NewChannel(guild, loopback.Text)
		first := d.ask(c, "binding for 54 x 68")
		id := d.server.Say(c, loopback.Said{Text: "and with 2¼ strips?", Reply: first.ID})
		assert.Equal(t, "Reckoned: and with 2¼ strips?", d.server.AwaitAnswer(id).Content)
	})
	t.Run("free text command", func(t *testing.T) {
		c := d.server.NewChannel(guild, loopback.Text)
		id := d.server.Use(c, loopback.Used{Command: "ask", Options: map[string]any{"question": "binding for 54 x 68"}})
		assert.Equal(t, "Reckoned: binding for 54 x 68", d.server.AwaitAnswer(id).Content)
	})
	t.Run("family command", func(t *testing.T) {
		c := d.server.NewChannel(guild, loopback.Text)
		id := d.server.Use(c, loopback.Used{Command: "binding", Sub: "straight", Options: map[string]any{"quilt": "54 x 68", "strip": "2¼ in"}})
		assert.Equal(t, "Reckoned: binding, quilt 54 x 68, strip width 2¼ in", d.server.AwaitAnswer(id).Content)
	})
}

// held is a reply with everything that leads to buttons.
func held(text string) commands.Reply {
	return commands.Reply{
		Outcome: commands.Answer, Topic: "backing", Text: "Reckoned: " + text, Working: []string{"1 + 1 = 2"},
		Figures: []commands.Figure{{Name: "strips", Shown: "7", Unit: "count"}, {Name: "border1.side_cut", Shown: "2½ in", Unit: "in"}, {Name: "buy", Shown: "½ yd", Unit: "yd"}},
	}
}

func button(t *testing.T, p loopback.Posted, label string) string {
	t.Helper()
	for _, b := range p.Buttons {
		if b.Label == label {
			return b.Carries
		}
	}
	t.Fatalf("no button %q among %v", label, p.Buttons)
	return ""
}

func TestAnswerHasFiguresAndNextSteps(t *testing.T) {
	d := open(t, loopback.Options{}, nil)
	d.counter.Reply(held)
	a := d.ask(d.server.NewChannel(d.server.NewGuild(), loopback.Text), "backing for 54 x 68")
	assert.Equal(t, "Reckoned: backing for 54 x 68", a.Content)
	require.Len(t, a.Embeds, 1)
	fields := a.Embeds[0].(map[string]any)["fields"].([]any)
	assert.Equal(t, map[string]any{"name": "border 1, side cut", "value": "2½ in", "inline": true}, fields[1])
	var labels []string
	for _, b := range a.Buttons {
		labels = append(labels, b.Label)
		assert.LessOrEqual(t, len(b.Carries), link.MaxCarried)
	}
	assert.Equal(t, []string{"Show the working", "The other way", "In centimetres"}, labels)
}

func TestButtons(t *testing.T) {
	now := newClock()
	d := open(t, loopback.Options{}, func(cfg *discord.Config) { cfg.Now = now.Now })
	d.counter.Reply(held)
	c := d.server.NewChannel(d.server.NewGuild(), loopback.Text)
	press := func(carries, person string) loopback.Posted {
		return d.server.AwaitAnswer(d.server.Use(c, loopback.Used{Press: carries, Person: person}))
	}
	first := d.ask(c, "backing for 54 x 68")

	t.Run("only for the person who asked", func(t *testing.T) {
		a := press(button(t, first, "Show the working"), loopback.Person(1))
		assert.True(t, a.Private)
		assert.Contains(t, a.Content, "belong to the person who asked")
	})
	t.Run("says its words in the same conversation", func(t *testing.T) {
		a := press(button(t, first, "Show the working"), "")
		assert.Equal(t, "Reckoned: show the working", a.Content)
		assert.False(t, a.Private)
	})
	t.Run("another step after one about the same request", func(t *testing.T) {
		assert.Equal(t, "Reckoned: in cm", press(button(t, first, "In centimetres"), "").Content)
	})
	t.Run("not when the conversation is about something else", func(t *testing.T) {
		a := press(button(t, first, "Show the working"), "")
		assert.Contains(t, a.Content, "asked me something else since")
	})
	t.Run("expires politely", func(t *testing.T) {
		fresh := d.ask(c, "backing for 60 x 72")
		now.Add(13 * time.Hour)
		assert.Contains(t, press(button(t, fresh, "Show the working"), "").Content, "too old")
	})
	for name, carries := range map[string]string{
		"of an earlier program": "n0.w.abc.def", "of nobody": "x", "with an unknown step": "n1.zz.1.1", "without a number": "n1.w.!.1",
		"with half a choice": "n1.c.1.1", "empty parts": "n1...",
	} {
		t.Run(name, func(t *testing.T) {
			a := press(carries, "")
			assert.True(t, a.Private)
			assert.Contains(t, a.Content, "do not know that button")
		})
	}
}

func TestChoicesOfAQuestionAreButtons(t *testing.T) {
	d := open(t, loopback.Options{}, nil)
	d.counter.Reply(func(text string) commands.Reply {
		if text == "king" {
			return commands.Reply{Outcome: commands.Question, Text: "Which king?", Choices: []string{"US king", "UK king", "UK king", strings.Repeat("long ", 30)}}
		}
		return commands.Reply{Outcome: commands.Answer, Text: "Reckoned: " + text}
	})
	c := d.server.NewChannel(d.server.NewGuild(), loopback.Text)
	a := d.ask(c, "king")
	require.Len(t, a.Buttons, 2, "each once, and none that would not fit")
	id := d.server.Use(c, loopback.Used{Press: button(t, a, "UK king")})
	assert.Equal(t, "Reckoned: UK king", d.server.AwaitAnswer(id).Content)
}

// clock is a clock that tests set.
type clock struct {
	mu sync.Mutex
	by time.Duration
}

func newClock() *clock { return &clock{} }

func (c *clock) Now() time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	return time.Now().Add(c.by)
}

func (c *clock) Add(d time.Duration) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.by += d
}

const keeper = 1 << 4

func rule(sub string, options map[string]any) loopback.Used {
	return loopback.Used{Command: "channel-rules", Sub: sub, Options: options, Rights: keeper}
}

func TestChannelRules(t *testing.T) {
	d := open(t, loopback.Options{}, func(cfg *discord.Config) { cfg.Listen = true })
	assert.Equal(t, 1<<9|1<<12|1<<15, d.server.Counts().Intents, "guild messages, direct messages, content")
	c := d.server.NewChannel(d.server.NewGuild(), loopback.Text)
	set := func(u loopback.Used) loopback.Posted { return d.server.AwaitAnswer(d.server.Use(c, u)) }

	t.Run("case 32: only for keepers, whoever the guild shows the command to", func(t *testing.T) {
		u := rule("sign", map[string]any{"sign": "??"})
		u.Rights = 1 << 11
		a := set(u)
		assert.True(t, a.Private)
		assert.Contains(t, a.Content, "Only people who may manage")
	})
	t.Run("without a sign, talk is not for us", func(t *testing.T) {
		d.server.Say(c, loopback.Said{Text: "?? binding for 54 x 68", Granted: true})
		d.ask(c, "marker")
		assert.Equal(t, []string{"marker"}, d.counter.Asked())
	})
	t.Run("case 29: sign, in capitals too", func(t *testing.T) {
		assert.Contains(t, set(rule("sign", map[string]any{"sign": "quilt:"})).Content, "begins with quilt:")
		id := d.server.Say(c, loopback.Said{Text: "Quilt: binding for 54 x 68 ", Granted: true})
		assert.Equal(t, "Reckoned: binding for 54 x 68", d.server.AwaitAnswer(id).Content)
		other := d.server.NewChannel(c.Guild, loopback.Text)
		d.server.Say(other, loopback.Said{Text: "quilt: elsewhere", Granted: true})
		d.ask(other, "elsewhere by name")
		assert.Equal(t, []string{"marker", "binding for 54 x 68", "elsewhere by name"}, d.counter.Asked())
	})
	t.Run("show", func(t *testing.T) {
		assert.Contains(t, set(rule("show", nil)).Content, "quilt:")
	})
	t.Run("no sign any more", func(t *testing.T) {
		set(rule("sign", nil))
		d.server.Say(c, loopback.Said{Text: "quilt: backing", Granted: true})
		d.ask(c, "last")
		assert.NotContains(t, d.counter.Asked(), "backing")
	})
	for _, sign := range []string{"/", "@me", "a", "has space", "elevenchars", "<x"} {
		t.Run("refused sign "+sign, func(t *testing.T) {
			assert.NotContains(t, set(rule("sign", map[string]any{"sign": sign})).Content, "From now on")
		})
	}
	t.Run("greeting once, when asked to join", func(t *testing.T) {
		first := set(rule("join", nil))
		assert.False(t, first.Private)
		assert.Contains(t, first.Content, "Hello")
		second := set(rule("join", nil))
		assert.True(t, second.Private)
	})
	t.Run("rules outlive the process", func(t *testing.T) {
		set(rule("sign", map[string]any{"sign": "!q"}))
		d.restart(func(cfg *discord.Config) { cfg.Listen = true })
		id := d.server.Say(c, loopback.Said{Text: "!q after the restart", Granted: true})
		assert.Equal(t, "Reckoned: after the restart", d.server.AwaitAnswer(id).Content)
	})
	t.Run("no rules in direct messages", func(t *testing.T) {
		id := d.server.Use(d.server.DirectWith(loopback.Person(4)), rule("show", nil))
		assert.Contains(t, d.server.AwaitAnswer(id).Content, "direct messages")
	})
}

func TestListeningIsOffUnlessSwitchedOn(t *testing.T) {
	d := open(t, loopback.Options{}, nil)
	assert.Equal(t, 1<<9|1<<12, d.server.Counts().Intents, "trap 20: no more than is needed, and never none")
	c := d.server.NewChannel(d.server.NewGuild(), loopback.Text)
	a := d.server.AwaitAnswer(d.server.Use(c, rule("sign", map[string]any{"sign": "??"})))
	assert.Contains(t, a.Content, "switch listening on")
}

func TestQuietHours(t *testing.T) {
	d := open(t, loopback.Options{}, nil)
	c := d.server.NewChannel(d.server.NewGuild(), loopback.Text)
	setQuiet(d, c)
	person := loopback.Person(0)
	t.Run("an answer goes to the person alone", func(t *testing.T) {
		d.server.Say(c, loopback.Said{Text: "binding for 54 x 68", Naming: true})
		direct := d.server.DirectWith(person)
		d.server.Await("a direct message", func() bool { return len(d.server.Posts(direct.ID)) == 1 })
		assert.Contains(t, d.server.Posts(direct.ID)[0].Content, "Reckoned: binding for 54 x 68")
	})
	t.Run("a command is answered privately", func(t *testing.T) {
		assert.True(t, d.server.AwaitAnswer(d.server.Use(c, question("binding"))).Private)
	})
	t.Run("none any more", func(t *testing.T) {
		d.server.AwaitAnswer(d.server.Use(c, rule("quiet", nil)))
		assert.Equal(t, c.ID, d.ask(c, "aloud").Channel)
	})
	for name, options := range map[string]map[string]any{
		"no time": {"from": "late", "to": "7:00"}, "no zone": {"from": "22", "to": "7", "zone": "Nowhere/Town"}, "no length": {"from": "7", "to": "7:00"}, "half": {"from": "7"},
	} {
		t.Run("refused: "+name, func(t *testing.T) {
			assert.NotContains(t, d.server.AwaitAnswer(d.server.Use(c, rule("quiet", options))).Content, "Quiet hours here are")
		})
	}
}

func TestCommandsAreRegisteredOnlyWhenTheyDiffer(t *testing.T) {
	const put = "PUT /applications/{app}/commands"
	const putHere = "PUT /applications/{app}/guilds/{g}/commands"
	whole := func(cfg *discord.Config) { cfg.Families = discord.Families() }
	d := open(t, loopback.Options{}, whole)
	// The answer has to be back, not only the call made: a restart in between
	// would find the old commands.
	registered := func() bool { return strings.Contains(d.log.String(), "registered anew") }
	d.server.Await("registration", registered)
	require.Equal(t, 1, d.server.Calls(put))
	t.Run("trap 28: not at another start", func(t *testing.T) {
		d.restart(whole)
		d.server.Await("a look", func() bool { return d.server.Calls("GET /applications/{app}/commands") == 2 })
		d.ask(d.server.NewChannel(d.server.NewGuild(), loopback.Text), "marker")
		assert.Equal(t, 1, d.server.Calls(put))
	})
	t.Run("a changed word is registered", func(t *testing.T) {
		d.restart(func(cfg *discord.Config) {
			cfg.Families = discord.Families()
			cfg.Families[0].Description = "Another description"
		})
		d.server.Await("registration", registered) // each start has a log of its own
		assert.Equal(t, 2, d.server.Calls(put))
	})
	t.Run("trap 28: in one guild only, and not in both scopes", func(t *testing.T) {
		guild := d.server.NewGuild()
		inGuild := func(cfg *discord.Config) { cfg.Families, cfg.Guild = discord.Families(), guild }
		d.restart(inGuild)
		d.server.Await("registration", func() bool { return d.server.Calls(putHere) == 1 && d.server.Calls(put) == 3 })
	})
}

// Duty: signed requests, the same handlers, no connection to the gateway.
func TestInteractionsByHTTP(t *testing.T) {
	d := open(t, loopback.Options{}, func(cfg *discord.Config) { cfg.HTTPOnly = true })
	public, private, err := ed25519.GenerateKey(nil)
	require.NoError(t, err)
	endpoint, err := d.surface.Endpoint(hex.EncodeToString(public))
	require.NoError(t, err)
	c := d.server.NewChannel(d.server.NewGuild(), loopback.Text)
	id, body := d.server.Signed(c, question("binding for 54 x 68"))
	for range 2 { // delivered twice, answered once
		r := httptest.NewRequest(http.MethodPost, "/", bytes.NewReader(body))
		at := fmt.Sprint(time.Now().Unix())
		r.Header.Set("X-Signature-Timestamp", at)
		r.Header.Set("X-Signature-Ed25519", hex.EncodeToString(ed25519.Sign(private, append([]byte(at), body...))))
		w := httptest.NewRecorder()
		endpoint.ServeHTTP(w, r)
		assert.Equal(t, http.StatusAccepted, w.Code)
	}
	assert.Equal(t, "Reckoned: binding for 54 x 68", d.server.AwaitAnswer(id).Content)
	assert.Len(t, d.server.Answers(id), 1)
	assert.Zero(t, d.server.Counts().Identifies)
}

// Duty: shards are shared out between processes, one login at a time in each of
// the platform's groups, and direct messages belong to shard 0.
func TestShardsAreSharedOut(t *testing.T) {
	between := 50 * time.Millisecond
	d := &desk{t: t, server: loopback.New(t, loopback.Options{Shards: 4, Concurrency: 2, Between: between}), store: memory.Open(time.Now), counter: &counter{}}
	half := func(cfg *discord.Config) {
		cfg.PerPeer = 2
		cfg.Times.Between = 2 * between
	}
	first, second := *d, *d
	first.start(half)
	second.start(half)
	d.server.AwaitConnected(4)
	assert.Equal(t, 4, d.server.Counts().Identifies)
	for n := range 8 {
		c := d.server.NewChannel(d.server.NewGuild(), loopback.Text)
		id := d.server.Say(c, loopback.Said{Text: fmt.Sprint("guild ", n), Naming: true})
		d.server.AwaitAnswer(id)
		assert.Len(t, d.server.Answers(id), 1)
	}
	d.server.AwaitAnswer(d.server.Say(d.server.DirectWith(loopback.Person(0)), loopback.Said{Text: "direct"}))
}

// Case 20: a revoked token ends the surface with words for the operator.
func TestRevokedToken(t *testing.T) {
	d := open(t, loopback.Options{}, nil)
	require.NoError(t, d.surface.Health())
	d.server.Await("registration", func() bool { return strings.Contains(d.log.String(), "registered anew") })
	d.server.Revoke()
	d.server.Say(d.server.NewChannel(d.server.NewGuild(), loopback.Text), loopback.Said{Text: "anybody?", Naming: true})
	err := <-d.ended
	d.ended <- err
	require.ErrorIs(t, err, discord.ErrRevoked)
	require.ErrorIs(t, d.surface.Health(), discord.ErrRevoked)
	assert.NotContains(t, err.Error(), loopback.Token)
	assert.Equal(t, 1, d.server.Counts().Statuses[401])
}

// Cases 24 to 28, 30, 31 and 37 are about understanding. The surface's part is
// that the words arrive as they were written.
func TestWordsArriveAsWritten(t *testing.T) {
	d := open(t, loopback.Options{}, nil)
	c := d.server.NewChannel(d.server.NewGuild(), loopback.Text)
	for name, text := range map[string]string{
		"case 24: curly quotes":           "strip of 2½” by 40″ and ‘so’",
		"case 25: fractions":              "1⁄2 and 1½ and 2 1/2 and ⅝ yd",
		"case 26: stars":                  "5 * 6 ** 2 × 3 ✕ 4",
		"case 28: zero width and the way": "bind\u200bing \u202efor\u202c 54\u00a0x\u00a068",
		"case 30: lines":                  "binding 54 x 68\nbacking 54 x 68\r\nbatting",
		"case 31: commas":                 "1,5 m and 1,000 in",
		"case 37: a long message":         strings.Repeat("((((a+)+)+)+)", 150),
	} {
		t.Run(name, func(t *testing.T) {
			d.ask(c, text)
			assert.Contains(t, d.counter.Asked(), text)
		})
	}
}

// Cases 1, 2 and 27, trap 19: what people write comes back as they wrote it, and neither
// pings nor formats. That nothing may ping is also held against every body by
// the double.
func TestWhatPeopleWriteIsShownAsItIs(t *testing.T) {
	d := open(t, loopback.Options{}, nil)
	c := d.server.NewChannel(d.server.NewGuild(), loopback.Text)
	for written, shown := range map[string]string{
		"@everyone and `@here`":       "Reckoned: @everyone and \\`@here\\`",
		"<@everyone> @\u200beveryone": "Reckoned: \\<@everyone> @\u200beveryone",
		"@\u0001everyone":             "Reckoned: @\u0001everyone",
		"<@123> <#4> <:e:5> <t:6:R>":  "Reckoned: \\<@123> \\<#4> \\<:e:5> \\<t:6:R>",
		"**b** _i_ ~~s~~ ||x||":       "Reckoned: \\*\\*b\\*\\* \\_i\\_ \\~\\~s\\~\\~ \\|\\|x\\|\\|",
		"a\n# b\n> c\n- d":            "Reckoned: a\n\\# b\n\\> c\n\\- d",
		"[here](https://x.y/a_b*c)":   "Reckoned: \\[here](https://x.y/a_b\\*c)",
		"https://x.y/a_b_c ok_":       "Reckoned: https://x.y/a_b_c ok\\_",
		`back\slash`:                  `Reckoned: back\\slash`,
	} {
		assert.Equal(t, shown, d.ask(c, written).Content)
	}
}

// Case 34: help is for the person who asks for it.
func TestHelpByCommandIsPrivate(t *testing.T) {
	d := open(t, loopback.Options{}, nil)
	d.counter.Reply(func(string) commands.Reply {
		return commands.Reply{Outcome: commands.Answer, Topic: "help", Text: "Much to read."}
	})
	c := d.server.NewChannel(d.server.NewGuild(), loopback.Text)
	assert.True(t, d.server.AwaitAnswer(d.server.Use(c, question(""))).Private)
}

func TestPicturesGoWithTheAnswer(t *testing.T) {
	draw := func(s scene.Scene) ([]byte, error) {
		if s.Name == "bad" {
			return nil, errors.New("no ink")
		}
		return []byte("PNG of " + s.Name), nil
	}
	d := open(t, loopback.Options{}, func(cfg *discord.Config) { cfg.Draw = draw })
	d.counter.Reply(func(string) commands.Reply {
		source := func(name string) scene.Source {
			return func() scene.Scene { return scene.Scene{Name: name, Alt: "A ring of 16 blades"} }
		}
		return commands.Reply{Outcome: commands.Answer, Topic: "wedge-ring", Text: "13 in across", Scenes: []scene.Source{source("bad"), source("Ring 16")}}
	})
	a := d.ask(d.server.NewChannel(d.server.NewGuild(), loopback.Text), "ring of 16 blades")
	assert.Equal(t, []string{"ring-16.png"}, a.Files)
	assert.Equal(t, "A ring of 16 blades", a.Attachments[0].(map[string]any)["description"])
	assert.Equal(t, map[string]any{"url": "attachment://ring-16.png"}, a.Embeds[0].(map[string]any)["image"])
	assert.Contains(t, d.log.String(), "no ink")
}

func TestSheetComesWhenItIsAskedFor(t *testing.T) {
	d := open(t, loopback.Options{}, func(cfg *discord.Config) {
		cfg.Print = func(r commands.Reply) ([]commands.File, error) {
			return []commands.File{{Name: r.Templates[0]().Name + ".pdf", Type: "application/pdf", Data: []byte("%PDF")}}, nil
		}
	})
	d.counter.Reply(func(text string) commands.Reply {
		templates := func() scene.Templates { return scene.Templates{Name: "blade-template"} }
		return commands.Reply{Outcome: commands.Answer, Topic: "wedge-ring", Text: text, Templates: []scene.TemplateSource{templates}, ToPrint: text == "print it"}
	})
	c := d.server.NewChannel(d.server.NewGuild(), loopback.Text)
	a := d.ask(c, "ring of 16 blades, 6 in long")
	assert.Empty(t, a.Files)
	id := d.server.Use(c, loopback.Used{Press: button(t, a, "Sheet to print"), On: a.ID})
	assert.Equal(t, []string{"blade-template.pdf"}, d.server.AwaitAnswer(id).Files)
}

// Case 12: some people see no cards. What a card shows is an addition: the text
// is the same with and without it.
func TestTextIsWholeWithoutTheCard(t *testing.T) {
	d := open(t, loopback.Options{}, nil)
	d.counter.Reply(held)
	guild := d.server.NewGuild()
	with, without := d.server.NewChannel(guild, loopback.Text), d.server.NewChannel(guild, loopback.Text)
	d.server.Take(without.ID, loopback.Lack{Embed: true})
	full, bare := d.ask(with, "backing"), d.ask(without, "backing")
	assert.NotEmpty(t, full.Embeds)
	assert.Empty(t, bare.Embeds)
	assert.Equal(t, full.Content, bare.Content)
}

// Case 36: the surface adds no tables and no blocks of code, which wrap on phones.
func TestNoTables(t *testing.T) {
	d := open(t, loopback.Options{}, nil)
	d.counter.Reply(held)
	a := d.ask(d.server.NewChannel(d.server.NewGuild(), loopback.Text), "backing")
	assert.NotContains(t, a.Content, "```")
	assert.Len(t, a.Embeds[0].(map[string]any)["fields"], 3)
}

func TestMissingPartsAreRefused(t *testing.T) {
	for name, cfg := range map[string]discord.Config{
		"token":   {Handler: handlerFunc(nil), Store: memory.Open(time.Now)},
		"handler": {Token: "t", Store: memory.Open(time.Now)},
		"store":   {Token: "t", Handler: handlerFunc(nil)},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := discord.New(cfg)
			assert.Error(t, err)
		})
	}
}
