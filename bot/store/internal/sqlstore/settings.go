package sqlstore

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"slices"
	"time"

	"counterhand/bot"
)

// The owners of one read: a person, a channel, a shop. Fewer are filled up with
// the owner that nobody is, more are read in several turns of one transaction.
const ownersAtOnce = 3

const (
	readSettings = `SELECT scope, id, document, changed FROM settings WHERE scope = $1 AND id = $2
		UNION ALL SELECT scope, id, document, changed FROM settings WHERE scope = $3 AND id = $4
		UNION ALL SELECT scope, id, document, changed FROM settings WHERE scope = $5 AND id = $6`
	// A row is locked by its key, so one must be there before there are settings.
	reserveSettings = `INSERT INTO settings (scope, id, document, changed) VALUES ($1, $2, '', 0) ON CONFLICT DO NOTHING`
	lockSettings    = `SELECT document FROM settings WHERE scope = $1 AND id = $2`
	updateSettings  = `UPDATE settings SET document = $1, changed = $2 WHERE scope = $3 AND id = $4`
	deleteSettings  = `DELETE FROM settings WHERE scope = $1 AND id = $2`
	putSettings     = `INSERT INTO settings (scope, id, document, changed) VALUES ($1, $2, $3, $4)
		ON CONFLICT (scope, id) DO UPDATE SET document = excluded.document, changed = excluded.changed`
	allSettings = `SELECT scope, id, document, changed FROM settings ORDER BY scope, id`
)

var settingsKind = kind{
	export: exportSettings,
	put: func(ctx context.Context, tx *sql.Tx, r bot.Record) (bool, error) {
		if r.Settings == nil {
			return false, nil
		}
		_, err := tx.ExecContext(ctx, putSettings, string(r.Settings.Scope), r.Settings.ID, string(r.Settings.Document), r.Settings.Changed.UnixMilli())
		return true, err
	},
	forget: func(ctx context.Context, tx *sql.Tx, person bot.PersonID, f *bot.Forgotten) (err error) {
		f.Settings, err = affected(tx.ExecContext(ctx, deleteSettings, string(bot.ScopePerson), string(person)))
		return err
	},
	newest: `SELECT MAX(changed) FROM settings`,
	sweep: `DELETE FROM settings WHERE scope = 'person' AND id IN
		(SELECT id FROM settings WHERE scope = 'person' AND changed < $1 LIMIT $2)`,
	keep: func(r bot.Retention, s *bot.Swept) (time.Duration, *int) { return r.PersonSettings, &s.PersonSettings },
}

// Settings implements [bot.SettingsStore].
func (s *Store) Settings(ctx context.Context, owners ...bot.Owner) (map[bot.Owner]bot.Settings, error) {
	found := make(map[bot.Owner]bot.Settings, len(owners))
	if len(owners) > ownersAtOnce {
		return found, s.readInTurns(ctx, found, owners)
	}
	return found, s.repeat(ctx, func(st *statements) error {
		rows, err := st.readSettings.query(ctx, keysOf(owners)...)
		return collect(rows, err, found)
	})
}

func (s *Store) readInTurns(ctx context.Context, found map[bot.Owner]bot.Settings, owners []bot.Owner) error {
	return s.snapshot(ctx, func(tx *sql.Tx) error {
		for turn := range slices.Chunk(owners, ownersAtOnce) {
			rows, err := tx.QueryContext(ctx, readSettings, keysOf(turn)...)
			if err := collect(rows, err, found); err != nil {
				return err
			}
		}
		return nil
	})
}

// keysOf gives the arguments of readSettings.
func keysOf(owners []bot.Owner) []any {
	keys := make([]any, 2*ownersAtOnce)
	for i := range keys {
		keys[i] = ""
	}
	for i, o := range owners {
		keys[2*i], keys[2*i+1] = string(o.Scope), o.ID
	}
	return keys
}

func collect(rows *sql.Rows, err error, found map[bot.Owner]bot.Settings) error {
	if err != nil {
		return err
	}
	return eachSettings(rows, func(owner bot.Owner, kept bot.Settings) error {
		found[owner] = kept
		return nil
	})
}

func eachSettings(rows *sql.Rows, do func(bot.Owner, bot.Settings) error) error {
	return eachRow(rows, func() error {
		var (
			owner   bot.Owner
			kept    bot.Settings
			changed int64
		)
		if err := rows.Scan((*string)(&owner.Scope), &owner.ID, (*[]byte)(&kept.Document), &changed); err != nil {
			return err
		}
		kept.Changed = fromMillis(changed)
		return do(owner, kept)
	})
}

// ChangeSettings implements [bot.SettingsStore].
func (s *Store) ChangeSettings(ctx context.Context, owner bot.Owner, now time.Time, change func(json.RawMessage) (json.RawMessage, error)) error {
	return s.transact(ctx, func(tx *sql.Tx) error {
		old, err := s.lockSettings(ctx, tx, owner)
		if err != nil {
			return err
		}
		changed, err := change(old)
		if err != nil {
			return err
		}
		if changed == nil {
			_, err = tx.ExecContext(ctx, deleteSettings, string(owner.Scope), owner.ID)
			return err
		}
		_, err = tx.ExecContext(ctx, updateSettings, string(changed), now.UnixMilli(), string(owner.Scope), owner.ID)
		return err
	})
}

// lockSettings returns the owner's document and keeps others from changing it
// until the end of the transaction.
func (s *Store) lockSettings(ctx context.Context, tx *sql.Tx, owner bot.Owner) (json.RawMessage, error) {
	if _, err := tx.ExecContext(ctx, reserveSettings, string(owner.Scope), owner.ID); err != nil {
		return nil, err
	}
	var document []byte
	err := tx.QueryRowContext(ctx, lockSettings+s.dialect.ForUpdate, string(owner.Scope), owner.ID).Scan(&document)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return nil, errAgain // deleted between the two statements
	case err != nil:
		return nil, err
	case len(document) == 0:
		return nil, nil // reserved just now
	}
	return document, nil
}

func exportSettings(ctx context.Context, tx *sql.Tx, yield func(bot.Record) error) error {
	rows, err := tx.QueryContext(ctx, allSettings)
	if err != nil {
		return err
	}
	return eachSettings(rows, func(owner bot.Owner, kept bot.Settings) error {
		return yield(bot.Record{Settings: &bot.SettingsRecord{
			Scope: owner.Scope, ID: owner.ID, Changed: kept.Changed, Document: kept.Document}})
	})
}
