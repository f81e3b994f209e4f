package discord

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net/http"
	"time"

	lru "github.com/hashicorp/golang-lru/v2"
	"golang.org/x/sync/errgroup"

	"counterhand/bot"
	"counterhand/bot/discord/link"
	"counterhand/commands"
	"counterhand/commands/scene"
)

// ErrRevoked says that the platform no longer accepts the token.
var ErrRevoked = link.ErrRevoked

// Store is what the surface keeps: rules of channels and where connections
// stood, among the settings; and leases. Of conversations it asks when they
// were last answered.
type Store interface {
	bot.SettingsStore
	bot.LeaseStore
	Conversation(ctx context.Context, id bot.ConversationID) (bot.Conversation, error)
}

// Config is what a surface works with. Token, Handler and Store are needed; a
// zero in any other field means its default.
type Config struct {
	Token   link.Token
	Handler bot.Handler
	Store   Store

	Draw     func(scene.Scene) ([]byte, error)             // makes PNG files; without it there are no pictures
	Print    func(commands.Reply) ([]commands.File, error) // makes what a reply has to print; without it there are no sheets
	Families []Family                                      // default Families()
	Listen   bool                                          // read messages that begin with a channel's sign; needs the message-content right
	Zone     *time.Location                                // of quiet hours where none is named; default UTC
	Now      func() time.Time                              // default time.Now
	Log      *slog.Logger                                  // default slog.Default(); never given what people wrote

	Shards   int           // over all processes; default: as many as the platform advises
	PerPeer  int           // shards that this process takes at most; default: all
	LeaseTTL time.Duration // after which another process takes over from one that died; default 10 s
	HTTPOnly bool          // interactions come to Endpoint; no connection to the gateway
	Guild    string        // register commands in this guild only, where they show at once

	Patience  time.Duration // before an answer is announced as coming later; default 1 s
	Window    time.Duration // in which a changed question is answered anew; default 15 min
	StepAge   time.Duration // in which buttons work; default 12 h
	Quota     Quota
	Workers   int           // questions answered side by side; default 64
	Waiting   int           // questions that may wait in all; default 4096
	Remember  int           // latest questions, people and channels known; default 20,000 of each
	Farewell  time.Duration // for what was taken on when the surface stops; default 10 s
	API       string        // the platform's address; default its own
	PerSecond int           // requests a second to the platform; default its limit
	Pause     time.Duration // first pause before a failed request is repeated; default 250 ms
	Times     link.Times
}

// perConversation is how many questions of one conversation may wait.
const perConversation = 8

// Surface is the account in the chat. Make it with [New]; its methods are safe
// for concurrent use.
type Surface struct {
	cfg     Config
	log     *slog.Logger
	client  *link.Client
	gateway *link.Gateway
	lanes   *link.Lanes
	quota   *quota
	rules   *ruleBook
	asked   *lru.Cache[link.MessageID, *question]
	lacks   *lru.Cache[link.ChannelID, lack]
	chains  *lru.Cache[bot.ConversationID, chain]
	base    context.Context // of the work on answers
	stop    context.CancelFunc
}

// New makes a surface. It connects in [Surface.Run].
func New(cfg Config) (*Surface, error) {
	if cfg.Token == "" || cfg.Handler == nil || cfg.Store == nil {
		return nil, errors.New("the chat needs a token, a handler and a store")
	}
	cfg = withDefaults(cfg)
	s := &Surface{cfg: cfg, log: cfg.Log}
	s.client = link.NewClient(cfg.Token, link.Options{API: cfg.API, PerSecond: cfg.PerSecond, Pause: cfg.Pause, Log: cfg.Log})
	s.gateway = link.NewGateway(s.client, s, link.GatewayOptions{
		Listen:   cfg.Listen,
		Shards:   cfg.Shards,
		PerPeer:  cfg.PerPeer,
		Sessions: sessions{cfg.Store, cfg.Now},
		Leases:   leases{cfg.Store, cfg.LeaseTTL, cfg.Log},
		Times:    cfg.Times,
		Log:      cfg.Log,

		Remembers: cfg.Remember,
	})
	s.base, s.stop = context.WithCancel(context.Background())
	var errs [5]error
	s.quota, errs[0] = newQuota(cfg.Quota, cfg.Remember, cfg.Now)
	s.rules, errs[1] = newRuleBook(cfg.Store, cfg.Remember, cfg.Now)
	s.asked, errs[2] = lru.New[link.MessageID, *question](cfg.Remember)
	s.lacks, errs[3] = lru.New[link.ChannelID, lack](cfg.Remember)
	s.chains, errs[4] = lru.New[bot.ConversationID, chain](cfg.Remember)
	if err := errors.Join(errs[:]...); err != nil {
		return nil, fmt.Errorf("memory of the chat: %w", err)
	}
	s.lanes = link.NewLanes(cfg.Workers, perConversation, cfg.Waiting, cfg.Log)
	return s, nil
}

