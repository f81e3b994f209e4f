package terminal

import (
	"context"
	"fmt"
	"io"
	"strings"
)

// Pipe is a screen without decoration: one line in is one message, replies go
// out bare with an empty line after each.
type Pipe struct {
	in  *Lines
	out io.Writer
}

var _ Screen = (*Pipe)(nil)

// NewPipe makes a screen of any two streams.
func NewPipe(in io.Reader, out io.Writer) *Pipe { return &Pipe{NewLines(in), out} }

// ReadMessage gives the next line.
func (p *Pipe) ReadMessage(ctx context.Context) (string, error) { return await(ctx, p.in.Next) }

// Print writes the parts, each on a line of its own, and an empty line.
func (p *Pipe) Print(parts ...Part) error {
	var b strings.Builder
	for _, part := range parts {
		b.WriteString(printable(part.Text))
		b.WriteByte('\n')
	}
	_, err := fmt.Fprintln(p.out, b.String())
	return err
}

// IsWindow is false: nobody looks.
func (p *Pipe) IsWindow() bool { return false }
