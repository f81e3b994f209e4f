package calc

import (
	"strings"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// clothCheckers compares the rows about binding, backing, borders, layouts and
// yardage.
func clothCheckers() map[string]checker {
	return map[string]checker{
		"g.binding":       checkBinding,
		"h.backing":       checkBacking,
		"H002":            checkBackingRange,
		"H003":            checkAreaRule,
		"H004":            checkSplitPanel,
		"H005":            checkHorizontalSeam,
		"H006":            checkHorizontalSeam,
		"H007":            checkBothWays,
		"H008":            checkBackingReach,
		"H010":            checkBackingReach,
		"h.batting":       checkBatting,
		"f.border":        checkBorder,
		"i.rectangles":    checkYardage,
		"i.waste":         checkWaste,
		"b.fat-quarter":   checkPiecesInCut,
		"b.yard":          checkPiecesInYard,
		"b.strips":        checkStripsInYard,
		"b.precut":        checkPrecut,
		"b.shrinkage":     checkShrinkage,
		"e.prairie":       checkEdgeTriangles,
		"f.on-point":      checkOnPoint,
		"f.diagonal":      checkDiagonal,
		"f.sashing":       checkSashing,
		"f.perimeter":     checkPerimeter,
		"f.measure":       checkMeasuredAcross,
		"f.pieced-border": checkCoping,
		"f.scale":         checkScale,
		"f.mattress":      checkMattress,
		"f.bed-quilt":     checkBedQuilt,
		"g.bias":          checkBias,
		"G027":            checkBoundCurve,
		"G028":            checkBoundCurve,
		"G029":            checkBoundCurve,
		"G030":            checkBoundCurve,
		"G046":            checkBoundCurve,
		"G047":            checkBoundCurve,
		"G048":            checkBoundCurve,
		"G049":            checkBoundCurve,
		"G050":            checkBoundCurve,
		"g.joins":         checkJoins,
		"i.count":         checkCountOfSquares,
		"i.strips":        checkJoinedStrips,
		"j.bobbin":        checkBobbins,
		"j.kit":           checkKit,
		"j.thread":        checkThread,
		"L001":            checkNoAllowance,
		"L002":            checkPerimeter,
		"L003":            checkStripsRoundedDown,
		"L004":            checkSquareYards,
		"L005":            checkFramedBlock,
	}
}

// conventions are the defaults with the row's usable width, where it has one.
func (c *check) conventions() Conventions {
	v := ImperialConventions()
	for _, name := range []string{"usable", "cloth"} {
		if _, ok := c.In[name]; ok {
			v.UsableWidth = c.length(name)
		}
	}
	return v
}

// size gives an input such as "18 x 22 in".
func (c *check) size(name string) measure.Size {
	return measure.Size{Width: c.lengthAt(name, 0), Length: c.lengthAt(name, 1)}
}

// given tells whether the row has an input.
func (c *check) given(name string) bool { _, ok := c.In[name]; return ok }

// lengthOr gives an input as a length, or another where the row lacks it.
func (c *check) lengthOr(name string, other measure.Length) measure.Length {
	if c.given(name) {
		return c.length(name)
	}
	return other
}

// ifHas compares a length where the row expects one.
func (c *check) ifHas(name string, got measure.Length) {
	c.t.Helper()
	if c.has(name) {
		c.lengths(name, got)
	}
}

// ifCounts compares a count where the row expects one.
func (c *check) ifCounts(name string, got int) {
	c.t.Helper()
	if c.has(name) {
		c.counts(name, got)
	}
}

func checkBinding(c *check) {
	if c.given("finished") {
		checkBindingWidth(c)
		return
	}
	r := BindingRequest{
		Conventions: c.conventions(),
		StripWidth:  c.lengthOr("strip", DefaultBindingStrip),
		Extra:       c.lengthOr("extra", DefaultBindingExtra),
		Join:        DiagonalJoin,
	}
	switch {
	case c.given("quilt"):
		r.Edge = RectangleEdge(c.size("quilt"))
		if strings.Contains(c.Want["convention"], "in place of an allowance") {
			r.Extra = 0
		}
	case c.given("perimeter"):
		r.Edge, r.Extra = MeasuredEdge(c.length("perimeter")), 0
	case c.given("length_needed"):
		r.Edge, r.Extra = MeasuredEdge(c.length("length_needed")), 0
	default: // a number of strips is given: an edge that takes just that many
		reach, err := BindingReach(BindingReachRequest{Conventions: r.Conventions, Strips: c.count("strips"),
			StripWidth: r.StripWidth, Join: r.Join})
		require.NoError(c.t, err)
		r.Edge, r.Extra = MeasuredEdge(reach.Perimeter), 0
	}
	b, err := Binding(r)
	require.NoError(c.t, err)
	c.ifHas("perimeter", b.Perimeter)
	c.ifHas("length_needed", b.LengthNeeded)
	c.ifHas("yards_of_binding", b.LengthNeeded)
	c.ifCounts("strips", b.Strips)
	c.ifCounts("strips_min", b.Strips)
	c.ifCounts("strips_with_joins", b.Strips)
	c.ifHas("length", b.Need)
	c.ifHas("fabric", b.Need)
	c.ifHas("yards", measure.Length(b.Buy))
	if c.has("strips_no_joins") {
		n, err := joinedStrips(b.LengthNeeded, r.UsableWidth, 0)
		require.NoError(c.t, err)
		c.counts("strips_no_joins", n)
	}
}

// checkBindingWidth compares a row about how wide to cut strips. The published
// rules are one formula with different seams and slacks.
func checkBindingWidth(c *check) {
	finished := c.length("finished")
	width := func(fold Fold, seam, slack measure.Length) measure.Length {
		w, err := BindingWidth(BindingWidthRequest{ImperialConventions(), fold, finished, seam, slack})
		require.NoError(c.t, err)
		return w
	}
	const quarter = measure.Inch / 4
	rules := map[string]measure.Length{
		"4f+1":                 width(DoubleFold, quarter, quarter),
		"six_times":            width(DoubleFold, finished, 0),
		"4f+1/2":               width(DoubleFold, quarter, 0),
		"four_times_plus_half": width(DoubleFold, quarter, 0),
	}
	c.ifHas("seam", finished) // the six times have the seam as deep as the binding
	c.ifHas("six_times", rules["six_times"])
	c.ifHas("four_times_plus_half", rules["four_times_plus_half"])
	switch {
	case c.given("rule"):
		c.lengths("strip", rules[c.In["rule"]])
	case c.given("single_fold"):
		c.lengths("strip", width(SingleFold, finished, DefaultBindingSlack))
	case c.given("loft"):
		c.lengths("strip", width(DoubleFold, finished, c.length("loft")+c.length("overlap")))
	default:
		c.lengths("strip", rules["six_times"])
	}
}

func checkBacking(c *check) {
	r := BackingRequest{
		Conventions: c.conventions(),
		Overage:     c.lengthOr("overage", DefaultBackingOverage),
		PanelSeam:   c.lengthOr("join_seam", DefaultPanelSeam),
	}
	if c.given("backing") { // the size of the backing itself is given
		r.Quilt, r.Overage = c.size("backing"), 0
	} else {
		r.Quilt = c.size("quilt")
	}
	b, err := Backing(r)
	require.NoError(c.t, err)
	if c.has("backing") {
		c.lengths("backing", b.BackingWidth, b.BackingLength)
	}
	vertical, err := r.way(VerticalSeams, r.UsableWidth)
	require.NoError(c.t, err)
	horizontal, err := r.way(HorizontalSeams, r.UsableWidth)
	require.NoError(c.t, err)
	c.ifCounts("vertical_panels", vertical.Panels)
	c.ifHas("vertical", vertical.Need)
	c.ifCounts("horizontal_panels", horizontal.Panels)
	c.ifHas("horizontal", horizontal.Need)
	c.ifHas("yards", measure.Length(b.Buy))
	if c.has("best") {
		c.says("best", c.Want["best"])
		best := map[string]BackingWay{"vertical": vertical, "horizontal": horizontal}[c.Want["best"]]
		assert.Equal(c.t, best, b.BackingWay, c.ID)
	}
	if c.has("yards_overage_2") {
		r.Overage = 2 * measure.Inch
		two, err := Backing(r)
		require.NoError(c.t, err)
		c.lengths("yards_overage_2", measure.Length(two.Buy))
	}
}

// checkBackingRange has a range of overages and buys for the larger.
func checkBackingRange(c *check) {
	var lengths []measure.Length
	r := BackingRequest{Conventions: c.conventions(), Quilt: c.size("quilt"), PanelSeam: DefaultPanelSeam, OneWay: true}
	for i := range 2 {
		r.Overage = c.lengthAt("overage", i)
		b, err := Backing(r)
		require.NoError(c.t, err)
		lengths = append(lengths, b.BackingLength)
	}
	c.lengths("length", lengths...)
	c.lengths("yards", measure.Length(r.BuyUp(lengths[1])))
}

// checkAreaRule has a rule of thumb by area, which falls short of the layout
// that is bought here.
func checkAreaRule(c *check) {
	quilt := c.size("quilt")
	rule := area(quilt)/(36*36) + 0.5
	c.near("yards", rule)
	b, err := Backing(BackingRequest{Conventions: c.conventions(), Quilt: quilt, Overage: DefaultBackingOverage, PanelSeam: DefaultPanelSeam})
	require.NoError(c.t, err)
	assert.Greater(c.t, measure.Length(b.Buy).In(measure.Yard), rule)
}

func checkSplitPanel(c *check) {
	r := BackingRequest{Conventions: c.conventions(), Quilt: c.size("quilt"), Overage: c.length("overage"), PanelSeam: c.length("join_seam")}
	b, err := Backing(r)
	require.NoError(c.t, err)
	c.lengths("width_one_join", b.Across)
	c.lengths("width_split_panel", b.Across-2*r.PanelSeam)
	c.lengths("length", b.Need)
	c.lengths("yards", measure.Length(b.Buy))
}

// checkHorizontalSeam has the longer side of the backing made up of panels.
func checkHorizontalSeam(c *check) {
	at := func(usable measure.Length) BackingWay {
		r := BackingRequest{Conventions: ImperialConventions(), Quilt: turned(c.size("backing")), PanelSeam: DefaultPanelSeam,
			Straighten: c.length("extra_ends") + c.length("seam")}
		r.UsableWidth = usable
		w, err := r.way(HorizontalSeams, usable)
		require.NoError(c.t, err)
		return w
	}
	forty, fortyTwo := at(40*measure.Inch), at(42*measure.Inch)
	if c.given("extra_ends") {
		c.lengths("length", fortyTwo.Need)
		c.lengths("yards", measure.Length(fortyTwo.Buy))
		return
	}
	c.counts("panels_at_40", forty.Panels)
	c.lengths("length_at_40", forty.Need)
	c.lengths("yards_at_40", measure.Length(forty.Buy))
	c.counts("panels_at_42", fortyTwo.Panels)
	c.lengths("length_at_42", fortyTwo.Need)
	c.lengths("yards_at_42", measure.Length(fortyTwo.Buy))
}

func checkBothWays(c *check) {
	b, err := Backing(BackingRequest{Conventions: c.conventions(), Quilt: c.size("backing"), PanelSeam: DefaultPanelSeam})
	require.NoError(c.t, err)
	c.lengths("short_way", b.Need)
	c.lengths("short_yards", measure.Length(b.Buy))
	c.lengths("long_way", b.Turned.Need)
	c.lengths("long_yards", measure.Length(b.Turned.Buy))
}

// checkBackingReach has two panels of fabric that is 42 in wide once the
// selvages are off.
func checkBackingReach(c *check) {
	var have measure.Length
	if c.has("length_each") { // "44 in" wide, and the 4 yd are the published length
		have = measure.Length(numbersIn(c.In["published"])[0]) * measure.Yard
	} else {
		have = measure.Length(numbersIn(c.In["cloth"])[0] * float64(measure.Yard))
	}
	v := ImperialConventions()
	v.UsableWidth = 42 * measure.Inch
	reach, err := BackingReach(BackingReachRequest{Conventions: v, Have: measure.Cloth(have), PanelSeam: DefaultPanelSeam})
	require.NoError(c.t, err)
	two := reach.All[1]
	require.Equal(c.t, 2, two.Panels)
	c.lengths("width", two.Quilt.Width)
	c.ifHas("length_each", two.PanelLength)
	c.ifHas("panel", two.PanelLength)
	c.ifHas("length", two.Quilt.Length)
	if c.has("covers_with") {
		c.lengths("covers_with", (two.Quilt.Length-c.lengthAt("quilt", 1))/2)
	}
}

func checkBatting(c *check) {
	if c.given("quilt") {
		b, err := Batting(BattingRequest{Conventions: c.conventions(), Quilt: c.size("quilt"), Overage: c.length("add") / 2})
		require.NoError(c.t, err)
		c.lengths("batting_min", b.BattingWidth, b.BattingLength)
		require.NotEmpty(c.t, b.Packages)
		p := b.Packages[0]
		c.says("package", p.Name+" "+p.Size.Show(measure.Imperial))
		return
	}
	name := c.In["package"]
	if name == "baby" { // sold under both names
		name = "crib"
	}
	want := c.want("size")
	size := measure.Size{Width: measure.Inches(want[0]), Length: measure.Inches(want[1])}
	assert.Contains(c.t, BattingPackages(), BattingPackage{name, size}, c.ID)
}

func checkYardage(c *check) {
	r := YardageRequest{Conventions: c.conventions(), Count: c.count("pieces"), Piece: c.size("piece")}
	y, err := Yardage(r)
	require.NoError(c.t, err)
	along := r.way(r.Piece)
	across := r.way(turned(r.Piece))
	c.ifCounts("per_strip", along.PerStrip)
	c.ifCounts("strips", along.Strips)
	c.ifHas("length", along.Length)
	c.ifHas("yards_exact", along.Length)
	c.ifHas("turned_length", across.Length)
	for name, way := range map[string]YardageWay{"lengthwise_in_strip": along, "crosswise_in_strip": across} {
		if c.has(name) {
			c.near(name, float64(way.PerStrip), float64(way.Strips), way.Length.Inches())
		}
	}
	c.ifHas("least", y.Length)
	if c.has("better") { // "turned 20 per strip and 15 strips at 3 in = 45 in = 1.25 yd"
		c.near("better", float64(y.PerStrip), float64(y.Strips), y.StripWidth.Inches(), y.Length.Inches(),
			measure.Length(y.Buy).In(measure.Yard))
	}
	if c.has("yards") {
		if c.has("least") {
			c.lengths("yards", measure.Length(y.Buy))
		} else { // the printed way round, which need not be the better one
			c.lengths("yards", measure.Length(r.BuyUp(along.Length)))
		}
	}
}

func checkWaste(c *check) {
	need := moreByPercent(c.length("need"), c.in("waste", 0))
	c.lengths("with_waste", need)
	c.lengths("yards", measure.Length(c.conventions().BuyUp(need)))
}

func checkPiecesInCut(c *check) {
	r := PiecesRequest{Conventions: c.conventions(), From: turned(c.size("piece")), Piece: PrecutSquare(c.length("square"))}
	p, err := Pieces(r)
	require.NoError(c.t, err)
	c.counts("count", p.Pieces)
	c.ifCounts("safe_count", p.IfShort)
	if c.has("safe_17.5x20") {
		r.From = measure.Size{Width: 20 * measure.Inch, Length: 35 * measure.Inch / 2}
		safe, err := Pieces(r)
		require.NoError(c.t, err)
		c.counts("safe_17.5x20", safe.Pieces)
	}
}

func checkPiecesInYard(c *check) {
	pieces := func(usable measure.Length) int {
		v := ImperialConventions()
		v.UsableWidth = usable
		p, err := Pieces(PiecesRequest{Conventions: v, From: v.OffTheBolt(measure.Cloth(c.length("cut"))),
			Piece: PrecutSquare(c.length("square"))})
		require.NoError(c.t, err)
		return p.Pieces
	}
	c.counts("count", pieces(c.length("usable")))
	c.ifCounts("count_at_40", pieces(40*measure.Inch))
	c.ifCounts("count_at_42", pieces(42*measure.Inch))
}

func checkStripsInYard(c *check) {
	v := c.conventions()
	strip := measure.Size{Width: v.UsableWidth, Length: c.length("strip")}
	p, err := Pieces(PiecesRequest{Conventions: v, From: v.OffTheBolt(measure.Cloth(c.length("cut"))), Piece: strip, OneWay: true})
	require.NoError(c.t, err)
	c.counts("strips", p.Pieces)
}

func checkBorder(c *check) {
	r := BordersRequest{Conventions: c.conventions(), Corners: ButtedCorners, Join: StraightJoin}
	switch {
	case strings.HasPrefix(c.Want["convention"], "side + 2 border + 6 in"):
		r.Quilt = PrecutSquare(c.length("quilt_length"))
		r.Widths, r.Corners, r.Spare = []measure.Length{c.length("border")}, MitredCorners, 3*measure.Inch
		c.lengths("strip_length", borders(c, r).Borders[0].SideCut)
	case c.given("diagonal_joins"):
		c.lengths("length_lost", c.conventions().loss(DiagonalJoin, c.length("border_cut")))
	case c.given("borders"): // "1 + 2.5 + 3.5 in", sewn together and mitred as one
		var total measure.Length
		for i := range numbersIn(c.In["borders"]) {
			total += c.lengthAt("borders", i)
		}
		c.lengths("total_width", total)
		r.Quilt, r.Widths = c.size("quilt"), []measure.Length{total}
		r.Corners, r.Spare = MitredCorners, measure.Inch/2
		b := borders(c, r).Borders[0]
		c.lengths("add", b.SideCut-r.Quilt.Length)
		c.lengths("strips", b.TopCut, b.SideCut)
	default:
		checkButtedBorder(c, r)
	}
}

func checkButtedBorder(c *check, r BordersRequest) {
	r.Quilt = c.size("quilt")
	width := c.length("border")
	if c.given("border_cut") {
		width = c.length("border_cut") - 2*r.Seam
	}
	r.Widths = []measure.Length{width}
	b := borders(c, r)
	one := b.Borders[0]
	round := 2 * (one.SideCut + one.TopCut)
	finished := round - 8*r.Seam
	if c.has("new_size") {
		c.lengths("new_size", b.QuiltWidth, b.QuiltLength)
	}
	c.ifHas("border_finished", one.Width)
	c.ifHas("exact_finished", finished)
	c.ifHas("total_finished", finished)
	if c.has("total_printed") { // adds four cut widths for four finished ones
		c.lengths("total_printed", finished+4*(one.StripWidth-one.Width))
	}
	c.ifHas("cut_total", round)
	c.ifCounts("strips", one.Strips)
	c.ifHas("strip_cut", one.StripWidth)
	c.ifHas("length", one.Need)
	c.ifHas("yards", measure.Length(one.Buy))
}

func borders(c *check, r BordersRequest) BordersResult {
	b, err := Borders(r)
	require.NoError(c.t, err)
	return b
}
