package picture

import (
	"fmt"
	"math"

	"counterhand/commands/scene"
)

// Measures of a page with templates, in millimetres.
const (
	headRoom    = 14.0 // for the title and the words under it
	footRoom    = 56.0 // for the check squares
	pieceGap    = 8.0  // between pieces on a page
	overlap     = 12.0 // of neighbouring pages
	mmPerNano   = 1e-6
	mostPages   = 30
	mostPieces  = 24
	checkMetric = 50.0      // side of the larger check square
	checkInch   = mmPerInch // and of the smaller one
)

// TemplatesPDF gives the templates in true size, as a document to print at
// 100 %. Pieces share a page where they fit; one that is larger than a page is
// spread over several, which overlap and carry marks to match. A document of
// more than 30 pages is refused with a [*TooMuchError].
func TemplatesPDF(t scene.Templates, paper Paper) ([]byte, error) {
	p := takePens()
	defer returnPens(p)
	pages, err := templatePages(t, paper, p)
	if err != nil {
		return nil, err
	}
	return writePDF(pages, t.Title, t.Alt, p)
}

// templatePages lays out the document.
func templatePages(t scene.Templates, paper Paper, p *pens) ([]page, error) {
	if err := checkTemplates(t); err != nil {
		return nil, err
	}
	plan, err := planPages(t.Pieces, workArea(paper))
	if err != nil {
		return nil, err
	}
	pages := make([]page, len(plan))
	for i, sheet := range plan {
		s := &setter{page: page{width: paper.Width, height: paper.Height}, pens: p}
		s.templatePage(t, sheet, paper, i+1, len(plan))
		pages[i] = s.page
	}
	return pages, nil
}

func checkTemplates(t scene.Templates) error {
	points, words := 0, len(t.Title)+len(t.Alt)
	for _, n := range t.Notes {
		words += len(n)
	}
	for _, piece := range t.Pieces {
		if len(piece.Cut) < 3 {
			return errNothing
		}
		points += len(piece.Cut) + len(piece.Sewn)
		words += len(piece.Title)
		for _, s := range piece.Says {
			words += len(s)
		}
		for _, l := range piece.Lines {
			points += len(l.Outline)
			words += len(l.Text)
		}
		for _, n := range piece.Points {
			words += len(n.Text)
		}
	}
	if len(t.Pieces) == 0 {
		return errNothing
	}
	return firstTooMuch(
		TooMuchError{"templates", len(t.Pieces), mostPieces},
		TooMuchError{"points", points, mostPoints},
		TooMuchError{"characters", words, mostWords},
	)
}

// workArea is where templates may lie on a page.
func workArea(paper Paper) box {
	b := paper.inner()
	b.y1 -= headRoom
	b.y0 += footRoom
	return b
}

// placed is a template on a page, or a part of one.
type placed struct {
	scene.Template
	frame        // where it lies, at true size
	part  box    // of the page that it may be drawn in
	tile  *tile  // where it is a part
	name  string // as the heading calls it
}

// tile is the place of one page among those that a large template takes.
type tile struct {
	*tiling
	column, row int // from the lower left
}

// tiling is the pages that a large template takes.
type tiling struct {
	columns, rows int
	numbers       map[[2]int]int // of pages, by column and row; none where nothing of the template lies
	stepX, stepY  float64        // from one page to the next
}

// has tells whether a place has a page.
func (t *tiling) has(column, row int) bool { return t.numbers[[2]int{column, row}] > 0 }

