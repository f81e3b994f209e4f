package calc

import (
	"cmp"
	"slices"

	"counterhand/calc/measure"
)

// Country tells whose bed sizes are meant, since one name is three mattresses.
type Country string

// The countries whose mattress sizes are published here.
const (
	UnitedStates  Country = "US"
	UnitedKingdom Country = "UK"
	Europe        Country = "EU"
	Australia     Country = "AU"
)

// Mattress is a published mattress size.
type Mattress struct {
	Country Country
	Name    string
	Size    measure.Size
}

// Mattresses lists the published sizes, by country and then by width. Makers
// differ by an inch or two, and depths are not standard at all.
// Source: http://www.liquisearch.com/bed_size/table_of_common_sizes,
// http://ibenma.com.sg/Learn%20your%20mattress%20size.html and, for the crib,
// http://quilting.about.com/od/quiltsettings/a/mattress_sizes.htm. The king
// single is of the second.
func Mattresses() []Mattress {
	in := func(country Country, name string, w, l measure.Length) Mattress {
		return Mattress{country, name, measure.Size{Width: w * measure.Inch, Length: l * measure.Inch}}
	}
	cm := func(country Country, name string, w, l measure.Length) Mattress {
		return Mattress{country, name, measure.Size{Width: w * measure.Centimetre, Length: l * measure.Centimetre}}
	}
	return []Mattress{
		in(UnitedStates, "crib", 28, 52),
		in(UnitedStates, "twin", 39, 75),
		in(UnitedStates, "twin XL", 39, 80),
		in(UnitedStates, "full", 54, 75),
		in(UnitedStates, "queen", 60, 80),
		in(UnitedStates, "California king", 72, 84),
		in(UnitedStates, "king", 76, 80),
		cm(UnitedKingdom, "single", 90, 190),
		cm(UnitedKingdom, "small double", 120, 190),
		cm(UnitedKingdom, "double", 135, 190),
		cm(UnitedKingdom, "king", 150, 200),
		cm(UnitedKingdom, "super king", 180, 200),
		cm(Europe, "single", 90, 200),
		cm(Europe, "140", 140, 200),
		cm(Europe, "160", 160, 200),
		cm(Europe, "180", 180, 200),
		cm(Australia, "single", 92, 187),
		cm(Australia, "king single", 106, 203),
		cm(Australia, "double", 137, 187),
		cm(Australia, "queen", 153, 203),
		cm(Australia, "king", 183, 203),
	}
}

// FindMattress gives the mattress of a name in a country, and whether there is one.
func FindMattress(country Country, name string) (Mattress, bool) {
	all := Mattresses()
	i := slices.IndexFunc(all, func(m Mattress) bool { return m.Country == country && m.Name == name })
	if i < 0 {
		return Mattress{}, false
	}
	return all[i], true
}

// BedRequest asks how large a quilt covers a bed.
type BedRequest struct {
	Conventions
	Mattress measure.Size
	SideDrop measure.Length // on the left and on the right
	FootDrop measure.Length
	HeadDrop measure.Length // 0 where the quilt ends at the pillows
	Tuck     measure.Length // under and over the pillows, 0 for none
}

// BedResult gives the quilt.
type BedResult struct {
	MattressWidth, MattressLength measure.Length
	QuiltWidth, QuiltLength       measure.Length
	Working                       []Step
}

// Bed adds the drops and the tuck to the mattress.
// Source: http://www.sewnana.com/2010/01.
func Bed(r BedRequest) (BedResult, error) {
	err := cmp.Or(r.check(), wantSize("mattress", r.Mattress), wantSpare("drop", r.SideDrop),
		wantSpare("foot_drop", r.FootDrop), wantSpare("head_drop", r.HeadDrop), wantSpare("pillow_tuck", r.Tuck))
	if err != nil {
		return BedResult{}, err
	}
	b := BedResult{
		MattressWidth:  r.Mattress.Width,
		MattressLength: r.Mattress.Length,
		QuiltWidth:     r.Mattress.Width + 2*r.SideDrop,
		QuiltLength:    r.Mattress.Length + r.FootDrop + r.HeadDrop + r.Tuck,
	}
	b.Working = []Step{step("Across: %v + 2 × %v = %v.", r.Mattress.Width, r.SideDrop, b.QuiltWidth)}
	ends := step("Down: %v + %v at the foot = %v.", r.Mattress.Length, r.FootDrop, b.QuiltLength)
	if r.HeadDrop+r.Tuck > 0 {
		ends = step("Down: %v + %v at the foot + %v at the head = %v.", r.Mattress.Length, r.FootDrop, r.HeadDrop+r.Tuck, b.QuiltLength)
	}
	b.Working = append(b.Working, ends)
	return b, nil
}

// BedsRequest asks which beds a quilt fits.
type BedsRequest struct {
	Conventions
	Quilt     measure.Size
	Country   Country        // all of them where it is empty
	LeastDrop measure.Length // on each side and at the foot, 0 for a quilt that just covers the top
}

// BedFit is how a quilt lies on a bed.
type BedFit struct {
	Mattress
	SideDrop measure.Length // on each side
	EndDrop  measure.Length // at the foot where nothing is tucked, or shared by both ends
}

// Beds lists the beds that a quilt covers with the drop, the largest first.
func Beds(r BedsRequest) ([]BedFit, error) {
	err := cmp.Or(r.check(), wantSize("quilt", r.Quilt), wantSpare("drop", r.LeastDrop))
	if err != nil {
		return nil, err
	}
	var fit []BedFit
	for _, m := range Mattresses() {
		if r.Country != "" && r.Country != m.Country {
			continue
		}
		f := BedFit{Mattress: m, SideDrop: (r.Quilt.Width - m.Size.Width) / 2, EndDrop: r.Quilt.Length - m.Size.Length}
		if f.SideDrop >= r.LeastDrop && f.EndDrop >= r.LeastDrop {
			fit = append(fit, f)
		}
	}
	slices.SortStableFunc(fit, func(a, b BedFit) int { return cmp.Compare(area(b.Size), area(a.Size)) })
	return fit, nil
}
