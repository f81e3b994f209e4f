package scene

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Answer is what a sheet is made from: an answer's parts as a person reads
// them. Its names are those of the public interface.
type Answer struct {
	Topic     string
	Title     string // over the sheet; the topic where there is none
	Text      string // the answer in words
	Figures   []Figure
	Assumed   []string // each default as a person reads it: "seam allowance ¼ in"
	Working   []string
	Reminders []string
	Scenes    []Source
}

// Figure is one result, such as "strips" or "border1.side_cut", as it is shown.
type Figure struct{ Name, Shown string }

// NewSheet makes a sheet from any answer: what to buy, what to cut part by part
// with a box to tick, how to sew and press, and what it rests on. Figures that
// are neither bought nor cut are listed as sizes to know.
func NewSheet(a Answer) Sheet {
	s := Sheet{Name: sheetName(a.Topic), Title: a.Title, Rests: restsOn(a.Assumed)}
	if s.Title == "" {
		s.Title = capital(words(a.Topic))
	}
	for _, l := range strings.Split(a.Text, "\n") {
		if l = strings.TrimSpace(l); l != "" && !slices.Contains(a.Reminders, l) && !slices.Contains(a.Assumed, l) {
			s.Lead = append(s.Lead, l)
		}
	}
	for _, source := range a.Scenes {
		s.Pictures = append(s.Pictures, source())
	}
	s.Sections = sections(a)
	return s
}

// sections puts an answer's figures and reminders where they belong.
func sections(a Answer) []Section {
	var out []Section
	add := func(heading string, forCuts bool, items ...Item) {
		if len(items) > 0 {
			out = append(out, Section{heading, forCuts, items})
		}
	}
	groups := grouped(a.Figures)
	var buy, know []Item
	var cuts []Section
	for _, g := range groups {
		b, c, k := g.split()
		buy, know = append(buy, b...), append(know, k...)
		cuts = g.cutSection(cuts, c)
	}
	add("Buy", true, buy...)
	if len(cuts) > 0 {
		cuts[0].Items = append(plainItems(reminding(a.Reminders, toCut, cutCaution)), cuts[0].Items...)
	}
	out = append(out, cuts...)
	add("Sizes to know", true, know...)
	placed := map[task]bool{toCut: len(cuts) > 0}
	topics := topicsOf(a.Topic, groups)
	for _, topic := range topics {
		how, suffix := assembly[topic], ""
		if len(topics) > 1 {
			suffix = ": " + words(topic)
		}
		if len(how.sew) > 0 {
			add("Sew"+suffix, false, append(ticked(how.sew), first(!placed[toSew], reminding(a.Reminders, toSew, ""))...)...)
			placed[toSew] = true
		}
		if len(how.press) > 0 {
			add("Press"+suffix, false, append(ticked(how.press), first(!placed[toPress], reminding(a.Reminders, toPress, ironCaution))...)...)
			placed[toPress] = true
		}
	}
	add("Take care", false, plainItems(without(a.Reminders, placed))...)
	add("The sums", false, plainItems(a.Working)...)
	return out
}

// topicsOf gives the topics whose sewing a sheet tells: the answer's own, or
// those that its parts are named for.
func topicsOf(topic string, groups []*group) []string {
	if _, known := assembly[topic]; known {
		return []string{topic}
	}
	var topics []string
	for _, g := range groups {
		part, _, _ := strings.Cut(g.part, ".")
		if _, known := assembly[part]; known && !slices.Contains(topics, part) {
			topics = append(topics, part)
		}
	}
	return topics
}

// first gives lines as items the first time, and nothing after.
func first(isFirst bool, lines []string) []Item {
	if !isFirst {
		return nil
	}
	return plainItems(lines)
}

func sheetName(topic string) string {
	if topic == "" {
		return "cutting-sheet"
	}
	return topic + "-cutting-sheet"
}

func restsOn(assumed []string) []string {
	if len(assumed) == 0 {
		return nil
	}
	return []string{"Taken: " + strings.Join(assumed, "; ") + "."}
}

// group is the figures of one part, such as one border of several.
type group struct {
	part    string // "" for the whole
	figures map[string]string
	order   []string
}

// grouped sorts figures into their parts, in the order in which they come.
func grouped(figures []Figure) []*group {
	var out []*group
	for _, f := range figures {
		part, name := "", f.Name
		if i := strings.LastIndex(f.Name, "."); i >= 0 {
			part, name = f.Name[:i], f.Name[i+1:]
		}
		i := slices.IndexFunc(out, func(g *group) bool { return g.part == part })
		if i < 0 {
			i, out = len(out), append(out, &group{part: part, figures: map[string]string{}})
		}
		if _, twice := out[i].figures[name]; !twice {
			out[i].order = append(out[i].order, name)
		}
		out[i].figures[name] = f.Shown
	}
	return out
}

// cutSection adds what is cut of a part to the sections on cutting: in one of
// its own, or, where a part is a single line, with the part's name to the
// section of such lines that goes before.
func (g *group) cutSection(sections []Section, cuts []Item) []Section {
	const plain = "Cut"
	last := len(sections) - 1
	switch {
	case len(cuts) == 0:
		return sections
	case g.part == "":
		return append(sections, Section{plain, true, cuts})
	case len(cuts) > 1:
		return append(sections, Section{plain + ": " + partName(g.part), true, cuts})
	}
	item := Item{capital(partName(g.part)) + ": " + cuts[0].Text, true}
	if last >= 0 && sections[last].Heading == plain {
		sections[last].Items = append(sections[last].Items, item)
		return sections
	}
	return append(sections, Section{plain, true, []Item{item}})
}

