package scene

import (
	"fmt"
	"strings"

	"counterhand/calc/cutting"
	"counterhand/calc/measure"
)

// CuttingPlan shows the fabric with its strips, numbered in the order of
// cutting from the top, and the pieces that each gives from left to right.
func CuttingPlan(r cutting.Request, plan cutting.Plan, system measure.System) Scene {
	show := shower(system)
	d := planDrawing{request: r, gutter: r.Width / 14}
	for _, s := range plan.Strips {
		d.add(s)
	}
	d.panel.Sizes = append(d.panel.Sizes, Size{Point{0, -d.y}, Point{r.Width, -d.y}, Below, show(r.Width) + " usable width"})
	title := "Cutting plan: " + show(plan.Length) + " of fabric"
	s := Scene{Name: "cutting-plan", Title: title, Panels: []Panel{d.panel},
		Alt: fmt.Sprintf("%s, %s wide, cut into strips from the top. %s", title, show(r.Width), strings.Join(cuttingSteps(r, plan, system, 12), " "))}
	s.Caption = []string{"Cut the strips in the order of their numbers, then the pieces from each, from left to right. Straighten the fabric first; that is not reckoned in."}
	if d.left > 0 {
		s.Caption = append(s.Caption, fmt.Sprintf("Drawn are the first %d of %d strips.", d.number, d.number+d.left))
	} else {
		d.panel.Sizes = append(d.panel.Sizes, Size{Point{r.Width, -d.y}, Point{r.Width, 0}, RightOf, show(plan.Length)})
		s.Panels = []Panel{d.panel}
	}
	s.Key = planKey(r, system)
	return s
}

// planDrawing is a plan while it is drawn from the top down.
type planDrawing struct {
	request cutting.Request
	panel   Panel
	gutter  measure.Length // at the left, for the numbers of the strips
	y       measure.Length // depth drawn so far
	number  int            // of the last strip drawn
	pieces  int            // drawn so far
	left    int            // strips that are not drawn
}

// add draws a strip as often as it is cut.
func (d *planDrawing) add(s cutting.Strip) {
	n := 0
	for _, c := range s.Cuts {
		n += c.Count
	}
	for range s.Times {
		if d.left > 0 || d.pieces+n > mostDrawn || d.number >= mostStrips {
			d.left++
			continue
		}
		d.pieces += n
		d.strip(s)
	}
}

// strip draws one strip: its number, its pieces, and what is left of it.
func (d *planDrawing) strip(s cutting.Strip) {
	d.number++
	top := -d.y
	d.y += s.Height
	d.panel.Shapes = append(d.panel.Shapes,
		Shape{Outline: Rect(-d.gutter, -d.y, d.gutter, s.Height), Label: Label{Short: fmt.Sprint(d.number)}},
		Shape{Outline: Rect(0, -d.y, d.request.Width, s.Height), Fill: Offcut, Line: Outer})
	var x measure.Length
	for _, c := range s.Cuts {
		for range c.Count {
			d.panel.Shapes = append(d.panel.Shapes, Shape{Outline: Rect(x, top-c.Height, c.Width, c.Height), Fill: Fabric(c.Piece), Line: Cut,
				Label: Label{Long: d.request.Pieces[c.Piece].Name, Short: pieceLetter(c.Piece)}})
			x += c.Width
		}
	}
}

// pieceLetter names a piece by a letter, and a number after the first 26.
func pieceLetter(i int) string {
	letter := string(rune('A' + i%26))
	if i < 26 {
		return letter
	}
	return fmt.Sprintf("%s%d", letter, i/26)
}

// pieceWords describes a piece of a plan: "A, 2½ x 4½ in".
func pieceWords(p cutting.Piece, i int, system measure.System) string {
	words := pieceLetter(i) + ", " + measure.Size{Width: p.Width, Length: p.Length}.Show(system)
	if name := shortened(p.Name, 40); name != "" {
		words += " (" + name + ")"
	}
	return words
}

// shortened cuts words after so many characters.
func shortened(s string, most int) string {
	if r := []rune(s); len(r) > most {
		return strings.TrimSpace(string(r[:most])) + "…"
	}
	return s
}

// planKey lists the pieces.
func planKey(r cutting.Request, system measure.System) []Key {
	n, more := drawn(len(r.Pieces), 30, "pieces of the list")
	var keys []Key
	for i, p := range r.Pieces[:n] {
		keys = append(keys, Key{Fill: Fabric(i), Line: Cut, Text: fmt.Sprintf("%d × %s", p.Count, pieceWords(p, i, system))})
	}
	keys = append(keys, Key{Fill: Offcut, Line: Outer, Text: "left over"})
	for _, m := range more {
		keys = append(keys, Key{Fill: Empty, Line: NoLine, Text: m})
	}
	return keys
}

// CuttingSteps says a plan in words, a line for each strip or run of equal
// strips, in the order of cutting. Long plans end with a line that says how
// many strips are left out.
func CuttingSteps(r cutting.Request, plan cutting.Plan, system measure.System) []string {
	return cuttingSteps(r, plan, system, 40)
}

func cuttingSteps(r cutting.Request, plan cutting.Plan, system measure.System, most int) []string {
	var lines []string
	first := 1
	for i, s := range plan.Strips {
		if i == most {
			lines = append(lines, fmt.Sprintf("And %s more.", counted(stripsFrom(plan.Strips[i:]), "strip", "strips")))
			break
		}
		var gives []string
		for _, c := range s.Cuts {
			gives = append(gives, fmt.Sprintf("%d of %s", c.Count, pieceWords(r.Pieces[c.Piece], c.Piece, system)))
		}
		which := fmt.Sprintf("Strip %d", first)
		if s.Times > 1 {
			which = fmt.Sprintf("Strips %d to %d", first, first+s.Times-1)
		}
		lines = append(lines, fmt.Sprintf("%s, %s high: %s.", which, s.Height.Show(system), strings.Join(gives, ", ")))
		first += s.Times
	}
	return lines
}

func stripsFrom(strips []cutting.Strip) int {
	n := 0
	for _, s := range strips {
		n += s.Times
	}
	return n
}
