package calc

import (
	"cmp"
	"math"

	"counterhand/calc/measure"
)

// arcLength gives the length of an arc: radius × angle.
func arcLength(radius measure.Length, a measure.Angle) measure.Length {
	return scaled(radius, a.Radians())
}

// CircleRequest asks for a circle, by the distance across it or around it.
type CircleRequest struct {
	Conventions
	Across  measure.Length // finished
	Around  measure.Length // finished; 0 where Across is given
	Turning measure.Length // turned under, or seam, all round
}

// CircleResult is a circle with its template and its cut size.
type CircleResult struct {
	Around         measure.Length
	TemplateAcross measure.Length // as it finishes
	CutAcross      measure.Length
	Exact          struct{ Across, Around measure.Length }
	Working        []Step
}

// Circle works out a circle: π × the distance across is the distance around.
// Source: geometry.
func Circle(r CircleRequest) (CircleResult, error) {
	err := cmp.Or(r.Conventions.check(), wantSpare("distance_around", r.Around), wantSpare("turning", r.Turning))
	if r.Around == 0 {
		err = cmp.Or(err, wantLength("distance_across", r.Across))
	}
	if err != nil {
		return CircleResult{}, err
	}
	var c CircleResult
	c.Exact.Across, c.Exact.Around = r.Across, scaled(r.Across, math.Pi)
	c.Working = []Step{step("Around: π × %v = %v", r.Across, Unrounded(c.Exact.Around))}
	if r.Around > 0 {
		c.Exact.Across, c.Exact.Around = scaled(r.Around, 1/math.Pi), r.Around
		c.Working = []Step{step("Across: %v ÷ π = %v", r.Around, Unrounded(c.Exact.Across))}
	}
	c.Around, c.TemplateAcross = r.Template(c.Exact.Around), r.Template(c.Exact.Across)
	c.CutAcross = r.Template(c.Exact.Across + 2*r.Turning)
	c.Working = append(c.Working, nearStep(c.Exact.Across+2*r.Turning, c.CutAcross, "Cut: %v + 2 × %v", Unrounded(c.Exact.Across), Unrounded(r.Turning)))
	return c, nil
}

// QuarterCircleRequest asks for a block with a quarter circle in one corner.
type QuarterCircleRequest struct {
	Conventions
	Radius measure.Length // finished
	Block  measure.Length // finished side; 0 for the radius and an inch more
	Blocks int            // wanted; 0 where nobody said
}

// QuarterCircleResult is the two templates, the pie and what lies around it.
// The arcs of both are drawn from the corner where their straight seams cross,
// one seam in from the raw edges.
type QuarterCircleResult struct {
	Radius, Block    measure.Length // finished
	PieRadius        measure.Length // as cut: the radius and a seam
	BackgroundRadius measure.Length // as cut: the radius less a seam
	PieSquare        measure.Length // that a pie is cut from
	BackgroundSquare measure.Length // that a background is cut from
	SeamArc          measure.Length // finished, exact, as both below
	PieArc           measure.Length // along the raw edge
	BackgroundArc    measure.Length // along the raw edge
	PieCloth         PatchCloth     // for the blocks wanted
	BackgroundCloth  PatchCloth
	Working          []Step

	seam measure.Length
}

