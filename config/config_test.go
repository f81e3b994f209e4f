package config_test

import (
	"encoding/json"
	"fmt"
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
	"counterhand/config"
)

const (
	inch = measure.Inch
	mm   = measure.Millimetre
)

// write makes a configuration file of the text.
func write(t *testing.T, text string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "counterhand.yaml")
	require.NoError(t, os.WriteFile(file, []byte(text), 0o600))
	return file
}

// The defaults are those of the table of defaults in README, in its order.
func TestDefaults(t *testing.T) {
	c, err := config.Load("", nil)
	require.NoError(t, err)

	assert.Equal(t, config.Work{System: measure.Imperial, Country: "US", Letter: false}, c.Work)
	assert.Equal(t, config.Fabric{
		UsableWidth: 40 * inch,
		WideBacking: 106 * inch,
		PrecutStrip: 5 * inch / 2,
	}, c.Fabric)
	assert.Equal(t, config.Seams{Allowance: inch / 4, StraightJoin: inch / 2}, c.Seams)
	assert.Equal(t, config.Rounding{
		Inches: config.Steps{
			Cut: inch / 8, Slack: inch / 64, Limit: inch / 8, Buy: measure.Yard / 8,
			Template: inch / 16, Cover: inch / 4, Ground: inch / 2,
		},
		Metric: config.Steps{
			Cut: mm, Slack: 0, Limit: mm, Buy: 100 * mm, Template: mm, Cover: 5 * mm, Ground: 10 * mm,
		},
	}, c.Rounding)
	assert.Equal(t, config.Binding{Strip: 5 * inch / 2, Extra: 10 * inch}, c.Binding)
	assert.Equal(t, config.Backing{Overage: 4 * inch, PanelSeam: inch / 2}, c.Backing)
	assert.Equal(t, config.Borders{MitreSpare: 2 * inch}, c.Borders)
	assert.Equal(t, config.Blades{NarrowEnd: 7 * inch / 8}, c.Blades)
	assert.Equal(t, config.Rings{CoverOverlap: inch / 4, CoverTurning: inch / 4, Margin: 2 * inch}, c.Rings)
	assert.Equal(t, config.Sashing{}, c.Sashing)
	assert.Equal(t, 4, c.Geese.AtATime)
	assert.False(t, c.Layout.Within)
	assert.True(t, c.Chat.Token.IsEmpty())
	assert.Empty(t, c.Web.Address)
	assert.False(t, c.Shop.Open[time.Monday].Known)
}

// Each strength overrides the one before, setting by setting.
func TestFileThenEnvironmentThenCommandLine(t *testing.T) {
	file := write(t, `
fabric: {usable_width: 41 in}
seams: {allowance: 6 mm}
binding: {strip: 2¼ in}
`)
	t.Setenv("COUNTERHAND_FABRIC_USABLE_WIDTH", "42 in")
	t.Setenv("COUNTERHAND_SEAMS_ALLOWANCE", "7 mm")
	c, err := config.Load(file, map[string]string{"fabric.usable_width": "43 in"})
	require.NoError(t, err)
	assert.Equal(t, 43*inch, c.Fabric.UsableWidth)
	assert.Equal(t, 7*mm, c.Seams.Allowance)
	assert.Equal(t, 9*inch/4, c.Binding.Strip)
	assert.Equal(t, 106*inch, c.Fabric.WideBacking)
}

func TestValuesAreReadAsPeopleWriteThem(t *testing.T) {
	c, err := config.Load(write(t, `
Fabric:
  Usable_Width: 1.1 m
  fat_quarter: 18" x 21"
rounding: {inches: {buy: a quarter of a yard}}
geese: {at_a_time: 1}
sashing: {cornerstones: yes, laid: FRAMED}
shop:
  time_zone: Europe/London
  open: {monday: closed, friday: "9:30 to 24:00"}
conversation: {age: 90 minutes}
storage: {keep_conversations: 1 day}
web: {address: ":8080"}
log: {level: debug, format: json}
`), map[string]string{"blades.end": "folded", "binding.joined": "straight", "borders.corners": "mitred", "layout.size": "within"})
	require.NoError(t, err)
	assert.Equal(t, 1100*mm, c.Fabric.UsableWidth)
	assert.Equal(t, measure.Size{Width: 18 * inch, Length: 21 * inch}, c.Fabric.FatQuarter)
	assert.Equal(t, 9*inch, c.Rounding.Inches.Buy)
	assert.Equal(t, 1, c.Geese.AtATime)
	assert.Equal(t, config.Sashing{Framed: true, Cornerstones: true}, c.Sashing)
	assert.Equal(t, "Europe/London", c.Shop.TimeZone.String())
	assert.True(t, c.Shop.Open[time.Monday].Closed())
	assert.Equal(t, config.Hours{Known: true, From: 9*time.Hour + 30*time.Minute, Till: 24 * time.Hour}, c.Shop.Open[time.Friday])
	assert.Equal(t, 90*time.Minute, c.Conversation.Age)
	assert.Equal(t, 24*time.Hour, c.Storage.KeepConversations)
	assert.Equal(t, ":8080", c.Web.Address)
	assert.Equal(t, config.Log{Level: slog.LevelDebug, JSON: true}, c.Log)
	assert.True(t, c.Blades.Folded)
	assert.True(t, c.Binding.Straight)
	assert.True(t, c.Borders.Mitred)
	assert.True(t, c.Layout.Within)
}

