package discord_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"counterhand/bot/discord/loopback"
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
