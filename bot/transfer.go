package bot

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
)

// TransferVersion is the version of the exported form that this program writes.
// It reads this one and all before it.
const TransferVersion = 1

// line is one line of an exported file: the first is the header, the last is
// the end, each other one is a record.
type line struct {
	Header *header `json:"counterhand,omitempty"`
	Record
	End *end `json:"end,omitempty"`
}

type header struct {
	Version int `json:"version"`
}

// end tells a whole file from one that was cut off.
type end struct {
	Records int `json:"records"`
}

// TransferError says what is wrong with an exported file.
type TransferError struct {
	Line    int // from 1
	Problem string
}

func (e *TransferError) Error() string { return fmt.Sprintf("line %d: %s", e.Line, e.Problem) }

// Export writes every record but leases as JSON lines, all as they stood at one
// moment, and reports how many there were.
func Export(ctx context.Context, from TransferStore, to io.Writer) (records int, err error) {
	w := bufio.NewWriter(to)
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(line{Header: &header{TransferVersion}}); err != nil {
		return 0, err
	}
	err = from.Export(ctx, func(r Record) error {
		records++
		return enc.Encode(line{Record: r})
	})
	if err != nil {
		return 0, err
	}
	if err := enc.Encode(line{End: &end{records}}); err != nil {
		return 0, err
	}
	return records, w.Flush()
}

// Import reads what [Export] wrote, and reports how many records there were. A
// record takes the place of the one with its key. Where a line is at fault or
// the file was cut off, it returns a *[TransferError] and nothing is changed.
func Import(ctx context.Context, into TransferStore, from io.Reader) (records int, err error) {
	in := &lineReader{in: bufio.NewReader(from)}
	if err := in.header(); err != nil {
		return 0, err
	}
	if err := into.Import(ctx, in.next); err != nil {
		return 0, err
	}
	return in.records, nil
}

// maxLine is far above the longest document that a store is given.
const maxLine = 1 << 20

type lineReader struct {
	in      *bufio.Reader
	number  int
	records int
}

func (r *lineReader) header() error {
	l, err := r.read()
	if err != nil {
		return err
	}
	if l.Header == nil {
		return r.fault("this is no exported file: its first line should be the header")
	}
	if l.Header.Version < 1 || l.Header.Version > TransferVersion {
		return r.fault(fmt.Sprintf("version %d; this program reads up to version %d", l.Header.Version, TransferVersion))
	}
	return nil
}

// next returns the next record, and io.EOF after the last.
func (r *lineReader) next() (Record, error) {
	l, err := r.read()
	if err != nil {
		return Record{}, err
	}
	if l.End != nil {
		return Record{}, r.checkEnd(l.End)
	}
	if err := l.Record.check(); err != nil {
		return Record{}, r.fault(err.Error())
	}
	r.records++
	return l.Record, nil
}

func (r *lineReader) checkEnd(e *end) error {
	if e.Records != r.records {
		return r.fault(fmt.Sprintf("the end counts %d records, but %d were read", e.Records, r.records))
	}
	if rest, err := r.in.ReadByte(); err == nil {
		return r.fault(fmt.Sprintf("%q stands after the end", rest))
	}
	return io.EOF
}

func (r *lineReader) read() (line, error) {
	text, err := r.readText()
	if err != nil {
		return line{}, err
	}
	var l line
	if err := json.Unmarshal(text, &l); err != nil {
		return line{}, r.fault(err.Error())
	}
	return l, nil
}

func (r *lineReader) readText() ([]byte, error) {
	r.number++
	var text []byte
	for {
		part, err := r.in.ReadSlice('\n')
		text = append(text, part...)
		if len(text) > maxLine {
			return nil, r.fault(fmt.Sprintf("longer than %d bytes", maxLine))
		}
		switch {
		case err == nil:
			return text, nil
		case errors.Is(err, io.EOF):
			return nil, r.fault("the file ends before its end line: it was cut off")
		case !errors.Is(err, bufio.ErrBufferFull):
			return nil, err
		}
	}
}

func (r *lineReader) fault(problem string) error {
	return &TransferError{Line: r.number, Problem: problem}
}

// ExportFile exports to a new file that only its owner may read. It refuses to
// overwrite a file, and leaves none behind where it fails.
func ExportFile(ctx context.Context, from TransferStore, path string) (err error) {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			_ = f.Close() // closed twice where Close itself failed, which does no harm
			_ = os.Remove(path)
		}
	}()
	if _, err := Export(ctx, from, f); err != nil {
		return fmt.Errorf("export to %s: %w", path, err)
	}
	if err := f.Sync(); err != nil {
		return err
	}
	return f.Close()
}
