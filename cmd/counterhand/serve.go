package main

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net/http"
	"os"
	"os/signal"
	"syscall"

	"github.com/spf13/cobra"
	"golang.org/x/sync/errgroup"

	"counterhand/bot"
)

func newServe(std streams, o *options) *cobra.Command {
	return &cobra.Command{
		Use:   "serve",
		Short: "Answer in the group chat until stopped",
		Long: `Opens every surface that the configuration has what it takes for, says what
the others lack, and runs until it is interrupted; what was taken on is still
answered. More than one process may serve on the same database.

Exit status:
  0  it was stopped
  2  wrong usage, a configuration that is not sound, or nothing to serve
  3  a fault outside: a database, the network, an account that was withdrawn`,
		Args: noArgs,
		RunE: func(c *cobra.Command, _ []string) error { return serve(c.Context(), std, o) },
	}
}

// surface is a place where people ask.
type surface struct {
	name  string
	lacks string // what the configuration must say for it; empty where it can run
	open  func(*counter) (task, error)
}

// task runs until the context ends, which is no error.
type task func(ctx context.Context) error

// counter is what the surfaces of one process share.
type counter struct {
	*house
	store  bot.Store
	engine *bot.Engine
	routes http.ServeMux // what the HTTP surface hands on
	health health        // of each surface
}

// surfaces are those that serve knows, one row each. The last one tells of the
// health of those before it.
func (h *house) surfaces() []surface {
	return []surface{
		{"the group chat", h.chatLacks(), openChat},
		{"HTTP", h.httpLacks(), openHTTP},
	}
}

// serve runs the surfaces side by side. The first that fails ends all.
func serve(ctx context.Context, std streams, o *options) error {
	h, err := newHouse(o, std, slog.LevelDebug)
	if err != nil {
		return err
	}
	var ready []surface
	for _, s := range h.surfaces() {
		if s.lacks != "" {
			fmt.Fprintf(std.err, "Not serving %s: %s.\n", s.name, s.lacks)
			continue
		}
		ready = append(ready, s)
	}
	if len(ready) == 0 {
		return usageError{errors.New("there is nothing to serve")}
	}
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM)
	defer stop()
	store, err := h.openStore(ctx)
	if err != nil {
		return err
	}
	return errors.Join(h.serveOn(ctx, store, ready), store.Close())
}

// serveOn runs the surfaces on an open store.
func (h *house) serveOn(ctx context.Context, store bot.Store, ready []surface) error {
	engine, err := h.engine(store)
	if err != nil {
		return err
	}
	c := &counter{house: h, store: store, engine: engine}
	all, ctx := errgroup.WithContext(ctx)
	all.Go(func() error {
		engine.Run(ctx)
		return nil
	})
	for _, s := range ready {
		run, err := s.open(c)
		if err != nil {
			return fmt.Errorf("%s: %w", s.name, err)
		}
		all.Go(func() error {
			if err := run(ctx); err != nil {
				return fmt.Errorf("%s: %w", s.name, err)
			}
			return nil
		})
		h.log.Info("serving", "surface", s.name)
	}
	return all.Wait()
}
