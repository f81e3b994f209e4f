package sqlstore

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io"
	"time"

	"counterhand/bot"
)

// sweepBatch is how many records are deleted in one transaction, so that a
// large sweep keeps nobody waiting.
const sweepBatch = 1000

// Forget implements [bot.PrivacyStore].
func (s *Store) Forget(ctx context.Context, person bot.PersonID) (bot.Forgotten, error) {
	var f bot.Forgotten
	err := s.transact(ctx, func(tx *sql.Tx) error {
		f = bot.Forgotten{}
		for _, k := range kinds {
			if k.forget == nil {
				continue
			}
			if err := k.forget(ctx, tx, person, &f); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return bot.Forgotten{}, err
	}
	return f, nil
}

// Sweep implements [bot.PrivacyStore].
func (s *Store) Sweep(ctx context.Context, now time.Time, keep bot.Retention) (bot.Swept, error) {
	var swept bot.Swept
	if err := s.Ready(ctx); err != nil {
		return swept, err
	}
	newest, err := s.newest(ctx)
	if err != nil {
		return swept, err
	}
	if newest.After(now.Add(bot.ClockTolerance)) {
		return swept, &bot.ClockError{Now: now, Newest: newest}
	}
	for _, k := range kinds {
		age, count := k.keep(keep, &swept)
		if age <= 0 {
			continue
		}
		if err := s.sweep(ctx, k, now.Add(-age), count); err != nil {
			return swept, err
		}
	}
	return swept, nil
}

func (s *Store) sweep(ctx context.Context, k kind, before time.Time, count *int) error {
	for {
		n, err := affected(s.db.Write.ExecContext(ctx, k.sweep, before.UnixMilli(), sweepBatch))
		*count += n
		if err != nil || n < sweepBatch {
			return s.dialect.Explain(err)
		}
	}
}

func (s *Store) newest(ctx context.Context) (time.Time, error) {
	var newest time.Time
	for _, k := range kinds {
		var at sql.NullInt64
		if err := s.db.Read.QueryRowContext(ctx, k.newest).Scan(&at); err != nil {
			return time.Time{}, s.dialect.Explain(err)
		}
		if t := fromMillis(at.Int64); at.Valid && t.After(newest) {
			newest = t
		}
	}
	return newest, nil
}

// Export implements [bot.TransferStore].
func (s *Store) Export(ctx context.Context, yield func(bot.Record) error) error {
	return s.snapshot(ctx, func(tx *sql.Tx) error {
		for _, k := range kinds {
			if err := k.export(ctx, tx, yield); err != nil {
				return err
			}
		}
		return nil
	})
}

// Import implements [bot.TransferStore]. Next is used up by the first attempt,
// so the transaction is not done again where it fails.
func (s *Store) Import(ctx context.Context, next func() (bot.Record, error)) error {
	if err := s.Ready(ctx); err != nil {
		return err
	}
	_, err := once(ctx, s.db.Durable, func(tx *sql.Tx) error {
		for {
			r, err := next()
			if errors.Is(err, io.EOF) {
				return nil
			}
			if err != nil {
				return err
			}
			if err := put(ctx, tx, r); err != nil {
				return err
			}
		}
	})
	return s.dialect.Explain(err)
}

func put(ctx context.Context, tx *sql.Tx, r bot.Record) error {
	for _, k := range kinds {
		done, err := k.put(ctx, tx, r)
		if done || err != nil {
			return err
		}
	}
	return fmt.Errorf("a record of no known kind: %+v", r)
}

// affected returns how many rows a statement changed.
func affected(result sql.Result, err error) (int, error) {
	if err != nil {
		return 0, err
	}
	n, err := result.RowsAffected()
	return int(n), err
}
