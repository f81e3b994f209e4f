package link

import (
	"bytes"
	"encoding/json"
	"strconv"
	"strings"
	"time"

	"github.com/bwmarrin/discordgo"
)

// Use says how somebody used one of our commands or buttons.
type Use int

// The ways of use.
const (
	Command  Use = iota + 1 // a slash command was sent
	Typing                  // a slash command is being typed and wants suggestions
	Press                   // a button was pressed
	Unwanted                // something that we never offer, such as a form
)

// Permissions is the platform's set of rights.
type Permissions int64

// The rights that matter here.
const (
	ManageGuild    Permissions = discordgo.PermissionManageGuild
	ManageChannels Permissions = discordgo.PermissionManageChannels
	AttachFiles    Permissions = discordgo.PermissionAttachFiles
	EmbedLinks     Permissions = discordgo.PermissionEmbedLinks
	Administrator  Permissions = discordgo.PermissionAdministrator
)

// Has reports whether all of want are there; an administrator has everything.
func (p Permissions) Has(want Permissions) bool {
	return p&Administrator != 0 || p&want == want
}

// Option is one option of a command as the person gave it.
type Option struct {
	Name  string
	Value string // numbers and switches in their JSON form
	Typed bool   // this is the one being typed just now
}

// Interaction is one use of a command or a button.
type Interaction struct {
	ID      InteractionID
	Use     Use
	Channel ChannelID
	Guild   GuildID
	Person  UserID
	Rights  Permissions // of the person, here
	Ours    Permissions // of the application, here
	Command string      // name, for Command and Typing
	Sub     string      // name of the subcommand, if it has any
	Options []Option
	Pressed string    // what the button carries
	On      MessageID // the message that the button is on

	application string
	token       string
}

// Option gives the value of the named option, or an empty text.
func (i Interaction) Option(name string) string {
	for _, o := range i.Options {
		if o.Name == name {
			return o.Value
		}
	}
	return ""
}

// Asked is when the person acted.
func (i Interaction) Asked() time.Time { return madeAt(string(i.ID)) }

type wireOption struct {
	Name    string          `json:"name"`
	Type    int             `json:"type"`
	Value   json.RawMessage `json:"value"`
	Focused bool            `json:"focused"`
	Options []wireOption    `json:"options"`
}

type wireInteraction struct {
	ID          string                    `json:"id"`
	Application string                    `json:"application_id"`
	Type        discordgo.InteractionType `json:"type"`
	Token       string                    `json:"token"`
	Guild       string                    `json:"guild_id"`
	Channel     string                    `json:"channel_id"`
	Ours        string                    `json:"app_permissions"`
	User        *wireUser                 `json:"user"`
	Member      *struct {
		User        *wireUser `json:"user"`
		Permissions string    `json:"permissions"`
	} `json:"member"`
	Message *struct {
		ID string `json:"id"`
	} `json:"message"`
	Data struct {
		Name     string       `json:"name"`
		CustomID string       `json:"custom_id"`
		Options  []wireOption `json:"options"`
	} `json:"data"`
}

// interaction turns an event's data, or the body of a signed request, into an
// interaction. In guilds the person stands under "member", elsewhere under "user".
func interaction(data json.RawMessage) (Interaction, bool) {
	var w wireInteraction
	if !decode(data, &w) || w.ID == "" || w.Token == "" {
		return Interaction{}, false
	}
	i := Interaction{
		ID:          InteractionID(w.ID),
		Use:         use(w.Type),
		Channel:     ChannelID(w.Channel),
		Guild:       GuildID(w.Guild),
		Ours:        permissions(w.Ours),
		Command:     w.Data.Name,
		Pressed:     w.Data.CustomID,
		application: w.Application,
		token:       w.Token,
	}
	who := w.User
	if w.Member != nil {
		who, i.Rights = w.Member.User, permissions(w.Member.Permissions)
	}
	if who == nil || who.ID == "" || who.Bot {
		return Interaction{}, false
	}
	i.Person = UserID(who.ID)
	if w.Message != nil {
		i.On = MessageID(w.Message.ID)
	}
	i.Sub, i.Options = options(w.Data.Options)
	return i, true
}

func use(t discordgo.InteractionType) Use {
	switch t {
	case discordgo.InteractionApplicationCommand:
		return Command
	case discordgo.InteractionApplicationCommandAutocomplete:
		return Typing
	case discordgo.InteractionMessageComponent:
		return Press
	}
	return Unwanted
}

func options(from []wireOption) (sub string, list []Option) {
	for _, o := range from {
		if discordgo.ApplicationCommandOptionType(o.Type) == discordgo.ApplicationCommandOptionSubCommand {
			_, list = options(o.Options)
			return o.Name, list
		}
		list = append(list, Option{Name: o.Name, Value: plain(o.Value), Typed: o.Focused})
	}
	return "", list
}

// plain reads a JSON text without its quotes, and anything else as written.
func plain(raw json.RawMessage) string {
	var s string
	if json.Unmarshal(raw, &s) == nil {
		return s
	}
	return strings.TrimSpace(string(bytes.TrimSpace(raw)))
}

func permissions(s string) Permissions {
	n, err := strconv.ParseInt(s, 10, 64)
	if err != nil {
		return 0
	}
	return Permissions(n)
}
