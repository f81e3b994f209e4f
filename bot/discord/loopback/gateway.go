package loopback

import (
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"strconv"
	"sync"
	"time"

	"github.com/gorilla/websocket"
)

// session is what the platform keeps of a client between its connections.
type session struct {
	id     string
	shard  int
	count  int
	last   int64   // sequence of the last event
	events []event // that can still be replayed
	conn   *conn
}

type event struct {
	sequence int64
	data     []byte
}

// trim drops the events that were sent.
func (s *session) trim() {
	if s.conn == nil {
		return
	}
	n := 0
	for n < len(s.events) && s.events[n].sequence <= s.conn.sent {
		n++
	}
	s.events = append([]event(nil), s.events[n:]...)
}

// conn is one connection of a client.
type conn struct {
	ws      *websocket.Conn
	server  *Server
	path    string
	trick   Trick
	control chan []byte
	wake    chan struct{}
	over    chan struct{}
	once    sync.Once

	session *session // these two under the server's lock
	sent    int64
	frames  []time.Time
}

// Trick is something odd that the gateway does on the next connection.
type Trick struct {
	Refuse      bool // no websocket at all: 503
	Silent      bool // no greeting
	Ignore      bool // no reaction to the login
	CloseLogin  int  // close with this code instead of accepting the login
	FirstResume int  // operation sent as the first thing after a resume, such as 7
	LostResume  bool // the session to resume is not known any more
}

// Trick queues a trick for one of the next connections, in order.
func (s *Server) Trick(t Trick) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.tricks = append(s.tricks, t)
}

var upgrader = websocket.Upgrader{ReadBufferSize: 4096, WriteBufferSize: 4096}

func (s *Server) gateway(w http.ResponseWriter, r *http.Request) {
	s.mu.Lock()
	var trick Trick
	if len(s.tricks) > 0 {
		trick, s.tricks = s.tricks[0], s.tricks[1:]
	}
	s.mu.Unlock()
	if trick.Refuse {
		w.WriteHeader(http.StatusServiceUnavailable)
		return
	}
	if r.URL.Query().Get("v") != "10" || r.URL.Query().Get("encoding") != "json" {
		s.t.Errorf("gateway opened with %q", r.URL.RawQuery)
	}
	ws, err := upgrader.Upgrade(w, r, nil)
	if err != nil {
		return // the client has gone
	}
	c := &conn{ws: ws, server: s, path: r.URL.Path, trick: trick, control: make(chan []byte, 256), wake: make(chan struct{}, 1), over: make(chan struct{})}
	s.mu.Lock()
	s.conns[c] = true
	s.mu.Unlock()
	s.done.Go(c.write)
	if !trick.Silent {
		c.send(map[string]any{"op": 10, "d": map[string]any{"heartbeat_interval": s.o.Heartbeat.Milliseconds()}})
	}
	s.done.Add(1)
	defer s.done.Done()
	c.read()
}

func (c *conn) send(v any) {
	data, err := json.Marshal(v)
	if err != nil {
		c.server.t.Errorf("gateway frame: %v", err)
		return
	}
	c.push(data)
}

func (c *conn) push(data []byte) {
	select {
	case c.control <- data:
	case <-c.over:
	}
}

// write sends what is due: control frames, and the session's events in order.
func (c *conn) write() {
	for {
		select {
		case data := <-c.control:
			c.flush() // events that happened before come before
			if c.ws.WriteMessage(websocket.TextMessage, data) != nil {
				c.end()
			}
		case <-c.wake:
			c.flush()
		case <-c.over:
			return
		}
	}
}

func (c *conn) flush() {
	for _, e := range c.due() {
		if c.ws.WriteMessage(websocket.TextMessage, e.data) != nil {
			c.end()
			return
		}
	}
}

func (c *conn) due() []event {
	c.server.mu.Lock()
	defer c.server.mu.Unlock()
	if c.session == nil || c.session.conn != c {
		return nil
	}
	all := c.session.events
	n := len(all)
	for n > 0 && all[n-1].sequence > c.sent {
		n--
	}
	if n < len(all) {
		c.sent = all[len(all)-1].sequence
	}
	return append([]event(nil), all[n:]...)
}

func (c *conn) poke() {
	select {
	case c.wake <- struct{}{}:
	default:
	}
}

