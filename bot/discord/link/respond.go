package link

import (
	"context"

	"github.com/bwmarrin/discordgo"
)

// Answer gives an interaction its first answer. A repeat that finds it answered
// counts as done.
func (c *Client) Answer(ctx context.Context, i Interaction, p Post) error {
	b, files, err := p.body()
	if err != nil {
		return err
	}
	return c.callback(ctx, i, discordgo.InteractionResponseChannelMessageWithSource, b, files)
}

// Defer tells the platform that the answer comes later, through [Client.Finish].
// Whether it will be private is settled here.
func (c *Client) Defer(ctx context.Context, i Interaction, private bool) error {
	var data struct {
		Flags discordgo.MessageFlags `json:"flags,omitempty"`
	}
	if private {
		data.Flags = discordgo.MessageFlagsEphemeral
	}
	return c.callback(ctx, i, discordgo.InteractionResponseDeferredChannelMessageWithSource, data, nil)
}

// Suggest offers what may be meant by what is being typed, at most 25.
func (c *Client) Suggest(ctx context.Context, i Interaction, values []string) error {
	type choice struct {
		Name  string `json:"name"`
		Value string `json:"value"`
	}
	data := struct {
		Choices []choice `json:"choices"`
	}{[]choice{}}
	for _, v := range values[:min(len(values), maxChoices)] {
		v = cut(v, maxChoice)
		data.Choices = append(data.Choices, choice{v, v})
	}
	return c.callback(ctx, i, discordgo.InteractionApplicationCommandAutocompleteResult, data, nil)
}

func (c *Client) callback(ctx context.Context, i Interaction, kind discordgo.InteractionResponseType, data any, files []File) error {
	q := call{method: "POST", route: "/interactions/{}/{}/callback", args: []string{string(i.ID), i.token}, major: string(i.ID), exempt: true}
	err := c.post(ctx, q, struct {
		Type discordgo.InteractionResponseType `json:"type"`
		Data any                               `json:"data"`
	}{kind, data}, files, nil)
	if alreadyAnswered(err) {
		c.opts.Log.Info("interaction was answered before", "interaction", i.ID)
		return nil
	}
	return err
}

// Finish puts the answer where [Client.Defer] left its place.
func (c *Client) Finish(ctx context.Context, i Interaction, p Post) error {
	b, files, err := p.body()
	if err != nil {
		return err
	}
	b.Flags = 0
	return c.post(ctx, call{method: "PATCH", route: "/webhooks/{}/{}/messages/@original", args: []string{i.application, i.token}, major: string(i.ID), exempt: true}, b, files, nil)
}
