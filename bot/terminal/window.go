package terminal

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode"

	"github.com/rivo/uniseg"
	"golang.org/x/term"
)

// Window is a screen with a person before it: lines are edited and kept in a
// history, text is wrapped to the width, pasted lines make one message.
type Window struct {
	device Device
	editor *term.Terminal
	colour bool
}

var _ Screen = (*Window)(nil)

// Device is a terminal as the operating system gives it. It can be read by one
// goroutine while it is written by another.
type Device interface {
	io.ReadWriter

	// Raw switches to a mode in which every key arrives at once; restore goes
	// back, and must be called.
	Raw() (restore func() error, err error)

	// Size gives columns and rows.
	Size() (width, height int, err error)
}

// The prompts: for a message, and for more lines of a pasted one.
const (
	prompt     = "> "
	pastePause = "… "
)

// widest is the greatest width that text is wrapped to, since longer lines are
// hard to read.
const widest = 100

// NewWindow makes a screen of a device. History may be nil, then lines are
// remembered until the end only.
func NewWindow(device Device, history term.History, colour bool) *Window {
	editor := term.NewTerminal(device, prompt)
	if history != nil {
		editor.History = history
	}
	return &Window{device, editor, colour}
}

// ReadMessage lets the person edit a line. Lines that were pasted together come
// as one message once the person confirms them.
func (w *Window) ReadMessage(ctx context.Context) (_ string, err error) {
	restore, err := w.device.Raw()
	if err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, restore()) }()
	w.fit()
	w.editor.SetPrompt(w.paint(Headline, prompt))
	w.editor.SetBracketedPasteMode(true)
	defer w.editor.SetBracketedPasteMode(false)
	return await(ctx, w.edit)
}

// edit gives the lines of one message.
func (w *Window) edit() (string, error) {
	var said []string
	for {
		line, err := w.editor.ReadLine()
		said = append(said, line)
		switch {
		case err == nil:
			return strings.Join(said, "\n"), nil
		case !errors.Is(err, term.ErrPasteIndicator):
			return "", err
		}
		w.editor.SetPrompt(pastePause)
	}
}

// fit tells the editor how large the window is now.
func (w *Window) fit() int {
	width, height, err := w.device.Size()
	if err != nil || width < 1 {
		width, height = 80, 24
	}
	// A size that the editor refuses leaves it at the one before.
	_ = w.editor.SetSize(width, height)
	return width
}

// Print writes the parts, wrapped, with an empty line before and after.
func (w *Window) Print(parts ...Part) error {
	width := min(w.fit(), widest)
	var b strings.Builder
	b.WriteByte('\n')
	for _, part := range parts {
		for _, line := range strings.Split(wrap(printable(part.Text), width), "\n") {
			b.WriteString(w.paint(part.Role, line))
			b.WriteByte('\n')
		}
	}
	_, err := fmt.Fprintln(w.device, b.String())
	return err
}

// IsWindow is true: a person looks.
func (w *Window) IsWindow() bool { return true }

// How the roles look: ECMA-48, select graphic rendition.
const (
	bold  = "\x1b[1m"
	faint = "\x1b[2m"
	reset = "\x1b[0m"
)

// paint makes the answer stand out and asides stand back.
func (w *Window) paint(role Role, line string) string {
	if !w.colour || line == "" {
		return line
	}
	switch role {
	case Headline:
		return bold + line + reset
	case Aside:
		return faint + line + reset
	}
	return line
}

// wrap breaks a text at spaces so that no line is wider than the width, unless
// a single word is; what begins with spaces goes on below its first word.
func wrap(text string, width int) string {
	var b strings.Builder
	for i, line := range strings.Split(text, "\n") {
		if i > 0 {
			b.WriteByte('\n')
		}
		bare := strings.TrimLeft(line, " ")
		indent := line[:min(len(line)-len(bare), width/2)]
		wrapLine(&b, bare, indent, width-len(indent))
	}
	return b.String()
}

// wrapLine writes one line, and an indent before each line that it becomes.
func wrapLine(b *strings.Builder, line, indent string, width int) {
	b.WriteString(indent)
	used := 0
	for i, word := range strings.Split(line, " ") {
		wide := uniseg.StringWidth(word)
		switch {
		case i == 0:
		case used+1+wide > width:
			b.WriteString("\n" + indent)
			used = 0
		default:
			b.WriteByte(' ')
			used++
		}
		b.WriteString(word)
		used += wide
	}
}

// printable drops what would steer the terminal instead of being shown: a reply
// may repeat words of the request.
func printable(text string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t':
			return r
		case unicode.IsControl(r), unicode.Is(unicode.Bidi_Control, r):
			return -1
		}
		return r
	}, text)
}
