package cutting

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// benchList is one list of ../../testdata/cutting.json, which names the sources.
type benchList struct {
	Name, Unit string
	Width      float64
	Optimum    float64
	Items      [][4]float64 // width, height, copies, and 1 where it may be turned
}

func benchLists(t testing.TB) []benchList {
	t.Helper()
	raw, err := os.ReadFile("../../testdata/cutting.json")
	require.NoError(t, err)
	var file struct{ Lists []benchList }
	require.NoError(t, json.Unmarshal(raw, &file))
	require.NotEmpty(t, file.Lists)
	return file.Lists
}

// length gives a number of the list in its unit.
func (l benchList) length(v float64) measure.Length {
	if l.Unit == "mm" {
		return measure.Length(v) * measure.Millimetre
	}
	return measure.Inches(v)
}

func (l benchList) request() Request {
	r := Request{Width: l.length(l.Width)}
	for _, i := range l.Items {
		r.Pieces = append(r.Pieces, Piece{Width: l.length(i[0]), Length: l.length(i[1]), Count: int(i[2]), OneWay: i[3] == 0})
	}
	return r
}

// ours tells whether the list was made for quilts; the others are harder, and
// need not be solved to the end.
func (l benchList) ours() bool { return l.Unit == "in" }

// best plans a request and checks that the plan can be cut.
func best(t testing.TB, r Request) Plan {
	t.Helper()
	p, err := Best(context.Background(), r)
	require.NoError(t, err)
	requireCuttable(t, r, p)
	return p
}

// requireCuttable checks a plan by counting, piece by piece.
func requireCuttable(t testing.TB, r Request, p Plan) {
	t.Helper()
	got := make([]int, len(r.Pieces))
	length := measure.Length(0)
	for _, s := range p.Strips {
		used := measure.Length(0)
		for _, c := range s.Cuts {
			piece := r.Pieces[c.Piece]
			width, height := piece.Width, piece.Length
			if c.Turned {
				require.False(t, piece.OneWay, "a piece is turned that may not be")
				width, height = height, width
			}
			require.Equal(t, width, c.Width)
			require.Equal(t, height, c.Height)
			require.LessOrEqual(t, height, s.Height, "a piece is higher than its strip")
			used += measure.Length(c.Count) * width
			got[c.Piece] += c.Count * s.Times
		}
		require.Equal(t, used, s.Used)
		require.LessOrEqual(t, used, r.Width, "a strip is longer than the fabric is wide")
		length += measure.Length(s.Times) * s.Height
	}
	require.Equal(t, length, p.Length)
	require.LessOrEqual(t, p.AtLeast, p.Length)
	for i, piece := range r.Pieces {
		require.Equal(t, piece.Count, got[i], "copies of piece %d", i)
	}
}

func TestListsAreSolvedToTheirOptimum(t *testing.T) {
	for _, l := range benchLists(t) {
		t.Run(l.Name, func(t *testing.T) {
			r := l.request()
			if !l.ours() {
				r.Effort = DefaultEffort / 4
			}
			p := best(t, r)
			optimum := l.length(l.Optimum)
			assert.GreaterOrEqual(t, p.Length, optimum, "shorter than can be")
			assert.LessOrEqual(t, p.AtLeast, optimum, "a bound that is none")
			if l.ours() {
				assert.Equal(t, optimum, p.Length)
				assert.True(t, p.Optimal)
			}
			if p.Optimal {
				assert.Equal(t, optimum, p.Length)
			}
		})
	}
}

// The shared lists are the same as those kept here.
func TestListsAreThoseOfTheBench(t *testing.T) {
	raw, err := os.ReadFile("../../../shared/cutting-bench/optima.json")
	if errors.Is(err, os.ErrNotExist) {
		t.Skip("the bench is not beside the repository")
	}
	require.NoError(t, err)
	var bench struct {
		Lists []struct {
			Name      string
			Objective string
			Optimum   float64
		}
	}
	require.NoError(t, json.Unmarshal(raw, &bench))
	kept := map[string]float64{}
	for _, l := range benchLists(t) {
		kept[l.Name] = l.Optimum
	}
	for _, l := range bench.Lists {
		if l.Objective == "length" {
			assert.Equal(t, l.Optimum, kept[l.Name], l.Name)
		}
	}
}

// randomRequest makes a small list on whole inches or half inches.
func randomRequest(rng *rand.Rand, sizes, copies int) Request {
	unit := measure.Inch / measure.Length(1+rng.IntN(2))
	r := Request{Width: measure.Length(8+rng.IntN(8)) * unit}
	for range 1 + rng.IntN(sizes) {
		r.Pieces = append(r.Pieces, Piece{
			Width:  measure.Length(1+rng.IntN(8)) * unit,
			Length: measure.Length(1+rng.IntN(12)) * unit,
			Count:  1 + rng.IntN(copies),
			OneWay: rng.IntN(3) == 0,
		})
	}
	return r
}

