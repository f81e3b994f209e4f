package questionstest

import (
	"fmt"
	"maps"
	"math"
)

// round gives the way round what is to be bound.
func (w *work) around() float64 {
	switch {
	case w.has("per"):
		return w.length("per")
	case w.has("circle"):
		return math.Pi * w.length("circle")
	case w.has("hex"):
		return 6 * w.length("hex")
	}
	width, length := w.length("w"), w.length("l")
	return width + length + width + length
}

func binding(w *work) {
	around := w.around()
	need := around + w.lengthOr("extra", 10)
	strip := w.lengthOr("strip", 2.5)
	n := stripsEndToEnd(need, w.lengthOr("usable", fabric), strip)
	w.near("perimeter", around, 0.13)
	w.near("length_needed", need, 0.13)
	w.whole("strips", n)
	w.size("strip_width", strip)
	w.buy("buy", float64(n)*strip)
	w.enough(n, float64(n)*strip)
}

// bias tries squares half an inch (a centimetre) apart: the length is the area
// of the square, less its two construction seams, over the width.
func bias(w *work) {
	strip := w.length("strip")
	var need float64
	if w.has("need") {
		need = w.length("need")
	} else {
		need = w.around() + 10
	}
	step, tol := 0.5, 0.01
	if w.metric {
		step, tol = 1/2.54, 0.4
	}
	side := step
	for side*(side-1)/strip < need-hair {
		side += step
	}
	w.near("length_needed", need, 0.13)
	w.near("square_side", side, tol)
}

// backing lays panels side by side in both directions.
func backing(w *work) {
	over, usable := w.lengthOr("over", 4), w.lengthOr("usable", fabric)
	wide, long := w.length("w")+2*over, w.length("l")+2*over
	panels := func(cover float64) int { return stripsEndToEnd(cover, usable, 1) }
	v, h := panels(wide), panels(long)
	vLength, hLength := float64(v)*long, float64(h)*wide
	dir := w.word("dir", "")
	vertical := vLength < hLength
	if dir != "" {
		vertical = dir == "vertical"
	}
	n, panel, seams := h, wide, "horizontal"
	if vertical {
		n, panel, seams = v, long, "vertical"
	}
	if n == 1 {
		seams = "none"
	}
	w.near("backing_width", wide, 0.005)
	w.near("backing_length", long, 0.005)
	w.whole("panels", n)
	w.size("panel_length", panel)
	w.buy("buy", float64(n)*panel)
	if dir != "" || vLength != hLength || n == 1 {
		w.words("seams", seams)
	}
	w.enough(n, float64(n)*panel)
}

func batting(w *work) {
	over := w.lengthOr("over", 4)
	w.size("batting_width", over+w.length("w")+over)
	w.size("batting_length", over+w.length("l")+over)
	if w.has("have_w") { // a batting in hand, laid either way round
		a, b := w.length("have_w"), w.length("have_l")
		wide, long := w.length("w")+2*over, w.length("l")+2*over
		w.sayEnough(a >= wide && b >= long || a >= long && b >= wide)
	}
}

// borders sews one border after another on, sides first.
func borders(w *work) {
	width, length := w.length("w"), w.length("l")
	usable, mitred := w.lengthOr("usable", fabric), w.flag("mitred")
	var widths []float64
	w.read["b"], w.read["target"] = true, true
	switch b := w.in["b"].(type) {
	case float64:
		widths = []float64{b}
	case []any:
		for _, v := range b {
			widths = append(widths, v.(float64))
		}
	default:
		target, _ := w.in["target"].([]any)
		wider, longer := target[0].(float64)-w.in["w"].(float64), target[1].(float64)-w.in["l"].(float64)
		if wider != longer {
			w.fail("one border cannot reach %v", target)
		}
		widths = []float64{wider / 2}
	}
	for i, b := range widths {
		if w.metric {
			b /= 2.54
		}
		name := func(s string) string {
			if len(widths) == 1 {
				return s
			}
			return fmt.Sprintf("border%d.%s", i+1, s)
		}
		side, top := length+2*seam, width+b+b+2*seam
		if mitred {
			side, top = length+2*b+2*2, width+2*b+2*2
		}
		strip := b + 2*seam
		n := 0
		if side > usable || top > usable {
			n = stripsEndToEnd(side+side+top+top, usable, 0.5)
		} else {
			n = fewestStrips([]float64{side, side, top, top}, usable)
		}
		w.size(name("side_cut"), side)
		w.size(name("top_cut"), top)
		w.size(name("strip_width"), strip)
		w.whole(name("strips"), n)
		w.buy(name("buy"), float64(n)*strip)
		if len(widths) == 1 {
			w.enough(n, float64(n)*strip)
		}
		width, length = width+2*b, length+2*b
	}
	w.size("quilt_width", width)
	w.size("quilt_length", length)
}

