package picture

// Paper is what documents are printed on, upright, in millimetres.
type Paper struct {
	Name          string
	Width, Height float64
}

// The papers.
// Source: ISO 216 for A4; ANSI/ASME Y14.1 size A for US Letter, 8½ x 11 in. A4
// is given as the whole points nearest to 210 x 297 mm, a tenth of a millimetre
// off: some programs count paper in whole points, and shrink a page that is
// larger by a fraction of one.
var (
	A4     = Paper{"A4", 595 * mmPerPoint, 842 * mmPerPoint}
	Letter = Paper{"US Letter", 612 * mmPerPoint, 792 * mmPerPoint}
)

const mmPerInch = 25.4

// paperMargin is left blank on all sides: half an inch, more than any home
// printer needs. From memory: they leave 3 to 6 mm, at the foot up to 12.7 mm.
const paperMargin = mmPerInch / 2

// inner is the part of the paper that is printed on, from its upper left corner.
func (p Paper) inner() box {
	return box{paperMargin, -p.Height + paperMargin, p.Width - paperMargin, -paperMargin}
}
