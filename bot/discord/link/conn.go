package link

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"net/http"
	"net/url"
	"sync"
	"sync/atomic"
	"time"

	"github.com/bwmarrin/discordgo"
	"github.com/gorilla/websocket"
	"golang.org/x/time/rate"
)

// frame is what goes over the connection in both directions.
type frame struct {
	Op       int             `json:"op"`
	Data     json.RawMessage `json:"d"`
	Sequence int64           `json:"s,omitempty"`
	Event    string          `json:"t,omitempty"`
}

// conn is one connection.
type conn struct {
	*websocket.Conn
	shard    *shard
	sequence atomic.Int64
	awaited  atomic.Bool // a heartbeat was sent and not acknowledged yet
	interval time.Duration
	taken    *time.Timer   // ends the connection unless the session is taken up
	asked    *rate.Limiter // heartbeats that the server asked for; all sends together are limited

	mu   sync.Mutex // writes
	once sync.Once
	why  error // why it was closed from our side
}

// connect opens a connection and receives until it ends.
func (s *shard) connect(ctx context.Context) error {
	c, err := s.dial(ctx)
	if err != nil {
		return err
	}
	over := make(chan struct{})
	var beats sync.WaitGroup
	beats.Go(func() { c.watch(ctx, over) })
	err = c.begin(ctx)
	if err == nil {
		beats.Go(func() { c.beat(over) })
		err = c.receive()
	}
	c.shut(closeResume, err)
	if c.taken != nil {
		c.taken.Stop()
	}
	close(over)
	beats.Wait()
	s.session.Sequence = c.sequence.Load()
	if c.why != nil {
		return c.why
	}
	return err
}

func (s *shard) dial(ctx context.Context) (*conn, error) {
	address := s.session.Resume
	if s.session.ID == "" || address == "" {
		e, err := s.gateway.entry(ctx)
		if err != nil {
			return nil, err
		}
		address = e.URL
	}
	u, err := url.Parse(address)
	if err != nil {
		return nil, fmt.Errorf("gateway address: %w", err)
	}
	u.RawQuery = "v=10&encoding=json"
	ctx, cancel := context.WithTimeout(ctx, s.gateway.o.Times.Greet)
	defer cancel()
	dialer := websocket.Dialer{Proxy: http.ProxyFromEnvironment, HandshakeTimeout: s.gateway.o.Times.Greet}
	ws, resp, err := dialer.DialContext(ctx, u.String(), nil)
	if err != nil {
		if resp != nil {
			resp.Body.Close()
		}
		if s.missed++; s.missed >= maxMissed {
			s.session.Resume = "" // the session may still be known at the front door
		}
		return nil, fmt.Errorf("connecting to the gateway: %w", err)
	}
	s.missed = 0
	ws.SetReadLimit(maxFrame)
	c := &conn{Conn: ws, shard: s, asked: rate.NewLimiter(1, 30)}
	c.sequence.Store(s.session.Sequence)
	return c, nil
}

// watch closes the connection when ctx ends.
func (c *conn) watch(ctx context.Context, over <-chan struct{}) {
	select {
	case <-over:
	case <-ctx.Done():
		code := closeResume
		if c.shard.gateway.goodbye {
			code = websocket.CloseNormalClosure
		}
		c.shut(code, ctx.Err())
	}
}

// shut ends the connection once; the first reason stays.
func (c *conn) shut(code int, why error) {
	c.once.Do(func() {
		c.why = why
		_ = c.WriteControl(websocket.CloseMessage, websocket.FormatCloseMessage(code, ""), time.Now().Add(time.Second))
		_ = c.Close() // the other side may be gone already
	})
}

