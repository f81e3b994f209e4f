package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/words"
)

// The concepts of a ring that does not lie flat.
const (
	ruffles  words.Concept = "ruffles"
	cups     words.Concept = "cups"
	notFlat  words.Concept = "does not lie flat"
	tapering words.Concept = "tapering"
	tooWide  words.Concept = "too wide by"
)

var flatnessTerms = []words.Term{
	{Concept: ruffles, Words: "ripple, ripples, rippling, ruffle, ruffles, ruffling, wavy, waves, waving, frills, flutes, too full"},
	{Concept: cups, Words: "cups, cupping, dome, domes, doming, bowl, bowls, volcano, gapes, gap at the end, doesn't close, does not close, won't close, will not close"},
	{Concept: notFlat, Words: "doesn't lie flat, does not lie flat, won't lie flat, will not lie flat, not lie flat, not flat, isn't flat, doesn't lay flat, won't lay flat, lies uneven"},
	{Concept: tapering, Words: "taper, tapers, tapering, tapered, at the wide end only, only at the wide end, runs off"},
	{Concept: tooWide, Words: "off by, out by, too deep by, too wide by, too small by, too big by, degrees off, each off, off each, error, too deep, too shallow"},
}

// flatnessInputs are what a ring that does not lie flat may be told by.
func flatnessInputs() []input {
	return []input{
		{name: "trouble", kind: aWord, words: map[words.Concept]string{ruffles: "ruffles", cups: "cups", notFlat: "not flat"}},
		{name: "seam_error", kind: aLength, usual: [2]float64{0.01, 0.25}, after: of(tooWide, tapering, seam), before: of(tooWide, seam, tapering), when: of(ruffles, cups, notFlat, tooWide, tapering), label: "how far each seam is off"},
		{name: "angle_error", kind: anAngle, usual: [2]float64{0.05, 3}, after: of(tooWide), before: of(tooWide), when: of(tooWide), label: "how far each blade's angle is off"},
		{name: "seam_runs", kind: aWord, words: map[words.Concept]string{tapering: "tapering"}},
	}
}

// workFlatness answers why a ring does not lie flat: the error of each blade
// counts once for every blade, a seam that tapers turns both blades that it
// joins, and a seam that is evenly too deep only makes the ring smaller.
func workFlatness(w *work) error {
	angle, _ := w.value("angle")
	blades := w.count("blades")
	if blades == 0 && angle.Number > 0 {
		blades = int(float64(calc.FullTurn)/angle.Number + 0.5)
	}
	if blades == 0 {
		w.say("%s", flatnessCheck)
		w.say("Too many degrees ruffle, too few cup or gape. Tell me how many blades there are and their angle and I reckon it, like this: 24 blades of 18° ruffle.")
		return nil
	}
	each := measure.Angle(angle.Number)
	if each == 0 {
		each = calc.FullTurn / measure.Angle(blades)
	}
	errorAngle, _ := w.value("angle_error")
	r := calc.FlatnessRequest{
		Conventions: w.conventions("seam"), Groups: []calc.BladeGroup{{Blades: blades, Angle: each}}, Turn: turnOf(w),
		AngleError: measure.Angle(errorAngle.Number), SeamError: w.length("seam_error"), Tapering: w.word("seam_runs") != "",
		Length: w.length("blade_length"),
	}
	if r.Tapering && r.Length == 0 {
		return w.needs("blade_length")
	}
	f, err := calc.Flatness(r)
	if err != nil {
		return err
	}
	w.figure("blades", f.Blades)
	w.figure("angle", each)
	w.figure("covered", f.Covered)
	w.figure("miss", f.Miss)
	switch f.Lie {
	case calc.Ruffles:
		w.say("%v blades of %v come to %v, %v too many: the ring ruffles.", blades, each, f.Covered, f.Miss)
	case calc.Cups:
		w.say("%v blades of %v come to %v, %v short: the ring cups, or gapes where it should close.", blades, each, f.Covered, -f.Miss)
	default:
		w.say("%v blades of %v close by their angles, so it is the sewing.", blades, each)
	}
	switch {
	case r.SeamError > 0 && !r.Tapering:
		w.figure("across_change", f.AcrossChange)
		w.say("A seam that is %v too deep all along leaves the ring flat and makes it %v smaller across.", r.SeamError, f.AcrossChange)
	case len(f.Closing) > 0 && f.Lie != calc.LiesFlat:
		w.say("It closes with %s.", nearestAngles(w, f.Closing))
	}
	if f.SeamAtWide != 0 {
		w.say("To mend it in the sewing, each seam has to be %v %s at the wide end than at the narrow end.", max(f.SeamAtWide, -f.SeamAtWide), deeperOr(f.SeamAtWide))
	} else {
		w.say("Half a degree on each of %v blades is already %v: one deep or shallow seam end does it.", blades, measure.Angle(blades)/2)
	}
	w.say("%s", flatnessCheck)
	w.show(f.Working)
	w.does(machineSewing)
	return nil
}

// flatnessCheck is how to find the fault.
const flatnessCheck = "Lay a quarter of the blades against a square corner: if it is too full or too small there, the angle is off or the seams taper; if it fits and the ring is only small, the seams are evenly too deep."

func deeperOr(l measure.Length) string {
	if l < 0 {
		return "shallower"
	}
	return "deeper"
}