// What a shop may write wrongly, and the whole line that it is told.
func TestFaults(t *testing.T) {
	for _, tt := range []struct {
		name, key, value, want string
	}{
		{"below the range", "fabric.usable_width", "9 in",
			`fabric.usable_width is "9 in" (command line); it must be a length from 10 in to 130 in with its unit, such as 40 in`},
		{"above the range", "fabric.usable_width", "4 m",
			`fabric.usable_width is "4 m" (command line); it must be a length from 10 in to 130 in with its unit, such as 40 in`},
		{"without a unit", "seams.allowance", "0.25",
			`seams.allowance is "0.25" (command line); it must be a length from 1/16 in to 1 in with its unit, such as ¼ in`},
		{"negative", "binding.extra", "-1 in",
			`binding.extra is "-1 in" (command line); it must be a length from 0 in to 40 in with its unit, such as 10 in`},
		{"no length", "binding.strip", "wide",
			`binding.strip is "wide" (command line); it must be a length from ¾ in to 6 in with its unit, such as 2½ in`},
		{"empty", "blades.narrow_end", "",
			`blades.narrow_end is "" (command line); it must be a length from ½ in to 6 in with its unit, such as ⅞ in`},
		{"one side of a size", "fabric.fat_quarter", "18 in",
			`fabric.fat_quarter is "18 in" (command line); it must be a size with its unit, each side from 6 in to 130 in, such as 18 x 21 in; or empty`},
		{"a side beyond the range", "fabric.fat_quarter", "18 x 131 in",
			`fabric.fat_quarter is "18 x 131 in" (command line); it must be a size with its unit, each side from 6 in to 130 in, such as 18 x 21 in; or empty`},
		{"none of the words", "work.country", "FR",
			`work.country is "FR" (command line); it must be one of US, UK, EU, AU`},
		{"a number that is no choice", "geese.at_a_time", "2",
			`geese.at_a_time is "2" (command line); it must be one of 4, 1`},
		{"half a key", "chat.public_key", "c0ffee",
			`chat.public_key is "c0ffee" (command line); it must be 64 hexadecimal digits, or empty`},
		{"no digits", "chat.public_key", strings.Repeat("xy", 32),
			`chat.public_key is "` + strings.Repeat("xy", 32) + `" (command line); it must be 64 hexadecimal digits, or empty`},
		{"a key without an address", "chat.public_key", strings.Repeat("c0ffee00", 8),
			`web.address is "" (compared with another setting); it must be set where chat.public_key is, since interactions then arrive by HTTP`},
		{"not whole", "chat.shards", "1.5",
			`chat.shards is "1.5" (command line); it must be a whole number from 0 to 10000`},
		{"a negative count", "terminal.history", "-1",
			`terminal.history is "-1" (command line); it must be a whole number from 0 to 10000`},
		{"no unit of time", "storage.timeout", "5",
			`storage.timeout is "5" (command line); it must be a time from 100 milliseconds to 1 minute, such as 1 second`},
		{"too long a time", "storage.keep_conversations", "9999999999999 weeks",
			`storage.keep_conversations is "9999999999999 weeks" (command line); it must be a time from 1 hour to 3650 days, such as 30 days`},
		{"no time zone", "shop.time_zone", "Fernhollow",
			`shop.time_zone is "Fernhollow" (command line); it must be a time zone, such as Europe/London`},
		{"closes before it opens", "shop.open.monday", "17:00 to 9:00",
			`shop.open.monday is "17:00 to 9:00" (command line); it must be closed, or two times such as "10:00 to 17:30"`},
		{"one time", "shop.open.monday", "9:00",
			`shop.open.monday is "9:00" (command line); it must be closed, or two times such as "10:00 to 17:30"`},
		{"no port", "web.address", "localhost",
			`web.address is "localhost" (command line); it must be a host and a port such as 127.0.0.1:8080, or empty`},
		{"no such port", "web.address", "localhost:99999",
			`web.address is "localhost:99999" (command line); it must be a host and a port such as 127.0.0.1:8080, or empty`},
		{"no file", "storage.sqlite", "",
			`storage.sqlite is "" (command line); it must be the path of a file`},
		{"slack of a whole step", "rounding.inches.cut", "1/64 in",
			`rounding.inches.cut is "1/64 in" (compared with another setting); it must be more than rounding.inches.slack, which is 1/64 in`},
		{"fabric as wide as wide backing", "fabric.usable_width", "106 in",
			`fabric.wide_backing is "106 in" (compared with another setting); it must be more than fabric.usable_width, which is 106 in`},
		{"a strip that its seams use up", "fabric.precut_strip", "½ in",
			`fabric.precut_strip is "½ in" (compared with another setting); it must be more than twice seams.allowance, which is ½ in`},
		{"unknown", "fabric.usable_wdith", "42 in",
			"fabric.usable_wdith is no setting (command line); there are fabric.usable_width, fabric.wide_backing, fabric.fat_quarter, fabric.fat_quarter_metric, fabric.long_quarter, fabric.fat_eighth, fabric.precut_strip"},
		{"a whole group", "seams", "¼ in",
			"seams is no setting (command line); there are seams.allowance, seams.straight_join"},
		{"below a setting", "binding.strip.width", "2 in",
			"binding.strip.width is no setting (command line); there are binding.strip, binding.extra, binding.joined\n" +
				`binding.strip is "map[width:2 in]" (default); it must be a length from ¾ in to 6 in with its unit, such as 2½ in`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := config.Load("", map[string]string{tt.key: tt.value})
			require.EqualError(t, err, tt.want)
		})
	}
}