// end cuts the connection without a word.
func (c *conn) end() {
	c.once.Do(func() {
		close(c.over)
		c.ws.Close()
	})
}

func (c *conn) read() {
	defer func() {
		c.end()
		c.server.mu.Lock()
		delete(c.server.conns, c)
		if c.session != nil && c.session.conn == c {
			c.session.conn = nil
		}
		c.server.change()
		c.server.mu.Unlock()
	}()
	for {
		_, data, err := c.ws.ReadMessage()
		if err != nil {
			c.closed(err)
			return
		}
		c.count(len(data))
		var f struct {
			Op   int             `json:"op"`
			Data json.RawMessage `json:"d"`
		}
		if err := json.Unmarshal(data, &f); err != nil {
			c.server.t.Errorf("client sent %q", data)
			return
		}
		switch f.Op {
		case 1:
			c.beat()
		case 2:
			c.identify(f.Data)
		case 6:
			c.resume(f.Data)
		default:
			c.server.t.Errorf("client sent operation %d", f.Op)
		}
	}
}

// closed notes how the client left. 1000 and 1001 end the session.
func (c *conn) closed(err error) {
	var code *websocket.CloseError
	if !errors.As(err, &code) {
		return
	}
	s := c.server
	s.mu.Lock()
	defer s.mu.Unlock()
	s.closes = append(s.closes, code.Code)
	if (code.Code == 1000 || code.Code == 1001) && c.session != nil {
		delete(s.sessions, c.session.id)
	}
}

// count holds the client to 120 frames a minute of at most 4096 bytes.
func (c *conn) count(bytes int) {
	if bytes > 4096 {
		c.server.t.Errorf("client sent a frame of %d bytes", bytes)
	}
	if c.server.o.Heartbeat < time.Second {
		return // a test with fast heartbeats has more frames than the platform would see
	}
	now := time.Now()
	for len(c.frames) > 0 && now.Sub(c.frames[0]) > time.Minute {
		c.frames = c.frames[1:]
	}
	if c.frames = append(c.frames, now); len(c.frames) > 120 {
		c.server.t.Errorf("client sent %d frames within a minute", len(c.frames))
	}
}

func (c *conn) beat() {
	c.server.mu.Lock()
	deaf := c.server.deaf
	c.server.beats++
	c.server.change()
	c.server.mu.Unlock()
	if !deaf {
		c.send(map[string]any{"op": 11})
	}
}

