package picture

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/tdewolff/font"

	"counterhand/calc/measure"
	"counterhand/commands/scene"
)

var formats = map[string]func(scene.Scene) ([]byte, error){"svg": SVG, "png": PNG, "pdf": PDF}

func TestSameSceneSameBytes(t *testing.T) {
	for _, s := range []scene.Scene{ring(16), steps(4, long), fills()} {
		for name, write := range formats {
			first, err := write(s)
			require.NoError(t, err)
			runs := 20
			if name == "png" && s.Name != "ring" {
				runs = 2 // of the same writer; the slowest
			}
			for range runs {
				again, err := write(s)
				require.NoError(t, err)
				require.True(t, bytes.Equal(first, again), "%s as %s", s.Name, name)
			}
		}
	}
}

// The library writes the time into files; these were written by it at two
// different times, and have to come out as one.
func TestTimeIsTakenOut(t *testing.T) {
	p := takePens()
	defer returnPens(p)
	subset, err := p.regular.SFNT.Subset([]uint16{0, 5, 6, 7}, font.SubsetOptions{Tables: font.KeepMinTables})
	require.NoError(t, err)
	data := subset.Write()
	dated := bytes.Clone(data)
	require.NoError(t, undatedFont(data))
	again := bytes.Clone(data)
	require.NoError(t, undatedFont(again))
	assert.Equal(t, data, again)
	_, err = font.ParseSFNT(data, 0)
	require.NoError(t, err)
	assert.Equal(t, uint32(0xB1B0AFBA), tableSum(dated), "the rule that a whole font adds up to this")
	assert.Equal(t, uint32(0xB1B0AFBA), tableSum(data))
	for _, broken := range [][]byte{nil, data[:11], data[:40], make([]byte, 64)} {
		assert.ErrorIs(t, undatedFont(bytes.Clone(broken)), errBrokenFont)
	}
}

func TestBrokenPDFIsRefused(t *testing.T) {
	good, err := PDF(ring(5))
	require.NoError(t, err)
	for _, broken := range [][]byte{nil, []byte("startxref\n5\n%%EOF\n"), good[:len(good)-5], bytes.ReplaceAll(good, []byte("xref\n0 "), []byte("xref\nx "))} {
		_, err := undatedPDF(broken)
		assert.ErrorIs(t, err, errBrokenPDF)
	}
}

// Run with the race detector: pens must never be shared.
func TestDrawingAtOnce(t *testing.T) {
	want, err := SVG(ring(16))
	require.NoError(t, err)
	got := make([][]byte, 8)
	var all sync.WaitGroup
	for i := range got {
		all.Go(func() { got[i], _ = SVG(ring(16)) })
	}
	all.Wait()
	for _, g := range got {
		assert.True(t, bytes.Equal(want, g))
	}
}

func TestSVGIsReadByOthers(t *testing.T) {
	s := ring(16)
	s.Title, s.Alt = `Ring <of> "16"`, "13 13/16 in & more"
	file, err := SVG(s)
	require.NoError(t, err)
	var doc struct {
		Role  string `xml:"role,attr"`
		Title string `xml:"title"`
		Desc  string `xml:"desc"`
	}
	require.NoError(t, xml.Unmarshal(file, &doc))
	assert.Equal(t, "img", doc.Role)
	assert.Equal(t, s.Title, doc.Title)
	assert.Equal(t, s.Alt, doc.Desc)
	d := xml.NewDecoder(bytes.NewReader(file))
	for {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			break
		} else {
			require.NoError(t, err)
		}
	}
}

func TestPNGKeepsTheVeryColours(t *testing.T) {
	file, err := PNG(fills())
	require.NoError(t, err)
	img, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	seen := map[[3]uint32]bool{}
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			r, g, b, _ := img.At(x, y).RGBA()
			seen[[3]uint32{r >> 8, g >> 8, b >> 8}] = true
		}
	}
	for f := scene.Paper; f <= scene.Fabric8; f++ {
		c := lookOf(f).color
		assert.True(t, seen[[3]uint32{uint32(c.R), uint32(c.G), uint32(c.B)}], "fill %d", f)
	}
}

func TestPaletteHasRoom(t *testing.T) {
	c := coloursOnce()
	assert.LessOrEqual(t, len(c.palette), 256)
	bins := map[int]bool{}
	for f := scene.Paper; f <= scene.Fabric8; f++ {
		v := lookOf(f).color
		bins[bin(v.R, v.G, v.B)] = true
	}
	assert.Len(t, bins, int(scene.Fabric8), "every fill has a bin of its own")
}

