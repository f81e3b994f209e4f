package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
)

// wedgeFitTopic: the longest blade from a strip, or the strip for a blade.
func wedgeFitTopic() Topic {
	return Topic{
		Name: "wedge-fit", Family: "wedges", Group: SizeIt, Title: "the longest blade that a strip allows, or the strip that a blade needs",
		About: of(blade, template, angleWord),
		Says:  append(append(says(3, blade, longest, howLong, strip), says(2, howWide, template, narrowEnd)...), append(says(2, angleWord, along), against(opening, coverWord, ring, triangle, diamond, hexagon, railFence, fourPatch, ninePatch, halfSquare)...)...),
		Asks:  says(4, longest, howLong, howWide),
		Inputs: []input{
			{name: "strip_width", kind: aLength, usual: [2]float64{1.25, 12}, after: of(strip, wide), before: of(strip, fromWord), prior: 2, not: of(long, narrowEnd), label: "the strip",
				ask: "How wide are your strips, and what angle is the template? For example: 18° from 3 in strips.", offer: []string{"18° from 3 in strips"}},
			bladeAngle(),
			{name: "blade_length", kind: aLength, usual: [2]float64{2, 24}, after: of(long, blade), before: of(long, blade), prior: 1, not: of(narrowEnd, strip, wide, template), label: "the length of the blades"},
			narrowEndInput(),
			seamAllowance(),
		},
		Needs:    [][]string{{"strip_width", "blade_length"}, {"angle"}},
		Examples: []string{"longest 15° blade from a 3 in strip", "how wide a strip for 6 in blades of 18°, 1 in at the narrow end"},
		Source:   "a wedge widens by 2 × length × tan(angle ÷ 2): geometry.",
		Work:     workWedgeFit,
	}
}

func workWedgeFit(w *work) error {
	angle, _ := w.value("angle")
	r := calc.FitRequest{
		Conventions: w.conventions(), Angle: measure.Angle(angle.Number),
		Strip: w.length("strip_width"), Length: w.length("blade_length"),
		Narrow: w.lengthOr("narrow_end", "narrow_end"),
	}
	f, err := calc.WedgeFit(r)
	if err != nil {
		return err
	}
	w.draws(func() scene.Scene { return scene.LongestBlade(f, w.system) })
	w.figure("longest_blade", f.LongestBlade)
	w.figure("strip_width", f.StripWidth)
	w.figure("narrow_end", f.NarrowEnd)
	w.figure("angle", f.Angle)
	switch {
	case r.Strip == 0:
		w.say("The strip has to be %v wide for blades %v long.", f.StripWidth, r.Length)
	case r.Length > 0 && f.Fits:
		w.figure("enough", "yes")
		w.say("Yes: a strip of %v allows blades up to %v.", r.Strip, f.LongestBlade)
	case r.Length > 0:
		w.figure("enough", "no")
		w.say("No: a strip of %v allows blades up to %v. For %v the strip has to be %v wide.", r.Strip, f.LongestBlade, r.Length, f.StripNeeded)
	default:
		w.say("%v at the longest, cut along a strip of %v.", f.LongestBlade, f.StripWidth)
	}
	w.say("At %v the blade is %v at the narrow end and %v at the wide end.", f.Angle, f.NarrowEnd, f.WideEnd)
	w.show(f.Working)
	w.does(cutting)
	return nil
}
