package commands_test

import "testing"

func TestFlatness(t *testing.T) {
	ask(t, "wedge-ring", []row{
		// 24 × 18° = 432°. The story of a ring mended by taking four blades out:
		// checks.csv, D013.
		{
			is: "too many blades", say: []string{"24 blades of 18 degrees, why does it ripple?", "24 blades of 18° and it ruffles"},
			figures:    "blades 24; angle 18°; covered 432°; miss 72°",
			assumed:    "seam 0.25 in",
			understood: "blades 24; angle 18 deg; trouble ruffles",
		},
		// 2 × 20 × atan(1/32 ÷ 5) = 14.3°: checks.csv, d.error; trade geometry.
		{
			is: "a tapering seam", say: []string{"20 blades 5 in long, each seam 1/32 in too deep, tapering, and the ring doesn't lie flat"},
			figures:    "blades 20; angle 18°; covered 345.68°; miss -14.32°",
			assumed:    "seam 0.25 in",
			understood: "blades 20; blade_length 5 in; part full; trouble not flat; seam_error 0.03125 in; seam_runs tapering",
		},
		// 18 × 18° = 324°: checks.csv, D010.
		{
			is: "too few", say: []string{"18 blades of 18 degrees, it gapes"},
			figures:    "blades 18; angle 18°; covered 324°; miss -36°",
			assumed:    "seam 0.25 in",
			understood: "blades 18; angle 18 deg; trouble cups",
		},
	})
}
