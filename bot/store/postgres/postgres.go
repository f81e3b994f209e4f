// Package postgres keeps records in a PostgreSQL database, for one process or
// several. Every write survives the server losing power; leases are judged by
// the server's clock.
//
// A store that finds the server away goes on trying with each call, also at the
// start; see [Open].
package postgres

import (
	"context"
	"database/sql"
	"embed"
	"errors"
	"fmt"
	"log/slog"
	"time"

	"github.com/jackc/pgx/v5/pgxpool"
	"github.com/jackc/pgx/v5/stdlib"
	"github.com/pressly/goose/v3"
	"github.com/pressly/goose/v3/lock"

	"counterhand/bot"
	"counterhand/bot/store/internal/sqlstore"
)

//go:embed migrations/*.sql
var migrations embed.FS

// migrationLock is the advisory lock that a migrating process holds; the number
// was drawn at random, so that no other program on the same server uses it.
const migrationLock = 6_213_877_410_552_908

// Store is a store in a PostgreSQL database. Make one with [Open].
type Store struct {
	*sqlstore.Store
	pool *pgxpool.Pool
}

var _ bot.Store = (*Store)(nil)

// Open opens the database that the URL names ("postgres://user@host/database";
// the standard PG* environment variables fill in what it leaves out), and brings
// an older schema up to date; of several processes that start at once, one does
// that. Where the server is away, Open succeeds all the same, and each later
// call tries again: answers do not need the store. Whatever will not mend by
// itself is an error: a bad URL, a refused login, a missing database or right, or
// a schema that a newer program wrote.
func Open(ctx context.Context, url string) (*Store, error) {
	config, err := pgxpool.ParseConfig(url)
	if err != nil {
		return nil, fmt.Errorf("database URL: %w", err) // pgx leaves the password out
	}
	prepareConfig(config)
	pool, err := pgxpool.NewWithConfig(ctx, config)
	if err != nil {
		return nil, err
	}
	db := stdlib.OpenDBFromPool(pool)
	s := &Store{
		Store: sqlstore.New(sqlstore.Databases{Read: db, Write: db, Durable: db}, dialect(db, pool)),
		pool:  pool,
	}
	switch err := s.Ready(ctx); {
	case err == nil:
	case isAway(err):
		slog.Warn("the database is away; it is tried again with each call", "err", err)
	default:
		return nil, errors.Join(err, s.Close())
	}
	return s, nil
}

// prepareConfig sets what the URL left open.
func prepareConfig(config *pgxpool.Config) {
	for name, value := range map[string]string{
		"application_name": "counterhand",
		// A process that dies or loses its line in the middle of a transaction
		// must not keep a lease's row locked until the network notices.
		"idle_in_transaction_session_timeout": "5s",
		// The promise of durability holds whatever the server's default is.
		"synchronous_commit": "on",
	} {
		if _, set := config.ConnConfig.RuntimeParams[name]; !set {
			config.ConnConfig.RuntimeParams[name] = value
		}
	}
	if config.ConnConfig.ConnectTimeout == 0 {
		config.ConnConfig.ConnectTimeout = 5 * time.Second
	}
}

func dialect(db *sql.DB, pool *pgxpool.Pool) sqlstore.Dialect {
	return sqlstore.Dialect{
		Migrate:        func(ctx context.Context) error { return migrate(ctx, db) },
		DriverPrepares: true,
		ForUpdate:      " FOR UPDATE",
		Snapshot:       &sql.TxOptions{Isolation: sql.LevelRepeatableRead, ReadOnly: true},
		Now:            now,
		Uncommitted:    isUncommitted,
		Broken:         isBroken,
		Reconnect:      pool.Reset,
		Explain:        explain,
	}
}

func migrate(ctx context.Context, db *sql.DB) error {
	locker, err := lock.NewPostgresSessionLocker(lock.WithLockID(migrationLock), lock.WithLockTimeout(1, 60))
	if err != nil {
		return err
	}
	return sqlstore.Migrate(ctx, db, goose.DialectPostgres, migrations, goose.WithSessionLocker(locker))
}

func now(ctx context.Context, tx *sql.Tx) (t time.Time, err error) {
	err = tx.QueryRowContext(ctx, "SELECT clock_timestamp()").Scan(&t)
	return t, err
}

// Close implements [bot.Store].
func (s *Store) Close() error {
	err := s.Store.Close()
	s.pool.Close()
	return err
}

// Backup implements [bot.TransferStore]: it writes the records as they stood at
// one moment, as JSON lines that can be imported into any store.
func (s *Store) Backup(ctx context.Context, path string) error {
	return bot.ExportFile(ctx, s, path)
}
