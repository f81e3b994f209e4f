//go:build linux

package sqlite_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/sqlite"
)

// TestDiskFull fills a small disk of the test's own, with the store on it.
func TestDiskFull(t *testing.T) {
	cmd := child(t, itself(t), "fill the disk", t.TempDir())
	// A namespace of its own, where the child may mount a disk that nobody else
	// sees and that is gone with the child.
	cmd.SysProcAttr = &syscall.SysProcAttr{
		Cloneflags:  syscall.CLONE_NEWUSER | syscall.CLONE_NEWNS,
		UidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getuid(), Size: 1}},
		GidMappings: []syscall.SysProcIDMap{{ContainerID: 0, HostID: os.Getgid(), Size: 1}},
	}
	out, err := cmd.Output()
	if cmd.Process == nil || cmd.ProcessState.ExitCode() == cannotMount {
		skipOrFail(t, fmt.Sprintf("this machine lets no test mount a small disk: %v", err))
	}
	require.NoError(t, err, "%s", out)
	assert.Contains(t, string(out), "the disk is full: nothing more can be saved until there is room")
}

const cannotMount = 3

// skipOrFail skips the test, unless every test was asked for.
func skipOrFail(t *testing.T, reason string) {
	t.Helper()
	if os.Getenv("COUNTERHAND_TEST_ALL") == "1" {
		t.Fatal(reason)
	}
	t.Skip(reason)
}

// fillTheDisk writes until the disk is full, looks at what is left, makes room
// and goes on.
func fillTheDisk(folder string) int {
	if err := syscall.Mount("none", folder, "tmpfs", 0, "size=2m"); err != nil {
		return cannotMount
	}
	// What lies beside the file gives way later.
	ballast := filepath.Join(folder, "ballast")
	if err := os.WriteFile(ballast, make([]byte, 1<<20), 0o600); err != nil {
		return report(err)
	}
	ctx := context.Background()
	path := filepath.Join(folder, "records.db")
	s, err := sqlite.Open(ctx, path)
	if err != nil {
		return report(err)
	}
	saved := 0
	for err == nil {
		if err = saveFilling(ctx, s, saved); err == nil {
			saved++
		}
	}
	fmt.Println(err)

	var file *sqlite.FileError
	if !errors.As(err, &file) || saved == 0 {
		return report(fmt.Errorf("not told of a full disk after %d writes: %w", saved, err))
	}
	if err := checkFilling(ctx, s, saved); err != nil {
		return report(err)
	}
	// It stays that way until there is room.
	if err := saveFilling(ctx, s, saved); !errors.As(err, &file) {
		return report(fmt.Errorf("a second write to the full disk: %w", err))
	}
	if err := os.Remove(ballast); err != nil {
		return report(err)
	}
	if err := saveFilling(ctx, s, saved); err != nil {
		return report(fmt.Errorf("with room again: %w", err))
	}
	if err := s.Close(); err != nil {
		return report(err)
	}
	if s, err = sqlite.Open(ctx, path); err != nil {
		return report(err)
	}
	if err := errors.Join(checkFilling(ctx, s, saved+1), s.Close()); err != nil || s.SetAside() != "" {
		return report(fmt.Errorf("opened again, %q set aside: %w", s.SetAside(), err))
	}
	return 0
}

var filling = json.RawMessage(`{"filling":"` + strings.Repeat("x", 10_000) + `"}`)

func fillingOwner(n int) bot.Owner { return bot.Owner{Scope: bot.ScopePerson, ID: fmt.Sprint(n)} }

func saveFilling(ctx context.Context, s bot.Store, n int) error {
	return s.ChangeSettings(ctx, fillingOwner(n), time.Now(), func(json.RawMessage) (json.RawMessage, error) { return filling, nil })
}

func checkFilling(ctx context.Context, s bot.Store, saved int) error {
	for n := range saved {
		found, err := s.Settings(ctx, fillingOwner(n))
		if err != nil {
			return err
		}
		if string(found[fillingOwner(n)].Document) != string(filling) {
			return fmt.Errorf("write %d of %d is not there", n, saved)
		}
	}
	return nil
}

// openAndReport opens a store and says what came of it.
func openAndReport(path string) int {
	s, err := sqlite.Open(context.Background(), path)
	if err != nil {
		fmt.Println(err)
		return 0
	}
	fmt.Println("opened")
	if err := s.Close(); err != nil {
		return report(err)
	}
	return 0
}

// TestRights opens files as a user who may not do all that is needed. The
// superuser may do anything, so a child without such powers does it.
func TestRights(t *testing.T) {
	for _, row := range []struct {
		name    string
		prepare func(t *testing.T, folder, path string)
		want    string
	}{
		{"file that can only be read", func(t *testing.T, _, path string) {
			makeFile(t, path)
			require.NoError(t, os.Chmod(path, 0o444))
		}, "it cannot be written"},
		{"file that cannot even be read", func(t *testing.T, _, path string) {
			makeFile(t, path)
			require.NoError(t, os.Chmod(path, 0))
		}, "it cannot be opened"},
		{"folder that can only be read", func(t *testing.T, folder, path string) {
			makeFile(t, path)
			require.NoError(t, os.Chmod(folder, 0o555))
		}, "the lock beside it cannot be taken"},
		{"folder that is missing in one that can only be read", func(t *testing.T, folder, _ string) {
			require.NoError(t, os.Remove(folder))
		}, "its folder cannot be made"},
	} {
		t.Run(row.name, func(t *testing.T) {
			// Everybody may come as far as here; the test's own folder is private.
			base, err := os.MkdirTemp("", "counterhand-rights-")
			require.NoError(t, err)
			t.Cleanup(func() { assert.NoError(t, os.RemoveAll(base)) })
			require.NoError(t, os.Chmod(base, 0o755))
			program := filepath.Join(base, "program")
			copyFile(t, itself(t), program)

			folder := filepath.Join(base, "records")
			require.NoError(t, os.Mkdir(folder, 0o777))
			require.NoError(t, os.Chmod(folder, 0o777)) // whatever the umask is
			path := filepath.Join(folder, "records.db")
			row.prepare(t, folder, path)
			if os.Geteuid() != 0 {
				require.NoError(t, os.Chmod(base, 0o555))
				t.Cleanup(func() { assert.NoError(t, os.Chmod(base, 0o755)) })
			}
			before, _ := os.ReadFile(path) // nothing where there is no file

			cmd := child(t, program, "open", path)
			cmd.Dir = base
			asNobody(cmd)
			out, err := cmd.Output()
			require.NoError(t, err)
			assert.Contains(t, string(out), row.want)
			assert.Contains(t, string(out), path, "the message names the file")

			after, _ := os.ReadFile(path)
			assert.Equal(t, before, after, "the file is as it was")
		})
	}
}

// asNobody takes the superuser's powers from a command.
func asNobody(cmd *exec.Cmd) {
	const nobody = 65534
	if os.Geteuid() == 0 {
		cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	}
}

// makeFile makes a file with a record, which no process has open.
func makeFile(t *testing.T, path string) {
	t.Helper()
	s, err := sqlite.Open(t.Context(), path)
	require.NoError(t, err)
	require.NoError(t, saveFilling(t.Context(), s, 1))
	require.NoError(t, s.Close())
	for _, suffix := range []string{".opening", ".users", ".changes"} { // they are this user's own
		require.NoError(t, os.Remove(path+suffix))
	}
}

func copyFile(t *testing.T, from, to string) {
	t.Helper()
	content, err := os.ReadFile(from)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(to, content, 0o755))
}