// everyPlan finds the least length by trying each piece in every strip there is
// and in a new one, both ways round.
func everyPlan(r Request) measure.Length {
	var pieces []Piece
	for _, p := range r.Pieces {
		pieces = append(pieces, slices.Repeat([]Piece{p}, p.Count)...)
	}
	type strip struct{ used, height measure.Length }
	shortest := measure.Length(1 << 60)
	var place func(at int, strips []strip, length measure.Length)
	place = func(at int, strips []strip, length measure.Length) {
		if length >= shortest {
			return
		}
		if at == len(pieces) {
			shortest = length
			return
		}
		p := pieces[at]
		ways := [][2]measure.Length{{p.Width, p.Length}}
		if !p.OneWay && p.Width != p.Length {
			ways = append(ways, [2]measure.Length{p.Length, p.Width})
		}
		for _, w := range ways {
			for i := range len(strips) + 1 {
				next := slices.Clone(strips)
				if i == len(strips) {
					next = append(next, strip{})
				}
				if next[i].used += w[0]; next[i].used > r.Width {
					continue
				}
				grown := max(0, w[1]-next[i].height)
				next[i].height += grown
				place(at+1, next, length+grown)
			}
		}
	}
	place(0, nil, 0)
	return shortest
}

func TestSmallListsAgreeWithEveryPlan(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		r := randomRequest(rng, 4, 2)
		p := best(t, r)
		require.True(t, p.Optimal, "%+v", r)
		require.Equal(t, everyPlan(r), p.Length, "%+v", r)
	}
}

func TestMoreNeverTakesLess(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		r := randomRequest(rng, 5, 12)
		p := best(t, r)

		wider := r
		wider.Width += measure.Inch
		assert.LessOrEqual(t, best(t, wider).AtLeast, p.Length, "wider fabric, %+v", r)

		more := r
		more.Pieces = slices.Clone(r.Pieces)
		more.Pieces[0].Count++
		assert.GreaterOrEqual(t, best(t, more).Length, p.AtLeast, "one piece more, %+v", r)

		twice := r
		twice.Pieces = slices.Clone(r.Pieces)
		for i := range twice.Pieces {
			twice.Pieces[i].Count *= 2
		}
		assert.LessOrEqual(t, best(t, twice).AtLeast, 2*p.Length, "twice the pieces, %+v", r)

		oneWay := r
		oneWay.Pieces = slices.Clone(r.Pieces)
		for i := range oneWay.Pieces {
			oneWay.Pieces[i].OneWay = true
		}
		assert.LessOrEqual(t, p.AtLeast, best(t, oneWay).Length, "turning allowed, %+v", r)
	}
}

func TestUnitsDoNotMatter(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 50 {
		r := randomRequest(rng, 4, 6)
		metric := Request{Width: r.Width / 254 * 200} // an inch as 2 cm
		for _, p := range r.Pieces {
			p.Width, p.Length = p.Width/254*200, p.Length/254*200
			metric.Pieces = append(metric.Pieces, p)
		}
		assert.Equal(t, best(t, r).Length/254*200, best(t, metric).Length)
	}
}

func TestSamePlanEveryTime(t *testing.T) {
	for _, l := range benchLists(t)[:20] {
		first := best(t, l.request())
		assert.Equal(t, first, best(t, l.request()), l.Name)
	}
}

// rectangle is a piece as a polygon, in inches.
func rectangle(t testing.TB, p Placed) geom.Geometry {
	t.Helper()
	x0, y0 := p.Across.Inches(), p.Along.Inches()
	x1, y1 := (p.Across + p.Width).Inches(), (p.Along + p.Height).Inches()
	g, err := geom.UnmarshalWKT(fmt.Sprintf("POLYGON((%v %v,%v %v,%v %v,%v %v,%v %v))", x0, y0, x1, y0, x1, y1, x0, y1, x0, y0))
	require.NoError(t, err)
	return g
}

// A general geometry library finds no overlap and nothing outside the fabric.
func TestPiecesLieApartAndOnTheFabric(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	for range 20 {
		r := randomRequest(rng, 4, 5)
		p := best(t, r)
		fabric := rectangle(t, Placed{Width: r.Width, Height: p.Length})
		var area float64
		var pieces []geom.Geometry
		for _, placed := range p.Layout() {
			g := rectangle(t, placed)
			covered, err := geom.Covers(fabric, g)
			require.NoError(t, err)
			require.True(t, covered)
			pieces = append(pieces, g)
			area += g.Area()
		}
		all, err := geom.UnionMany(pieces)
		require.NoError(t, err)
		assert.InDelta(t, area, all.Area(), 1e-6, "pieces overlap")
		assert.InDelta(t, p.Waste, 100*(1-area/fabric.Area()), 1e-6)
	}
}

