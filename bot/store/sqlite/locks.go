package sqlite

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"time"

	"github.com/gofrs/flock"
)

// Two lock files lie beside the file of records. They are separate files,
// because SQLite locks its own in ways that must not be mixed with others.
const (
	openingSuffix = ".opening" // held alone by the process that is opening the file
	usersSuffix   = ".users"   // shared by all processes that have the file open
)

// lockPause is how long to wait before another try for a lock.
const lockPause = 20 * time.Millisecond

var errInUse = errors.New("stop the other process, then start again")

type openingLock struct{ lock *flock.Flock }

// lockOpening waits until no other process is opening the file.
func lockOpening(ctx context.Context, path string) (openingLock, error) {
	lock := flock.New(path+openingSuffix, flock.SetPermissions(0o600))
	if _, err := lock.TryLockContext(ctx, lockPause); err != nil {
		return openingLock{}, &FileError{Path: path, Problem: "the lock beside it cannot be taken", Err: err}
	}
	return openingLock{lock}, nil
}

func (l openingLock) release() { _ = l.lock.Close() } // the system drops it with the process at the latest

// locks is this process's share in the use of the file.
type locks struct {
	path  string
	users *flock.Flock
}

// share says that this process has the file open.
func (l *locks) share(ctx context.Context) error {
	l.users = flock.New(l.path+usersSuffix, flock.SetPermissions(0o600))
	if _, err := l.users.TryRLockContext(ctx, lockPause); err != nil {
		return &FileError{Path: l.path, Problem: "the lock beside it cannot be taken", Err: err}
	}
	return nil
}

func (l *locks) release() error {
	if l.users == nil {
		return nil
	}
	return l.users.Close()
}

// setAside renames a damaged file and its side files to a name with the date,
// and returns the new name. It refuses while another process has the file open,
// which would go on writing to it.
func (l *locks) setAside(ctx context.Context, now time.Time) (string, error) {
	if err := l.users.Unlock(); err != nil {
		return "", err
	}
	alone, err := l.users.TryLock()
	if err != nil {
		return "", err
	}
	if !alone {
		return "", &FileError{Path: l.path, Problem: "it is damaged, and cannot be set aside while another process uses it", Err: errInUse}
	}
	aside, err := freeName(l.path + ".damaged-" + now.UTC().Format("20060102T150405Z"))
	if err != nil {
		return "", err
	}
	// The side files first: they belong to the damaged file, and would spoil a
	// new one if they were left behind.
	for _, suffix := range []string{"-wal", "-shm", ""} {
		if err := os.Rename(l.path+suffix, aside+suffix); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return "", err
		}
	}
	if err := l.users.Unlock(); err != nil {
		return "", err
	}
	return aside, l.share(ctx)
}

// freeName returns the name, with a number after it where a file of that name
// is there already.
func freeName(name string) (string, error) {
	for n, try := 2, name; ; n, try = n+1, fmt.Sprintf("%s-%d", name, n) {
		if _, err := os.Lstat(try); errors.Is(err, fs.ErrNotExist) {
			return try, nil
		} else if err != nil {
			return "", err
		}
	}
}
