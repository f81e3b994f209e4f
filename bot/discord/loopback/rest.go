package loopback

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"strconv"
	"strings"
	"time"

	"github.com/getkin/kin-openapi/openapi3filter"
)

// reply is what a call gives back.
type reply struct {
	status int
	header map[string]string
	body   any // nil for none
}

func refuse(status, code int, message string) reply {
	return reply{status: status, body: map[string]any{"code": code, "message": message}}
}

// handler does one call. The server's lock is held.
type handler func(r *http.Request, body map[string]any) reply

// routes connects the calls that are known. Calls that carry an interaction's
// token need no other.
func (s *Server) routes(mux *http.ServeMux) {
	for pattern, h := range map[string]handler{
		"GET /gateway":                                     s.entry,
		"GET /gateway/bot":                                 s.entry,
		"GET /applications/@me":                            s.application,
		"GET /applications/{app}/commands":                 s.listCommands,
		"PUT /applications/{app}/commands":                 s.putCommands,
		"GET /applications/{app}/guilds/{g}/commands":      s.listCommands,
		"PUT /applications/{app}/guilds/{g}/commands":      s.putCommands,
		"GET /guilds/{g}":                                  s.guild,
		"POST /users/@me/channels":                         s.openDirect,
		"POST /channels/{c}/messages":                      s.post,
		"PATCH /channels/{c}/messages/{m}":                 s.edit,
		"DELETE /channels/{c}/messages/{m}":                s.remove,
		"POST /channels/{c}/typing":                        s.typing,
		"POST /interactions/{i}/{token}/callback":          s.callback,
		"PATCH /webhooks/{app}/{token}/messages/@original": s.finish,
	} {
		method, path, _ := strings.Cut(pattern, " ")
		mux.HandleFunc(method+" "+apiPath+path, func(w http.ResponseWriter, r *http.Request) { s.serve(w, r, pattern, h) })
	}
}

func (s *Server) serve(w http.ResponseWriter, r *http.Request, pattern string, h handler) {
	data, err := io.ReadAll(r.Body)
	if err != nil {
		return // the client has gone
	}
	struck := s.strike(r.Method + " " + r.URL.Path)
	if struck != nil && struck.Before != nil {
		struck.Before()
	}
	if struck != nil && struck.Hang {
		<-r.Context().Done()
		return
	}
	checked, input := s.checkRequest(r, pattern, data)
	if struck != nil && !struck.Cut && struck.Status != 0 {
		s.note(struck.Status)
		for name, value := range struck.Header {
			w.Header().Set(name, value)
		}
		w.WriteHeader(struck.Status)
		_, _ = io.WriteString(w, struck.Body) // the client may have gone
		return
	}
	out := s.perform(r, pattern, data, h)
	if struck != nil && struck.Cut {
		panic(http.ErrAbortHandler)
	}
	s.respond(w, pattern, out, checked, input)
}

func (s *Server) checkRequest(r *http.Request, pattern string, data []byte) (bool, *openapi3filter.RequestValidationInput) {
	s.mu.Lock()
	s.requests++
	s.calls[pattern]++
	skip := s.o.Unchecked || s.requests%s.o.CheckEach != 0
	s.mu.Unlock()
	if skip {
		return false, nil
	}
	input, err := checkRequest(r, data)
	if err != nil {
		s.t.Errorf("%s %s: not as the platform's description asks: %v\n%s", r.Method, r.URL.Path, brief(err), data)
	}
	return err == nil, input
}

func (s *Server) perform(r *http.Request, pattern string, data []byte, h handler) reply {
	withToken := strings.Contains(pattern, "{token}")
	auth := r.Header.Get("Authorization")
	s.mu.Lock()
	defer s.mu.Unlock()
	defer s.change()
	if !withToken && (auth != "Bot "+Token || s.revoked) {
		return refuse(401, 0, "401: Unauthorized")
	}
	header, late := s.limited(r, pattern)
	if late != nil {
		return *late
	}
	payload, err := jsonPart(r, data)
	if err != nil {
		return refuse(400, 50035, err.Error())
	}
	var body map[string]any
	if len(payload) > 0 && payload[0] == '{' {
		if err := json.Unmarshal(payload, &body); err != nil {
			return refuse(400, 50109, "The request body contains invalid JSON.")
		}
	} else {
		body = map[string]any{"list": json.RawMessage(payload)}
	}
	out := h(r, body)
	out.header = header
	return out
}

