package cutting

import (
	"cmp"
	"slices"

	"counterhand/calc/measure"
)

// problem is a request in whole units: widths in the largest unit that divides
// them all, heights likewise in one of their own.
type problem struct {
	items   []item
	width   int     // of the fabric, rounded down to the unit
	heights []int   // that a strip may have, ascending
	fit     [][]fit // by height, then by item

	widthUnit, heightUnit measure.Length
}

// item is one size with its count; equal pieces of the request share one.
type item struct {
	need   int
	pieces []int // of the request
}

// fit is how an item lies in a strip of some height: the narrower way of those
// that fit. No width means that it does not.
type fit struct {
	width int
	way   way
}

// content is what one strip yields: so many of each item.
type content struct {
	height int // index of the strip's height
	count  []int
}

// newProblem puts a request that has been checked into units.
func newProblem(r Request) *problem {
	type size struct {
		width, length measure.Length
		oneWay        bool
	}
	p := &problem{}
	var sizes []size
	for i, piece := range r.Pieces {
		z := size{piece.Width, piece.Length, piece.OneWay}
		if z.width == z.length {
			z.oneWay = true
		}
		if !z.oneWay && z.width > z.length {
			z.width, z.length = z.length, z.width
		}
		at := slices.Index(sizes, z)
		if at < 0 {
			at = len(sizes)
			sizes = append(sizes, z)
			p.items = append(p.items, item{})
		}
		p.items[at].need += piece.Count
		p.items[at].pieces = append(p.items[at].pieces, i)
	}
	ways := make([][]way, len(sizes))
	for i, z := range sizes {
		if z.width <= r.Width {
			ways[i] = append(ways[i], way{z.width, z.length})
		}
		if !z.oneWay && z.length <= r.Width {
			ways[i] = append(ways[i], way{z.length, z.width})
		}
		for _, w := range ways[i] {
			p.widthUnit = gcd(p.widthUnit, w.width)
			p.heightUnit = gcd(p.heightUnit, w.height)
		}
	}
	p.widthUnit = max(p.widthUnit, r.Width/mostUnits)
	p.width = int(r.Width / p.widthUnit)
	p.lay(ways)
	return p
}

// mostUnits is the most units that the width is divided in. Widths that need
// finer units are rounded up, so that plans still can be cut.
const mostUnits = 100_000

// way is one of the two ways that a size lies on the fabric.
type way struct{ width, height measure.Length }

// lay finds the heights that strips may have, and how items lie in each.
func (p *problem) lay(ways [][]way) {
	for _, item := range ways {
		for _, w := range item {
			p.heights = append(p.heights, int(w.height/p.heightUnit))
		}
	}
	slices.Sort(p.heights)
	p.heights = slices.Compact(p.heights)
	p.fit = make([][]fit, len(p.heights))
	for s, h := range p.heights {
		p.fit[s] = make([]fit, len(ways))
		for i, item := range ways {
			for _, w := range item {
				f := fit{width: int((w.width + p.widthUnit - 1) / p.widthUnit), way: w}
				fits := int(w.height/p.heightUnit) <= h && f.width <= p.width
				if fits && (p.fit[s][i].width == 0 || f.width < p.fit[s][i].width) {
					p.fit[s][i] = f
				}
			}
		}
	}
}

// lowest gives a content the lowest strip that holds it.
func (p *problem) lowest(c content) content {
	for s := range p.heights[:c.height] {
		if p.holds(s, c.count) {
			c.height = s
			break
		}
	}
	return c
}

// holds tells whether a strip of some height holds so many of each item.
func (p *problem) holds(height int, count []int) bool {
	room := p.width
	for i, n := range count {
		if n == 0 {
			continue
		}
		w := p.fit[height][i].width
		if w == 0 || n > room/w {
			return false
		}
		room -= n * w
	}
	return true
}

// needs is the count of each item.
func (p *problem) needs() []int {
	d := make([]int, len(p.items))
	for i, it := range p.items {
		d[i] = it.need
	}
	return d
}

// cost is the height of a content's strip, in units.
func (p *problem) cost(c content) int { return p.heights[c.height] }

// cost of contents is the sum of their heights.
func (p *problem) total(contents []content) int {
	sum := 0
	for _, c := range contents {
		sum += p.cost(c)
	}
	return sum
}

// sortContents puts contents in the order in which they are shown: the highest
// first, alike ones together.
func (p *problem) sortContents(contents []content) {
	slices.SortFunc(contents, func(a, b content) int {
		return cmp.Or(cmp.Compare(b.height, a.height), slices.Compare(b.count, a.count))
	})
}

func gcd(a, b measure.Length) measure.Length {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
