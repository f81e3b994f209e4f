package terminal

import (
	"os"

	"golang.org/x/term"
)

// Console is the [Device] of two files that are the same terminal.
type Console struct{ In, Out *os.File }

var _ Device = Console{}

// Read reads keys.
func (c Console) Read(p []byte) (int, error) { return c.In.Read(p) }

// Write writes text and what steers the terminal.
func (c Console) Write(p []byte) (int, error) { return c.Out.Write(p) }

// Raw switches to single keys.
func (c Console) Raw() (restore func() error, err error) {
	state, err := term.MakeRaw(int(c.In.Fd()))
	if err != nil {
		return nil, err
	}
	return func() error { return term.Restore(int(c.In.Fd()), state) }, nil
}

// Size gives columns and rows.
func (c Console) Size() (width, height int, err error) { return term.GetSize(int(c.Out.Fd())) }

// IsTerminal tells whether the file is one that a person types at or reads.
func IsTerminal(f *os.File) bool { return term.IsTerminal(int(f.Fd())) }
