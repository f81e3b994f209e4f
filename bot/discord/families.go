package discord

import (
	"strings"

	"counterhand/bot/discord/link"
)

// Family is a slash command for one family of calculations. What is filled in
// is put into words and asked like anything else, so that a command gives the
// same answer as a sentence, and fractions are read as they are typed.
type Family struct {
	Name        string
	Description string
	Lead        string  // words in front of the inputs
	Inputs      []Input // instead of parts
	Parts       []Family
}

// Input is one thing to fill in.
type Input struct {
	Name        string
	Description string
	Words       string // how it is said, with {} for what was filled in
	Required    bool
	Count       bool     // a whole number, from 1
	Choices     []string // the only answers
	Suggest     []string // answers to offer while it is typed
}

// longestInput is the length of one filled-in text. The whole request stays
// well under the length of a message.
const longestInput = 120

// Request puts into words what somebody filled in.
func (f Family) Request(part string, filled func(name string) string) string {
	for _, p := range f.Parts {
		if p.Name == part {
			return p.Request("", filled)
		}
	}
	words := []string{f.Lead}
	for _, in := range f.Inputs {
		if value := strings.TrimSpace(filled(in.Name)); value != "" {
			words = append(words, strings.Replace(in.Words, "{}", value, 1))
		}
	}
	return strings.Join(words, ", ")
}

func (f Family) suggestions(part, input string) []string {
	for _, p := range f.Parts {
		if p.Name == part {
			return p.suggestions("", input)
		}
	}
	for _, in := range f.Inputs {
		if in.Name == input {
			return in.Suggest
		}
	}
	return nil
}

func (f Family) definition() link.Definition {
	d := link.Definition{Name: f.Name, Description: f.Description}
	for _, p := range f.Parts {
		d.Subs = append(d.Subs, p.definition())
	}
	for _, in := range f.Inputs {
		o := link.OptionDefinition{
			Name: in.Name, Description: in.Description, Required: in.Required,
			Choices: in.Choices, Suggest: len(in.Suggest) > 0, Most: longestInput,
		}
		if in.Count {
			o.Kind, o.Least, o.Most = link.Count, 1, 100_000
		}
		d.Options = append(d.Options, o)
	}
	return d
}

// Definitions gives all slash commands.
func Definitions(families []Family) []link.Definition {
	list := []link.Definition{{
		Name:        askCommand,
		Description: "Ask anything about sizes, cutting and cloth, in your own words",
		Options: []link.OptionDefinition{{
			Name: "question", Description: "For example: binding for 54 x 68", Required: true, Most: 1500,
		}},
	}, keeperDefinition()}
	for _, f := range families {
		list = append(list, f.definition())
	}
	return list
}

// Sizes that are offered while they are typed: those that shops cut and sell.
var (
	stripWidths  = []string{"1½ in", "2 in", "2¼ in", "2½ in", "3 in", "3½ in", "4½ in", "6.5 cm"}
	fabricWidths = []string{"40 in", "42 in", "44 in", "60 in", "106 in", "110 cm", "150 cm"}
	seams        = []string{"¼ in", "scant ¼ in", "⅜ in", "½ in", "6 mm", "7.5 mm"}
	borderWidths = []string{"1½ in", "2 in", "2½ in", "3 in", "4 in", "5 in", "6 in"}
	blockSizes   = []string{"6 in", "8 in", "9 in", "10 in", "12 in", "15 in"}
	angles       = []string{"9°", "10°", "15°", "18°", "20°", "22½°", "24°", "30°"}
	cloths       = []string{"fat quarter", "long quarter", "fat eighth", "½ yd", "1 yd", "1½ yd", "2½ in strip", "10 in square"}
	quiltSizes   = []string{"36 x 45 in", "45 x 60 in", "54 x 68 in", "60 x 72 in", "90 x 95 in", "150 x 200 cm"}
)

// Inputs that several commands share.
var (
	quiltInput  = Input{Name: "quilt", Description: "Width x length of the quilt, such as 54 x 68", Words: "quilt {}", Required: true, Suggest: quiltSizes}
	fabricInput = Input{Name: "fabric", Description: "Usable width of your fabric, such as 42 in", Words: "fabric {} usable width", Suggest: fabricWidths}
	seamInput   = Input{Name: "seam", Description: "Seam allowance, if it is not ¼ in", Words: "seam allowance {}", Suggest: seams}
	blockInput  = Input{Name: "block", Description: "Finished size of the blocks, such as 12 in", Words: "{} finished blocks", Required: true, Suggest: blockSizes}
)

