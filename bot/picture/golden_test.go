package picture

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/rasterizer"

	"counterhand/commands/scene"
)

var update = flag.Bool("update", false, "write the golden pictures anew; look at each before it is kept")

// goldens is where accepted pictures are kept.
const goldens = "../../testdata/pictures"

// mostOff is the mean difference of colour, out of 255, at which a picture
// still counts as the accepted one: the edges of letters may move a little with
// the drawing library, lines and fills may not.
const mostOff = 0.6

func checkGolden(t *testing.T, name string, file []byte) {
	t.Helper()
	path := filepath.Join(goldens, name+".png")
	if *update {
		require.NoError(t, os.MkdirAll(goldens, 0o755))
		require.NoError(t, os.WriteFile(path, file, 0o644))
		return
	}
	kept, err := os.ReadFile(path)
	require.NoError(t, err, "run with -update, and look at what it writes")
	want, err := png.Decode(bytes.NewReader(kept))
	require.NoError(t, err)
	got, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	if assert.Equal(t, want.Bounds(), got.Bounds(), name) {
		assert.LessOrEqual(t, meanOff(want, got), mostOff, name)
	}
}

// meanOff is the mean difference of two pictures over pixels and channels.
func meanOff(a, b image.Image) float64 {
	sum, n := 0.0, 0
	for y := range a.Bounds().Dy() {
		for x := range a.Bounds().Dx() {
			ar, ag, ab, _ := a.At(x, y).RGBA()
			br, bg, bb, _ := b.At(x, y).RGBA()
			for _, d := range []int{int(ar) - int(br), int(ag) - int(bg), int(ab) - int(bb)} {
				sum += float64(max(d, -d)) / 257
				n++
			}
		}
	}
	return sum / float64(n)
}

func TestGoldenScenes(t *testing.T) {
	all := built(t)
	all["fills"], all["ring-60"] = fills(), ring(60)
	for name, s := range all {
		t.Run(name, func(t *testing.T) {
			file, err := PNG(s)
			require.NoError(t, err)
			checkGolden(t, name, file)
		})
	}
}

// pictured rasters a page of a document.
func pictured(t *testing.T, g page, p *pens) []byte {
	t.Helper()
	r := rasterizer.New(g.width, g.height, canvas.DPMM(3), canvas.LinearColorSpace{})
	paper(r.Image.(*image.RGBA))
	g.draw(r, p)
	r.Close()
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, paletted(r.Image.(*image.RGBA))))
	return b.Bytes()
}

func TestGoldenDocuments(t *testing.T) {
	p := takePens()
	defer returnPens(p)
	pages := map[string][]page{"sheet": sheetPages(ringSheet(t), A4, p)}
	for name, doc := range templates(t) {
		pages["template-"+name] = templatePagesOf(t, doc, p)
	}
	for name, all := range pages {
		for i, g := range all {
			checkGolden(t, fmt.Sprintf("%s-page%d", name, i+1), pictured(t, g, p))
		}
	}
}

func templatePagesOf(t *testing.T, doc scene.Templates, p *pens) []page {
	t.Helper()
	pages, err := templatePages(doc, Letter, p)
	return must(t, pages, err)
}

// Two pictures that differ in one line differ by more than is let pass: were
// the tolerance too wide, no golden could fail.
func TestToleranceIsNarrow(t *testing.T) {
	s := ring(16)
	want, err := PNG(s)
	require.NoError(t, err)
	s.Panels[0].Shapes[3].Fill = scene.Fabric8
	got, err := PNG(s)
	require.NoError(t, err)
	a, err := png.Decode(bytes.NewReader(want))
	require.NoError(t, err)
	b, err := png.Decode(bytes.NewReader(got))
	require.NoError(t, err)
	assert.Greater(t, meanOff(a, b), mostOff)
}

// Every builder's words keep apart too, and every scene has its words for who
// cannot see it.
func TestBuiltScenes(t *testing.T) {
	for name, s := range built(t) {
		checkWords(t, name, laid(t, s))
		assert.NotEmpty(t, s.Name, name)
		assert.NotEmpty(t, s.Title, name)
		assert.NotEmpty(t, s.Alt, name)
		assert.NotContains(t, s.Alt, "%!", name)
		for _, c := range s.Caption {
			assert.NotContains(t, c, "%!", name)
		}
	}
}