// limited counts a call in its bucket. Interactions have none here.
func (s *Server) limited(r *http.Request, pattern string) (map[string]string, *reply) {
	if s.o.Limit == 0 || strings.Contains(pattern, "{token}") {
		return nil, nil
	}
	name := fmt.Sprintf("%x", len(pattern)*7919+int(pattern[0]))
	key := name + r.PathValue("c") + r.PathValue("g")
	b := s.buckets[key]
	now := time.Now()
	if b == nil || now.After(b.until) {
		b = &window{until: now.Add(s.o.Window)}
		s.buckets[key] = b
	}
	b.used++
	after := strconv.FormatFloat(b.until.Sub(now).Seconds(), 'f', 3, 64)
	header := map[string]string{
		"X-RateLimit-Bucket": name, "X-RateLimit-Limit": strconv.Itoa(s.o.Limit),
		"X-RateLimit-Remaining": strconv.Itoa(max(s.o.Limit-b.used, 0)), "X-RateLimit-Reset-After": after,
	}
	if b.used <= s.o.Limit {
		return header, nil
	}
	header["Retry-After"], header["X-RateLimit-Scope"] = after, "user"
	seconds, _ := strconv.ParseFloat(after, 64) // formatted above
	return header, &reply{status: 429, header: header, body: map[string]any{"message": "You are being rate limited.", "retry_after": seconds, "global": false, "code": 0}}
}

func (s *Server) respond(w http.ResponseWriter, pattern string, out reply, checked bool, input *openapi3filter.RequestValidationInput) {
	s.note(out.status)
	var data bytes.Buffer
	if out.body != nil {
		if err := json.NewEncoder(&data).Encode(out.body); err != nil {
			s.t.Errorf("%s: %v", pattern, err)
		}
		w.Header().Set("Content-Type", "application/json")
	}
	for name, value := range out.header {
		w.Header().Set(name, value)
	}
	if checked {
		if err := checkResponse(input, out.status, w.Header(), data.Bytes()); err != nil {
			s.t.Errorf("%s: the double's own response is not as the description says: %v\n%s", pattern, brief(err), data.Bytes())
		}
	}
	w.WriteHeader(out.status)
	_, _ = w.Write(data.Bytes()) // the client may have gone
}

func (s *Server) note(status int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.statuses[status]++
	s.change()
}

func (s *Server) entry(*http.Request, map[string]any) reply {
	return reply{status: 200, body: map[string]any{
		"url": s.socket("/gateway"), "shards": s.o.Shards,
		"session_start_limit": map[string]any{"total": 1000, "remaining": max(s.remaining, 0), "reset_after": 1, "max_concurrency": s.o.Concurrency},
	}}
}

func (s *Server) application(*http.Request, map[string]any) reply {
	return reply{status: 200, body: map[string]any{
		"id": Application, "name": "Loopback", "icon": nil, "description": "", "type": nil, "verify_key": "", "flags": 0, "flags_new": "0",
		"redirect_uris": []any{}, "interactions_endpoint_url": nil, "role_connections_verification_url": nil, "owner": userEvent(Owner, false),
		"approximate_guild_count": 1, "approximate_user_install_count": 0, "approximate_user_authorization_count": 0,
		"event_webhooks_url": nil, "event_webhooks_status": 1, "event_webhooks_types": []any{}, "explicit_content_filter": 0, "team": nil,
		"eligible_oauth2_scopes": []any{},
	}}
}

func (s *Server) listCommands(r *http.Request, _ map[string]any) reply {
	stored := s.commands[r.PathValue("g")]
	if stored == nil {
		stored = json.RawMessage("[]")
	}
	return reply{status: 200, body: stored}
}

// putCommands stores commands the way the platform does: with what it adds.
func (s *Server) putCommands(r *http.Request, body map[string]any) reply {
	var list []map[string]any
	if err := json.Unmarshal(body["list"].(json.RawMessage), &list); err != nil {
		return refuse(400, 50035, "Invalid Form Body")
	}
	for _, c := range list {
		c["id"], c["application_id"], c["version"] = s.newID(), Application, s.newID()
		c["nsfw"], c["dm_permission"] = false, true
		if g := r.PathValue("g"); g != "" {
			c["guild_id"] = g
		}
		tidyOptions(c)
	}
	stored, err := json.Marshal(list)
	if err != nil {
		return refuse(500, 0, err.Error())
	}
	s.commands[r.PathValue("g")] = stored
	return reply{status: 200, body: json.RawMessage(stored)}
}

// tidyOptions leaves out what the platform leaves out of what it gives back.
func tidyOptions(in map[string]any) {
	for _, o := range list(in["options"]) {
		o := o.(map[string]any)
		if o["required"] == false {
			delete(o, "required")
		}
		tidyOptions(o)
	}
	if len(list(in["options"])) == 0 {
		delete(in, "options")
	}
}

