package calc

import (
	"math"

	"counterhand/calc/measure"
)

// The turns that rings are made for.
const (
	FullTurn    measure.Angle = 360
	HalfTurn    measure.Angle = 180
	QuarterTurn measure.Angle = 90
)

// widestBlade is the largest angle of a blade: three of them make a ring.
const widestBlade measure.Angle = 120

// WedgeCountRequest asks how many wedges of an angle fill a turn, or which
// angle a number of wedges needs. One of Angle and Blades may be 0; where both
// are given they have to close.
type WedgeCountRequest struct {
	Angle  measure.Angle // of one wedge
	Blades int
	Turn   measure.Angle // what they fill; 0 means a full circle
}

// Closing is a number of equal blades that fills a turn exactly.
type Closing struct {
	Blades int
	Angle  measure.Angle
}

// WedgeCountResult is the number of blades and what they leave open.
type WedgeCountResult struct {
	Blades   int
	Angle    measure.Angle
	Turn     measure.Angle
	LeftOver measure.Angle // 0 where they close; below 0 where they are a little too many
	Nearest  []Closing     // where they do not close: the angles that would, for one blade fewer and more
	Working  []Step
}

// WedgeCount divides a turn by the angle of a wedge; how long the wedges are
// plays no part. An angle that a person rounded to two places, such as 51.43°
// for seven blades, counts as closing.
//
// Source: 360° divided by the angle, as printed with 36° and 18° tools
// (hqstitch.com, how to make a plate from wedges, part 2).
func WedgeCount(r WedgeCountRequest) (WedgeCountResult, error) {
	if r.Turn == 0 {
		r.Turn = FullTurn
	}
	if err := wantAngle("turn", r.Turn, FullTurn); err != nil {
		return WedgeCountResult{}, err
	}
	if r.Blades != 0 {
		if err := wantCount("blades", r.Blades); err != nil {
			return WedgeCountResult{}, err
		}
	}
	if r.Angle == 0 && r.Blades != 0 {
		return angleOfCount(r)
	}
	if err := wantAngle("angle", r.Angle, min(widestBlade, r.Turn)); err != nil {
		return WedgeCountResult{}, err
	}
	if r.Blades == 0 {
		return countOfAngle(r)
	}
	if err := closes(r.Blades, r.Angle, r.Turn); err != nil {
		return WedgeCountResult{}, err
	}
	w := WedgeCountResult{Blades: r.Blades, Angle: r.Angle, Turn: r.Turn,
		Working: []Step{step("%v × %v = %v", r.Blades, r.Angle, r.Angle*measure.Angle(r.Blades))}}
	if miss := missOf(r.Blades, r.Angle, r.Turn); math.Abs(miss) > roundedTo(0.01, r.Blades) {
		w.LeftOver = measure.Angle(-miss)
	}
	return w, nil
}

func angleOfCount(r WedgeCountRequest) (WedgeCountResult, error) {
	angle := r.Turn / measure.Angle(r.Blades)
	if angle > widestBlade {
		least := int(math.Ceil(float64(r.Turn / widestBlade)))
		return WedgeCountResult{}, limit("blades",
			step("Blades of %v are no wedges; the widest is %v.", angle, widestBlade),
			step("It takes at least %v blades.", least))
	}
	return WedgeCountResult{Blades: r.Blades, Angle: angle, Turn: r.Turn,
		Working: []Step{step("%v ÷ %v = %v", r.Turn, r.Blades, angle)}}, nil
}

func countOfAngle(r WedgeCountRequest) (WedgeCountResult, error) {
	exact := float64(r.Turn / r.Angle)
	n := int(math.Floor(exact + 1e-9))
	if near := int(math.Round(exact)); math.Abs(missOf(near, r.Angle, r.Turn)) <= roundedTo(0.1, near) {
		n = near
	}
	w := WedgeCountResult{Blades: n, Angle: r.Angle, Turn: r.Turn}
	miss := missOf(n, r.Angle, r.Turn)
	w.Working = []Step{step("%v ÷ %v = %v", r.Turn, r.Angle, rounded(exact, 3))}
	if math.Abs(miss) <= roundedTo(0.01, n) {
		return w, nil
	}
	w.LeftOver = measure.Angle(-miss)
	w.Nearest = closings(exact, r.Turn)
	w.Working = append(w.Working, step("%v × %v = %v", n, r.Angle, r.Angle*measure.Angle(n)))
	for _, c := range w.Nearest {
		w.Working = append(w.Working, step("%v blades close with %v ÷ %v = %v.", c.Blades, r.Turn, c.Blades, c.Angle))
	}
	return w, nil
}

// missOf is by how many degrees equal blades exceed a turn.
func missOf(n int, angle, turn measure.Angle) float64 {
	return float64(angle)*float64(n) - float64(turn)
}

// roundedTo is what n equal angles can miss in all because a person rounded
// one of them to a step; half a degree at the very most.
func roundedTo(step float64, n int) float64 {
	return min(step/2*float64(n)+1e-9, 5*step)
}

// closings gives the numbers of blades around an exact count, with the angles
// that close a turn; one where the count is whole.
func closings(exact float64, turn measure.Angle) []Closing {
	var cs []Closing
	for n := int(math.Floor(exact + 1e-9)); float64(n) < exact+1-1e-9; n++ {
		if n > 0 && turn/measure.Angle(n) <= widestBlade {
			cs = append(cs, Closing{n, turn / measure.Angle(n)})
		}
	}
	return cs
}

// closes refuses blades that do not fill the turn, by more than a person's
// rounding of their angle explains.
func closes(n int, angle, turn measure.Angle) error {
	if math.Abs(missOf(n, angle, turn)) <= roundedTo(0.1, n) {
		return nil
	}
	reason := doesNotClose(n, angle, turn)
	exact := float64(turn / angle)
	own := turn / measure.Angle(n)
	switch whole := math.Round(exact); {
	case math.Abs(exact-whole) < 1e-9 && own <= widestBlade:
		return limit("blades", reason, step("%v blades of %v close it. For %v blades the angle is %v.", int(whole), angle, n, own))
	case math.Abs(exact-whole) < 1e-9:
		return limit("blades", reason, step("%v blades of %v close it.", int(whole), angle))
	case own <= widestBlade:
		return limit("blades", reason, step("No number of blades of %v closes it. For %v blades the angle is %v.", angle, n, own))
	}
	nearest := closings(exact, turn)[0]
	return limit("blades", reason, step("%v blades of %v close it.", nearest.Blades, nearest.Angle))
}

// doesNotClose says by how much, and what the ring would do.
func doesNotClose(n int, angle, turn measure.Angle) Step {
	covered := angle * measure.Angle(n)
	over := measure.Angle(missOf(n, angle, turn))
	switch {
	case over > 0 && turn == FullTurn:
		return step("%v blades of %v make %v, a full turn and %v too many; it would ruffle.", n, angle, covered, over)
	case over > 0:
		return step("%v blades of %v make %v, %v more than %v; it would ruffle.", n, angle, covered, over, turn)
	}
	return step("%v blades of %v make %v, %v short of %v; it would stay open, or cup if it were pulled together.",
		n, angle, covered, -over, turn)
}

// rounded keeps some decimal places of a plain number, for the working.
func rounded(v float64, places int) float64 {
	p := math.Pow(10, float64(places))
	return math.Round(v*p) / p
}
