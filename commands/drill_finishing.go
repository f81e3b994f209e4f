package commands

import (
	"math"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// bindingSet draws a quilt to bind.
func bindingSet(d draw) (values map[string]Value, text string, slips []slip) {
	wide := d.length(span{36, 70, 2}, span{90, 180, 5})
	long := wide + d.length(span{4, 20, 2}, span{10, 50, 5})
	strip := d.length(span{2, 2.5, 0.25}, span{5.5, 6.5, 0.5})
	extra := d.length(span{10, 12, 2}, span{25, 30, 5})
	usable := d.fabricWidth()
	values = map[string]Value{"quilt": ofSize(wide, long), "strip_width": ofLength(strip), "usable_width": ofLength(usable), "extra": ofLength(extra), "joins": ofWordSaid("diagonal")}
	text = d.show.format("A quilt of %v is bound with strips cut %v wide from fabric that gives %v, joined on the diagonal, with %v extra for corners and the closing join.", measure.Size{Width: wide, Length: long}, strip, usable, extra)
	slips = []slip{
		{values: inPlaceOf(values, "quilt", "perimeter", ofLength(wide+long)), says: "That takes width and length once; all four sides are bound."},
		{values: with(values, "extra", ofLength(0)), says: "That leaves out the extra for corners and the closing join."},
	}
	return values, text, slips
}

func bindingStrips(d draw) exercise {
	values, text, slips := bindingSet(d)
	usable := d.in(values["usable_width"].Length)
	return exercise{
		topic: "binding", values: values, figure: "strips", noun: "strip", line: " less ", ask: text + " How many strips?",
		slips: append(slips,
			slip{of: func(s solution) float64 { return math.Ceil(s.value("length_needed") / usable) }, says: "That leaves out the joins: each diagonal one uses up a strip width."},
			slip{of: lessBy(1), says: saysRoundedDown}),
	}
}

func bindingLength(d draw) exercise {
	values, text, slips := bindingSet(d)
	return exercise{topic: "binding", values: values, figure: "length_needed", line: "With ", ask: text + " How long must the binding be in all?", slips: slips}
}

func bindingToBuy(d draw) exercise {
	values, text, slips := bindingSet(d)
	return exercise{
		topic: "binding", values: values, figure: "buy", line: "buy", ask: text + " How much fabric is that to buy?",
		slips: append(slips, slip{of: lessBy(d.buyStep()), says: saysRoundedDown}),
	}
}

// backingSet draws a quilt to back.
func backingSet(d draw) (values map[string]Value, text string) {
	wide := d.length(span{44, 84, 2}, span{110, 210, 5})
	long := wide + d.length(span{4, 20, 2}, span{10, 50, 5})
	over := d.length(span{3, 4, 1}, span{8, 10, 1})
	usable := d.fabricWidth()
	values = map[string]Value{"quilt": ofSize(wide, long), "overage": ofLength(over), "usable_width": ofLength(usable)}
	text = d.show.format("A quilt of %v is backed with %v over on each side.", measure.Size{Width: wide, Length: long}, over)
	return values, text
}

func backingWidth(d draw) exercise {
	values, text := backingSet(d)
	return exercise{
		topic: "backing", values: values, figure: "backing_width", line: "the backing is", ask: text + " How wide is the backing?",
		slips: []slip{
			{values: with(values, "overage", ofLength(values["overage"].Length/2)), says: "That adds the overage once; it goes over on both sides."},
			{of: fixed(d.in(values["quilt"].Size.Width)), says: "That leaves out what goes over on each side."},
			{of: func(s solution) float64 { return s.value("backing_length") }, says: "That is its length."},
		},
	}
}

func backingToBuy(d draw) exercise {
	values, text := backingSet(d)
	usable := values["usable_width"].Length
	text += d.show.format(" The fabric gives %v and each panel edge loses %v to its seam. How much fabric is that to buy, seams the better way?", usable, calc.Unrounded(d.panelSeam))
	// panels counts without seams: 80 in as two of 40.
	panels := func(across, long float64) float64 { return math.Ceil(across/d.in(usable)) * long }
	area := func(s solution) float64 { return s.value("backing_width") * s.value("backing_length") / d.in(usable) }
	return exercise{
		topic: "backing", values: values, figure: "buy", line: "buy", ask: text,
		slips: []slip{
			{values: with(values, "overage", ofLength(values["overage"].Length/2)), says: "That adds the overage once; it goes over on both sides."},
			{values: with(values, "overage", ofLength(0)), says: "That leaves out what goes over on each side."},
			{of: func(s solution) float64 {
				w, l := s.value("backing_width"), s.value("backing_length")
				return d.cloth(d.lengthOf(min(panels(w, l), panels(l, w))))
			}, says: "That leaves out the seams between the panels."},
			{of: func(s solution) float64 { return d.cloth(d.lengthOf(area(s))) }, says: "That goes by area alone; panels come in whole widths of fabric."},
			{of: lessBy(d.buyStep()), says: saysRoundedDown},
		},
	}
}

// bordersSet draws a quilt with a border.
func bordersSet(d draw) (values map[string]Value, quilt measure.Size, border measure.Length, text string) {
	wide := d.length(span{30, 60, 1}, span{80, 150, 5})
	quilt = measure.Size{Width: wide, Length: wide + d.length(span{5, 20, 1}, span{15, 50, 5})}
	border = d.length(span{2, 6, 0.5}, span{5, 15, 0.5})
	values = map[string]Value{
		"quilt": ofSize(quilt.Width, quilt.Length), "border": ofLength(border), "corners": ofWordSaid("butted"),
		"usable_width": ofLength(d.fabricWidth()), "seam": ofLength(d.conv.Seam),
	}
	text = d.show.format("A quilt that finishes at %v gets a butted border that finishes %v wide, sides first, with %v seams.", quilt, border, d.conv.Seam)
	return values, quilt, border, text
}

func borderSide(d draw) exercise {
	values, quilt, border, text := bordersSet(d)
	seam := d.in(d.conv.Seam)
	return exercise{
		topic: "borders", values: values, figure: "side_cut", line: "Sides:", ask: text + " How long are the sides cut?",
		slips: []slip{
			{of: fixed(d.in(quilt.Length)), says: saysNoSeams},
			{of: fixed(d.in(quilt.Length) + seam), says: saysOneSeam},
			{of: fixed(d.in(quilt.Length+2*border) + 2*seam), says: "That adds the border: the sides go on first, so only top and bottom cross it."},
			{of: func(s solution) float64 { return s.value("top_cut") }, says: "That is the top and bottom."},
		},
	}
}

func borderTop(d draw) exercise {
	values, quilt, border, text := bordersSet(d)
	seam := d.in(d.conv.Seam)
	return exercise{
		topic: "borders", values: values, figure: "top_cut", line: "top and bottom:", ask: text + " How long are top and bottom cut?",
		slips: []slip{
			{of: fixed(d.in(quilt.Width+border) + 2*seam), says: "That adds the border once; it stands on both sides."},
			{of: fixed(d.in(quilt.Width) + 2*seam), says: "That leaves out the border: top and bottom cross the sides."},
			{of: fixed(d.in(quilt.Width + 2*border)), says: saysNoSeams},
			{of: fixed(d.in(quilt.Width+2*border) + seam), says: saysOneSeam},
			{of: func(s solution) float64 { return s.value("side_cut") }, says: "That is the sides."},
		},
	}
}

func borderedWidth(d draw) exercise {
	values, quilt, border, text := bordersSet(d)
	return exercise{
		topic: "borders", values: values, figure: "quilt_width", line: "the quilt is", ask: text + " How wide does the quilt finish with it?",
		slips: []slip{
			{of: fixed(d.in(quilt.Width + border)), says: "That adds the border once; it stands on both sides."},
			{of: fixed(d.in(quilt.Width + 2*border + 2*d.conv.Seam)), says: "That is the size before the outer edge is sewn; the finished one has no seams in it."},
			{of: func(s solution) float64 { return s.value("quilt_length") }, says: "That is its length."},
		},
	}
}
