package main

import (
	"context"
	"errors"
	"fmt"
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
		Short: "Answer in the group chat and on the page, until stopped",
		Long: `Opens every surface that the configuration has what it takes for, says which
are missing what, and runs until it is interrupted.

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
	name    string
	missing string // what the configuration lacks for it; empty where it can run
	run     func(ctx context.Context, handler bot.Handler) error
}

// surfaces are those that serve knows, one row each.
func (h *house) surfaces() []surface {
	return nil
}

// serve runs the surfaces side by side. The first that fails ends all.
func serve(ctx context.Context, std streams, o *options) error {
	h, err := newHouse(o, std)
	if err != nil {
		return err
	}
	var ready []surface
	for _, s := range h.surfaces() {
		if s.missing != "" {
			fmt.Fprintf(std.err, "not serving %s: %s\n", s.name, s.missing)
			continue
		}
		ready = append(ready, s)
	}
	if len(ready) == 0 {
		return usageError{errors.New("there is nothing to serve")}
	}
	store, err := h.openStore(ctx)
	if err != nil {
		return err
	}
	engine, err := h.engine(store)
	if err != nil {
		return errors.Join(err, store.Close())
	}
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM)
	defer stop()
	all, ctx := errgroup.WithContext(ctx)
	for _, s := range ready {
		all.Go(func() error {
			if err := s.run(ctx, engine); err != nil && ctx.Err() == nil {
				return fmt.Errorf("%s: %w", s.name, err)
			}
			return nil
		})
	}
	return errors.Join(all.Wait(), store.Close())
}
