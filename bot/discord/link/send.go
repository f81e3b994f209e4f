package link

import (
	"context"

	"github.com/bwmarrin/discordgo"
)

// Send posts into a channel. Sends with equal keys, within minutes, post once.
func (c *Client) Send(ctx context.Context, to ChannelID, p Post, key string) (MessageID, error) {
	b, files, err := p.body()
	if err != nil {
		return "", err
	}
	b.Nonce, b.Once, b.Flags = nonce(key), true, 0
	if p.Answers != "" {
		missing := false
		b.Reference = &discordgo.MessageReference{MessageID: string(p.Answers), FailIfNotExists: &missing}
	}
	var made struct{ ID MessageID }
	err = c.post(ctx, call{method: "POST", route: "/channels/{}/messages", args: []string{string(to)}, major: string(to)}, b, files, &made)
	return made.ID, err
}

// Edit replaces what was posted, its files and buttons included.
func (c *Client) Edit(ctx context.Context, in ChannelID, id MessageID, p Post) error {
	b, files, err := p.body()
	if err != nil {
		return err
	}
	b.Flags = 0
	return c.post(ctx, call{method: "PATCH", route: "/channels/{}/messages/{}", args: []string{string(in), string(id)}, major: string(in)}, b, files, nil)
}

// Remove takes back what was posted. What is gone already is no error.
func (c *Client) Remove(ctx context.Context, in ChannelID, id MessageID) error {
	err := c.do(ctx, call{method: "DELETE", route: "/channels/{}/messages/{}", args: []string{string(in), string(id)}, major: string(in)}, nil)
	if Gone(err) {
		return nil
	}
	return err
}

// Working shows in the channel that an answer is being written.
func (c *Client) Working(ctx context.Context, in ChannelID) error {
	return c.do(ctx, call{method: "POST", route: "/channels/{}/typing", args: []string{string(in)}, major: string(in)}, nil)
}

// Private gives the channel for direct messages with a person.
func (c *Client) Private(ctx context.Context, with UserID) (ChannelID, error) {
	var made struct{ ID ChannelID }
	err := c.post(ctx, call{method: "POST", route: "/users/@me/channels"}, struct {
		Recipient UserID `json:"recipient_id"`
	}{with}, nil, &made)
	return made.ID, err
}

// Owner gives the person to whom a guild belongs.
func (c *Client) Owner(ctx context.Context, of GuildID) (UserID, error) {
	var g struct {
		Owner UserID `json:"owner_id"`
	}
	err := c.do(ctx, call{method: "GET", route: "/guilds/{}", args: []string{string(of)}, major: string(of)}, &g)
	return g.Owner, err
}

// Entry is where and how to connect to the gateway.
type Entry struct {
	URL    string `json:"url"`
	Shards int    `json:"shards"` // as many as the platform recommends
	Starts struct {
		Remaining   int `json:"remaining"`
		ResetAfter  int `json:"reset_after"` // ms
		Concurrency int `json:"max_concurrency"`
	} `json:"session_start_limit"`
}

// Entry asks where to connect to.
func (c *Client) Entry(ctx context.Context) (Entry, error) {
	var e Entry
	err := c.do(ctx, call{method: "GET", route: "/gateway/bot"}, &e)
	return e, err
}
