package sqlstore

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"time"

	"counterhand/bot"
)

const (
	readConversation = `SELECT person, state, at FROM conversations WHERE id = $1`
	putConversation  = `INSERT INTO conversations (id, person, state, at) VALUES ($1, $2, $3, $4)
		ON CONFLICT (id) DO UPDATE SET person = excluded.person, state = excluded.state, at = excluded.at`
	forgetConversations = `DELETE FROM conversations WHERE person = $1`
	allConversations    = `SELECT id, person, state, at FROM conversations ORDER BY id`
)

var conversationKind = kind{
	export: exportConversations,
	put: func(ctx context.Context, tx *sql.Tx, r bot.Record) (bool, error) {
		c := r.Conversation
		if c == nil {
			return false, nil
		}
		_, err := tx.ExecContext(ctx, putConversation, string(c.ID), string(c.Person), string(c.State), c.At.UnixMilli())
		return true, err
	},
	forget: func(ctx context.Context, tx *sql.Tx, person bot.PersonID, f *bot.Forgotten) (err error) {
		f.Conversations, err = affected(tx.ExecContext(ctx, forgetConversations, string(person)))
		return err
	},
	newest: `SELECT MAX(at) FROM conversations`,
	sweep: `DELETE FROM conversations WHERE id IN
		(SELECT id FROM conversations WHERE at < $1 LIMIT $2)`,
	keep: func(r bot.Retention, s *bot.Swept) (time.Duration, *int) { return r.Conversations, &s.Conversations },
}

// Conversation implements [bot.ConversationStore].
func (s *Store) Conversation(ctx context.Context, id bot.ConversationID) (bot.Conversation, error) {
	var (
		person string
		state  []byte
		at     int64
	)
	err := s.repeat(ctx, func(st *statements) error {
		return st.readConversation.queryRow(ctx, string(id)).Scan(&person, &state, &at)
	})
	if errors.Is(err, sql.ErrNoRows) {
		return bot.Conversation{}, bot.ErrNotFound
	}
	if err != nil {
		return bot.Conversation{}, err
	}
	return bot.Conversation{ID: id, Person: bot.PersonID(person), State: state, At: fromMillis(at)}, nil
}

// SaveConversation implements [bot.ConversationStore].
func (s *Store) SaveConversation(ctx context.Context, c bot.Conversation) error {
	return s.repeat(ctx, func(st *statements) error {
		return st.saveConversation.exec(ctx, string(c.ID), string(c.Person), string(c.State), c.At.UnixMilli())
	})
}

func exportConversations(ctx context.Context, tx *sql.Tx, yield func(bot.Record) error) error {
	rows, err := tx.QueryContext(ctx, allConversations)
	if err != nil {
		return err
	}
	return eachRow(rows, func() error {
		var (
			id, person string
			state      []byte
			at         int64
		)
		if err := rows.Scan(&id, &person, &state, &at); err != nil {
			return err
		}
		return yield(bot.Record{Conversation: &bot.ConversationRecord{
			ID: bot.ConversationID(id), Person: bot.PersonID(person), At: fromMillis(at), State: json.RawMessage(state)}})
	})
}