// Families are the families of calculations that have a command of their own.
func Families() []Family {
	return []Family{
		{Name: "binding", Description: "How much binding a quilt takes", Parts: []Family{
			{Name: "straight", Description: "Strips for binding cut straight", Lead: "binding", Inputs: []Input{
				quiltInput,
				{Name: "strip", Description: "Width of the strips, such as 2¼ in", Words: "strip width {}", Suggest: stripWidths},
				fabricInput,
			}},
			{Name: "bias", Description: "The square to cut for binding on the bias", Lead: "bias binding", Inputs: []Input{
				{Name: "length", Description: "Length of binding needed, such as 300 in", Words: "{} long", Required: true},
				{Name: "strip", Description: "Width of the strips, such as 2¼ in", Words: "strip width {}", Suggest: stripWidths},
			}},
		}},
		{Name: "backing", Description: "How much backing or batting a quilt takes", Parts: []Family{
			{Name: "fabric", Description: "Backing, pieced or from wide fabric", Lead: "backing", Inputs: []Input{quiltInput, fabricInput,
				{Name: "extra", Description: "How much larger on each side, such as 4 in", Words: "{} extra on each side", Suggest: []string{"2 in", "3 in", "4 in", "6 in", "10 cm"}},
			}},
			{Name: "batting", Description: "Size of the batting", Lead: "batting", Inputs: []Input{quiltInput,
				{Name: "extra", Description: "How much larger on each side, such as 4 in", Words: "{} extra on each side", Suggest: []string{"2 in", "3 in", "4 in", "6 in", "10 cm"}},
			}},
		}},
		{Name: "borders", Description: "Borders round a quilt top", Lead: "borders", Inputs: []Input{
			{Name: "width", Description: "Finished width; several from the inside out, such as 1, 2½ and 4 in", Words: "{} wide finished", Required: true, Suggest: borderWidths},
			{Name: "centre", Description: "Width x length of the centre, such as 50 x 60", Words: "centre {}", Required: true, Suggest: quiltSizes},
			{Name: "corners", Description: "How the corners are made", Words: "{} corners", Choices: []string{"butted", "mitred"}},
			fabricInput,
		}},
		{Name: "blades", Description: "Rings of wedges: counts, sizes and strips", Parts: []Family{
			{Name: "ring", Description: "Size of a ring and of its opening", Lead: "ring", Inputs: []Input{
				{Name: "blades", Description: "How many blades", Words: "{} blades", Required: true, Count: true},
				{Name: "length", Description: "Length of a blade, such as 6 in", Words: "{} long", Required: true},
				{Name: "narrow", Description: "Narrow end of the template, such as ⅞ in", Words: "narrow end {}", Suggest: []string{"¾ in", "⅞ in", "1 in"}},
				{Name: "tip", Description: "How the outer ends are made", Words: "{} ends", Choices: []string{"plain", "folded"}},
				seamInput,
			}},
			{Name: "count", Description: "How many wedges close a circle", Lead: "how many wedges make a circle", Inputs: []Input{
				{Name: "angle", Description: "Angle of the template, such as 22½°", Words: "angle {}", Required: true, Suggest: angles},
			}},
			{Name: "fit", Description: "The longest blade that a strip allows", Lead: "longest blade", Inputs: []Input{
				{Name: "angle", Description: "Angle of the template, such as 15°", Words: "angle {}", Required: true, Suggest: angles},
				{Name: "strip", Description: "Width of the strips, such as 3 in", Words: "strip width {}", Required: true, Suggest: stripWidths},
				{Name: "narrow", Description: "Narrow end of the template, such as ⅞ in", Words: "narrow end {}", Suggest: []string{"¾ in", "⅞ in", "1 in"}},
			}},
			{Name: "strips", Description: "How many strips for so many blades", Lead: "strips for blades", Inputs: []Input{
				{Name: "blades", Description: "How many blades", Words: "{} blades", Required: true, Count: true},
				{Name: "length", Description: "Length of a blade, such as 6 in", Words: "{} long", Required: true},
				{Name: "strip", Description: "Width of the strips, such as 3 in", Words: "strip width {}", Suggest: stripWidths},
				fabricInput,
			}},
		}},
		{Name: "blocks", Description: "How many blocks, sashes and setting triangles", Parts: []Family{
			{Name: "straight", Description: "Blocks for a quilt, edges level", Lead: "layout", Inputs: []Input{blockInput, quiltInput}},
			{Name: "on-point", Description: "Size of a quilt with its blocks on point", Lead: "on point layout", Inputs: []Input{blockInput,
				{Name: "across", Description: "Blocks across", Words: "{} across", Required: true, Count: true},
				{Name: "down", Description: "Blocks down", Words: "{} down", Required: true, Count: true},
			}},
			{Name: "triangles", Description: "Side and corner triangles for blocks on point", Lead: "setting triangles", Inputs: []Input{blockInput, seamInput}},
			{Name: "sashing", Description: "Strips between blocks", Lead: "sashing", Inputs: []Input{blockInput,
				{Name: "across", Description: "Blocks across", Words: "{} across", Required: true, Count: true},
				{Name: "down", Description: "Blocks down", Words: "{} down", Required: true, Count: true},
				{Name: "sash", Description: "Finished width of the sashing, such as 2 in", Words: "{} sashing", Required: true, Suggest: borderWidths},
				{Name: "corners", Description: "Squares where sashes meet", Words: "{}", Choices: []string{"with cornerstones", "without cornerstones"}},
			}},
		}},
		{Name: "units", Description: "Triangle units, flying geese and the like", Parts: []Family{
			{Name: "half-square", Description: "Half-square triangles", Lead: "half-square triangles", Inputs: []Input{
				{Name: "size", Description: "Finished size, such as 3 in", Words: "{} finished", Required: true, Suggest: blockSizes},
				{Name: "units", Description: "How many", Words: "{} units", Count: true},
				{Name: "method", Description: "How many come from one pair of squares", Words: "{}", Choices: []string{"two at a time", "four at a time", "eight at a time"}},
			}},
			{Name: "quarter-square", Description: "Quarter-square triangles", Lead: "quarter-square triangles", Inputs: []Input{
				{Name: "size", Description: "Finished size, such as 4 in", Words: "{} finished", Required: true, Suggest: blockSizes},
				{Name: "units", Description: "How many", Words: "{} units", Count: true},
			}},
			{Name: "geese", Description: "Flying geese", Lead: "flying geese", Inputs: []Input{
				{Name: "size", Description: "Finished height x width, such as 3 x 6", Words: "{} finished", Required: true, Suggest: []string{"2 x 4 in", "3 x 6 in", "4 x 8 in"}},
				{Name: "units", Description: "How many", Words: "{} geese", Count: true},
				{Name: "method", Description: "How they are made", Words: "{}", Choices: []string{"one at a time", "four at a time"}},
			}},
		}},
		{Name: "cloth", Description: "How much cloth, and how many pieces from it", Parts: []Family{
			{Name: "buy", Description: "Cloth for so many pieces", Lead: "yardage for", Inputs: []Input{
				{Name: "pieces", Description: "How many pieces", Words: "{} pieces", Required: true, Count: true},
				{Name: "size", Description: "Size as cut, such as 5½ in or 2½ x 6½ in", Words: "cut {}", Required: true},
				fabricInput,
			}},
			{Name: "pieces", Description: "Pieces from the cloth in hand", Lead: "how many pieces", Inputs: []Input{
				{Name: "size", Description: "Size as cut, such as 5 in or 2½ x 6½ in", Words: "{} squares or rectangles", Required: true},
				{Name: "from", Description: "The cloth in hand, such as a fat quarter", Words: "from a {}", Required: true, Suggest: cloths},
				fabricInput,
			}},
			{Name: "convert", Description: "A length in another unit", Lead: "convert", Inputs: []Input{
				{Name: "length", Description: "Such as ⅝ yd or 30 cm", Words: "{}", Required: true},
				{Name: "into", Description: "The unit wanted", Words: "in {}", Required: true, Choices: []string{"inches", "yards", "cm", "metres", "mm"}},
			}},
		}},
		{Name: "bed", Description: "Size of a quilt for a bed", Lead: "quilt size for a bed", Inputs: []Input{
			{Name: "bed", Description: "Its name or its size, such as queen or 60 x 80", Words: "{}", Required: true, Suggest: []string{"cot", "twin", "full", "queen", "king", "UK single", "UK double", "UK king"}},
			{Name: "drop", Description: "How far it hangs down, such as 12 in", Words: "{} drop", Suggest: []string{"10 in", "12 in", "14 in", "30 cm"}},
		}},
	}
}
