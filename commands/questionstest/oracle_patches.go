package questionstest

import "math"

// halfSquare draws the half-square triangle with a finished short side, adds
// seams on all three edges and measures the short side of what comes out.
func halfSquare(finished float64) float64 {
	cut := withSeams([]point{{0, 0}, {finished, 0}, {0, finished}}, seam)
	return cut[0].distance(cut[1])
}

// quarterSquare does the same with the long side of the triangle.
func quarterSquare(long float64) float64 {
	cut := withSeams([]point{{0, 0}, {long, 0}, {long / 2, long / 2}}, seam)
	return cut[0].distance(cut[1])
}

// handbook gives the handbooks' figure for a triangle, after checking that the
// drawn one needs a hair less; metric work takes the drawn one.
func (w *work) handbook(drawn, printed float64) float64 {
	if printed < drawn || printed-drawn > 1.0/23 {
		w.fail("the handbooks' %v does not cover the drawn %v closely", printed, drawn)
	}
	if w.metric {
		return drawn
	}
	return printed
}

// halfSquares: with two squares together one at a time pairs, fours or eights
// of units come out.
func halfSquares(w *work) {
	at := w.count("at")
	if w.has("square") { // backwards: the unit from a square in hand
		square := w.length("square")
		finished := map[int]float64{2: square - 0.875, 8: square/2 - 0.875}[at]
		w.size("unfinished", finished+2*seam)
		return
	}
	finished := w.length("finish")
	two := w.handbook(halfSquare(finished), finished+0.875)
	switch at {
	case 2:
		w.cut("square_cut", two)
	case 4: // the raw unit's diagonal is the side of the square inside the seam all round
		raw := finished + 2*seam
		w.cut("square_cut", point{0, 0}.distance(point{raw, raw})+2*seam)
	case 8:
		w.cut("square_cut", two+two)
	}
	w.size("unfinished", finished+2*seam)
	if w.has("n") {
		n := w.count("n")
		w.whole("squares", bunches(n, at))
		if n%at == 0 {
			w.whole("units", n)
		}
	}
}

func quarterSquares(w *work) {
	finished := w.length("finish")
	w.cut("square_cut", w.handbook(quarterSquare(finished), finished+1.25))
	if w.has("n") { // two squares, sewn and cut twice, make two units
		n := w.count("n")
		w.whole("squares", 2*bunches(n, 2))
		w.whole("units", n)
	}
}

func geese(w *work) {
	wide, high, n := w.length("w"), w.length("h"), w.count("n")
	if wide != 2*high {
		w.fail("a goose is twice as wide as high")
	}
	if w.count("at") == 1 {
		w.size("goose_width", wide+2*seam)
		w.size("goose_height", high+2*seam)
		w.size("corner_square", high+2*seam)
		w.whole("geese", n)
		w.whole("corners", n+n)
		return
	}
	large := bunches(n, 4)
	w.cut("large_square", w.handbook(quarterSquare(wide), wide+1.25))
	w.cut("small_square", w.handbook(halfSquare(high), high+0.875))
	w.whole("large_squares", large)
	w.whole("small_squares", 4*large)
}

// squareInSquare: the centre joins the middles of the block's sides.
func squareInSquare(w *work) {
	block := w.length("block")
	side := point{block / 2, 0}.distance(point{block, block / 2})
	w.cut("centre_cut", side+2*seam)
	w.cut("corner_square", w.handbook(halfSquare(block/2), block/2+0.875))
	w.whole("corner_squares", bunches(4, 2))
}

// stripSet sews strips together and cuts across them.
func stripSet(w *work) {
	strip, blocks := w.length("strip"), w.count("blocks")
	kind := w.word("kind", "")
	k := map[string]int{"four": 2, "nine": 3}[kind]
	if kind == "rail" {
		k = w.count("k")
	}
	sewn := strip // one strip, then each further one adds what shows of it
	for range k - 1 {
		sewn += strip - 2*seam
	}
	w.size("unfinished", sewn)
	if kind == "rail" {
		sets := bunches(blocks, sideBySide(fabric, sewn))
		w.whole("segments", blocks)
		w.size("segment_width", sewn)
		w.whole("strips", k*sets)
		return
	}
	w.size("segment_width", strip)
	w.whole("segments", k*blocks)
	if kind == "four" {
		sets := bunches(2*blocks, sideBySide(fabric, strip))
		w.whole("strips", 2*sets)
		w.whole("strips_each", sets)
	}
}

// hexagons measures a hexagon drawn by its corners. How many cover a quilt
// depends on the edges, so that figure is wide.
func hexagons(w *work) {
	side := w.length("side")
	var c [6]point
	for i := range c {
		a := float64(i) * math.Pi / 3
		c[i] = point{side * math.Cos(a), side * math.Sin(a)}
	}
	middle := func(p, q point) point { return p.plus(q).times(0.5) }
	w.size("side", c[0].distance(c[1]))
	w.near("flat_to_flat", middle(c[0], c[1]).distance(middle(c[3], c[4])), 0.07)
	w.near("point_to_point", c[0].distance(c[3]), 0.07)
	if w.has("w") {
		area := 0.0
		for i := range c {
			area += c[i].cross(c[(i+1)%6]) / 2
		}
		n := w.length("w") * w.length("l") / area
		w.set("count", math.Round(n), "count", math.Round(n*0.09))
	}
}

