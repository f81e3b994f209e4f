package questionstest

import (
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
)

// Oracle is the sum behind a question, stated by who wrote the question: "f"
// names the sum, "only" the figures that are expected (all of them when it is
// absent), "u" is "cm" where the lengths are metric; the rest are its inputs.
type Oracle map[string]any

// Figures reckons what is expected, by another route than package calc takes:
// strips are laid one after another, wedges are lines that cross, layouts are
// counted piece by piece. An input that the sum does not know is an error, and
// so is a result that hangs on a rounding edge, since such a question would
// test luck.
func (o Oracle) Figures() (map[string]FigureSpec, error) {
	name, _ := o["f"].(string)
	sum, ok := sums()[name]
	if !ok {
		return nil, fmt.Errorf("no sum is called %q", name)
	}
	w := &work{in: o, read: map[string]bool{"f": true, "only": true, "u": true}, out: map[string]FigureSpec{}}
	w.metric = o["u"] == "cm" || o["u"] == "m"
	sum(w)
	for key := range o {
		if !w.read[key] {
			w.fail("input %q is not used", key)
		}
	}
	if len(w.faults) > 0 {
		return nil, errors.Join(w.faults...)
	}
	if only, ok := o["only"].([]any); ok {
		kept := map[string]FigureSpec{}
		for _, n := range only {
			spec, ok := w.out[fmt.Sprint(n)]
			if !ok {
				return nil, fmt.Errorf("%s gives no figure %v, only %v", name, n, slices.Sorted(maps.Keys(w.out)))
			}
			kept[fmt.Sprint(n)] = spec
		}
		return kept, nil
	}
	return w.out, nil
}

// UnmarshalJSON keeps numbers as float64 and lists as []any.
func (o *Oracle) UnmarshalJSON(b []byte) error { return json.Unmarshal(b, (*map[string]any)(o)) }

// sums are all sums by name.
func sums() map[string]func(*work) {
	return map[string]func(*work){
		"wedge_count": wedgeCount, "wedge_ring": wedgeRing, "wedge_fit": wedgeFit, "wedge_strips": wedgeStrips,
		"split": split, "binding": binding, "bias": bias, "backing": backing, "batting": batting,
		"borders": borders, "sashing": sashing, "layout": layout, "setting": setting, "plan": plan,
		"hst": halfSquares, "qst": quarterSquares, "geese": geese, "sis": squareInSquare, "strip_set": stripSet,
		"hex": hexagons, "tri60": triangles60, "diamonds": diamonds, "hrt": halfRectangles,
		"circle": circle, "scallop": scallops, "coping": coping, "points": edgeTriangles,
		"yardage": yardage, "fabric_strips": fabricStrips, "pieces": pieces, "plan_cut": cuttingPlan,
		"bed": bed, "scale": scale, "convert": convertSum, "shrink": shrink, "width": widthChange,
		"price": quiltingPrice, "kit": kit,
	}
}

// The habits that every sum rests on, in inches; from section 3 of the contract.
const (
	fabric = 40.0 // usable width
	seam   = 0.25
	hair   = 1e-9
)

// work is one sum in the making. Lengths are inches inside.
type work struct {
	in     Oracle
	read   map[string]bool
	metric bool
	out    map[string]FigureSpec
	faults []error
}

func (w *work) fail(format string, args ...any) {
	w.faults = append(w.faults, fmt.Errorf(format, args...))
}

// ---- inputs

func (w *work) has(key string) bool { w.read[key] = true; _, ok := w.in[key]; return ok }

// num is a plain number.
func (w *work) num(key string) float64 {
	w.read[key] = true
	v, ok := w.in[key].(float64)
	if !ok {
		w.fail("input %q is missing", key)
	}
	return v
}

func (w *work) count(key string) int { return int(w.num(key)) }

// length is a length in inches, whatever it was given in.
func (w *work) length(key string) float64 {
	if w.metric {
		return w.num(key) / 2.54
	}
	return w.num(key)
}

func (w *work) lengthOr(key string, inches float64) float64 {
	if w.has(key) {
		return w.length(key)
	}
	return inches
}

