package discord

import (
	"context"
	"errors"
	"slices"
	"strings"
	"sync"
	"time"

	"counterhand/bot"
	"counterhand/bot/discord/link"
)

// askCommand is the command that takes any question.
const askCommand = "ask"

// Used takes a command, a press, or a command being typed; part of link.Events.
func (s *Surface) Used(i link.Interaction) {
	if i.Use == link.Typing {
		s.put("typing "+string(i.Person), func() { s.suggest(i) })
		return
	}
	r := &reception{surface: s, i: i}
	r.timer = time.AfterFunc(s.cfg.Patience, r.announce)
	if s.quota.take(string(i.Person), string(i.Channel)) != fine {
		s.put("notice", func() { r.give(link.Post{Text: tooMany, Private: true}) })
		return
	}
	if s.lanes.Put(string(conversationOf(i)), func() { s.use(r) }) != nil {
		s.put("notice", func() { r.give(link.Post{Text: tooMany, Private: true}) })
	}
}

func conversationOf(i link.Interaction) bot.ConversationID { return messageOf(i, "").Conversation() }

func messageOf(i link.Interaction, text string) bot.Message {
	return bot.Message{
		ID:      bot.MessageID(surfaceName + string(i.ID)),
		Person:  bot.PersonID(surfaceName + string(i.Person)),
		Channel: bot.ChannelID(surfaceName + string(i.Channel)),
		Text:    text,
	}
}

// use answers a command or a press.
func (s *Surface) use(r *reception) {
	switch {
	case r.i.Use == link.Press:
		s.press(r)
	case r.i.Use == link.Command && r.i.Command == keeperCommand:
		text, private := s.keep(s.base, r.i)
		r.give(link.Post{Text: text, Private: private})
	case r.i.Use == link.Command:
		text, ok := s.request(r.i)
		if !ok {
			r.give(link.Post{Text: "I do not know that command any more. Ask me with /" + askCommand + ".", Private: true})
			return
		}
		s.reply(r, text, func(time.Time) {})
	default:
		r.give(link.Post{Text: buttonStrange, Private: true})
	}
}

// request gives the words that a command stands for.
func (s *Surface) request(i link.Interaction) (text string, ok bool) {
	if i.Command == askCommand {
		text = strings.TrimSpace(i.Option("question"))
		if text == "" {
			text = "help"
		}
		return text, true
	}
	for _, f := range s.cfg.Families {
		if f.Name == i.Command {
			return f.Request(i.Sub, i.Option), true
		}
	}
	return "", false
}

func (s *Surface) press(r *reception) {
	conversation := conversationOf(r.i)
	c, excuse := s.pressed(s.base, r.i, conversation)
	if excuse != "" {
		r.give(link.Post{Text: excuse, Private: true})
		return
	}
	s.reply(r, c.words, func(at time.Time) { s.took(conversation, c, at) })
}

// reply asks the handler and gives its answer; handled is told when it is there.
func (s *Surface) reply(r *reception, text string, handled func(time.Time)) {
	reply, err := s.handle(s.base, messageOf(r.i, text))
	if errors.Is(err, bot.ErrRepeat) {
		r.leave() // another process answers
		return
	}
	if err != nil {
		s.log.Warn("a question was given up", "error", err)
		r.give(link.Post{Text: "I could not get to that. Ask it again, please.", Private: true})
		return
	}
	handled(s.cfg.Now())
	p := s.compose(reply, r.i.Person)
	p.Private = reply.Topic == "help" // long, and of no use to others
	r.give(p)
}

// reception sees to it that an interaction is answered once and in time: when
// the answer is not there after the surface's patience, it says that one will
// come.
type reception struct {
	surface *Surface
	i       link.Interaction
	timer   *time.Timer

	mu       sync.Mutex // held while the platform is told, so that one thing is told at a time
	deferred bool
	over     bool
}

// announce tells that the answer comes later. Whether others will see it is
// settled here, by the channel's quiet hours.
func (r *reception) announce() {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.over || r.surface.base.Err() != nil {
		return
	}
	ctx, cancel := context.WithTimeout(r.surface.base, 3*time.Second)
	defer cancel()
	err := r.surface.client.Defer(ctx, r.i, r.hushed(ctx))
	switch {
	case err == nil:
		r.deferred = true
	case link.Expired(err):
		r.over = true
		r.surface.log.Warn("an interaction ran out before it was announced", "error", err)
	default:
		r.surface.log.Warn("a later answer cannot be announced", "error", err)
	}
}

// hushed reports whether the answer is for the person alone.
func (r *reception) hushed(ctx context.Context) bool {
	return r.i.Guild != "" && r.surface.quiet(ctx, r.i.Channel)
}

func (r *reception) leave() {
	r.timer.Stop()
	r.mu.Lock()
	defer r.mu.Unlock()
	r.over = true
}

// give answers with what is allowed here; where the platform refuses that all
// the same, with the text alone.
func (r *reception) give(p link.Post) {
	r.timer.Stop()
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.over {
		return
	}
	r.over = true
	s := r.surface
	p.Private = p.Private || r.hushed(s.base)
	if !r.i.Ours.Has(link.EmbedLinks) {
		p = lack{card: true}.from(p)
	}
	if !r.i.Ours.Has(link.AttachFiles) {
		p = lack{files: true}.from(p)
	}
	err := r.tell(p)
	var refused *link.Refusal
	if errors.As(err, &refused) && !link.Expired(err) && (p.Card != nil || len(p.Files) > 0) {
		err = r.tell(lack{card: true, files: true}.from(p))
	}
	if err != nil && !errors.Is(err, link.ErrRevoked) && s.base.Err() == nil {
		s.log.Warn("an interaction cannot be answered", "error", err)
	}
}

func (r *reception) tell(p link.Post) error {
	if r.deferred {
		return r.surface.client.Finish(r.surface.base, r.i, p)
	}
	ctx, cancel := context.WithTimeout(r.surface.base, 3*time.Second) // afterwards nobody listens any more
	defer cancel()
	return r.surface.client.Answer(ctx, r.i, p)
}

// suggest offers values for the option that is being typed. What was typed is
// always among them: nothing forces people to pick.
func (s *Surface) suggest(i link.Interaction) {
	n := slices.IndexFunc(i.Options, func(o link.Option) bool { return o.Typed })
	if n < 0 {
		return
	}
	typed := i.Options[n]
	var values []string
	if i.Command == keeperCommand {
		values = commonZones
	}
	for _, f := range s.cfg.Families {
		if f.Name == i.Command {
			values = f.suggestions(i.Sub, typed.Name)
		}
	}
	ctx, cancel := context.WithTimeout(s.base, 3*time.Second)
	defer cancel()
	if err := s.client.Suggest(ctx, i, fitting(values, typed.Value)); err != nil && s.base.Err() == nil {
		s.log.Info("suggestions came too late", "error", err)
	}
}

// fitting gives the values that contain what was typed, after what was typed
// itself, which has to be something.
func fitting(values []string, typed string) []string {
	typed = strings.TrimSpace(typed)
	var list []string
	if typed != "" {
		list = append(list, typed)
	}
	for _, v := range values {
		if strings.Contains(strings.ToLower(v), strings.ToLower(typed)) && v != typed {
			list = append(list, v)
		}
	}
	if len(list) == 0 {
		list = []string{"as you like"}
	}
	return list
}