// planPages puts templates on pages, in their order: a small one beside or
// below the one before where there is room, else on a new page.
func planPages(pieces []scene.Template, area box) ([][]placed, error) {
	var pages [][]placed
	var shelf shelves
	for _, t := range pieces {
		t = turnedToFit(t, area)
		w, h := trueSize(t)
		if columns, rows := tilesFor(w, area.x1-area.x0), tilesFor(h, area.y1-area.y0); columns*rows > 1 {
			if max(columns, rows) > mostPages {
				return nil, &TooMuchError{"pages", max(columns, rows), mostPages}
			}
			pages = append(pages, spread(t, area, columns, rows, len(pages))...)
			shelf = shelves{}
			continue
		}
		x, y, fits := shelf.place(w, h, area)
		if !fits {
			pages = append(pages, nil)
			shelf = shelves{open: true, y: area.y1, x: area.x0}
			x, y, _ = shelf.place(w, h, area)
		}
		low, _ := t.Cut.Extent()
		last := len(pages) - 1
		pages[last] = append(pages[last], placed{Template: t, part: area, name: t.Title,
			frame: frame{low: low, x: x, y: y, scale: mmPerNano, width: w, height: h}})
	}
	if len(pages) > mostPages {
		return nil, &TooMuchError{"pages", len(pages), mostPages}
	}
	return pages, nil
}

// shelves puts boxes in rows from the upper left corner.
type shelves struct {
	open   bool
	x, y   float64 // upper left corner of the next box
	deeper float64 // height of the row so far
}

// place finds room for a box and gives its lower left corner.
func (s *shelves) place(w, h float64, area box) (x, y float64, fits bool) {
	if !s.open {
		return 0, 0, false
	}
	if s.x+w > area.x1+hairMM {
		s.x, s.y, s.deeper = area.x0, s.y-s.deeper-pieceGap, 0
	}
	if s.y-h < area.y0-hairMM || s.x+w > area.x1+hairMM {
		return 0, 0, false
	}
	x, y = s.x, s.y-h
	s.x, s.deeper = s.x+w+pieceGap, max(s.deeper, h)
	return x, y, true
}

// hairMM is what a piece may miss a page by and still count as fitting.
const hairMM = 1e-6

func trueSize(t scene.Template) (w, h float64) {
	low, high := t.Cut.Extent()
	return float64(high.X-low.X) * mmPerNano, float64(high.Y-low.Y) * mmPerNano
}

// turnedToFit turns a template by a quarter where that takes fewer pages.
func turnedToFit(t scene.Template, area box) scene.Template {
	w, h := trueSize(t)
	aw, ah := area.x1-area.x0, area.y1-area.y0
	if tilesFor(h, aw)*tilesFor(w, ah) < tilesFor(w, aw)*tilesFor(h, ah) {
		return t.Turned(90)
	}
	return t
}

// tilesFor is how many pages, each overlapping the one before, span a length.
func tilesFor(length, room float64) int {
	if length <= room+hairMM {
		return 1
	}
	return int(math.Ceil((length - overlap - hairMM) / (room - overlap)))
}

// spread cuts a large template into pages, from the lower left along the rows.
// Places with nothing of the template on them get no page.
func spread(t scene.Template, area box, columns, rows, before int) [][]placed {
	low, _ := t.Cut.Extent()
	w, h := trueSize(t)
	all := &tiling{columns: columns, rows: rows, numbers: map[[2]int]int{},
		stepX: area.x1 - area.x0 - overlap, stepY: area.y1 - area.y0 - overlap}
	var pages [][]placed
	for row := range rows {
		for column := range columns {
			f := frame{low: low, scale: mmPerNano, width: w, height: h,
				x: area.x0 - float64(column)*all.stepX, y: area.y0 - float64(row)*all.stepY}
			p := placed{Template: t, frame: f, part: area, tile: &tile{all, column, row}}
			if !p.isBlank() {
				pages = append(pages, []placed{p})
				all.numbers[[2]int{column, row}] = before + len(pages)
			}
		}
	}
	for i := range pages {
		pages[i][0].name = fmt.Sprintf("%s, part %d of %d", t.Title, i+1, len(pages))
	}
	return pages
}

// isBlank tells whether the page lies outside of the template altogether.
func (p placed) isBlank() bool {
	points := p.points(p.Cut)
	for i, a := range points {
		if touches(p.part, a, points[(i+1)%len(points)]) {
			return false
		}
	}
	return !within(p.part, points)
}

// points gives an outline on the page, every point of it.
func (p placed) points(o scene.Outline) [][2]float64 {
	points := make([][2]float64, len(o))
	for i, q := range o {
		points[i][0], points[i][1] = p.at(q)
	}
	return points
}
