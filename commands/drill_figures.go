package commands

import (
	"counterhand/calc/measure"
)

func wedgesInRing(d draw) exercise {
	angle := pick(d, 9, 10, 12, 15, 18, 20, 22.5, 24, 30, 36, 40, 45)
	return exercise{
		topic: "wedge-count", values: map[string]Value{"angle": ofAngle(angle)}, figure: "blades", noun: "blade", line: "÷",
		ask:   d.show.format("How many blades of %v close a full circle?", measure.Angle(angle)),
		slips: []slip{{of: fixed(180 / angle), says: "That fills a half circle: a full one has 360°."}},
	}
}

func wedgesInHalf(d draw) exercise {
	angle := pick(d, 9, 10, 12, 15, 18, 20, 22.5, 30, 36, 45)
	return exercise{
		topic: "wedge-count", values: map[string]Value{"angle": ofAngle(angle), "part": ofWordSaid("half")}, figure: "blades", noun: "blade", line: "÷",
		ask: d.show.format("How many blades of %v fill a half circle?", measure.Angle(angle)),
		slips: []slip{
			{of: fixed(360 / angle), says: "That fills a full circle: a half one has 180°."},
			{of: fixed(90 / angle), says: "That fills a quarter: a half circle has 180°."},
		},
	}
}

func angleOfWedges(d draw) exercise {
	blades := pick(d, 8, 9, 10, 12, 14, 15, 16, 18, 20, 22, 24, 30)
	return exercise{
		topic: "wedge-count", values: map[string]Value{"blades": ofCount(blades)}, figure: "angle", line: "÷",
		ask:   d.show.format("A full circle is made of %v equal blades. How many degrees has each?", blades),
		slips: []slip{{of: fixed(180 / float64(blades)), says: "That divides a half circle: a full one has 360°."}},
	}
}

// scaleSet draws a block and the size wanted instead.
func scaleSet(d draw) (from, to measure.Length) {
	from = d.length(span{6, 14, 1}, span{15, 35, 5})
	to = d.length(span{6, 18, 1}, span{15, 45, 5})
	if from == to {
		to += d.length(span{2, 4, 1}, span{5, 10, 5})
	}
	return from, to
}

func scaleFactor(d draw) exercise {
	from, to := scaleSet(d)
	return exercise{
		topic: "scale", values: map[string]Value{"from": ofLength(from), "to": ofLength(to)}, figure: "factor", line: "÷",
		ask:   d.show.format("A block that finishes at %v is made to finish at %v. By what is every finished size multiplied?", from, to),
		slips: []slip{{of: fixed(from.Inches() / to.Inches()), says: "That is the other way round: the wanted size is divided by the present one."}},
	}
}

func scaledPatch(d draw) exercise {
	from, to := scaleSet(d)
	patch := d.length(span{1.5, 4, 0.5}, span{4, 10, 0.5}) + 2*d.conv.Seam
	values := map[string]Value{"from": ofLength(from), "to": ofLength(to), "patch": ofLength(patch), "seam": ofLength(d.conv.Seam)}
	grows := float64(to) / float64(from)
	return exercise{
		topic: "scale", values: values, figure: "patch1", line: "less seams",
		ask: d.show.format("A block that finishes at %v is made to finish at %v, with %v seams. A square in it is cut %v now. How large is it cut then?", from, to, d.conv.Seam, patch),
		slips: []slip{
			{of: fixed(d.in(patch) * grows), says: "That scales the seams too: take them off, multiply, and put them back."},
			{of: fixed(d.in(patch-2*d.conv.Seam) * grows), says: "That is the finished size: the seams are to be put back."},
			{of: fixed(d.in(patch + to - from)), says: "That adds what the block grows by; sizes are multiplied."},
		},
	}
}

func otherUnit(d draw) exercise {
	if d.metric() {
		l := d.length(span{}, span{5, 60, 2.5})
		return converted(d, l, "in", d.show.format("How many inches are %v?", l),
			slip{of: fixed(l.In(measure.Centimetre) * 2.54), says: "That multiplies by 2.54; an inch is longer than a centimetre, so there are fewer of them."})
	}
	l := d.length(span{1, 24, 0.5}, span{})
	return converted(d, l, "cm", d.show.format("How many centimetres are %v?", l),
		slip{of: fixed(l.Inches() / 2.54), says: "That divides by 2.54; a centimetre is shorter than an inch, so there are more of them."})
}

func clothInOtherUnit(d draw) exercise {
	if d.metric() {
		l := d.length(span{}, span{30, 300, 10})
		return converted(d, l, "yd", d.show.format("How many yards are %v?", measure.Cloth(l)),
			slip{of: fixed(l.In(measure.Metre) * 0.9144), says: "That multiplies by 0.9144; a yard is shorter than a metre, so there are more of them."})
	}
	l := d.length(span{4.5, 108, 4.5}, span{})
	return converted(d, l, "yd", d.show.format("How many yards are %v?", l),
		slip{of: fixed(l.In(measure.Foot)), says: "That is in feet: a yard has 36 inches."})
}

func converted(_ draw, l measure.Length, to, ask string, s slip) exercise {
	return exercise{topic: "convert", values: map[string]Value{"length": ofLength(l), "to": ofWordSaid(to)}, figure: "result", line: " = ", ask: ask, slips: []slip{s}}
}
