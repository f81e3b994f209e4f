package calc

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

func TestYardage(t *testing.T) {
	v := ImperialConventions()
	for name, c := range map[string]struct {
		request    YardageRequest
		per        int
		strips     int
		strip      float64
		length     float64
		yards      float64
		sparePiece int
	}{
		// https://inspirepoint.com (need math help): 26 strips, 169 in.
		"156 squares of 6½":  {YardageRequest{Conventions: v, Count: 156, Piece: inches(6.5, 6.5)}, 6, 26, 6.5, 169, 4.75, 0},
		"one way":            {YardageRequest{Conventions: v, Count: 40, Piece: inches(2.5, 6.5), OneWay: true}, 16, 3, 6.5, 19.5, 0.625, 8},
		"the same, any way":  {YardageRequest{Conventions: v, Count: 40, Piece: inches(2.5, 6.5)}, 6, 7, 2.5, 17.5, 0.5, 2},
		"finished":           {YardageRequest{Conventions: v, Count: 36, Piece: inches(4, 4), Finished: true}, 8, 5, 4.5, 22.5, 0.625, 4},
		"longer than fabric": {YardageRequest{Conventions: v, Count: 3, Piece: inches(50, 10)}, 4, 1, 50, 50, 1.5, 1},
		"with waste": {YardageRequest{Conventions: v, Count: 156, Piece: inches(6.5, 6.5), Waste: 10, Straighten: 2 * in},
			6, 26, 6.5, 169, 5.25, 0},
	} {
		t.Run(name, func(t *testing.T) {
			y, err := Yardage(c.request)
			require.NoError(t, err)
			assert.Equal(t, c.per, y.PerStrip)
			assert.Equal(t, c.strips, y.Strips)
			assert.Equal(t, c.strip, y.StripWidth.Inches())
			assert.Equal(t, c.length, y.Length.Inches())
			assert.Equal(t, c.yards, measure.Length(y.Buy).In(measure.Yard))
			assert.Equal(t, c.sparePiece, y.SparePieces)
			assert.Equal(t, measure.Length(y.Buy), y.Need+y.LeftOver)
		})
	}
}

func TestYardageTellsWhatHangsOnTheWidth(t *testing.T) {
	// 14 in pieces from 42 in: three fill the strip to the last thread.
	v := ImperialConventions()
	v.UsableWidth = 42 * in
	y, err := Yardage(YardageRequest{Conventions: v, Count: 56, Piece: inches(14, 3.5)})
	require.NoError(t, err)
	assert.True(t, y.ExactFit)
	assert.Equal(t, 56*in, y.MoreWidth)
}

func TestYardageInHand(t *testing.T) {
	// 169 in are needed; 4½ yd are 162: 24 strips, 144 squares.
	y, err := Yardage(YardageRequest{Conventions: ImperialConventions(), Count: 156, Piece: inches(6.5, 6.5), Have: measure.Cloth(162 * in)})
	require.NoError(t, err)
	assert.Equal(t, ClothCheck{Given: true, Have: 162 * in, Short: 7 * in}, y.Cloth)
	assert.Equal(t, 144, y.HavePieces)
}

func TestTogetherIsRoundedOnce(t *testing.T) {
	need, buy := ImperialConventions().Together(5*in, 4*in, 9*in)
	assert.Equal(t, 18*in, need)
	assert.Equal(t, measure.Cloth(measure.Yard/2), buy)
}

func TestPieces(t *testing.T) {
	v, m := ImperialConventions(), MetricConventions()
	m.UsableWidth = 106 * measure.Centimetre
	tenth := measure.Size{Width: 10 * measure.Centimetre, Length: 10 * measure.Centimetre}
	for name, c := range map[string]struct {
		c     Conventions
		from  measure.Size
		piece measure.Size
		want  int
		short int
	}{
		// http://piecefulliving.blogspot.com/2011/08: 16 from a fat quarter
		"fat quarter":         {v, v.FatQuarter(), inches(4.5, 4.5), 16, 12},
		"1¼ yd":               {v, v.OffTheBolt(measure.Cloth(45 * in)), inches(3.5, 6.5), 72, 72},
		"10 in":               {v, PrecutSquare(10 * in), inches(2.5, 2.5), 16, 12},
		"fat eighth":          {v, v.FatEighth(), inches(2, 2), 40, 40},
		"long":                {v, v.LongQuarter(), inches(2, 2), 80, 80},
		"a metre":             {m, m.OffTheBolt(measure.Cloth(measure.Metre)), tenth, 100, 90},
		"half a metre square": {m, m.FatQuarter(), tenth, 25, 20},
		"precut strip":        {v, v.PrecutStrip(), inches(2.5, 6.5), 6, 0},
	} {
		t.Run(name, func(t *testing.T) {
			p, err := Pieces(PiecesRequest{Conventions: c.c, From: c.from, Piece: c.piece, Wanted: c.want + 1})
			require.NoError(t, err)
			assert.Equal(t, c.want, p.Pieces)
			assert.Equal(t, c.short, p.IfShort)
			assert.Equal(t, CountCheck{Given: true, Have: c.want, Short: 1}, p.Wanted)
		})
	}
}

