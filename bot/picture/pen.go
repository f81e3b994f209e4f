package picture

import (
	"encoding/base64"
	"fmt"
	"strings"
	"sync"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/text/unicode/norm"
)

// Sizes of writing, in points.
const (
	titleSize   = 13.0
	headingSize = 10.0
	bodySize    = 9.0
	smallSize   = 8.0
	tinySize    = 6.5 // the smallest that is written at all
)

const mmPerPoint = 25.4 / 72

// ascent and descent of the writing in parts of its size. The Go fonts reach
// 0.72 up with capitals and fractions and 0.21 down; accents reach higher.
const (
	ascent     = 0.80
	descent    = 0.21
	lineHeight = 1.28
)

// pens are the fonts and what has been measured of them. One is used by one
// drawing at a time, since the library does not promise that its fonts may be
// shared.
type pens struct {
	regular, bold *canvas.Font
	faces         map[faceKey]*canvas.FontFace
	advances      map[advanceKey]float64
}

type faceKey struct {
	bold bool
	size float64
}

type advanceKey struct {
	bold bool
	char rune
}

// penCase lends pens to drawings and takes them back.
var penCase = sync.Pool{New: func() any {
	return &pens{
		regular:  mustLoad(goregular.TTF, canvas.FontRegular),
		bold:     mustLoad(gobold.TTF, canvas.FontRegular),
		faces:    map[faceKey]*canvas.FontFace{},
		advances: map[advanceKey]float64{},
	}
}}

// mustLoad loads a font that is part of the program; a test proves that both are.
func mustLoad(data []byte, style canvas.FontStyle) *canvas.Font {
	f, err := canvas.LoadFont(data, 0, style)
	if err != nil {
		panic("embedded font: " + err.Error())
	}
	return f
}

// mostAdvances bounds what one set of pens remembers.
const mostAdvances = 4096

// quickLines tells the library, once and for all, to leave the outlines of lines
// as they come: it would clean each by a general sweep, which takes longer than
// all the rest and changes nothing that is seen.
var quickLines = sync.OnceFunc(func() { canvas.FastStroke = true })

func takePens() *pens {
	quickLines()
	p := penCase.Get().(*pens)
	if len(p.advances) > mostAdvances {
		p.advances = map[advanceKey]float64{}
	}
	return p
}

func returnPens(p *pens) { penCase.Put(p) }

func (p *pens) font(bold bool) *canvas.Font {
	if bold {
		return p.bold
	}
	return p.regular
}

func (p *pens) face(bold bool, size float64) *canvas.FontFace {
	k := faceKey{bold, size}
	if p.faces[k] == nil {
		p.faces[k] = p.font(bold).Face(size, inkColor)
	}
	return p.faces[k]
}

// width measures writing in millimetres. The Go fonts have no kerning, so the
// width is the sum of the characters'; a test compares it with the library's.
func (p *pens) width(s string, bold bool, size float64) float64 {
	sum := 0.0
	for _, r := range s {
		k := advanceKey{bold, r}
		a, known := p.advances[k]
		if !known {
			a = p.face(bold, 1).TextWidth(string(r))
			p.advances[k] = a
		}
		sum += a
	}
	return sum * size
}

// wrap breaks writing into lines no wider than the given millimetres, between
// words where it can and within one where a single word is too wide.
func (p *pens) wrap(s string, bold bool, size, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		joined := word
		if line != "" {
			joined = line + " " + word
		}
		if p.width(joined, bold, size) <= width {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for p.width(word, bold, size) > width {
			head := p.head(word, bold, size, width)
			lines = append(lines, head)
			word = word[len(head):]
		}
		line = word
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// head is the longest beginning of a word that fits, one character at least.
func (p *pens) head(word string, bold bool, size, width float64) string {
	end := 0
	for i, r := range word {
		next := i + len(string(r))
		if end > 0 && p.width(word[:next], bold, size) > width {
			break
		}
		end = next
	}
	return word[:end]
}

// writable replaces what the fonts cannot write by what they can: "2⅓" becomes
// "2 1/3"; anything else unknown becomes a question mark.
func (p *pens) writable(s string) string {
	if !strings.ContainsFunc(s, p.lacks) {
		return s
	}
	var b strings.Builder
	for _, r := range s {
		if !p.lacks(r) {
			b.WriteRune(r)
			continue
		}
		plain := strings.ReplaceAll(norm.NFKD.String(string(r)), "⁄", "/")
		if strings.ContainsFunc(plain, p.lacks) {
			plain = "?"
		}
		if n := b.Len(); strings.Contains(plain, "/") && n > 0 && isDigit(b.String()[n-1]) {
			b.WriteByte(' ')
		}
		b.WriteString(plain)
	}
	return b.String()
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

func (p *pens) lacks(r rune) bool { return r != ' ' && p.regular.SFNT.GlyphIndex(r) == 0 }

// embedded gives the style sheet that brings the regular font into an SVG, with
// the characters that are used in it and no others.
func (p *pens) embedded(texts []text) (string, error) {
	used := canvas.NewFontSubsetter()
	for _, t := range texts {
		for _, r := range t.words {
			used.Get(p.regular.SFNT.GlyphIndex(r))
		}
	}
	subset, err := p.regular.SFNT.Subset(used.List(), font.SubsetOptions{Tables: font.KeepMinTables})
	if err != nil {
		return "", fmt.Errorf("picture: choosing characters: %w", err)
	}
	data := subset.Write()
	if err := undatedFont(data); err != nil {
		return "", err
	}
	return fmt.Sprintf("@font-face{font-family:%s;src:url(data:font/ttf;base64,%s)}",
		p.regular.Name(), base64.StdEncoding.EncodeToString(data)), nil
}
