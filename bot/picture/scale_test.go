package picture

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
	"counterhand/commands/scene"
)

// tolerance is what a printed template may be off, in millimetres.
const tolerance = 0.1

// strokesOf turns one page of a PDF into the lines drawn on it, in millimetres
// from the page's upper left corner, by Debian's poppler. The tool is run as
// anybody would run it; what it says is what other programs see.
func strokesOf(t *testing.T, file []byte, number int) [][][2]float64 {
	t.Helper()
	tool, err := exec.LookPath("pdftocairo")
	if err != nil {
		if os.Getenv("COUNTERHAND_TEST_ALL") == "1" {
			t.Fatal("pdftocairo is not installed; Debian has it in poppler-utils")
		}
		t.Skip("pdftocairo is not installed (Debian: poppler-utils), so the scale cannot be proved from outside")
	}
	in, out := filepath.Join(t.TempDir(), "in.pdf"), filepath.Join(t.TempDir(), "out.svg")
	require.NoError(t, os.WriteFile(in, file, 0o600))
	n := strconv.Itoa(number)
	said, err := exec.Command(tool, "-svg", "-f", n, "-l", n, in, out).CombinedOutput()
	require.NoError(t, err, string(said))
	svg, err := os.Open(out)
	require.NoError(t, err)
	defer svg.Close()
	return readStrokes(t, svg)
}

func readStrokes(t *testing.T, svg io.Reader) [][][2]float64 {
	t.Helper()
	var strokes [][][2]float64
	d := xml.NewDecoder(svg)
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return strokes
		}
		require.NoError(t, err)
		e, isStart := token.(xml.StartElement)
		if !isStart || e.Name.Local != "path" {
			continue
		}
		var path, style string
		m := [6]float64{1, 0, 0, 1, 0, 0}
		for _, a := range e.Attr {
			switch a.Name.Local {
			case "d":
				path = a.Value
			case "style":
				style = a.Value
			case "transform":
				_, err := fmt.Sscanf(a.Value, "matrix(%g,%g,%g,%g,%g,%g)", &m[0], &m[1], &m[2], &m[3], &m[4], &m[5])
				require.NoError(t, err, a.Value)
			}
		}
		if strings.Contains(style, "stroke:rgb") {
			strokes = append(strokes, readPath(t, path, m)...)
		}
	}
}

// readPath reads the straight lines of a path; curves are left out.
func readPath(t *testing.T, d string, m [6]float64) [][][2]float64 {
	t.Helper()
	const mmPerPt = 25.4 / 72 // of the tool's own unit
	var lines [][][2]float64
	f := strings.Fields(d)
	for i := 0; i < len(f); {
		switch f[i] {
		case "Z":
			last := len(lines) - 1
			lines[last] = append(lines[last], lines[last][0])
			i++
		case "C":
			i += 7
		case "M", "L":
			x, err := strconv.ParseFloat(f[i+1], 64)
			require.NoError(t, err)
			y, err := strconv.ParseFloat(f[i+2], 64)
			require.NoError(t, err)
			p := [2]float64{(m[0]*x + m[2]*y + m[4]) * mmPerPt, -(m[1]*x + m[3]*y + m[5]) * mmPerPt}
			if f[i] == "M" {
				lines = append(lines, nil)
			}
			lines[len(lines)-1] = append(lines[len(lines)-1], p)
			i += 3
		default:
			t.Fatalf("path command %q", f[i])
		}
	}
	return slices.DeleteFunc(lines, func(l [][2]float64) bool { return len(l) < 2 })
}

func distance(a, b [2]float64) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }

// edges gives the lengths of a closed outline's sides.
func edges(points [][2]float64) []float64 {
	var out []float64
	for i, p := range points {
		out = append(out, distance(p, points[(i+1)%len(points)]))
	}
	return out
}

