package picture

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
	"counterhand/commands/scene"
)

// anyScene makes a scene of anything at all from two numbers.
func anyScene(seed, size uint64) scene.Scene {
	r := rand.New(rand.NewPCG(seed, size))
	length := func() measure.Length {
		return measure.Length(r.Int64N(int64(measure.Metre) >> r.IntN(30)))
	}
	signed := func() measure.Length { return length() * measure.Length(1-2*r.IntN(2)) }
	point := func() scene.Point { return scene.Point{X: signed(), Y: signed()} }
	words := func() string {
		return strings.Join(strings.Fields(strings.Repeat("a wéll-chosen 13 13/16 in ⅔ "+word[:r.IntN(40)]+" ", r.IntN(5))), strings.Repeat(" ", 1+r.IntN(2)))
	}
	s := scene.Scene{Name: "any", Title: words(), Alt: words()}
	for range 1 + r.IntN(5) {
		p := scene.Panel{Title: words(), Share: scene.Share(r.IntN(3))}
		for range 1 + r.IntN(12) {
			var o scene.Outline
			for range 1 + r.IntN(6) {
				o = append(o, point())
			}
			p.Shapes = append(p.Shapes, scene.Shape{Outline: o, Open: r.IntN(4) == 0, Fill: scene.Fill(r.IntN(14)), Line: scene.Line(r.IntN(9)),
				Label: scene.Label{Long: words(), Short: words()}})
		}
		for range r.IntN(9) {
			p.Sizes = append(p.Sizes, scene.Size{From: point(), To: point(), Side: scene.Side(r.IntN(4)), Text: words()})
		}
		for range r.IntN(6) {
			p.Notes = append(p.Notes, scene.Note{At: point(), Text: words()})
		}
		s.Panels = append(s.Panels, p)
	}
	for range r.IntN(5) {
		s.Key = append(s.Key, scene.Key{Fill: scene.Fill(r.IntN(14)), Line: scene.Line(r.IntN(9)), Text: words()})
		s.Caption = append(s.Caption, words())
	}
	return s
}

// Whatever a scene holds, its words keep apart and on the page.
func TestWordsOfAnySceneNeverMeet(t *testing.T) {
	for seed := range uint64(400) {
		s := anyScene(seed, 1)
		if checkScene(s) != nil {
			continue
		}
		checkWords(t, s.Title, laid(t, s))
		if t.Failed() {
			t.Fatalf("scene of seed %d", seed)
		}
	}
}

func FuzzScene(f *testing.F) {
	f.Add(uint64(1), uint64(2))
	f.Add(uint64(0), uint64(0))
	f.Fuzz(func(t *testing.T, seed, size uint64) {
		s := anyScene(seed, size)
		file, err := SVG(s)
		if err != nil {
			return
		}
		require.Less(t, len(file), 2_000_000)
		checkWords(t, "any", laid(t, s))
	})
}

// anyTemplates makes templates of random size and shape.
func anyTemplates(seed uint64) scene.Templates {
	r := rand.New(rand.NewPCG(seed, 7))
	words := func() string {
		return strings.TrimSpace(strings.Repeat("long words "+word[:r.IntN(50)]+" ", r.IntN(4)))
	}
	doc := scene.Templates{Title: words(), Alt: words(), Notes: []string{words(), words()}}
	for range 1 + r.IntN(4) {
		radius := measure.Millimetre + measure.Length(r.Int64N(int64(300*measure.Millimetre)))
		point := func() scene.Point {
			return scene.Polar(measure.Length(r.Int64N(int64(radius))), measure.Angle(r.IntN(360)))
		}
		t := scene.Template{Title: words(), Says: []string{words(), words()}}
		corners := 3 + r.IntN(9)
		for i := range corners {
			t.Cut = append(t.Cut, scene.Polar(radius, measure.Angle(360*i)/measure.Angle(corners)+measure.Angle(r.IntN(20))))
		}
		if r.IntN(2) == 0 {
			t.Sewn = t.Cut.Swollen(-radius / 10)
		}
		for range r.IntN(3) {
			t.Lines = append(t.Lines, scene.Marked{Outline: scene.Outline{point(), point()}, Line: scene.Line(1 + r.IntN(6)), Text: words()})
			t.Points = append(t.Points, scene.Note{At: point(), Text: words()})
		}
		if r.IntN(2) == 0 {
			t.Grain = scene.Arrow{From: point(), To: point()}
		}
		doc.Pieces = append(doc.Pieces, t)
	}
	return doc
}

func TestAnyTemplatesKeepTheMargins(t *testing.T) {
	p := takePens()
	defer returnPens(p)
	laidOut := 0
	for seed := range uint64(120) {
		for _, paper := range []Paper{A4, Letter} {
			pages, err := templatePages(anyTemplates(seed), paper, p)
			if err != nil {
				continue // more pages than are printed
			}
			laidOut++
			for i, g := range pages {
				checkPage(t, fmt.Sprintf("templates of seed %d, page %d on %s", seed, i+1, paper.Name), g, paper)
			}
		}
		if t.Failed() {
			return
		}
	}
	require.Greater(t, laidOut, 100)
}