// triangles60 draws the equilateral triangle and its seams. The clipped tip
// decides whether one more fits, so the count is give or take one.
func triangles60(w *work) {
	if w.has("height") {
		h := w.length("height")
		half := h / math.Sqrt(3)
		cut := withSeams([]point{{-half, 0}, {half, 0}, {0, h}}, seam)
		w.cut("strip_width", cut[2].y-cut[0].y)
		return
	}
	strip := w.length("strip")
	side := 2 * strip / math.Sqrt(3)
	w.size("strip_width", strip)
	n := 0
	for used := side; used <= fabric+hair; used += side / 2 { // up and down
		n++
	}
	w.set("per_strip", float64(n), "count", 1)
}

// diamonds lie along a strip as leaning cuts; the slant costs one end.
func diamonds(w *work) {
	a := w.num("angle") * math.Pi / 180
	if w.has("side") {
		s := w.length("side")
		cut := withSeams([]point{{0, 0}, {s, 0}, {s + s*math.Cos(a), s * math.Sin(a)}, {s * math.Cos(a), s * math.Sin(a)}}, seam)
		w.cut("strip_width", cut[2].y-cut[0].y)
		return
	}
	strip := w.length("strip")
	slant := line{point{0, 0}, point{math.Cos(a), math.Sin(a)}}
	lean := slant.meet(across(strip)).x
	apart := slant.moved(-strip).meet(across(0)).x
	w.size("strip_width", strip)
	w.set("per_strip", float64(sideBySide(fabric-lean, apart)), "count", 1)
}

// halfRectangles draws the finished triangle and its seams.
func halfRectangles(w *work) {
	wide, high := w.length("w"), w.length("h")
	cut := withSeams([]point{{0, 0}, {wide, 0}, {0, high}}, seam)
	w.near("cut_width", cut[0].distance(cut[1]), 0.13)
	w.near("cut_height", cut[0].distance(cut[2]), 0.13)
}

// circle walks round a polygon of very many sides.
func circle(w *work) {
	d := w.length("across")
	w.near("around", walk(point{d / 2, 0}, 0, 2*math.Pi), 0.13)
	w.near("template_across", d, 0.07)
	w.near("cut_across", d+2*seam, 0.07)
}

// walk is the length of an arc about the origin, in small straight steps.
func walk(start point, from, to float64) float64 {
	const steps = 100_000
	r := math.Hypot(start.x, start.y)
	long, last := 0.0, point{r * math.Cos(from), r * math.Sin(from)}
	for i := 1; i <= steps; i++ {
		a := from + (to-from)*float64(i)/steps
		p := point{r * math.Cos(a), r * math.Sin(a)}
		long, last = long+p.distance(last), p
	}
	return long
}

func scallops(w *work) {
	edge := w.length("edge")
	n := 0
	if w.has("n") {
		n = w.count("n")
	} else {
		n = sideBySide(edge, w.length("each"))
	}
	each := edge / float64(n)
	w.whole("scallops", n)
	w.near("each_across", each, 0.07)
	if w.has("depth") {
		// The centre is where the uprights on the middles of two chords cross.
		left, tip := point{-each / 2, 0}, point{0, w.length("depth")}
		chord := tip.minus(left)
		c := line{left.plus(tip).times(0.5), point{-chord.y, chord.x}}.meet(upright)
		r := left.minus(c)
		half := math.Atan2(each/2, -c.y)
		w.near("arc", walk(r, math.Pi/2-half, math.Pi/2+half), 0.13)
	}
}

// coping: plain strips on both sides make the centre a whole number of units.
func coping(w *work) {
	side, unit := w.length("a"), w.length("unit")
	n := stripsEndToEnd(side, unit, 0)
	strip := (float64(n)*unit - side) / 2
	w.whole("units", n)
	w.size("strip_finished", strip)
	w.size("strip_cut", strip+2*seam)
}

// edgeTriangles: a folded square shows half an inch less than it was cut.
func edgeTriangles(w *work) {
	var square float64
	if w.has("width") {
		square = w.length("width") + 2*seam
	} else {
		square = w.length("square")
	}
	shows := square - 2*seam
	w.size("square", square)
	if !w.has("w") {
		w.size("across_each", shows)
		return
	}
	side, top := stripsEndToEnd(w.length("l"), shows, 0), stripsEndToEnd(w.length("w"), shows, 0)
	w.whole("side_points", side)
	w.whole("top_points", top)
	w.whole("points", side+top+side+top)
}
