package commands

import (
	"strings"

	"counterhand/commands/scene"
	"counterhand/commands/words"
)

// The concepts that ask to see or to print what an answer is about.
const (
	pictureWord words.Concept = "picture"
	sheetWord   words.Concept = "sheet to print"
)

// showTerms are mostly phrases: "print", "sheet" and "draw" alone are also
// words for fabric, bedding and lots.
var showTerms = []words.Term{
	{Concept: pictureWord, Words: "picture, drawing, diagram, sketch, illustration, show me, show it, show that, show me that, show me it, show a picture, show the picture, show pictures, show me a picture, show me the picture, show me a drawing, send a picture, with a picture, picture please, draw it, draw that, draw this, draw me that, draw me a picture, draw a picture, sketch it, see it, see a picture, see the picture, can i see it, can i see that, what does it look like, what does that look like, what would it look like, what will it look like, how does it look, how will it look, how would it look, look like, looks like"},
	{Concept: sheetWord, Words: "print it, print that, print this, print it out, print that out, print them, print the sheet, print a sheet, print the template, print a template, print the templates, to print, sheet to print, something to print, printable, printout, print out, cutting sheet, cut sheet, the sheet, a sheet, sheet please, worksheet, pdf, as a pdf, true size, template to print, template please, the template please, printable template, full size template, full size templates, paper template, paper pattern, on paper"},
}

// asksToSee tells whether the text says no more than that a picture or
// something to print is wanted of what was answered last.
func (c *conversation) asksToSee() bool {
	return len(c.split) == 0 && c.has(pictureWord, sheetWord, template) &&
		c.only(pictureWord, sheetWord, template, andThen, makeIt, thanks, yes, cutVerb)
}

// showLast answers the last request again, in the words of its pictures, so
// that they come along where pictures can be shown and are told where not.
func (c *conversation) showLast() Reply {
	prints := !c.has(pictureWord)
	tokens := c.text.Tokens
	c.system = c.unitsNow()
	c.text.Tokens = nil
	r := c.again("")
	c.text.Tokens = tokens
	if r.Outcome != Answer {
		return r
	}
	lines := []string{firstLine(r.Text)}
	if prints {
		r.ToPrint = true
		lines = append(lines, sayTemplates(r)...)
	} else {
		lines = append(lines, sayPictures(r.Scenes)...)
	}
	r.Text = strings.Join(lines, "\n")
	return r
}

// mostTold is how many pictures are told in words.
const mostTold = 4

// sayPictures tells what is in the pictures.
func sayPictures(scenes []scene.Source) []string {
	if len(scenes) == 0 {
		return []string{`There is nothing to draw in this one. Say "show the working" for the sums.`}
	}
	var lines []string
	for _, source := range scenes[:min(len(scenes), mostTold)] {
		lines = append(lines, "Picture: "+source().Alt)
	}
	return append(lines, "In a chat the picture comes with this; in a terminal start me with --files and a folder, and it is put there.")
}

// sayTemplates tells what there is to print.
func sayTemplates(r Reply) []string {
	var lines []string
	for _, source := range r.Templates {
		lines = append(lines, "To print: "+source().Alt)
	}
	switch {
	case len(lines) > 0:
		lines = append(lines, "Print at 100 %, and measure the check squares before you cut round anything.")
	case !r.Printable():
		return []string{"There is nothing to print for this one."}
	default:
		lines = append(lines, "There is no template in this one; the cutting sheet lists what to cut.")
	}
	return append(lines, "In a chat the sheet comes with this; in a terminal start me with --files and a folder, and it is put there.")
}
