package bot

import (
	"context"
	"encoding/json"
	"fmt"
	"time"

	"counterhand/commands"
)

// defaultsField is the field of a settings document that holds what its owner
// set in place of the usual figures. The others belong to the surfaces.
const defaultsField = "defaults"

// settingsInUse is how often the time of a person's settings is brought up to
// date while they are used, so that retention counts from their last use.
const settingsInUse = 24 * time.Hour

// applying are the settings that apply to one message.
type applying struct {
	own     commands.Settings
	shared  commands.Settings
	unsaved settingsChange // of own, not in the store yet
}

// settings returns what applies to the message, and whether the store could be
// read: where not, it is what applied when the conversation last went on.
func (e *Engine) settings(ctx context.Context, m Message) (applying, bool) {
	held, _ := e.held.Get(m.Conversation())
	person, channel, shop := OwnerOfPerson(m.Person), OwnerOfChannel(m.Channel), OwnerOfShop(m.Shop)
	var found map[Owner]Settings
	err := e.call(ctx, func(ctx context.Context) (err error) {
		found, err = e.cfg.Store.Settings(ctx, person, channel, shop)
		return err
	})
	if err != nil {
		return held.applying, false
	}
	a := applying{
		own:     e.defaultsOf(found[person]),
		shared:  over(e.defaultsOf(found[channel]), e.defaultsOf(found[shop])),
		unsaved: held.unsaved,
	}
	a.own = a.unsaved.applied(a.own)
	kept, ok := found[person]
	if len(a.unsaved) > 0 || ok && e.cfg.Now().Sub(kept.Changed) > settingsInUse {
		_ = e.save(ctx, m.Person, &a) // the next message or the next tidying tries again
	}
	return a, true
}

// save writes a person's unsaved change, which may be empty, and stamps the
// settings with the time.
func (e *Engine) save(ctx context.Context, person PersonID, a *applying) error {
	err := e.call(ctx, func(ctx context.Context) error {
		return e.cfg.Store.ChangeSettings(ctx, OwnerOfPerson(person), e.cfg.Now(), a.unsaved.write)
	})
	if err == nil {
		a.unsaved = nil
	}
	return err
}

// defaultsOf reads what the owner set. A document that makes no sense counts as
// nothing set: the sums must go on.
func (e *Engine) defaultsOf(kept Settings) commands.Settings {
	if kept.Document == nil {
		return nil
	}
	var document struct {
		Defaults commands.Settings `json:"defaults"`
	}
	if err := json.Unmarshal(kept.Document, &document); err != nil {
		e.cfg.Log.Warn("settings cannot be read and are passed over", "err", err)
		return nil
	}
	return document.Defaults
}

// over lays the stronger settings over the weaker ones.
func over(strong, weak commands.Settings) commands.Settings {
	switch {
	case len(strong) == 0:
		return weak
	case len(weak) == 0:
		return strong
	}
	both := make(commands.Settings, len(strong)+len(weak))
	for _, settings := range []commands.Settings{weak, strong} {
		for name, value := range settings {
			both[name] = value
		}
	}
	return both
}

// settingsChange is what a person changed: values that were set, and nil for
// settings that were dropped.
type settingsChange map[string]*string

// changeBetween finds what was changed between two states of one's settings.
func changeBetween(before, after commands.Settings) settingsChange {
	change := settingsChange{}
	for name, value := range after {
		if old, ok := before[name]; !ok || old != value {
			change[name] = &value
		}
	}
	for name := range before {
		if _, ok := after[name]; !ok {
			change[name] = nil
		}
	}
	return change
}

// then is the change followed by a later one.
func (c settingsChange) then(later settingsChange) settingsChange {
	if len(c) == 0 {
		return later
	}
	both := make(settingsChange, len(c)+len(later))
	for _, change := range []settingsChange{c, later} {
		for name, value := range change {
			both[name] = value
		}
	}
	return both
}

// applied gives the settings after the change; it leaves s as it is.
func (c settingsChange) applied(s commands.Settings) commands.Settings {
	if len(c) == 0 {
		return s
	}
	after := make(commands.Settings, len(s)+len(c))
	for name, value := range s {
		after[name] = value
	}
	for name, value := range c {
		if value == nil {
			delete(after, name)
		} else {
			after[name] = *value
		}
	}
	return after
}

// write applies the change to a settings document and leaves alone whatever
// else is in it.
func (c settingsChange) write(old json.RawMessage) (json.RawMessage, error) {
	document := map[string]json.RawMessage{}
	var defaults commands.Settings
	if old != nil {
		if err := json.Unmarshal(old, &document); err != nil {
			return nil, fmt.Errorf("settings document: %w", err)
		}
		if field, ok := document[defaultsField]; ok {
			if err := json.Unmarshal(field, &defaults); err != nil {
				return nil, fmt.Errorf("settings document: %s: %w", defaultsField, err)
			}
		}
	}
	defaults = c.applied(defaults)
	if len(defaults) == 0 {
		delete(document, defaultsField)
	} else {
		field, err := json.Marshal(defaults)
		if err != nil {
			return nil, err
		}
		document[defaultsField] = field
	}
	if len(document) == 0 {
		return nil, nil
	}
	return json.Marshal(document)
}
