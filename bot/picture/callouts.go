package picture

import (
	"cmp"
	"slices"

	"counterhand/commands/scene"
)

// callout is a note broken into lines.
type callout struct {
	at    scene.Point
	lines []string
}

// callouts are the notes beside a drawing, from the top down.
type callouts struct {
	notes  []callout
	height float64 // of all of them together
}

const calloutGap = 1.6

func (c callout) height() float64 { return lineRoom * float64(len(c.lines)) }

// notes breaks the notes of a panel into lines and puts them in the order in
// which their places lie, so that the lines to them do not cross.
func (t *setter) notes(notes []scene.Note, width float64) callouts {
	var c callouts
	for _, n := range notes {
		note := callout{n.At, t.wrap(t.writable(n.Text), false, smallSize, width)}
		c.notes = append(c.notes, note)
		c.height += note.height() + calloutGap
	}
	slices.SortStableFunc(c.notes, func(a, b callout) int {
		return cmp.Or(cmp.Compare(b.at.Y, a.at.Y), cmp.Compare(b.at.X, a.at.X))
	})
	return c
}

// callouts writes the notes into their column: each as near to the height of
// its place as the others allow, within the panel.
func (t *setter) callouts(c callouts, f frame, x, top, height float64) {
	tops := make([]float64, len(c.notes))
	room := c.height
	limit := top
	for i, n := range c.notes {
		_, y := f.at(n.at)
		need := n.height() + calloutGap
		tops[i] = max(min(y+n.height()/2, limit), top-height+room)
		limit = tops[i] - need
		room -= need
	}
	for i, n := range c.notes {
		t.callout(n, f, x, tops[i])
	}
}

// callout writes one note and draws the line from it to its place.
func (t *setter) callout(n callout, f frame, x, top float64) {
	px, py := f.at(n.at)
	t.line(x-0.8, top-n.height()/2, px, py, strokeStyle(inkColor, thin))
	t.ink(dot(px, py, 0.55), fillStyle(inkColor))
	for i, line := range n.lines {
		y := top - lineRoom*float64(i) - smallSize*mmPerPoint*(ascent+0.12)
		t.write(line, x, y, smallSize, false)
	}
}
