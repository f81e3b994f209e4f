package measure

// Unit is what a number was said to count.
type Unit uint8

// The units that people give with a number. The zero value is none.
const (
	NoUnit Unit = iota
	InchUnit
	FootUnit
	YardUnit
	MillimetreUnit
	CentimetreUnit
	MetreUnit
	DegreeUnit
)

var unitLengths = [...]Length{
	InchUnit: Inch, FootUnit: Foot, YardUnit: Yard,
	MillimetreUnit: Millimetre, CentimetreUnit: Centimetre, MetreUnit: Metre,
	DegreeUnit: 0,
}

var unitNames = [...]string{"", "in", "ft", "yd", "mm", "cm", "m", "deg"}

// Length gives one of the unit, or 0 where it is no unit of length.
func (u Unit) Length() Length { return unitLengths[u] }

// IsLength tells whether the unit is one of length.
func (u Unit) IsLength() bool { return unitLengths[u] != 0 }

// IsMetric tells whether the unit is a metric one of length.
func (u Unit) IsMetric() bool { return u >= MillimetreUnit && u <= MetreUnit }

// String gives the abbreviation, "in", "deg", and "" for [NoUnit].
func (u Unit) String() string { return unitNames[u] }

// unitWords are the words for units, in lower case: abbreviations, full words,
// both spellings, and the commonest slips.
var unitWords = map[string]Unit{
	"in": InchUnit, "ins": InchUnit, "inch": InchUnit, "inches": InchUnit,
	"inchs": InchUnit, "inche": InchUnit,
	"ft": FootUnit, "foot": FootUnit, "feet": FootUnit,
	"yd": YardUnit, "yds": YardUnit, "yard": YardUnit, "yards": YardUnit,
	"yrd": YardUnit, "yrds": YardUnit,
	"mm": MillimetreUnit, "mms": MillimetreUnit,
	"millimetre": MillimetreUnit, "millimetres": MillimetreUnit,
	"millimeter": MillimetreUnit, "millimeters": MillimetreUnit,
	"cm": CentimetreUnit, "cms": CentimetreUnit,
	"centimetre": CentimetreUnit, "centimetres": CentimetreUnit,
	"centimeter": CentimetreUnit, "centimeters": CentimetreUnit,
	"m": MetreUnit, "mtr": MetreUnit, "mtrs": MetreUnit,
	"metre": MetreUnit, "metres": MetreUnit, "meter": MetreUnit, "meters": MetreUnit,
	"deg": DegreeUnit, "degs": DegreeUnit, "degree": DegreeUnit, "degrees": DegreeUnit,
	"degress": DegreeUnit,
}

// unitMarks are the signs for units that stand right behind a digit, the longer
// one first where one begins with the other.
var unitMarks = [...]struct {
	text string
	unit Unit
}{
	{`"`, InchUnit}, {"″", InchUnit}, {"”", InchUnit}, {"“", InchUnit}, {"ʺ", InchUnit},
	{"''", InchUnit}, {"′′", InchUnit}, {"’’", InchUnit}, {"‘‘", InchUnit},
	{"'", FootUnit}, {"′", FootUnit}, {"’", FootUnit}, {"‘", FootUnit}, {"ʹ", FootUnit},
	{"°", DegreeUnit}, {"º", DegreeUnit}, {"˚", DegreeUnit},
}
