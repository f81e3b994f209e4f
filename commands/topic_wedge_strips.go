package commands

import (
	"counterhand/calc"
	"counterhand/calc/measure"
	"counterhand/commands/scene"
	"counterhand/commands/words"
)

const headToTail words.Concept = "head to tail"

// wedgeStripsTopic: the strips that a number of blades is cut from.
func wedgeStripsTopic() Topic {
	return Topic{
		Name: "wedge-strips", Family: "wedges", Group: CutIt, Title: "the strips that a number of blades takes",
		Terms: []words.Term{
			{Concept: headToTail, Words: "head to tail, head to toe, top to tail, up and down, turned alternately, turning every other, alternating, nested, across the strip, crosswise"},
		},
		About: of(blade),
		Says:  append(append(says(4, blade, strip), says(3, headToTail, along, howMuch)...), says(2, long, fromWord, buyWord, yardageWord)...),
		Asks:  says(5, strip, fatQuarter, stripPack),
		Inputs: []input{
			{name: "blades", kind: aCount, usual: [2]float64{8, 1000}, after: of(blade, ofThem), before: of(need, blade), prior: 2, label: "the number of blades", ask: "How many blades do you need?", offer: []string{"20 blades", "96 blades"}},
			{name: "blade_length", kind: aLength, usual: [2]float64{2, 24}, after: of(long, blade), before: of(long, blade), prior: 2, not: of(narrowEnd, wideEnd, strip, wide), label: "the length of the blades", ask: "How long are the blades?", offer: []string{"5 in", "6 in"}},
			{name: "strip_width", kind: aLength, usual: [2]float64{1.5, 14}, after: of(strip, wide), before: of(strip, fromWord), prior: 1, not: of(long), label: "the strip"},
			{name: "strip", kind: aSize, after: of(strip), before: of(strip, fromWord, along), prior: 1, label: "the strip"},
			narrowEndInput(), bladeAngle(),
			{name: "wide_end", kind: aLength, usual: [2]float64{1, 10}, after: of(wideEnd), before: of(wideEnd), label: "the wide end"},
			{name: "lie", kind: aWord, words: map[words.Concept]string{along: "along", headToTail: "head to tail"}},
			{name: "source", kind: aWord, words: map[words.Concept]string{fatQuarter: "fat quarter"}},
			stripsInHand(),
			{name: "plates", kind: aCount, after: of(ring), label: "the rings"},
			oneWayPrint(), usableWidth(), clothInHand(),
		},
		Needs:    [][]string{{"blades"}, {"blade_length"}},
		Examples: []string{"96 blades 6 in long from 3 in strips", "20 blades of 18°, 5 in long, head to tail"},
		Source:   "blades along a strip: strip length divided by blade length, whole blades only (luannsloosethreads.blogspot.com, March 2011); head to tail is geometry.",
		Work:     workWedgeStrips,
		Other:    otherLie,
	}
}

// otherLie turns the blades along or across the strip.
func otherLie(now, before map[string]Value) {
	word := "head to tail"
	if before["lie"].Word == word {
		word = "along"
	}
	now["lie"] = Value{Kind: aWord, Word: word}
}

