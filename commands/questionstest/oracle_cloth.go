package questionstest

import (
	"fmt"
	"math"
)

func yardage(w *work) {
	n, usable := w.count("n"), w.lengthOr("usable", fabric)
	wide, high := w.length("w"), w.length("h")
	lay := func(across, along float64) (per, strips int, length float64) {
		per = sideBySide(usable, across)
		if per == 0 {
			return 0, 0, math.Inf(1)
		}
		strips = bunches(n, per)
		return per, strips, float64(strips) * along
	}
	per, strips, length := lay(wide, high)
	strip := high
	if !w.flag("oneway") && wide != high {
		if p, s, l := lay(high, wide); l < length {
			per, strips, length, strip = p, s, l, wide
		} else if l == length {
			w.fail("both directions take %v in", l)
		}
	}
	w.whole("per_strip", per)
	w.whole("strips", strips)
	w.size("strip_width", strip)
	w.size("length", length)
	w.buy("buy", length)
	w.enough(strips, length)
}

// fabricStrips lie one under the other down the cloth.
func fabricStrips(w *work) {
	length := 0.0
	for range w.count("n") {
		length += w.length("strip")
	}
	w.buy("buy", length)
}

// cuts are the usable sizes of what a shop sells ready cut, in inches.
var cuts = map[string][2]float64{"fq": {20, 18}, "lq": {40, 9}, "fe": {20, 9}}

// pieces lays rows of pieces, both ways round.
func pieces(w *work) {
	w.read["from"] = true
	from, ok := w.in["from"].([]any)
	if !ok {
		from = []any{w.in["from"]}
	}
	usable := w.lengthOr("usable", fabric)
	amount := func(i int) float64 { v, _ := from[i].(float64); return v }
	var wide, long float64
	switch kind := fmt.Sprint(from[0]); kind {
	case "yd":
		wide, long = usable, amount(1)*36
	case "strip":
		wide, long = usable, amount(1)
	case "wh":
		wide, long = amount(1), amount(2)
		if w.metric {
			wide, long = wide/2.54, long/2.54
		}
	default:
		size, ok := cuts[kind]
		if !ok {
			w.fail("no cut is called %q", kind)
		}
		wide, long = size[0], size[1]
	}
	pw, ph := w.length("w"), w.length("h")
	n := max(sideBySide(wide, pw)*sideBySide(long, ph), sideBySide(wide, ph)*sideBySide(long, pw))
	w.whole("pieces", n)
}

// cuttingPlan searches all ways to cut strips across the fabric and pieces
// across the strips: the best for what is still to cut is the best first strip
// and the best for the rest.
func cuttingPlan(w *work) {
	usable := w.lengthOr("usable", fabric)
	rows := w.rows("pieces")
	still := make([]int, len(rows))
	for i, r := range rows {
		still[i] = int(r[0])
	}
	strips := fullStrips(rows, usable)
	known := map[string]float64{}
	var least func(still []int) float64
	least = func(still []int) float64 {
		key := fmt.Sprint(still)
		if v, ok := known[key]; ok {
			return v
		}
		best, done := math.Inf(1), true
		for i := range still {
			done = done && still[i] == 0
		}
		if done {
			return 0
		}
		known[key] = best
		for _, s := range strips {
			rest, helps := make([]int, len(still)), false
			for i := range still {
				rest[i] = max(0, still[i]-s.holds[i])
				helps = helps || rest[i] < still[i]
			}
			if helps {
				best = math.Min(best, s.height+least(rest))
			}
		}
		known[key] = best
		return best
	}
	length := least(still)
	w.size("length", length)
	w.buy("buy", length)
}

type fullStrip struct {
	height float64
	holds  []int
}

// fullStrips lists, for each height that a piece may have, what a strip of it
// can hold; a piece lower than the strip is trimmed.
func fullStrips(rows [][]float64, usable float64) []fullStrip {
	heights := map[float64]bool{}
	for _, r := range rows {
		heights[r[1]], heights[r[2]] = true, true
	}
	var out []fullStrip
	for h := range heights {
		var fill func(i int, left float64, holds []int)
		fill = func(i int, left float64, holds []int) {
			if i == len(rows) {
				out = append(out, fullStrip{h, append([]int(nil), holds...)})
				return
			}
			takes := math.Inf(1) // the least width that the piece needs in a strip of this height
			for _, side := range [][2]float64{{rows[i][1], rows[i][2]}, {rows[i][2], rows[i][1]}} {
				if side[1] <= h+hair {
					takes = math.Min(takes, side[0])
				}
			}
			for k := 0; float64(k)*takes <= left+hair || k == 0; k++ {
				used := 0.0
				if k > 0 {
					used = float64(k) * takes
				}
				fill(i+1, left-used, append(holds, k))
			}
		}
		fill(0, usable, nil)
	}
	return out
}

func bed(w *work) {
	wide, long, drop := w.length("mw"), w.length("ml"), w.length("drop")
	tuck := w.lengthOr("tuck", 0)
	w.near("mattress_width", wide, 0.12)
	w.near("mattress_length", long, 0.12)
	w.near("quilt_width", drop+wide+drop, 0.12)
	w.near("quilt_length", tuck+long+drop, 0.12)
}

func scale(w *work) { w.set("factor", w.num("to")/w.num("from"), "count", 0.006) }

// convertSum goes by way of the millimetre: 25.4 to an inch since 1959.
func convertSum(w *work) {
	mm := map[string]float64{"in": 25.4, "ft": 304.8, "yd": 914.4, "mm": 1, "cm": 10, "m": 1000}
	from, to := w.word("from", ""), w.word("to", "")
	w.set("result", w.num("v")*mm[from]/mm[to], to, 0.006)
}

// shrink adds cloth, an eighth of a yard (a tenth of a metre) at a time, until
// what the wash leaves is enough.
func shrink(w *work) {
	need, left := w.num("need"), 1-w.num("p")/100
	step, unit, tol := 0.125, "yd", 0.001
	if w.metric {
		step, unit, tol = 0.1, "m", 0.051
	}
	steps := 0
	for float64(steps)*step*left < need-hair {
		steps++
	}
	w.set("buy", float64(steps)*step, unit, tol)
}

// widthChange keeps the area.
func widthChange(w *work) {
	area := w.num("yd") * 36 * w.num("from")
	w.buy("buy", area/w.num("to"))
}

func quiltingPrice(w *work) {
	area := w.num("w") * w.num("l")
	w.set("area", area, "", 0.5)
	w.set("price", area*w.num("rate"), "money", 0.006)
}

// kit prices what is in it, then what must be asked so that the margin is
// that share of the price, or the markup that share of the cost.
func kit(w *work) {
	cost := 0.0
	for _, item := range w.rows("items") {
		cost += item[0] * item[1]
	}
	w.set("cost", cost, "money", 0.006)
	switch {
	case w.has("margin"):
		m := w.num("margin")
		w.set("price", cost/(100-m)*100, "money", 0.011)
		w.set("margin", m, "percent", 0.1)
	case w.has("markup"):
		w.set("price", cost*(100+w.num("markup"))/100, "money", 0.011)
	}
}