// partName makes words of a part's name: "border1" is "border 1".
func partName(part string) string {
	letters := strings.TrimRight(part, "0123456789")
	if digits := part[len(letters):]; letters != "" && digits != "" {
		return words(strings.ReplaceAll(letters, ".", " ")) + " " + digits
	}
	return words(strings.ReplaceAll(part, ".", " "))
}

// split tells what of the figures is bought, what is cut and what else there is.
func (g *group) split() (buy, cuts, know []Item) {
	used := map[string]bool{}
	if shown, found := g.figures["buy"]; found {
		used["buy"] = true
		text := shown
		if g.part != "" {
			text = capital(partName(g.part)) + ": " + shown
		}
		buy = append(buy, Item{text, true})
	}
	for _, c := range cutLines {
		if text, found := c.line(g.figures); found {
			cuts = append(cuts, Item{text, true})
			for _, n := range c.names() {
				used[n] = true
			}
		}
	}
	for _, n := range g.order {
		if used[n] {
			continue
		}
		text := capital(words(n)) + ": " + g.figures[n]
		if g.part != "" {
			text = capital(partName(g.part)) + ", " + words(n) + ": " + g.figures[n]
		}
		know = append(know, Item{text, false})
	}
	return buy, cuts, know
}

// cutLine says how figures that belong together are put as one thing to cut.
type cutLine struct {
	count     string // name of the figure that counts; "" where the count is fixed
	fixed     int
	one, many string
	sizes     []string // names of the sizes
	says      string   // what follows the count, with the sizes in it
}

func (c cutLine) names() []string {
	if c.count == "" {
		return c.sizes
	}
	return append([]string{c.count}, c.sizes...)
}

// line fills in the figures; it is not found where one of them is missing.
func (c cutLine) line(figures map[string]string) (string, bool) {
	n, noun := strconv.Itoa(c.fixed), c.many
	if c.count != "" {
		n = figures[c.count]
		if n == "" || n == "0" {
			return "", false
		}
	}
	if n == "1" {
		noun = c.one
	}
	sizes := make([]any, len(c.sizes))
	for i, name := range c.sizes {
		if figures[name] == "" {
			return "", false
		}
		sizes[i] = figures[name]
	}
	return n + " " + noun + fmt.Sprintf(c.says, sizes...), true
}

// cutLines are in the order of cutting: panels and strips first, the largest
// pieces before the small ones.
var cutLines = []cutLine{
	{"panels", 0, "panel", "panels", []string{"panel_length"}, ", %s long"},
	{"strips", 0, "strip", "strips", []string{"strip_width"}, ", %s wide"},
	{"times", 0, "strip", "strips", []string{"width"}, ", %s wide"},
	{"", 1, "square for the bias strips", "", []string{"square_side"}, ", %s"},
	{"", 1, "background square", "", []string{"background_square"}, ", %s"},
	{"", 2, "", "sides", []string{"side_cut"}, ", %s long"},
	{"", 2, "", "for the top and the bottom", []string{"top_cut"}, ", %s long"},
	{"long_sashes", 0, "long sash", "long sashes", []string{"long_cut"}, ", %s long"},
	{"short_sashes", 0, "short sash", "short sashes", []string{"sash_cut"}, ", %s long"},
	{"cornerstones", 0, "cornerstone", "cornerstones", []string{"strip_width"}, ", %s square"},
	{"blades", 0, "blade", "blades", []string{"blade_length", "wide_end", "narrow_end"}, ", %s long, %s at the wide end and %s at the narrow end"},
	{"", 1, "cover circle", "", []string{"cover_cut"}, ", %s across"},
	{"large_squares", 0, "large square", "large squares", []string{"large_square"}, ", %s"},
	{"small_squares", 0, "small square", "small squares", []string{"small_square"}, ", %s"},
	{"side_squares", 0, "square for the sides", "squares for the sides", []string{"side_square"}, ", %s, cut twice from corner to corner"},
	{"corner_squares", 0, "square for the corners", "squares for the corners", []string{"corner_square"}, ", %s, cut once from corner to corner"},
	{"", 1, "centre square", "", []string{"centre_cut"}, ", %s"},
	{"squares", 0, "square", "squares", []string{"square_cut"}, ", %s"},
	{"geese", 0, "rectangle for the geese", "rectangles for the geese", []string{"goose_width", "goose_height"}, ", %s by %s"},
	{"corners", 0, "square for the corners", "squares for the corners", []string{"corner_square"}, ", %s"},
	{"segments", 0, "segment", "segments", []string{"segment_width"}, ", %s wide"},
	{"count", 0, "patch", "patches", []string{"patch_width", "patch_height"}, " from pieces of %s by %s"},
	{"points", 0, "square to fold", "squares to fold", []string{"square"}, ", %s"},
}

// words makes words of a name of the interface.
func words(name string) string { return strings.NewReplacer("_", " ", "-", " ").Replace(name) }

func capital(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

func ticked(lines []string) []Item {
	items := make([]Item, len(lines))
	for i, l := range lines {
		items[i] = Item{l, true}
	}
	return items
}

func plainItems(lines []string) []Item {
	var items []Item
	for _, l := range lines {
		if l != "" {
			items = append(items, Item{l, false})
		}
	}
	return items
}

// number is how a line to tick begins in plain text.
func number(n int) string { return "Step " + strconv.Itoa(n) + ":" }