func (s *Server) guild(r *http.Request, _ map[string]any) reply {
	return reply{status: 200, body: map[string]any{
		"id": r.PathValue("g"), "name": "Guild", "icon": nil, "description": nil, "home_header": nil, "splash": nil, "discovery_splash": nil,
		"features": []any{}, "banner": nil, "owner_id": Owner, "application_id": nil, "region": "x", "afk_channel_id": nil, "afk_timeout": 300,
		"system_channel_id": nil, "system_channel_flags": 0, "widget_enabled": false, "widget_channel_id": nil, "verification_level": 0,
		"roles": []any{}, "default_message_notifications": 0, "mfa_level": 0, "explicit_content_filter": 0, "max_presences": nil,
		"max_members": 1000, "max_stage_video_channel_users": 50, "max_video_channel_users": 25, "vanity_url_code": nil, "premium_tier": 0,
		"premium_subscription_count": 0, "preferred_locale": "en-US", "rules_channel_id": nil, "safety_alerts_channel_id": nil,
		"public_updates_channel_id": nil, "premium_progress_bar_enabled": false, "premium_progress_bar_enabled_user_updated_at": nil,
		"nsfw": false, "nsfw_level": 0, "emojis": []any{}, "stickers": []any{}, "incidents_data": nil,
	}}
}

func (s *Server) openDirect(_ *http.Request, body map[string]any) reply {
	person, _ := body["recipient_id"].(string)
	c := s.directWith(person)
	return reply{status: 200, body: map[string]any{"id": c.ID, "type": 1, "flags": 0, "recipients": []any{userEvent(person, false)}}}
}

// barred gives the refusal of a post into a channel, if it is refused.
func (s *Server) barred(channel string, body map[string]any) *reply {
	l := s.lacks[channel]
	no := func(status, code int, message string) *reply { r := refuse(status, code, message); return &r }
	_, isReply := body["message_reference"].(map[string]any)
	switch {
	case l.Gone || s.channels[channel] == nil:
		return no(404, 10003, "Unknown Channel")
	case l.View:
		return no(403, 50001, "Missing Access")
	case l.Refused:
		return no(403, 50007, "Cannot send messages to this user")
	case l.Locked:
		return no(403, 160005, "Thread is locked")
	case l.Archived:
		return no(400, 50083, "Thread is archived")
	case l.Slow:
		return no(429, 20016, "slow mode")
	case l.Send, l.Embed && len(list(body["embeds"])) > 0, l.Attach && len(list(body["attachments"])) > 0:
		return no(403, 50013, "Missing Permissions")
	case l.History && isReply:
		return no(400, 160002, "Cannot reply without permission to read message history")
	}
	return nil
}

func (s *Server) post(r *http.Request, body map[string]any) reply {
	channel := r.PathValue("c")
	if no := s.barred(channel, body); no != nil {
		return *no
	}
	mark, _ := body["nonce"].(string)
	if body["enforce_nonce"] == true && s.nonces[channel+mark] != nil {
		return reply{status: 200, body: s.messageBody(s.nonces[channel+mark])}
	}
	p := &Posted{ID: s.newID(), Channel: channel, nonce: mark}
	if ref, ok := body["message_reference"].(map[string]any); ok {
		p.Answers, _ = ref["message_id"].(string)
	}
	p.fill(body)
	s.nonces[channel+mark] = p
	s.keep(p)
	return reply{status: 200, body: s.messageBody(p)}
}

func (s *Server) keep(p *Posted) {
	s.byID[p.ID] = p
	s.posts = append(s.posts, p)
	if p.Answers != "" {
		s.answers[p.Answers] = append(s.answers[p.Answers], p)
	}
	if s.o.Posted != nil {
		s.o.Posted(p.Answers)
	}
}

// fill takes over what a body says; on an edit, what it leaves out stays.
func (p *Posted) fill(body map[string]any) {
	if content, ok := body["content"].(string); ok {
		p.Content = content
	}
	if embeds, ok := body["embeds"].([]any); ok {
		p.Embeds = embeds
	}
	if attachments, ok := body["attachments"].([]any); ok {
		p.Files, p.Attachments = nil, attachments
		for _, a := range attachments {
			name, _ := a.(map[string]any)["filename"].(string)
			p.Files = append(p.Files, name)
		}
	}
	if rows, ok := body["components"].([]any); ok {
		p.Buttons = nil
		for _, row := range rows {
			for _, b := range list(row.(map[string]any)["components"]) {
				b := b.(map[string]any)
				p.Buttons = append(p.Buttons, PostedButton{Label: b["label"].(string), Carries: b["custom_id"].(string)})
			}
		}
	}
}

func (s *Server) edit(r *http.Request, body map[string]any) reply {
	p := s.byID[r.PathValue("m")]
	if p == nil || p.Deleted {
		return refuse(404, 10008, "Unknown Message")
	}
	if no := s.barred(p.Channel, body); no != nil {
		return *no
	}
	p.fill(body)
	p.Edits++
	return reply{status: 200, body: s.messageBody(p)}
}

