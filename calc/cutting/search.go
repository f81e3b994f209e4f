package cutting

import (
	"cmp"
	"container/heap"
	"context"
	"math"
	"slices"
)

// search is a branch and bound over the numbers of strips of each height. The
// relaxation of a demand bounds its plans from below; where the numbers of
// strips come out whole, a dive looks for a plan with just those strips.
type search struct {
	ctx    context.Context
	p      *problem
	pool   pool
	filler filler

	effort int64 // steps left
	steps  int64 // taken and not yet counted

	best     []content
	bestCost int
	bound    int // no plan costs less
}

func newSearch(ctx context.Context, p *problem, effort int64) *search {
	s := &search{ctx: ctx, p: p, effort: effort, pool: pool{known: map[string]bool{}}, filler: filler{p: p}}
	s.best = p.firstFit()
	s.bestCost = p.total(s.best)
	return s
}

func (s *search) spend(steps int64) { s.effort -= steps }

// over tells whether the effort or the context has ended.
func (s *search) over() bool { return s.effort <= 0 || s.ctx.Err() != nil }

// node is a part of all plans: those with so many strips of each height.
type node struct {
	low, high []int
	bound     int
	number    int // in order of making, so that equal nodes come in a fixed order
}

// run goes through the nodes, the least bound first, until that is no less than
// the best plan.
func (s *search) run() {
	heights := len(s.p.heights)
	q := queue{{low: make([]int, heights), high: slices.Repeat([]int{none}, heights)}}
	unsure := math.MaxInt
	for made := 1; len(q) > 0; {
		n := heap.Pop(&q).(*node)
		s.bound = min(n.bound, unsure)
		if n.bound >= s.bestCost {
			break
		}
		children, left := s.expand(n)
		if s.over() {
			return
		}
		unsure = min(unsure, left)
		for _, c := range children {
			c.number = made
			made++
			heap.Push(&q, c)
		}
	}
	s.bound = min(s.bestCost, unsure)
}

// expand solves a node and splits what is left of it. Where some of the node's
// own plans are in no child and were not looked through, left is their bound.
func (s *search) expand(n *node) (children []*node, left int) {
	d := demand{s.p.needs(), n.low, n.high}
	r, done := s.relax(d)
	if !done {
		return nil, n.bound
	}
	if !r.feasible {
		return nil, math.MaxInt
	}
	bound := max(n.bound, int(math.Ceil(r.cost-1e-4)))
	if bound >= s.bestCost {
		return nil, math.MaxInt
	}
	strips := s.strips(r)
	at := mostSplit(strips)
	if at < 0 || n.number&(n.number-1) == 0 { // ever more rarely
		s.dive(d, r)
	}
	if bound >= s.bestCost || s.over() {
		return nil, math.MaxInt
	}
	if at >= 0 {
		return n.split(at, int(math.Floor(strips[at])), bound), math.MaxInt
	}
	left = math.MaxInt
	if !s.pack(d, strips, bound) {
		left = bound
	}
	return n.around(strips, bound), left
}

// strips is how many strips of each height a relaxation takes.
func (s *search) strips(r relaxation) []float64 {
	y := make([]float64, len(s.p.heights))
	for i, c := range r.contents {
		y[c.height] += r.times[i]
	}
	return y
}

// mostSplit is the height whose number of strips is farthest from whole, none
// where all are whole.
func mostSplit(strips []float64) int {
	at, most := none, 1e-5
	for h, y := range strips {
		if d := math.Abs(y - math.Round(y)); d > most {
			at, most = h, d
		}
	}
	return at
}

// split makes the two nodes with at most, and with more than, so many strips of
// a height.
func (n *node) split(height, most, bound int) []*node {
	fewer := &node{low: n.low, high: slices.Clone(n.high), bound: bound}
	fewer.high[height] = most
	more := &node{low: slices.Clone(n.low), high: n.high, bound: bound}
	more.low[height] = most + 1
	return []*node{more, fewer}
}

// around makes the nodes that leave out just the given whole numbers of strips:
// each differs from them in one height, and agrees in those before it.
func (n *node) around(strips []float64, bound int) []*node {
	var nodes []*node
	low, high := slices.Clone(n.low), slices.Clone(n.high)
	for h, y := range strips {
		k := int(math.Round(y))
		if k > low[h] {
			fewer := &node{low: slices.Clone(low), high: slices.Clone(high), bound: bound}
			fewer.high[h] = k - 1
			nodes = append(nodes, fewer)
		}
		if high[h] == none || k < high[h] {
			more := &node{low: slices.Clone(low), high: slices.Clone(high), bound: bound}
			more.low[h] = k + 1
			nodes = append(nodes, more)
		}
		low[h], high[h] = k, k
	}
	return nodes
}

// dive rounds a relaxation to a plan: whole contents are cut as often as they
// are in it, else the one that is in it most, and what is left is solved again.
func (s *search) dive(d demand, r relaxation) {
	d = d.clone()
	var done []content
	cost := 0
	for {
		for i, t := range whole(r.times) {
			for range t {
				done = append(done, r.contents[i])
				cost += s.p.cost(r.contents[i])
				d.take(r.contents[i])
			}
		}
		if d.met() {
			s.keep(done)
			return
		}
		var ok bool
		if r, ok = s.relax(d); !ok || !r.feasible || cost+int(math.Ceil(r.cost-1e-4)) >= s.bestCost {
			return
		}
	}
}

// whole rounds times down, or, where nothing would be left, the largest up.
func whole(times []float64) []int {
	n := make([]int, len(times))
	most, any := 0, false
	for i, t := range times {
		n[i] = int(t + 1e-6)
		any = any || n[i] > 0
		if t > times[most] {
			most = i
		}
	}
	if !any && len(n) > 0 {
		n[most] = 1
	}
	return n
}

// keep remembers a plan if it is the best so far.
func (s *search) keep(plan []content) {
	if cost := s.p.total(plan); cost < s.bestCost {
		s.best, s.bestCost = plan, cost
	}
}

func (d demand) clone() demand {
	return demand{slices.Clone(d.need), slices.Clone(d.low), slices.Clone(d.high)}
}

// take cuts one strip off a demand.
func (d demand) take(c content) {
	for i, n := range c.count {
		d.need[i] = max(0, d.need[i]-n)
	}
	d.low[c.height] = max(0, d.low[c.height]-1)
	if d.high[c.height] > 0 {
		d.high[c.height]--
	}
}

// met tells whether nothing is needed any more.
func (d demand) met() bool {
	return !slices.ContainsFunc(d.need, func(n int) bool { return n > 0 })
}

// queue holds nodes, the least bound first, then the last made.
type queue []*node

func (q queue) Len() int { return len(q) }
func (q queue) Less(i, j int) bool {
	return cmp.Or(cmp.Compare(q[i].bound, q[j].bound), cmp.Compare(q[j].number, q[i].number)) < 0
}
func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *queue) Push(x any)   { *q = append(*q, x.(*node)) }
func (q *queue) Pop() any {
	last := (*q)[len(*q)-1]
	*q = (*q)[:len(*q)-1]
	return last
}
