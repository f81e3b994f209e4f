package picture

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/commands/scene"
)

// checkWords proves that no writing leaves the page and none meets another.
func checkWords(t *testing.T, name string, g page) {
	t.Helper()
	const slack = 1e-6
	for i, a := range g.texts {
		b := a.box()
		inside := b.x0 >= -slack && b.x1 <= g.width+slack && b.y1 <= slack && b.y0 >= -g.height-slack
		assert.Truef(t, inside, "%s: %q at %.2f leaves the page of %.1f x %.1f", name, a.words, b, g.width, g.height)
		for _, c := range g.texts[i+1:] {
			if o := c.box().grown(-slack); b.overlaps(o) {
				assert.Failf(t, "words meet", "%s: %q at %.2f meets %q at %.2f", name, a.words, b, c.words, o)
			}
		}
	}
}

func laid(t *testing.T, s scene.Scene) page {
	t.Helper()
	require.NoError(t, checkScene(s))
	p := takePens()
	defer returnPens(p)
	return layScene(s, p)
}

func TestWordsOfRingsNeverMeet(t *testing.T) {
	for blades := 3; blades <= 60; blades++ {
		checkWords(t, fmt.Sprint(blades, " blades"), laid(t, ring(blades)))
	}
}

func TestWordsOfBlocksNeverMeet(t *testing.T) {
	for n := 1; n <= 40; n++ {
		for _, label := range []string{short, long, word} {
			checkWords(t, fmt.Sprint(n, " blocks ", label), laid(t, blocks(n, label)))
		}
	}
}

func TestWordsOfStepsNeverMeet(t *testing.T) {
	for n := 1; n <= 10; n++ {
		for _, label := range []string{short, long, word} {
			checkWords(t, fmt.Sprint(n, " steps ", label), laid(t, steps(n, label)))
		}
	}
}

func TestLabelsStayInTheirShapes(t *testing.T) {
	// Short labels are the numbers of the blocks: each has to lie in its own.
	for n := 1; n <= 20; n++ {
		s := blocks(n, long)
		s.Panels[0].Sizes, s.Title, s.Caption, s.Key = nil, "", nil, nil
		p := takePens()
		f, _ := (&setter{pens: p}).fit(s.Panels[0], edgeMargin, pictureWidth-2*edgeMargin, highest(scene.Whole))
		returnPens(p)
		f.y = -1000
		side := f.onPage(12*inch - 2*quarter)
		for _, l := range laid(t, s).texts {
			if l.words == long {
				continue
			}
			b := l.box()
			assert.LessOrEqual(t, b.x1-b.x0, side, "%d blocks, label %s", n, l.words)
			assert.LessOrEqual(t, b.y1-b.y0, side, "%d blocks, label %s", n, l.words)
		}
	}
}

func TestEveryLabelIsWrittenWhereItFits(t *testing.T) {
	written := map[string]int{}
	for _, l := range laid(t, ring(16)).texts {
		written[l.words]++
	}
	for i := range 16 {
		assert.Equal(t, 1, written[fmt.Sprintf("blade %d", i+1)], "blade %d", i+1)
	}
}

// The Go fonts have no kerning: the sum of single characters is the width.
func TestWidthIsTheLibrarys(t *testing.T) {
	p := takePens()
	defer returnPens(p)
	for _, s := range []string{"", "13 13/16 in", "AVATAR To Wave fi ffl", "22½° × ⅝ yd", long} {
		for _, bold := range []bool{false, true} {
			assert.InDelta(t, p.face(bold, bodySize).TextWidth(s), p.width(s, bold, bodySize), 1e-9, s)
		}
	}
}

func TestWrap(t *testing.T) {
	p := takePens()
	defer returnPens(p)
	for _, s := range []string{"", short, long, word, long + " " + word, "½½½½½½½½½½½½½½½½½½½½½"} {
		for _, width := range []float64{3, 20, 120} {
			kept := ""
			for _, line := range p.wrap(s, false, bodySize, width) {
				kept += line
				assert.LessOrEqual(t, p.width(line, false, bodySize), width, "%q in %v mm", line, width)
			}
			assert.Equal(t, unspaced(s), unspaced(kept))
		}
	}
}

func unspaced(s string) string {
	out := ""
	for _, r := range s {
		if r != ' ' {
			out += string(r)
		}
	}
	return out
}

func TestWritable(t *testing.T) {
	p := takePens()
	defer returnPens(p)
	for in, want := range map[string]string{
		"2⅝ in × 22½°": "2⅝ in × 22½°",
		"1⅔ yd":        "1 2/3 yd",
		"⅓ yd":         "1/3 yd",
		"漢 1":          "? 1",
	} {
		assert.Equal(t, want, p.writable(in))
	}
}