func workWedgeStrips(w *work) error {
	angle, _ := w.value("angle")
	r := calc.WedgeStripsRequest{
		Blades: w.count("blades"), Length: w.length("blade_length"), Strip: w.length("strip_width"),
		Narrow: w.length("narrow_end"), Wide: w.length("wide_end"), Angle: measure.Angle(angle.Number),
		OneWay: w.word("print") != "", HaveStrips: w.count("have_strips"), HaveCloth: measure.Cloth(w.length("have")),
	}
	if v, ok := w.value("strip"); ok {
		r.Strip, r.StripLength = v.Size.Width, v.Size.Length
		if r.Strip > r.StripLength {
			r.Strip, r.StripLength = r.StripLength, r.Strip
		}
		r.Conventions = w.conventions()
	} else {
		r.Conventions = w.conventions("usable_width")
	}
	if n := w.count("plates"); n > 0 && w.values["blades"].Each {
		w.say("%v blades for each of the %v rings: %v in all.", r.Blades, n, r.Blades*n)
		r.Blades *= n
	}
	if w.word("source") == "fat quarter" {
		return workBladesFromQuarters(w, r)
	}
	switch w.word("lie") {
	case "along":
		r.Layout = calc.AlongStrip
	case "head to tail":
		r.Layout = calc.HeadToTail
	}
	if (r.Layout == calc.HeadToTail || r.Strip == 0) && r.Wide == 0 {
		if r.Angle == 0 {
			return w.needs("angle")
		}
		if r.Narrow == 0 {
			r.Narrow = w.assumeLength("narrow_end")
		}
	}
	s, err := calc.WedgeStrips(r)
	if err != nil {
		return err
	}
	if r.Wide > 0 || r.Narrow > 0 && r.Angle > 0 { // the blade's shape is known
		w.draws(func() scene.Scene { return scene.BladesOnStrip(s, w.system) })
	}
	w.figure("blades_per_strip", s.BladesPerStrip)
	w.figure("strips", s.Strips)
	w.figure("strip_width", s.StripWidth)
	w.figure("buy", s.Buy)
	w.enoughCount(s.Hand, "strip")
	w.enoughCloth(s.Cloth)
	w.say("%v, %v wide, with %v blades from each: buy %v.", counted(s.Strips, "strip"), s.StripWidth, s.BladesPerStrip, s.Buy)
	line := w.format("The blades lie %s.", lying(s.Layout))
	if s.SpareBlades > 0 {
		line += w.format(" The last strip would give %v more.", s.SpareBlades)
	}
	if s.Strips > 1 && s.OneFewerShort > 0 {
		line += w.format(" %v would be %v short.", counted(s.Strips-1, "strip"), counted(s.OneFewerShort, "blade"))
	}
	w.say("%s", line)
	for i, o := range s.WiderCloth {
		if i == 0 {
			w.say("With %v fabric %v are enough.", o.Usable, o.Strips)
		}
	}
	if o := s.Other; o != nil {
		w.say("%s it would take %v, %v wide: %v.", capital(lying(o.Layout)), counted(o.Strips, "strip"), o.StripWidth, o.Buy)
	}
	if n := w.count("plates"); n > 0 && !w.values["blades"].Each && r.Blades%n == 0 {
		w.say("That is %v blades for each of the %v rings.", r.Blades/n, n)
	}
	w.show(s.Working)
	w.does(cutting)
	return nil
}

// lying says how blades lie on their strip.
func lying(l calc.BladeLayout) string {
	switch l {
	case calc.HeadToTail:
		return "across the strip, head to tail"
	case calc.AllOneWay:
		return "across the strip, all the same way up"
	}
	return "along the strip"
}

// workBladesFromQuarters counts the fat quarters for blades: strips are cut
// along the longer side of each.
func workBladesFromQuarters(w *work, r calc.WedgeStripsRequest) error {
	quarter := w.conventions("usable_width").FatQuarter()
	if r.Strip == 0 {
		if r.Angle == 0 {
			return w.needs("angle")
		}
		if r.Narrow == 0 {
			r.Narrow = w.assumeLength("narrow_end")
		}
	}
	r.StripLength = max(quarter.Width, quarter.Length)
	across := min(quarter.Width, quarter.Length)
	s, err := calc.WedgeStrips(r)
	if err != nil {
		return err
	}
	perQuarter := int(across/s.StripWidth) * s.BladesPerStrip
	if perQuarter == 0 {
		return w.cannot("A blade %v long does not fit a fat quarter of %v.", r.Length, quarter)
	}
	quarters := (r.Blades + perQuarter - 1) / perQuarter
	if r.Wide > 0 || r.Narrow > 0 && r.Angle > 0 { // the blade's shape is known
		w.draws(func() scene.Scene { return scene.BladesOnStrip(s, w.system) })
	}
	w.figure("blades_per_cut", perQuarter)
	w.figure("cuts", quarters)
	w.figure("strip_width", s.StripWidth)
	w.say("%v: each gives %v blades.", counted(quarters, "fat quarter"), perQuarter)
	w.say("Cut each into %v of %v by %v, with %v blades in a strip, %s.", counted(int(across/s.StripWidth), "strip"), s.StripWidth, r.StripLength, s.BladesPerStrip, lying(s.Layout))
	w.show(s.Working)
	w.does(cutting)
	return nil
}
