package discord

import (
	"context"
	"crypto/rand"
	"errors"
	"hash/maphash"
	"runtime/debug"
	"strings"
	"sync"
	"time"

	"counterhand/bot"
	"counterhand/bot/discord/link"
	"counterhand/commands"
)

// surfaceName goes before the platform's ids in ours.
const surfaceName = "chat:"

// question is a message that was taken on, and what came of it.
type question struct {
	mu      sync.Mutex
	text    uint64         // hash of what was asked last: the text itself is not kept
	removed bool           // its author deleted it
	answer  link.MessageID // empty until answered
	in      link.ChannelID // where the answer stands
}

var textSeed = maphash.MakeSeed()

// Written takes a new message; part of link.Events.
func (s *Surface) Written(m link.Message) {
	if s.cfg.Listen && !s.rules.isKnown(m.Channel) {
		s.put("rules "+string(m.Channel), func() {
			if _, err := s.rules.get(s.base, m.Channel); err == nil {
				s.Written(m)
			}
		})
		return
	}
	text, addressed := s.addressed(m)
	if !addressed {
		return
	}
	q := &question{text: maphash.String(textSeed, text)}
	s.asked.Add(m.ID, q)
	s.takeOn(m, text, string(m.ID), q)
}

// Rewritten takes a changed message. Only one that was answered before and is
// still fresh is answered anew, and only if its words are others: a preview of
// a link counts as a change for the platform.
func (s *Surface) Rewritten(m link.Message) {
	q, known := s.asked.Get(m.ID)
	if !known || m.Edited.Sub(m.ID.Made()) > s.cfg.Window {
		return
	}
	text, addressed := s.addressed(m)
	if !addressed {
		return
	}
	q.mu.Lock()
	sum := maphash.String(textSeed, text)
	same := sum == q.text
	q.text = sum
	q.mu.Unlock()
	if !same {
		s.takeOn(m, text, string(m.ID)+"/"+m.Edited.UTC().Format(time.RFC3339Nano), q)
	}
}

// Removed takes the answers of deleted questions along.
func (s *Surface) Removed(_ link.ChannelID, ids []link.MessageID) {
	for _, id := range ids {
		q, known := s.asked.Get(id)
		if !known {
			continue
		}
		q.mu.Lock()
		q.removed = true
		answer, in := q.answer, q.in
		q.mu.Unlock()
		if answer == "" {
			continue
		}
		s.put("removal "+string(in), func() {
			if err := s.client.Remove(s.base, in, answer); err != nil {
				s.log.Warn("answer of a deleted question cannot be deleted", "channel", in, "error", err)
			}
		})
	}
}

func (q *question) isRemoved() bool {
	q.mu.Lock()
	defer q.mu.Unlock()
	return q.removed
}

// addressed decides whether a message is for us, and gives what it asks. A
// mention without more is a request for help.
func (s *Surface) addressed(m link.Message) (text string, addressed bool) {
	text, named := s.withoutName(m.Text)
	switch {
	case m.Guild == "", m.Reply, m.Named && named:
	case s.cfg.Listen:
		sign := s.rules.known(m.Channel).Sign
		if sign == "" || len(text) < len(sign) || !strings.EqualFold(text[:len(sign)], sign) { // phones begin with a capital
			return "", false
		}
		text = strings.TrimSpace(text[len(sign):])
	default:
		return "", false
	}
	if text == "" {
		text = "help"
	}
	return text, true
}

// withoutName takes the account's name off a text, in both forms of a mention.
func (s *Surface) withoutName(text string) (rest string, named bool) {
	self := string(s.gateway.Self())
	if self == "" {
		return strings.TrimSpace(text), false
	}
	for _, form := range []string{"<@" + self + ">", "<@!" + self + ">"} {
		if strings.Contains(text, form) {
			named = true
			text = strings.ReplaceAll(text, form, " ")
		}
	}
	return strings.TrimSpace(text), named
}

