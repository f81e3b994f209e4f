package loopback

import (
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"
	"time"
)

const apiPath = "/api/v10"

// Token is the only token that is accepted.
const Token = "loopback-secret-token"

// Options set up a server. The zero value checks everything and limits nothing.
type Options struct {
	Unchecked   bool            // no checks against the description: for measuring
	CheckEach   int             // check every nth request only; default 1
	Heartbeat   time.Duration   // interval told to clients; default 10 s
	Limit       int             // requests in each bucket and window; 0: no limit
	Window      time.Duration   // default 1 s
	Shards      int             // recommended number; default 1
	Concurrency int             // sessions that may begin at once; default 1
	Posted      func(to string) // called for each message posted, with the id of what it answers
	Between     time.Duration   // least time between two beginnings of a group; 0: unchecked
}

// Server is the platform. Make it with [New].
type Server struct {
	t    testing.TB
	o    Options
	http *httptest.Server
	done sync.WaitGroup

	mu           sync.Mutex
	changed      chan struct{} // closed and replaced at each change
	serial       int64
	guilds       int
	requests     int
	channels     map[string]*Channel
	lacks        map[string]Lack
	said         map[string]saying
	heard        map[string]bool
	posts        []*Posted
	byID         map[string]*Posted
	answers      map[string][]*Posted
	nonces       map[string]*Posted
	interactions map[string]*exchange
	commands     map[string]json.RawMessage // by guild; empty for everywhere
	buckets      map[string]*window
	faults       []*fault
	calls        map[string]int // by method and pattern
	statuses     map[int]int
	revoked      bool
	remaining    int

	sessions   map[string]*session
	conns      map[*conn]bool
	tricks     []Trick
	strayed    int  // resumes at another address than that told for them
	deaf       bool // heartbeats are not acknowledged
	beats      int
	intents    int
	identifies int
	resumes    int
	closes     []int // codes with which clients closed
	begun      map[int]time.Time
}

// exchange is one interaction and what became of it.
type exchange struct {
	id          string
	channel     Channel
	made        time.Time
	answered    bool
	typing      bool
	gone        bool
	original    *Posted
	suggestions []string
}

// Lack is what the account may not do in a channel.
type Lack struct {
	Gone, View, Send, Embed, Attach, History bool
	Archived, Locked, Slow                   bool
	Refused                                  bool // the person takes no direct messages
}

// window is a bucket's count.
type window struct {
	used  int
	until time.Time
}

// New starts a server that stops with the test.
func New(t testing.TB, o Options) *Server {
	t.Helper()
	if o.Heartbeat <= 0 {
		o.Heartbeat = 10 * time.Second
	}
	if o.Window <= 0 {
		o.Window = time.Second
	}
	o.Shards, o.Concurrency, o.CheckEach = max(o.Shards, 1), max(o.Concurrency, 1), max(o.CheckEach, 1)
	s := &Server{
		t: t, o: o, changed: make(chan struct{}), remaining: 1000,
		channels: map[string]*Channel{}, lacks: map[string]Lack{}, said: map[string]saying{}, heard: map[string]bool{},
		byID: map[string]*Posted{}, answers: map[string][]*Posted{}, nonces: map[string]*Posted{},
		interactions: map[string]*exchange{}, commands: map[string]json.RawMessage{}, buckets: map[string]*window{},
		calls: map[string]int{}, statuses: map[int]int{}, sessions: map[string]*session{}, conns: map[*conn]bool{},
		begun: map[int]time.Time{},
	}
	mux := http.NewServeMux()
	s.routes(mux)
	mux.HandleFunc("/gateway", s.gateway)
	mux.HandleFunc("/gateway/", s.gateway) // the form that some clients make of it
	mux.HandleFunc("/resume", s.gateway)
	s.http = httptest.NewServer(mux)
	t.Cleanup(s.stop)
	return s
}

func (s *Server) stop() {
	s.Drop()
	s.http.CloseClientConnections()
	s.http.Close()
	s.done.Wait()
}

// API is the address of the HTTP interface.
func (s *Server) API() string { return s.http.URL + apiPath }

func (s *Server) socket(path string) string {
	return "ws" + strings.TrimPrefix(s.http.URL, "http") + path
}

// CloseIdle cuts the connections of the HTTP interface, but not those of the
// gateway.
func (s *Server) CloseIdle() { s.http.CloseClientConnections() }

// change tells those who wait that something happened. The lock is held.
func (s *Server) change() {
	close(s.changed)
	s.changed = make(chan struct{})
}