// fewestStrips tries every way to share whole pieces out over strips.
func fewestStrips(pieces []float64, usable float64) int {
	best := len(pieces)
	var place func(i int, rest []float64)
	place = func(i int, rest []float64) {
		if len(rest) >= best {
			return
		}
		if i == len(pieces) {
			best = len(rest)
			return
		}
		for j := range rest {
			if rest[j] >= pieces[i]-hair {
				rest[j] -= pieces[i]
				place(i+1, rest)
				rest[j] += pieces[i]
			}
		}
		place(i+1, append(rest[:len(rest):len(rest)], usable-pieces[i]))
	}
	place(0, nil)
	return best
}

// sashing walks over the grid and counts the gaps beside and under each block.
func sashing(w *work) {
	columns, rows := w.count("across"), w.count("down")
	block, sash := w.length("block"), w.length("sash")
	frame, stones := w.flag("frame"), w.flag("corner")
	first, lastColumn, lastRow := 1, columns-1, rows-1
	if frame {
		first, lastColumn, lastRow = 0, columns, rows
	}
	uprights, levels, crossings, longs := 0, 0, 0, 0
	for x := first; x <= lastColumn; x++ {
		uprights += rows
	}
	for y := first; y <= lastRow; y++ {
		levels += columns
		longs++
		for x := first; x <= lastColumn; x++ {
			crossings++
		}
	}
	width, length := 0.0, 0.0
	for range columns {
		width += block
	}
	for range rows {
		length += block
	}
	width += float64(lastColumn-first+1) * sash
	length += float64(lastRow-first+1) * sash
	w.size("strip_width", sash+2*seam)
	w.size("sash_cut", block+2*seam)
	w.size("quilt_width", width)
	w.size("quilt_length", length)
	if stones {
		w.whole("short_sashes", uprights+levels)
		w.whole("cornerstones", crossings)
		return
	}
	w.whole("short_sashes", uprights)
	if !frame {
		w.whole("long_sashes", longs)
		w.size("long_cut", width+2*seam)
	}
}

// layout sets blocks until the quilt is covered, or counts the ones that are set.
func layout(w *work) {
	block := w.length("block")
	if w.flag("point") {
		columns, rows := w.count("across"), w.count("down")
		diagonal := point{0, 0}.distance(point{block, block})
		blocks := 0
		for y := 1; y < 2*rows; y++ { // centres lie at odd half diagonals, and between them at even ones
			for x := 1; x < 2*columns; x++ {
				if x%2 == y%2 {
					blocks++
				}
			}
		}
		w.whole("across", columns)
		w.whole("down", rows)
		w.whole("blocks", blocks)
		w.near("quilt_width", float64(columns)*diagonal, 0.13)
		w.near("quilt_length", float64(rows)*diagonal, 0.13)
		return
	}
	var columns, rows int
	if w.has("w") {
		columns = stripsEndToEnd(w.length("w"), block, 0)
		rows = stripsEndToEnd(w.length("l"), block, 0)
	} else {
		columns, rows = w.count("across"), w.count("down")
	}
	w.whole("across", columns)
	w.whole("down", rows)
	w.whole("blocks", columns*rows)
	w.size("quilt_width", float64(columns)*block)
	w.size("quilt_length", float64(rows)*block)
}

// setting draws the triangles that fill in round blocks on point. The handbooks
// add 1¼ and ⅞ in; the drawn triangle must need a hair less.
func setting(w *work) {
	block := w.length("block")
	diagonal := point{0, 0}.distance(point{block, block})
	w.near("diagonal", diagonal, 0.13)
	w.cut("side_square", w.handbook(quarterSquare(diagonal), diagonal+1.25))
	w.cut("corner_square", w.handbook(halfSquare(diagonal/2), diagonal/2+0.875))
	w.whole("corner_squares", bunches(4, 2))
	if w.has("across") {
		across, down := w.count("across"), w.count("down")
		triangles := 0
		for x := 1; x < across; x++ {
			triangles += 2
		}
		for y := 1; y < down; y++ {
			triangles += 2
		}
		w.whole("side_squares", bunches(triangles, 4))
	}
}

// plan joins the sums for one quilt, each under its own name.
func plan(w *work) {
	size := func(f string) Oracle { return Oracle{"f": f, "w": w.num("w"), "l": w.num("l")} }
	parts := map[string]Oracle{"backing": size("backing"), "batting": size("batting"), "binding": size("binding")}
	if w.has("layout") {
		parts["layout"] = size("layout")
		parts["layout"]["block"] = w.num("layout")
	}
	for part, o := range parts {
		figures, err := o.Figures()
		if err != nil {
			w.fail("%s: %v", part, err)
		}
		for name, spec := range maps.All(figures) {
			w.out[part+"."+name] = spec
		}
	}
}
