//go:build unix

package postgres_test

import (
	"context"
	"errors"
	"fmt"
	"net"
	"net/url"
	"os"
	"os/exec"
	"os/user"
	"path/filepath"
	"strconv"
	"sync"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"github.com/jackc/pgx/v5"
	"github.com/stretchr/testify/require"
)

// The tests use the server that this variable names (its user must be allowed to
// make schemas in its database), or start one of this machine's own binaries on a loopback port.
const serverVariable = "COUNTERHAND_TEST_POSTGRES"

// A test binary that is started with this variable set plays a part in a test
// instead of running the tests.
const partVariable = "COUNTERHAND_TEST_PART"

func TestMain(m *testing.M) {
	if part := os.Getenv(partVariable); part != "" {
		os.Exit(play(part))
	}
	code := m.Run()
	if own.process != nil {
		own.stop()
	}
	os.Exit(code)
}

// server is a PostgreSQL server that the tests started.
type server struct {
	process *exec.Cmd
	folder  string
	url     string
}

var (
	own       server
	serverURL = sync.OnceValues(findServer)
	schemas   atomic.Int32
)

// newDatabase makes an empty database and returns its URL.
func newDatabase(t testing.TB) string {
	t.Helper()
	base, err := serverURL()
	if errors.Is(err, exec.ErrNotFound) {
		if os.Getenv("COUNTERHAND_TEST_ALL") == "1" {
			t.Fatalf("no PostgreSQL server to test with: %v", err)
		}
		t.Skipf("no PostgreSQL server to test with: set %s, or install the server (%v)", serverVariable, err)
	}
	require.NoError(t, err)

	// A schema of its own is as good as a database, and made much faster.
	schema := fmt.Sprintf("counterhand_test_%d_%d", os.Getpid(), schemas.Add(1))
	execute(t, base, "CREATE SCHEMA "+schema)
	t.Cleanup(func() { execute(t, base, "DROP SCHEMA "+schema+" CASCADE") })

	u, err := url.Parse(base)
	require.NoError(t, err)
	q := u.Query()
	q.Set("search_path", schema)
	u.RawQuery = q.Encode()
	return u.String()
}

// execute runs one statement.
func execute(t testing.TB, url, statement string) {
	t.Helper()
	ctx := context.Background() // also after the test's own has ended
	conn, err := pgx.Connect(ctx, url)
	require.NoError(t, err)
	_, err = conn.Exec(ctx, statement)
	require.NoError(t, err)
	require.NoError(t, conn.Close(ctx))
}

func findServer() (string, error) {
	if given := os.Getenv(serverVariable); given != "" {
		return given, nil
	}
	err := own.start()
	return own.url, err
}

// binary finds a program of the server, also where Debian keeps them out of the path.
func binary(name string) (string, error) {
	if places, err := filepath.Glob("/usr/lib/postgresql/*/bin/" + name); err == nil && len(places) > 0 {
		return places[len(places)-1], nil
	}
	return exec.LookPath(name)
}

func (s *server) start() error {
	initdb, err := binary("initdb")
	if err != nil {
		return err
	}
	postgres, err := binary("postgres")
	if err != nil {
		return err
	}
	if s.folder, err = os.MkdirTemp("", "counterhand-postgres-"); err != nil {
		return err
	}
	credential, err := unprivileged(s.folder)
	if err != nil {
		return err
	}
	init := exec.CommandContext(context.Background(), initdb, "-D", s.folder, "-U", "counterhand", "--auth=trust", "--no-sync", "--encoding=UTF8", "--locale=C")
	init.SysProcAttr = credential
	init.Dir = s.folder
	if out, err := init.CombinedOutput(); err != nil {
		return fmt.Errorf("initdb: %w\n%s", err, out)
	}
	port, err := freePort()
	if err != nil {
		return err
	}
	// Without fsync: what is tested is processes and connections that die, not machines.
	s.process = exec.CommandContext(context.Background(), postgres, "-D", s.folder, "-h", "127.0.0.1", "-p", strconv.Itoa(port), "-k", "", "-F")
	s.process.SysProcAttr = credential
	s.process.Dir = s.folder
	log, err := os.Create(filepath.Join(s.folder, "server.log"))
	if err != nil {
		return err
	}
	s.process.Stdout, s.process.Stderr = log, log
	if err := errors.Join(s.process.Start(), log.Close()); err != nil {
		return err
	}
	s.url = fmt.Sprintf("postgres://counterhand@127.0.0.1:%d/postgres?sslmode=disable", port)
	return awaitServer(s.url)
}

func (s *server) stop() {
	_ = s.process.Process.Signal(syscall.SIGINT) // a fast shutdown
	_ = s.process.Wait()
	_ = os.RemoveAll(s.folder)
}

// unprivileged gives the folder to a user that the server agrees to run as: it
// refuses the superuser.
func unprivileged(folder string) (*syscall.SysProcAttr, error) {
	if os.Geteuid() != 0 {
		return &syscall.SysProcAttr{}, nil
	}
	for _, name := range []string{"postgres", "nobody"} {
		u, err := user.Lookup(name)
		if err != nil {
			continue
		}
		uid, err := strconv.ParseUint(u.Uid, 10, 32)
		if err != nil {
			return nil, err
		}
		gid, err := strconv.ParseUint(u.Gid, 10, 32)
		if err != nil {
			return nil, err
		}
		if err := os.Chown(folder, int(uid), int(gid)); err != nil {
			return nil, err
		}
		return &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: uint32(uid), Gid: uint32(gid)}}, nil
	}
	return nil, fmt.Errorf("no user to run the server as: %w", exec.ErrNotFound)
}

func freePort() (int, error) {
	l, err := (&net.ListenConfig{}).Listen(context.Background(), "tcp", "127.0.0.1:0")
	if err != nil {
		return 0, err
	}
	return l.Addr().(*net.TCPAddr).Port, l.Close()
}

func awaitServer(url string) error {
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	for {
		conn, err := pgx.Connect(ctx, url)
		if err == nil {
			return conn.Close(ctx)
		}
		if ctx.Err() != nil {
			return err
		}
	}
}
