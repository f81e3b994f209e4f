package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// Patch says what a patch is cut as, which decides what of it is seams.
type Patch string

// The patches. A half-square triangle is told by the square it is cut from
// once, a quarter-square triangle by the square it is cut from twice.
const (
	RectanglePatch     Patch = "rectangle"
	HalfSquarePatch    Patch = "half-square triangle"
	QuarterSquarePatch Patch = "quarter-square triangle"
)

// ScaleRequest asks for a block in another size.
type ScaleRequest struct {
	Conventions
	From, To measure.Length // finished; any two lengths in the wanted proportion
	Patches  []ScalePatch
}

// ScalePatch is a patch of the block, as cut now.
type ScalePatch struct {
	Patch
	Cut measure.Size // of the square or rectangle
}

// ScaledPatch is the patch in the new size.
type ScaledPatch struct {
	Patch
	Finished measure.Size // in the new block, up to the nanometre
	Cut      measure.Size // up to the ruler
}

// ScaleResult gives the factor and each patch.
type ScaleResult struct {
	Factor  float64
	Patches []ScaledPatch
	Working []Step
}

// mostPatches is the number of patches beyond which a request is a mistake.
const mostPatches = 1000

// Scale multiplies finished sizes by wanted/present. Seams do not grow: they
// are taken off before and put back after.
// Source: https://comestitchwithme.com/2023/11/14/learn-how-to-resize-quilt-blocks
// and https://www.onwilliamsstreet.com/how-to-resize-a-quilt-block/.
func Scale(r ScaleRequest) (ScaleResult, error) {
	err := cmp.Or(r.check(), wantLength("block", r.From), wantLength("wanted_block", r.To))
	if err == nil && len(r.Patches) > mostPatches {
		err = limit("patches", step("%v patches are more than this reckons.", len(r.Patches)), step("Up to %v work.", mostPatches))
	}
	if err != nil {
		return ScaleResult{}, err
	}
	s := ScaleResult{Factor: float64(r.To) / float64(r.From)}
	s.Working = []Step{step("%v ÷ %v = %v.", r.To, r.From, s.Factor)}
	for _, p := range r.Patches {
		scaled, err := r.patch(p)
		if err != nil {
			return ScaleResult{}, err
		}
		s.Patches = append(s.Patches, scaled)
		s.Working = append(s.Working, step("%v cut: less seams, times the factor, %v finished; with seams cut %v.",
			p.Cut, scaled.Finished, scaled.Cut))
	}
	return s, nil
}

// patch takes the seams off a patch, scales it and puts them back.
func (r ScaleRequest) patch(p ScalePatch) (ScaledPatch, error) {
	seams := r.seamsOf(p.Patch)
	if err := wantSize("patch", p.Cut); err != nil {
		return ScaledPatch{}, err
	}
	if min(p.Cut.Width, p.Cut.Length) <= seams {
		return ScaledPatch{}, limit("patch", step("A patch cut %v is all seam allowance.", p.Cut), step("More than %v works.", seams))
	}
	finished := measure.Size{
		Width:  mulDivUp(p.Cut.Width-seams, r.To, r.From),
		Length: mulDivUp(p.Cut.Length-seams, r.To, r.From),
	}
	if max(finished.Width, finished.Length) > maxLength {
		return ScaledPatch{}, limit("wanted_block", step("A patch would be longer than %v.", maxLength), Step{})
	}
	return ScaledPatch{Patch: p.Patch, Finished: finished, Cut: measure.Size{
		Width: r.CutUp(finished.Width + seams), Length: r.CutUp(finished.Length + seams)}}, nil
}

// seamsOf is what a patch's cut square or rectangle has beyond its finished size.
func (c Conventions) seamsOf(p Patch) measure.Length {
	switch p {
	case HalfSquarePatch:
		return c.HalfSquareAllowance()
	case QuarterSquarePatch:
		return c.QuarterSquareAllowance()
	}
	return 2 * c.Seam
}
