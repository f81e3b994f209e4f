package link

import (
	"encoding/json"
	"errors"
	"strconv"
	"time"

	"github.com/bwmarrin/discordgo"
)

// Ids of different things have different types. All are decimal numbers.
type (
	UserID        string
	ChannelID     string // a thread is a channel too
	GuildID       string // empty in direct messages
	MessageID     string
	InteractionID string
)

// Made is when the thing with this id was made, read from the id itself.
func (id MessageID) Made() time.Time { return madeAt(string(id)) }

// platformEpoch is where the platform's ids start counting milliseconds.
const platformEpoch = 1420070400000

func madeAt(id string) time.Time {
	n, err := strconv.ParseUint(id, 10, 64)
	if err != nil {
		return time.Time{}
	}
	return time.UnixMilli(int64(n>>22) + platformEpoch)
}

// Message is what a person wrote in a channel.
type Message struct {
	ID      MessageID
	Channel ChannelID
	Guild   GuildID
	Author  UserID
	Text    string    // empty where the platform withholds it
	Named   bool      // the account is mentioned by name
	Reply   bool      // it replies to a message of the account
	Edited  time.Time // zero unless its author changed it
}

// Events is what becomes of what happens in the chat. Every method returns at
// once: the connection is not read meanwhile.
type Events interface {
	Written(Message)
	Rewritten(Message)
	Removed(ChannelID, []MessageID)
	Used(Interaction)
}

// wireUser, wireMessage and the other wire types name only the fields that are
// read. The library's own message type fails as a whole on a component it does
// not know; a field that is absent here cannot fail.
type wireUser struct {
	ID  string `json:"id"`
	Bot bool   `json:"bot"`
}

type wireMessage struct {
	ID        string                `json:"id"`
	Channel   string                `json:"channel_id"`
	Guild     string                `json:"guild_id"`
	Author    *wireUser             `json:"author"`
	Webhook   string                `json:"webhook_id"`
	Type      discordgo.MessageType `json:"type"`
	Content   string                `json:"content"`
	Edited    *time.Time            `json:"edited_timestamp"`
	Mentions  []wireUser            `json:"mentions"`
	Reference *struct {
		Type discordgo.MessageReferenceType `json:"type"`
	} `json:"message_reference"`
	Referenced *struct {
		Author *wireUser `json:"author"`
	} `json:"referenced_message"`
}

// message turns an event's data into a message, or reports that it is not one
// that a person wrote.
func message(data json.RawMessage, self UserID) (Message, bool) {
	var w wireMessage
	if !decode(data, &w) || w.ID == "" || w.Channel == "" || !w.byPerson(self) {
		return Message{}, false
	}
	m := Message{
		ID:      MessageID(w.ID),
		Channel: ChannelID(w.Channel),
		Guild:   GuildID(w.Guild),
		Author:  UserID(w.Author.ID),
		Text:    w.Content,
	}
	if w.Edited != nil {
		m.Edited = *w.Edited
	}
	for _, u := range w.Mentions {
		m.Named = m.Named || UserID(u.ID) == self
	}
	if w.Type == discordgo.MessageTypeReply && w.Referenced != nil && w.Referenced.Author != nil {
		m.Reply = UserID(w.Referenced.Author.ID) == self
	}
	return m, true
}

// byPerson reports whether a person wrote the message in the ordinary way:
// notices (a pin, a new thread) and forwards come as messages as well.
func (w *wireMessage) byPerson(self UserID) bool {
	if w.Author == nil || w.Author.ID == "" || w.Author.Bot || w.Webhook != "" || UserID(w.Author.ID) == self {
		return false
	}
	if w.Reference != nil && w.Reference.Type == discordgo.MessageReferenceTypeForward {
		return false
	}
	return w.Type == discordgo.MessageTypeDefault || w.Type == discordgo.MessageTypeReply
}

// removed reads which messages a deletion took away.
func removed(data json.RawMessage) (ChannelID, []MessageID) {
	var w struct {
		ID      string      `json:"id"`
		IDs     []MessageID `json:"ids"`
		Channel ChannelID   `json:"channel_id"`
	}
	if !decode(data, &w) {
		return "", nil
	}
	if w.ID != "" {
		w.IDs = append(w.IDs, MessageID(w.ID))
	}
	return w.Channel, w.IDs
}

// decode reads JSON and lives with single fields of an unexpected type: those
// stay empty, and what must not be empty is asked for by the caller.
func decode(data json.RawMessage, into any) bool {
	err := json.Unmarshal(data, into)
	var wrong *json.UnmarshalTypeError
	return err == nil || errors.As(err, &wrong)
}