func (c *conn) identify(data json.RawMessage) {
	var d struct {
		Token      string         `json:"token"`
		Intents    *int           `json:"intents"`
		Shard      []int          `json:"shard"`
		Properties map[string]any `json:"properties"`
	}
	s := c.server
	d.Shard = []int{0, 1} // what leaving it out means
	if err := json.Unmarshal(data, &d); err != nil || d.Intents == nil || len(d.Shard) != 2 || len(d.Properties) < 3 {
		s.t.Errorf("incomplete login: %s", data)
		return
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	s.identifies++
	s.intents = *d.Intents
	s.remaining--
	s.change()
	s.paced(d.Shard[0])
	if d.Token != Token || s.revoked {
		c.close(4004)
		return
	}
	if c.refused() {
		return
	}
	session := &session{id: "session-" + s.newID(), shard: d.Shard[0], count: d.Shard[1], conn: c}
	s.sessions[session.id] = session
	c.session, c.sent = session, 0
	s.ready(session)
}

// paced holds clients to the pause between two logins of a group.
func (s *Server) paced(shard int) {
	group := shard % s.o.Concurrency
	if since := time.Since(s.begun[group]); since < s.o.Between {
		s.t.Errorf("login %v after the last one", since)
	}
	s.begun[group] = time.Now()
}

func (c *conn) refused() bool {
	if c.trick.CloseLogin != 0 {
		c.close(c.trick.CloseLogin)
	}
	return c.trick.CloseLogin != 0 || c.trick.Ignore
}

func (s *Server) ready(to *session) {
	s.append(to, "READY", map[string]any{
		"v": 10, "user": userEvent(Self, true), "session_id": to.id, "resume_gateway_url": s.socket("/resume"),
		"guilds": []any{}, "shard": []int{to.shard, to.count}, "application": map[string]any{"id": Application, "flags": 0},
	})
}

func (c *conn) resume(data json.RawMessage) {
	var d struct {
		Token    string `json:"token"`
		Session  string `json:"session_id"`
		Sequence int64  `json:"seq"`
	}
	s := c.server
	if err := json.Unmarshal(data, &d); err != nil {
		s.t.Errorf("resume: %s", data)
		return
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	s.resumes++
	if c.path != "/resume" {
		s.strayed++
	}
	s.change()
	if d.Token != Token || s.revoked {
		c.close(4004)
		return
	}
	if c.refused() {
		return
	}
	session := s.sessions[d.Session]
	if session == nil || c.trick.LostResume {
		delete(s.sessions, d.Session)
		c.send(map[string]any{"op": 9, "d": false})
		return
	}
	if c.trick.FirstResume != 0 {
		c.send(map[string]any{"op": c.trick.FirstResume, "d": nil})
	}
	if session.conn != nil {
		session.conn.end()
	}
	session.conn, c.session, c.sent = c, session, d.Sequence
	s.append(session, "RESUMED", map[string]any{})
}

// close ends the connection with a code.
func (c *conn) close(code int) {
	_ = c.ws.WriteControl(websocket.CloseMessage, websocket.FormatCloseMessage(code, ""), time.Now().Add(time.Second)) // the client may have gone
	c.end()
}

// dispatch tells the sessions of a guild's shard, and reports whether there is
// one. Direct messages belong to shard 0.
func (s *Server) dispatch(guild, name string, data any) bool {
	heard := false
	for _, session := range s.sessions {
		if session.shard == shardOf(guild, session.count) {
			s.append(session, name, data)
			heard = true
		}
	}
	return heard
}

func shardOf(guild string, count int) int {
	id, err := strconv.ParseUint(guild, 10, 64)
	if err != nil {
		return 0
	}
	return int((id >> 22) % uint64(count))
}

func (s *Server) append(to *session, name string, data any) {
	to.last++
	frame, err := json.Marshal(map[string]any{"op": 0, "t": name, "s": to.last, "d": data})
	if err != nil {
		s.t.Errorf("event: %v", err)
		return
	}
	to.events = append(to.events, event{to.last, frame})
	if to.conn != nil {
		to.conn.poke()
	}
}

// Tell sends an event of any kind to every session.
func (s *Server) Tell(name string, data any) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, session := range s.sessions {
		s.append(session, name, data)
	}
}

// Raw sends a text as it is over every connection.
func (s *Server) Raw(text string) { s.each(func(c *conn) { c.push([]byte(text)) }) }

// Op sends an operation without an event over every connection.
func (s *Server) Op(op int, data any) {
	s.each(func(c *conn) { c.send(map[string]any{"op": op, "d": data}) })
}

// Drop cuts every connection without a word.
func (s *Server) Drop() { s.each((*conn).end) }

// Close ends every connection with a code.
func (s *Server) Close(code int) { s.each(func(c *conn) { c.close(code) }) }

// Lose forgets every session and tells the clients so.
func (s *Server) Lose() {
	s.mu.Lock()
	clear(s.sessions)
	s.mu.Unlock()
	s.Op(9, false)
}

// Repeat sends the last n events of every session once more.
func (s *Server) Repeat(n int64) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, session := range s.sessions {
		if session.conn != nil {
			session.conn.sent = max(session.conn.sent-n, 0)
			session.conn.poke()
		}
	}
}

// ReadyAgain greets every session a second time.
func (s *Server) ReadyAgain() {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, session := range s.sessions {
		s.ready(session)
	}
}

// Deaf stops or starts acknowledging heartbeats.
func (s *Server) Deaf(on bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.deaf = on
}

func (s *Server) each(do func(*conn)) {
	s.mu.Lock()
	var all []*conn
	for c := range s.conns {
		all = append(all, c)
	}
	s.mu.Unlock()
	for _, c := range all {
		do(c)
	}
}

// AwaitConnected waits until n sessions have a live connection.
func (s *Server) AwaitConnected(n int) {
	s.t.Helper()
	s.Await(fmt.Sprintf("%d connected sessions", n), func() bool {
		s.mu.Lock()
		defer s.mu.Unlock()
		live := 0
		for _, session := range s.sessions {
			if session.conn != nil {
				live++
			}
		}
		return live >= n
	})
}
