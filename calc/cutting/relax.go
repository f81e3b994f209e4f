package cutting

import (
	"slices"
	"strconv"
)

// demand is what a plan, or what is left to do of one, has to yield: so many of
// each item, in no fewer strips of a height than low and no more than high; a
// high of none is no bound.
type demand struct {
	need      []int
	low, high []int
}

// none is no bound on the strips of a height.
const none = -1

// relaxation is the linear relaxation of a demand: how often each content is
// cut, in parts.
type relaxation struct {
	cost     float64
	contents []content // those that are used
	times    []float64
	feasible bool
	value    []float64 // of one more of each item
	offset   []float64 // of one more strip of each height that is bounded
}

// pool holds every content that has been of use, so that no relaxation starts
// from nothing.
type pool struct {
	contents []content
	known    map[string]bool
}

// add takes in a content and tells whether it is new.
func (p *pool) add(c content) bool {
	key := strconv.Itoa(c.height)
	for _, n := range c.count {
		key += "," + strconv.Itoa(n)
	}
	if p.known[key] {
		return false
	}
	p.known[key] = true
	p.contents = append(p.contents, c)
	return true
}

// program is a relaxation in the making: rows for the items that are needed and
// for the bounds on strips, columns for contents.
type program struct {
	*simplex
	demand
	itemRow, lowRow, highRow []int     // of each item and height, none where there is no row
	contents                 []content // of the columns from firstContent on
	firstContent             int
}

// newProgram writes down the rows with their slack.
func (s *search) newProgram(d demand) *program {
	g := &program{demand: d}
	var b []float64
	row := func(needed bool, value int) int {
		if !needed {
			return none
		}
		b = append(b, float64(value))
		return len(b) - 1
	}
	for _, n := range d.need {
		g.itemRow = append(g.itemRow, row(n > 0, n))
	}
	for h := range d.low {
		g.lowRow = append(g.lowRow, row(d.low[h] > 0, d.low[h]))
		g.highRow = append(g.highRow, row(d.high[h] > 0, d.high[h]))
	}
	g.simplex = newSimplex(b, float64(s.p.heights[len(s.p.heights)-1]))
	slack := func(rows []int, sign float64) {
		for _, r := range rows {
			if r != none {
				column := g.simplex.column()
				column[r] = sign
				g.add(column, 0)
			}
		}
	}
	slack(g.itemRow, -1)
	slack(g.lowRow, -1)
	slack(g.highRow, 1)
	g.firstContent = len(g.columns)
	return g
}

// addContent adds a content's column, unless its strips are not allowed.
func (g *program) addContent(c content, cost int) {
	if g.high[c.height] == 0 {
		return
	}
	column := g.simplex.column()
	for i, r := range g.itemRow {
		if r != none {
			column[r] = float64(c.count[i])
		}
	}
	for _, r := range []int{g.lowRow[c.height], g.highRow[c.height]} {
		if r != none {
			column[r] = 1
		}
	}
	g.add(column, float64(cost))
	g.contents = append(g.contents, c)
}

// relax solves the relaxation of a demand, generating contents for as long as
// any makes it cheaper. It gives false where it could not finish.
func (s *search) relax(d demand) (relaxation, bool) {
	g := s.newProgram(d)
	for _, c := range s.pool.contents {
		g.addContent(c, s.p.cost(c))
	}
	s.spend(int64(len(g.columns) * g.rows))
	prices := make([]float64, g.rows)
	for {
		solved := g.minimise()
		s.spend(g.simplex.steps)
		g.simplex.steps = 0
		if !solved || s.over() {
			return relaxation{}, false
		}
		g.duals(prices)
		r := g.result(prices)
		if !s.generate(g, r) {
			return r, true
		}
	}
}

// generate adds the content of each height that makes the relaxation cheaper by
// most, and tells whether there was any.
func (s *search) generate(g *program, r relaxation) bool {
	found := false
	for h, height := range s.p.heights {
		if g.high[h] == 0 {
			continue
		}
		count, total := s.filler.fill(h, r.value, g.need)
		if total <= float64(height)-r.offset[h]+10*tolerance {
			continue
		}
		if c := (content{h, count}); s.pool.add(c) {
			g.addContent(c, height)
			found = true
		}
	}
	s.spend(s.filler.steps)
	s.filler.steps = 0
	return found
}

// result reads the solution off the basis and the rows' prices.
func (g *program) result(prices []float64) relaxation {
	r := relaxation{cost: g.cost(), feasible: g.feasible(), value: make([]float64, len(g.need)), offset: make([]float64, len(g.low))}
	for i, row := range g.itemRow {
		if row != none {
			r.value[i] = prices[row]
		}
	}
	for h := range g.low {
		for _, row := range []int{g.lowRow[h], g.highRow[h]} {
			if row != none {
				r.offset[h] += prices[row]
			}
		}
	}
	times := make([]float64, len(g.contents))
	for row, c := range g.basis {
		if c >= g.firstContent {
			times[c-g.firstContent] = g.value[row]
		}
	}
	for i, t := range times {
		if t > 1e-9 {
			r.contents = append(r.contents, g.contents[i])
			r.times = append(r.times, t)
		}
	}
	return r
}

// plan gives the contents where all of them are cut whole times, else nothing.
func (r relaxation) plan() []content {
	var plan []content
	for i, t := range r.times {
		n := int(t + 0.5)
		if d := t - float64(n); d > 1e-6 || d < -1e-6 {
			return nil
		}
		plan = append(plan, slices.Repeat([]content{r.contents[i]}, n)...)
	}
	return plan
}
