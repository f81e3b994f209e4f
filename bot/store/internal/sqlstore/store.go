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
	"fmt"
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
}

// Store implements the record-keeping methods of [bot.Store]; Backup and Close
// are left to the store around it.
type Store struct {
	db      Databases
	dialect Dialect

	readSettings     *sql.Stmt
	readConversation *sql.Stmt
	saveConversation *sql.Stmt
	claim            *sql.Stmt
}

// New prepares the statements that every message needs. The schema must be there.
func New(ctx context.Context, db Databases, d Dialect) (*Store, error) {
	s := &Store{db: db, dialect: d}
	for _, p := range []struct {
		into **sql.Stmt
		on   *sql.DB
		text string
	}{
		{&s.readSettings, db.Read, readSettings},
		{&s.readConversation, db.Read, readConversation},
		{&s.saveConversation, db.Write, putConversation},
		{&s.claim, db.Write, claimMessage},
	} {
		stmt, err := p.on.PrepareContext(ctx, p.text)
		if err != nil {
			return nil, fmt.Errorf("prepare %q: %w", p.text, err)
		}
		*p.into = stmt
	}
	return s, nil
}

// Close gives the prepared statements back, not the databases.
func (s *Store) Close() error {
	return errors.Join(s.readSettings.Close(), s.readConversation.Close(), s.saveConversation.Close(), s.claim.Close())
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

// transact runs do in a transaction, again where the database asks for that.
func (s *Store) transact(ctx context.Context, db *sql.DB, do func(*sql.Tx) error) error {
	for {
		err := once(ctx, db, do)
		if err == nil || ctx.Err() != nil || !(errors.Is(err, errAgain) || s.dialect.Uncommitted(err)) {
			return s.dialect.Explain(err)
		}
	}
}

// errAgain asks for the transaction to be done again from the start.
var errAgain = errors.New("another transaction came between")

func once(ctx context.Context, db *sql.DB, do func(*sql.Tx) error) error {
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	if err := do(tx); err != nil {
		_ = tx.Rollback() // where it fails, the connection is gone, and the transaction with it
		return err
	}
	return tx.Commit()
}

// repeat does a statement again that leads to the same whether it was done once
// or twice, where the connection was lost or the database asks for it.
func (s *Store) repeat(ctx context.Context, do func() error) error {
	const attempts = 3
	var err error
	for range attempts {
		err = do()
		if err == nil || ctx.Err() != nil || !(s.dialect.Broken(err) || s.dialect.Uncommitted(err)) {
			break
		}
	}
	return s.dialect.Explain(err)
}

// snapshot runs do in a transaction that reads everything as it stood at one
// moment.
func (s *Store) snapshot(ctx context.Context, do func(*sql.Tx) error) error {
	tx, err := s.db.Read.BeginTx(ctx, s.dialect.Snapshot)
	if err != nil {
		return s.dialect.Explain(err)
	}
	defer tx.Rollback() // it only reads
	return s.dialect.Explain(do(tx))
}

func fromMillis(ms int64) time.Time { return time.UnixMilli(ms).UTC() }
