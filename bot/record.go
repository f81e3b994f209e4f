package bot

import (
	"encoding/json"
	"errors"
	"fmt"
	"time"
)

// Record is one record of any kind, as it is moved between stores. Exactly one
// field is set.
type Record struct {
	Settings     *SettingsRecord     `json:"settings,omitempty"`
	Conversation *ConversationRecord `json:"conversation,omitempty"`
	Seen         *SeenRecord         `json:"seen,omitempty"`
}

// SettingsRecord is an owner's settings.
type SettingsRecord struct {
	Scope    Scope           `json:"scope"`
	ID       string          `json:"id"`
	Changed  time.Time       `json:"changed"`
	Document json.RawMessage `json:"document"`
}

// ConversationRecord is an open conversation.
type ConversationRecord struct {
	ID     ConversationID  `json:"id"`
	Person PersonID        `json:"person"`
	At     time.Time       `json:"at"`
	State  json.RawMessage `json:"state"`
}

// SeenRecord is a message that was taken on.
type SeenRecord struct {
	ID       MessageID `json:"id"`
	Claimant string    `json:"claimant"`
	At       time.Time `json:"at"`
}

// check says what is wrong with a record that was read from outside.
func (r Record) check() error {
	kinds := 0
	var problem string
	if s := r.Settings; s != nil {
		kinds++
		switch s.Scope {
		case ScopePerson, ScopeChannel, ScopeShop:
		default:
			problem = fmt.Sprintf("settings of the unknown scope %q", s.Scope)
		}
		if !isObject(s.Document) {
			problem = "settings whose document is no JSON object"
		}
	}
	if c := r.Conversation; c != nil {
		kinds++
		if c.ID == "" {
			problem = "a conversation without an id"
		}
		if !isObject(c.State) {
			problem = "a conversation whose state is no JSON object"
		}
	}
	if s := r.Seen; s != nil {
		kinds++
		if s.ID == "" {
			problem = "a seen message without an id"
		}
	}
	if kinds != 1 {
		return fmt.Errorf("%d records of known kinds where there should be one", kinds)
	}
	if problem != "" {
		return errors.New(problem)
	}
	return nil
}

func isObject(document json.RawMessage) bool {
	var fields map[string]json.RawMessage
	return json.Unmarshal(document, &fields) == nil && fields != nil
}
