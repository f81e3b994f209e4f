package storetest

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
)

// fill imports records.
func fill(t *testing.T, s bot.Store, records []bot.Record) {
	t.Helper()
	require.NoError(t, s.Import(t.Context(), func() (bot.Record, error) {
		if len(records) == 0 {
			return bot.Record{}, io.EOF
		}
		next := records[0]
		records = records[1:]
		return next, nil
	}))
}

// contents exports everything, in an order that does not depend on the store.
func contents(t *testing.T, s bot.Store) []string {
	t.Helper()
	var out bytes.Buffer
	_, err := bot.Export(t.Context(), s, &out)
	require.NoError(t, err)
	return lines(out.String())
}

func lines(text string) []string {
	all := strings.Split(strings.TrimSpace(text), "\n")
	slices.Sort(all)
	return all
}

// without leaves out the lines that contain the text.
func without(all []string, text string) []string {
	return slices.DeleteFunc(slices.Clone(all), func(line string) bool { return strings.Contains(line, text) })
}

func testForget(t *testing.T, empty Factory) {
	t.Run("everything of the person is deleted and counted, and nothing else", func(t *testing.T) {
		s := empty(t)
		fill(t, s, samples())
		before := contents(t, s)
		forgotten, err := s.Forget(t.Context(), ada)
		require.NoError(t, err)
		assert.Equal(t, bot.Forgotten{Settings: 1, Conversations: 2}, forgotten)

		after := contents(t, s)
		isEnd := `"end":`
		assert.Equal(t, without(without(before, string(ada)), isEnd), without(after, isEnd))
		assert.NotContains(t, strings.Join(after, "\n"), string(ada))
	})

	t.Run("a stranger has nothing to forget", func(t *testing.T) {
		s := empty(t)
		fill(t, s, samples())
		before := contents(t, s)
		forgotten, err := s.Forget(t.Context(), "chat:4242")
		require.NoError(t, err)
		assert.True(t, forgotten.Nothing())
		assert.Equal(t, before, contents(t, s))
	})
}

func testSweep(t *testing.T, empty Factory) {
	day := 24 * time.Hour
	all := bot.Retention{PersonSettings: 2 * day, Conversations: day, Seen: day}
	for _, row := range []struct {
		name string
		at   time.Time
		keep bot.Retention
		want bot.Swept
	}{
		{"nothing is old enough", noon.Add(day), all, bot.Swept{}},
		{"a millisecond more is", noon.Add(day + time.Millisecond), all, bot.Swept{Conversations: 3, Seen: 2}},
		{"a person's settings, but no channel's or shop's", noon.Add(3 * day), all, bot.Swept{PersonSettings: 2, Conversations: 3, Seen: 2}},
		{"zero keeps for ever", noon.Add(10_000 * day), bot.Retention{}, bot.Swept{}},
		{"the clock is a little behind", noon.Add(-bot.ClockTolerance), all, bot.Swept{}},
	} {
		t.Run(row.name, func(t *testing.T) {
			s := empty(t)
			fill(t, s, samples())
			before := len(contents(t, s))
			swept, err := s.Sweep(t.Context(), row.at, row.keep)
			require.NoError(t, err)
			assert.Equal(t, row.want, swept)
			assert.Len(t, contents(t, s), before-swept.PersonSettings-swept.Conversations-swept.Seen)
		})
	}

	t.Run("more than one batch", func(t *testing.T) {
		s := empty(t)
		const many = 2500
		var records []bot.Record
		for i := range many {
			records = append(records, bot.Record{Seen: &bot.SeenRecord{ID: bot.MessageID(fmt.Sprintf("chat:%d", i)), Claimant: "a", At: noon}})
		}
		fill(t, s, records)
		swept, err := s.Sweep(t.Context(), noon.Add(2*day), all)
		require.NoError(t, err)
		assert.Equal(t, many, swept.Seen)
	})

	t.Run("a clock that went back deletes nothing and is named", func(t *testing.T) {
		s := empty(t)
		fill(t, s, samples())
		before := contents(t, s)
		now := noon.Add(-time.Hour)
		_, err := s.Sweep(t.Context(), now, bot.Retention{Conversations: time.Nanosecond, Seen: time.Nanosecond, PersonSettings: time.Nanosecond})
		var clock *bot.ClockError
		require.ErrorAs(t, err, &clock)
		assert.Equal(t, now, clock.Now)
		assert.Equal(t, noon, clock.Newest.UTC())
		assert.Equal(t, before, contents(t, s))
	})
}

