package calc

import (
	"math"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

func checkPrecut(c *check) {
	v := ImperialConventions()
	switch {
	case c.has("area"): // strips and squares of the same area
		strip := c.size("strip")
		total := c.in("strips", 0) * area(turned(strip))
		c.near("area", total)
		c.near("same_as_squares_10in", total/area(PrecutSquare(10*measure.Inch)))
	case c.given("strip_width"):
		y, err := Yardage(YardageRequest{Conventions: v, Count: c.count("strips"),
			Piece: measure.Size{Width: v.UsableWidth, Length: c.length("strip_width")}, OneWay: true})
		require.NoError(c.t, err)
		c.lengths("length", y.Length)
		c.lengths("yards", y.Length)
	case c.given("unit"):
		allowance := map[string]measure.Length{
			"half-square triangle pair": v.HalfSquareAllowance(),
			"quarter-square triangle":   v.QuarterSquareAllowance(),
		}[c.In["unit"]]
		require.NotZero(c.t, allowance)
		c.lengths("finished", c.length("square")-allowance)
	case c.given("piece"):
		checkFromPrecutStrips(c, v)
	default:
		checkFromPrecutSquare(c, v)
	}
}

func checkFromPrecutStrips(c *check, v Conventions) {
	from := measure.Size{Width: c.length("usable"), Length: c.length("strip")}
	p, err := Pieces(PiecesRequest{Conventions: v, From: from, Piece: c.size("piece")})
	require.NoError(c.t, err)
	c.counts("per_strip", p.Pieces)
	f, err := FromCuts(FromCutsRequest{Conventions: v, Count: 40 * p.Pieces, Piece: c.size("piece"), From: from})
	require.NoError(c.t, err)
	assert.Equal(c.t, 40, f.Cuts)
	c.counts("per_40_strips", f.Cuts*f.PerCut)
}

func checkFromPrecutSquare(c *check, v Conventions) {
	piece := PrecutSquare(c.lengthOr("sub_square", 0))
	if c.given("strip") {
		piece = measure.Size{Width: c.length("square"), Length: c.length("strip")}
	}
	p, err := Pieces(PiecesRequest{Conventions: v, From: PrecutSquare(c.length("square")), Piece: piece})
	require.NoError(c.t, err)
	c.counts("count", p.Pieces)
	c.ifHas("left_over", p.LeftAcross)
	if c.has("finished") {
		seams := 2 * v.Seam
		finished := []measure.Length{piece.Length - seams, piece.Width - seams}
		c.lengths("finished", finished[:len(numbersIn(c.Want["finished"]))]...)
	}
}

func checkShrinkage(c *check) {
	s, err := Shrinkage(ShrinkageRequest{Conventions: ImperialConventions(), Need: measure.Cloth(c.length("wanted")), Percent: c.in("shrink", 0)})
	require.NoError(c.t, err)
	c.ifHas("make", s.Before)
	c.ifHas("cut", s.Before)
	c.ifHas("make_up_whole", s.Before.RoundUp(measure.Inch))
	c.ifHas("up_eighth_yard", measure.Length(s.Buy))
}

func checkEdgeTriangles(c *check) {
	r := EdgeTrianglesRequest{Conventions: ImperialConventions()}
	switch {
	case c.has("total"): // 23 on each long side and 17 on each short one
		r.Square = 9 * measure.Inch / 2
		base := r.Square - 2*r.Seam
		r.Quilt = measure.Size{Width: base * measure.Length(c.count("points_short")), Length: base * measure.Length(c.count("points_long"))}
	case c.given("square"):
		r.Square = c.length("square")
	default:
		r.Height = c.length("visible_height")
	}
	if c.given("edge") {
		r.Quilt = PrecutSquare(c.length("edge"))
	}
	e, err := EdgeTriangles(r)
	require.NoError(c.t, err)
	c.ifHas("square", e.Square)
	c.ifHas("visible_base", e.AcrossEach)
	c.ifHas("visible_height", e.Height)
	c.ifCounts("total", e.Points)
	c.ifCounts("count", e.SidePoints)
	c.ifHas("spacing", e.SideSpacing)
	if c.given("perimeter") { // as one long edge, by the printed rule and touching
		c.counts("count_rule", int(c.length("perimeter")/e.Square))
		c.counts("count_touching", wholes(c.length("perimeter"), e.AcrossEach))
	}
}

func checkOnPoint(c *check) {
	v := ImperialConventions()
	// The charts go up from the least overhang; here one below 1/64 in is
	// dropped, which makes seven of them an eighth smaller.
	v.CutSlack = 0
	if c.given("block_finished") {
		checkSettingTriangles(c, v)
	}
	if !c.given("columns") {
		return
	}
	block := c.lengthOr("block_finished", 12*measure.Inch)
	l, err := Layout(LayoutRequest{Conventions: v, Block: PrecutSquare(block), Setting: OnPointSetting,
		Across: c.count("columns"), Down: c.count("rows")})
	require.NoError(c.t, err)
	c.counts("blocks", l.Blocks)
	c.counts("setting_triangles", l.SideTriangles)
	c.ifCounts("corners", l.Corners)
	c.ifCounts("corner_triangles", l.Corners)
	c.ifHas("width", l.QuiltWidth)
	c.ifHas("length", l.QuiltLength)
	if c.has("straight_equivalent") { // "35 at 5 x 7"
		across, down := fits(l.QuiltWidth, block), fits(l.QuiltLength, block)
		c.counts("straight_equivalent", across*down, across, down)
	}
}

func checkSettingTriangles(c *check, v Conventions) {
	s, err := SettingTriangles(SettingTrianglesRequest{Conventions: v, Block: c.length("block_finished"),
		Across: c.count("columns"), Down: c.count("rows")})
	require.NoError(c.t, err)
	c.ifHas("setting_square", s.SideSquare)
	c.ifHas("corner_square", s.CornerSquare)
	c.ifHas("rule_setting", s.SideExact)
	c.ifHas("rule_corner", s.CornerExact)
	c.ifHas("setting_block_cut", v.cutSize(PrecutSquare(c.length("block_finished")), true).Width)
	c.ifHas("diagonal_used", v.CutUp(s.Diagonal))
	c.ifCounts("setting_squares", s.SideSquares)
	c.ifCounts("corner_squares", s.CornerSquares)
}

func checkDiagonal(c *check) {
	v := ImperialConventions()
	s, err := SettingTriangles(SettingTrianglesRequest{Conventions: v, Block: c.length("block_finished")})
	require.NoError(c.t, err)
	c.lengths("diagonal", s.Diagonal)
	c.lengths("near_eighth", s.Diagonal.RoundNearest(v.CutStep))
	c.lengths("up_eighth", v.CutUp(s.Diagonal))
}

func checkSashing(c *check) {
	v := c.conventions()
	switch {
	case c.given("rule"):
		block := c.length("block")
		c.near("product", block.Inches()*math.Phi)
		c.near("quarter", block.Inches()*math.Phi/4)
		c.lengths("sash", v.SuggestedSash(block))
	case c.has("per_strip"):
		checkSashStrips(c, v)
	case c.has("inner_pieces"):
		inner := sashes(c, v, false)
		c.counts("inner_pieces", inner.ShortSashes)
		c.counts("inner_cornerstones", inner.Cornerstones)
		framed := sashes(c, v, true)
		c.counts("framed_pieces", framed.ShortSashes)
		c.counts("framed_cornerstones", framed.Cornerstones)
	case c.given("sash") && c.length("sash") == 0:
		l, err := Layout(LayoutRequest{Conventions: v, Block: PrecutSquare(c.length("block")), Across: c.count("columns"), Down: c.count("rows")})
		require.NoError(c.t, err)
		c.lengths("width", l.QuiltWidth)
		c.lengths("length", l.QuiltLength)
	default:
		s := sashes(c, v, true)
		c.ifCounts("sash_pieces", s.ShortSashes)
		c.ifCounts("cornerstones", s.Cornerstones)
		c.ifHas("width", s.QuiltWidth)
		c.ifHas("length", s.QuiltLength)
	}
}

// sashes are those of the row's blocks with cornerstones.
func sashes(c *check, v Conventions, frame bool) SashingResult {
	s, err := Sashing(SashingRequest{Conventions: v, Block: PrecutSquare(c.lengthOr("block", 12*measure.Inch)),
		Sash: c.lengthOr("sash", 2*measure.Inch), Across: c.count("columns"), Down: c.count("rows"), Cornerstones: true, Frame: frame})
	require.NoError(c.t, err)
	return s
}

// checkSashStrips has a number of sashes of a cut size.
func checkSashStrips(c *check, v Conventions) {
	r := YardageRequest{Conventions: v, OneWay: true}
	if c.given("pieces") {
		r.Count, r.Piece = c.count("pieces"), measure.Size{Width: c.length("piece_length"), Length: c.length("sash_cut")}
	} else {
		r.Count, r.Piece = c.count("horizontals"), c.size("piece")
	}
	y, err := Yardage(r)
	require.NoError(c.t, err)
	c.counts("per_strip", y.PerStrip)
	c.counts("strips", y.Strips)
	c.lengths("length", y.Length)
	c.lengths("yards", measure.Length(y.Buy))
}

func checkPerimeter(c *check) {
	edge := RectangleEdge(c.size("quilt"))
	c.lengths("perimeter", edge.Perimeter)
	if c.has("wrong_value") { // width and length once each
		c.lengths("wrong_value", edge.Perimeter/2)
	}
}

func checkMeasuredAcross(c *check) {
	var widths []measure.Length
	for i := range numbersIn(c.In["widths"]) {
		widths = append(widths, c.lengthAt("widths", i))
	}
	mean, use, err := ImperialConventions().MeasuredAcross(widths...)
	require.NoError(c.t, err)
	c.lengths("mean", mean)
	c.lengths("use", use)
}

func checkCoping(c *check) {
	r := CopingRequest{Conventions: ImperialConventions()}
	if c.given("side_wanted") { // one unit as long as the wanted side; cut to the sixteenth, unlike here
		r.CutStep = measure.Inch / 16
		r.Quilt, r.Unit = PrecutSquare(c.length("side_now")), c.length("side_wanted")
	} else {
		r.Quilt, r.Unit = PrecutSquare(c.length("quilt_side")), c.length("unit")
	}
	p, err := Coping(r)
	require.NoError(c.t, err)
	c.ifCounts("units", p.Width.Units)
	c.ifHas("border", p.Width.Border)
	c.lengths("spacer_finished", p.Width.StripFinished)
	c.lengths("spacer_cut", p.Width.StripCut)
}

func checkScale(c *check) {
	r := ScaleRequest{Conventions: ImperialConventions()}
	switch {
	case c.given("factor"): // in percent
		r.From, r.To = 100*measure.Inch, measure.Inches(c.in("factor", 0))
		r.Patches = []ScalePatch{{RectanglePatch, c.size("cut")}}
	case c.given("want_width"):
		r.From, r.To = c.lengthAt("have", 0), c.length("want_width")
		seams := 2 * r.Seam
		r.Patches = []ScalePatch{{RectanglePatch, measure.Size{Width: c.lengthAt("have", 0) + seams, Length: c.lengthAt("have", 1) + seams}}}
	case c.given("patch_cut"):
		r.From, r.To = c.length("block"), c.length("new_block")
		r.Patches = []ScalePatch{{RectanglePatch, PrecutSquare(c.length("patch_cut"))}}
	default:
		r.From, r.To = c.length("have"), c.length("want")
	}
	s, err := Scale(r)
	require.NoError(c.t, err)
	if c.has("factor") {
		c.near("factor", s.Factor*100)
	}
	if c.has("cut_new") {
		c.lengths("cut_new", s.Patches[0].Cut.Width, s.Patches[0].Cut.Length)
	}
	if c.has("height") {
		c.lengths("height", s.Patches[0].Finished.Length)
	}
	if c.has("patch_cut_new") {
		c.lengths("patch_cut_new", s.Patches[0].Cut.Width)
	}
}

func checkMattress(c *check) {
	country, name := Country(c.In["bed"][:2]), c.In["bed"][3:]
	if name == "twin XL (misprint)" { // a width from 38 to 39 in, where pages copy 36
		name = "twin XL"
		m, ok := FindMattress(country, name)
		require.True(c.t, ok)
		width := c.want("width")
		assert.GreaterOrEqual(c.t, m.Size.Width.Inches(), width[0])
		assert.LessOrEqual(c.t, m.Size.Width.Inches(), width[1])
		c.lengths("length", m.Size.Length)
		return
	}
	m, ok := FindMattress(country, name)
	require.True(c.t, ok, c.In["bed"])
	c.lengths("width", m.Size.Width)
	c.lengths("length", m.Size.Length)
	c.ifHas("width_in", m.Size.Width)
	c.ifHas("length_in", m.Size.Length)
}

func checkBedQuilt(c *check) {
	v := ImperialConventions()
	if c.given("quilt") { // how a quilt lies on a bed
		beds, err := Beds(BedsRequest{Conventions: v, Quilt: c.size("quilt"), Country: UnitedStates})
		require.NoError(c.t, err)
		for _, b := range beds {
			if b.Size == c.size("mattress") {
				c.lengths("side_drop", b.SideDrop)
				c.lengths("end_each", b.EndDrop/2)
			}
		}
		return
	}
	b, err := Bed(BedRequest{Conventions: v, Mattress: c.size("mattress"), SideDrop: c.length("drop"),
		FootDrop: c.length("drop"), Tuck: c.length("tuck")})
	require.NoError(c.t, err)
	c.lengths("quilt", b.QuiltWidth, b.QuiltLength)
}

func checkBias(c *check) {
	v := c.conventions()
	strip := c.length("strip")
	if c.given("strips") { // cut one by one across the fabric
		v.UsableWidth = c.length("cloth_width")
		b := BiasBindingRequest{Conventions: v, StripWidth: strip}.separate(measure.Inch)
		c.lengths("bias_length", b.Length)
		c.lengths("total", b.Length*measure.Length(c.count("strips")))
		return
	}
	if c.given("square") { // q²/w, and less the seams q(q−1)/w
		square := c.length("square")
		c.ifHas("length", mulDivDown(square, square, strip))
		c.ifHas("length_area", mulDivDown(square, square, strip))
		c.ifHas("length_after_two_seams", biasLength(square, strip))
		return
	}
	checkBiasSquare(c, v, strip)
}

func checkBiasSquare(c *check, v Conventions, strip measure.Length) {
	b, err := BiasBinding(BiasBindingRequest{Conventions: v, Edge: MeasuredEdge(c.length("length")), StripWidth: strip})
	require.NoError(c.t, err)
	stripArea := c.length("length").Inches() * strip.Inches()
	byArea := measure.Inches(math.Sqrt(stripArea))
	if c.has("area") {
		c.near("area", stripArea)
	}
	c.ifHas("square_exact", byArea)
	c.ifHas("square_area_only", byArea)
	c.ifHas("square_up", byArea.RoundUp(measure.Inch))
	c.ifHas("square_with_seams_exact", measure.Inches((1+math.Sqrt(1+4*stripArea))/2))
	whole := v
	whole.GroundStep = measure.Inch // printed to whole inches, half inches here
	w, err := BiasBinding(BiasBindingRequest{Conventions: whole, Edge: MeasuredEdge(c.length("length")), StripWidth: strip})
	require.NoError(c.t, err)
	assert.LessOrEqual(c.t, b.SquareSide, w.SquareSide)
	c.ifHas("square", w.SquareSide)
	c.ifHas("square_with_seams", w.SquareSide)
	cut := mulDivUp(c.length("length"), strip, v.UsableWidth)
	c.ifHas("cut", cut)
	c.ifHas("yards_exact", cut)
	c.ifHas("yards", measure.Length(v.BuyUp(cut)))
}

// checkBoundCurve has the edges of round and scalloped quilts.
func checkBoundCurve(c *check) {
	switch {
	case c.given("scallop"):
		n := c.count("scallops")
		edge := PolygonEdge(n, c.length("scallop"))
		b, err := Binding(bindingOf(edge))
		require.NoError(c.t, err)
		needed := b.LengthNeeded - DefaultBindingExtra + c.length("extra")
		c.lengths("length", needed)
		c.lengths("yards_exact", needed)
	case c.given("tree_skirt_diameter"):
		outer := CircleEdge(c.length("tree_skirt_diameter")).Perimeter
		slit := measure.Inches(c.in("slit", 0) * c.in("slit", 1)) // both edges of it
		c.lengths("outer", outer)
		c.lengths("total", outer+slit+c.length("inner"))
	case c.given("rounded_corner_radius"):
		r := c.length("rounded_corner_radius")
		square := RectangleEdge(PrecutSquare(c.length("side"))).Perimeter
		c.lengths("perimeter", square-8*r+CircleEdge(2*r).Perimeter)
	default:
		c.lengths("circumference", CircleEdge(c.length("diameter")).Perimeter)
	}
}

func checkJoins(c *check) {
	n, strip, v := c.count("strips"), c.length("strip"), c.conventions()
	loss := func(j Join, strips int) measure.Length {
		return measure.Length(strips)*100*measure.Inch - joinedLength(strips, 100*measure.Inch, v.loss(j, strip))
	}
	c.lengths("loss_diagonal", loss(DiagonalJoin, n))
	c.lengths("loss_straight", loss(StraightJoin, n))
	c.lengths("loss_with_closing_diagonal", loss(DiagonalJoin, n)+v.loss(DiagonalJoin, strip))
}

func checkCountOfSquares(c *check) {
	v := ImperialConventions()
	square := PrecutSquare(c.length("square_finished"))
	l, err := Layout(LayoutRequest{Conventions: v, Block: square, Wanted: c.size("quilt")})
	require.NoError(c.t, err)
	c.counts("across", l.Across)
	c.counts("down", l.Down)
	c.counts("total", l.Blocks)
	c.lengths("cut", v.cutSize(square, true).Width)
}

func checkJoinedStrips(c *check) {
	v := c.conventions()
	n, err := joinedStrips(c.length("length"), v.UsableWidth, v.loss(DiagonalJoin, c.length("strip")))
	require.NoError(c.t, err)
	c.counts("strips", n)
	need := measure.Length(n) * c.length("strip")
	c.lengths("fabric", need)
	c.lengths("yards", measure.Length(v.BuyUp(need)))
}

// checkBobbins has the range of thread for a throw, half of it in bobbins of
// the smaller size, and one more.
func checkBobbins(c *check) {
	low, high := c.in("piecing", 0), c.in("piecing", 1)
	bobbin := measure.Length(c.in("yards_per_bobbin", 0)) * measure.Yard
	var bobbins []int
	for _, thread := range []float64{low, high} {
		bobbins = append(bobbins, wholes(measure.Inches(thread*36)/2, bobbin)+1)
	}
	c.counts("bobbins", bobbins...)
}

func checkThread(c *check) {
	seam := c.length("seam_length")
	s, err := Thread(ThreadRequest{Conventions: ImperialConventions(), Seam: seam, Spool: DefaultSpool, Bobbin: seam * 3 / 2})
	require.NoError(c.t, err)
	c.lengths("thread", s.Low, s.High)
	assert.Equal(c.t, 2, s.BobbinsHigh, "a bobbin of half the thread, and one more")
	c.says("top", "half")
	c.says("bobbin", "half")
}

func checkKit(c *check) {
	money := func(name string) Money {
		m, err := MoneyFromFloat(c.in(name, 0))
		require.NoError(c.t, err)
		return m
	}
	r := KitRequest{Lines: []KitLine{{Name: "fabric", Count: 1, Price: money("cost")}}}
	switch {
	case c.given("yards"):
		r.Lines[0] = KitLine{Name: "fabric", Cloth: measure.Cloth(measure.Inches(c.in("yards", 0) * 36)), Per: measure.Yard, Price: money("price_per_yard")}
	case c.given("markup"):
		r.Pricing, r.Percent = ByMarkup, c.in("markup", 0)
	case c.given("margin"):
		r.Pricing, r.Percent = ByMargin, c.in("margin", 0)
	}
	k, err := Kit(r)
	require.NoError(c.t, err)
	if c.has("cost") {
		c.near("cost", float64(k.Cost)/100)
	}
	if c.has("price") {
		c.near("price", float64(k.Price)/100)
	}
	if c.has("margin") {
		c.near("margin", k.Margin)
	}
}

func checkNoAllowance(c *check) {
	cut := c.length("cut_without_allowance")
	l, err := Layout(LayoutRequest{Conventions: ImperialConventions(), Block: PrecutSquare(cut), Unfinished: true, Across: 8, Down: 1})
	require.NoError(c.t, err)
	c.lengths("finished", l.Block.Width)
	c.lengths("row_of_8", l.QuiltWidth)
	c.lengths("wanted_row", 8*c.length("wanted_finished"))
}

func checkStripsRoundedDown(c *check) {
	v := c.conventions()
	n, err := joinedStrips(c.length("need"), v.UsableWidth, 0)
	require.NoError(c.t, err)
	c.counts("strips", n)
	wrong := fits(c.length("need"), v.UsableWidth)
	c.counts("wrong_value", wrong)
	c.lengths("short_by", c.length("need")-joinedLength(wrong, v.UsableWidth, 0))
}

// checkSquareYards has the area of a quilt against its real backing, with 2 in
// on each side.
func checkSquareYards(c *check) {
	quilt := c.size("quilt_area")
	c.near("area_square_yards", area(quilt)/(36*36))
	b, err := Backing(BackingRequest{Conventions: ImperialConventions(), Quilt: quilt, Overage: 2 * measure.Inch, PanelSeam: DefaultPanelSeam})
	require.NoError(c.t, err)
	c.lengths("backing_real", b.Need)
	c.lengths("backing_yards", measure.Length(b.Buy))
}

// checkFramedBlock has a border of a block: two sides, then top and bottom.
func checkFramedBlock(c *check) {
	block, centre := c.size("framed_block"), c.size("centre")
	b, err := Borders(BordersRequest{Conventions: ImperialConventions(), Quilt: centre,
		Widths: []measure.Length{(block.Width - centre.Width) / 2}, Corners: ButtedCorners, Join: StraightJoin})
	require.NoError(c.t, err)
	one := b.Borders[0]
	got := []float64{2, one.StripWidth.Inches(), one.SideCut.Inches(), 2, one.StripWidth.Inches(), one.TopCut.Inches()}
	assert.Equal(c.t, c.want("frame_pieces"), got)
	// "180 in2 each" is one number and the exponent of its unit
	assert.Equal(c.t, c.want("frame_area")[0], area(block)-area(centre))
}
