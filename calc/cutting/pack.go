package cutting

import (
	"cmp"
	"fmt"
	"slices"
)

// packing looks for a plan with a fixed number of strips of each height: one
// height after another it tries the contents that can be part of such a plan,
// with the relaxation of what is left as a guide. It is exhaustive unless its
// effort ends.
type packing struct {
	*search
	failed map[string]bool // demands that cannot be met
	until  int64           // effort at which it gives up
	unsure bool            // something was left out
}

// pack looks for a plan that meets the demand with just the given strips. It
// tells whether it looked through all of them.
func (s *search) pack(d demand, strips []float64, bound int) (sure bool) {
	k := &packing{search: s, failed: map[string]bool{}, until: s.effort * 3 / 4}
	d = d.clone()
	for h, y := range strips {
		d.low[h] = int(y + 0.5)
		d.high[h] = d.low[h]
	}
	done, found := k.try(d, bound)
	if found {
		s.keep(done)
	}
	return found || !k.unsure
}

// tired tells whether the packing's effort has ended.
func (k *packing) tired() bool {
	ended := k.effort <= k.until || k.over()
	k.unsure = k.unsure || ended
	return ended
}

// try meets a demand at no more than a cost, or tells that it cannot be done.
func (k *packing) try(d demand, most int) ([]content, bool) {
	if d.met() {
		return nil, true
	}
	key := fmt.Sprint(d.need, d.high)
	if k.failed[key] {
		return nil, false
	}
	r, done := k.relax(d)
	if !done || k.tired() {
		k.unsure = true
		return nil, false
	}
	if r.feasible && r.cost <= float64(most)+1e-4 {
		if c := r.plan(); c != nil {
			return c, true
		}
		for _, c := range k.candidates(d, r, most) {
			rest := d.clone()
			rest.take(c)
			if found, ok := k.try(rest, most-k.p.cost(c)); ok {
				return append(found, c), true
			}
			if k.tired() {
				return nil, false
			}
		}
	}
	k.failed[key] = true
	return nil, false
}

// candidates are the contents that one strip of the next height can have: those
// that no further piece fits in, and whose own price does not lift the
// relaxation above the most that may be spent. The height is the one with the
// fewest of them; those of the relaxation come first.
func (k *packing) candidates(d demand, r relaxation, most int) []content {
	var fewest []content
	for h := range k.p.heights {
		if d.high[h] == 0 {
			continue
		}
		e := enumeration{problem: k.p, height: h, need: d.need, value: r.value,
			least: float64(k.p.heights[h]) - r.offset[h] - (float64(most) - r.cost) - 1e-4, steps: &k.steps}
		if c := e.contents(); fewest == nil || len(c) < len(fewest) {
			fewest = c
		}
	}
	k.unsure = k.unsure || len(fewest) > mostContents
	k.spend(k.steps)
	k.steps = 0
	times := func(c content) float64 {
		at := slices.IndexFunc(r.contents, func(x content) bool { return x.height == c.height && slices.Equal(x.count, c.count) })
		if at < 0 {
			return 0
		}
		return r.times[at]
	}
	slices.SortStableFunc(fewest, func(a, b content) int { return cmp.Compare(times(b), times(a)) })
	return fewest
}

// enumeration lists the contents of a strip that are worth at least so much.
type enumeration struct {
	*problem
	height int
	need   []int
	value  []float64
	least  float64
	steps  *int64

	order []int // items that fit, the most valuable for their width first
	count []int
	found []content
}

// mostContents is where an enumeration stops being of use.
const mostContents = 5000

func (e *enumeration) contents() []content {
	for i, n := range e.need {
		if n > 0 && e.fit[e.height][i].width > 0 {
			e.order = append(e.order, i)
		}
	}
	density := func(i int) float64 { return e.value[i] / float64(e.fit[e.height][i].width) }
	slices.SortStableFunc(e.order, func(a, b int) int { return cmp.Compare(density(b), density(a)) })
	e.count = make([]int, len(e.need))
	e.extend(0, e.width, 0)
	return e.found
}

// extend settles how many there are of the items from a place in the order on.
func (e *enumeration) extend(at, room int, value float64) {
	*e.steps++
	if at == len(e.order) {
		if value >= e.least && !e.holdsMore(room) {
			e.found = append(e.found, content{e.height, slices.Clone(e.count)})
		}
		return
	}
	i := e.order[at]
	w := e.fit[e.height][i].width
	if len(e.found) > mostContents || value+e.value[i]/float64(w)*float64(room) < e.least {
		return
	}
	for n := min(e.need[i], room/w); n >= 0; n-- {
		e.count[i] = n
		e.extend(at+1, room-n*w, value+float64(n)*e.value[i])
	}
	e.count[i] = 0
}

// holdsMore tells whether a further piece that is needed fits.
func (e *enumeration) holdsMore(room int) bool {
	for _, i := range e.order {
		if e.count[i] < e.need[i] && e.fit[e.height][i].width <= room {
			return true
		}
	}
	return false
}