// trueEdges gives the lengths of an outline's sides in millimetres, as reckoned.
func trueEdges(o scene.Outline) []float64 {
	var out []float64
	for i, p := range o {
		q := o[(i+1)%len(o)]
		out = append(out, math.Hypot(float64(p.X-q.X), float64(p.Y-q.Y))/float64(measure.Millimetre))
	}
	return out
}

// hasEdges tells whether one of the strokes has just these sides, each within
// the tolerance, and the outline's whole extent as well.
func hasEdges(strokes [][][2]float64, o scene.Outline) bool {
	want := trueEdges(o)
	return slices.ContainsFunc(strokes, func(s [][2]float64) bool {
		if n := len(s) - 1; s[n] == s[0] {
			s = s[:n]
		}
		got := edges(s)
		if len(got) != len(want) {
			return false
		}
		for i := range got {
			if math.Abs(got[i]-want[i]) > tolerance {
				return false
			}
		}
		a, b := spans(s), spans(onCloth(o))
		return math.Abs(a[0]-b[0]) <= tolerance && math.Abs(a[1]-b[1]) <= tolerance
	})
}

func onCloth(o scene.Outline) [][2]float64 {
	out := make([][2]float64, len(o))
	for i, p := range o {
		out[i] = [2]float64{float64(p.X) / float64(measure.Millimetre), float64(p.Y) / float64(measure.Millimetre)}
	}
	return out
}

func spans(points [][2]float64) [2]float64 {
	low, high := points[0], points[0]
	for _, p := range points {
		low = [2]float64{min(low[0], p[0]), min(low[1], p[1])}
		high = [2]float64{max(high[0], p[0]), max(high[1], p[1])}
	}
	return [2]float64{high[0] - low[0], high[1] - low[1]}
}

func TestTemplatesAreInTrueSize(t *testing.T) {
	for name, doc := range templates(t) {
		for _, paper := range []Paper{A4, Letter} {
			t.Run(name+" on "+paper.Name, func(t *testing.T) {
				file, err := TemplatesPDF(doc, paper)
				require.NoError(t, err)
				plan, err := planPages(doc.Pieces, workArea(paper))
				require.NoError(t, err)
				tiled := map[string][][][2]float64{}
				for i, pieces := range plan {
					strokes := strokesOf(t, file, i+1)
					assert.True(t, hasEdges(strokes, scene.Rect(0, 0, measure.Inch, measure.Inch)), "1 in check square of page %d", i+1)
					assert.True(t, hasEdges(strokes, scene.Rect(0, 0, 5*measure.Centimetre, 5*measure.Centimetre)), "5 cm check square of page %d", i+1)
					for _, p := range pieces {
						if p.tile == nil {
							assert.True(t, hasEdges(strokes, p.Cut), "cut line of %s", p.Title)
							assert.True(t, len(p.Sewn) == 0 || hasEdges(strokes, p.Sewn), "sewing line of %s", p.Title)
							continue
						}
						tiled[p.Title] = append(tiled[p.Title], joined(strokes, *p.tile, workArea(paper))...)
					}
				}
				for _, pieces := range plan {
					if p := pieces[0]; p.tile != nil {
						checkJoined(t, tiled[p.Title], p.Cut, p.low)
						checkJoined(t, tiled[p.Title], p.Sewn, p.low)
					}
				}
			})
		}
	}
}

// joined moves what is drawn on one page of several to where it lies when the
// pages are taped together.
func joined(strokes [][][2]float64, at tile, area box) [][][2]float64 {
	out := make([][][2]float64, len(strokes))
	for i, s := range strokes {
		for _, p := range s {
			out[i] = append(out[i], [2]float64{p[0] - area.x0 + float64(at.column)*at.stepX, p[1] - area.y0 + float64(at.row)*at.stepY})
		}
	}
	return out
}

