package scene

import (
	"fmt"

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
