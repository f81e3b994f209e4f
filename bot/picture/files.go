package picture

import (
	"fmt"
	"strings"

	"counterhand/commands"
	"counterhand/commands/scene"
)

// Format is a kind of file that an answer can be had as.
type Format uint8

// The formats.
const (
	AsSVG        Format = iota // each picture
	AsPNG                      // each picture
	AsPDF                      // each picture
	AsTemplates                // PDF in true size
	AsSheet                    // the cutting sheet as PDF
	AsSheetText                // the cutting sheet for a screen reader
	AsEverything               // all but pictures as PDF
)

// Formats says which files are wanted.
type Formats struct {
	Want  []Format
	Paper Paper // A4 where none is given
}

// has tells whether a format is wanted.
func (f Formats) has(format Format) bool {
	for _, w := range f.Want {
		if w == format || w == AsEverything && format != AsPDF {
			return true
		}
	}
	return false
}

// Media types of the files.
const (
	typeSVG  = "image/svg+xml"
	typePNG  = "image/png"
	typePDF  = "application/pdf"
	typeText = "text/plain; charset=utf-8"
)

// Files draws what goes with a reply, in the wanted formats: its pictures, its
// templates and, where there is something to cut, its cutting sheet. A reply
// that is no answer has no files. A
// picture that is refused as too large ([*TooMuchError]) is left out of the
// files and its error is given; the others are given all the same.
func Files(r commands.Reply, want Formats) ([]commands.File, error) {
	if r.Outcome != commands.Answer {
		return nil, nil
	}
	if want.Paper == (Paper{}) {
		want.Paper = A4
	}
	f := &filer{want: want, assumed: assumptions(r.Assumed)}
	f.pictures(r)
	f.templates(r)
	f.sheet(r)
	return f.files, f.err
}

// filer gathers files.
type filer struct {
	want    Formats
	assumed []string
	files   []commands.File
	err     error
}

// add keeps a file, or the first error.
func (f *filer) add(name, media, alt string, data []byte, err error) {
	if err != nil {
		if f.err == nil {
			f.err = fmt.Errorf("%s: %w", name, err)
		}
		return
	}
	f.files = append(f.files, commands.File{Name: f.free(name), Type: media, Bytes: len(data), Data: data, Alt: alt})
}

// free numbers a name that is taken already: ring.svg, ring-2.svg.
func (f *filer) free(name string) string {
	stem, ending, _ := strings.Cut(name, ".")
	for n := 2; f.taken(name); n++ {
		name = fmt.Sprintf("%s-%d.%s", stem, n, ending)
	}
	return name
}

func (f *filer) taken(name string) bool {
	for _, g := range f.files {
		if g.Name == name {
			return true
		}
	}
	return false
}

func (f *filer) pictures(r commands.Reply) {
	kinds := []struct {
		format        Format
		ending, media string
		write         func(scene.Scene) ([]byte, error)
	}{{AsSVG, "svg", typeSVG, SVG}, {AsPNG, "png", typePNG, PNG}, {AsPDF, "pdf", typePDF, PDF}}
	for _, source := range r.Scenes {
		var s scene.Scene
		built := false
		for _, k := range kinds {
			if !f.want.has(k.format) {
				continue
			}
			if !built {
				s, built = f.captioned(source()), true
			}
			data, err := k.write(s)
			f.add(s.Name+"."+k.ending, k.media, s.Alt, data, err)
		}
	}
}

// captioned adds what the answer rests on to a picture's caption.
func (f *filer) captioned(s scene.Scene) scene.Scene {
	if len(f.assumed) > 0 {
		s.Caption = append(s.Caption[:len(s.Caption):len(s.Caption)], "Taken: "+strings.Join(f.assumed, "; ")+".")
	}
	return s
}

func (f *filer) templates(r commands.Reply) {
	if !f.want.has(AsTemplates) {
		return
	}
	for _, source := range r.Templates {
		t := source()
		data, err := TemplatesPDF(t, f.want.Paper)
		f.add(t.Name+".pdf", typePDF, t.Alt, data, err)
	}
}

func (f *filer) sheet(r commands.Reply) {
	if !f.want.has(AsSheet) && !f.want.has(AsSheetText) || !r.Printable() {
		return
	}
	s := scene.NewSheet(f.answer(r))
	alt := "Cutting sheet: " + s.Title + ". The same in plain text comes beside it where it is wanted."
	if f.want.has(AsSheet) {
		data, err := SheetPDF(s, f.want.Paper)
		f.add(s.Name+".pdf", typePDF, alt, data, err)
	}
	if f.want.has(AsSheetText) {
		f.add(s.Name+".txt", typeText, "", []byte(s.Text()), nil)
	}
}

// answer gives the parts of a reply that a sheet is made from.
func (f *filer) answer(r commands.Reply) scene.Answer {
	a := scene.Answer{Topic: r.Topic, Text: r.Text, Assumed: f.assumed, Working: r.Working, Reminders: r.Reminders, Scenes: r.Scenes}
	for _, g := range r.Figures {
		a.Figures = append(a.Figures, scene.Figure{Name: g.Name, Shown: g.Shown})
	}
	return a
}

// assumptions gives the defaults that took part as a person reads them:
// "¼ in seams".
func assumptions(assumed []commands.Assumed) []string {
	var out []string
	for _, a := range assumed {
		out = append(out, a.Said)
	}
	return out
}
