package calc

import (
	"cmp"

	"counterhand/calc/measure"
)

// What a backing is taken to be until somebody says otherwise.
// Source: https://quiltedimpressions.com (4 in each side);
// http://happy-stitches.com/backingnborders.html (½ in panel seams).
const (
	DefaultBackingOverage = 4 * measure.Inch // beyond the quilt on each side
	DefaultPanelSeam      = measure.Inch / 2 // of each panel edge, so twice that in a seam
)

// Seams says which way the seams of a pieced backing run.
type Seams string

// The ways of the seams: vertical ones run from top to bottom.
const (
	NoSeams         Seams = "none"
	VerticalSeams   Seams = "vertical"
	HorizontalSeams Seams = "horizontal"
)

// BackingRequest asks for the fabric behind a quilt.
type BackingRequest struct {
	Conventions
	Quilt      measure.Size
	Overage    measure.Length // on each side
	PanelSeam  measure.Length // of each panel edge
	Straighten measure.Length // kept for squaring up the fabric
	OneWay     bool           // the print has a top, so panels run from top to bottom
	WideCloth  bool           // bought off the wide bolt
	Have       measure.Cloth  // in hand, 0 where not said
	HavePanels int            // in hand, of the length that the better way takes, 0 where not said
}

// BackingWay is a backing with its seams one way.
type BackingWay struct {
	Seams       Seams
	Panels      int
	PanelLength measure.Length
	Across      measure.Length // what the panels make across their seams
	Need        measure.Length // of fabric
	Buy         measure.Cloth
}

// BackingResult says what to buy and how to sew it.
type BackingResult struct {
	BackingWidth, BackingLength measure.Length
	BackingWay                  // the one that takes less fabric

	Turned    BackingWay // the seams the other way; no panels where the print forbids it
	Wide      BackingWay // off the wide bolt, as if asked
	WideSaves int        // seams that wide fabric would save, 0 where it is used already

	// One panel fewer would do with this overage, or on fabric of this width,
	// perhaps with the seams the other way; 0 where it would not with any
	// overage, or where there is one panel only.
	OneFewerOverage, OneFewerWidth measure.Length

	Cloth   ClothCheck // where fabric in hand was given: enough for the better way
	InHand  CountCheck // where panels in hand were given
	Working []Step
}

// Backing works both ways of the seams and takes the one that needs less
// fabric; of two alike it takes the one with fewer seams, then vertical ones. n
// panels make n·U − 2·j·(n−1) across, j the seam of a panel edge, and the
// fabric is n times the other side.
// Source: http://happy-stitches.com/backingnborders.html and
// http://longarmquilter.ca/index.php/preparing-a-quilt-top-and-backing/.
func Backing(r BackingRequest) (BackingResult, error) {
	if err := r.check(); err != nil {
		return BackingResult{}, err
	}
	width := r.panelWidth(r.WideCloth)
	b := BackingResult{BackingWidth: r.Quilt.Width + 2*r.Overage, BackingLength: r.Quilt.Length + 2*r.Overage}
	var err error
	if b.BackingWay, b.Turned, err = r.bothWays(width); err != nil {
		return BackingResult{}, err
	}
	if b.Wide, _, err = r.bothWays(r.WideBacking); err != nil {
		return BackingResult{}, err
	}
	b.WideSaves = max(0, b.Panels-b.Wide.Panels)
	b.Cloth = checkCloth(r.Have, b.Need)
	b.InHand = checkCount(r.HavePanels, b.Panels)
	b.OneFewerOverage, b.OneFewerWidth = r.oneFewer(b.Panels)
	b.Working = r.working(b, width)
	return b, nil
}

func (r BackingRequest) check() error {
	return cmp.Or(r.Conventions.check(), wantSize("quilt", r.Quilt), wantSpare("overage", r.Overage),
		wantSpare("panel_seam", r.PanelSeam), wantSpare("straightening", r.Straighten), wantHave("panels", r.HavePanels),
		wantCloth(r.Have))
}

// bothWays gives the better way and the other one, on fabric of a width.
func (r BackingRequest) bothWays(fabric measure.Length) (better, other BackingWay, err error) {
	vertical, err := r.way(VerticalSeams, fabric)
	if err != nil || r.OneWay {
		return vertical, BackingWay{}, err
	}
	horizontal, err := r.way(HorizontalSeams, fabric)
	if err != nil {
		return BackingWay{}, BackingWay{}, err
	}
	if cmp.Or(cmp.Compare(vertical.Need, horizontal.Need), cmp.Compare(vertical.Panels, horizontal.Panels)) <= 0 {
		return vertical, horizontal, nil
	}
	return horizontal, vertical, nil
}

// way reckons the backing with its seams one way.
func (r BackingRequest) way(seams Seams, fabric measure.Length) (BackingWay, error) {
	across, length := r.sides(seams)
	n, err := joinedStrips(across, fabric, 2*r.PanelSeam)
	if err != nil {
		return BackingWay{}, limit("usable_width",
			step("Panels of %v lose %v to each seam and do not reach %v.", fabric, 2*r.PanelSeam, across),
			step("Wider fabric works."))
	}
	need := measure.Length(n)*length + r.Straighten
	w := BackingWay{Seams: seams, Panels: n, PanelLength: length, Need: need, Buy: r.BuyUp(need),
		Across: joinedLength(n, fabric, 2*r.PanelSeam)}
	if n == 1 {
		w.Seams = NoSeams
	}
	return w, nil
}