// QuarterCircle works out a block with a quarter circle. The pie's curve is cut
// one seam larger than the finished radius and the background's one seam
// smaller, so that both meet on the seam line. Source: makerspy.blogspot.com,
// quarter circle templates, May 2014.
func QuarterCircle(r QuarterCircleRequest) (QuarterCircleResult, error) {
	if r.Block == 0 {
		r.Block = r.Radius + measure.Inch
	}
	if err := r.check(); err != nil {
		return QuarterCircleResult{}, err
	}
	q := QuarterCircleResult{
		Radius: r.Radius, Block: r.Block, seam: r.Seam,
		PieRadius: r.Radius + r.Seam, BackgroundRadius: r.Radius - r.Seam,
		PieSquare: r.CutUp(r.withSeams(r.Radius)), BackgroundSquare: r.CutUp(r.withSeams(r.Block)),
	}
	q.SeamArc, q.PieArc, q.BackgroundArc = arcLength(r.Radius, 90), arcLength(q.PieRadius, 90), arcLength(q.BackgroundRadius, 90)
	q.PieCloth = r.patchCloth(q.PieSquare, r.Blocks)
	q.BackgroundCloth = r.patchCloth(q.BackgroundSquare, r.Blocks)
	q.Working = []Step{
		step("Pie: arc of %v + %v = %v, from a square of %v", r.Radius, Unrounded(r.Seam), Unrounded(q.PieRadius), q.PieSquare),
		step("Background: arc of %v − %v = %v, from a square of %v", r.Radius, Unrounded(r.Seam), Unrounded(q.BackgroundRadius), q.BackgroundSquare),
		step("They meet along a seam of %v; the raw curves are %v and %v long, so clip and ease.", Unrounded(q.SeamArc), Unrounded(q.PieArc), Unrounded(q.BackgroundArc)),
	}
	return q, nil
}

func (r QuarterCircleRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantLength("radius", r.Radius), wantLength("block", r.Block))
	if r.Blocks != 0 {
		err = cmp.Or(err, wantCount("blocks", r.Blocks))
	}
	switch {
	case err != nil:
	case r.Radius <= 2*r.Seam:
		err = limit("radius", step("A quarter circle of %v is too tight for seams of %v.", r.Radius, r.Seam),
			step("Radii from %v work.", r.CutUp(2*r.Seam+r.CutStep)))
	case r.Radius > r.Block:
		err = limit("radius", step("A quarter circle of %v does not fit in a block of %v.", r.Radius, r.Block),
			step("It can be %v at most.", r.Block))
	}
	return err
}

// ScallopRequest asks for scallops that divide an edge.
type ScallopRequest struct {
	Conventions
	Edge     measure.Length
	Across   measure.Length // wanted of each; 0 where Scallops is given
	Scallops int
	Depth    measure.Length // from the line between two valleys to the top; 0 for half circles
	Whole    bool           // scallops that are exactly Across wide or none
}

// ScallopResult is scallops that divide the edge.
type ScallopResult struct {
	Scallops   int
	EachAcross measure.Length // exact
	Depth      measure.Length
	Arc        measure.Length // of one, exact
	Around     measure.Length // all arcs, exact: what a binding follows
	Radius     measure.Length
	Fewer      Scalloping // one scallop fewer
	More       Scalloping // one scallop more
	Working    []Step
}

// Scalloping is another number of scallops on the same edge.
type Scalloping struct {
	Scallops   int
	EachAcross measure.Length
}

// Scallops divides an edge into equal scallops, the number nearest to the width
// wanted, and measures their arcs: with a chord c and a depth h the radius is
// (c²/4 + h²) ÷ 2h. Source: geometry.
//
// It gives a [*LimitError] where they have to be of an exact width that does
// not divide the edge, naming the widths that do, and for scallops deeper than
// half circles.
func Scallops(r ScallopRequest) (ScallopResult, error) {
	if err := r.check(); err != nil {
		return ScallopResult{}, err
	}
	n := r.Scallops
	if n == 0 {
		n = max(1, int((r.Edge+r.Across/2)/r.Across))
	}
	if n > maxCount {
		return ScallopResult{}, wantCount("scallops", n)
	}
	s := ScallopResult{Scallops: n, EachAcross: r.divided(n), More: Scalloping{n + 1, r.divided(n + 1)}}
	if n > 1 {
		s.Fewer = Scalloping{n - 1, r.divided(n - 1)}
	}
	if r.Whole && r.Scallops == 0 && r.Edge%r.Across != 0 {
		return ScallopResult{}, r.doesNotDivide()
	}
	if s.EachAcross < leastCut {
		return ScallopResult{}, limit("scallops", step("%v scallops on %v are too narrow to cut.", n, r.Edge), Step{})
	}
	if most := s.EachAcross / 2; r.Depth > most+hair {
		return ScallopResult{}, limit("depth",
			step("Scallops %v across cannot be %v deep: beyond a half circle they run into each other.", s.EachAcross, r.Depth),
			step("They can be %v deep at most.", r.LimitDown(most)))
	}
	s.Working = []Step{step("Each: %v ÷ %v = %v", r.Edge, n, Unrounded(s.EachAcross))}
	r.arc(&s)
	return s, nil
}

