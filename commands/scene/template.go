package scene

import "counterhand/calc/measure"

// TemplateSource builds templates when somebody wants to print them. It gives
// the same templates every time.
type TemplateSource func() Templates

// Templates are shapes to print in true size, in one document.
type Templates struct {
	Name   string // the file's name without its ending: "blade-template"
	Title  string
	Alt    string // what is on the pages, in words
	Notes  []string
	Pieces []Template
}

// Template is one shape to cut round, in true size.
type Template struct {
	Title  string   // "Blade, 22½°, 6 in long"
	Says   []string // written on it where there is room, else beside it: what to cut, how many
	Cut    Outline  // the edge to cut along, closed
	Sewn   Outline  // the line to sew along, closed; none where nothing is sewn
	Lines  []Marked // centre, fold and measuring lines
	Grain  Arrow    // along the threads of the cloth; none where it does not matter
	Points []Note   // places with a name, such as a tip
}

// Marked is a line on a template with the words that go with it.
type Marked struct {
	Outline Outline // open
	Line    Line
	Text    string
}

// Arrow points from one place to another. The zero value is none.
type Arrow struct{ From, To Point }

// Turned gives the template turned about the origin, against the clock.
func (t Template) Turned(by measure.Angle) Template {
	turn := func(p Point) Point { return Outline{p}.Turned(by)[0] }
	t.Cut, t.Sewn = t.Cut.Turned(by), t.Sewn.Turned(by)
	if t.Grain != (Arrow{}) {
		t.Grain = Arrow{turn(t.Grain.From), turn(t.Grain.To)}
	}
	lines, points := t.Lines, t.Points
	t.Lines, t.Points = make([]Marked, len(lines)), make([]Note, len(points))
	for i, l := range lines {
		t.Lines[i] = Marked{l.Outline.Turned(by), l.Line, l.Text}
	}
	for i, n := range points {
		t.Points[i] = Note{turn(n.At), n.Text}
	}
	return t
}