func (w *work) word(key, otherwise string) string {
	w.read[key] = true
	if s, ok := w.in[key].(string); ok {
		return s
	}
	return otherwise
}

func (w *work) flag(key string) bool { return w.has(key) && w.num(key) != 0 }

// rows are lists such as "20x5x5".
func (w *work) rows(key string) [][]float64 {
	w.read[key] = true
	var out [][]float64
	list, _ := w.in[key].([]any)
	for _, item := range list {
		var row []float64
		for _, part := range strings.Split(fmt.Sprint(item), "x") {
			var v float64
			if _, err := fmt.Sscan(part, &v); err != nil {
				w.fail("input %q: %v", key, err)
			}
			row = append(row, v)
		}
		out = append(out, row)
	}
	return out
}

// ---- results

// wants tells whether a figure is expected, for one that would otherwise hang
// on a rounding edge.
func (w *work) wants(name string) bool {
	only, limited := w.in["only"].([]any)
	return !limited || slices.Contains(only, any(name))
}

func (w *work) set(name string, v any, unit string, tol float64) {
	if f, ok := v.(float64); ok {
		v = math.Round(f*1e9) / 1e9
	}
	w.out[name] = FigureSpec{Value: v, Unit: unit, Tol: tol}
}

func (w *work) whole(name string, n int) { w.set(name, float64(n), "count", 0) }

func (w *work) words(name, s string) { w.set(name, s, "words", 0) }

// size is a length that is exact in inches; in metric it goes to the millimetre.
func (w *work) size(name string, inches float64) { w.near(name, inches, 0.005) }

// near is a length within a tolerance in inches.
func (w *work) near(name string, inches, tol float64) {
	if w.metric {
		w.set(name, inches*2.54, "cm", math.Max(0.11, tol*2.54))
		return
	}
	w.set(name, inches, "in", tol)
}

// cut is a cut size: up to the eighth, less than 1/64 in over is dropped.
func (w *work) cut(name string, exact float64) { w.near(name, w.upToRuler(exact), 0.005) }

func (w *work) upToRuler(exact float64) float64 {
	if w.metric {
		return exact
	}
	eighths := 0
	for float64(eighths)/8+1.0/64 < exact {
		eighths++
	}
	if over := math.Mod(exact, 1.0/8); math.Abs(over-1.0/64) < 0.0005 {
		w.fail("%v hangs on the last 1/64 in", exact)
	}
	return float64(eighths) / 8
}

// buy is cloth of so many inches, up to what a shop cuts.
func (w *work) buy(name string, inches float64) {
	step, unit, tol := 4.5, "yd", 0.001
	if w.metric {
		step, unit, tol = 10/2.54, "m", 0.051
	}
	steps := 0
	for float64(steps)*step < inches-hair {
		steps++
	}
	if w.metric {
		w.set(name, float64(steps)/10, unit, tol)
		return
	}
	w.set(name, float64(steps)/8, unit, tol)
}

// enough answers "is what I have enough" for strips or for cloth.
func (w *work) enough(strips int, inches float64) {
	w.read["hu"] = true
	if !w.has("have") {
		return
	}
	have, yes := w.num("have"), false
	switch w.in["hu"] {
	case "strips":
		yes = have >= float64(strips)
	case "yd":
		yes = have*36 >= inches-hair
	case "m":
		yes = have*100/2.54 >= inches-hair
	default:
		w.fail("have in %v", w.in["hu"])
	}
	w.sayEnough(yes)
}

func (w *work) sayEnough(yes bool) {
	w.words("enough", map[bool]string{true: "yes", false: "no"}[yes])
}

// stripsEndToEnd lays strips one after another until the need is met: each
// further one adds the width of the fabric less what its join eats.
func stripsEndToEnd(need, width, join float64) int {
	n, covered := 1, width
	for covered < need-hair {
		n, covered = n+1, covered+width-join
	}
	return n
}

// side by side: how many pieces lie in a space, counted one by one.
func sideBySide(space, piece float64) int {
	n := 0
	for used := piece; used <= space+hair; used += piece {
		n++
	}
	return n
}

// bunches is how many bunches of a size hold n things.
func bunches(n, size int) int {
	b := 0
	for held := 0; held < n; held += size {
		b++
	}
	return b
}