func TestEveryFaultIsReportedAtOnce(t *testing.T) {
	file := write(t, "fabric: {usable_width: 5 in}\nrouding: {cut: 1 in}\nseams: {allowance: {front: 1 in}}\n")
	t.Setenv("COUNTERHAND_GEESE_AT_A_TIME", "7")
	t.Setenv("COUNTERHAND_GEESE", "7")
	_, err := config.Load(file, map[string]string{"blades.end": "round"})
	var faults config.Faults
	require.ErrorAs(t, err, &faults)
	assert.Equal(t, []string{
		"rouding.cut is no setting (" + file + "); there are shop, work, fabric, seams, rounding, binding, backing, borders, blades, rings, hexagons, sashing, geese, layout, conversation, terminal, storage, chat, web, log",
		"COUNTERHAND_GEESE is no setting (environment); there are COUNTERHAND_FABRIC_USABLE_WIDTH and the like",
		`fabric.usable_width is "5 in" (` + file + `); it must be a length from 10 in to 130 in with its unit, such as 40 in`,
		`seams.allowance is "map[front:1 in]" (` + file + `); it must be a length from 1/16 in to 1 in with its unit, such as ¼ in`,
		`blades.end is "round" (command line); it must be one of folded, plain`,
		`geese.at_a_time is "7" (COUNTERHAND_GEESE_AT_A_TIME); it must be one of 4, 1`,
	}, strings.Split(err.Error(), "\n"))
	var one config.Fault
	require.ErrorAs(t, err, &one)
	assert.Equal(t, "fabric.usable_width", one.Key)
}

