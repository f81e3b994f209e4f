// Package bot holds conversations: a message comes in from any surface, a reply
// goes out. Surfaces only translate between their platform and [Message] and
// commands.Reply; what is understood and said is decided in package commands.
package bot

import (
	"context"

	"counterhand/commands"
)

// Ids of different things have different types, so that one is never taken for
// another. Each is unique within its surface; the surface's name goes before it
// ("terminal:local", "chat:1234").
type (
	PersonID       string
	ChannelID      string
	ShopID         string
	MessageID      string
	ConversationID string // one person in one channel
)

// Message is what a person wrote, on whatever surface.
type Message struct {
	ID      MessageID // empty where a surface has none; then it is never taken for a repeat
	Person  PersonID
	Channel ChannelID
	Shop    ShopID // empty means the only shop
	Text    string
}

// Conversation is where the message belongs: what one person says in one channel.
func (m Message) Conversation() ConversationID {
	return ConversationID(string(m.Channel) + "/" + string(m.Person))
}

// Handler answers messages. Implementations are safe for concurrent use.
type Handler interface {
	// Handle answers one message. A repeat of a message that was answered
	// before gives ErrRepeat; any other fault is answered in the reply's text.
	Handle(ctx context.Context, m Message) (commands.Reply, error)
}
