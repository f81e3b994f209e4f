package terminal

import (
	"bufio"
	"errors"
	"io"
	"strings"
)

// MaxLine is how much of a line is kept, in bytes: far more than any request
// that is answered, so that a longer one is still told that it is too long.
const MaxLine = 1 << 20

// Lines reads lines of any length, also of text that is none, and never holds
// more than [MaxLine] bytes of one.
type Lines struct{ in *bufio.Reader }

// NewLines reads from in.
func NewLines(in io.Reader) *Lines { return &Lines{bufio.NewReader(in)} }

// Next gives the next line without its end, cut to [MaxLine], and io.EOF after
// the last one. An end of line at the very end begins no further line.
func (l *Lines) Next() (string, error) {
	var kept strings.Builder
	read := false
	for {
		chunk, err := l.in.ReadSlice('\n')
		read = read || len(chunk) > 0
		kept.Write(chunk[:min(len(chunk), MaxLine-kept.Len())])
		switch {
		case err == nil, errors.Is(err, io.EOF) && read:
			return strings.TrimSuffix(strings.TrimSuffix(kept.String(), "\n"), "\r"), nil
		case !errors.Is(err, bufio.ErrBufferFull):
			return "", err
		}
	}
}
