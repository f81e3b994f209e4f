package cutting

import (
	"slices"

	"counterhand/calc/measure"
)

// plan writes the best contents down in the request's own pieces.
func (s *search) plan(r Request) Plan {
	p := s.p
	strips := p.trim(s.best)
	p.sortContents(strips)
	plan := Plan{AtLeast: measure.Length(s.bound) * p.heightUnit}
	left := make([]int, len(r.Pieces))
	for i, piece := range r.Pieces {
		left[i] = piece.Count
	}
	for _, c := range strips {
		strip := p.strip(r, c, left)
		plan.Length += strip.Height
		if last := len(plan.Strips) - 1; last >= 0 && alike(plan.Strips[last], strip) {
			plan.Strips[last].Times++
			continue
		}
		plan.Strips = append(plan.Strips, strip)
	}
	plan.Optimal = plan.Length <= plan.AtLeast
	plan.AtLeast = min(plan.AtLeast, plan.Length)
	plan.Waste = waste(r, plan.Length)
	return plan
}

// trim takes away what is cut beyond the need, from the last strip on, drops
// strips that are left empty and lowers those that can be lower.
func (p *problem) trim(contents []content) []content {
	over := make([]int, len(p.items))
	for i, it := range p.items {
		over[i] = -it.need
		for _, c := range contents {
			over[i] += c.count[i]
		}
	}
	var kept []content
	for _, c := range slices.Backward(contents) {
		c.count = slices.Clone(c.count)
		total := 0
		for i := range c.count {
			n := min(c.count[i], over[i])
			c.count[i] -= n
			over[i] -= n
			total += c.count[i]
		}
		if total > 0 {
			kept = append(kept, p.lowest(c))
		}
	}
	return kept
}

// strip names the pieces of one strip, taking them off what is left to cut.
func (p *problem) strip(r Request, c content, left []int) Strip {
	s := Strip{Height: measure.Length(p.heights[c.height]) * p.heightUnit, Times: 1}
	for i, n := range c.count {
		lies := p.fit[c.height][i].way
		for _, at := range p.items[i].pieces {
			k := min(n, left[at])
			if k == 0 {
				continue
			}
			n -= k
			left[at] -= k
			s.Cuts = append(s.Cuts, Cut{Piece: at, Count: k, Turned: lies.width != r.Pieces[at].Width, Width: lies.width, Height: lies.height})
			s.Used += measure.Length(k) * lies.width
		}
	}
	return s
}

// alike tells whether two strips are cut the same way.
func alike(a, b Strip) bool {
	return a.Height == b.Height && slices.Equal(a.Cuts, b.Cuts)
}

// waste is the share of a length of fabric that is in no piece, in percent.
func waste(r Request, length measure.Length) float64 {
	pieces := 0.0
	for _, p := range r.Pieces {
		pieces += float64(p.Count) * float64(p.Width) * float64(p.Length)
	}
	return 100 * (1 - pieces/(float64(r.Width)*float64(length)))
}

// Placed is a piece where it lies on the fabric, from the corner where the
// cutting starts.
type Placed struct {
	Piece         int            // its place in the request
	Across, Along measure.Length // of its nearest corner
	Width, Height measure.Length // across and along the fabric
}

// Layout lays the strips one after another and the pieces side by side.
func (p Plan) Layout() []Placed {
	var placed []Placed
	along := measure.Length(0)
	for _, s := range p.Strips {
		for range s.Times {
			across := measure.Length(0)
			for _, c := range s.Cuts {
				for range c.Count {
					placed = append(placed, Placed{c.Piece, across, along, c.Width, c.Height})
					across += c.Width
				}
			}
			along += s.Height
		}
	}
	return placed
}