// panelWidth is the usable width of the bolt that panels come off.
func (c Conventions) panelWidth(wide bool) measure.Length {
	if wide {
		return c.WideBacking
	}
	return c.UsableWidth
}

// sides gives the side that panels make up together, and the one each has.
func (r BackingRequest) sides(seams Seams) (across, length measure.Length) {
	w, l := r.Quilt.Width+2*r.Overage, r.Quilt.Length+2*r.Overage
	if seams == HorizontalSeams {
		return l, w
	}
	return w, l
}

// oneFewer gives the overage, and the width of fabric, with which one panel
// fewer would reach, whichever way the seams run.
func (r BackingRequest) oneFewer(panels int) (overage, fabric measure.Length) {
	if panels < 2 {
		return 0, 0
	}
	reach := joinedLength(panels-1, r.panelWidth(r.WideCloth), 2*r.PanelSeam)
	for _, seams := range []Seams{VerticalSeams, HorizontalSeams} {
		if r.OneWay && seams == HorizontalSeams {
			continue
		}
		across, _ := r.sides(seams)
		overage = max(overage, ((reach-across)/2 + r.Overage).RoundDown(r.LimitStep))
		width := widthForStrips(panels-1, across, 2*r.PanelSeam).RoundUp(r.GroundStep)
		if fabric == 0 || width < fabric {
			fabric = width
		}
	}
	return overage, fabric
}

func (r BackingRequest) working(b BackingResult, fabric measure.Length) []Step {
	lines := []Step{step("With %v on each side the backing is %v.", r.Overage,
		measure.Size{Width: b.BackingWidth, Length: b.BackingLength})}
	lines = append(lines, r.wayWorking(b.BackingWay, fabric)...)
	if b.Turned.Panels > 0 {
		lines = append(lines, r.wayWorking(b.Turned, fabric)...)
	}
	if r.Straighten > 0 {
		lines = append(lines, step("With %v for squaring up: %v.", r.Straighten, b.Need))
	}
	return append(lines, step("The better way takes %v: buy %v.", b.Need, b.Buy))
}

func (r BackingRequest) wayWorking(w BackingWay, fabric measure.Length) []Step {
	if w.Panels == 1 {
		return []Step{step("One panel of %v fabric, %v long, needs no seam.", fabric, w.PanelLength)}
	}
	return []Step{
		step("Seams %v: %v of %v less %v of %v = %v across.",
			w.Seams, counted(w.Panels, "panel"), fabric, counted(w.Panels-1, "seam"), 2*r.PanelSeam, w.Across),
		step("%v × %v = %v.", counted(w.Panels, "panel"), w.PanelLength, w.Need-r.Straighten),
	}
}

// BackingReachRequest asks how large a quilt a length of fabric backs.
type BackingReachRequest struct {
	Conventions
	Have               measure.Cloth
	Overage, PanelSeam measure.Length
	WideCloth          bool
}

// BackingReachResult lists the largest quilts that the fabric backs.
type BackingReachResult struct {
	Largest BackedQuilt   // of the greatest area
	All     []BackedQuilt // by panels, one upwards
	Working []Step
}

// BackedQuilt is the largest quilt that a number of panels backs; it may be
// turned. Its sides are down to the ruler.
type BackedQuilt struct {
	Panels      int
	PanelLength measure.Length
	Quilt       measure.Size // width across the seams, length along them
}

// mostPanels is the number of panels beyond which nobody pieces a backing.
const mostPanels = 6

// BackingReach turns [Backing] round: cutting the fabric into n equal panels
// backs n·U − 2·j·(n−1) less the overage by have/n less the overage.
func BackingReach(r BackingReachRequest) (BackingReachResult, error) {
	err := cmp.Or(r.check(), wantLength("have", measure.Length(r.Have)),
		wantSpare("overage", r.Overage), wantSpare("panel_seam", r.PanelSeam))
	if err != nil {
		return BackingReachResult{}, err
	}
	fabric := r.panelWidth(r.WideCloth)
	var result BackingReachResult
	for n := 1; n <= mostPanels; n++ {
		panel := measure.Length(r.Have) / measure.Length(n)
		q := BackedQuilt{Panels: n, PanelLength: panel, Quilt: measure.Size{
			Width:  r.LimitDown(joinedLength(n, fabric, 2*r.PanelSeam) - 2*r.Overage),
			Length: r.LimitDown(panel - 2*r.Overage),
		}}
		if q.Quilt.Width <= 0 || q.Quilt.Length <= 0 {
			continue
		}
		result.All = append(result.All, q)
		if area(q.Quilt) > area(result.Largest.Quilt) {
			result.Largest = q
		}
		result.Working = append(result.Working, step("%v of %v: a quilt of %v.", counted(n, "panel"), panel, q.Quilt))
	}
	if len(result.All) == 0 {
		return BackingReachResult{}, limit("have",
			step("%v of fabric has nothing left for a quilt once %v is kept on each side.", r.Have, r.Overage),
			step("More than %v works.", r.BuyUp(2*r.Overage+r.LimitStep)))
	}
	return result, nil
}

// area gives square inches, for comparing sizes and for rules by area.
func area(z measure.Size) float64 { return inchesOf(z.Width) * inchesOf(z.Length) }
