package scene

import "strings"

// Sheet is what somebody takes to the cutting table: what to buy, what to cut
// in order, how to sew it together. It is printed by a surface that can, and
// [Sheet.Text] is the same for a screen reader.
type Sheet struct {
	Name     string // the file's name without its ending
	Title    string
	Lead     []string // the answer in its own words
	Sections []Section
	Pictures []Scene // after the sections on cutting
	Rests    []string
}

// Section is a part of a sheet. Pictures follow the last section that is for
// cutting.
type Section struct {
	Heading string
	ForCuts bool // belongs to buying and cutting
	Items   []Item
}

// Item is a line of a section.
type Item struct {
	Text string
	Tick bool // with a box to tick when it is done
}

// Text gives the sheet in plain lines: nothing is set in columns or by signs,
// pictures are told in words, and things to tick are numbered so that one can
// find the way back to them.
func (s Sheet) Text() string {
	var b strings.Builder
	line := func(words ...string) { b.WriteString(strings.Join(words, " ") + "\n") }
	line(s.Title)
	for _, l := range s.Lead {
		line(l)
	}
	for _, section := range s.Sections {
		line()
		line(section.Heading)
		n := 0
		for _, item := range section.Items {
			if item.Tick {
				n++
				line(number(n), item.Text)
				continue
			}
			line(item.Text)
		}
	}
	for _, p := range s.Pictures {
		line()
		line("Picture:", p.Alt)
	}
	if len(s.Rests) > 0 {
		line()
		line("What this rests on")
		for _, r := range s.Rests {
			line(r)
		}
	}
	return b.String()
}
