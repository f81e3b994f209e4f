package commands

import (
	"maps"
	"slices"

	"counterhand/calc/measure"
	"counterhand/commands/words"
)

const (
	mineIs        words.Concept = "mine"
	alwaysWord    words.Concept = "always"
	settingWord   words.Concept = "setting"
	forgetSetting words.Concept = "forget a setting"
	showSettings  words.Concept = "show settings"
	setVerb       words.Concept = "set"
	scantSeam     words.Concept = "scant seam"
	inUS          words.Concept = "US"
	inUK          words.Concept = "UK"
	inEU          words.Concept = "EU"
	inAU          words.Concept = "AU"
)

// countryWords are the choices of a country.
var countryWords = map[words.Concept]string{inUS: "US", inUK: "UK", inEU: "EU", inAU: "AU"}

// settingsTopic: what a person has set, and setting it by talking.
func settingsTopic() Topic {
	return Topic{
		Name: "settings", Group: AroundIt, Title: "your own habits: fabric width, seam, units, binding strips", Alone: true,
		Terms: []words.Term{
			{Concept: mineIs, Words: "my cloth, my cloth is, my material is, my cotton is, my fabric, my fabric is, my fabric gives, my fabric measures, mine is, mine are, i use, i sew, i always cut, i work in, i cut my binding, i live in, i'm in, my seam, my seams, my template, my strips are always, i think in, i measure in"},
			{Concept: alwaysWord, Words: "always, from now on, only today, today only, for today, every time, by default, permanently, remember, remember that, note that, in future, in the future"},
			{Concept: settingWord, Words: "setting, my settings, preference, default setting, my defaults"},
			{Concept: forgetSetting, Words: "forget that, forget everything, forget it all, forget all, forget my settings, forget my fabric, forget what i set, forget what i told you, unset, back to the defaults, back to defaults, back to the usual, forget my seam, clear my settings, forget the fabric, forget my width, reset my settings"},
			{Concept: showSettings, Words: "what have i set, what did i set, which settings did i change, what do you know about me, what do you remember, what settings, my settings please, show my settings, what you have stored, show me what you have stored, what have you stored, show what i set, what are my settings, what have i told you, what do you know of me, what do you have on me, what did i change, what have i changed"},
			{Concept: setVerb, Words: "set my, set seam, set the, set usable, set units, set binding, set fabric, keep my"},
			{Concept: scantSeam, Words: "scant seam, scant quarter, scant quarter inch, scant quarter inch seam, scant"},
			{Concept: inUS, Words: "us, usa, american, in america, america, in the us, united states"},
			{Concept: inUK, Words: "uk, british, in britain, england, britain, in the uk, english size, scotland, wales"},
			{Concept: inEU, Words: "eu, europe, european, in europe, continental, germany, german, france, french, netherlands, dutch"},
			{Concept: inAU, Words: "au, australia, australian, aussie, in australia, nz, new zealand"},
		},
		Says: append(append(says(9, settingWord, showSettings, forgetSetting), says(named, alwaysWord, setVerb)...), append(says(5, mineIs, inMetric, inInches, scantSeam), against(howMany, howMuch, canGet)...)...),
		Inputs: []input{
			{name: "usable_width", kind: aLength, usual: [2]float64{36, 120}, least: 20, after: of(fabric, usable, wide), before: of(usable, fabric, mineIs, wide), not: of(seam, bindingWord), label: "the width of your fabric"},
			{name: "seam", kind: aLength, usual: [2]float64{0.1, 0.7}, after: of(seam), before: of(seam, mineIs), label: "your seam"},
			{name: "binding_strip", kind: aLength, usual: [2]float64{1, 4}, after: of(bindingWord, strip), before: of(bindingWord), label: "your binding strips"},
			{name: "narrow_end", kind: aLength, usual: [2]float64{0.4, 2.5}, after: of(narrowEnd), before: of(narrowEnd, template), label: "your template's narrow end"},
			{name: "overage", kind: aLength, usual: [2]float64{0.5, 10}, after: of(overage, eachSide), before: of(overage), label: "what goes over on each side"},
			{name: "units", kind: aWord, words: map[words.Concept]string{inMetric: "metric", inInches: "imperial", unitCm: "metric", unitIn: "imperial"}},
			{name: "country", kind: aWord, words: countryWords},
			{name: "wants", kind: aWord, words: map[words.Concept]string{showSettings: "show", settingWord: "show", forgetSetting: "forget"}},
			{name: "scant", kind: aWord, words: map[words.Concept]string{scantSeam: "scant"}},
		},
		Examples: []string{"my fabric is 43 wide", "what have I set"},
		Source:   "what you tell me; the shop's defaults stand where you tell me nothing.",
		Work:     workSettings,
	}
}

