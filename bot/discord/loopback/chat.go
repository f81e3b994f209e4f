package loopback

import (
	"encoding/json"
	"fmt"
	"strconv"
	"time"
)

// Kind is a kind of channel, by the platform's number.
type Kind int

// The kinds of channel in which somebody may ask.
const (
	Text         Kind = 0
	Direct       Kind = 1
	Voice        Kind = 2
	Announcement Kind = 5
	Thread       Kind = 11
	ForumPost    Kind = 11 // a post of a forum is a thread
)

// Channel is a place to talk in.
type Channel struct {
	ID    string
	Guild string // empty in direct messages
	Kind  Kind
	With  string // the person, in direct messages
}

// Posted is a message that the account has posted, as it stands now.
type Posted struct {
	ID          string
	Channel     string
	Content     string
	Answers     string // id of the question: the message replied to, or the interaction
	Buttons     []PostedButton
	Embeds      []any
	Files       []string
	Attachments []any
	Private     bool
	Edits       int
	Deleted     bool
	Loading     bool // deferred and not finished
	nonce       string
}

// PostedButton is a button as people see it.
type PostedButton struct{ Label, Carries string }

// Person gives the id of the nth person.
func Person(n int) string { return strconv.Itoa(700000000000000000 + n) }

// Ids of the account and its owner.
const (
	Self        = "600000000000000001"
	Application = "600000000000000002"
	Owner       = "600000000000000003"
	Webhook     = "600000000000000004"
)

func (s *Server) newID() string {
	s.serial++
	return strconv.FormatInt((time.Now().UnixMilli()-1420070400000)<<22|s.serial&(1<<22-1), 10)
}

// NewGuild makes a guild and gives its id. Guilds fall on shards in turn.
func (s *Server) NewGuild() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.guilds++
	return strconv.FormatInt(int64(100000000+s.guilds)<<22, 10)
}

// NewChannel makes a channel in a guild; an empty guild makes a channel for
// direct messages with Person(0).
func (s *Server) NewChannel(guild string, kind Kind) Channel {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.newChannel(guild, kind, Person(0))
}

func (s *Server) newChannel(guild string, kind Kind, with string) Channel {
	c := Channel{ID: s.newID(), Guild: guild, Kind: kind}
	if guild == "" {
		c.Kind, c.With = Direct, with
	}
	s.channels[c.ID] = &c
	return c
}

// DirectWith gives the channel for direct messages with a person.
func (s *Server) DirectWith(person string) Channel {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.directWith(person)
}

func (s *Server) directWith(person string) Channel {
	for _, c := range s.channels {
		if c.With == person && c.Kind == Direct {
			return *c
		}
	}
	return s.newChannel("", Direct, person)
}

// Said is what a person writes; the zero value of a field leaves it out.
type Said struct {
	Person  string // default Person(0)
	Text    string
	Naming  bool   // mention the account in front of the text
	Reply   string // id of the account's message that this replies to
	Granted bool   // the account may read contents that do not concern it
	Change  func(event map[string]any)
}

// Say lets a person write in a channel, and gives the message's id. Whether a
// session exists that will get it, now or after a resume, is [Server.Heard].
func (s *Server) Say(c Channel, what Said) string {
	s.mu.Lock()
	defer s.mu.Unlock()
	if what.Person == "" {
		what.Person = Person(0)
	}
	id := s.newID()
	event := s.messageEvent(id, c, what)
	if what.Change != nil {
		what.Change(event)
	}
	s.said[id] = saying{channel: c, what: what}
	s.heard[id] = s.dispatch(c.Guild, "MESSAGE_CREATE", event)
	return id
}

type saying struct {
	channel Channel
	what    Said
}

// messageEvent is a message as the gateway tells it, with its content withheld
// where the platform would withhold it.
func (s *Server) messageEvent(id string, c Channel, what Said) map[string]any {
	text := what.Text
	mentions := []any{}
	if what.Naming {
		text = "<@" + Self + "> " + text
		mentions = append(mentions, userEvent(Self, true))
	}
	if !what.Naming && what.Reply == "" && c.Guild != "" && !what.Granted {
		text = ""
	}
	event := map[string]any{
		"id": id, "channel_id": c.ID, "type": 0, "content": text, "author": userEvent(what.Person, false),
		"mentions": mentions, "mention_roles": []any{}, "attachments": []any{}, "embeds": []any{}, "components": []any{},
		"timestamp": time.Now().UTC().Format(time.RFC3339Nano), "edited_timestamp": nil, "flags": 0,
		"pinned": false, "mention_everyone": false, "tts": false,
	}
	if c.Guild != "" {
		event["guild_id"] = c.Guild
	}
	if what.Reply != "" {
		event["type"] = 19
		event["message_reference"] = map[string]any{"type": 0, "message_id": what.Reply, "channel_id": c.ID}
		event["referenced_message"] = map[string]any{"id": what.Reply, "channel_id": c.ID, "author": userEvent(Self, true)}
	}
	return event
}

func userEvent(id string, bot bool) map[string]any {
	u := map[string]any{
		"id": id, "username": "user" + id[len(id)-4:], "avatar": nil, "discriminator": "0", "public_flags": 0, "flags": 0,
		"global_name": nil, "primary_guild": nil,
	}
	if bot {
		u["bot"] = true
	}
	return u
}

// Rewrite lets a person change what they wrote.
func (s *Server) Rewrite(id, text string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	was := s.said[id]
	was.what.Text = text
	s.said[id] = was
	event := s.messageEvent(id, was.channel, was.what)
	event["edited_timestamp"] = time.Now().UTC().Format(time.RFC3339Nano)
	s.dispatch(was.channel.Guild, "MESSAGE_UPDATE", event)
}