// begin takes the server's greeting and resumes the session, or begins one.
func (c *conn) begin(ctx context.Context) error {
	s, g := c.shard, c.shard.gateway
	_ = c.SetReadDeadline(time.Now().Add(g.o.Times.Greet))
	var hello frame
	if err := c.ReadJSON(&hello); err != nil {
		return fmt.Errorf("waiting for the greeting: %w", err)
	}
	var d struct {
		Interval int `json:"heartbeat_interval"` // ms
	}
	if hello.Op != opHello || json.Unmarshal(hello.Data, &d) != nil || d.Interval <= 0 {
		return errors.New("the server did not greet")
	}
	c.interval = time.Duration(d.Interval) * time.Millisecond
	_ = c.SetReadDeadline(time.Time{}) // from here on a missing acknowledgement tells
	if s.session.ID != "" {
		c.expectTaken()
		return c.send(opResume, map[string]any{"token": string(g.client.token), "session_id": s.session.ID, "seq": c.sequence.Load()})
	}
	return c.identify(ctx)
}

func (c *conn) identify(ctx context.Context) error {
	s, g := c.shard, c.shard.gateway
	done, err := g.turn(ctx, s.id)
	if err != nil {
		return err
	}
	// The place in the queue is held until the platform takes the next one, also
	// when this connection breaks meanwhile.
	g.starts.Go(func() {
		_ = sleep(ctx, g.o.Times.Between)
		done()
	})
	s.session.Begun, s.session.Failures = time.Now(), s.session.Failures+1
	if err := g.o.Sessions.KeepSession(ctx, s.name(), s.session); err != nil {
		s.log.Warn("session start cannot be noted", "error", err)
	}
	intents := discordgo.IntentGuildMessages | discordgo.IntentDirectMessages
	if g.o.Listen {
		intents |= discordgo.IntentMessageContent
	}
	c.sequence.Store(0)
	c.expectTaken()
	return c.send(opIdentify, map[string]any{
		"token":      string(g.client.token),
		"intents":    int(intents),
		"shard":      [2]int{s.id, s.count},
		"properties": map[string]string{"os": "linux", "browser": "counterhand", "device": "counterhand"},
	})
}

func (c *conn) expectTaken() {
	c.taken = time.AfterFunc(c.shard.gateway.o.Times.Greet, func() { c.shut(closeResume, errIgnored) })
}

// beat sends heartbeats, the first at a random moment of the interval, and
// closes the connection when one stays without an answer.
func (c *conn) beat(over <-chan struct{}) {
	wait := rand.N(c.interval)
	for {
		timer := time.NewTimer(wait)
		select {
		case <-over:
			timer.Stop()
			return
		case <-timer.C:
		}
		if c.awaited.Swap(true) {
			c.shut(closeResume, errZombie)
			return
		}
		if err := c.heartbeat(); err != nil {
			c.shut(closeResume, err)
			return
		}
		wait = c.interval
	}
}

func (c *conn) heartbeat() error {
	if n := c.sequence.Load(); n > 0 {
		return c.send(opHeartbeat, n)
	}
	return c.send(opHeartbeat, nil)
}

func (c *conn) send(op int, data any) error {
	c.mu.Lock()
	defer c.mu.Unlock()
	_ = c.SetWriteDeadline(time.Now().Add(5 * time.Second))
	return c.WriteJSON(map[string]any{"op": op, "d": data})
}

// receive handles frames until the connection ends.
func (c *conn) receive() error {
	for {
		_, data, err := c.ReadMessage()
		if err != nil {
			return err
		}
		var f frame
		if err := json.Unmarshal(data, &f); err != nil {
			c.shard.log.Warn("unreadable frame from the chat platform", "bytes", len(data))
			continue
		}
		if err := c.handle(f); err != nil {
			return err
		}
	}
}

func (c *conn) handle(f frame) error {
	switch f.Op {
	case opEvent:
		c.taken.Stop()
		c.shard.hand(f)
		if f.Sequence > c.sequence.Load() {
			c.sequence.Store(f.Sequence)
		}
	case opHeartbeat:
		if c.asked.Allow() {
			return c.heartbeat()
		}
	case opAcknowledged:
		c.awaited.Store(false)
	case opReconnect:
		return errReconnect
	case opInvalidSession:
		var resumable bool
		if json.Unmarshal(f.Data, &resumable) == nil && resumable {
			return errReconnect
		}
		return errInvalid
	}
	return nil
}
