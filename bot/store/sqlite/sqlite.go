// Package sqlite keeps records in one SQLite file on this machine, without cgo.
// It is the store that needs no setting up.
//
// Several processes may use the file at once, on one machine: the file must not
// lie on a network drive. What a person was told is saved survives the machine
// losing power; open conversations and seen messages survive the process being
// killed, but the last of them may go with the machine. A damaged file is never
// overwritten: it is set aside, and a new one is made.
package sqlite

import (
	"context"
	"database/sql"
	"embed"
	"errors"
	"log/slog"
	"net/url"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"time"

	"github.com/pressly/goose/v3"
	_ "modernc.org/sqlite" // the driver "sqlite"

	"counterhand/bot"
	"counterhand/bot/store/internal/sqlstore"
)

//go:embed migrations/*.sql
var migrations embed.FS

// Store is a store in a SQLite file. Make one with [Open].
type Store struct {
	*sqlstore.Store
	path     string
	durable  *sql.DB
	cache    *settingsCache
	locks    *locks
	setAside string
	close    func() error // once
}

var _ bot.Store = (*Store)(nil)

// Option changes how a store is opened.
type Option func(*options)

type options struct {
	now func() time.Time
}

// WithClock has leases judged by another clock than the machine's.
func WithClock(now func() time.Time) Option { return func(o *options) { o.now = now } }

// Open opens the file at path; it makes the file and its folder where they are
// missing, so that only the user may read them, and brings an older file up to
// date. A damaged file is set aside, see [Store.SetAside]. The errors are
// *[FileError] where something is wrong with the file, and the shared schema
// error where a newer program wrote it.
func Open(ctx context.Context, path string, with ...Option) (*Store, error) {
	o := options{now: time.Now}
	for _, option := range with {
		option(&o)
	}
	path, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return nil, &FileError{Path: path, Problem: "its folder cannot be made", Err: err}
	}
	// One process at a time opens the file: it may be new, old or damaged.
	opening, err := lockOpening(ctx, path)
	if err != nil {
		return nil, err
	}
	defer opening.release()

	s := &Store{path: path, locks: &locks{path: path}}
	s.close = sync.OnceValue(s.giveBack)
	if err := s.open(ctx, o); err != nil {
		return nil, errors.Join(err, s.Close())
	}
	return s, nil
}

func (s *Store) open(ctx context.Context, o options) error {
	if err := s.locks.share(ctx); err != nil {
		return err
	}
	if err := s.makeSound(ctx, o.now); err != nil {
		return err
	}
	db, err := connect(s.path)
	if err != nil {
		return err
	}
	s.durable = db.Durable
	if s.cache, err = openCache(s.path); err != nil {
		return err
	}
	s.Store = sqlstore.New(db, dialect(s.path, o.now))
	return s.Ready(ctx)
}

// makeSound leaves a whole and current file at the path.
func (s *Store) makeSound(ctx context.Context, now func() time.Time) error {
	err := prepare(ctx, s.path)
	if !isDamage(err) {
		return err
	}
	aside, asideErr := s.locks.setAside(ctx, now())
	if asideErr != nil {
		return errors.Join(err, asideErr)
	}
	s.setAside = aside
	slog.Error("the file of records was damaged; it is set aside and a new one is made", "file", s.path, "aside", aside, "err", err)
	return prepare(ctx, s.path)
}

// prepare makes the file if it is missing, checks it and brings it up to date.
func prepare(ctx context.Context, path string) error {
	if err := create(path); err != nil {
		return err
	}
	db, err := sql.Open("sqlite", dsn(path, immediate, "synchronous(FULL)"))
	if err != nil {
		return err
	}
	db.SetMaxOpenConns(1)
	err = check(ctx, db)
	if err == nil {
		// The opening lock keeps other processes from migrating at the same time.
		err = sqlstore.Migrate(ctx, db, goose.DialectSQLite3, migrations)
	}
	return explain(path, errors.Join(err, db.Close()))
}

// create makes an empty file that only the user may read: SQLite would let the
// group and others read it, and gives its own side files the same rights.
func create(path string) error {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600)
	if errors.Is(err, os.ErrExist) {
		return nil
	}
	if err != nil {
		return &FileError{Path: path, Problem: "it cannot be made", Err: err}
	}
	return f.Close()
}