func workSettings(w *work) error {
	switch {
	case w.word("wants") == "forget":
		return forgetSettings(w)
	case w.setAll():
		return nil
	case w.given("scant"):
		w.say("Good: a scant quarter is what the sums want. The thread or two that you take less is used up by the fold, so cut sizes stay as they are.")
		return nil
	case w.word("wants") == "show":
		return showAll(w)
	}
	return &question{text: "What shall I remember? For example: my fabric is 43 wide, or: always metric.", choices: []string{"my fabric is 43 wide", "always metric"}}
}

// setAll keeps every setting that the text gives, and tells whether there was one.
func (w *work) setAll() bool {
	own := maps.Clone(w.conversation.own)
	if own == nil {
		own = Settings{}
	}
	changed := false
	for _, def := range settings {
		v, ok := w.value(def.name)
		if !ok {
			continue
		}
		changed = true
		if def.kind == aWord {
			own[def.name] = v.Word
			w.figure(def.name, v.Word)
			w.say("Noted: %s from now on.", settingWords(def, v.Word))
			continue
		}
		if v.Length < def.min || v.Length > def.max {
			w.say("I left %s as it was: it goes from %v to %v.", readable(def.name), def.min, def.max)
			continue
		}
		own[def.name] = exactWords(v.Length)
		w.figure(def.name, v.Length)
		w.say("Noted: %s from now on.", w.format(def.say, v.Length))
	}
	if changed {
		w.conversation.own = own
		w.say(`Say "forget that" to go back to the shop's own.`)
	}
	return changed
}

// settingWords says a setting of words.
func settingWords(def setting, word string) string {
	switch {
	case def.name == "units" && word == "metric":
		return "centimetres and metres"
	case def.name == "units":
		return "inches and yards"
	case def.name == "country":
		return word + " mattress sizes and words"
	}
	return readable(def.name) + " " + word
}

// exactWords writes a length so that it is read back as it was.
func exactWords(l measure.Length) string {
	if l.IsOn(measure.Inch / 64) {
		return l.Show(measure.Imperial)
	}
	return trimmed(l.In(measure.Millimetre), 6) + " mm"
}

// forgetSettings drops the settings that the text names, or all of them.
func forgetSettings(w *work) error {
	own := w.conversation.own
	if len(own) == 0 {
		w.say("You have set nothing; the shop's own values hold.")
		return nil
	}
	w.conversation.own = Settings{}
	names := slices.Sorted(maps.Keys(own))
	for i, n := range names {
		names[i] = readable(n)
	}
	w.say("Forgotten: %s. The shop's own values hold again.", andList(names))
	return nil
}

// showAll lists what the person has set.
func showAll(w *work) error {
	own := w.conversation.own
	if len(own) == 0 {
		w.say("You have set nothing. I reckon with the shop's own: %v of usable fabric and %v seams, in %s.",
			w.defaults.Lengths["usable_width"], w.defaults.Lengths["seam"], settingWords(setting{name: "units"}, w.defaults.System.String()))
		return nil
	}
	var parts []string
	for _, name := range slices.Sorted(maps.Keys(own)) {
		def, ok := settingNamed(name)
		if !ok {
			continue
		}
		l, word, err := def.parse(own[name])
		switch {
		case err != nil:
			continue
		case def.kind == aWord:
			w.figure(name, word)
			parts = append(parts, settingWords(def, word))
		default:
			w.figure(name, l)
			parts = append(parts, w.format(def.say, l))
		}
	}
	w.say("You have set %s. Everything else is the shop's own.", andList(parts))
	return nil
}
