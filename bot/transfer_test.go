package bot_test

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot"
	"counterhand/bot/store/memory"
)

const (
	goodHeader  = `{"counterhand":{"version":1}}`
	goodSetting = `{"settings":{"scope":"person","id":"chat:7","changed":"2026-03-14T12:00:00Z","document":{"defaults":{"units":"metric"}}}}`
	goodTalk    = `{"conversation":{"id":"chat:9/chat:7","person":"chat:7","at":"2026-03-14T12:00:00Z","state":{}}}`
	goodSeen    = `{"seen":{"id":"chat:1","claimant":"a/1","at":"2026-03-14T12:00:00Z"}}`
)

func TestImport(t *testing.T) {
	whole := strings.Join([]string{goodHeader, goodSetting, goodTalk, goodSeen, `{"end":{"records":3}}`}, "\n") + "\n"
	s := memory.Open(time.Now)
	n, err := bot.Import(t.Context(), s, strings.NewReader(whole))
	require.NoError(t, err)
	assert.Equal(t, 3, n)

	var out bytes.Buffer
	n, err = bot.Export(t.Context(), s, &out)
	require.NoError(t, err)
	assert.Equal(t, 3, n)
	assert.Equal(t, whole, out.String(), "what was imported is exported alike")
}

func TestImportRefuses(t *testing.T) {
	for _, row := range []struct {
		name  string
		lines []string
		want  string
	}{
		{"nothing", nil, "line 1: the file ends before its end line: it was cut off"},
		{"another kind of file", []string{`{"shopping":["thread"]}`}, "line 1: this is no exported file: its first line should be the header"},
		{"no JSON", []string{"binding for 54 x 68"}, "line 1: invalid character 'b' looking for beginning of value"},
		{"a newer version", []string{`{"counterhand":{"version":2}}`}, "line 1: version 2; this program reads up to version 1"},
		{"no version", []string{`{"counterhand":{}}`}, "line 1: version 0; this program reads up to version 1"},
		{"cut off", []string{goodHeader, goodSetting}, "line 3: the file ends before its end line: it was cut off"},
		{"a line is missing", []string{goodHeader, goodSetting, `{"end":{"records":2}}`}, "line 3: the end counts 2 records, but 1 were read"},
		{"more after the end", []string{goodHeader, `{"end":{"records":0}}`, goodSetting}, `line 2: '{' stands after the end`},
		{"an unknown kind", []string{goodHeader, `{"recipe":{}}`}, "line 2: 0 records of known kinds where there should be one"},
		{"two in one line", []string{goodHeader, goodSeen[:len(goodSeen)-1] + "," + goodTalk[1:]}, "line 2: 2 records of known kinds where there should be one"},
		{"an unknown scope", []string{goodHeader, strings.Replace(goodSetting, "person", "planet", 1)}, `line 2: settings of the unknown scope "planet"`},
		{"a document that is a list", []string{goodHeader, `{"settings":{"scope":"shop","id":"","changed":"2026-03-14T12:00:00Z","document":[]}}`}, "line 2: settings whose document is no JSON object"},
		{"a document that is null", []string{goodHeader, `{"settings":{"scope":"shop","id":"","changed":"2026-03-14T12:00:00Z","document":null}}`}, "line 2: settings whose document is no JSON object"},
		{"a conversation without state", []string{goodHeader, `{"conversation":{"id":"a","person":"b","at":"2026-03-14T12:00:00Z"}}`}, "line 2: a conversation whose state is no JSON object"},
		{"a conversation without an id", []string{goodHeader, `{"conversation":{"person":"b","at":"2026-03-14T12:00:00Z","state":{}}}`}, "line 2: a conversation without an id"},
		{"a message without an id", []string{goodHeader, `{"seen":{"claimant":"a/1","at":"2026-03-14T12:00:00Z"}}`}, "line 2: a seen message without an id"},
		{"an endless line", []string{goodHeader, strings.Repeat("x", 2<<20)}, "line 2: longer than 1048576 bytes"},
	} {
		t.Run(row.name, func(t *testing.T) {
			s := memory.Open(time.Now)
			text := strings.Join(row.lines, "\n")
			if len(row.lines) > 0 {
				text += "\n"
			}
			_, err := bot.Import(t.Context(), s, strings.NewReader(text))
			require.EqualError(t, err, row.want)
			var fault *bot.TransferError
			assert.ErrorAs(t, err, &fault)

			n, err := bot.Export(t.Context(), s, &bytes.Buffer{})
			require.NoError(t, err)
			assert.Zero(t, n, "nothing is imported")
		})
	}
}

func TestExportFile(t *testing.T) {
	s := memory.Open(time.Now)
	_, err := bot.Import(t.Context(), s, strings.NewReader(goodHeader+"\n"+goodSeen+"\n"+`{"end":{"records":1}}`+"\n"))
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "shop.jsonl")
	require.NoError(t, bot.ExportFile(t.Context(), s, path))
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Zero(t, info.Mode().Perm()&0o077, "only its owner may read it")

	before, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.ErrorIs(t, bot.ExportFile(t.Context(), s, path), os.ErrExist)
	after, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, before, after)

	t.Run("one that fails leaves no file", func(t *testing.T) {
		path := filepath.Join(t.TempDir(), "shop.jsonl")
		assert.ErrorIs(t, bot.ExportFile(t.Context(), failing{}, path), errFault)
		assert.NoFileExists(t, path)
	})
}

// failing is a store whose export breaks off in the middle.
type failing struct{ bot.TransferStore }

func (failing) Export(_ context.Context, yield func(bot.Record) error) error {
	return errors.Join(yield(bot.Record{Seen: &bot.SeenRecord{ID: "chat:1"}}), errFault)
}