func TestFromCuts(t *testing.T) {
	// 96 squares of 4½ in: 16 from a fat quarter, six of them; from ones cut
	// short 12, so eight.
	v := ImperialConventions()
	f, err := FromCuts(FromCutsRequest{Conventions: v, Count: 96, Piece: inches(4, 4), Finished: true, From: v.FatQuarter(), Have: 5})
	require.NoError(t, err)
	assert.Equal(t, []int{16, 6, 0, 8}, []int{f.PerCut, f.Cuts, f.SparePieces, f.IfShort})
	assert.Equal(t, CountCheck{Given: true, Have: 5, Short: 1}, f.InHand)
}

func TestPiecesThatDoNotFit(t *testing.T) {
	v := ImperialConventions()
	var limit *LimitError
	_, err := Yardage(YardageRequest{Conventions: v, Count: 8, Piece: inches(50, 50)})
	require.ErrorAs(t, err, &limit)
	assert.Equal(t, "piece_width", limit.Input)
	_, err = Yardage(YardageRequest{Conventions: v, Count: 8, Piece: inches(50, 10), OneWay: true})
	require.ErrorAs(t, err, &limit)
	_, err = Pieces(PiecesRequest{Conventions: v, From: v.FatQuarter(), Piece: inches(21, 2)})
	require.ErrorAs(t, err, &limit)
	assert.Equal(t, "piece", limit.Input)
}

// laid gives the pieces of a yardage as outlines on the fabric.
func laid(y YardageResult, count int) []Outline {
	var pieces []Outline
	for i := range count {
		x, row := i%y.PerStrip, i/y.PerStrip
		o := rectangle(y.Across.Inches(), y.StripWidth.Inches())
		pieces = append(pieces, o.Moved(float64(x)*y.Across.Inches(), float64(row)*y.StripWidth.Inches()))
	}
	return pieces
}

// randomPieces is a request for a few pieces in quarter inches.
func randomPieces(rng *rand.Rand) YardageRequest {
	quarter := func(most int) measure.Length { return measure.Length(1+rng.IntN(4*most)) * in / 4 }
	return YardageRequest{Conventions: ImperialConventions(), Count: 1 + rng.IntN(60),
		Piece: measure.Size{Width: quarter(30), Length: quarter(30)}, OneWay: rng.IntN(3) == 0}
}

// A general geometry library finds no overlap and nothing outside the fabric.
func TestYardagePiecesLieApart(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	for range 40 {
		r := randomPieces(rng)
		y, err := Yardage(r)
		require.NoError(t, err)
		pieces := laid(y, r.Count)
		within(t, rectangle(r.UsableWidth.Inches(), y.Length.Inches()), pieces, 1e-9)
		allApart(t, polygons(t, pieces))
	}
}

// Both ways are counted naively, piece by piece.
func TestYardageAgreesWithCounting(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 2))
	counted := func(r YardageRequest, across, along measure.Length) measure.Length {
		if across > r.UsableWidth {
			return 1 << 60
		}
		used, length := r.UsableWidth, measure.Length(0)
		for range r.Count {
			if used+across > r.UsableWidth {
				used, length = 0, length+along
			}
			used += across
		}
		return length
	}
	for range 2000 {
		r := randomPieces(rng)
		y, err := Yardage(r)
		require.NoError(t, err)
		want := counted(r, r.Piece.Width, r.Piece.Length)
		if !r.OneWay {
			want = min(want, counted(r, r.Piece.Length, r.Piece.Width))
		}
		require.Equal(t, want, y.Length, "%+v", r)
	}
}

func TestYardageNeverTakesLessForMore(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	need := func(r YardageRequest) measure.Length {
		y, err := Yardage(r)
		require.NoError(t, err)
		return y.Need
	}
	for range 2000 {
		r := randomPieces(rng)
		wider, more, longer, twice := r, r, r, r
		wider.UsableWidth += measure.Length(rng.IntN(40)) * in / 4
		more.Count++
		longer.Piece.Length += in / 8
		twice.Count *= 2
		assert.LessOrEqual(t, need(wider), need(r))
		assert.GreaterOrEqual(t, need(more), need(r))
		assert.GreaterOrEqual(t, need(longer), need(r))
		assert.LessOrEqual(t, need(twice), 2*need(r))
	}
}

func BenchmarkYardage(b *testing.B) {
	r := YardageRequest{Conventions: ImperialConventions(), Count: 156, Piece: inches(6.5, 4.5)}
	for b.Loop() {
		if _, err := Yardage(r); err != nil {
			b.Fatal(err)
		}
	}
}
