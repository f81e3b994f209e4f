package calc

import "counterhand/calc/measure"

// Join is how two strips become one long one.
type Join string

// The two joins. A diagonal join spreads its bulk and costs the strip's own
// width in length; a straight one costs [Conventions.StraightJoin].
const (
	DiagonalJoin Join = "diagonal"
	StraightJoin Join = "straight"
)

// loss gives the length that one join takes from strips of a width.
// Source: https://www.quiltingboard.com, thread t109880 (a diagonal join costs
// one strip width); geometry for the straight one.
func (c Conventions) loss(j Join, stripWidth measure.Length) measure.Length {
	if j == StraightJoin {
		return c.StraightJoin
	}
	return stripWidth
}

// joinedLength is what n strips make once joined: n·strip − (n−1)·loss.
func joinedLength(n int, strip, loss measure.Length) measure.Length {
	if n < 1 {
		return 0
	}
	return measure.Length(n)*strip - measure.Length(n-1)*loss
}

// joinedStrips is the smallest n whose [joinedLength] is at least need.
func joinedStrips(need, strip, loss measure.Length) (int, error) {
	if need <= strip {
		return 1, nil
	}
	if strip <= loss {
		return 0, limit("strip_width", step("Strips of %v lose %v to every join, so joining them gains nothing.", strip, loss),
			step("Strips narrower than the fabric is wide work."))
	}
	gain := strip - loss
	n := (need - loss + gain - 1) / gain
	if n > maxCount {
		return 0, limit("strips", step("More than %v strips would be needed.", maxCount), Step{})
	}
	return int(n), nil
}

// wholeStrips is the number of strips of a length that hold all pieces, none of
// them longer than a strip, each piece in one go. Pieces go to the first strip
// with room, so the maxLength should stand first: for the four sides of a frame,
// which are of two lengths, that is the least number possible.
func wholeStrips(pieces []measure.Length, strip measure.Length) int {
	var room []measure.Length
next:
	for _, p := range pieces {
		for i := range room {
			if room[i] >= p {
				room[i] -= p
				continue next
			}
		}
		room = append(room, strip-p)
	}
	return len(room)
}
