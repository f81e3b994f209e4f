package link

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"log/slog"
	"runtime/debug"
	"time"

	"github.com/gorilla/websocket"
)

// Operation codes of the gateway.
const (
	opEvent          = 0
	opHeartbeat      = 1
	opIdentify       = 2
	opResume         = 6
	opReconnect      = 7
	opInvalidSession = 9
	opHello          = 10
	opAcknowledged   = 11
)

// Close codes of the gateway. Those of 1000 and 1001 from our side would end the
// session, so a connection that is to be gone on with is closed with closeResume.
const (
	closeResume          = 4900
	closeAuthentication  = 4004
	closeInvalidSequence = 4007
	closeSessionTimeout  = 4009
	closeInvalidShard    = 4010
	closeDisallowed      = 4014
)

const maxFrame = 8 << 20

var (
	errReconnect = errors.New("the server asked to reconnect")
	errInvalid   = errors.New("the session is no longer valid")
	errZombie    = errors.New("a heartbeat was not acknowledged")
	errIgnored   = errors.New("the server did not take up the session in time")
)

// shard is one connection after another for one part of the guilds.
type shard struct {
	gateway   *Gateway
	id, count int
	log       *slog.Logger
	session   Session
	missed    int // attempts in a row to reach the gateway that failed
}

// maxMissed is how often the address for resuming is tried before the common one.
const maxMissed = 3

func (s *shard) name() string { return fmt.Sprintf("shard %d of %d", s.id, s.count) }

// run keeps the shard connected until ctx ends or the platform says to stop.
func (s *shard) run(ctx context.Context) error {
	g := s.gateway
	kept, err := g.o.Sessions.Session(ctx, s.name())
	if err != nil {
		s.log.Warn("earlier session cannot be read; beginning a new one", "error", err)
	}
	s.session = kept
	if kept.Self != "" {
		g.self.Store(kept.Self)
	}
	defer s.keep(ctx)
	pause := time.Duration(0)
	for {
		g.state(s.id, Connecting)
		if sleep(ctx, max(pause, s.penalty())) != nil {
			return nil
		}
		begun := time.Now()
		err := s.connect(ctx)
		if ctx.Err() != nil {
			return nil
		}
		if stop := s.settle(ctx, err); stop != nil {
			return stop
		}
		switch {
		case errors.Is(err, errReconnect):
			pause = jitter(g.o.Times.Retry / 4)
		case time.Since(begun) >= g.o.Times.Stable || pause == 0:
			pause = jitter(g.o.Times.Retry)
		default:
			pause = jitter(min(2*pause+g.o.Times.Retry, g.o.Times.Longest))
		}
		s.log.Info("chat connection ended; connecting again", "reason", err, "pause", pause)
	}
}

// penalty is how long to wait before a new session because earlier ones came to
// nothing, over restarts too.
func (s *shard) penalty() time.Duration {
	if s.session.ID != "" || s.session.Failures == 0 {
		return 0
	}
	t := s.gateway.o.Times
	wait := min(t.Retry<<min(s.session.Failures, 20), 8*t.Longest)
	return time.Until(s.session.Begun.Add(wait))
}

// settle draws the conclusions from the end of a connection: whether to stop
// for good, and whether the session is lost.
func (s *shard) settle(ctx context.Context, err error) error {
	if errors.Is(err, ErrRevoked) {
		return err
	}
	var closed *websocket.CloseError
	if errors.As(err, &closed) {
		switch c := closed.Code; {
		case c == closeAuthentication, c >= closeInvalidShard && c <= closeDisallowed:
			return &Stopped{Code: c, Reason: reason(c)}
		case c == closeInvalidSequence, c == closeSessionTimeout:
			s.forget()
		}
	}
	if errors.Is(err, errInvalid) {
		s.forget()
		_ = sleep(ctx, jitter(s.gateway.o.Times.Fresh)) // the end of ctx is seen by the loop
	}
	return nil
}

func reason(code int) string {
	switch code {
	case closeAuthentication:
		return "the token was refused"
	case closeInvalidShard:
		return "the number of shards is wrong"
	case 4011:
		return "more shards are needed"
	case closeDisallowed:
		return "the message-content right is not granted: switch it on in the application's settings, or switch listening off"
	}
	return "the connection was set up wrongly"
}

func (s *shard) forget() {
	s.session = Session{Begun: s.session.Begun, Failures: s.session.Failures}
}

// keep saves the session, also while the process is stopping.
func (s *shard) keep(ctx context.Context) {
	ctx, cancel := context.WithTimeout(context.WithoutCancel(ctx), 2*time.Second)
	defer cancel()
	if s.gateway.goodbye {
		s.session.ID = ""
	}
	if err := s.gateway.o.Sessions.KeepSession(ctx, s.name(), s.session); err != nil {
		s.log.Warn("session cannot be kept", "error", err)
	}
}

// hand gives an event to whom it concerns. A fault in there costs that event only.
func (s *shard) hand(f frame) {
	defer func() {
		if p := recover(); p != nil {
			s.log.Error("handing over an event failed", "event", f.Event, "fault", p, "stack", string(debug.Stack()))
		}
	}()
	g := s.gateway
	self, _ := g.self.Load().(UserID)
	switch f.Event {
	case "READY":
		s.ready(f.Data)
	case "RESUMED":
		s.settled()
	case "MESSAGE_CREATE":
		if m, ok := message(f.Data, self); ok && g.seen.first(string(m.ID)) {
			g.events.Written(m)
		}
	case "MESSAGE_UPDATE":
		if m, ok := message(f.Data, self); ok && !m.Edited.IsZero() && g.seen.first(string(m.ID)+m.Edited.String()) {
			g.events.Rewritten(m)
		}
	case "MESSAGE_DELETE", "MESSAGE_DELETE_BULK":
		if channel, ids := removed(f.Data); channel != "" {
			g.events.Removed(channel, ids)
		}
	case "INTERACTION_CREATE":
		if i, ok := interaction(f.Data); ok && g.seen.first(string(i.ID)) {
			g.events.Used(i)
		}
	}
}

func (s *shard) ready(data json.RawMessage) {
	var d struct {
		Session string   `json:"session_id"`
		Resume  string   `json:"resume_gateway_url"`
		User    wireUser `json:"user"`
	}
	if !decode(data, &d) || d.User.ID == "" {
		s.log.Error("the chat platform did not say who we are")
		return
	}
	s.gateway.self.Store(UserID(d.User.ID))
	s.session.ID, s.session.Resume, s.session.Self = d.Session, d.Resume, UserID(d.User.ID)
	s.settled()
}

func (s *shard) settled() {
	s.session.Failures = 0
	s.gateway.state(s.id, Connected)
	s.log.Info("connected to the chat platform")
}
