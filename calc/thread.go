package calc

import (
	"cmp"
	"math"

	"counterhand/calc/measure"
)

// ThreadUse says what thread is for.
type ThreadUse string

// The uses.
const (
	PiecingThread  ThreadUse = "piecing"
	QuiltingThread ThreadUse = "quilting"
)

// What thread comes in until somebody says otherwise: common practice, no source.
const (
	DefaultSpool  = 1000 * measure.Metre
	DefaultBobbin = 70 * measure.Yard // the smaller end of 70 to 100 yd
)

// ThreadRequest asks how much thread a quilt, or a length of seam, takes.
type ThreadRequest struct {
	Conventions
	Use    ThreadUse
	Quilt  measure.Size   // zero where the seam is given
	Seam   measure.Length // sewn, zero where a quilt is given
	Spool  measure.Length
	Bobbin measure.Length
}

// ThreadResult is a range and a rule of thumb, nothing more.
type ThreadResult struct {
	Low, High               measure.Length // top and bobbin together
	SpoolsLow, Spools       int            // Spools is for the higher figure
	BobbinsLow, BobbinsHigh int            // half the thread is in bobbins, and one more to be safe
	Working                 []Step
}

// Thread gives 2½ to 3 times the seam, from memory, half of it from the bobbin.
// For a whole quilt it goes by area: piecing takes 200 yd for a throw of
// 60 x 72 in up to 800 yd for 90 x 108 in, edge-to-edge quilting of the latter
// 600 to 1200 yd on top and as much below. Common practice, no source.
func Thread(r ThreadRequest) (ThreadResult, error) {
	err := cmp.Or(r.check(), wantLength("spool", r.Spool), wantLength("bobbin", r.Bobbin))
	switch {
	case err != nil:
	case r.Seam != 0:
		err = wantSpare("seam", r.Seam)
	default:
		err = wantSize("quilt", r.Quilt)
	}
	if err != nil {
		return ThreadResult{}, err
	}
	t := ThreadResult{}
	if r.Seam > 0 {
		t.Low, t.High = r.Seam*5/2, r.Seam*3
		t.Working = []Step{step("%v of seam takes 2½ to 3 times as much: %v to %v.", r.Seam, t.Low, t.High)}
	} else {
		t.Low, t.High = r.byArea()
		t.Working = []Step{step("For %v %v roughly %v to %v, top and bobbin together.", r.Use, r.Quilt, measure.Cloth(t.Low), measure.Cloth(t.High))}
	}
	if t.High/min(r.Spool, r.Bobbin) >= maxCount {
		return ThreadResult{}, limit("spool", step("That is more than %v spools or bobbins.", maxCount), Step{})
	}
	t.SpoolsLow, t.Spools = wholes(t.Low, r.Spool), wholes(t.High, r.Spool)
	t.BobbinsLow, t.BobbinsHigh = wholes(t.Low/2, r.Bobbin)+1, wholes(t.High/2, r.Bobbin)+1
	t.Working = append(t.Working, step("On spools of %v that is %v at most.", measure.Cloth(r.Spool), counted(t.Spools, "spool")))
	return t, nil
}

// byArea gives the range for a quilt from what is usual for a throw and a
// queen, to the nearest ten metres.
func (r ThreadRequest) byArea() (low, high measure.Length) {
	throw, queen := 60.0*72, 90.0*108
	least, most := 200*36/throw, 800*36/queen // inches of thread for each square inch
	if r.Use == QuiltingThread {
		least, most = 2*600*36/queen, 2*1200*36/queen
	}
	a := area(r.Quilt)
	rough := func(inches float64) measure.Length {
		tens := math.Ceil(inches * measure.Inch.In(10*measure.Metre))
		return measure.Length(min(tens, float64(maxCount))) * 10 * measure.Metre
	}
	return rough(a * least), rough(a * most)
}

// wholes counts the units that hold a length.
func wholes(l, unit measure.Length) int { return int((l + unit - 1) / unit) }
