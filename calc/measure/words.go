package measure

// part says what a word does within a number that is written in words.
type part uint8

const (
	noPart  part = iota
	ones         // zero to nine
	teens        // ten to nineteen
	tens         // twenty to ninety
	hundred      // multiplies what stands before it
	power        // thousand and above: multiplies and closes a group
	dozen        // multiplies the whole number
	share        // names a fraction and nothing else: half, quarter
	nth          // names a fraction or a place in a row: third, eighth
	ordinal      // names a place in a row: first, second
	article      // a, an
	joint        // and
	point        // marks decimals
	minus
)

type numeral struct {
	part   part
	value  int64
	plural bool
}

// numerals are the words of numbers, in lower case, with the commonest slips.
var numerals = map[string]numeral{
	"zero": {part: ones}, "one": {part: ones, value: 1}, "two": {part: ones, value: 2},
	"three": {part: ones, value: 3}, "four": {part: ones, value: 4}, "five": {part: ones, value: 5},
	"six": {part: ones, value: 6}, "seven": {part: ones, value: 7}, "eight": {part: ones, value: 8},
	"nine": {part: ones, value: 9}, "thre": {part: ones, value: 3}, "eigth": {nth, 8, false},
	"ten": {part: teens, value: 10}, "eleven": {part: teens, value: 11}, "twelve": {part: teens, value: 12},
	"thirteen": {part: teens, value: 13}, "fourteen": {part: teens, value: 14}, "fifteen": {part: teens, value: 15},
	"sixteen": {part: teens, value: 16}, "seventeen": {part: teens, value: 17}, "eighteen": {part: teens, value: 18},
	"nineteen": {part: teens, value: 19}, "twelf": {part: teens, value: 12}, "forteen": {part: teens, value: 14},
	"eightteen": {part: teens, value: 18}, "ninteen": {part: teens, value: 19},
	"twenty": {part: tens, value: 20}, "thirty": {part: tens, value: 30}, "forty": {part: tens, value: 40},
	"fifty": {part: tens, value: 50}, "sixty": {part: tens, value: 60}, "seventy": {part: tens, value: 70},
	"eighty": {part: tens, value: 80}, "ninety": {part: tens, value: 90}, "fourty": {part: tens, value: 40},
	"fivty": {part: tens, value: 50}, "ninty": {part: tens, value: 90}, "eigthy": {part: tens, value: 80},
	"hundred": {part: hundred, value: 100}, "thousand": {part: power, value: 1_000},
	"million": {part: power, value: 1_000_000}, "billion": {part: power, value: 1_000_000_000},
	"trillion": {part: power, value: 1_000_000_000_000},
	"dozen":    {part: dozen, value: 12},
	"half":     {share, 2, false}, "halves": {share, 2, true}, "halfs": {share, 2, true},
	"third": {nth, 3, false}, "thirds": {nth, 3, true},
	"quarter": {share, 4, false}, "quarters": {share, 4, true}, "quater": {share, 4, false},
	"quaters": {share, 4, true}, "fourth": {nth, 4, false}, "fourths": {nth, 4, true},
	"fifth": {nth, 5, false}, "fifths": {nth, 5, true},
	"sixth": {nth, 6, false}, "sixths": {nth, 6, true},
	"seventh": {nth, 7, false}, "sevenths": {nth, 7, true}, "ninth": {nth, 9, false}, "ninths": {nth, 9, true},
	"eighth": {nth, 8, false}, "eighths": {nth, 8, true}, "eigths": {nth, 8, true},
	"tenth": {nth, 10, false}, "tenths": {nth, 10, true},
	"twelfth": {nth, 12, false}, "twelfths": {nth, 12, true},
	"sixteenth": {nth, 16, false}, "sixteenths": {nth, 16, true},
	"a": {part: article, value: 1}, "an": {part: article, value: 1},
	"and": {part: joint}, "point": {part: point}, "minus": {part: minus},
	"first": {ordinal, 1, false}, "second": {ordinal, 2, false}, "seconds": {ordinal, 2, true},
}

// shapes are the nouns that make "half" and "quarter" a kind of patch and no
// number: a half ring, a quarter circle, half square triangles.
var shapes = map[string]bool{
	"square": true, "circle": true, "ring": true, "rectangle": true, "rect": true, "triangle": true,
	"hexagon": true, "hex": true, "hexie": true, "diamond": true, "round": true, "moon": true,
	"wheel": true, "fan": true, "plate": true, "turn": true, "log": true, "block": true, "drop": true,
}
