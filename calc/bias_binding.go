package calc

import (
	"cmp"
	"math"

	"counterhand/calc/measure"
)

// biasSeams is what the seams of a square cost that is joined into a tube for
// one long bias strip: two seams of ¼ in on both edges.
const biasSeams = measure.Inch

// BiasBindingRequest asks for the square that a long bias strip is cut from.
type BiasBindingRequest struct {
	Conventions
	Edge       Edge           // to bind, or the length itself
	Extra      measure.Length // beyond the edge, 0 where the length itself is given
	StripWidth measure.Length
	Have       measure.Cloth // in hand, 0 where not said
}

// BiasBindingResult gives the square, and separate strips as the other way.
type BiasBindingResult struct {
	Perimeter    measure.Length
	LengthNeeded measure.Length
	SquareSide   measure.Length // up to a half inch, or a whole centimetre
	Squares      int            // more than one where one would be wider than the fabric
	LengthMade   measure.Length // that the squares really make, down to the nanometre
	Need         measure.Length
	Buy          measure.Cloth
	Separate     BiasStrips
	Cloth        ClothCheck // where fabric in hand was given: enough for the squares
	Working      []Step
}

// BiasStrips are strips cut one by one across the whole width of the fabric at
// 45°, joined on their slanting ends.
type BiasStrips struct {
	Count  int
	Length measure.Length // of each along its edge, U·√2
	Along  measure.Length // of the selvage that the strips take, w·√2 each
	Need   measure.Length // of fabric: along the selvage, and once its width for the slant
}

// BiasBinding gives the smallest square q with q(q − 1 in)/w at least the
// length: the area of the square less the seams of its tube, in strips of w.
// Source: http://www.quiltersinfo.com/QuestionOfTheWeek/2003/0714.html for the
// area; geometry for the seams.
func BiasBinding(r BiasBindingRequest) (BiasBindingResult, error) {
	err := cmp.Or(r.check(), r.Edge.check(), wantLength("strip_width", r.StripWidth), wantSpare("extra", r.Extra),
		wantCloth(r.Have))
	if err != nil {
		return BiasBindingResult{}, err
	}
	b := BiasBindingResult{Perimeter: r.Edge.Perimeter, LengthNeeded: r.Edge.Perimeter + r.Extra}
	for b.Squares = 1; ; b.Squares++ {
		n := measure.Length(b.Squares)
		each := (b.LengthNeeded + (n-1)*r.StripWidth + n - 1) / n // one diagonal join between squares
		b.SquareSide = r.square(each)
		if b.SquareSide <= r.UsableWidth {
			break
		}
		if b.Squares == mostBiasSquares {
			return BiasBindingResult{}, limit("usable_width",
				step("%v of bias strip takes more than %v squares of fabric %v wide.", b.LengthNeeded, mostBiasSquares, r.UsableWidth),
				step("Wider fabric, or a shorter strip, works."))
		}
	}
	n := measure.Length(b.Squares)
	b.LengthMade = n*biasLength(b.SquareSide, r.StripWidth) - (n-1)*r.StripWidth
	b.Need = n * b.SquareSide
	b.Buy = r.BuyUp(b.Need)
	b.Cloth = checkCloth(r.Have, b.Need)
	b.Separate = r.separate(b.LengthNeeded)
	b.Working = r.working(b)
	return b, nil
}

// mostBiasSquares is the number of squares beyond which nobody cuts bias.
const mostBiasSquares = 20

// square is the smallest square on the step that makes a length.
func (r BiasBindingRequest) square(length measure.Length) measure.Length {
	in := float64(biasSeams)
	q := measure.Length((in + math.Sqrt(in*in+4*float64(length)*float64(r.StripWidth))) / 2).RoundDown(r.GroundStep)
	q = max(q, biasSeams.RoundUp(r.GroundStep)) - r.GroundStep
	for biasLength(q, r.StripWidth) < length {
		q += r.GroundStep
	}
	return q
}

// biasLength is the length of bias strip that a square really makes, down to
// the nanometre.
func biasLength(square, strip measure.Length) measure.Length {
	if square <= biasSeams {
		return 0
	}
	return mulDivDown(square, square-biasSeams, strip)
}

// separate counts strips cut one by one: each is U·√2 long, a join costs a
// strip width, and each takes w·√2 of the selvage.
// Source: geometry, as in https://www.quiltingboard.com/8276918-post1.html.
func (r BiasBindingRequest) separate(length measure.Length) BiasStrips {
	each := diagonals(1, r.UsableWidth)
	n, err := joinedStrips(length, each, r.StripWidth)
	if err != nil {
		return BiasStrips{}
	}
	along := diagonals(n, r.StripWidth)
	return BiasStrips{Count: n, Length: each, Along: along, Need: along + r.UsableWidth}
}

func (r BiasBindingRequest) working(b BiasBindingResult) []Step {
	lines := []Step{r.Edge.working}
	if r.Extra > 0 {
		lines = append(lines, step("With %v more: %v.", r.Extra, Unrounded(b.LengthNeeded)))
	}
	if b.Squares > 1 {
		lines = append(lines, step("One square would be wider than the fabric, so %v of them share it.", b.Squares))
	}
	return append(lines,
		step("A square of %v loses %v to the seams of its tube: %v × %v ÷ %v = %v of strip.", b.SquareSide, biasSeams,
			b.SquareSide, b.SquareSide-biasSeams, r.StripWidth, Unrounded(biasLength(b.SquareSide, r.StripWidth))),
		step("%v of fabric: buy %v.", b.Need, b.Buy))
}
