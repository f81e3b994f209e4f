package measure_test

import (
	"fmt"

	"counterhand/calc/measure"
)

func ExampleScanQuantity() {
	text := "2½ in strips"
	q, ok := measure.ScanQuantity(text)
	fmt.Println(ok, q.Number.Float(), q.Unit, text[q.Size:])

	q, ok = measure.ScanQuantity("three quarters of a yard")
	fmt.Println(ok, q.Number, q.Unit)

	_, ok = measure.ScanQuantity("half square triangles")
	fmt.Println(ok)
	// Output:
	// true 2.5 in  strips
	// true {3 4} yd
	// false
}

func ExampleParseLength() {
	l, err := measure.ParseLength("a yard and a half", measure.NoUnit)
	fmt.Println(l.Show(measure.Imperial), l.Show(measure.Metric), err)

	_, err = measure.ParseLength("2½ in strips", measure.NoUnit)
	fmt.Println(err)

	_, err = measure.ParseLength("1,234", measure.InchUnit)
	fmt.Println(err)
	// Output:
	// 54 in 137.2 cm <nil>
	// length "2½ in strips": unread text at "strips"
	// length "1,234": a comma that may mark thousands or decimals
}

func ExampleLength_RoundUp() {
	diagonal := measure.Inches(8.485281)
	fmt.Println(diagonal.RoundUp(measure.Inch / 8).Show(measure.Imperial))
	fmt.Println(measure.Cloth((152 * measure.Inch).RoundUp(measure.Yard / 8)).Long(measure.Imperial))
	// Output:
	// 8½ in
	// 4¼ yards
}