// Hostile scenes are drawn within bounds or refused in so many words.
func TestHostileScenes(t *testing.T) {
	tiny := measure.Inch / 16
	huge := scene.Scene{Name: "x", Title: "10 m quilt of tiny pieces", Panels: []scene.Panel{{}}}
	for i := range 500 {
		huge.Panels[0].Shapes = append(huge.Panels[0].Shapes, scene.Shape{
			Outline: scene.Rect(measure.Length(i)*20*measure.Millimetre, 0, tiny, tiny), Fill: scene.Fabric(i), Line: scene.Edge, Label: scene.Label{Long: long, Short: "x"}})
	}
	huge.Panels[0].Shapes = append(huge.Panels[0].Shapes, scene.Shape{Outline: scene.Rect(0, 0, 10*measure.Metre, 10*measure.Metre), Line: scene.Outer})
	spread := scene.Scene{Name: "x", Title: "as far as lengths go", Panels: []scene.Panel{{Shapes: []scene.Shape{
		{Outline: scene.Rect(-measure.Max, -measure.Max, 2*measure.Max, 2*measure.Max), Fill: scene.Fabric6, Line: scene.Edge},
		{Outline: scene.Rect(0, 0, 1, 1), Fill: scene.Fabric6, Line: scene.Edge, Label: scene.Label{Long: "x"}},
	}}}}
	thread := scene.Scene{Name: "x", Title: "a thread", Panels: []scene.Panel{{Shapes: []scene.Shape{
		{Outline: scene.Rect(0, 0, 1, measure.Max), Fill: scene.Fabric6, Line: scene.Edge},
	}}}}
	point := scene.Scene{Name: "x", Title: "a point", Panels: []scene.Panel{{Shapes: []scene.Shape{{Outline: scene.Outline{{}}, Fill: scene.Fabric2, Line: scene.Edge}}}}}
	wordy := ring(60)
	wordy.Caption = []string{strings.Repeat(word+" ", 40)}
	for _, s := range []scene.Scene{huge, spread, thread, point, wordy, blocks(28, word)} {
		for name, write := range formats {
			file, err := write(s)
			require.NoError(t, err, "%s as %s", s.Title, name)
			assert.Less(t, len(file), 2_000_000, "%s as %s", s.Title, name)
		}
		checkWords(t, s.Title, laid(t, s))
	}
}

func TestTooMuchIsRefused(t *testing.T) {
	many := scene.Scene{Panels: []scene.Panel{{}}}
	for range mostShapes + 1 {
		many.Panels[0].Shapes = append(many.Panels[0].Shapes, scene.Shape{Outline: scene.Rect(0, 0, inch, inch)})
	}
	fine := ring(3)
	fine.Panels[0].Shapes = append(fine.Panels[0].Shapes, scene.Shape{Outline: make(scene.Outline, mostPoints)})
	wordy := ring(3)
	wordy.Alt = strings.Repeat("x", mostWords)
	noted := ring(3)
	noted.Panels[0].Notes = make([]scene.Note, mostBeside+1)
	keyed := ring(3)
	keyed.Key = make([]scene.Key, mostEntries+1)
	panels := ring(3)
	panels.Panels = append(panels.Panels, make([]scene.Panel, mostPanels)...)
	for what, s := range map[string]scene.Scene{
		"shapes": many, "points": fine, "characters": wordy, "sizes and notes": noted, "lines of words": keyed, "drawings": panels,
	} {
		for name, write := range formats {
			_, err := write(s)
			var tooMuch *TooMuchError
			require.ErrorAs(t, err, &tooMuch, "%s as %s", what, name)
			assert.Equal(t, what, tooMuch.What)
		}
	}
	_, err := SVG(scene.Scene{Title: "nothing"})
	require.ErrorIs(t, err, errNothing)
}

// benchmark also reports the processor's time, which a busy machine does not
// stretch.
func benchmark(b *testing.B, s scene.Scene, write func(scene.Scene) ([]byte, error)) {
	size := 0
	before := processorTime()
	for b.Loop() {
		file, err := write(s)
		if err != nil {
			b.Fatal(err)
		}
		size = len(file)
	}
	b.ReportMetric(float64(size), "bytes")
	b.ReportMetric((processorTime()-before).Seconds()*1000/float64(b.N), "cpu-ms/op")
}

func BenchmarkRingPNG(b *testing.B)   { benchmark(b, ring(16), PNG) }
func BenchmarkRing60PNG(b *testing.B) { benchmark(b, ring(60), PNG) }
func BenchmarkBlocksPNG(b *testing.B) { benchmark(b, blocks(6, short), PNG) }
func BenchmarkStepsPNG(b *testing.B)  { benchmark(b, steps(4, short), PNG) }
func BenchmarkManyPNG(b *testing.B)   { benchmark(b, blocks(28, short), PNG) }
func BenchmarkRingSVG(b *testing.B)   { benchmark(b, ring(16), SVG) }
func BenchmarkManySVG(b *testing.B)   { benchmark(b, blocks(28, short), SVG) }
func BenchmarkRingPDF(b *testing.B)   { benchmark(b, ring(16), PDF) }
