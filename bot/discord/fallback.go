package discord

import (
	"errors"
	"time"

	"counterhand/bot/discord/link"
)

// lack is what the account was not allowed in a channel when it last tried.
// Rights are not known beforehand for ordinary messages: learning them from
// refusals spares the surface from keeping every guild's roles in memory.
type lack struct {
	card, files, reply bool
	since              time.Time
}

// lackAge is how long a refusal is remembered, so that a right given later is used.
const lackAge = 10 * time.Minute

func (l lack) from(p link.Post) link.Post {
	if l.card {
		p.Card = nil
	}
	if l.files {
		p.Files = nil
		if p.Card != nil {
			card := *p.Card
			card.Picture = ""
			p.Card = &card
		}
	}
	if l.reply {
		p.Answers = ""
	}
	return p
}

// withFallbacks tries a post with all that it has, and then without the reply's
// reference, the card and the files, in that order, as the platform refuses.
func (s *Surface) withFallbacks(in link.ChannelID, p link.Post, try func(link.Post) error) error {
	l, _ := s.lacks.Get(in)
	if s.cfg.Now().Sub(l.since) > lackAge {
		l = lack{}
	}
	for {
		reduced := l.from(p)
		err := try(reduced)
		switch {
		case link.NoHistory(err) && reduced.Answers != "":
			l.reply = true
		case link.Forbidden(err) && reduced.Card != nil:
			l.card = true
		case link.Forbidden(err) && len(reduced.Files) > 0:
			l.files = true
		default:
			return err
		}
		l.since = s.cfg.Now()
		s.lacks.Add(in, l)
	}
}

// report deals with an answer that could not be posted. What lies in the nature
// of the place passes quietly; a missing right is told the guild's owner, once.
func (s *Surface) report(guild link.GuildID, channel link.ChannelID, err error) {
	switch {
	case errors.Is(err, link.ErrRevoked), s.base.Err() != nil:
	case link.Shut(err), link.Unwelcome(err):
		s.log.Info("a place takes no answer just now", "channel", channel, "error", err)
	case link.Forbidden(err) && guild != "":
		s.log.Warn("a right is missing", "channel", channel, "error", err)
		s.tellOwner(guild, channel)
	default:
		s.log.Warn("an answer cannot be posted", "channel", channel, "error", err)
	}
}

// tellOwner says once for each channel that answering there is not allowed.
func (s *Surface) tellOwner(guild link.GuildID, channel link.ChannelID) {
	first := false
	err := s.rules.change(s.base, channel, func(r *rules) {
		first = !r.OwnerTold
		r.OwnerTold = true
	})
	if err != nil || !first {
		return // told before; or nobody knows, and saying it twice is worse than not saying it
	}
	owner, err := s.client.Owner(s.base, guild)
	if err == nil {
		var private link.ChannelID
		if private, err = s.client.Private(s.base, owner); err == nil {
			text := "Somebody asked me something in <#" + string(channel) + ">, and I may not answer there. I need the rights to see the channel and to send messages (in threads: to send messages in threads)."
			_, err = s.client.Send(s.base, private, link.Post{Text: text}, "rights "+string(channel))
		}
	}
	if err != nil {
		s.log.Warn("the guild's owner cannot be told of a missing right", "channel", channel, "error", err)
	}
}
