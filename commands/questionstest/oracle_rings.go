package questionstest

import "math"

// whole turn, half and quarter, in degrees.
var turns = map[string]float64{"full": 360, "half": 180, "quarter": 90}

// wedgeCount adds blades until the next would pass the turn.
func wedgeCount(w *work) {
	turn := turns[w.word("part", "full")]
	if w.has("blades") && !w.has("angle") {
		n := w.num("blades")
		w.set("blades", n, "count", 0)
		w.set("angle", turn/n, "deg", 0.01)
		w.set("left_over", 0.0, "deg", 0.01)
		return
	}
	angle := w.num("angle")
	n, filled := 0, 0.0
	for filled+angle <= turn+hair && (!w.has("blades") || n < w.count("blades")) {
		n, filled = n+1, filled+angle
	}
	w.whole("blades", n)
	w.set("angle", angle, "deg", 0.01)
	w.set("left_over", turn-filled, "deg", 0.01)
}

// wedge is a blade drawn with its apex, where the cut edges would meet, at the
// origin and its centre line going up.
type wedge struct {
	edge     line // the right cut edge, going out
	sewn     line // the same edge a seam further in
	from, to float64
}

// newWedge draws a blade of an angle that starts where it is as wide as its
// narrow end and is as long as its length.
func newWedge(degrees, narrow, length float64) wedge {
	h := degrees / 2 * math.Pi / 180
	v := wedge{edge: line{point{0, 0}, point{math.Sin(h), math.Cos(h)}}}
	v.sewn = v.edge.moved(seam)
	v.from = v.edge.meet(line{point{narrow / 2, 0}, point{0, 1}}).y
	v.to = v.from + length
	return v
}

// width straight across the cut blade, so far from the apex.
func (v wedge) width(at float64) float64 { return 2 * v.edge.meet(across(at)).x }

// centre is where the sewn edges meet: the middle of the ring.
func (v wedge) centre() point { return v.sewn.meet(upright) }

func wedgeRing(w *work) {
	n := w.num("blades")
	narrow := w.length("narrow")
	degrees := 360 / n
	v := newWedge(degrees, narrow, 0)
	c := v.centre()
	var length float64
	if w.has("across") { // backwards: the blade that makes the ring
		length = w.length("across")/2 + c.y - v.from
		w.near("blade_length", length, 0.13)
	} else {
		length = w.length("length")
		w.size("blade_length", length)
	}
	v = newWedge(degrees, narrow, length)
	outer := v.to - c.y
	if w.flag("folded") {
		outer -= seam
	}
	hole := v.sewn.meet(across(v.from)).distance(c)
	w.whole("blades", int(n))
	w.set("angle", degrees, "deg", 0.01)
	w.near("wide_end", v.width(v.to), 0.07)
	w.size("narrow_end", narrow)
	w.near("ring_across", 2*outer, 0.07)
	w.near("opening_across", 2*(v.from-c.y), 0.07)
	if w.wants("cover_circle") {
		cover := w.stepUp(2*(hole+0.25), 0.25, 0)
		w.near("cover_circle", cover, 0.01)
		w.near("cover_cut", cover+2*0.25, 0.01)
	}
	if w.wants("background_square") {
		w.near("background_square", w.stepUp(2*outer+2*2+2*seam, 0.5, 1.0/32), 0.01)
	}
}

// stepUp rounds up to a step, and refuses where a little more or less, as much
// as an earlier rounding may have moved it, would give another step.
func (w *work) stepUp(x, step, play float64) float64 {
	up := func(x float64) float64 {
		n := 0
		for float64(n)*step < x-hair {
			n++
		}
		return float64(n) * step
	}
	if up(x-play) != up(x+play) {
		w.fail("%v hangs on the last %v", x, play)
	}
	return up(x)
}

// wedgeFit grows a blade by the ruler's smallest step while the strip holds
// its wide end; or finds the strip for a length.
func wedgeFit(w *work) {
	angle, narrow := w.num("angle"), w.length("narrow")
	w.set("angle", angle, "deg", 0.01)
	w.size("narrow_end", narrow)
	v := newWedge(angle, narrow, 0)
	if w.has("length") {
		w.cut("strip_width", v.width(v.from+w.length("length")))
		return
	}
	strip := w.length("strip")
	steps := 0
	for v.width(v.from+float64(steps+1)/8) <= strip+hair {
		steps++
	}
	w.size("longest_blade", float64(steps)/8)
	w.size("strip_width", strip)
}

// wedgeStrips counts blades along a strip, or head to tail across one that is
// as wide as the blade is long.
func wedgeStrips(w *work) {
	usable, length := w.lengthOr("usable", fabric), w.length("length")
	per, strip := 0, length
	if w.flag("across") {
		angle, narrow := w.num("angle"), w.length("narrow")
		v := newWedge(angle, narrow, length)
		per = headToTail(v.width(v.to), v.width(v.from), usable)
	} else {
		strip = w.length("strip")
		per = sideBySide(usable, length)
	}
	strips := bunches(w.count("blades"), per)
	w.whole("blades_per_strip", per)
	w.whole("strips", strips)
	w.buy("buy", float64(strips)*strip)
	w.enough(strips, float64(strips)*strip)
}

// headToTail lays blades side by side, every other one upside down, sharing
// their slanted cuts, and follows how far the lower and the upper edge have got.
func headToTail(wide, narrow, space float64) int {
	n, lower, upper := 0, 0.0, (wide-narrow)/2
	for {
		if n%2 == 0 {
			lower, upper = lower+wide, upper+narrow
		} else {
			lower, upper = lower+narrow, upper+wide
		}
		if math.Max(lower, upper) > space+hair {
			return n
		}
		n++
	}
}

// split deals pieces out like cards.
func split(w *work) {
	n, k := w.count("n"), w.count("k")
	each := 0
	for n >= k {
		n, each = n-k, each+1
	}
	w.whole("each", each)
	w.whole("left_over", n)
}
