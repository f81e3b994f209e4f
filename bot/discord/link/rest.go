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
	kind   string // content type
	data   []byte
	exempt bool // an interaction's answer: outside the limit over all, and without the token
}

func (c call) what() string { return c.method + " " + c.route }

func (c call) path() string {
	p := c.route
	for _, a := range c.args {
		p = strings.Replace(p, "{}", url.PathEscape(a), 1)
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
		again, err := c.judge(ctx, q, t, r, err)
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

// judge decides what a response means, and whether to try again. Whatever was
// not heard of is tried again: sends carry a nonce, and an interaction tells
// that it is answered already.
func (c *Client) judge(ctx context.Context, q call, t ticket, r response, err error) (again bool, _ error) {
	switch {
	case err != nil:
		return true, err
	case r.status < 300:
		return false, nil
	case r.status == tooManyCalls:
		return c.slowDown(ctx, q, t, r)
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
// the body or only in the headers, as its outer servers do. A pause beyond the
// patience is not waited for.
func (c *Client) slowDown(ctx context.Context, q call, t ticket, r response) (again bool, _ error) {
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
	end, bounded := ctx.Deadline()
	return !bounded || time.Now().Add(wait).Before(end), refusal(q, r)
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

func (c *Client) post(ctx context.Context, q call, v any, files []File, into any) (err error) {
	q.kind, q.data, err = encode(v, files)
	if err != nil {
		return fmt.Errorf("%s: %w", q.what(), err)
	}
	return c.do(ctx, q, into)
}
