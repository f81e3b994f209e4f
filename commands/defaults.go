package commands

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"counterhand/calc"
	"counterhand/calc/measure"
)

// Defaults are what a sum rests on where the request does not say: the shop's
// habits, with what a person has set over them. A Defaults is read only; With
// makes changed copies.
type Defaults struct {
	System  measure.System
	Inches  calc.Conventions // what results round to, and ready cuts, for people who work in inches
	Metric  calc.Conventions // the same in centimetres
	Lengths map[string]measure.Length
	Words   map[string]string
	Facts   map[string]string // about the shop: name, hours, contact
	own     map[string]bool   // what the person has set
}

// ShopDefaults are the defaults of the contract.
func ShopDefaults() Defaults {
	d := Defaults{
		Inches: calc.ImperialConventions(), Metric: calc.MetricConventions(),
		Lengths: map[string]measure.Length{}, Words: map[string]string{}, Facts: map[string]string{},
	}
	for _, s := range settings {
		if s.kind == aWord {
			d.Words[s.name] = s.word
		} else {
			d.Lengths[s.name] = s.length
		}
	}
	return d
}

// setting is one default: its name, its value in a shop that sets nothing, how
// a reply says it, and what to say to change it.
type setting struct {
	name     string
	kind     kind
	length   measure.Length
	word     string
	words    []string // the values it may take
	min, max measure.Length
	say      string // "%v of usable fabric"
	change   string
}

// eighth is the ruler's step.
const eighth = measure.Inch / 8

// settings are all defaults, with the contract's values.
var settings = []setting{
	{name: "usable_width", length: 40 * measure.Inch, min: 10 * measure.Inch, max: 130 * measure.Inch, say: "%v of usable fabric", change: `Say "fabric is 42 wide" if yours is.`},
	{name: "wide_backing", length: 106 * measure.Inch, min: 50 * measure.Inch, max: 150 * measure.Inch, say: "wide backing that gives %v", change: `Say what yours gives if it differs.`},
	{name: "seam", length: 2 * eighth, min: measure.Millimetre, max: measure.Inch, say: "%v seams", change: `Say "6 mm seams" or the like if you sew another.`},
	{name: "binding_strip", length: 20 * eighth, min: eighth * 6, max: 12 * measure.Inch, say: "binding strips cut %v", change: `Say "2¼ in strips" if you cut another width.`},
	{name: "binding_extra", length: 10 * measure.Inch, min: 0, max: 40 * measure.Inch, say: "%v for corners and the closing join", change: `Say "with 12 in extra" for more.`},
	{name: "straight_join", length: 4 * eighth, min: 0, max: 4 * measure.Inch, say: "%v lost in each straight join", change: ""},
	{name: "overage", length: 4 * measure.Inch, min: 0, max: 20 * measure.Inch, say: "%v over on each side", change: `Say "3 in each side" if your quilter wants another.`},
	{name: "panel_seam", length: 4 * eighth, min: 0, max: 2 * measure.Inch, say: "%v of seam on each panel edge", change: ""},
	{name: "narrow_end", length: 7 * eighth, min: eighth * 4, max: 6 * measure.Inch, say: "%v at the narrow end", change: "Measure your template and tell me if it differs."},
	{name: "cover_overlap", length: 2 * eighth, min: 0, max: 2 * measure.Inch, say: "%v of overlap under the cover", change: ""},
	{name: "turn_under", length: 2 * eighth, min: 0, max: measure.Inch, say: "%v to turn under", change: ""},
	{name: "margin", length: 2 * measure.Inch, min: 0, max: 40 * measure.Inch, say: "%v of background all round", change: `Say "3 in margin" for another.`},
	{name: "mitre_spare", length: 2 * measure.Inch, min: 0, max: 12 * measure.Inch, say: "%v spare at each mitred end", change: ""},
	{name: "precut_strip", length: 20 * eighth, min: eighth * 4, max: 12 * measure.Inch, say: "precut strips of %v", change: ""},
	{name: "hexagon_allowance", length: 2 * eighth, min: eighth, max: measure.Inch, say: "%v of fabric beyond the paper", change: `Say "⅜ in allowance" for another.`},
	{name: "units", kind: aWord, word: "imperial", words: []string{"imperial", "metric"}},
	{name: "country", kind: aWord, word: "US", words: []string{"US", "UK", "EU", "AU"}, say: "%v mattress sizes", change: `Say "UK" or measure the bed if yours is another.`},
	{name: "joins", kind: aWord, word: "diagonal", words: []string{"diagonal", "straight"}},
	{name: "corners", kind: aWord, word: "butted", words: []string{"butted", "mitred"}},
	{name: "stones", kind: aWord, word: "plain", words: []string{"plain", "cornerstones"}},
	{name: "outside", kind: aWord, word: "inner", words: []string{"inner", "framed"}},
	{name: "geese", kind: aWord, word: "four", words: []string{"four", "singly"}},
	{name: "blocks_that", kind: aWord, word: "cover", words: []string{"cover", "within"}},
	{name: "ends", kind: aWord, word: "plain", words: []string{"plain", "folded"}, say: "%v blade ends", change: `Say "folded tips" for pointed ones.`},
}