// takeOn puts a question into its conversation's lane, or says once that there
// are too many.
func (s *Surface) takeOn(m link.Message, text, id string, q *question) {
	msg := bot.Message{
		ID:      bot.MessageID(surfaceName + id),
		Person:  bot.PersonID(surfaceName + string(m.Author)),
		Channel: bot.ChannelID(surfaceName + string(m.Channel)),
		Text:    text,
	}
	verdict := s.quota.take(string(m.Author), string(m.Channel))
	if verdict == fine {
		if s.lanes.Put(string(msg.Conversation()), func() { s.answer(m, msg, q) }) == nil {
			return
		}
		verdict = s.quota.refused(string(m.Author))
	}
	if verdict == overOnce {
		s.put("notice", func() { s.deliver(m, q, link.Post{Text: tooMany}) })
	}
}

const tooMany = "That is more than I can reckon at once. Give me a minute, then ask again."

// put adds work that nobody waits for. What does not fit is left out.
func (s *Surface) put(lane string, work func()) {
	if err := s.lanes.Put(lane, work); err != nil {
		s.log.Warn("too much to do", "left out", strings.Fields(lane)[0])
	}
}

// answer answers one question. Its place in the queue is the conversation's.
func (s *Surface) answer(m link.Message, msg bot.Message, q *question) {
	if q.isRemoved() {
		return
	}
	working := time.AfterFunc(s.cfg.Patience, func() {
		_ = s.client.Working(s.base, m.Channel) // only a courtesy
	})
	reply, err := s.handle(s.base, msg)
	working.Stop()
	if err != nil {
		if !errors.Is(err, bot.ErrRepeat) {
			s.log.Warn("a question was given up", "error", err)
		}
		return
	}
	s.deliver(m, q, s.compose(reply, m.Author))
}

// handle asks the handler. A fault of the handler is told with an id that the
// log has too, and with nothing else.
func (s *Surface) handle(ctx context.Context, msg bot.Message) (reply commands.Reply, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			id := strings.ToLower(rand.Text()[:6])
			s.log.Error("answering failed", "id", id, "fault", fault, "stack", string(debug.Stack()))
			reply, err = commands.Reply{Outcome: commands.Decline, Text: "Something went wrong here (" + id + "), and it is not your doing. Ask it in other words."}, nil
		}
	}()
	return s.cfg.Handler.Handle(ctx, msg)
}

// deliver puts the post where the question's answer belongs: in place of the
// answer so far, in the channel, or, in quiet hours, to the person alone.
func (s *Surface) deliver(m link.Message, q *question, p link.Post) {
	q.mu.Lock()
	defer q.mu.Unlock()
	if q.removed {
		return
	}
	if q.answer != "" {
		s.exchange(q, p)
		return
	}
	to := m.Channel
	p.Answers = m.ID
	if m.Guild != "" && s.quiet(s.base, m.Channel) {
		private, err := s.client.Private(s.base, m.Author)
		if err != nil {
			s.report(m.Guild, m.Channel, err)
			return
		}
		to, p.Answers = private, ""
		p.Text = shorten("It is quiet hours in <#"+string(m.Channel)+">, so here:\n"+p.Text, link.MaxText)
	}
	id, err := s.send(to, p, string(m.ID))
	if err != nil {
		s.report(m.Guild, to, err)
		return
	}
	q.answer, q.in = id, to
}

// exchange puts a new answer in the place of the old one. The question's lock is held.
func (s *Surface) exchange(q *question, p link.Post) {
	err := s.withFallbacks(q.in, p, func(p link.Post) error { return s.client.Edit(s.base, q.in, q.answer, p) })
	if err != nil {
		s.log.Warn("answer cannot be changed", "channel", q.in, "error", err)
	}
}

// send posts, with less and less where the channel allows no more.
func (s *Surface) send(to link.ChannelID, p link.Post, key string) (id link.MessageID, err error) {
	err = s.withFallbacks(to, p, func(p link.Post) error {
		id, err = s.client.Send(s.base, to, p, key)
		return err
	})
	return id, err
}
