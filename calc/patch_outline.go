package calc

import (
	"math"

	"counterhand/calc/measure"
)

// PatchOutlines are the shapes of one patch: the raw edge, and the seam line
// inside it at the same place.
type PatchOutlines struct{ Cut, Sewn Outline }

// Patch gives the hexagon around the origin, with points to the left and right.
func (h HexagonResult) Patch() PatchOutlines {
	return PatchOutlines{Cut: hexagon(h.Exact.CutSide), Sewn: hexagon(h.Exact.Side)}
}

func hexagon(side measure.Length) Outline {
	o := make(Outline, 6)
	for i := range o {
		sin, cos := math.Sincos(float64(i) * math.Pi / 3)
		o[i] = Point{side.Inches() * cos, side.Inches() * sin}
	}
	return o
}

// Outlines gives the finished hexagons that fill the quilt, whose lower left
// corner is at the origin: its edges run through the middle of the zigzags. It
// gives none where no quilt was asked about.
func (h HexagonResult) Outlines() []Outline {
	if h.Cover == nil {
		return nil
	}
	side, flat := h.Exact.Side.Inches(), h.Exact.FlatToFlat.Inches()
	upright := hexagon(h.Exact.Side).Turned(30)
	var all []Outline
	for row := range h.Cover.Rows {
		for i := range h.Cover.PerRow {
			x := (float64(i) + 0.25 + float64(row%2)/2) * flat
			y := 1.5*side*float64(row) + 0.75*side
			o := upright.Moved(x, y)
			if !h.Cover.PointsUp {
				o = o.each(func(p Point) Point { return Point{p.Y, p.X} }).reversed()
			}
			all = append(all, o)
		}
	}
	return all
}

// reversed runs the outline the other way round.
func (o Outline) reversed() Outline {
	out := make(Outline, len(o))
	for i, p := range o {
		out[len(o)-1-i] = p
	}
	return out
}

// Patch gives the triangle on one side, from the origin to the right. Its raw
// edge is exact, while the strip it is cut from is rounded up.
func (t TriangleResult) Patch() PatchOutlines {
	seam := t.shape.Seam.Inches()
	return PatchOutlines{
		Cut:  triangle60(t.Height.Inches() + 3*seam),
		Sewn: triangle60(t.Height.Inches()).Moved(seam*sqrt3, seam),
	}
}

func triangle60(height float64) Outline {
	side := height * 2 / sqrt3
	return Outline{{0, 0}, {side, 0}, {side / 2, height}}
}

// StripOutlines gives the triangles of one strip as they are cut.
func (t TriangleResult) StripOutlines() (strip Outline, triangles []Outline) {
	strip = rectangle(t.shape.StripLength.Inches(), t.StripWidth.Inches())
	side, height := t.CutSide.Inches(), t.StripWidth.Inches()
	up := triangle60(height)
	for i := range t.PerStrip {
		o := up
		if i%2 == 1 {
			o = up.Turned(180).Moved(side, height)
		}
		triangles = append(triangles, o.Moved(float64(i)*side/2, 0))
	}
	return strip, triangles
}

// Patch gives the diamond lying on one side, from the origin to the right. Its
// raw edge is exact, while the strip it is cut from is rounded up.
func (d DiamondResult) Patch() PatchOutlines {
	sin, cos := math.Sincos(d.Angle.Radians())
	side, seam := d.Side.Inches(), d.shape.Seam.Inches()
	return PatchOutlines{
		Cut:  rhombus(side+2*seam/sin, d.Angle),
		Sewn: rhombus(side, d.Angle).Moved(seam*(1+cos)/sin, seam),
	}
}

func rhombus(side float64, a measure.Angle) Outline {
	sin, cos := math.Sincos(a.Radians())
	return Outline{{0, 0}, {side, 0}, {side + side*cos, side * sin}, {side * cos, side * sin}}
}

// StripOutlines gives the diamonds of one strip as they are cut.
func (d DiamondResult) StripOutlines() (strip Outline, diamonds []Outline) {
	strip = rectangle(d.shape.StripLength.Inches(), d.StripWidth.Inches())
	for i := range d.PerStrip {
		diamonds = append(diamonds, rhombus(d.CutSide.Inches(), d.Angle).Moved(float64(i)*d.CutSide.Inches(), 0))
	}
	return strip, diamonds
}

// Patch gives one of the two triangles that a cut rectangle gives, its right
// angle at the origin.
func (h HalfRectangleResult) Patch() PatchOutlines {
	w, l := h.ExactWidth.Inches(), h.ExactHeight.Inches()
	seam := h.seam.Inches()
	cut := Outline{{0, 0}, {w, 0}, {0, l}}
	sewn := Outline{{0, 0}, {h.Unfinished.Width.Inches() - 2*seam, 0}, {0, h.Unfinished.Length.Inches() - 2*seam}}
	return PatchOutlines{Cut: cut, Sewn: sewn.Moved(seam, seam)}
}

// Pie gives the quarter circle, the corner of its seam lines at the origin.
func (q QuarterCircleResult) Pie() PatchOutlines {
	seam := q.seam.Inches()
	radius := q.PieRadius.Inches()
	// The raw edges lie a seam outside the lines, so the raw arc reaches beyond a quarter.
	past := math.Asin(min(1, seam/radius))
	cut := append(Outline{{-seam, -seam}}, arc(Point{}, radius, -past, math.Pi/2+past)...)
	return PatchOutlines{Cut: cut, Sewn: append(Outline{{0, 0}}, arc(Point{}, q.Radius.Inches(), 0, math.Pi/2)...)}
}

// Background gives what lies around the quarter circle, the corner of the
// finished block at the origin.
func (q QuarterCircleResult) Background() PatchOutlines {
	seam, block := q.seam.Inches(), q.Block.Inches()
	shape := func(radius, from, to float64) Outline {
		past := math.Asin(min(1, -from/radius))
		o := arc(Point{}, radius, math.Pi/2+past, -past)
		return append(o, Point{to, from}, Point{to, to}, Point{from, to}).distinct()
	}
	return PatchOutlines{Cut: shape(q.BackgroundRadius.Inches(), -seam, block+seam), Sewn: shape(q.Radius.Inches(), 0, block)}
}

// distinct drops corners that lie on the one before.
func (o Outline) distinct() Outline {
	var out Outline
	for i, p := range o {
		before := o[(i+len(o)-1)%len(o)]
		if math.Hypot(p.X-before.X, p.Y-before.Y) > 1e-9 {
			out = append(out, p)
		}
	}
	return out
}

// Patch gives the template of one scallop: its chord on the x axis from the
// origin, and its arc above.
func (s ScallopResult) Patch() Outline {
	chord, radius := s.EachAcross.Inches(), s.Radius.Inches()
	centre := Point{chord / 2, s.Depth.Inches() - radius}
	foot := math.Atan2(-centre.Y, chord/2)
	return arc(centre, radius, foot, math.Pi-foot)
}

// Outlines gives the scallops of the whole edge.
func (s ScallopResult) Outlines() []Outline {
	all := make([]Outline, s.Scallops)
	for i := range all {
		all[i] = s.Patch().Moved(float64(i)*s.EachAcross.Inches(), 0)
	}
	return all
}
