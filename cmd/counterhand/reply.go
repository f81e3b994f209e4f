package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"counterhand/bot/terminal"
	"counterhand/commands"
)

// printer shows replies.
type printer interface{ print(commands.Reply) error }

// jsonPrinter writes one object on one line, at once.
type jsonPrinter struct{ out io.Writer }

func (p jsonPrinter) print(r commands.Reply) error {
	var line bytes.Buffer
	enc := json.NewEncoder(&line)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(r); err != nil {
		return err
	}
	_, err := p.out.Write(line.Bytes())
	return err
}

// textPrinter writes replies for reading, with an empty line between them.
type textPrinter struct {
	out     io.Writer
	printed bool
}

func (p *textPrinter) print(r commands.Reply) error {
	var text strings.Builder
	if p.printed {
		text.WriteByte('\n')
	}
	p.printed = true
	for _, part := range terminal.Parts(r) {
		text.WriteString(part.Text + "\n")
	}
	_, err := fmt.Fprint(p.out, text.String())
	return err
}

// newPrinter makes what shows replies, as JSON or for reading.
func newPrinter(out io.Writer, asJSON bool) printer {
	if asJSON {
		return jsonPrinter{out}
	}
	return &textPrinter{out: out}
}
