package link

import (
	"context"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"github.com/bwmarrin/discordgo"
)

// Limits of slash commands.
const (
	maxChoices = 25
	maxChoice  = 100
)

// Kind is what an option takes.
type Kind int

// The kinds of option in use.
const (
	Words Kind = iota // any text, or one of the choices
	Count             // a whole number
)

// Definition declares a slash command.
type Definition struct {
	Name        string
	Description string
	Options     []OptionDefinition
	Subs        []Definition // subcommands, instead of options
	Needs       Permissions  // rights without which it is not shown; 0: for everybody
	GuildOnly   bool
}

// OptionDefinition declares an option of a slash command.
type OptionDefinition struct {
	Name        string
	Description string
	Kind        Kind
	Required    bool
	Choices     []string // the only answers
	Suggest     bool     // ask us for suggestions while it is typed
	Least       int      // least count
	Most        int      // greatest count, or longest text; 0: the platform's limit
}

// wireCommand holds what we declare of a command, in the platform's form. What
// the platform adds (ids, versions) has no field here, so that two of them are
// equal exactly when there is nothing to register.
type wireCommand struct {
	Type         discordgo.ApplicationCommandType `json:"type"`
	Name         string                           `json:"name"`
	Description  string                           `json:"description"`
	Options      []wireCommandOption              `json:"options"`
	Permissions  *string                          `json:"default_member_permissions"`
	Contexts     []int                            `json:"contexts"`
	Integrations []int                            `json:"integration_types"`
}

type wireCommandOption struct {
	Type        discordgo.ApplicationCommandOptionType `json:"type"`
	Name        string                                 `json:"name"`
	Description string                                 `json:"description"`
	Required    bool                                   `json:"required,omitempty"`
	Suggest     bool                                   `json:"autocomplete,omitempty"`
	Choices     []wireChoice                           `json:"choices,omitempty"`
	Options     []wireCommandOption                    `json:"options,omitempty"`
	MinValue    *int                                   `json:"min_value,omitempty"`
	MaxValue    *int                                   `json:"max_value,omitempty"`
	MaxLength   *int                                   `json:"max_length,omitempty"`
}

type wireChoice struct {
	Name  string `json:"name"`
	Value string `json:"value"`
}

func (d Definition) wire() wireCommand {
	w := wireCommand{
		Type:         discordgo.ChatApplicationCommand,
		Name:         d.Name,
		Description:  d.Description,
		Options:      []wireCommandOption{},
		Contexts:     []int{0, 1, 2}, // guilds, direct messages, private channels
		Integrations: []int{0, 1},    // added to a guild, or by a person for themselves
	}
	if d.GuildOnly {
		w.Contexts, w.Integrations = []int{0}, []int{0}
	}
	if d.Needs != 0 {
		needs := fmt.Sprint(int64(d.Needs))
		w.Permissions = &needs
	}
	for _, sub := range d.Subs {
		w.Options = append(w.Options, wireCommandOption{
			Type:        discordgo.ApplicationCommandOptionSubCommand,
			Name:        sub.Name,
			Description: sub.Description,
			Options:     wireOptions(sub.Options),
		})
	}
	w.Options = append(w.Options, wireOptions(d.Options)...)
	return w
}

func wireOptions(list []OptionDefinition) []wireCommandOption {
	var ws []wireCommandOption
	for _, o := range list {
		w := wireCommandOption{
			Type:        discordgo.ApplicationCommandOptionString,
			Name:        o.Name,
			Description: o.Description,
			Required:    o.Required,
			Suggest:     o.Suggest,
		}
		for _, c := range o.Choices {
			w.Choices = append(w.Choices, wireChoice{c, c})
		}
		most := o.Most
		switch {
		case o.Kind == Count:
			least := o.Least
			w.Type, w.MinValue = discordgo.ApplicationCommandOptionInteger, &least
			if most > 0 {
				w.MaxValue = &most
			}
		case most > 0:
			w.MaxLength = &most
		}
		ws = append(ws, w)
	}
	return ws
}

// Register makes the application's commands those declared: in one guild, or
// everywhere where guild is empty. It writes only when something differs, and
// reports whether it did. With a guild given, commands for everywhere are taken
// away, as people there would see each twice.
func (c *Client) Register(ctx context.Context, guild GuildID, list []Definition) (changed bool, err error) {
	application, err := c.application(ctx)
	if err != nil {
		return false, err
	}
	everywhere := call{route: "/applications/{}/commands", args: []string{application}}
	if guild == "" {
		return c.replace(ctx, everywhere, list)
	}
	here := call{route: "/applications/{}/guilds/{}/commands", args: []string{application, string(guild)}, major: string(guild)}
	changed, err = c.replace(ctx, here, list)
	if err != nil {
		return changed, err
	}
	emptied, err := c.replace(ctx, everywhere, nil)
	return changed || emptied, err
}

func (c *Client) replace(ctx context.Context, where call, list []Definition) (changed bool, err error) {
	want := []wireCommand{}
	for _, d := range list {
		want = append(want, d.wire())
	}
	var have []wireCommand
	get, put := where, where
	get.method, put.method = "GET", "PUT"
	if err := c.do(ctx, get, &have); err != nil {
		return false, err
	}
	if same(want, have) {
		return false, nil
	}
	return true, c.post(ctx, put, want, nil, nil)
}

func same(a, b []wireCommand) bool {
	return reflect.DeepEqual(ordered(a), ordered(b))
}

// ordered gives the commands in one order and without the difference between
// empty and absent lists. The order of options is theirs to keep: people see it.
func ordered(list []wireCommand) []wireCommand {
	list = slices.Clone(list)
	for n := range list {
		w := &list[n]
		if w.Type == 0 {
			w.Type = discordgo.ChatApplicationCommand
		}
		if len(w.Options) == 0 {
			w.Options = nil
		}
		w.Contexts, w.Integrations = slices.Sorted(slices.Values(w.Contexts)), slices.Sorted(slices.Values(w.Integrations))
	}
	slices.SortFunc(list, func(a, b wireCommand) int { return strings.Compare(a.Name, b.Name) })
	return list
}

func (c *Client) application(ctx context.Context) (string, error) {
	var a struct{ ID string }
	if err := c.do(ctx, call{method: "GET", route: "/applications/@me"}, &a); err != nil {
		return "", err
	}
	return a.ID, nil
}
