package sqlstore

import (
	"context"
	"database/sql"
	"time"

	"counterhand/bot"
)

const (
	// The update changes nothing: it makes RETURNING give the row that was
	// there before, in one statement.
	claimMessage = `INSERT INTO seen (id, claimant, at) VALUES ($1, $2, $3)
		ON CONFLICT (id) DO UPDATE SET claimant = seen.claimant RETURNING claimant`
	putSeen = `INSERT INTO seen (id, claimant, at) VALUES ($1, $2, $3)
		ON CONFLICT (id) DO UPDATE SET claimant = excluded.claimant, at = excluded.at`
	allSeen = `SELECT id, claimant, at FROM seen ORDER BY id`
)

var seenKind = kind{
	export: exportSeen,
	put: func(ctx context.Context, tx *sql.Tx, r bot.Record) (bool, error) {
		if r.Seen == nil {
			return false, nil
		}
		_, err := tx.ExecContext(ctx, putSeen, string(r.Seen.ID), r.Seen.Claimant, r.Seen.At.UnixMilli())
		return true, err
	},
	newest: `SELECT MAX(at) FROM seen`,
	sweep:  `DELETE FROM seen WHERE id IN (SELECT id FROM seen WHERE at < $1 LIMIT $2)`,
	keep:   func(r bot.Retention, s *bot.Swept) (time.Duration, *int) { return r.Seen, &s.Seen },
}

// Claim implements [bot.SeenStore].
func (s *Store) Claim(ctx context.Context, id bot.MessageID, claimant string, now time.Time) (bool, error) {
	var owner string
	err := s.repeat(ctx, func(st *statements) error {
		return st.claim.queryRow(ctx, string(id), claimant, now.UnixMilli()).Scan(&owner)
	})
	return owner == claimant && err == nil, err
}

func exportSeen(ctx context.Context, tx *sql.Tx, yield func(bot.Record) error) error {
	rows, err := tx.QueryContext(ctx, allSeen)
	if err != nil {
		return err
	}
	return eachRow(rows, func() error {
		var (
			id, claimant string
			at           int64
		)
		if err := rows.Scan(&id, &claimant, &at); err != nil {
			return err
		}
		return yield(bot.Record{Seen: &bot.SeenRecord{ID: bot.MessageID(id), Claimant: claimant, At: fromMillis(at)}})
	})
}
