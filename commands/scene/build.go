package scene

import (
	"fmt"
	"math"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// traced turns an outline of package calc, which is in inches, into a scene's.
func traced(o calc.Outline) Outline {
	out := make(Outline, len(o))
	for i, p := range o {
		out[i] = Point{measure.Inches(p.X), measure.Inches(p.Y)}
	}
	return out
}

// counted gives a number with its noun: "1 strip", "7 strips".
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// mostDrawn is how many patches, strips or blades a builder draws at most; of
// larger numbers it draws so many and says so.
const mostDrawn = 400

// drawn gives how many of a number are drawn, and the words for the rest.
func drawn(n, most int, things string) (int, []string) {
	if n <= most {
		return n, nil
	}
	return most, []string{fmt.Sprintf("Drawn are the first %d of %d %s.", most, n, things)}
}

// neighbours gives fills for n shapes in a row or a ring, so that no two that
// touch are alike: two by turns, and a third for the last of an odd ring.
func neighbours(i, n int) Fill {
	if i == n-1 && n%2 == 1 && n > 1 {
		return Fabric3
	}
	return Fabric(i % 2)
}

// line gives an open line as a shape.
func line(l Line, points ...Point) Shape { return Shape{Outline: points, Open: true, Line: l} }

// patch gives a filled outline with an edge.
func patch(o Outline, f Fill) Shape { return Shape{Outline: o, Fill: f, Line: Edge} }

// sized measures a whole panel along a side.
func (p *Panel) sized(side Side, text string) {
	low, high := p.Extent()
	from, to := low, high
	switch side {
	case Below:
		to.Y = low.Y
	case Above:
		from.Y = high.Y
	case LeftOf:
		to.X = low.X
	case RightOf:
		from.X = high.X
	}
	p.Sizes = append(p.Sizes, Size{from, to, side, text})
}

// shower gives the function that shows lengths in a person's units.
func shower(system measure.System) func(measure.Length) string {
	return func(l measure.Length) string { return l.Show(system) }
}

// diagonalOf gives a square's diagonal.
func diagonalOf(side measure.Length) measure.Length {
	return measure.Length(math.Round(float64(side) * math.Sqrt2))
}

// many is n times a length.
func many(n int, l measure.Length) measure.Length { return measure.Length(n) * l }