func TestWasteAndNames(t *testing.T) {
	// 52 squares of 4 in and 20 of 3 in from 44 in: five strips of 4 in and two
	// of 3 in, 26 in. Source: https://www.quiltingboard.com, thread t131707.
	r := Request{Width: 44 * measure.Inch, Pieces: []Piece{
		{Name: "large", Width: 4 * measure.Inch, Length: 4 * measure.Inch, Count: 52},
		{Name: "small", Width: 3 * measure.Inch, Length: 3 * measure.Inch, Count: 20},
	}}
	p := best(t, r)
	assert.Equal(t, 26*measure.Inch, p.Length)
	assert.True(t, p.Optimal)
	assert.InDelta(t, 100*(1-(52*16+20*9)/(44.0*26)), p.Waste, 1e-9)
}

func TestRefuses(t *testing.T) {
	good := Piece{Width: measure.Inch, Length: measure.Inch, Count: 1}
	change := func(f func(*Piece)) Request {
		p := good
		f(&p)
		return Request{Width: 40 * measure.Inch, Pieces: []Piece{p}}
	}
	for name, c := range map[string]struct {
		request Request
		want    error
	}{
		"no pieces":      {Request{Width: measure.Yard}, ErrNothing},
		"no copies":      {change(func(p *Piece) { p.Count = 0 }), ErrNothing},
		"no width":       {change(func(p *Piece) { p.Width = 0 }), ErrDimension},
		"negative":       {change(func(p *Piece) { p.Length = -measure.Inch }), ErrDimension},
		"beyond measure": {change(func(p *Piece) { p.Length = MaxLength + 1 }), ErrDimension},
		"no fabric":      {Request{Pieces: []Piece{good}}, ErrDimension},
		"too many":       {change(func(p *Piece) { p.Count = MaxPieces + 1 }), ErrTooMany},
		"too many sizes": {Request{Width: measure.Yard, Pieces: slices.Repeat([]Piece{good}, MaxSizes+1)}, ErrTooMany},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := Best(context.Background(), c.request)
			assert.ErrorIs(t, err, c.want)
		})
	}

	var wide *TooWideError
	_, err := Best(context.Background(), change(func(p *Piece) { p.Width, p.Length = 50*measure.Inch, 50*measure.Inch }))
	require.ErrorAs(t, err, &wide)
	assert.Equal(t, 40*measure.Inch, wide.Fabric)
	_, err = Best(context.Background(), change(func(p *Piece) { p.Width, p.OneWay = 50*measure.Inch, true }))
	assert.ErrorAs(t, err, &wide)
}

func TestContextEnds(t *testing.T) {
	ended, cancel := context.WithCancel(context.Background())
	cancel()
	_, err := Best(ended, benchLists(t)[0].request())
	assert.ErrorIs(t, err, context.Canceled)
}

func TestLittleEffortStillGivesAPlan(t *testing.T) {
	for _, l := range benchLists(t) {
		r := l.request()
		r.Effort = 1
		p := best(t, r)
		assert.GreaterOrEqual(t, p.Length, l.length(l.Optimum), l.Name)
	}
}

func FuzzBest(f *testing.F) {
	f.Add(uint16(640), []byte{40, 40, 9, 0, 24, 104, 3, 1})
	f.Add(uint16(1), []byte{1, 1, 1, 0})
	f.Fuzz(func(t *testing.T, width uint16, sizes []byte) {
		r := Request{Width: measure.Length(width) * measure.Inch / 16, Effort: 2000}
		for ; len(sizes) >= 4; sizes = sizes[4:] {
			r.Pieces = append(r.Pieces, Piece{
				Width:  measure.Length(sizes[0]) * measure.Inch / 16,
				Length: measure.Length(sizes[1]) * measure.Inch / 16,
				Count:  int(sizes[2]),
				OneWay: sizes[3]%2 == 1,
			})
		}
		p, err := Best(context.Background(), r)
		if err == nil {
			requireCuttable(t, r, p)
		}
	})
}

func BenchmarkBest(b *testing.B) {
	for _, l := range benchLists(b)[:20] {
		r := l.request()
		b.Run(l.Name, func(b *testing.B) {
			for b.Loop() {
				if _, err := Best(context.Background(), r); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
