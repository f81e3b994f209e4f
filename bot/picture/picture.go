// Package picture turns scenes into files: SVG, PNG and PDF. The drawing is done
// by a general library; what is decided here is where things go on a page, so
// that words neither meet nor leave their room.
//
// The same scene gives the same bytes, every time. Templates come out in true size. Whatever is asked for, a
// drawing is bounded in time and size or refused with a [*TooMuchError]. All
// functions are safe for concurrent use.
package picture

import (
	"bytes"
	"encoding/xml"
	"fmt"

	"github.com/tdewolff/canvas/renderers/pdf"
	"github.com/tdewolff/canvas/renderers/svg"

	"counterhand/commands/scene"
)

// SVG gives the scene as scalable vector graphics, with its title and its
// alternative text as the file's title and description.
func SVG(s scene.Scene) ([]byte, error) {
	if err := checkScene(s); err != nil {
		return nil, err
	}
	p := takePens()
	defer returnPens(p)
	g := layScene(s, p)
	var b bytes.Buffer
	style, err := p.embedded(g.texts)
	if err != nil {
		return nil, err
	}
	options := svg.DefaultOptions
	options.EmbedFonts = false
	r := svg.New(&b, g.width, g.height, &options)
	r.SetCustomStyle(style)
	g.draw(r, p)
	if err := r.Close(); err != nil {
		return nil, fmt.Errorf("picture: writing SVG: %w", err)
	}
	return described(b.Bytes(), s)
}

// described puts title and description where a reader looks for them: first
// inside the opening tag, which is marked as one picture.
func described(file []byte, s scene.Scene) ([]byte, error) {
	head, rest, found := bytes.Cut(file, []byte(">"))
	if !found {
		return nil, fmt.Errorf("picture: no opening tag in %d bytes of SVG", len(file))
	}
	var b bytes.Buffer
	b.Write(head)
	b.WriteString(` role="img"><title>`)
	xml.EscapeText(&b, []byte(s.Title))
	b.WriteString(`</title><desc>`)
	xml.EscapeText(&b, []byte(s.Alt))
	b.WriteString(`</desc>`)
	b.Write(rest)
	return b.Bytes(), nil
}

// PDF gives the scene as a page of its own size. It is a picture, not in true
// size; that is what [Templates] is for.
func PDF(s scene.Scene) ([]byte, error) {
	if err := checkScene(s); err != nil {
		return nil, err
	}
	p := takePens()
	defer returnPens(p)
	return writePDF([]page{layScene(s, p)}, s.Title, s.Alt, p)
}

// writePDF writes pages into one document.
func writePDF(pages []page, title, subject string, p *pens) ([]byte, error) {
	var b bytes.Buffer
	var r *pdf.PDF
	for i := range pages {
		g := &pages[i]
		if r == nil {
			r = pdf.New(&b, g.width, g.height, nil)
			r.SetInfo(title, subject, "", "", program)
		} else {
			r.NewPage(g.width, g.height)
		}
		g.draw(r, p)
	}
	if r == nil {
		return nil, errNothing
	}
	if err := r.Close(); err != nil {
		return nil, fmt.Errorf("picture: writing PDF: %w", err)
	}
	return undatedPDF(b.Bytes())
}