// patience is how long [Server.Await] waits before the test fails. It bounds a
// test that hangs; no test passes or fails by how fast something is.
const patience = 60 * time.Second

// Await waits until the condition holds, looking again whenever something
// happens here.
func (s *Server) Await(what string, holds func() bool) {
	s.t.Helper()
	limit := time.NewTimer(patience)
	defer limit.Stop()
	for {
		s.mu.Lock()
		changed := s.changed
		s.mu.Unlock()
		if holds() {
			return
		}
		poll := time.NewTimer(50 * time.Millisecond) // for conditions about something else than this server
		select {
		case <-changed:
		case <-poll.C:
		case <-limit.C:
			poll.Stop()
			s.t.Fatalf("waited in vain: %s", what)
		}
		poll.Stop()
	}
}

// AwaitAnswer waits for one finished answer to a message or interaction and gives it.
func (s *Server) AwaitAnswer(id string) Posted {
	s.t.Helper()
	s.Await("an answer", func() bool {
		a := s.Answers(id)
		return len(a) > 0 && !a[0].Loading
	})
	return s.Answers(id)[0]
}

// Counts of what happened.
type Counts struct {
	Identifies, Resumes, Connections int
	Beats                            int         // heartbeats
	Strayed                          int         // resumes at another address than the one told for them
	Intents                          int         // of the last login
	Closes                           []int       // codes with which clients closed
	Statuses                         map[int]int // responses by status
	Requests                         int
}

// Counts gives what happened so far.
func (s *Server) Counts() Counts {
	s.mu.Lock()
	defer s.mu.Unlock()
	c := Counts{
		Beats: s.beats, Strayed: s.strayed, Intents: s.intents, Identifies: s.identifies, Resumes: s.resumes, Connections: len(s.conns),
		Closes: append([]int(nil), s.closes...), Statuses: map[int]int{}, Requests: s.requests,
	}
	for status, n := range s.statuses {
		c.Statuses[status] = n
	}
	return c
}

// Calls gives how often a call was made, such as "PUT /applications/{app}/commands".
func (s *Server) Calls(pattern string) int {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.calls[pattern]
}

// Revoke makes the token invalid.
func (s *Server) Revoke() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.revoked = true
}

// Starts sets how many sessions may still begin today.
func (s *Server) Starts(remaining int) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.remaining = remaining
}

// Take takes rights in a channel away.
func (s *Server) Take(channel string, l Lack) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.lacks[channel] = l
}

// Expire makes an interaction's token invalid.
func (s *Server) Expire(id string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, x := range s.interactions {
		if x.id == id {
			x.made = time.Time{}
		}
	}
}

// Fault is what the HTTP interface does instead of what was asked.
type Fault struct {
	Status int
	Header map[string]string
	Body   string // as it is sent
	Hang   bool   // give no answer until the client goes away
	Cut    bool   // do what was asked, and cut the connection before the answer
	Before func() // called when the fault strikes
}

type fault struct {
	Fault
	match string
	times int
}

// Fail lets the next calls fail whose method and path contain match; each
// fault strikes the given number of times.
func (s *Server) Fail(match string, times int, f Fault) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.faults = append(s.faults, &fault{Fault: f, match: match, times: times})
}

// strike takes the fault that hits a call, if any does.
func (s *Server) strike(call string) *Fault {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, f := range s.faults {
		if f.times > 0 && strings.Contains(call, f.match) {
			f.times--
			return &f.Fault
		}
	}
	return nil
}

// Pending reports whether faults are left that have not struck.
func (s *Server) Pending() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, f := range s.faults {
		if f.times > 0 {
			return true
		}
	}
	return false
}

// Refusal is the body of the platform's errors.
func Refusal(code int, message string) string {
	data, _ := json.Marshal(map[string]any{"code": code, "message": message}) // a map of plain values always encodes
	return string(data)
}

// TooMany is a 429 in the documented form.
func TooMany(after string, global bool) Fault {
	body := `{"message":"You are being rate limited.","retry_after":` + after + `,"global":` + map[bool]string{true: "true", false: "false"}[global] + `,"code":0}`
	header := map[string]string{"Retry-After": after, "Content-Type": "application/json", "X-RateLimit-Scope": "user"}
	if global {
		header["X-RateLimit-Global"], header["X-RateLimit-Scope"] = "true", "global"
	}
	return Fault{Status: 429, Header: header, Body: body}
}
