package main

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"time"
)

// Bounds of the HTTP surface. It stands behind a balancer, which has its own.
const (
	readTimeout  = 10 * time.Second
	idleTimeout  = 2 * time.Minute
	closeTimeout = 10 * time.Second
	maxHeader    = 16 << 10
)

// httpLacks says what the HTTP surface needs and does not have.
func (h *house) httpLacks() string {
	if h.config.Web.Address == "" {
		return "it needs web.address"
	}
	return ""
}

// openHTTP listens at the configured address for what the other surfaces asked
// to be routed to them, and tells at /health whether they are well.
func openHTTP(c *counter) (task, error) {
	c.routes.Handle("GET /health", &c.health)
	listener, err := net.Listen("tcp", c.config.Web.Address)
	if err != nil {
		return nil, err
	}
	server := &http.Server{
		Handler:           &c.routes,
		ReadTimeout:       readTimeout,
		ReadHeaderTimeout: readTimeout,
		IdleTimeout:       idleTimeout,
		MaxHeaderBytes:    maxHeader,
		ErrorLog:          slog.NewLogLogger(c.log.Handler(), slog.LevelWarn),
	}
	c.log.Info("listening", "address", listener.Addr().String())
	return func(ctx context.Context) error { return serveUntil(ctx, server, listener) }, nil
}

// serveUntil serves until the context ends, and then finishes what is open.
func serveUntil(ctx context.Context, server *http.Server, listener net.Listener) error {
	closed := make(chan error, 1)
	stop := context.AfterFunc(ctx, func() {
		within, cancel := context.WithTimeout(context.Background(), closeTimeout)
		defer cancel()
		closed <- server.Shutdown(within)
	})
	if err := server.Serve(listener); !errors.Is(err, http.ErrServerClosed) {
		stop()
		return err
	}
	return <-closed
}

// health asks each surface how it is. It is made while the surfaces are opened,
// and not changed afterwards.
type health []struct {
	name  string
	check func() error
}

// add has another surface asked.
func (h *health) add(name string, check func() error) {
	*h = append(*h, struct {
		name  string
		check func() error
	}{name, check})
}

// ServeHTTP says 200 where every surface is well, else 503 and which is not.
func (h *health) ServeHTTP(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	for _, surface := range *h {
		if err := surface.check(); err != nil {
			w.WriteHeader(http.StatusServiceUnavailable)
			fmt.Fprintf(w, "%s: %v\n", surface.name, err)
			return
		}
	}
	fmt.Fprintln(w, "well")
}
