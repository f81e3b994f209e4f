package picture

import (
	"bytes"
	"cmp"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
)

// The library writes the present time into every file: into the font that goes
// with the words, and into a PDF's own description. Equal pictures have to be
// equal files, so that they can be compared and kept once; this file takes the
// time out again. It also mends the language of a PDF, for which the library
// writes the name of the program.

// undatedFont sets the time of change of a TrueType font to its time of making,
// and mends the sums that change with it.
// Source: OpenType specification 1.9, tables "head" and "Organization of an
// OpenType Font".
func undatedFont(font []byte) error {
	const (
		directory, record      = 12, 16
		adjustment, made, when = 8, 20, 28 // places in the table "head"
		total                  = 0xB1B0AFBA
	)
	if len(font) < directory {
		return errBrokenFont
	}
	for i := range int(binary.BigEndian.Uint16(font[4:])) {
		at := directory + i*record
		if at+record > len(font) {
			return errBrokenFont
		}
		if string(font[at:at+4]) != "head" {
			continue
		}
		offset, length := int(binary.BigEndian.Uint32(font[at+8:])), int(binary.BigEndian.Uint32(font[at+12:]))
		if length < when+8 || offset+(length+3)/4*4 > len(font) {
			return errBrokenFont
		}
		head := font[offset : offset+(length+3)/4*4]
		copy(head[when:when+8], head[made:made+8])
		binary.BigEndian.PutUint32(head[adjustment:], 0)
		binary.BigEndian.PutUint32(font[at+4:], tableSum(head))
		binary.BigEndian.PutUint32(head[adjustment:], total-tableSum(font))
		return nil
	}
	return errBrokenFont
}

var errBrokenFont = fmt.Errorf("picture: a font without its head")

// tableSum adds up 32-bit words; what is left over at the end counts as if
// filled up with zeros.
func tableSum(b []byte) uint32 {
	sum := uint32(0)
	for len(b) >= 4 {
		sum += binary.BigEndian.Uint32(b)
		b = b[4:]
	}
	var rest [4]byte
	copy(rest[:], b)
	return sum + binary.BigEndian.Uint32(rest[:])
}

// edit replaces part of a file.
type edit struct {
	from, to int
	by       []byte
}

var (
	dateOfPDF   = regexp.MustCompile(`/CreationDate\(D:[^)]*\)`)
	langOfPDF   = regexp.MustCompile(`/Lang\(` + program + `\)`)
	fontOfPDF   = regexp.MustCompile(`/FontFile2 (\d+) 0 R`)
	streamOfPDF = regexp.MustCompile(`^\d+ 0 obj\n<</Filter/FlateDecode/Length (\d+)>>stream\n`)
	startOfPDF  = regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n$`)
)

// program is named as the maker of documents.
const program = "Counterhand"

// undatedPDF takes the time out of a PDF as the library writes it: its table of
// objects is a plain one of lines of equal length, and its fonts are streams of
// their own.
func undatedPDF(file []byte) ([]byte, error) {
	table, err := readTable(file)
	if err != nil {
		return nil, err
	}
	var edits []edit
	for _, f := range fontOfPDF.FindAllSubmatch(file, -1) {
		n, _ := strconv.Atoi(string(f[1]))
		e, err := table.undatedStream(file, n)
		if err != nil {
			return nil, err
		}
		edits = append(edits, e)
	}
	if m := langOfPDF.FindIndex(file); m != nil {
		edits = append(edits, edit{m[0], m[1], []byte("/Lang(en)")})
	}
	if m := dateOfPDF.FindIndex(file); m != nil {
		edits = append(edits, edit{m[0], m[1], []byte("/CreationDate(D:20000101000000Z)")})
	}
	slices.SortFunc(edits, func(a, b edit) int { return cmp.Compare(a.from, b.from) })
	return table.apply(file, edits), nil
}

// objectTable is where a PDF's objects begin.
type objectTable struct {
	at      int   // where the table itself begins
	first   int   // and its first line
	offsets []int // of the objects, by their number; the first is none
	start   [2]int
}

func readTable(file []byte) (objectTable, error) {
	m := startOfPDF.FindSubmatchIndex(file)
	if m == nil {
		return objectTable{}, errBrokenPDF
	}
	t := objectTable{start: [2]int{m[2], m[3]}}
	t.at, _ = strconv.Atoi(string(file[m[2]:m[3]]))
	if t.at <= 0 || t.at >= m[0] {
		return objectTable{}, errBrokenPDF
	}
	var zero, count int
	head, _, _ := bytes.Cut(file[t.at:], []byte("0000000000 65535 f"))
	if _, err := fmt.Sscanf(string(head), "xref\n%d %d\n", &zero, &count); err != nil {
		return objectTable{}, errBrokenPDF
	}
	t.first = t.at + len(head)
	for i := range count {
		line := t.first + i*tableLine
		if line+tableLine > m[0] {
			return objectTable{}, errBrokenPDF
		}
		offset, err := strconv.Atoi(string(file[line : line+10]))
		if err != nil {
			return objectTable{}, errBrokenPDF
		}
		t.offsets = append(t.offsets, offset)
	}
	return t, nil
}

const tableLine = 20 // bytes of a line in a table of objects, by the standard

var errBrokenPDF = fmt.Errorf("picture: a PDF that is not as the library writes it")

// undatedStream takes the time out of the font in the n-th object.
func (t objectTable) undatedStream(file []byte, n int) (edit, error) {
	if n >= len(t.offsets) {
		return edit{}, errBrokenPDF
	}
	at := t.offsets[n]
	m := streamOfPDF.FindSubmatchIndex(file[at:])
	if m == nil {
		return edit{}, errBrokenPDF
	}
	length, _ := strconv.Atoi(string(file[at+m[2] : at+m[3]]))
	if at+m[1]+length > len(file) {
		return edit{}, errBrokenPDF
	}
	r, err := zlib.NewReader(bytes.NewReader(file[at+m[1] : at+m[1]+length]))
	if err != nil {
		return edit{}, fmt.Errorf("picture: reading a font back: %w", err)
	}
	font, err := io.ReadAll(r)
	if err != nil {
		return edit{}, fmt.Errorf("picture: reading a font back: %w", err)
	}
	if err := undatedFont(font); err != nil {
		return edit{}, err
	}
	var packed bytes.Buffer
	w := zlib.NewWriter(&packed)
	w.Write(font)
	w.Close()
	head := fmt.Sprintf("%d 0 obj\n<</Filter/FlateDecode/Length %d>>stream\n", n, packed.Len())
	return edit{at, at + m[1] + length, append([]byte(head), packed.Bytes()...)}, nil
}

// apply makes the edits, which stand in the file's order, and moves the table's
// entries by as much as their objects move.
func (t objectTable) apply(file []byte, edits []edit) []byte {
	moved := func(offset int) int {
		by := 0
		for _, e := range edits {
			if e.from < offset {
				by += len(e.by) - (e.to - e.from)
			}
		}
		return offset + by
	}
	out := make([]byte, 0, len(file)+256)
	from := 0
	for _, e := range edits {
		out = append(append(out, file[from:e.from]...), e.by...)
		from = e.to
	}
	out = append(out, file[from:t.start[0]]...)
	out = append(strconv.AppendInt(out, int64(moved(t.at)), 10), file[t.start[1]:]...)
	first := moved(t.first)
	for i, offset := range t.offsets {
		if i > 0 {
			copy(out[first+i*tableLine:], fmt.Sprintf("%010d", moved(offset)))
		}
	}
	return out
}
