package picture

import (
	"fmt"

	"counterhand/commands/scene"
)

// TooMuchError says that a picture was refused because it would be too large
// to be drawn in good time, or to be of use on paper.
type TooMuchError struct {
	What  string // what there is too much of: "shapes", "pages"
	Count int
	Limit int
}

// Error says it in a short sentence.
func (e *TooMuchError) Error() string {
	return fmt.Sprintf("picture: %d %s are more than the %d that are drawn", e.Count, e.What, e.Limit)
}

// The most that is drawn. A builder shows part of a large thing and says so;
// these limits stand behind it.
const (
	mostPanels  = 12
	mostShapes  = 1200
	mostPoints  = 40_000
	mostWords   = 12_000 // bytes of writing, labels on shapes apart
	mostLabel   = 120    // bytes of a label; a longer one is taken not to fit
	mostBeside  = 60     // sizes and notes of one panel
	mostEntries = 40     // lines of the key and of the caption
)

// checkScene refuses a scene that is too much, or has nothing to draw.
func checkScene(s scene.Scene) error {
	shapes, points, words := 0, 0, len(s.Title)+len(s.Alt)
	for _, p := range s.Panels {
		shapes += len(p.Shapes)
		words += len(p.Title)
		for _, sh := range p.Shapes {
			points += len(sh.Outline)
		}
		for _, d := range p.Sizes {
			words += len(d.Text)
		}
		for _, n := range p.Notes {
			words += len(n.Text)
		}
		if n := len(p.Sizes) + len(p.Notes); n > mostBeside {
			return &TooMuchError{"sizes and notes", n, mostBeside}
		}
	}
	for _, k := range s.Key {
		words += len(k.Text)
	}
	for _, c := range s.Caption {
		words += len(c)
	}
	if n := max(len(s.Key), len(s.Caption)); n > mostEntries {
		return &TooMuchError{"lines of words", n, mostEntries}
	}
	if points == 0 {
		return errNothing
	}
	return firstTooMuch(
		TooMuchError{"drawings", len(s.Panels), mostPanels},
		TooMuchError{"shapes", shapes, mostShapes},
		TooMuchError{"points", points, mostPoints},
		TooMuchError{"characters", words, mostWords},
	)
}

// errNothing is given for a scene without a single point.
var errNothing = fmt.Errorf("picture: nothing to draw")

func firstTooMuch(counts ...TooMuchError) error {
	for _, c := range counts {
		if c.Count > c.Limit {
			return &c
		}
	}
	return nil
}
