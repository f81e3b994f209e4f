package link

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"math/rand/v2"
	"net/http"
	"net/url"
	"strings"
	"sync"
	"time"

	"github.com/bwmarrin/discordgo"
)

// PlatformAPI is where the platform's HTTP interface is, with its version.
const PlatformAPI = "https://discord.com/api/v10"

// Options are what a client can be told. The zero value of a field means its default.
type Options struct {
	API       string        // address of the HTTP interface; default PlatformAPI
	PerSecond int           // requests a second over all; default 50, the platform's limit
	Patience  time.Duration // longest wait for one request with its repeats; default 30 s
	Pause     time.Duration // first pause before a request that failed is repeated; default 250 ms
	Transport http.RoundTripper
	Log       *slog.Logger
}

// Client sends. It is safe for concurrent use.
type Client struct {
	token   Token
	api     string
	http    *http.Client
	limits  *limiter
	opts    Options
	revoked chan struct{}
	revoke  func() // closes revoked
}

const (
	repeats      = 5
	maxResponse  = 8 << 20
	userAgent    = "DiscordBot (counterhand, 1)"
	tooManyCalls = http.StatusTooManyRequests
)

// NewClient makes a client. It sends nothing yet.
func NewClient(token Token, o Options) *Client {
	if o.API == "" {
		o.API = PlatformAPI
	}
	if o.PerSecond <= 0 {
		o.PerSecond = 50
	}
	if o.Patience <= 0 {
		o.Patience = 30 * time.Second
	}
	if o.Pause <= 0 {
		o.Pause = 250 * time.Millisecond
	}
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
	if o.Transport == nil {
		o.Transport = &http.Transport{Proxy: http.ProxyFromEnvironment, MaxIdleConnsPerHost: 64, IdleConnTimeout: time.Minute, TLSHandshakeTimeout: 10 * time.Second}
	}
	revoked := make(chan struct{})
	return &Client{
		revoked: revoked,
		revoke:  sync.OnceFunc(func() { close(revoked) }),
		token:   token,
		api:     strings.TrimSuffix(o.API, "/"),
		http:    &http.Client{Transport: o.Transport, Timeout: o.Patience},
		limits:  newLimiter(o.PerSecond),
		opts:    o,
	}
}

// Revoked is closed when the platform has refused the token.
func (c *Client) Revoked() <-chan struct{} { return c.revoked }

// call is one request to the HTTP interface.
type call struct {
	method string
	route  string // with {} for each argument: names the call in errors and limits
	args   []string
	major  string // the argument that the platform counts separately
	query  string
	kind   string // content type
	data   []byte
	exempt bool // an interaction's answer: outside the limit over all, and without the token
	unsafe bool // must not be repeated when nobody knows whether it was done
}

func (c call) what() string { return c.method + " " + c.route }

func (c call) path() string {
	p := c.route
	for _, a := range c.args {
		p = strings.Replace(p, "{}", url.PathEscape(a), 1)
	}
	if c.query != "" {
		p += "?" + c.query
	}
	return p
}

// do sends until it is done, refused for good, or out of patience.
func (c *Client) do(ctx context.Context, q call, into any) error {
	ctx, cancel := context.WithTimeout(ctx, c.opts.Patience)
	defer cancel()
	for attempt := 0; ; {
		select {
		case <-c.revoked:
			return ErrRevoked
		default:
		}
		t, err := c.limits.take(ctx, q.route, q.major, q.exempt)
		if err != nil {
			return fmt.Errorf("%s: %w", q.what(), err)
		}
		r, err := c.once(ctx, q)
		c.limits.done(t, r.header)
		again, err := c.judge(q, t, r, err)
		if err == nil {
			return read(q, r.data, into)
		}
		if !again {
			return err
		}
		if r.status != tooManyCalls {
			attempt++
			if attempt >= repeats {
				return err
			}
			if sleep(ctx, jitter(c.opts.Pause<<attempt)) != nil {
				return err
			}
		}
	}
}

type response struct {
	status int
	header http.Header
	data   []byte
}

// once sends once. Errors name the call only: the address may carry a secret.
func (c *Client) once(ctx context.Context, q call) (response, error) {
	req, err := http.NewRequestWithContext(ctx, q.method, c.api+q.path(), bytes.NewReader(q.data))
	if err != nil {
		return response{}, fmt.Errorf("%s: cannot be put into a request", q.what())
	}
	req.Header.Set("User-Agent", userAgent)
	if !q.exempt {
		req.Header.Set("Authorization", "Bot "+string(c.token))
	}
	if q.kind != "" {
		req.Header.Set("Content-Type", q.kind)
	}
	resp, err := c.http.Do(req)
	if err != nil {
		return response{}, fmt.Errorf("%s: %w", q.what(), cause(err))
	}
	defer resp.Body.Close()
	data, err := io.ReadAll(io.LimitReader(resp.Body, maxResponse))
	if err != nil {
		return response{header: resp.Header}, fmt.Errorf("%s: %w", q.what(), cause(err))
	}
	return response{resp.StatusCode, resp.Header, data}, nil
}

