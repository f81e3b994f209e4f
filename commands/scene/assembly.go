package scene

import (
	"slices"
	"strings"
)

// how is how the pieces of a topic are put together.
type how struct{ sew, press []string }

// assembly tells how to sew and press, by topic. Unless a source is named, it
// is common practice, no source.
var assembly = map[string]how{
	"wedge-ring": {
		// Source: pairs, then fours, then halves as in
		// http://ikwilt.blogspot.com/2011/05/dresden-plate-16-petals.html; the
		// checks against a corner and an edge are common practice, no source.
		sew: []string{
			"Sew the blades in pairs, from the wide end, and lock both ends of the seam.",
			"Join the pairs into quarters where the number of blades allows it, else into sections as equal as can be. Hold a quarter against a square corner; if it misses, mend it in the seams between pairs.",
			"Join the sections into halves where the number allows it, and hold each half against a straight edge.",
			"Join what is left. The ring lies flat without pulling.",
			"Turn the edge of the cover circle under and sew it over the opening.",
		},
		press: []string{"Press the seams all one way round, before the halves are joined.", "Press the ring flat from the back, then from the front."},
	},
	"wedge-strips": {press: []string{"Press the strips before you cut blades from them."}},
	"binding": {
		sew: []string{
			"Join the strips end to end on the diagonal, right sides together, and trim the seams to ¼ in.",
			"Sew the binding to the front, leaving a tail of about 10 in at the start; fold a mitre at each corner.",
			"Join the two ends, fold the binding to the back and sew it down.",
		},
		press: []string{"Press the joins open.", "Press the whole strip in half along its length, right side out."},
	},
	"bias-binding": {
		sew:   []string{"Cut the square once from corner to corner and sew the two straight edges together.", "Mark the strips along the long edges, join the ends one strip off, and cut along the marks in one go."},
		press: []string{"Press the seams open; lift the iron rather than slide it, since bias stretches."},
	},
	"backing": {
		sew:   []string{"Cut the selvages off.", "Sew the panels together along their long edges, ½ in from the edge."},
		press: []string{"Press the seams open."},
	},
	"borders": {
		sew:   []string{"Measure the quilt through its middle and cut the borders to that.", "Pin the middle and the ends, then sew: sides first, then top and bottom, border by border from the inside out."},
		press: []string{"Press towards each border before the next goes on."},
	},
	"sashing": {
		sew:   []string{"Sew the short sashes between the blocks, row by row.", "Sew the rows together with the long ones, or the rows of sashes and cornerstones, between them."},
		press: []string{"Press towards the sashes."},
	},
	"layout": {sew: []string{"Lay the blocks out before you sew.", "Sew the rows, then the rows to each other."}, press: []string{"Press the seams of every other row the other way, so that they nest."}},
	"setting-triangles": {
		sew:   []string{"Sew the rows on the diagonal, a side triangle at each end.", "Join the rows; the corners come last.", "Trim the edge ¼ in outside the corners of the blocks."},
		press: []string{"Press towards the triangles, without stretching their long edge."},
	},
	"half-square-triangles": {
		sew:   []string{"Lay two squares right sides together and draw the diagonal.", "Sew on both sides of the line, ¼ in away, and cut on the line.", "Trim the units to their size."},
		press: []string{"Press towards the darker fabric."},
	},
	"quarter-square-triangles": {
		sew:   []string{"Make half-square triangles, then lay two with their seams crossed, right sides together.", "Draw the other diagonal, sew on both sides of it, cut on it and trim."},
		press: []string{"Press the last seam open or to one side."},
	},
	"flying-geese": {
		sew:   []string{"Lay a corner square on each end in turn, sew along its diagonal and trim to ¼ in.", "Trim the geese with ¼ in above the point."},
		press: []string{"Press towards the corners."},
	},
	"square-in-square": {
		sew:   []string{"Sew two opposite corners on, then the other two.", "Trim with ¼ in outside each point of the centre."},
		press: []string{"Press outwards after each pair."},
	},
	"strip-set": {
		sew:   []string{"Sew the strips together, every other one from the other end so that the set stays straight.", "Cut the segments across and sew them together."},
		press: []string{"Press before you cut the segments."},
	},
	"hexagons":     {sew: []string{"Fold each patch round its paper and tack it.", "Sew patches edge to edge with small stitches; the papers come out once all sides are sewn."}, press: []string{"Press before the papers come out."}},
	"triangles-60": {sew: []string{"Sew the triangles into rows, every other one turned round.", "Join the rows."}, press: []string{"Press without stretching the sides that are not on the grain."}},
	"diamonds":     {sew: []string{"Sew diamonds into rows, offset by ¼ in where they begin.", "Join the rows, matching the seams ¼ in from the edge."}, press: []string{"Press without stretching: two sides are on the bias."}},
	"edge-triangles": {
		sew:   []string{"Fold each square twice from corner to corner.", "Lay them along the edge of the quilt, raw edges together, one into the other, and sew them on."},
		press: []string{"Press after each fold."},
	},
}

// The usual cautions. A maker's manual comes first.
// Source: the cautions of 4-H clubs, https://pdfkiwi.com/documents/safety-guide-5dffe78087827.
const (
	cutCaution  = "Close the cutter each time you put it down, and keep your fingers back from the ruler's edge."
	ironCaution = "Stand the iron on its heel, and unplug it when you leave it."
)

// task is a part of the work that a reminder is about.
type task uint8

const (
	noTask task = iota
	toCut
	toPress
	toSew
)

// taskOf tells by its words which part of the work a reminder is about.
func taskOf(reminder string) task {
	lower := strings.ToLower(reminder)
	mentions := func(words ...string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return strings.Contains(lower, w) })
	}
	switch {
	case mentions("cutter", "blade", "ruler", "mat ", "scissors", "cut "):
		return toCut
	case mentions("iron", "press", "steam", "starch"):
		return toPress
	case mentions("needle", "pin", "machine", "sew"):
		return toSew
	}
	return noTask
}

// reminding gives the reminders about a task, and the usual caution where there
// is none.
func reminding(reminders []string, t task, usual string) []string {
	var out []string
	for _, r := range reminders {
		if taskOf(r) == t {
			out = append(out, r)
		}
	}
	if len(out) == 0 {
		out = []string{usual}
	}
	return out
}

// without gives the reminders about none of the tasks.
func without(reminders []string, placed map[task]bool) []string {
	var out []string
	for _, r := range reminders {
		if !placed[taskOf(r)] {
			out = append(out, r)
		}
	}
	return out
}
