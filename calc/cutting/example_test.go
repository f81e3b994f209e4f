package cutting_test

import (
	"context"
	"fmt"

	"counterhand/calc/cutting"
	"counterhand/calc/measure"
)

func ExampleBest() {
	plan, err := cutting.Best(context.Background(), cutting.Request{
		Width: 40 * measure.Inch,
		Pieces: []cutting.Piece{
			{Name: "large", Width: 10 * measure.Inch, Length: 10 * measure.Inch, Count: 8},
			{Name: "small", Width: 5 * measure.Inch, Length: 5 * measure.Inch, Count: 16},
		},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range plan.Strips {
		fmt.Println(s.Times, "x", s.Height.Show(measure.Imperial))
		for _, c := range s.Cuts {
			fmt.Println("  piece", c.Piece, "times", c.Count)
		}
	}
	fmt.Println(plan.Length.Show(measure.Imperial), "proved:", plan.Optimal)
	// Output:
	// 2 x 10 in
	//   piece 0 times 4
	// 2 x 5 in
	//   piece 1 times 8
	// 30 in proved: true
}
