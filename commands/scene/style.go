package scene

// Fill is what a shape is filled with. What it looks like is decided where it
// is drawn; no two look alike, in colour or without.
type Fill uint8

// The fills. The zero value lets through what lies below.
const (
	Empty  Fill = iota
	Paper       // blank white
	Ground      // background fabric, behind the patches
	Offcut      // cloth that is left over
	Fabric1
	Fabric2
	Fabric3
	Fabric4
	Fabric5
	Fabric6
	Fabric7
	Fabric8
)

// Fabrics is how many fabrics can be told apart in one picture.
const Fabrics = int(Fabric8-Fabric1) + 1

// Fabric gives the fill of the i-th fabric of a picture, counted from 0. After
// [Fabrics] they repeat, so their labels must tell them apart.
func Fabric(i int) Fill { return Fabric1 + Fill(i%Fabrics) }

// Line is how an outline is drawn.
type Line uint8

// The lines. The zero value draws none.
const (
	NoLine Line = iota
	Edge        // the edge of cloth or of a patch
	Cut         // where to cut
	Sewn        // where to sew: dashes
	Fold        // where to fold: dashes and dots
	Centre      // a line of symmetry, or a measuring line: thin
	Outer       // the heavy edge of a whole piece
)