// checkJoined proves that every side of an outline is drawn in its whole
// length by the pages together, within the tolerance of where it belongs; low is
// the place on cloth that lies in the lower left corner of the first page.
func checkJoined(t *testing.T, strokes [][][2]float64, o scene.Outline, low scene.Point) {
	t.Helper()
	points := onCloth(o)
	x, y := float64(low.X)/float64(measure.Millimetre), float64(low.Y)/float64(measure.Millimetre)
	for i, a := range points {
		b := points[(i+1)%len(points)]
		a, b = [2]float64{a[0] - x, a[1] - y}, [2]float64{b[0] - x, b[1] - y}
		length := distance(a, b)
		var covered [][2]float64
		for _, s := range strokes {
			for j := 0; j+1 < len(s); j++ {
				from, offFrom := along(a, b, s[j])
				to, offTo := along(a, b, s[j+1])
				if max(offFrom, offTo) <= tolerance && min(from, to) >= -tolerance && max(from, to) <= length+tolerance {
					covered = append(covered, [2]float64{min(from, to), max(from, to)})
				}
			}
		}
		slices.SortFunc(covered, func(p, q [2]float64) int { return int(math.Copysign(1, p[0]-q[0])) })
		reach := 0.0
		for _, c := range covered {
			if c[0] <= reach+tolerance {
				reach = max(reach, c[1])
			}
		}
		if !assert.InDelta(t, length, reach, tolerance, "side %d of %d", i, len(points)) {
			return
		}
	}
}

// along gives how far a point lies along a line and how far beside it.
func along(a, b, p [2]float64) (far, off float64) {
	length := distance(a, b)
	dx, dy := (b[0]-a[0])/length, (b[1]-a[1])/length
	return (p[0]-a[0])*dx + (p[1]-a[1])*dy, math.Abs((p[1]-a[1])*dx - (p[0]-a[0])*dy)
}

// Everything printed keeps off the margins that home printers cannot reach.
func TestTemplatesKeepTheMargins(t *testing.T) {
	p := takePens()
	defer returnPens(p)
	for name, doc := range templates(t) {
		for _, paper := range []Paper{A4, Letter} {
			pages, err := templatePages(doc, paper, p)
			require.NoError(t, err)
			for i, g := range pages {
				checkPage(t, fmt.Sprintf("%s, page %d on %s", name, i+1, paper.Name), g, paper)
			}
		}
	}
}

// checkPage proves that all of a page lies within the margins and that no words
// meet.
func checkPage(t *testing.T, name string, g page, paper Paper) {
	t.Helper()
	checkWords(t, name, g)
	inner := paper.inner().grown(0.01)
	for _, ink := range g.inks {
		r := ink.path.Bounds()
		b := box{r.X0, r.Y0, r.X1, r.Y1}
		assert.True(t, b.inside(inner), "%s: %v", name, b)
	}
	for _, l := range g.texts {
		assert.True(t, l.box().inside(inner), "%s: %q at %v", name, l.words, l.box())
	}
}

func TestTemplatesTooLargeAreRefused(t *testing.T) {
	for _, side := range []measure.Length{3 * measure.Metre, 10 * measure.Metre, measure.Max} {
		doc := scene.Templates{Title: "large", Pieces: []scene.Template{{Title: "square", Cut: scene.Rect(0, 0, side, side)}}}
		_, err := TemplatesPDF(doc, A4)
		var tooMuch *TooMuchError
		require.ErrorAs(t, err, &tooMuch)
		assert.Equal(t, "pages", tooMuch.What)
	}
	_, err := TemplatesPDF(scene.Templates{}, A4)
	assert.ErrorIs(t, err, errNothing)
}

func TestSameTemplatesSameBytes(t *testing.T) {
	for name, doc := range templates(t) {
		first, err := TemplatesPDF(doc, Letter)
		require.NoError(t, err)
		runs := 20
		if name != "ring-large" {
			runs = 1
		}
		for range runs {
			again, err := TemplatesPDF(doc, Letter)
			require.NoError(t, err)
			require.Equal(t, string(first), string(again), name)
		}
	}
}
