package picture

import (
	"fmt"

	"counterhand/commands/scene"
)

// Measures of a cutting sheet.
const (
	sheetTitleSize = 16.0 // points
	sheetTextSize  = 10.0
	tickSide       = 3.4 // of a box to tick, millimetres
	tickIndent     = 6.0
	pictureScale   = 0.65 // of the height that pictures have alone
	smallestScale  = 0.42
	mostItems      = 300
)

// SheetPDF gives the sheet as a document to print. It reads in black and white:
// whatever colour says is also said by hatching or in words.
func SheetPDF(s scene.Sheet, paper Paper) ([]byte, error) {
	if err := checkSheet(s); err != nil {
		return nil, err
	}
	p := takePens()
	defer returnPens(p)
	return writePDF(sheetPages(s, paper, p), s.Title, s.Text(), p)
}

func checkSheet(s scene.Sheet) error {
	for _, p := range s.Pictures {
		if err := checkScene(p); err != nil {
			return err
		}
	}
	items := len(s.Lead) + len(s.Rests)
	for _, section := range s.Sections {
		items += 1 + len(section.Items)
	}
	return firstTooMuch(
		TooMuchError{"lines", items, mostItems},
		TooMuchError{"characters", len(s.Text()), 4 * mostWords},
		TooMuchError{"pictures", len(s.Pictures), mostPanels},
	)
}

// book puts things on pages one below the other.
type book struct {
	*setter
	paper Paper
	done  []page
}

// sheetPages lays out a sheet.
func sheetPages(s scene.Sheet, paper Paper, p *pens) []page {
	b := &book{paper: paper, setter: &setter{pens: p}}
	b.turn()
	b.words(s.Title, sheetTitleSize, true)
	for _, l := range s.Lead {
		b.words(l, sheetTextSize, false)
	}
	cuts := 0
	for _, section := range s.Sections {
		if section.ForCuts {
			cuts++
		}
	}
	for i, section := range s.Sections {
		if i == cuts {
			b.pictures(s.Pictures)
		}
		b.section(section)
	}
	if cuts >= len(s.Sections) {
		b.pictures(s.Pictures)
	}
	if len(s.Rests) > 0 {
		rests := scene.Section{Heading: "What this rests on"}
		for _, r := range s.Rests {
			rests.Items = append(rests.Items, scene.Item{Text: r})
		}
		b.section(rests)
	}
	b.turn()
	return b.numbered(s.Title)
}

// turn keeps the page, if there is something on it, and begins a new one.
func (b *book) turn() {
	if len(b.texts)+len(b.inks) > 0 {
		b.done = append(b.done, b.page)
	}
	b.page = page{width: b.paper.Width, height: b.paper.Height}
	b.y = b.paper.inner().y1
}

// room is what is left of the page, above the line with its number.
func (b *book) room() float64 {
	return b.y - b.paper.inner().y0 - smallSize*mmPerPoint*lineHeight*1.5
}

// need turns the page where there is less room than that, unless it is empty.
func (b *book) need(height float64) {
	if b.room() < height && b.y < b.paper.inner().y1 {
		b.turn()
	}
}

// words writes a paragraph over the whole width, over several pages if need be.
func (b *book) words(words string, size float64, bold bool) {
	inner := b.paper.inner()
	b.lines(words, inner.x0, inner.x1-inner.x0, size, bold)
}

func (b *book) lines(words string, x, width, size float64, bold bool) {
	for _, line := range b.wrap(b.writable(words), bold, size, width) {
		b.need(size * mmPerPoint * lineHeight)
		b.y -= size * mmPerPoint * lineHeight
		b.write(line, x, b.y+size*mmPerPoint*(lineHeight-ascent-0.04), size, bold)
	}
}

// section writes a heading and its items; the heading keeps to the first item.
func (b *book) section(s scene.Section) {
	b.y -= 3
	b.need(3.2 * sheetTextSize * mmPerPoint * lineHeight)
	b.words(s.Heading, sheetTextSize+2, true)
	b.y -= 0.8
	for _, item := range s.Items {
		b.item(item)
	}
}

// item writes one line with its box, all of it on one page where that is
// possible.
func (b *book) item(i scene.Item) {
	inner := b.paper.inner()
	lines := len(b.wrap(b.writable(i.Text), false, sheetTextSize, inner.x1-inner.x0-tickIndent))
	pitch := sheetTextSize * mmPerPoint * lineHeight
	if lines < 12 {
		b.need(pitch * float64(lines))
	}
	if i.Tick {
		middle := b.y - pitch/2
		b.ink(boxPath(box{inner.x0, middle - tickSide/2, inner.x0 + tickSide, middle + tickSide/2}), strokeStyle(inkColor, plain))
	}
	b.lines(i.Text, inner.x0+tickIndent, inner.x1-inner.x0-tickIndent, sheetTextSize, false)
	b.y -= 1
}

// pictures puts each picture on a page whole: as large as reads well, and
// somewhat smaller where that saves a page.
func (b *book) pictures(scenes []scene.Scene) {
	inner := b.paper.inner()
	for _, s := range scenes {
		b.y -= gap
		slip := b.apart(s, inner, pictureScale)
		if smaller := b.apart(s, inner, smallestScale); -slip.y > b.room() && -smaller.y <= b.room() {
			slip = smaller
		}
		for scale := pictureScale; -slip.y > inner.y1-inner.y0-gap && scale > 0.1; scale *= 0.75 {
			slip = b.apart(s, inner, scale)
		}
		b.need(-slip.y)
		b.add(slip.page, b.y)
		b.y += slip.y
	}
}

// apart lays a picture on a slip of its own, its top at zero.
func (b *book) apart(s scene.Scene, inner box, height float64) *setter {
	slip := &setter{pens: b.pens}
	slip.place(s, inner.x0+tickRise, inner.x1-inner.x0-2*tickRise, height) // the ends of sizes stand out by so much
	return slip
}

// add puts what lies on another page onto this one, moved up or down.
func (b *book) add(g page, by float64) {
	for _, i := range g.inks {
		b.inks = append(b.inks, ink{i.path.Copy().Translate(0, by), i.style})
	}
	for _, t := range g.texts {
		t.y += by
		b.texts = append(b.texts, t)
	}
}

// numbered writes the page numbers once it is known how many pages there are.
func (b *book) numbered(title string) []page {
	inner := b.paper.inner()
	for i := range b.done {
		b.page = b.done[i]
		words := fmt.Sprintf("Page %d of %d. %s", i+1, len(b.done), title)
		line := b.wrap(b.writable(words), false, smallSize, inner.x1-inner.x0)[0]
		b.write(line, inner.x0, inner.y0+smallSize*mmPerPoint*descent, smallSize, false)
		b.done[i] = b.page
	}
	return b.done
}
