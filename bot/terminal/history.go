package terminal

import (
	"errors"
	"os"
	"path/filepath"
	"strings"

	"golang.org/x/term"
)

// History keeps the last lines that were typed in a file that only its owner
// reads. A file that cannot be read or written costs the history and nothing
// else, since a conversation goes on without one.
type History struct {
	path  string
	keep  int
	lines []string // the oldest first
}

var _ term.History = (*History)(nil)

// OpenHistory reads what is kept in the file, and cuts the file where it holds
// twice as many lines as are to be kept. Where none are, it is removed.
func OpenHistory(path string, keep int) *History {
	h := &History{path: path, keep: keep}
	if keep == 0 {
		_ = os.Remove(path)
		return h
	}
	content, err := os.ReadFile(path)
	if err != nil {
		return h
	}
	all := strings.Split(strings.TrimSuffix(string(content), "\n"), "\n")
	h.lines = all[max(len(all)-keep, 0):]
	if len(all) > 2*keep {
		_ = os.WriteFile(path, []byte(strings.Join(h.lines, "\n")+"\n"), 0o600)
	}
	return h
}

// Add keeps a line, unless it is empty or the one before.
func (h *History) Add(line string) {
	if h.keep == 0 || strings.TrimSpace(line) == "" || len(h.lines) > 0 && h.At(0) == line {
		return
	}
	h.lines = append(h.lines, line)
	h.lines = h.lines[max(len(h.lines)-h.keep, 0):]
	_ = h.append(line)
}

// append writes one line at the end of the file, whole, so that two
// conversations at once do not mix theirs.
func (h *History) append(line string) error {
	if err := os.MkdirAll(filepath.Dir(h.path), 0o700); err != nil {
		return err
	}
	f, err := os.OpenFile(h.path, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o600)
	if err != nil {
		return err
	}
	_, err = f.WriteString(line + "\n")
	return errors.Join(err, f.Close())
}

// Len counts the lines.
func (h *History) Len() int { return len(h.lines) }

// At gives a line; 0 is the newest.
func (h *History) At(i int) string { return h.lines[len(h.lines)-1-i] }