func TestFilesThatCannotBeUsed(t *testing.T) {
	_, err := config.Load(filepath.Join(t.TempDir(), "none.yaml"), nil)
	require.ErrorIs(t, err, os.ErrNotExist)
	assert.Contains(t, err.Error(), "none.yaml cannot be read")

	for name, text := range map[string]string{
		"no YAML":       "fabric: [",
		"a list":        "- fabric\n",
		"one word":      "fabric",
		"a key twice":   "geese: {at_a_time: 4}\ngeese: {at_a_time: 1}\n",
		"binary":        "\x00\xff\xfe",
		"tab as indent": "fabric:\n\tusable_width: 42 in\n",
	} {
		t.Run(name, func(t *testing.T) {
			_, err := config.Load(write(t, text), nil)
			var unreadable config.Unreadable
			require.ErrorAs(t, err, &unreadable)
		})
	}
	t.Run("empty is sound", func(t *testing.T) {
		_, err := config.Load(write(t, "# nothing yet\n"), nil)
		require.NoError(t, err)
	})
	t.Run("a key or a group without a value keeps the default", func(t *testing.T) {
		c, err := config.Load(write(t, "fabric:\n  usable_width:\nseams:\n"), nil)
		require.NoError(t, err)
		assert.Equal(t, 40*inch, c.Fabric.UsableWidth)
		assert.Equal(t, inch/4, c.Seams.Allowance)
	})
	t.Run("an unknown key without a value", func(t *testing.T) {
		_, err := config.Load(write(t, "fabrics:\n"), nil)
		require.ErrorContains(t, err, "fabrics is no setting")
	})
}

func TestSecrets(t *testing.T) {
	const hush = "s3cr3t-token"
	file := filepath.Join(t.TempDir(), "token")
	require.NoError(t, os.WriteFile(file, []byte(hush+"\n"), 0o600))

	t.Run("never shown", func(t *testing.T) {
		c, err := config.Load("", map[string]string{"chat.token": hush})
		require.NoError(t, err)
		require.Equal(t, hush, c.Chat.Token.Unwrap())
		var log strings.Builder
		slog.New(slog.NewTextHandler(&log, nil)).Info("start", "chat", c.Chat, "token", c.Chat.Token)
		object, err := json.Marshal(c.Chat)
		require.NoError(t, err)
		for _, shown := range []string{
			fmt.Sprint(c), fmt.Sprintf("%v", c.Chat), fmt.Sprintf("%+v", c.Chat), fmt.Sprintf("%#v", c.Chat),
			fmt.Sprintf("%s %q", c.Chat.Token, c.Chat.Token), log.String(), string(object),
		} {
			assert.NotContains(t, shown, hush)
			assert.Contains(t, shown, "[redacted]")
		}
	})
	t.Run("from a file", func(t *testing.T) {
		t.Setenv("COUNTERHAND_CHAT_TOKEN_FILE", file)
		c, err := config.Load("", nil)
		require.NoError(t, err)
		assert.Equal(t, hush, c.Chat.Token.Unwrap())
	})
	t.Run("from a file that is not there", func(t *testing.T) {
		_, err := config.Load("", map[string]string{"chat.token_file": file + "x"})
		require.ErrorIs(t, err, os.ErrNotExist)
	})
	t.Run("from a file with nothing in it", func(t *testing.T) {
		empty := filepath.Join(t.TempDir(), "empty")
		require.NoError(t, os.WriteFile(empty, []byte(" \n"), 0o600))
		_, err := config.Load("", map[string]string{"chat.token_file": empty})
		require.ErrorContains(t, err, "a file with the secret in it")
	})
	t.Run("twice", func(t *testing.T) {
		_, err := config.Load("", map[string]string{"chat.token": hush, "chat.token_file": file})
		require.ErrorContains(t, err, "chat.token_file")
		assert.NotContains(t, err.Error(), hush)
	})
	t.Run("as a group", func(t *testing.T) {
		_, err := config.Load(write(t, "chat: {token: {a: "+hush+"}}"), nil)
		require.Error(t, err)
		assert.NotContains(t, err.Error(), hush)
	})
}

// The example is a sound configuration, and says everything that can be set.
func TestExample(t *testing.T) {
	const file = "../counterhand.example.yaml"
	text, err := os.ReadFile(file)
	require.NoError(t, err)

	c, err := config.Load(file, nil)
	require.NoError(t, err)
	assert.Equal(t, "Fernhollow Patchwork", c.Shop.Name)
	assert.Equal(t, 42*inch, c.Fabric.UsableWidth)
	assert.Equal(t, "Tuesday 10:00 to 17:30, Wednesday 10:00 to 17:30, Thursday 10:00 to 20:00, Friday 10:00 to 17:30, "+
		"Saturday 9:30 to 16:00; closed on Monday and Sunday", c.Shop.Week())

	for _, key := range config.Keys() {
		last := key[strings.LastIndexByte(key, '.')+1:]
		assert.Regexp(t, `(?m)^ +(# )?`+last+`:`, string(text), key)
	}
}