// cause takes the address off an HTTP client's error.
func cause(err error) error {
	var u *url.Error
	if errors.As(err, &u) {
		return u.Err
	}
	return err
}

// judge decides what a response means, and whether to try again.
func (c *Client) judge(q call, t ticket, r response, err error) (again bool, _ error) {
	switch {
	case err != nil:
		return !q.unsafe, err
	case r.status < 300:
		return false, nil
	case r.status == tooManyCalls:
		return true, c.slowDown(q, t, r)
	case r.status >= 500:
		return true, refusal(q, r)
	case r.status == http.StatusUnauthorized && !q.exempt:
		c.limits.refuse()
		c.revoke()
		return false, ErrRevoked
	case r.status == http.StatusUnauthorized, r.status == http.StatusForbidden:
		c.limits.refuse()
	}
	return false, refusal(q, r)
}

// slowDown holds back as long as the platform asks for, whether it says so in
// the body or only in the headers, as its outer servers do.
func (c *Client) slowDown(q call, t ticket, r response) error {
	var b struct {
		After  float64 `json:"retry_after"`
		Global bool    `json:"global"`
	}
	_ = json.Unmarshal(r.data, &b) // an outer server's page is no JSON: then the headers alone count
	wait := time.Duration(b.After * float64(time.Second))
	if d, err := seconds(r.header.Get("Retry-After")); err == nil && d > wait {
		wait = d
	}
	if wait <= 0 {
		wait = time.Second
	}
	scope := r.header.Get("X-RateLimit-Scope")
	everything := b.Global || scope == "global" || r.header.Get("X-RateLimit-Global") == "true" ||
		scope == "" && r.header.Get("X-RateLimit-Bucket") == "" // from an outer server, which knows no buckets
	if scope != "shared" {
		c.limits.refuse()
	}
	c.limits.hold(t, everything && !q.exempt, wait)
	c.opts.Log.Warn("chat platform asks to slow down", "request", q.what(), "wait", wait, "everything", everything)
	return refusal(q, r)
}

func refusal(q call, r response) error {
	var b struct {
		Code    int             `json:"code"`
		Message string          `json:"message"`
		Errors  json.RawMessage `json:"errors"`
	}
	_ = json.Unmarshal(r.data, &b) // may be a page of an outer server
	reason := b.Message
	if len(b.Errors) > 0 {
		reason += " " + cut(string(b.Errors), 500)
	}
	return &Refusal{What: q.what(), Status: r.status, Code: b.Code, Reason: reason}
}

func read(q call, data []byte, into any) error {
	if into == nil {
		return nil
	}
	if err := json.Unmarshal(data, into); err != nil {
		return fmt.Errorf("%s: answer is not what was expected: %w", q.what(), err)
	}
	return nil
}

func sleep(ctx context.Context, d time.Duration) error {
	timer := time.NewTimer(d)
	defer timer.Stop()
	select {
	case <-timer.C:
		return nil
	case <-ctx.Done():
		return ctx.Err()
	}
}

// jitter spreads a pause between its half and its whole.
func jitter(d time.Duration) time.Duration {
	return d/2 + rand.N(d/2+1)
}

// Send posts into a channel. Sends with equal keys, within minutes, post once.
func (c *Client) Send(ctx context.Context, to ChannelID, p Post, key string) (MessageID, error) {
	b, files, err := p.body()
	if err != nil {
		return "", err
	}
	b.Nonce, b.Once, b.Flags = nonce(key), true, 0
	if p.Answers != "" {
		missing := false
		b.Reference = &discordgo.MessageReference{MessageID: string(p.Answers), FailIfNotExists: &missing}
	}
	var made struct{ ID MessageID }
	err = c.post(ctx, call{method: "POST", route: "/channels/{}/messages", args: []string{string(to)}, major: string(to)}, b, files, &made)
	return made.ID, err
}

// Edit replaces what was posted, its files and buttons included.
func (c *Client) Edit(ctx context.Context, in ChannelID, id MessageID, p Post) error {
	b, files, err := p.body()
	if err != nil {
		return err
	}
	b.Flags = 0
	return c.post(ctx, call{method: "PATCH", route: "/channels/{}/messages/{}", args: []string{string(in), string(id)}, major: string(in)}, b, files, nil)
}