// check looks for damage, and whether the file can be written.
func check(ctx context.Context, db *sql.DB) error {
	var verdict string
	if err := db.QueryRowContext(ctx, "PRAGMA quick_check(1)").Scan(&verdict); err != nil {
		return err
	}
	if verdict != "ok" {
		return &damageError{verdict}
	}
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	// On a file that can only be read a transaction begins all the same; it is
	// the first write that fails.
	_, err = tx.ExecContext(ctx, "PRAGMA user_version = 1")
	return errors.Join(err, tx.Rollback())
}

// How a transaction begins: with the right to write, or with none until it writes.
const (
	immediate = "immediate"
	deferred  = "deferred"
)

// dsn is the connection string. All settings belong in it, because the pool
// opens connections by itself.
func dsn(path, txlock string, pragmas ...string) string {
	q := url.Values{
		"_txlock": {txlock},
		"_pragma": append([]string{
			"busy_timeout(5000)",
			"journal_mode(WAL)",
			"secure_delete(ON)", // what a person asked to forget is overwritten
		}, pragmas...),
	}
	u := url.URL{Scheme: "file", Opaque: (&url.URL{Path: filepath.ToSlash(path)}).EscapedPath(), RawQuery: q.Encode()}
	return u.String()
}

// connect opens the pools. There is one connection for each way to write, as
// SQLite has one writer at a time and Go's queue is fairer than its own.
func connect(path string) (db sqlstore.Databases, err error) {
	for _, pool := range []struct {
		into *(*sql.DB)
		dsn  string
		size int
	}{
		{&db.Read, dsn(path, deferred, "query_only(ON)"), runtime.GOMAXPROCS(0) + 2},
		{&db.Write, dsn(path, immediate, "synchronous(NORMAL)"), 1},
		{&db.Durable, dsn(path, immediate, "synchronous(FULL)"), 1},
	} {
		opened, err := sql.Open("sqlite", pool.dsn)
		if err != nil {
			return db, err
		}
		opened.SetMaxOpenConns(pool.size)
		opened.SetMaxIdleConns(pool.size)
		*pool.into = opened
	}
	return db, nil
}

// SetAside is where a damaged file was put when the store was opened, and empty
// where the file was sound.
func (s *Store) SetAside() string { return s.setAside }

// Close implements [bot.Store].
func (s *Store) Close() error { return s.close() }

func (s *Store) giveBack() error {
	var errs []error
	if s.Store != nil {
		errs = append(errs, s.Store.Close())
	}
	if s.cache != nil {
		errs = append(errs, s.cache.close())
	}
	return errors.Join(append(errs, s.locks.release())...)
}

// Backup implements [bot.TransferStore]: it writes a SQLite file, which can be
// opened like any other.
func (s *Store) Backup(ctx context.Context, path string) error {
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return &FileError{Path: path, Problem: "it cannot be made", Err: err}
	}
	// SQLite writes into an empty file, but leaves it to others to have it on
	// the disk for sure.
	err = s.copyTo(ctx, path)
	if err == nil {
		err = f.Sync()
	}
	err = errors.Join(err, f.Close())
	if err != nil {
		return errors.Join(explain(path, err), os.Remove(path))
	}
	return nil
}

func (s *Store) copyTo(ctx context.Context, path string) error {
	// A connection of its own, for a long copy must keep nobody waiting.
	db, err := sql.Open("sqlite", dsn(s.path, deferred))
	if err != nil {
		return err
	}
	_, err = db.ExecContext(ctx, "VACUUM INTO $1", path)
	return errors.Join(err, db.Close())
}

func dialect(path string, now func() time.Time) sqlstore.Dialect {
	never := func(error) bool { return false } // the file is not at the other end of a wire
	return sqlstore.Dialect{
		Migrate:     func(context.Context) error { return nil }, // done before, under the opening lock
		Snapshot:    &sql.TxOptions{ReadOnly: true},
		Now:         func(context.Context, *sql.Tx) (time.Time, error) { return now(), nil },
		Uncommitted: never, // SQLite itself waits for other writers
		Broken:      never,
		Reconnect:   func() {},
		Explain:     func(err error) error { return explain(path, err) },
	}
}
