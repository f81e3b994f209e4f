package sqlstore

import (
	"context"
	"database/sql"
	"errors"
	"time"

	"counterhand/bot"
)

const (
	// A row is locked by its key, so one must be there before the lease was
	// ever held. It is never deleted: its token must go on growing.
	reserveLease = `INSERT INTO leases (name, holder, token, expires, ttl) VALUES ($1, '', 0, 0, 0) ON CONFLICT DO NOTHING`
	lockLease    = `SELECT token, expires, ttl FROM leases WHERE name = $1`
	takeLease    = `UPDATE leases SET holder = $1, token = $2, expires = $3, ttl = $4 WHERE name = $5`
	extendLease  = `UPDATE leases SET expires = $1, ttl = $2 WHERE name = $3`
	freeLease    = `UPDATE leases SET expires = 0 WHERE name = $1 AND token = $2`
)

type leaseRow struct {
	token        int64
	expires, ttl int64 // milliseconds
}

// lockLease reads the lease and the clock while nobody else can change the lease.
func (s *Store) lockLease(ctx context.Context, tx *sql.Tx, name string) (row leaseRow, now int64, err error) {
	err = tx.QueryRowContext(ctx, lockLease+s.dialect.ForUpdate, name).Scan(&row.token, &row.expires, &row.ttl)
	if err != nil {
		return row, 0, err
	}
	// After the lock, not with it: waiting for the lock takes time.
	clock, err := s.dialect.Now(ctx, tx)
	return row, clock.UnixMilli(), err
}

// Acquire implements [bot.LeaseStore].
func (s *Store) Acquire(ctx context.Context, name, holder string, ttl time.Duration) (bot.Lease, error) {
	var lease bot.Lease
	held := false
	err := s.transact(ctx, func(tx *sql.Tx) error {
		if _, err := tx.ExecContext(ctx, reserveLease, name); err != nil {
			return err
		}
		row, now, err := s.lockLease(ctx, tx, name)
		if err != nil {
			return err
		}
		held = row.expires > now
		if held {
			if latest := now + row.ttl; row.expires > latest { // the clock went back
				_, err = tx.ExecContext(ctx, extendLease, latest, row.ttl, name)
			}
			return err
		}
		lease = bot.Lease{Name: name, Holder: holder, Token: row.token + 1, Expires: fromMillis(now + ttl.Milliseconds())}
		_, err = tx.ExecContext(ctx, takeLease, holder, lease.Token, lease.Expires.UnixMilli(), ttl.Milliseconds(), name)
		return err
	})
	switch {
	case err != nil:
		return bot.Lease{}, err
	case held:
		return bot.Lease{}, bot.ErrLeaseHeld
	}
	return lease, nil
}

// Renew implements [bot.LeaseStore].
func (s *Store) Renew(ctx context.Context, l bot.Lease, ttl time.Duration) (bot.Lease, error) {
	err := s.transact(ctx, func(tx *sql.Tx) error {
		row, now, err := s.lockLease(ctx, tx, l.Name)
		if errors.Is(err, sql.ErrNoRows) {
			return bot.ErrLeaseLost
		}
		if err != nil {
			return err
		}
		if row.token != l.Token || row.expires <= now {
			return bot.ErrLeaseLost
		}
		l.Expires = fromMillis(now + ttl.Milliseconds())
		_, err = tx.ExecContext(ctx, extendLease, l.Expires.UnixMilli(), ttl.Milliseconds(), l.Name)
		return err
	})
	if err != nil {
		return bot.Lease{}, err
	}
	return l, nil
}

// Release implements [bot.LeaseStore].
func (s *Store) Release(ctx context.Context, l bot.Lease) error {
	return s.transact(ctx, func(tx *sql.Tx) error {
		_, err := tx.ExecContext(ctx, freeLease, l.Name, l.Token)
		return err
	})
}
