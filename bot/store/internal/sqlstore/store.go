// Package sqlstore is what the SQL stores have in common: the statements, in the
// SQL that both databases understand, and the transactions around them. What
// differs between the databases is in [Dialect] and in the migrations, which
// each store brings along.
//
// Each kind of record has a file of its own. A new kind is a migration in both
// stores, a file here with its statements, a line in kinds, and its rows in the
// conformance suite.
package sqlstore

import (
	"context"
	"database/sql"
	"errors"
	"sync/atomic"
	"time"

	"counterhand/bot"
)

// Databases are the connections that a store works with. They may all be the
// same pool.
type Databases struct {
	Read    *sql.DB // sees every committed write
	Write   *sql.DB // commits that survive the process
	Durable *sql.DB // commits that survive the machine
}

// Dialect is what differs between the databases.
type Dialect struct {
	// Migrate connects and brings the schema up to date.
	Migrate func(context.Context) error
	// DriverPrepares says that the driver itself keeps statements prepared.
	DriverPrepares bool
	// ForUpdate ends a SELECT whose rows are to be locked until the end of the
	// transaction.
	ForUpdate string
	// Snapshot are the options of a transaction that reads everything as it
	// stood at one moment.
	Snapshot *sql.TxOptions
	// Now reads the clock by which leases are judged.
	Now func(context.Context, *sql.Tx) (time.Time, error)
	// Uncommitted reports whether a transaction that failed with the error has
	// surely left no trace and may succeed when it is done again at once.
	Uncommitted func(error) bool
	// Explain turns the database's error into one that says what is wrong
	// with what; it returns any other error as it is.
	Explain func(error) error
	// Broken reports whether the error means that the connection was lost,
	// so that nobody knows what became of the statement.
	Broken func(error) bool
	// Reconnect has every connection made anew.
	Reconnect func()
}

// Store implements the methods of [bot.Store] but Backup, which is left to the
// store around it.
type Store struct {
	db      Databases
	dialect Dialect

	opening chan struct{} // holds something while somebody opens
	opened  atomic.Pointer[statements]
}

// statements are those that every message needs.
type statements struct {
	readSettings     statement
	readConversation statement
	saveConversation statement
	claim            statement
}

// statement is text to run on a database, prepared where the driver does not
// see to that.
type statement struct {
	on       *sql.DB
	text     string
	prepared *sql.Stmt // may be nil
}

func (s statement) query(ctx context.Context, args ...any) (*sql.Rows, error) {
	if s.prepared == nil {
		return s.on.QueryContext(ctx, s.text, args...)
	}
	return s.prepared.QueryContext(ctx, args...)
}

func (s statement) queryRow(ctx context.Context, args ...any) *sql.Row {
	if s.prepared == nil {
		return s.on.QueryRowContext(ctx, s.text, args...)
	}
	return s.prepared.QueryRowContext(ctx, args...)
}

func (s statement) exec(ctx context.Context, args ...any) error {
	if s.prepared == nil {
		_, err := s.on.ExecContext(ctx, s.text, args...)
		return err
	}
	_, err := s.prepared.ExecContext(ctx, args...)
	return err
}

// New makes a store that is not connected yet: [Store.Ready] or the first call
// does that.
func New(db Databases, d Dialect) *Store {
	return &Store{db: db, dialect: d, opening: make(chan struct{}, 1)}
}

// Ready connects, brings the schema up to date and prepares statements, unless
// that was done before. Every method begins with it, so that a database that was
// away at the start is used as soon as it is there.
func (s *Store) Ready(ctx context.Context) error {
	_, err := s.ready(ctx)
	return err
}

func (s *Store) ready(ctx context.Context) (*statements, error) {
	if st := s.opened.Load(); st != nil {
		return st, nil
	}
	select {
	case s.opening <- struct{}{}:
		defer func() { <-s.opening }()
	case <-ctx.Done():
		return nil, ctx.Err()
	}
	if st := s.opened.Load(); st != nil {
		return st, nil
	}
	if err := s.dialect.Migrate(ctx); err != nil {
		return nil, s.dialect.Explain(err)
	}
	st, err := s.prepare(ctx)
	if err != nil {
		return nil, s.dialect.Explain(err)
	}
	s.opened.Store(st)
	return st, nil
}

func (s *Store) prepare(ctx context.Context) (*statements, error) {
	st := &statements{
		readSettings:     statement{on: s.db.Read, text: readSettings},
		readConversation: statement{on: s.db.Read, text: readConversation},
		saveConversation: statement{on: s.db.Write, text: putConversation},
		claim:            statement{on: s.db.Write, text: claimMessage},
	}
	if s.dialect.DriverPrepares {
		return st, nil
	}
	for _, p := range st.all() {
		prepared, err := p.on.PrepareContext(ctx, p.text)
		if err != nil {
			return nil, errors.Join(err, st.close())
		}
		p.prepared = prepared
	}
	return st, nil
}

