package main

import (
	"counterhand/bot/discord"
	"counterhand/bot/discord/link"
	"counterhand/bot/picture"
	"counterhand/commands"
)

// chatLacks says what the group chat needs and does not have.
func (h *house) chatLacks() string {
	if h.config.Chat.Token.IsEmpty() {
		return "it needs chat.token, chat.token_file or COUNTERHAND_CHAT_TOKEN"
	}
	return ""
}

// openChat makes the surface in the group chat. Where interactions arrive by
// HTTP, it is the HTTP surface that receives them.
func openChat(c *counter) (task, error) {
	chat := c.config.Chat
	s, err := discord.New(discord.Config{
		Token:   link.Token(chat.Token.Unwrap()),
		Handler: c.engine,
		Store:   c.store,
		Draw:    picture.PNG,
		Print: func(r commands.Reply) ([]commands.File, error) {
			return picture.Files(r, picture.Formats{Want: []picture.Format{picture.AsSheet, picture.AsTemplates}, Paper: c.paper()})
		},
		Listen:   chat.Listen,
		Zone:     c.config.Shop.TimeZone,
		Log:      c.log,
		Shards:   chat.Shards,
		PerPeer:  chat.ShardsHere,
		HTTPOnly: chat.PublicKey != "",
	})
	if err != nil {
		return nil, err
	}
	c.health.add("chat", s.Health)
	if chat.PublicKey != "" {
		endpoint, err := s.Endpoint(chat.PublicKey)
		if err != nil {
			return nil, err
		}
		c.routes.Handle("POST /interactions", endpoint)
	}
	return s.Run, nil
}
