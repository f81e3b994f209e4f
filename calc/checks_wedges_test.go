package calc

import (
	"strings"

	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// ringCheckers compares the rows about wedges, patches and curves.
func ringCheckers() map[string]checker {
	return map[string]checker{
		"d.angle":       checkAngle,
		"D008":          checkMixedAngles,
		"D010":          checkMiscount,
		"D011":          checkMiscount,
		"D012":          checkMiscount,
		"D013":          checkMiscount,
		"d.count":       checkPlates,
		"d.seam-shift":  checkSeamShift,
		"d.width":       checkWidth,
		"D075":          checkWidthFromPoint,
		"D076":          checkTip,
		"d.blank":       checkBlank,
		"d.ring":        checkRing,
		"D070":          checkTemplateAngle,
		"D074":          checkFinishedTemplate,
		"L006":          checkCutRadius,
		"d.centre":      checkCentre,
		"d.round-tip":   checkRoundTip,
		"D071":          checkPlateOnBackground,
		"d.background":  checkBlockForPlate,
		"D072":          checkStripHeadToTail,
		"d.strip":       checkHeadToTail,
		"d.strip-limit": checkStripLimit,
		"d.error":       checkError,
	}
}

// anglesOf are the turns that the rows name.
var anglesOf = map[string]measure.Angle{
	"wedges": FullTurn, "full_circle": FullTurn, "half_circle": HalfTurn, "quarter_circle": QuarterTurn,
}

func checkAngle(c *check) {
	if c.has("angle") {
		w, err := WedgeCount(WedgeCountRequest{Blades: c.count("wedges")})
		require.NoError(c.t, err)
		c.near("angle", float64(w.Angle))
		return
	}
	for name, turn := range anglesOf {
		if c.has(name) {
			w, err := WedgeCount(WedgeCountRequest{Angle: c.angle("angle"), Turn: turn})
			require.NoError(c.t, err)
			c.near(name, float64(w.Blades)+float64(w.LeftOver/w.Angle))
		}
	}
}

func checkMixedAngles(c *check) {
	f, err := Flatness(FlatnessRequest{Conventions: ImperialConventions(), Groups: []BladeGroup{
		{int(c.in("mix", 0)), measure.Angle(c.in("mix", 1))}, {int(c.in("mix", 2)), measure.Angle(c.in("mix", 3))},
	}})
	require.NoError(c.t, err)
	c.near("total", float64(f.Covered))
	c.says("closes", yes(f.Lie == LiesFlat))
}

// checkMiscount: rings of the wrong number of blades, as they lie, and the
// count that their angle needs.
func checkMiscount(c *check) {
	wedges, angle := c.count("wedges"), c.angle("angle")
	f, err := Flatness(FlatnessRequest{Conventions: ImperialConventions(), Groups: []BladeGroup{{wedges, angle}}})
	require.NoError(c.t, err)
	c.near("covered", float64(f.Covered))
	if c.has("gap") {
		c.near("gap", -float64(f.Miss))
		c.counts("wedges_needed", f.Closing[0].Blades)
		require.Equal(c.t, Cups, f.Lie)
	} else {
		c.near("excess", float64(f.Miss))
		c.counts("remove", wedges-f.Closing[0].Blades)
		require.Equal(c.t, Ruffles, f.Lie)
	}
	_, err = WedgeCount(WedgeCountRequest{Blades: wedges, Angle: angle})
	require.Error(c.t, err, "blades that do not close are refused")
}

// checkPlates: blades for several plates share out evenly.
func checkPlates(c *check) {
	s, err := Split(SplitRequest{Pieces: int(c.want("total")[0]), Fabrics: c.count("blocks")})
	require.NoError(c.t, err)
	require.Equal(c.t, c.count("blades"), s.Each)
	require.Zero(c.t, s.LeftOver)
}

func checkSeamShift(c *check) {
	w := newWedge(c.angle("angle"))
	c.lengths("apex_shift", w.apexShift(c.length("seam")))
	c.lengths("width_loss", w.widthLoss(c.length("seam")))
	c.lengths("diameter_loss", 2*w.apexShift(c.length("seam")))
}

func checkWidth(c *check) {
	w, r := newWedge(c.angle("angle")), c.length("from_apex")
	c.lengths("cut_width", w.width(r))
	c.lengths("arc", arcLength(r, c.angle("angle")))
	c.lengths("chord", scaled(r, 2*w.sin))
}

func checkWidthFromPoint(c *check) {
	c.lengths("cut_width_from_true_apex", newWedge(c.angle("angle")).width(c.length("length")))
}

// checkTip: whatever the angle of the blade, the folded tip is a right angle
// and loses one seam.
func checkTip(c *check) {
	for blades := 3; blades <= 60; blades++ {
		req := ringOf(blades, 20*in, 2*in)
		plain, err := Ring(req)
		require.NoError(c.t, err)
		req.End = FoldedEnd
		folded, err := Ring(req)
		require.NoError(c.t, err)
		c.lengths("length_lost_at_tip", plain.Exact.OuterRadius-folded.Exact.OuterRadius)
		o := folded.Blade().Sewn
		right, tip, left := o[2], o[3], o[4]
		c.near("side_slope", degrees(tip.Y-right.Y, right.X-tip.X))
		c.near("tip_angle", degrees(tip.Y-right.Y, right.X-tip.X)+degrees(tip.Y-left.Y, tip.X-left.X))
	}
}

// checkBlank: a blank as wide as the wide end takes an 18° blade 4½ in long.
func checkBlank(c *check) {
	r, err := Ring(RingRequest{Conventions: ImperialConventions(), Angle: measure.Angle(c.in("template", 0)),
		Length: measure.Inches(c.in("template", 1)), Wide: c.length("blank"), Strip: c.length("blank")})
	require.NoError(c.t, err)
	c.lengths("wide_ok", r.Exact.WideEnd)
	c.lengths("narrow_from_wide", r.Exact.NarrowEnd)
}

// ringFromRow reads a ring of the table.
func ringFromRow(c *check) RingRequest {
	r := ringOf(0, c.length("length_cut"), c.length("narrow_cut"))
	r.Angle = c.angle("angle")
	if c.In["seam"] != "" {
		r.Seam = c.length("seam")
	}
	if c.In["tip"] == "folded" {
		r.End = FoldedEnd
	}
	if strings.HasPrefix(c.In["outer"], "turned under") {
		r.End, r.Turning = TurnedEnd, c.length("outer")
	}
	if c.In["from_apex"] != "" {
		w := newWedge(r.Angle)
		r.Length, r.Narrow = c.lengthAt("from_apex", 1)-c.lengthAt("from_apex", 0), w.width(c.lengthAt("from_apex", 0))
	}
	return r
}

func checkRing(c *check) {
	r, err := Ring(ringFromRow(c))
	require.NoError(c.t, err)
	e := r.Exact
	for name, got := range map[string]measure.Length{
		"narrow_from_apex": e.NarrowFromApex, "wide_from_apex": e.WideFromApex, "wide_cut": e.WideEnd,
		"apex_shift": e.ApexShift, "tip_radius": e.OuterRadius, "tip_diameter": 2 * e.OuterRadius,
		"valley_diameter": 2 * e.ValleyRadius, "tip_depth": e.TipDepth,
		"hole_flat_radius": e.OpeningRadius, "hole_corner_radius": e.OpeningCornerRadius,
		"flat_diameter": 2 * e.OuterRadius, "corner_diameter": 2 * e.CornerRadius,
	} {
		if c.has(name) {
			c.lengths(name, got)
		}
	}
}

// checkTemplateAngle: a printed template whose rounded sizes overshoot.
func checkTemplateAngle(c *check) {
	angle := WedgeAngle(c.length("narrow"), c.length("wide"), c.length("template_height"))
	c.near("angle", float64(angle))
	f, err := Flatness(FlatnessRequest{Conventions: ImperialConventions(), Groups: []BladeGroup{{c.count("wedges"), angle}}})
	require.NoError(c.t, err)
	c.near("sum", float64(f.Covered))
	c.near("over", float64(f.Miss))
	req := ringOf(c.count("wedges"), c.length("template_height"), c.length("narrow"))
	req.Wide = c.length("wide")
	ring, err := Ring(req)
	require.NoError(c.t, err)
	c.near("over", float64(ring.WidthsMiss))
}

// checkFinishedTemplate: a template without seam allowances is a ring with
// seams of nothing.
func checkFinishedTemplate(c *check) {
	inner, outer := c.length("finished_template_inner"), c.length("outer")
	r := ringOf(c.count("wedges"), outer-inner, 0)
	r.Seam, r.Opening, r.Margin = 0, 2*inner, in/2
	got, err := Ring(r)
	require.NoError(c.t, err)
	c.lengths("ring_diameter", 2*got.Exact.OuterRadius)
	c.lengths("hole_diameter", 2*got.Exact.OpeningRadius)
	c.lengths("margin", (c.length("block")-2*got.Exact.OuterRadius)/2)
	c.lengths("centre_overlap", c.length("centre")/2-got.Exact.OpeningRadius)
}

// checkCutRadius: twice the cut radius is not the ring's size.
func checkCutRadius(c *check) {
	w := newWedge(c.angle("angle"))
	narrow := in
	r := ringOf(0, c.length("wedge_cut_radius")-w.fromApex(narrow), narrow)
	r.Angle, r.End = c.angle("angle"), FoldedEnd
	got, err := Ring(r)
	require.NoError(c.t, err)
	c.lengths("finished_tip_diameter", 2*got.Exact.OuterRadius)
	c.lengths("wrong_value", 2*got.Exact.WideFromApex)
}

func checkCentre(c *check) {
	r := ringOf(0, 5*in, c.length("narrow_cut"))
	r.Angle, r.Overlap, r.Turning, r.CoverStep = c.angle("angle"), c.length("overlap"), c.length("turn"), in/8
	got, err := Ring(r)
	require.NoError(c.t, err)
	c.lengths("hole_corner_diameter", 2*got.Exact.OpeningCornerRadius)
	c.lengths("cover_finished_min", got.Exact.CoverCircle)
	c.lengths("cover_finished_up_eighth", got.CoverCircle)
	c.lengths("cover_cut", got.CoverCut)
}

func checkRoundTip(c *check) {
	r := ringOf(0, 0, in)
	r.Angle, r.Across, r.End = c.angle("angle"), 2*c.length("outer_radius"), RoundedEnd
	got, err := Ring(r)
	require.NoError(c.t, err)
	c.lengths("cap_radius", got.Exact.CapRadius)
	c.lengths("cap_centre_from_middle", got.Exact.CapCentre)
	c.lengths("valley_radius", got.Exact.ValleyRadius)
}

func checkPlateOnBackground(c *check) {
	r := ringOf(c.count("wedges"), c.length("length_cut"), c.length("narrow_cut"))
	r.End = FoldedEnd
	got, err := Ring(r)
	require.NoError(c.t, err)
	tip := 2 * got.Exact.OuterRadius
	c.lengths("tip_diameter", tip)
	r.Margin = measure.Inches(c.want("margin_each_side")[0])
	got, err = Ring(r)
	require.NoError(c.t, err)
	c.lengths("margin_each_side", (c.length("background_cut")-2*r.Seam-tip)/2)
	c.says("fits", yes(got.BackgroundSquare <= c.length("background_cut")))
}

// checkBlockForPlate goes back from a block to the largest ring for it, and
// from that ring to the background.
func checkBlockForPlate(c *check) {
	r := ringOf(20, 0, in)
	r.End, r.Margin, r.Across = FoldedEnd, c.length("margin"), measure.Inches(c.want("max_tip_diameter")[0])
	got, err := Ring(r)
	require.NoError(c.t, err)
	c.lengths("max_tip_diameter", 2*got.Exact.OuterRadius)
	c.lengths("background_cut", got.BackgroundSquare)
	c.lengths("background_cut_oversize", got.BackgroundOversize)
}

func checkStripHeadToTail(c *check) {
	r := WedgeStripsRequest{Conventions: ImperialConventions(), Blades: c.count("wedges"), Length: c.length("length_cut"),
		Narrow: c.length("narrow_cut"), Angle: c.angle("angle"),
		Strip: c.length("strip"), StripLength: c.lengthAt("strip", 1)}
	got, err := WedgeStrips(r)
	require.NoError(c.t, err)
	c.says("fits", yes(got.Strips == 1))
	_, blades := got.StripOutlines()
	_, high := blades[len(blades)-1].Bounds()
	require.Len(c.t, blades, r.Blades)
	c.near("needed_head_to_tail", high.X)
}

func checkHeadToTail(c *check) {
	lay := func(layout BladeLayout) WedgeStripsResult {
		r := WedgeStripsRequest{Conventions: ImperialConventions(), Length: c.length("length_cut"), Layout: layout,
			Narrow: c.length("narrow_cut"), Angle: c.angle("angle"), StripLength: c.length("usable")}
		r.Blades = int(FullTurn / r.Angle)
		got, err := WedgeStrips(r)
		require.NoError(c.t, err)
		c.lengths("wide_cut", got.shape.Wide)
		return got
	}
	head, one := lay(HeadToTail), lay(AllOneWay)
	c.counts("head_to_tail", head.BladesPerStrip)
	c.counts("one_way", one.BladesPerStrip)
	c.counts("strips_for_ring_head_to_tail", head.Strips)
	c.counts("strips_for_ring_one_way", one.Strips)
}

func checkStripLimit(c *check) {
	f, err := WedgeFit(FitRequest{Conventions: ImperialConventions(), Angle: c.angle("angle"),
		Narrow: c.length("narrow_cut"), Strip: c.length("strip")})
	require.NoError(c.t, err)
	c.lengths("max_length", f.ExactLongest)
	c.lengths("max_length_down_eighth", f.LongestBlade)
	c.lengths("max_from_apex", f.ExactLongest+newWedge(f.Angle).fromApex(f.NarrowEnd))
}

func checkError(c *check) {
	n := c.count("wedges")
	r := FlatnessRequest{Conventions: ImperialConventions(), Groups: []BladeGroup{{n, FullTurn / measure.Angle(n)}},
		AngleError: c.angle("error_each"), SeamError: c.length("seam_error"),
		Tapering: strings.Contains(c.In["seam_error"], "wide end only"), Length: c.length("length")}
	f, err := Flatness(r)
	require.NoError(c.t, err)
	switch {
	case c.has("total"):
		c.near("total", float64(f.Miss))
	case c.has("angle_error_total"):
		c.near("angle_error_total", -float64(f.Miss))
	default:
		c.near("angle_error", float64(f.Miss))
		c.lengths("radius_change", f.RadiusChange)
		c.lengths("diameter_change", f.AcrossChange)
	}
}