func (st *statements) all() []*statement {
	return []*statement{&st.readSettings, &st.readConversation, &st.saveConversation, &st.claim}
}

func (st *statements) close() error {
	var errs []error
	for _, s := range st.all() {
		if s.prepared != nil {
			errs = append(errs, s.prepared.Close())
		}
	}
	return errors.Join(errs...)
}

// Close gives back the statements and the pools.
func (s *Store) Close() error {
	var errs []error
	if st := s.opened.Load(); st != nil {
		errs = append(errs, st.close())
	}
	closed := make(map[*sql.DB]bool)
	for _, db := range []*sql.DB{s.db.Read, s.db.Write, s.db.Durable} {
		if db != nil && !closed[db] {
			closed[db] = true
			errs = append(errs, db.Close())
		}
	}
	return errors.Join(errs...)
}

// kind is what the stores do with all records of one kind. The fields that make
// no sense for a kind are nil.
type kind struct {
	// export gives every record of the kind to yield.
	export func(ctx context.Context, tx *sql.Tx, yield func(bot.Record) error) error
	// put stores the record in the place of the one with its key; it reports
	// false where the record is of another kind.
	put func(ctx context.Context, tx *sql.Tx, r bot.Record) (bool, error)
	// forget deletes what belongs to the person.
	forget func(ctx context.Context, tx *sql.Tx, person bot.PersonID, f *bot.Forgotten) error
	// newest reads the time of the latest record, in milliseconds since 1970,
	// NULL where there is none.
	newest string
	// sweep deletes up to $2 records from before $1, in milliseconds since 1970.
	sweep string
	// keep finds how long records of the kind are kept, and where those that a
	// sweep deleted are counted.
	keep func(r bot.Retention, s *bot.Swept) (time.Duration, *int)
}

// kinds lists every kind of record that is kept for longer than a process.
var kinds = []kind{settingsKind, conversationKind, seenKind}

// attempts bounds how often something is done again at once.
const attempts = 3

// transact runs do in a transaction, again where that surely left no trace.
func (s *Store) transact(ctx context.Context, do func(*sql.Tx) error) error {
	if err := s.Ready(ctx); err != nil {
		return err
	}
	for failed := 0; ; {
		committing, err := once(ctx, s.db.Durable, do)
		if errors.Is(err, errAgain) && ctx.Err() == nil {
			continue
		}
		failed++
		// A connection that was lost before the commit took the transaction along.
		traceless := s.dialect.Uncommitted(err) || s.lost(err) && !committing
		if err == nil || ctx.Err() != nil || failed == attempts || !traceless {
			return s.dialect.Explain(err)
		}
	}
}

// errAgain asks for the transaction to be done again from the start, because
// another one, which was done, came between.
var errAgain = errors.New("another transaction came between")

// once runs do in a transaction, and reports whether it came as far as to commit.
func once(ctx context.Context, db *sql.DB, do func(*sql.Tx) error) (committing bool, err error) {
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		return false, err
	}
	if err := do(tx); err != nil {
		_ = tx.Rollback() // where it fails, the connection is gone, and the transaction with it
		return false, err
	}
	return true, tx.Commit()
}

// lost reports whether the error means that the connection is lost. The others
// of the pool then are as well, most likely, and are made anew.
func (s *Store) lost(err error) bool {
	if !s.dialect.Broken(err) {
		return false
	}
	s.dialect.Reconnect()
	return true
}

// repeat does a statement again that leads to the same whether it was done once
// or twice, where the connection was lost or the database asks for it.
func (s *Store) repeat(ctx context.Context, do func(*statements) error) error {
	st, err := s.ready(ctx)
	if err != nil {
		return err
	}
	for range attempts {
		err = do(st)
		if err == nil || ctx.Err() != nil || !(s.lost(err) || s.dialect.Uncommitted(err)) {
			break
		}
	}
	return s.dialect.Explain(err)
}

// snapshot runs do in a transaction that reads everything as it stood at one
// moment.
func (s *Store) snapshot(ctx context.Context, do func(*sql.Tx) error) error {
	if err := s.Ready(ctx); err != nil {
		return err
	}
	tx, err := s.db.Read.BeginTx(ctx, s.dialect.Snapshot)
	if err != nil {
		return s.dialect.Explain(err)
	}
	defer func() { _ = tx.Rollback() }() // it only reads
	return s.dialect.Explain(do(tx))
}

// eachRow calls do for every row, which scans it, and closes the rows.
func eachRow(rows *sql.Rows, do func() error) (err error) {
	defer func() { err = errors.Join(err, rows.Close()) }()
	for rows.Next() {
		if err := do(); err != nil {
			return err
		}
	}
	return rows.Err()
}

func fromMillis(ms int64) time.Time { return time.UnixMilli(ms).UTC() }
