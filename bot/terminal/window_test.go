package terminal_test

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/rivo/uniseg"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot/terminal"
)

// device is a terminal whose keys are typed beforehand.
type device struct {
	io.Reader
	width int
	raw   bool
	modes []bool // every change of mode

	mu    sync.Mutex
	shown strings.Builder
}

func typing(keys string) *device { return &device{Reader: strings.NewReader(keys), width: 80} }

func (d *device) Write(p []byte) (int, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.shown.Write(p)
}

func (d *device) String() string {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.shown.String()
}

func (d *device) Raw() (func() error, error) {
	d.raw, d.modes = true, append(d.modes, true)
	return func() error {
		d.raw, d.modes = false, append(d.modes, false)
		return nil
	}, nil
}

func (d *device) Size() (int, int, error) {
	if d.width == 0 {
		return 0, 0, errors.New("no size")
	}
	return d.width, 24, nil
}

func TestWindowEditsLines(t *testing.T) {
	for _, tt := range []struct{ name, keys, want string }{
		{"plain", "binding for 54 x 68\r", "binding for 54 x 68"},
		{"fractions", "2½ strips\r", "2½ strips"},
		{"backspace", "abd\x7fc\r", "abc"},
		{"left and insert", "ac\x1b[Db\r", "abc"},
		{"home", "bc\x01a\r", "abc"},
		{"to the start is erased", "rubbish\x15abc\r", "abc"},
		{"pasted lines are one message", "\x1b[200~4 squares 5 in\r6 strips 2½ in\r\x1b[201~\r", "4 squares 5 in\n6 strips 2½ in\n"},
		{"pasted and finished by hand", "\x1b[200~4 squares\r6 strips\x1b[201~ of 2½\r", "4 squares\n6 strips of 2½"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := typing(tt.keys)
			got, err := terminal.NewWindow(d, nil, false).ReadMessage(t.Context())
			require.NoError(t, err)
			assert.Equal(t, tt.want, got)
			assert.Equal(t, []bool{true, false}, d.modes, "the terminal is given back as it was")
		})
	}
}

func TestWindowIsLeftPolitely(t *testing.T) {
	for name, keys := range map[string]string{"Ctrl-C": "half a line\x03", "Ctrl-D": "\x04", "hang-up": ""} {
		t.Run(name, func(t *testing.T) {
			d := typing(keys)
			_, err := terminal.NewWindow(d, nil, false).ReadMessage(t.Context())
			require.ErrorIs(t, err, io.EOF)
			assert.False(t, d.raw)
		})
	}
	t.Run("terminated while waiting", func(t *testing.T) {
		in, _ := io.Pipe() // nobody ever types
		d := &device{Reader: in, width: 80}
		ctx, stop := context.WithCancel(t.Context())
		stop()
		_, err := terminal.NewWindow(d, nil, false).ReadMessage(ctx)
		require.ErrorIs(t, err, io.EOF)
		assert.False(t, d.raw)
	})
}

func TestWindowRecallsWhatWasTyped(t *testing.T) {
	file := filepath.Join(t.TempDir(), "state", "history")
	first := terminal.NewWindow(typing("binding for 54 x 68\r\r"), terminal.OpenHistory(file, 10), false)
	_, err := first.ReadMessage(t.Context())
	require.NoError(t, err)

	second := terminal.NewWindow(typing("\x1b[A\r"), terminal.OpenHistory(file, 10), false)
	got, err := second.ReadMessage(t.Context())
	require.NoError(t, err)
	assert.Equal(t, "binding for 54 x 68", got)
}

func TestHistory(t *testing.T) {
	file := filepath.Join(t.TempDir(), "state", "history")
	h := terminal.OpenHistory(file, 2)
	for _, line := range []string{"a", "a", " ", "b", "c", "d", "e"} {
		h.Add(line)
	}
	require.Equal(t, 2, h.Len())
	assert.Equal(t, "e", h.At(0))
	assert.Equal(t, "d", h.At(1))

	info, err := os.Stat(file)
	require.NoError(t, err)
	assert.Equal(t, os.FileMode(0o600), info.Mode().Perm(), "only its owner reads it")

	again := terminal.OpenHistory(file, 2)
	require.Equal(t, 2, again.Len())
	assert.Equal(t, "e", again.At(0))
	content, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, "d\ne\n", string(content), "the file is cut once it holds twice too many")

	none := terminal.OpenHistory(file, 0)
	none.Add("f")
	assert.Zero(t, none.Len())
	assert.NoFileExists(t, file, "who wants no history has none")
}

func TestHistoryThatCannotBeKeptIsNoFault(t *testing.T) {
	blocked := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(blocked, nil, 0o600))
	h := terminal.OpenHistory(filepath.Join(blocked, "history"), 10)
	h.Add("a")
	assert.Equal(t, "a", h.At(0))
}

func TestWindowWraps(t *testing.T) {
	const text = "Joined on the diagonal they make 265 in. You need 254: 244 round the quilt and 10 for corners."
	for _, tt := range []struct{ width, widest int }{
		{1, 1}, {7, 7}, {20, 20}, {33, 33}, {79, 79},
		{300, 100}, // longer lines are hard to read
		{0, 80},    // a window that does not know its size
	} {
		d := typing("")
		d.width = tt.width
		require.NoError(t, terminal.NewWindow(d, nil, false).Print(terminal.Part{Text: text}))
		assert.Equal(t, strings.Fields(text), strings.Fields(d.String()), "no word is lost")
		for _, line := range strings.Split(d.String(), "\n") {
			if strings.Contains(line, " ") {
				assert.LessOrEqual(t, uniseg.StringWidth(line), tt.widest, line)
			}
		}
	}
}

func TestWindowKeepsIndents(t *testing.T) {
	d := typing("")
	d.width = 12
	require.NoError(t, terminal.NewWindow(d, nil, false).Print(terminal.Part{Role: terminal.Plain, Text: "one\n  two three four"}))
	assert.Equal(t, "\none\n  two three\n  four\n\n", d.String())
}

func TestWindowColours(t *testing.T) {
	parts := []terminal.Part{
		{Role: terminal.Headline, Text: "7 strips."},
		{Role: terminal.Plain, Text: "They make 265 in."},
		{Role: terminal.Aside, Text: "Close the cutter.\x1b[31m"},
	}
	d := typing("")
	require.NoError(t, terminal.NewWindow(d, nil, true).Print(parts...))
	assert.Equal(t, "\n\x1b[1m7 strips.\x1b[0m\nThey make 265 in.\n\x1b[2mClose the cutter.[31m\x1b[0m\n\n", d.String())

	d = typing("")
	require.NoError(t, terminal.NewWindow(d, nil, false).Print(parts...))
	assert.NotContains(t, d.String(), "\x1b")
}