// SettingNames lists the names that [Settings] may hold.
func SettingNames() []string {
	names := make([]string, len(settings))
	for i, s := range settings {
		names[i] = s.name
	}
	return names
}

func settingNamed(name string) (setting, bool) {
	i := slices.IndexFunc(settings, func(s setting) bool { return s.name == name })
	if i < 0 {
		return setting{}, false
	}
	return settings[i], true
}

// Check tells what is wrong with a value for a setting: an unknown name, or a
// value outside the range, which the error names.
func (s Settings) Check() error {
	for _, name := range slices.Sorted(maps.Keys(s)) {
		def, ok := settingNamed(name)
		if !ok {
			return fmt.Errorf("%s: there is no such setting; there are %s", name, strings.Join(SettingNames(), ", "))
		}
		if _, _, err := def.parse(s[name]); err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	return nil
}

// parse reads a value and holds it against the setting's range.
func (def setting) parse(value string) (measure.Length, string, error) {
	if def.kind == aWord {
		for _, w := range def.words {
			if strings.EqualFold(w, value) {
				return 0, w, nil
			}
		}
		return 0, "", fmt.Errorf("%q is none of %s", value, strings.Join(def.words, ", "))
	}
	l, err := measure.ParseLength(value, measure.InchUnit)
	if err != nil {
		return 0, "", err
	}
	if l < def.min || l > def.max {
		return 0, "", fmt.Errorf("%s is outside %s to %s", l.Show(measure.Imperial), def.min.Show(measure.Imperial), def.max.Show(measure.Imperial))
	}
	return l, "", nil
}

// With lays settings over the defaults. Values that do not pass
// [Settings.Check] are passed over.
func (d Defaults) With(s Settings) Defaults {
	if len(s) == 0 {
		return d
	}
	d.Lengths, d.Words, d.own = maps.Clone(d.Lengths), maps.Clone(d.Words), maps.Clone(d.own)
	if d.own == nil {
		d.own = map[string]bool{}
	}
	for name, value := range s {
		def, ok := settingNamed(name)
		if !ok {
			continue
		}
		l, w, err := def.parse(value)
		switch {
		case err != nil:
			continue
		case name == "units":
			d.System = systemNamed(w)
		case def.kind == aWord:
			d.Words[name] = w
		default:
			d.Lengths[name] = l
		}
		d.own[name] = true
	}
	return d
}

func systemNamed(w string) measure.System {
	if w == "metric" {
		return measure.Metric
	}
	return measure.Imperial
}

// conventions gives the habits for the sums in the given system.
func (d Defaults) conventions(s measure.System) calc.Conventions {
	c := d.Inches
	if s == measure.Metric {
		c = d.Metric
	}
	c.UsableWidth = d.Lengths["usable_width"]
	c.WideBacking = d.Lengths["wide_backing"]
	c.Seam = d.Lengths["seam"]
	c.StraightJoin = d.Lengths["straight_join"]
	return c
}
