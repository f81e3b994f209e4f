package calc

import "counterhand/calc/measure"

// arcLength gives the length of an arc: radius × angle.
func arcLength(radius measure.Length, a measure.Angle) measure.Length {
	return scaled(radius, a.Radians())
}
