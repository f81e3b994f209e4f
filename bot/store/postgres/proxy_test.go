//go:build unix

package postgres_test

import (
	"context"
	"net"
	"net/url"
	"sync"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/require"
)

// wire is a connection to the server that the test can cut.
type wire struct {
	listener net.Listener
	server   string

	left atomic.Int64 // bytes that still pass, in both directions together, before the wire is cut
	mu   sync.Mutex
	down bool
	ends map[net.Conn]bool
}

// uncut is more bytes than any test sends.
const uncut = 1 << 40

// newWire makes a wire to the server of the URL, and returns it with the URL
// that leads over it.
func newWire(t *testing.T, direct string) (*wire, string) {
	t.Helper()
	u, err := url.Parse(direct)
	require.NoError(t, err)
	l, err := (&net.ListenConfig{}).Listen(t.Context(), "tcp", "127.0.0.1:0")
	require.NoError(t, err)
	w := &wire{listener: l, server: u.Host, ends: map[net.Conn]bool{}}
	w.left.Store(uncut)
	var serving sync.WaitGroup
	serving.Go(w.serve)
	t.Cleanup(func() {
		_ = l.Close()
		w.cut()
		serving.Wait()
	})
	u.Host = l.Addr().String()
	return w, u.String()
}

func (w *wire) serve() {
	var carrying sync.WaitGroup
	defer carrying.Wait()
	for {
		client, err := w.listener.Accept()
		if err != nil {
			return
		}
		server, err := (&net.Dialer{}).DialContext(context.Background(), "tcp", w.server)
		if err != nil || !w.add(client, server) {
			_ = client.Close()
			if server != nil {
				_ = server.Close()
			}
			continue
		}
		carrying.Go(func() { w.carry(client, server) })
		carrying.Go(func() { w.carry(server, client) })
	}
}

// add takes note of a connection, unless the wire is down.
func (w *wire) add(ends ...net.Conn) bool {
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.down {
		return false
	}
	for _, end := range ends {
		w.ends[end] = true
	}
	return true
}

// carry passes bytes on until one end closes or the wire is cut.
func (w *wire) carry(to, from net.Conn) {
	defer func() { _, _ = to.Close(), from.Close() }() // where the wire was cut, they are closed
	buffer := make([]byte, 4096)
	for {
		n, err := from.Read(buffer)
		if left := w.left.Add(int64(-n)); left < 0 {
			pass := max(int64(n)+left, 0)
			_, _ = to.Write(buffer[:pass]) // as much as the cut lets through
			w.cut()
			return
		}
		if _, writeErr := to.Write(buffer[:n]); err != nil || writeErr != nil {
			return
		}
	}
}

// cut breaks all connections.
func (w *wire) cut() {
	w.mu.Lock()
	defer w.mu.Unlock()
	for end := range w.ends {
		_ = end.(*net.TCPConn).SetLinger(0) // a reset, as when a line breaks
		_ = end.Close()
	}
	clear(w.ends)
}

// setDown keeps new connections away, or lets them through again.
func (w *wire) setDown(down bool) {
	w.mu.Lock()
	w.down = down
	w.mu.Unlock()
	if down {
		w.cut()
	}
}
