package calc_test

import (
	"fmt"

	"counterhand/calc"
	"counterhand/calc/measure"
)

func ExampleBinding() {
	quilt := measure.Size{Width: 54 * measure.Inch, Length: 68 * measure.Inch}
	b, err := calc.Binding(calc.BindingRequest{
		Conventions: calc.ImperialConventions(),
		Edge:        calc.RectangleEdge(quilt),
		StripWidth:  calc.DefaultBindingStrip,
		Extra:       calc.DefaultBindingExtra,
		Join:        calc.DiagonalJoin,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(b.Strips, "strips,", b.StripWidth.Show(measure.Imperial), "wide: buy", b.Buy.Show(measure.Imperial))
	fmt.Println("they make", b.Covers.Show(measure.Imperial), "for", b.LengthNeeded.Show(measure.Imperial))
	fmt.Println("one fewer is", b.OneFewerShort.Show(measure.Imperial), "short")
	// Output:
	// 7 strips, 2½ in wide: buy ½ yd
	// they make 265 in for 254 in
	// one fewer is 26½ in short
}

func ExampleBorderToReach() {
	r := calc.BorderToReachRequest{
		Conventions: calc.ImperialConventions(),
		Quilt:       measure.Size{Width: 48 * measure.Inch, Length: 60 * measure.Inch},
		Wanted:      measure.Size{Width: 60 * measure.Inch, Length: 72 * measure.Inch},
	}
	b, err := calc.BorderToReach(r)
	fmt.Println(b.SideFinished.Show(measure.Imperial), "finished, cut", b.SideStrip.Show(measure.Imperial), err)

	r.Wanted.Width = 40 * measure.Inch
	_, err = calc.BorderToReach(r)
	fmt.Println(err)
	// Output:
	// 6 in finished, cut 6½ in <nil>
	// wanted: A border only adds, and %v is not larger than %v.
}