func (r ScallopRequest) check() error {
	err := cmp.Or(r.Conventions.check(), wantLength("edge", r.Edge), wantSpare("depth", r.Depth))
	if r.Depth != 0 {
		err = cmp.Or(err, wantLength("depth", r.Depth))
	}
	if r.Scallops != 0 {
		return cmp.Or(err, wantCount("scallops", r.Scallops))
	}
	return cmp.Or(err, wantLength("each_across", r.Across))
}

// divided gives the edge's n-th part.
func (r ScallopRequest) divided(n int) measure.Length { return r.Edge / measure.Length(n) }

func (r ScallopRequest) doesNotDivide() error {
	n := int(r.Edge / r.Across)
	reason := step("Scallops of %v do not divide %v.", r.Across, r.Edge)
	if n < 1 {
		return limit("each_across", reason, step("One scallop of %v fills it.", r.Edge))
	}
	return limit("each_across", reason, step("%v of %v or %v of %v do.", n, r.divided(n), n+1, r.divided(n+1)))
}

// arc measures one scallop and all of them.
func (r ScallopRequest) arc(s *ScallopResult) {
	s.Depth = cmp.Or(r.Depth, s.EachAcross/2)
	chord, depth := s.EachAcross.Inches(), s.Depth.Inches()
	radius := (chord*chord/4 + depth*depth) / (2 * depth)
	arc := 4 * radius * math.Atan2(2*depth, chord) // half the arc's angle is twice the angle at its foot
	s.Radius, s.Arc = measure.Inches(radius), measure.Inches(arc)
	s.Around = measure.Inches(arc * float64(s.Scallops))
	s.Working = append(s.Working,
		step("Radius: ((%v)² ÷ 4 + (%v)²) ÷ (2 × %v) = %v", Unrounded(s.EachAcross), Unrounded(s.Depth), Unrounded(s.Depth), Unrounded(s.Radius)),
		step("Arc of one: %v; of all %v: %v", Unrounded(s.Arc), s.Scallops, Unrounded(s.Around)))
}

// RoundedCornersRequest asks for the way around a quilt with rounded corners.
type RoundedCornersRequest struct {
	Conventions
	Quilt  measure.Size
	Radius measure.Length // of each corner
}

// RoundedCornersResult is the way around.
type RoundedCornersResult struct {
	Around  measure.Length // exact
	Saved   measure.Length // beside the square corners, exact
	Working []Step
}

// RoundedCorners measures around a quilt whose corners are arcs: the perimeter
// less 8 radii and with one whole circle. Source: geometry.
func RoundedCorners(r RoundedCornersRequest) (RoundedCornersResult, error) {
	err := cmp.Or(r.Conventions.check(), wantSize("quilt", r.Quilt), wantSpare("radius", r.Radius))
	if shorter := min(r.Quilt.Width, r.Quilt.Length); err == nil && 2*r.Radius > shorter {
		err = limit("radius", step("Two corners of %v do not fit on a side of %v.", r.Radius, shorter),
			step("The radius can be %v at most.", r.LimitDown(shorter/2)))
	}
	if err != nil {
		return RoundedCornersResult{}, err
	}
	straight := 2 * (r.Quilt.Width + r.Quilt.Length)
	round := scaled(r.Radius, 2*math.Pi)
	around := straight - 8*r.Radius + round
	return RoundedCornersResult{Around: around, Saved: straight - around, Working: []Step{
		step("Straight: 2 × %v + 2 × %v = %v", r.Quilt.Width, r.Quilt.Length, straight),
		step("Corners: %v − 8 × %v + 2 × π × %v = %v", straight, r.Radius, r.Radius, Unrounded(around)),
	}}, nil
}
