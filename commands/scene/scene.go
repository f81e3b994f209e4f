// Package scene describes pictures as values: shapes in real lengths, labels,
// sizes, and the words for those who cannot see them. Nothing is drawn here; a
// scene is the same whatever it is later written to, and two builds of it from
// the same result are equal.
//
// Three kinds of things are described: a [Scene] is a picture to scale,
// [Templates] are shapes to print in true size and cut round, and a [Sheet] is
// the list to take to the cutting table. Each topic's builders stand in a
// file of their own and turn one result of package calc into these.
package scene

// Source builds a scene when somebody wants to see it, so that an answer in
// words costs nothing for its pictures. It gives the same scene every time.
type Source func() Scene

// Scene is one picture.
type Scene struct {
	Name    string   // the file's name without its ending: "ring"
	Title   string   // one short line over the picture
	Alt     string   // what matters in it, in words, for who cannot see it
	Caption []string // under the picture: what it rests on, a line each
	Panels  []Panel  // the drawings, from left to right and down
	Key     []Key    // what the fills and lines mean
}

// Panel is one drawing within a scene. It has a scale of its own; everything in
// it is to that scale.
type Panel struct {
	Title  string // over the drawing; may be empty
	Share  Share  // of the picture's width
	Shapes []Shape
	Sizes  []Size // dimension lines, outside the drawing
	Notes  []Note // words beside the drawing, each with a line to its place
}

// Share is how much of a picture's width a panel takes.
type Share uint8

// The shares. The zero value is the whole width.
const (
	Whole Share = iota
	Half
	Third
)

// Shape is a filled outline or an open line.
type Shape struct {
	Outline Outline
	Open    bool // a line from the first point to the last, not closed, never filled
	Fill    Fill
	Line    Line
	Label   Label
}

// Label is what is written on a shape: the long form where it fits inside, else
// the short one, else nothing. What must be read whatever happens belongs into
// a [Note], a [Size] or the caption.
type Label struct{ Long, Short string }

// Size is a dimension line between two points of a drawing. It lies outside the
// drawing on the given side and measures along that side only: a size below the
// drawing tells how far the points are apart from left to right.
type Size struct {
	From, To Point
	Side     Side
	Text     string
}

// Side is where a dimension line lies.
type Side uint8

// The sides.
const (
	Below Side = iota
	Above
	LeftOf
	RightOf
)

// Note is a line of words that points at a place in the drawing.
type Note struct {
	At   Point
	Text string
}

// Key says what a fill or a line means.
type Key struct {
	Fill Fill
	Line Line
	Text string
}

// Extent gives the corners of the smallest upright rectangle around all shapes
// of the panel. A panel without points gives two zero points.
func (p Panel) Extent() (low, high Point) {
	first := true
	for _, s := range p.Shapes {
		for _, q := range s.Outline {
			if first {
				low, high, first = q, q, false
			}
			low = Point{min(low.X, q.X), min(low.Y, q.Y)}
			high = Point{max(high.X, q.X), max(high.Y, q.Y)}
		}
	}
	return low, high
}