// Preview tells of a change that is none: the platform adds a link preview.
func (s *Server) Preview(id string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	was := s.said[id]
	event := s.messageEvent(id, was.channel, was.what)
	event["embeds"] = []any{map[string]any{"type": "link", "url": "https://example.org/"}}
	s.dispatch(was.channel.Guild, "MESSAGE_UPDATE", event)
}

// Erase lets a person delete what they wrote.
func (s *Server) Erase(id string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	c := s.said[id].channel
	s.dispatch(c.Guild, "MESSAGE_DELETE", map[string]any{"id": id, "channel_id": c.ID, "guild_id": c.Guild})
}

// Used is what a person does with a command or a button.
type Used struct {
	Person  string // default Person(0)
	Command string
	Sub     string
	Options map[string]any
	Typing  string // name of the option being typed
	Press   string // what the pressed button carries
	On      string // id of the message with the button
	Rights  int64  // of the person
	Ours    int64  // of the account; default: everything that it asks for
	Form    bool   // sends a form, which was never offered
}

// Use lets a person use a command or a button, and gives the interaction's id.
func (s *Server) Use(c Channel, what Used) string {
	s.mu.Lock()
	defer s.mu.Unlock()
	id, event := s.interactionEvent(c, what)
	s.heard[id] = s.dispatch(c.Guild, "INTERACTION_CREATE", event)
	return id
}

// Signed gives the body of an interaction as it would come by HTTP, and its id.
func (s *Server) Signed(c Channel, what Used) (id string, body []byte) {
	s.mu.Lock()
	defer s.mu.Unlock()
	id, event := s.interactionEvent(c, what)
	body, err := json.Marshal(event)
	if err != nil {
		s.t.Errorf("interaction: %v", err)
	}
	return id, body
}

func (s *Server) interactionEvent(c Channel, what Used) (string, map[string]any) {
	if what.Person == "" {
		what.Person = Person(0)
	}
	if what.Ours == 0 {
		what.Ours = 1<<10 | 1<<11 | 1<<14 | 1<<15 | 1<<16 | 1<<38
	}
	id := s.newID()
	token := "token-" + id
	s.interactions[token] = &exchange{id: id, channel: c, made: time.Now(), typing: what.Typing != ""}
	event := map[string]any{
		"id": id, "application_id": Application, "token": token, "version": 1, "channel_id": c.ID,
		"locale": "en-US", "app_permissions": strconv.FormatInt(what.Ours, 10), "entitlements": []any{},
		"attachment_size_limit": 10 << 20,
	}
	if c.Guild != "" {
		event["guild_id"] = c.Guild
		event["member"] = map[string]any{"user": userEvent(what.Person, false), "permissions": strconv.FormatInt(what.Rights, 10), "roles": []any{}}
	} else {
		event["user"] = userEvent(what.Person, false)
	}
	event["type"], event["data"] = 2, what.command()
	switch {
	case what.Form:
		event["type"], event["data"] = 5, map[string]any{"custom_id": "form", "components": []any{map[string]any{"type": 18, "component": map[string]any{"type": 4}}}}
	case what.Press != "":
		event["type"], event["data"] = 3, map[string]any{"custom_id": what.Press, "component_type": 2}
		event["message"] = map[string]any{"id": what.On, "channel_id": c.ID, "author": userEvent(Self, true)}
	case what.Typing != "":
		event["type"] = 4
	}
	return id, event
}

func (u Used) command() map[string]any {
	options := []any{}
	for name, value := range u.Options {
		kind := 3
		if _, ok := value.(int); ok {
			kind = 4
		}
		o := map[string]any{"name": name, "type": kind, "value": value}
		if name == u.Typing {
			o["focused"] = true
		}
		options = append(options, o)
	}
	if u.Sub != "" {
		options = []any{map[string]any{"name": u.Sub, "type": 1, "options": options}}
	}
	return map[string]any{"id": "1", "name": u.Command, "type": 1, "options": options}
}

// Heard reports whether the message or interaction went to a session.
func (s *Server) Heard(id string) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.heard[id]
}

// Answers gives what the account has posted in answer to a message or
// interaction and not deleted, oldest first.
func (s *Server) Answers(id string) []Posted {
	s.mu.Lock()
	defer s.mu.Unlock()
	var answers []Posted
	for _, p := range s.answers[id] {
		if !p.Deleted {
			answers = append(answers, *p)
		}
	}
	return answers
}

// Posts gives everything that the account has posted in a channel, oldest first.
func (s *Server) Posts(channel string) []Posted {
	s.mu.Lock()
	defer s.mu.Unlock()
	var posts []Posted
	for _, p := range s.posts {
		if p.Channel == channel {
			posts = append(posts, *p)
		}
	}
	return posts
}

// Suggestions gives what was suggested for a command being typed.
func (s *Server) Suggestions(id string) []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, x := range s.interactions {
		if x.id == id {
			return x.suggestions
		}
	}
	return nil
}

// Forget drops all records of what was said and answered.
func (s *Server) Forget() {
	s.mu.Lock()
	defer s.mu.Unlock()
	clear(s.said)
	clear(s.heard)
	clear(s.answers)
	clear(s.byID)
	clear(s.nonces)
	clear(s.interactions)
	s.posts = nil
	for _, session := range s.sessions {
		session.trim()
	}
}

func (p *Posted) String() string { return fmt.Sprintf("%s: %s", p.ID, p.Content) }