func testTransfer(t *testing.T, empty Factory) {
	t.Run("what is exported can be imported elsewhere", func(t *testing.T) {
		s := empty(t)
		fill(t, s, samples())
		var out bytes.Buffer
		n, err := bot.Export(t.Context(), s, &out)
		require.NoError(t, err)
		assert.Equal(t, len(samples()), n)

		other := empty(t)
		n, err = bot.Import(t.Context(), other, bytes.NewReader(out.Bytes()))
		require.NoError(t, err)
		assert.Equal(t, len(samples()), n)
		assert.Equal(t, lines(out.String()), contents(t, other))
	})

	t.Run("importing replaces what has the same key and leaves the rest", func(t *testing.T) {
		s := empty(t)
		fill(t, s, samples())
		changed := samples()[:1]
		changed[0].Settings.Document = []byte(`{"metric":false}`)
		fill(t, s, changed)
		found, err := s.Settings(t.Context(), bot.OwnerOfChannel("chat:9"))
		require.NoError(t, err)
		assert.JSONEq(t, `{"metric":false}`, string(found[bot.OwnerOfChannel("chat:9")].Document))
		assert.Len(t, contents(t, s), len(samples())+2, "with the first and last line")
	})

	t.Run("a fault in the middle imports nothing", func(t *testing.T) {
		s := empty(t)
		records, fault := samples(), errors.New("cut off")
		err := s.Import(t.Context(), func() (bot.Record, error) {
			if len(records) == 3 {
				return bot.Record{}, fault
			}
			next := records[0]
			records = records[1:]
			return next, nil
		})
		assert.ErrorIs(t, err, fault)
		assert.Len(t, contents(t, s), 2, "the first and last line only")
	})

	t.Run("an export is of one moment, whatever is written meanwhile", func(t *testing.T) {
		s := empty(t)
		pair := func(document string) []bot.Record {
			return []bot.Record{
				{Settings: &bot.SettingsRecord{Scope: bot.ScopePerson, ID: "a", Changed: noon, Document: json.RawMessage(document)}},
				{Settings: &bot.SettingsRecord{Scope: bot.ScopePerson, ID: "b", Changed: noon, Document: json.RawMessage(document)}},
			}
		}
		fill(t, s, pair(`{"n":1}`))
		var documents []string
		require.NoError(t, s.Export(t.Context(), func(r bot.Record) error {
			documents = append(documents, string(r.Settings.Document))
			if len(documents) == 1 {
				fill(t, s, pair(`{"n":2}`))
			}
			return nil
		}))
		assert.Equal(t, []string{`{"n":1}`, `{"n":1}`}, documents)
	})

	t.Run("an export that cannot be written stops", func(t *testing.T) {
		s := empty(t)
		fill(t, s, samples())
		fault, calls := errors.New("disk full"), 0
		err := s.Export(t.Context(), func(bot.Record) error { calls++; return fault })
		assert.ErrorIs(t, err, fault)
		assert.Equal(t, 1, calls)
	})

	t.Run("a backup is a new file", func(t *testing.T) {
		s := empty(t)
		fill(t, s, samples())
		path := filepath.Join(t.TempDir(), "copy")
		require.NoError(t, s.Backup(t.Context(), path))
		assert.FileExists(t, path)
		assert.Error(t, s.Backup(t.Context(), path), "it must not overwrite")
	})
}

func testContexts(t *testing.T, empty Factory) {
	s := empty(t)
	ended, cancel := context.WithCancel(t.Context())
	cancel()
	for name, call := range map[string]func() error{
		"Settings":       func() error { _, err := s.Settings(ended, bot.OwnerOfPerson(ada)); return err },
		"ChangeSettings": func() error { return s.ChangeSettings(ended, bot.OwnerOfPerson(ada), noon, become(`{}`)) },
		"Conversation":   func() error { _, err := s.Conversation(ended, "a"); return err },
		"SaveConversation": func() error {
			return s.SaveConversation(ended, bot.Conversation{ID: "a", State: []byte(`{}`), At: noon})
		},
		"Claim":   func() error { _, err := s.Claim(ended, "a", "b", noon); return err },
		"Acquire": func() error { _, err := s.Acquire(ended, "a", "b", long); return err },
		"Renew":   func() error { _, err := s.Renew(ended, bot.Lease{Name: "a"}, long); return err },
		"Release": func() error { return s.Release(ended, bot.Lease{Name: "a"}) },
		"Forget":  func() error { _, err := s.Forget(ended, ada); return err },
		"Sweep":   func() error { _, err := s.Sweep(ended, noon, bot.Retention{}); return err },
		"Export":  func() error { return s.Export(ended, func(bot.Record) error { return nil }) },
		"Import":  func() error { return s.Import(ended, func() (bot.Record, error) { return bot.Record{}, io.EOF }) },
		"Backup":  func() error { return s.Backup(ended, filepath.Join(t.TempDir(), "copy")) },
	} {
		assert.ErrorIs(t, call(), context.Canceled, name)
	}
	assert.Len(t, contents(t, s), 2, "nothing was written")
}
