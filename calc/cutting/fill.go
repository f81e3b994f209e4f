package cutting

// filler finds the most valuable content of a strip: a knapsack with so many of
// each item, by dynamic programming over the width.
type filler struct {
	p     *problem
	best  []float64 // by width used at most
	taken [][]bool  // by lot, then by width
	lots  []lot
	steps int64
}

// lot is a number of one item, taken together or not at all. Lots of 1, 2, 4, …
// and a rest make up every number.
type lot struct{ item, count, width int }

// fill gives the content of greatest value for a strip of some height, with no
// more of an item than is needed, and its value.
func (f *filler) fill(height int, value []float64, need []int) (count []int, total float64) {
	width := f.p.width
	if f.best == nil {
		f.best = make([]float64, width+1)
	}
	clear(f.best)
	f.lots = f.lots[:0]
	for i, v := range value {
		w := f.p.fit[height][i].width
		if v <= tolerance || w == 0 {
			continue
		}
		for most, n := min(need[i], width/w), 1; most > 0; n *= 2 {
			n = min(n, most)
			most -= n
			f.take(lot{i, n, n * w}, v*float64(n))
		}
	}
	count = make([]int, len(value))
	room := width
	for k := len(f.lots) - 1; k >= 0; k-- {
		if l := f.lots[k]; f.taken[k][room] {
			count[l.item] += l.count
			room -= l.width
		}
	}
	return count, f.best[width]
}

// take lets every width choose whether to have the lot.
func (f *filler) take(l lot, value float64) {
	k := len(f.lots)
	f.lots = append(f.lots, l)
	if k == len(f.taken) {
		f.taken = append(f.taken, make([]bool, len(f.best)))
	}
	taken, best := f.taken[k], f.best
	clear(taken)
	for w := len(best) - 1; w >= l.width; w-- {
		if v := best[w-l.width] + value; v > best[w]+1e-12 {
			best[w] = v
			taken[w] = true
		}
	}
	f.steps += int64(len(best) - l.width)
}
