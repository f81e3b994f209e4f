package commands

import (
	"counterhand/commands/words"
)

// Topic is one kind of question that people ask, declared in one file: the
// words that announce it, the inputs it takes, and how it is worked out and
// phrased.
type Topic struct {
	Name     string // the contract's name
	Group    Group  // what people do when they ask it
	Title    string // what it works out, in a few words
	Terms    []words.Term
	About    []words.Concept // of which one has to occur for the topic to be thought of; none means any may be
	Says     []signal        // concepts that speak for this topic when they occur
	Asks     []signal        // concepts that speak for it when they are what is asked for ("how many strips")
	Inputs   []input         // in the order in which they are asked for
	Needs    [][]string      // of each group of inputs one is needed
	Examples []string        // requests that work, for the help
	Source   string          // where its rule comes from
	Work     func(*work) error

	// Read takes what the topic reads by itself, such as a list, and gives the
	// values and the numbers that it used; most topics have none.
	Read func(m matcher, qs []quantity) (values map[string]Value, used []bool)

	// Begin takes the conversation over, in place of Work; only a drill does.
	Begin func(c *conversation, found candidate) Reply

	Apart    bool                               // its numbers are never a range: "9 to 12"
	Other    func(now, before map[string]Value) // turns the request to the other method, where there is one
	Family   string                             // topics of one family take up each other's inputs: count the wedges, then size their ring
	Parts    []string                           // topics that it is answered by, side by side
	Together bool                               // it can be answered side by side with others for one quilt
	Leaves   bool                               // it has no use for numbers: they are left aside and named
	Alone    bool                               // it is about the conversation and no request that could be changed
}

// Group is what people do when they ask; help lists topics by it.
type Group string

// The groups, in the order in which a quilt is made.
const (
	SizeIt   Group = "size it"
	CutIt    Group = "cut it"
	BuyIt    Group = "buy it"
	FinishIt Group = "finish it"
	AroundIt Group = "around it"
)

// signal is a concept and how strongly it speaks for something.
type signal struct {
	concept words.Concept
	weight  int
}

// says makes signals of equal weight.
func says(weight int, concepts ...words.Concept) []signal {
	out := make([]signal, len(concepts))
	for i, c := range concepts {
		out[i] = signal{c, weight}
	}
	return out
}

// against makes signals that speak against a topic.
func against(concepts ...words.Concept) []signal { return says(-8, concepts...) }

// input is one thing that a topic may be told.
type input struct {
	name     string // the contract's name where it has one
	kind     kind
	after    []words.Concept // terms that follow its number: "16 blades"
	before   []words.Concept // terms that stand before its number: "strips 2½"
	not      []words.Concept // terms beside a number that speak against it
	when     []words.Concept // only considered where the text has one of these
	prior    int             // how readily a number that nothing announces is taken for it; 0 never
	usual    [2]float64      // what it usually is, in inches or as a number; only ever decides between readings
	least    float64         // inches below which a length is never it
	anyUnit  bool            // a length that may be said in yards
	zero     bool            // nothing at all is a fair answer
	many     bool            // several may be given, in order
	replaces []string        // inputs that it stands in for when it is said later
	words    map[words.Concept]string
	unless   map[words.Concept]string // what a word means when it is denied: "no cornerstones"
	ask      string                   // the question when it is missing
	offer    []string                 // answers to offer with the question
	label    string                   // what to call it when speaking: "the narrow end"
}

// kind is what an input holds.
type kind uint8

const (
	aLength kind = iota
	aSize
	aCount
	aGrid // two counts: across and down
	anAngle
	aPercent
	aPrice
	aRate  // a price for a unit of area, which may be parts of a cent
	aCloth // a length off the bolt
	aWord
	aList // read by the topic itself
)

// spoken gives the words for the input.
func (in input) spoken() string {
	if in.label != "" {
		return in.label
	}
	return "the " + readable(in.name)
}