func (s *Server) remove(r *http.Request, _ map[string]any) reply {
	p := s.byID[r.PathValue("m")]
	if p == nil || p.Deleted {
		return refuse(404, 10008, "Unknown Message")
	}
	p.Deleted = true
	return reply{status: 204}
}

func (s *Server) typing(r *http.Request, _ map[string]any) reply {
	if no := s.barred(r.PathValue("c"), nil); no != nil {
		return *no
	}
	return reply{status: 204}
}

// exchange finds the interaction of a token that is still good.
func (s *Server) exchange(r *http.Request, limit time.Duration) (*exchange, *reply) {
	x := s.interactions[r.PathValue("token")]
	if x != nil && x.gone {
		s.t.Errorf("an interaction is called again after it was gone: %s", r.URL.Path)
	}
	if x == nil || time.Since(x.made) > limit {
		if x != nil {
			x.gone = true
		}
		r := refuse(404, 10062, "Unknown interaction")
		return nil, &r
	}
	return x, nil
}

func (s *Server) callback(r *http.Request, body map[string]any) reply {
	x, no := s.exchange(r, 3*time.Second)
	if no != nil {
		return *no
	}
	if x.answered {
		return refuse(400, 40060, "Interaction has already been acknowledged.")
	}
	x.answered = true
	kind := int(body["type"].(float64))
	data, _ := body["data"].(map[string]any)
	if (kind == 8) != x.typing {
		s.t.Errorf("callback of type %d where typing is %v", kind, x.typing)
	}
	switch kind {
	case 4, 5:
		p := &Posted{ID: s.newID(), Channel: x.channel.ID, Answers: x.id, Loading: kind == 5, Private: data["flags"] == 64.0}
		if kind == 4 {
			p.fill(data)
		}
		x.original = p
		s.keep(p)
	case 8:
		for _, c := range list(data["choices"]) {
			x.suggestions = append(x.suggestions, c.(map[string]any)["value"].(string))
		}
	}
	return reply{status: 204}
}

func (s *Server) finish(r *http.Request, body map[string]any) reply {
	x, no := s.exchange(r, 15*time.Minute)
	if no != nil {
		return *no
	}
	if x.original == nil {
		return refuse(404, 10015, "Unknown Webhook")
	}
	x.original.fill(body)
	if !x.original.Loading {
		x.original.Edits++
	}
	x.original.Loading = false
	return reply{status: 200, body: s.messageBody(x.original)}
}

// messageBody is a message in full, as the platform gives it back.
func (s *Server) messageBody(p *Posted) map[string]any {
	attachments, embeds, rows := []any{}, []any{}, []any{}
	for n, name := range p.Files {
		attachments = append(attachments, map[string]any{
			"id": strconv.Itoa(1000 + n), "filename": name, "size": 1, "url": "https://example.org/" + name, "proxy_url": "https://example.org/" + name,
		})
	}
	for _, e := range p.Embeds {
		full := map[string]any{"type": "rich"}
		for key, value := range e.(map[string]any) {
			if key != "image" {
				full[key] = value
			}
		}
		embeds = append(embeds, full)
	}
	for n := 0; n < len(p.Buttons); n += 5 {
		row := map[string]any{"type": 1, "id": n + 1}
		var buttons []any
		for m, b := range p.Buttons[n:min(n+5, len(p.Buttons))] {
			buttons = append(buttons, map[string]any{"type": 2, "id": 100 + n + m, "style": 2, "label": b.Label, "custom_id": b.Carries, "disabled": false})
		}
		row["components"] = buttons
		rows = append(rows, row)
	}
	var edited any
	if p.Edits > 0 {
		edited = time.Now().UTC().Format(time.RFC3339Nano)
	}
	body := map[string]any{
		"id": p.ID, "channel_id": p.Channel, "type": 0, "content": p.Content, "author": userEvent(Self, true), "mentions": []any{},
		"mention_roles": []any{}, "attachments": attachments, "embeds": embeds, "components": rows, "flags": 0, "pinned": false,
		"mention_everyone": false, "tts": false, "timestamp": time.Now().UTC().Format(time.RFC3339Nano), "edited_timestamp": edited,
	}
	if p.nonce != "" {
		body["nonce"] = p.nonce
	}
	return body
}

// brief leaves out the schema that the validator quotes in full.
func brief(err error) string {
	text, _, _ := strings.Cut(err.Error(), "\nSchema:")
	text, _, _ = strings.Cut(text, "\n    Schema:")
	if first, _, found := strings.Cut(text, "Schema:"); found {
		text = first
	}
	return strings.TrimSpace(text)
}
