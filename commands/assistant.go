// Package commands turns words into calculations and results into words. It
// takes one message with what its conversation holds, and gives one reply
// value. No number of a message is ignored, and no default goes unsaid. It is
// pure: the same turn gets the same response, there is no clock, network or
// disk here; everything is safe for concurrent use.
package commands

import (
	"fmt"
	"strings"

	"counterhand/commands/words"
)

// Settings are what somebody has set, by name (see [SettingNames]), each value
// as a person would write it ("usable_width": "43 in", "units": "metric").
type Settings map[string]string

// Turn is one message in a conversation: what was said, what the conversation
// holds so far, and what applies to the person.
type Turn struct {
	Text   string
	State  State
	Own    Settings // what the person has set
	Shared Settings // what the channel and the shop have set, the channel's over the shop's
}

// Response is what a turn leads to.
type Response struct {
	Reply  Reply
	State  State    // what the conversation holds from now on
	Own    Settings // what the person has set from now on; the same map as in the turn where nothing changed
	Forget bool     // the person asked that everything kept of them be deleted
}

// Assistant answers turns. It is immutable and safe for concurrent use.
type Assistant struct {
	vocabulary *words.Vocabulary
	topics     []Topic
	defaults   Defaults
	heard      map[words.Concept][]heard // what each concept says for which topic
}

// heard is a topic that a concept speaks for.
type heard struct {
	topic  int
	weight int
	asked  bool // only where the concept is what is asked for
}

// NewAssistant makes an assistant with the shop's defaults. An error is a
// mistake in a topic's declaration.
func NewAssistant(defaults Defaults) (*Assistant, error) {
	a := &Assistant{topics: topics(), defaults: defaults, heard: map[words.Concept][]heard{}}
	terms := [][]words.Term{baseTerms, talkTerms, showTerms, safetyTerms}
	names := map[string]bool{}
	for i, t := range a.topics {
		if names[t.Name] {
			return nil, fmt.Errorf("two topics are called %s", t.Name)
		}
		names[t.Name] = true
		terms = append(terms, t.Terms)
		for _, s := range t.Says {
			a.heard[s.concept] = append(a.heard[s.concept], heard{i, s.weight, false})
		}
		for _, s := range t.Asks {
			a.heard[s.concept] = append(a.heard[s.concept], heard{i, s.weight, true})
		}
	}
	v, err := words.NewVocabulary(terms...)
	if err != nil {
		return nil, fmt.Errorf("vocabulary: %w", err)
	}
	a.vocabulary = v
	return a, nil
}

// Topics gives the declared topics, in the order of the help.
func (a *Assistant) Topics() []Topic { return a.topics }

// topicNamed gives the topic of the name, or nil.
func (a *Assistant) topicNamed(name string) *Topic {
	for i := range a.topics {
		if a.topics[i].Name == name {
			return &a.topics[i]
		}
	}
	return nil
}

// Respond answers one turn.
func (a *Assistant) Respond(t Turn) Response {
	if len(t.Text) > words.MaxText {
		return Response{Reply: decline("", tooLong), State: t.State, Own: t.Own}
	}
	if strings.Contains(t.Text, "://") || strings.Contains(t.Text, "www.") {
		return Response{Reply: bounded(decline("", noLinks)), State: t.State, Own: t.Own}
	}
	c := &conversation{
		assistant: a,
		defaults:  a.defaults.With(t.Shared).With(t.Own),
		text:      a.vocabulary.Read(t.Text),
		state:     t.State,
		own:       t.Own,
	}
	asksEnough(c.text.Tokens)
	prints := c.has(sheetWord)
	reply := c.respond()
	reply.ToPrint = reply.Printable() && (reply.ToPrint || prints)
	if !c.inFull {
		reply = bounded(reply)
	}
	return Response{Reply: reply, State: c.state, Own: c.own, Forget: c.forget}
}
