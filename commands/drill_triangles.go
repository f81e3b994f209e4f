package commands

import (
	"math"

	"counterhand/calc/measure"
)

// halfSquareSet draws half-square triangles, so many at a time.
func halfSquareSet(d draw, atATime int) (map[string]Value, measure.Length) {
	finished := d.length(span{1.5, 6, 0.5}, span{4, 15, 0.5})
	return map[string]Value{"finished": ofLength(finished), "at_a_time": ofCount(atATime), "seam": ofLength(d.conv.Seam)}, finished
}

const (
	saysPlain   = "Two seams are right for a plain patch; a square cut from corner to corner needs more."
	saysSwapped = "Two allowances are swapped there: triangles with the long side outside need more than those with the short sides outside."
)

func halfSquareCut(d draw) exercise {
	values, f := halfSquareSet(d, 2)
	finished, seam := d.in(f), d.in(d.conv.Seam)
	return exercise{
		topic: "half-square-triangles", values: values, figure: "square_cut", line: "Square:",
		ask: d.show.format("Half-square triangle units finish at %v, sewn two at a time with %v seams. How large are the squares cut?", f, d.conv.Seam),
		slips: []slip{
			{of: lessBy(-d.swap()), says: saysSwapped},
			{of: fixed(finished + 2*seam), says: saysPlain},
			{of: fixed(finished + seam), says: saysOneSeam},
			{of: fixed(finished), says: saysNoSeams},
		},
	}
}

func halfSquaresEight(d draw) exercise {
	values, f := halfSquareSet(d, 8)
	allowance := d.in(d.conv.HalfSquareAllowance())
	return exercise{
		topic: "half-square-triangles", values: values, figure: "square_cut", line: "Square:",
		ask: d.show.format("Half-square triangle units finish at %v, sewn eight at a time with %v seams. How large are the squares cut?", f, d.conv.Seam),
		slips: []slip{
			{values: with(values, "at_a_time", ofCount(2)), says: "That is the square for two at a time; eight at a time take twice that."},
			{of: lessBy(allowance), says: "That adds the allowance once; there are two units side by side."},
			{of: fixed(2 * d.in(f)), says: saysNoSeams},
		},
	}
}

func halfSquareCount(d draw) exercise {
	values, f := halfSquareSet(d, 2)
	units := 4 * (2 + d.rand.IntN(20))
	values["units"], values["usable_width"] = ofCount(units), ofLength(d.fabricWidth())
	return exercise{
		topic: "half-square-triangles", values: values, figure: "squares", noun: "square", line: "units,",
		ask: d.show.format("%v half-square triangle units of %v are sewn two at a time. How many squares of each colour do they take?", units, f),
		slips: []slip{
			{of: fixed(float64(units)), says: "That counts one unit from a pair of squares; a pair gives two."},
			{of: fixed(float64(units) / 4), says: "That counts four units from a pair of squares; a pair gives two."},
		},
	}
}

// quarterSquareSet draws quarter-square triangles.
func quarterSquareSet(d draw) (map[string]Value, measure.Length) {
	finished := d.length(span{2, 8, 0.5}, span{5, 20, 0.5})
	return map[string]Value{"finished": ofLength(finished), "seam": ofLength(d.conv.Seam)}, finished
}

func quarterSquareCut(d draw) exercise {
	values, f := quarterSquareSet(d)
	finished, seam := d.in(f), d.in(d.conv.Seam)
	return exercise{
		topic: "quarter-square-triangles", values: values, figure: "square_cut", line: "Square:",
		ask: d.show.format("Quarter-square triangle units finish at %v, with %v seams. How large are the squares cut?", f, d.conv.Seam),
		slips: []slip{
			{of: lessBy(d.swap()), says: saysSwapped},
			{of: fixed(finished + 2*seam), says: saysPlain},
			{of: fixed(finished), says: saysNoSeams},
		},
	}
}

func quarterSquareUnfinished(d draw) exercise {
	values, f := quarterSquareSet(d)
	return exercise{
		topic: "quarter-square-triangles", values: values, figure: "unfinished", line: "before it is sewn in",
		ask:   d.show.format("A quarter-square triangle unit finishes at %v, with %v seams. What does it measure before it is sewn in?", f, d.conv.Seam),
		slips: seamSlips(d, d.in(f), d.in(d.conv.Seam)),
	}
}

// settingSet draws blocks on point.
func settingSet(d draw) (map[string]Value, measure.Length) {
	block := d.length(span{5, 15, 0.5}, span{12, 40, 1})
	return map[string]Value{"block": {Kind: aLength, Length: block, Cut: finishedSize}, "seam": ofLength(d.conv.Seam)}, block
}

func sideSquare(d draw) exercise {
	values, block := settingSet(d)
	return exercise{
		topic: "setting-triangles", values: values, figure: "side_square", line: "Side triangles:",
		ask: d.show.format("Blocks that finish at %v are set on point, with %v seams. How large are the squares cut for the side triangles, four from each?", block, d.conv.Seam),
		slips: []slip{
			{of: func(s solution) float64 { return s.value("diagonal") }, says: saysNoSeams},
			{of: lessBy(d.swap()), says: saysSwapped},
			{of: lessBy(d.in(d.conv.CutStep)), says: saysRoundedDown},
			{of: func(s solution) float64 { return s.value("corner_square") }, says: "That is the square for the corner triangles."},
			{of: fixed(d.in(block + d.conv.QuarterSquareAllowance())), says: "That adds to the side of the block; on point it is its diagonal that counts."},
		},
	}
}

func cornerSquare(d draw) exercise {
	values, block := settingSet(d)
	return exercise{
		topic: "setting-triangles", values: values, figure: "corner_square", line: "Corner triangles:",
		ask: d.show.format("Blocks that finish at %v are set on point, with %v seams. How large are the squares cut for the corner triangles, two from each?", block, d.conv.Seam),
		slips: []slip{
			{of: fixed(d.in(block) / math.Sqrt2), says: saysNoSeams},
			{of: lessBy(-d.swap()), says: saysSwapped},
			{of: lessBy(d.in(d.conv.CutStep)), says: saysRoundedDown},
			{of: func(s solution) float64 { return s.value("side_square") }, says: "That is the square for the side triangles."},
			{of: fixed(d.in(block + d.conv.HalfSquareAllowance())), says: "That adds to the side of the block; corners are half its diagonal on the short side."},
		},
	}
}
