package picture

import (
	"cmp"
	"math"
	"slices"

	"github.com/tdewolff/canvas"

	"counterhand/commands/scene"
)

// Measures of dimension lines, in millimetres.
const (
	laneGap   = 1.6 // between lanes, and from the drawing to the first
	tickRise  = 0.9 // how far the ends stand out from the line
	wordGap   = 0.9 // from the line to its words
	laneApart = 2.0 // between two sizes in one lane
	lineRoom  = smallSize * mmPerPoint * lineHeight
)

// lanes are the dimension lines of a panel, each in a lane that runs along one
// side of the drawing. Two sizes share a lane where neither their lines nor
// their words meet.
type lanes struct {
	sizes   []laned
	longest float64  // the most that words beside the drawing take upwards
	spilled []string // words of sizes for which there is no room beside the drawing
}

// laned is one size in its lane.
type laned struct {
	scene.Size
	lines    []string
	wide     float64 // of the longest line
	from, to float64 // of the line, along the side
	mid      float64 // of the words
	lane     int
}

func upright(s scene.Side) bool { return s == scene.LeftOf || s == scene.RightOf }

// lanes breaks the words of the sizes into lines. Sizes beside the drawing leave
// it a quarter of the width at least; those beyond are put into words below.
func (t *setter) lanes(sizes []scene.Size, width float64) lanes {
	const longestUpright = 45
	var ls lanes
	for _, s := range sizes {
		room := width
		if upright(s.Side) {
			room = longestUpright
		}
		d := laned{Size: s, lines: t.wrap(t.writable(s.Text), false, smallSize, room)}
		for _, line := range d.lines {
			d.wide = max(d.wide, t.measure(line, false, smallSize))
		}
		if upright(s.Side) && ls.most(scene.LeftOf)+ls.most(scene.RightOf)+d.depth() > 0.75*width {
			ls.spilled = append(ls.spilled, s.Text)
			continue
		}
		if upright(s.Side) {
			ls.longest = max(ls.longest, d.wide)
		}
		ls.sizes = append(ls.sizes, d)
	}
	return ls
}

func (d laned) depth() float64 { return laneGap + tickRise + wordGap + lineRoom*float64(len(d.lines)) }

// most is the depth of a side if every size had a lane to itself.
func (ls lanes) most(side scene.Side) float64 {
	sum := 0.0
	for _, d := range ls.sizes {
		if d.Side == side {
			sum += d.depth()
		}
	}
	return sum
}

// arrange gives every size of the upright or of the level sides its lane: the
// shorter ones lie nearer the drawing. The bounds, counted from the drawing's
// lower left corner, are what words keep within.
func (ls *lanes) arrange(f frame, up bool, bounds box) {
	slices.SortStableFunc(ls.sizes, func(a, b laned) int { return cmp.Compare(a.span(), b.span()) })
	for i := range ls.sizes {
		d := &ls.sizes[i]
		if upright(d.Side) != up {
			continue
		}
		d.along(f, bounds)
		for slices.ContainsFunc(ls.sizes[:i], d.meets) {
			d.lane++
		}
	}
}

// span is the size's extent along its side.
func (d laned) span() float64 {
	if upright(d.Side) {
		return math.Abs(float64(d.To.Y - d.From.Y))
	}
	return math.Abs(float64(d.To.X - d.From.X))
}

// along works out where the line and its words lie, counted from the drawing's
// lower left corner.
func (d *laned) along(f frame, bounds box) {
	low, high := bounds.x0, bounds.x1
	if upright(d.Side) {
		low, high = bounds.y0, bounds.y1
	}
	a, _ := seenFrom(d.Side, d.From, f)
	b, _ := seenFrom(d.Side, d.To, f)
	d.from, d.to = min(a, b), max(a, b)
	d.mid = max(min((a+b)/2, high-d.wide/2), low+d.wide/2)
}

// reach is what the size takes of its lane.
func (d laned) reach() (low, high float64) {
	return min(d.from, d.mid-d.wide/2), max(d.to, d.mid+d.wide/2)
}

func (d *laned) meets(o laned) bool {
	if d.Side != o.Side || d.lane != o.lane {
		return false
	}
	a0, a1 := d.reach()
	b0, b1 := o.reach()
	return a0 < b1+laneApart && b0 < a1+laneApart
}

