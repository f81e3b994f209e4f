package cutting

import (
	"cmp"
	"slices"
)

// firstFit lays piece after piece, the highest first, in the first strip with
// room, and opens a new strip where there is none. It does so with pieces lying,
// standing, and whichever way fills a strip of its own better, and gives the
// best of the three. Its plan is the one that a person would find.
func (p *problem) firstFit() []content {
	var best []content
	for _, opens := range []func(item int) int{p.lowestFor, p.highestFor, p.densestFor} {
		if c := p.firstFitWith(opens); best == nil || p.total(c) < p.total(best) {
			best = c
		}
	}
	return best
}

// firstFitWith opens new strips for an item at the height that a rule gives.
func (p *problem) firstFitWith(opens func(item int) int) []content {
	order := make([]int, len(p.items))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(opens(b), opens(a)), cmp.Compare(p.fit[opens(b)][b].width, p.fit[opens(a)][a].width))
	})
	var strips []content
	var room []int
	for _, i := range order {
		for range p.items[i].need {
			at := 0
			for ; at < len(strips); at++ {
				if w := p.fit[strips[at].height][i].width; w > 0 && w <= room[at] {
					break
				}
			}
			if at == len(strips) {
				strips = append(strips, content{opens(i), make([]int, len(p.items))})
				room = append(room, p.width)
			}
			strips[at].count[i]++
			room[at] -= p.fit[strips[at].height][i].width
		}
	}
	return strips
}

// lowestFor is the lowest strip that an item fits in.
func (p *problem) lowestFor(item int) int {
	return slices.IndexFunc(p.fit, func(f []fit) bool { return f[item].width > 0 })
}

// highestFor is the lowest strip in which an item takes the least width.
func (p *problem) highestFor(item int) int {
	last := p.fit[len(p.fit)-1][item].width
	return slices.IndexFunc(p.fit, func(f []fit) bool { return f[item].width == last })
}

// densestFor is the better of the two for strips of this item alone.
func (p *problem) densestFor(item int) int {
	low, high := p.lowestFor(item), p.highestFor(item)
	alone := func(height int) int {
		per := p.width / p.fit[height][item].width
		return (p.items[item].need + per - 1) / per * p.heights[height]
	}
	if alone(high) < alone(low) {
		return high
	}
	return low
}
