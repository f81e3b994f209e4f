package discord

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	lru "github.com/hashicorp/golang-lru/v2"

	"counterhand/bot"
	"counterhand/bot/discord/link"
)

// rules are what a channel's keepers have set for it.
type rules struct {
	Sign      string `json:"sign,omitempty"` // in front of questions that do not name the account; empty: none
	Quiet     hours  `json:"quiet,omitzero"`
	Greeted   bool   `json:"greeted,omitempty"`
	OwnerTold bool   `json:"owner_told,omitempty"` // of missing rights
}

// hours are a part of each day by the clock on the wall, which on the days when
// clocks change is an hour longer or shorter than on others. From equal to To
// means none.
type hours struct {
	From int    `json:"from"` // minutes after midnight
	To   int    `json:"to"`   // likewise; before From where it is on the next day
	Zone string `json:"zone"` // by its name in the time zone database
}

func (h hours) include(t time.Time) bool {
	if h.From == h.To {
		return false
	}
	zone, err := time.LoadLocation(h.Zone)
	if err != nil {
		return false // the name was good when it was set: the database here lacks it
	}
	t = t.In(zone)
	minute := t.Hour()*60 + t.Minute()
	if h.From < h.To {
		return h.From <= minute && minute < h.To
	}
	return minute >= h.From || minute < h.To
}

func (h hours) String() string {
	return fmt.Sprintf("%02d:%02d to %02d:%02d (%s)", h.From/60, h.From%60, h.To/60, h.To%60, h.Zone)
}

// clock reads a time of day such as 22:30, 7 or 7.15.
func clock(s string) (minutes int, err error) {
	s = strings.TrimSpace(s)
	for _, layout := range []string{"15:04", "15.04", "15", "3:04pm", "3pm"} {
		if t, err := time.Parse(layout, strings.ToLower(strings.ReplaceAll(s, " ", ""))); err == nil {
			return t.Hour()*60 + t.Minute(), nil
		}
	}
	return 0, fmt.Errorf("%q is no time of day; write it like 22:30", s)
}

const maxSign = 10

// checkSign refuses what cannot be told from ordinary talk or from the
// platform's own signs.
func checkSign(sign string) error {
	if utf8.RuneCountInString(sign) > maxSign {
		return fmt.Errorf("a sign has at most %d characters", maxSign)
	}
	first, _ := utf8.DecodeRuneInString(sign)
	if strings.ContainsAny(string(first), "/@#<") || strings.ContainsFunc(sign, unicode.IsSpace) {
		return fmt.Errorf("a sign has no spaces and does not begin with /, @, # or <")
	}
	if unicode.IsLetter(first) && utf8.RuneCountInString(sign) < 2 {
		return fmt.Errorf("a single letter would catch ordinary talk")
	}
	return nil
}

// ruleAge is how long rules are believed before they are read again: another
// process may have changed them.
const ruleAge = time.Minute

// ruleBook reads and changes the rules of channels. They stand in the channel's
// settings under one field.
type ruleBook struct {
	store bot.SettingsStore
	now   func() time.Time
	cache *lru.Cache[link.ChannelID, readRules]
}

type readRules struct {
	rules
	at time.Time
}

const ruleField = "chat"

func newRuleBook(store bot.SettingsStore, remember int, now func() time.Time) (*ruleBook, error) {
	cache, err := lru.New[link.ChannelID, readRules](remember)
	if err != nil {
		return nil, err
	}
	return &ruleBook{store: store, now: now, cache: cache}, nil
}

func ruleOwner(channel link.ChannelID) bot.Owner {
	return bot.OwnerOfChannel(bot.ChannelID(surfaceName + string(channel)))
}

// isKnown reports whether the rules can be had without asking the store.
func (b *ruleBook) isKnown(channel link.ChannelID) bool {
	kept, ok := b.cache.Get(channel)
	return ok && b.now().Sub(kept.at) < ruleAge
}

// known gives the rules as they were last read.
func (b *ruleBook) known(channel link.ChannelID) rules {
	kept, _ := b.cache.Get(channel)
	return kept.rules
}

// get gives the rules, and those last read together with the error where the
// store is away.
func (b *ruleBook) get(ctx context.Context, channel link.ChannelID) (rules, error) {
	if b.isKnown(channel) {
		return b.known(channel), nil
	}
	ctx, cancel := context.WithTimeout(ctx, time.Second)
	defer cancel()
	r, err := readField[rules](ctx, b.store, ruleOwner(channel), ruleField)
	if err != nil {
		return b.known(channel), err
	}
	b.cache.Add(channel, readRules{r, b.now()})
	return r, nil
}

// change sets rules by a function, which may be called more than once.
func (b *ruleBook) change(ctx context.Context, channel link.ChannelID, change func(*rules)) error {
	var r rules
	err := b.store.ChangeSettings(ctx, ruleOwner(channel), b.now(), func(old json.RawMessage) (json.RawMessage, error) {
		r = rules{}
		if len(old) > 0 {
			var err error
			if r, err = fieldOf[rules](old, ruleField); err != nil {
				return nil, err
			}
		}
		change(&r)
		return withField(old, ruleField, r)
	})
	if err == nil {
		b.cache.Add(channel, readRules{r, b.now()})
	}
	return err
}

// quiet reports whether a channel has its quiet hours. Where that cannot be
// known, it is taken not to.
func (s *Surface) quiet(ctx context.Context, channel link.ChannelID) bool {
	r, err := s.rules.get(ctx, channel)
	if err != nil {
		s.log.Warn("rules of a channel cannot be read", "channel", channel, "error", err)
	}
	return r.Quiet.include(s.cfg.Now())
}