func withDefaults(cfg Config) Config {
	setDefault(&cfg.Zone, time.UTC)
	setDefault(&cfg.LeaseTTL, 10*time.Second)
	setDefault(&cfg.Patience, time.Second)
	setDefault(&cfg.Window, 15*time.Minute)
	setDefault(&cfg.StepAge, 12*time.Hour)
	setDefault(&cfg.Workers, 64)
	setDefault(&cfg.Waiting, 4096)
	setDefault(&cfg.Remember, 20_000)
	setDefault(&cfg.Farewell, 10*time.Second)
	if cfg.Families == nil {
		cfg.Families = Families()
	}
	if cfg.Now == nil {
		cfg.Now = time.Now
	}
	if cfg.Log == nil {
		cfg.Log = slog.Default()
	}
	return cfg
}

func setDefault[T comparable](field *T, value T) {
	var zero T
	if *field == zero {
		*field = value
	}
}

// Run registers the commands, connects and answers until ctx ends, which is no
// error, or until the platform says that going on is useless: then the error is
// [ErrRevoked] or a *link.Stopped. It can be called once.
func (s *Surface) Run(ctx context.Context) error {
	group, ctx := errgroup.WithContext(ctx)
	group.Go(func() error { return s.register(ctx) })
	group.Go(func() error {
		select {
		case <-s.client.Revoked():
			return ErrRevoked
		case <-ctx.Done():
			return nil
		}
	})
	if !s.cfg.HTTPOnly {
		group.Go(func() error { return s.gateway.Run(ctx) })
	}
	err := group.Wait()
	return errors.Join(err, s.finish())
}

// finish answers what was taken on, within the farewell.
func (s *Surface) finish() error {
	ctx, cancel := context.WithTimeout(context.Background(), s.cfg.Farewell)
	defer cancel()
	defer s.stop()
	if err := s.lanes.Close(ctx); err != nil {
		return fmt.Errorf("%d questions could not be answered before the end: %w", s.lanes.Waiting(), err)
	}
	return nil
}

// register brings the platform's list of our commands up to date. A fault here
// is no reason to leave people without answers to what they write.
func (s *Surface) register(ctx context.Context) error {
	changed, err := s.client.Register(ctx, link.GuildID(s.cfg.Guild), Definitions(s.cfg.Families))
	switch {
	case errors.Is(err, ErrRevoked):
		return err
	case err != nil && ctx.Err() == nil:
		s.log.Error("slash commands cannot be registered", "error", err)
	case changed:
		s.log.Info("slash commands are registered anew")
	}
	return nil
}

// Endpoint receives interactions by HTTP, signed for the application's public
// key. It works while Run does.
func (s *Surface) Endpoint(publicKey string) (http.Handler, error) {
	return link.NewEndpoint(publicKey, s.Used)
}

// Health reports what is wrong with the connection, or nil.
func (s *Surface) Health() error {
	select {
	case <-s.client.Revoked():
		return ErrRevoked
	default:
	}
	for id, state := range s.gateway.States() {
		if state == link.Connecting {
			return fmt.Errorf("chat shard %d is not connected", id)
		}
	}
	return nil
}