// offset is how far from the drawing a lane begins.
func (ls lanes) offset(side scene.Side, lane int) float64 {
	sum := 0.0
	for n := range lane {
		deepest := 0.0
		for _, d := range ls.sizes {
			if d.Side == side && d.lane == n {
				deepest = max(deepest, d.depth())
			}
		}
		sum += deepest
	}
	return sum
}

// depth is the room of all lanes along a side.
func (ls lanes) depth(side scene.Side) float64 {
	last := -1
	for _, d := range ls.sizes {
		if d.Side == side {
			last = max(last, d.lane)
		}
	}
	return ls.offset(side, last+1)
}

// dimensions draws the lines, their ends and their words.
func (t *setter) dimensions(ls lanes, f frame) {
	for _, d := range ls.sizes {
		t.dimension(d, ls.offset(d.Side, d.lane), f)
	}
}

// dimension draws one size: lines from its two points out to its lane, the line
// between them with a slanting stroke at each end, and the words beyond it. It
// is worked out as distances along the drawing's side and away from it.
func (t *setter) dimension(d laned, offset float64, f frame) {
	place := placing(d.Side, f)
	at := offset + laneGap + tickRise
	fine, faint, end := strokeStyle(inkColor, thin), strokeStyle(faintColor, thin), strokeStyle(inkColor, strong)
	for _, p := range []scene.Point{d.From, d.To} {
		along, inside := seenFrom(d.Side, p, f)
		t.between(place, along, -inside, along, at+tickRise, faint)
		t.between(place, along-tickRise*0.7, at+tickRise*0.7, along+tickRise*0.7, at-tickRise*0.7, end)
	}
	t.between(place, d.from, at, d.to, at, fine)
	for i, line := range d.lines {
		if d.Side == scene.Above || d.Side == scene.LeftOf {
			i = len(d.lines) - 1 - i // these lie the further out the earlier they are read
		}
		t.sizeLine(d, place, line, at+wordGap+lineRoom*float64(i))
	}
}

// seenFrom gives a point as its distance along a side of the drawing and how
// deep it lies inside of where the lanes of that side begin.
func seenFrom(side scene.Side, p scene.Point, f frame) (along, inside float64) {
	x, y := f.onPage(p.X-f.low.X), f.onPage(p.Y-f.low.Y)
	switch side {
	case scene.Above:
		return x, f.height - y + f.over
	case scene.LeftOf:
		return y, x
	case scene.RightOf:
		return y, f.width - x
	default:
		return x, y + f.over
	}
}

// placing turns distances along a side and away from it into places on the page.
func placing(side scene.Side, f frame) func(along, away float64) (x, y float64) {
	switch side {
	case scene.Above:
		return func(along, away float64) (float64, float64) { return f.x + along, f.y + f.height + f.over + away }
	case scene.LeftOf:
		return func(along, away float64) (float64, float64) { return f.x - away, f.y + along }
	case scene.RightOf:
		return func(along, away float64) (float64, float64) { return f.x + f.width + away, f.y + along }
	default:
		return func(along, away float64) (float64, float64) { return f.x + along, f.y - f.over - away }
	}
}

func (t *setter) between(place func(float64, float64) (float64, float64), a0, b0, a1, b1 float64, s canvas.Style) {
	x0, y0 := place(a0, b0)
	x1, y1 := place(a1, b1)
	t.line(x0, y0, x1, y1, s)
}

// sizeLine writes one line of a size's words; near is the distance of the
// line's edge that lies towards the drawing.
func (t *setter) sizeLine(d laned, place func(float64, float64) (float64, float64), words string, near float64) {
	w := t.measure(words, false, smallSize)
	l := text{words: words, size: smallSize, width: w, halo: paperColor, upright: upright(d.Side)}
	base := smallSize * mmPerPoint * ascent // from that edge to the baseline, where the words' heads are towards the drawing
	if d.Side == scene.Above || d.Side == scene.LeftOf {
		base = smallSize * mmPerPoint * descent
	}
	l.x, l.y = place(d.mid-w/2, near+base)
	t.texts = append(t.texts, l)
}