// Remove takes back what was posted. What is gone already is no error.
func (c *Client) Remove(ctx context.Context, in ChannelID, id MessageID) error {
	err := c.do(ctx, call{method: "DELETE", route: "/channels/{}/messages/{}", args: []string{string(in), string(id)}, major: string(in)}, nil)
	if Gone(err) {
		return nil
	}
	return err
}

// Working shows in the channel that an answer is being written.
func (c *Client) Working(ctx context.Context, in ChannelID) error {
	return c.do(ctx, call{method: "POST", route: "/channels/{}/typing", args: []string{string(in)}, major: string(in)}, nil)
}

// Private gives the channel for direct messages with a person.
func (c *Client) Private(ctx context.Context, with UserID) (ChannelID, error) {
	var made struct{ ID ChannelID }
	err := c.post(ctx, call{method: "POST", route: "/users/@me/channels"}, struct {
		Recipient UserID `json:"recipient_id"`
	}{with}, nil, &made)
	return made.ID, err
}

// Owner gives the person to whom a guild belongs.
func (c *Client) Owner(ctx context.Context, of GuildID) (UserID, error) {
	var g struct {
		Owner UserID `json:"owner_id"`
	}
	err := c.do(ctx, call{method: "GET", route: "/guilds/{}", args: []string{string(of)}, major: string(of)}, &g)
	return g.Owner, err
}

// Entry is where and how to connect to the gateway.
type Entry struct {
	URL    string `json:"url"`
	Shards int    `json:"shards"` // as many as the platform recommends
	Starts struct {
		Remaining   int `json:"remaining"`
		ResetAfter  int `json:"reset_after"` // ms
		Concurrency int `json:"max_concurrency"`
	} `json:"session_start_limit"`
}

// Entry asks where to connect to.
func (c *Client) Entry(ctx context.Context) (Entry, error) {
	var e Entry
	err := c.do(ctx, call{method: "GET", route: "/gateway/bot"}, &e)
	return e, err
}

func (c *Client) post(ctx context.Context, q call, v any, files []File, into any) (err error) {
	q.kind, q.data, err = encode(v, files)
	if err != nil {
		return fmt.Errorf("%s: %w", q.what(), err)
	}
	return c.do(ctx, q, into)
}

// Answer gives an interaction its first answer. A repeat that finds it answered
// counts as done.
func (c *Client) Answer(ctx context.Context, i Interaction, p Post) error {
	b, files, err := p.body()
	if err != nil {
		return err
	}
	return c.callback(ctx, i, discordgo.InteractionResponseChannelMessageWithSource, b, files)
}

// Defer tells the platform that the answer comes later, through [Client.Finish].
// Whether it will be private is settled here.
func (c *Client) Defer(ctx context.Context, i Interaction, private bool) error {
	var data struct {
		Flags discordgo.MessageFlags `json:"flags,omitempty"`
	}
	if private {
		data.Flags = discordgo.MessageFlagsEphemeral
	}
	return c.callback(ctx, i, discordgo.InteractionResponseDeferredChannelMessageWithSource, data, nil)
}

// Suggest offers what may be meant by what is being typed, at most 25.
func (c *Client) Suggest(ctx context.Context, i Interaction, values []string) error {
	type choice struct {
		Name  string `json:"name"`
		Value string `json:"value"`
	}
	data := struct {
		Choices []choice `json:"choices"`
	}{[]choice{}}
	for _, v := range values[:min(len(values), maxChoices)] {
		v = cut(v, maxChoice)
		data.Choices = append(data.Choices, choice{v, v})
	}
	return c.callback(ctx, i, discordgo.InteractionApplicationCommandAutocompleteResult, data, nil)
}

func (c *Client) callback(ctx context.Context, i Interaction, kind discordgo.InteractionResponseType, data any, files []File) error {
	q := call{method: "POST", route: "/interactions/{}/{}/callback", args: []string{string(i.ID), i.token}, major: string(i.ID), exempt: true}
	err := c.post(ctx, q, struct {
		Type discordgo.InteractionResponseType `json:"type"`
		Data any                               `json:"data"`
	}{kind, data}, files, nil)
	if alreadyAnswered(err) {
		c.opts.Log.Info("interaction was answered before", "interaction", i.ID)
		return nil
	}
	return err
}

// Finish puts the answer where [Client.Defer] left its place.
func (c *Client) Finish(ctx context.Context, i Interaction, p Post) error {
	b, files, err := p.body()
	if err != nil {
		return err
	}
	b.Flags = 0
	return c.post(ctx, call{method: "PATCH", route: "/webhooks/{}/{}/messages/@original", args: []string{i.application, i.token}, major: string(i.ID), exempt: true}, b, files, nil)
}
