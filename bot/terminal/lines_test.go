package terminal_test

import (
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/bot/terminal"
)

// all reads lines to the end.
func all(t *testing.T, in io.Reader) []string {
	t.Helper()
	lines := terminal.NewLines(in)
	var got []string
	for {
		line, err := lines.Next()
		if err == io.EOF {
			_, again := lines.Next()
			require.Equal(t, io.EOF, again)
			return got
		}
		require.NoError(t, err)
		got = append(got, line)
	}
}

func TestLines(t *testing.T) {
	long := strings.Repeat("x", terminal.MaxLine)
	for _, tt := range []struct {
		name, in string
		want     []string
	}{
		{"nothing", "", nil},
		{"one line", "a\n", []string{"a"}},
		{"no end at the end", "a\nb", []string{"a", "b"}},
		{"empty lines count", "\na\n\n", []string{"", "a", ""}},
		{"carriage returns belong to the end", "a\r\nb\r\n", []string{"a", "b"}},
		{"but stay inside", "a\rb\n", []string{"a\rb"}},
		{"binary", "\x00\xff\n\xfe", []string{"\x00\xff", "\xfe"}},
		{"longer than the buffer", strings.Repeat("y", 100_000) + "\nz", []string{strings.Repeat("y", 100_000), "z"}},
		{"longer than is kept", long + "more\nz\n", []string{long, "z"}},
		{"just as long", long + "\nz\n", []string{long, "z"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			assert.Equal(t, tt.want, all(t, strings.NewReader(tt.in)))
			if len(tt.in) < 100 {
				assert.Equal(t, tt.want, all(t, iotest.OneByteReader(strings.NewReader(tt.in))), "byte by byte")
			}
		})
	}
}

func TestLinesPassFaultsOn(t *testing.T) {
	broken := errors.New("broken")
	lines := terminal.NewLines(io.MultiReader(strings.NewReader("a\nhalf"), iotest.ErrReader(broken)))
	line, err := lines.Next()
	require.NoError(t, err)
	assert.Equal(t, "a", line)
	_, err = lines.Next()
	assert.ErrorIs(t, err, broken)
}
