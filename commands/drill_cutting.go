package commands

import (
	"math"

	"counterhand/calc/measure"
)

func cutSquare(d draw) exercise {
	side := d.length(span{1.5, 8, 0.5}, span{4, 20, 0.5})
	seam := d.in(d.conv.Seam)
	values := map[string]Value{
		"pieces": ofCount(20), "side": {Kind: aLength, Length: side, Cut: finishedSize},
		"seam": ofLength(d.conv.Seam), "usable_width": ofLength(d.fabricWidth()),
	}
	return exercise{
		topic: "yardage", values: values, figure: "strip_width", line: "to finish at",
		ask:   d.show.format("A plain square finishes at %v, with %v seams. How large is it cut?", side, d.conv.Seam),
		slips: seamSlips(d, d.in(side), seam),
	}
}

// seamSlips are the mistakes with the seams of a plain patch.
func seamSlips(d draw, finished, seam float64) []slip {
	return []slip{
		{of: fixed(finished), says: saysNoSeams},
		{of: fixed(finished + seam), says: saysOneSeam},
		{of: fixed(finished - 2*seam), says: "That takes the seams off; cut is larger than finished."},
		{of: fixed(finished + d.in(d.conv.HalfSquareAllowance())), says: "That is the allowance of a square cut into two triangles; a plain patch has two seams and no more."},
	}
}

func borderStrip(d draw) exercise {
	values, _, border, _ := bordersSet(d)
	return exercise{
		topic: "borders", values: values, figure: "strip_width", line: "Strip:",
		ask:   d.show.format("A border finishes %v wide, with %v seams. How wide is its strip cut?", border, d.conv.Seam),
		slips: seamSlips(d, d.in(border), d.in(d.conv.Seam)),
	}
}

func unfinishedUnit(d draw) exercise {
	values, finished := halfSquareSet(d, 2)
	return exercise{
		topic: "half-square-triangles", values: values, figure: "unfinished", line: "before it is sewn in",
		ask:   d.show.format("A half-square triangle unit finishes at %v, with %v seams. What does it measure before it is sewn in?", finished, d.conv.Seam),
		slips: seamSlips(d, d.in(finished), d.in(d.conv.Seam)),
	}
}

// squaresSet draws squares to cut from yardage.
func squaresSet(d draw) (values map[string]Value, text string) {
	count := 12 * (2 + d.rand.IntN(9))
	side := d.length(span{2.5, 6.5, 0.5}, span{6, 16, 0.5})
	usable := d.fabricWidth()
	values = map[string]Value{"pieces": ofCount(count), "side": ofLength(side), "usable_width": ofLength(usable)}
	text = d.show.format("%v squares are cut %v from fabric that gives %v.", count, side, usable)
	return values, text
}

func piecesPerStrip(d draw) exercise {
	values, text := squaresSet(d)
	return exercise{
		topic: "yardage", values: values, figure: "per_strip", noun: "square", line: "a strip", ask: text + " How many squares does one strip across give?",
		slips: []slip{{of: lessBy(-1), says: "That is rounded up: only whole squares fit a strip."}},
	}
}

func stripsOfSquares(d draw) exercise {
	values, text := squaresSet(d)
	count, side := float64(values["pieces"].Count), values["side"].Length
	usable := values["usable_width"].Length
	return exercise{
		topic: "yardage", values: values, figure: "strips", noun: "strip", line: "strips of", ask: text + " How many strips is that?",
		slips: []slip{
			{of: lessBy(1), says: saysRoundedDown},
			{of: fixed(math.Ceil(count / math.Ceil(usable.Inches()/side.Inches()))), says: "That takes one square too many from a strip: only whole ones fit."},
			{values: with(values, "side", ofLength(side+2*d.conv.Seam)), says: "That adds seams to a size that is cut already."},
			{of: func(s solution) float64 { return s.value("per_strip") }, says: "That is how many one strip gives."},
		},
	}
}

func clothForSquares(d draw) exercise {
	values, text := squaresSet(d)
	count, side := float64(values["pieces"].Count), d.in(values["side"].Length)
	usable := d.in(values["usable_width"].Length)
	return exercise{
		topic: "yardage", values: values, figure: "buy", line: "buy", ask: text + " How much fabric is that to buy?",
		slips: []slip{
			{of: lessBy(d.buyStep()), says: saysRoundedDown},
			{of: fixed(d.cloth(d.lengthOf(count * side * side / usable))), says: "That goes by area alone; squares come in whole strips."},
			{values: with(values, "side", ofLength(values["side"].Length+2*d.conv.Seam)), says: "That adds seams to a size that is cut already."},
			{of: func(s solution) float64 { return d.cloth(d.lengthOf(s.value("length") - side)) }, says: "That is a strip short: strips are counted up."},
		},
	}
}

// lengthOf gives that many of the unit of the system as a length.
func (d draw) lengthOf(v float64) measure.Length { return measure.Length(v * float64(d.unit())) }

func squaresFromCloth(d draw) exercise {
	side := d.length(span{2, 6, 0.5}, span{5, 15, 0.5})
	return fromCloth(d, map[string]Value{"side": ofLength(side)}, measure.Size{Width: side, Length: side}, d.show.format("squares of %v", side))
}

func rectanglesFromCloth(d draw) exercise {
	wide := d.length(span{2, 4, 0.5}, span{5, 10, 0.5})
	piece := measure.Size{Width: wide, Length: wide + d.length(span{1, 4, 0.5}, span{2, 10, 0.5})}
	e := fromCloth(d, map[string]Value{"size": ofSize(piece.Width, piece.Length)}, piece, d.show.format("rectangles of %v, all lying the same way, whichever way is better,", piece))
	e.slips = append(e.slips,
		slip{values: with(e.values, "print", ofWordSaid("one-way")), says: "Turned the other way more of them fit."})
	return e
}

// fromCloth asks how many pieces, as cut, a piece of fabric gives.
func fromCloth(d draw, values map[string]Value, piece measure.Size, pieces string) exercise {
	cloth := measure.Size{Width: d.length(span{18, 24, 1}, span{45, 60, 5}), Length: d.length(span{20, 40, 1}, span{50, 100, 5})}
	values["from"] = ofSize(cloth.Width, cloth.Length)
	across, down := cloth.Width.Inches()/piece.Width.Inches(), cloth.Length.Inches()/piece.Length.Inches()
	return exercise{
		topic: "pieces", values: values, figure: "pieces", noun: "piece", line: " pieces",
		ask: d.show.format("How many %s does a piece of fabric of %v give, cut as they are?", pieces, cloth),
		slips: []slip{
			{of: fixed(math.Floor(across * down)), says: "That goes by area alone; only whole pieces fit each way."},
			{of: fixed(math.Ceil(across) * math.Ceil(down)), says: "That is rounded up: only whole pieces fit."},
		},
	}
}
