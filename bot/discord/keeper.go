package discord

import (
	"context"
	"fmt"
	"strings"
	"time"

	"counterhand/bot/discord/link"
)

// The command with which a channel's keepers set its rules.
const keeperCommand = "channel-rules"

// keeperRight is what the platform calls a channel's keeper by.
const keeperRight = link.ManageChannels

var commonZones = []string{
	"Europe/London", "Europe/Paris", "Europe/Berlin", "America/New_York", "America/Chicago", "America/Denver",
	"America/Los_Angeles", "America/Toronto", "Australia/Sydney", "Pacific/Auckland", "Africa/Johannesburg", "UTC",
}

func keeperDefinition() link.Definition {
	return link.Definition{
		Name:        keeperCommand,
		Description: "Set how questions are taken in this channel",
		Needs:       keeperRight,
		GuildOnly:   true,
		Subs: []link.Definition{
			{Name: "show", Description: "Show what is set for this channel"},
			{Name: "join", Description: "Ask the assistant to join this channel; it says hello once"},
			{Name: "sign", Description: "Set the sign in front of questions that do not name the assistant", Options: []link.OptionDefinition{
				{Name: "sign", Description: "Up to 10 characters, such as ?? ; leave out to take none", Most: maxSign},
			}},
			{Name: "quiet", Description: "Set hours in which answers go to the person alone", Options: []link.OptionDefinition{
				{Name: "from", Description: "Time of day, such as 22:00; leave out to have no quiet hours", Most: 10},
				{Name: "to", Description: "Time of day, such as 7:30", Most: 10},
				{Name: "zone", Description: "Time zone by name, such as Europe/London", Suggest: true, Most: 60},
			}},
		},
	}
}

// keep does what a keeper asks for and gives the words to answer with. The
// platform shows the command to keepers only; that is checked again, as its
// guilds can show it to others.
func (s *Surface) keep(ctx context.Context, i link.Interaction) (text string, private bool) {
	if i.Guild == "" {
		return "There are no rules to set in direct messages: ask me anything.", true
	}
	if !i.Rights.Has(keeperRight) && !i.Rights.Has(link.ManageGuild) {
		return "Only people who may manage this channel can set its rules.", true
	}
	var err error
	switch i.Sub {
	case "join":
		text, private, err = s.join(ctx, i)
	case "sign":
		text, err = s.setSign(ctx, i)
		private = true
	case "quiet":
		text, err = s.setQuiet(ctx, i)
		private = true
	default:
		text, err = s.show(ctx, i)
		private = true
	}
	if err != nil {
		s.log.Warn("rules of a channel cannot be read or set", "channel", i.Channel, "error", err)
		return "I cannot read or change this channel's rules just now. Try again in a minute.", true
	}
	return text, private
}

func (s *Surface) show(ctx context.Context, i link.Interaction) (string, error) {
	r, err := s.rules.get(ctx, i.Channel)
	if err != nil {
		return "", err
	}
	lines := []string{"Ask by naming me, by replying to me, or with /" + askCommand + "."}
	switch {
	case r.Sign != "" && s.cfg.Listen:
		lines = append(lines, "Sign in front of questions: "+escape(r.Sign))
	case r.Sign != "":
		lines = append(lines, "The sign "+escape(r.Sign)+" is set, but I am not allowed to read messages that do not name me.")
	default:
		lines = append(lines, "No sign is set.")
	}
	if r.Quiet.From != r.Quiet.To {
		lines = append(lines, "Quiet hours: "+r.Quiet.String())
	} else {
		lines = append(lines, "No quiet hours.")
	}
	return strings.Join(lines, "\n"), nil
}

const greeting = "Hello. I reckon for quilts: binding, backing, borders, blocks, rings of blades, and how much cloth to buy. " +
	"Name me in front of your question, reply to one of my answers, or use /" + askCommand + ". For example: binding for 54 x 68."

func (s *Surface) join(ctx context.Context, i link.Interaction) (text string, private bool, err error) {
	first := false
	err = s.rules.change(ctx, i.Channel, func(r *rules) {
		first = !r.Greeted
		r.Greeted = true
		r.OwnerTold = false
	})
	if !first {
		return "I am here already, and have said hello.", true, err
	}
	return greeting, false, err
}

func (s *Surface) setSign(ctx context.Context, i link.Interaction) (string, error) {
	sign := strings.TrimSpace(i.Option("sign"))
	if err := checkSign(sign); sign != "" && err != nil {
		return capital(err.Error()) + ".", nil
	}
	err := s.rules.change(ctx, i.Channel, func(r *rules) { r.Sign = sign })
	switch {
	case sign == "":
		return "I take no sign here any more.", err
	case !s.cfg.Listen:
		return "Noted, but I am not allowed to read messages that do not name me. Whoever runs me has to switch listening on first.", err
	}
	return "From now on I also answer what begins with " + escape(sign) + " here.", err
}

func (s *Surface) setQuiet(ctx context.Context, i link.Interaction) (string, error) {
	from, to, zone := i.Option("from"), i.Option("to"), i.Option("zone")
	if from == "" && to == "" {
		return "There are no quiet hours here any more.", s.rules.change(ctx, i.Channel, func(r *rules) { r.Quiet = hours{} })
	}
	quiet, err := s.hours(from, to, zone)
	if err != nil {
		return capital(escape(err.Error())) + ".", nil
	}
	err = s.rules.change(ctx, i.Channel, func(r *rules) { r.Quiet = quiet })
	return "Quiet hours here are " + quiet.String() + ". In them I answer the person who asks alone.", err
}

func (s *Surface) hours(from, to, zone string) (h hours, err error) {
	if h.From, err = clock(from); err != nil {
		return h, err
	}
	if h.To, err = clock(to); err != nil {
		return h, err
	}
	if h.From == h.To {
		return h, fmt.Errorf("quiet hours from %s to %s would be none", from, to)
	}
	if zone == "" {
		zone = s.cfg.Zone.String()
	}
	if _, err := time.LoadLocation(zone); err != nil || strings.EqualFold(zone, "local") {
		return h, fmt.Errorf("there is no time zone %q; write it like Europe/London", zone)
	}
	h.Zone = zone
	return h, nil
}

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
