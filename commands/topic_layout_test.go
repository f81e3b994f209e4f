package commands_test

import "testing"

func TestLayout(t *testing.T) {
	ask(t, "layout", []row{
		// 60/12 and 72/12.
		{
			is: "straight", say: []string{"12 in blocks for a quilt of 60 x 72", "how many 12 inch blocks for a 60 by 72 quilt", `60" x 72" quilt from 12" blocks, how many blocks`},
			figures:    "across 5; down 6; blocks 30; quilt_width 60 in; quilt_length 72 in",
			understood: "quilt_width 60 in; quilt_length 72 in; block 12 in",
			text: `
30 blocks, 5 across and 6 down: 60 x 72 in.
I took 12 in as the finished size of a block.`,
		},
		// ⌈60/9⌉ = 7, ⌈70/9⌉ = 8; below it 6 by 7.
		{
			is: "not dividing", say: []string{"how many 9 in blocks for a 60 x 70 quilt"},
			figures:    "across 7; down 8; blocks 56; quilt_width 63 in; quilt_length 72 in",
			understood: "quilt_width 60 in; quilt_length 70 in; block 9 in",
			text: `
56 blocks, 7 across and 8 down: 63 x 72 in.
That is more than 60 x 70 in, since the blocks do not divide it.
The next smaller layout is 6 by 7: 54 x 63 in.
I took 9 in as the finished size of a block.`,
		},
		// 5·6 + 4·5 = 50; 5·9·√2 = 63.64 by 76.37.
		{
			is: "on point", say: []string{"9 in blocks on point, 5 by 6", "5 x 6 blocks of 9 in on point"},
			figures:    "across 5; down 6; blocks 50; quilt_width 63⅝ in; quilt_length 76⅜ in",
			understood: "block 9 in; across 5; down 6; setting on point",
			text: `
50 blocks on point, 5 across and 6 down: 63⅝ x 76⅜ in.
Along the edge go 18 side triangles and 4 corners; ask me for setting triangles.
I took 9 in as the finished size of a block.`,
		},
		// 8·6 by 10·6.
		{
			is: "with seams", say: []string{"6½ in unfinished blocks 8 across 10 down", "8 by 10 blocks that measure 6½ unfinished"},
			figures:    "across 8; down 10; blocks 80; quilt_width 48 in; quilt_length 60 in",
			assumed:    "seam 0.25 in",
			understood: "block 6.5 in; across 8; down 10",
		},
		// 60 x 80: 5 by ⌈80/12⌉ = 7.
		{
			is: "a bed", say: []string{"12 in blocks for a queen bed"},
			figures:    "across 5; down 7; blocks 35; quilt_width 60 in; quilt_length 84 in",
			assumed:    "country US",
			understood: "block 12 in; bed queen",
		},
		// 30/5 = 6.
		{
			is: "blocks in hand", say: []string{"I have 30 blocks of 12 in, how big a quilt 5 across"},
			figures:    "across 5; down 6; blocks 30; quilt_width 60 in; quilt_length 72 in",
			understood: "block 12 in; across 5; have_blocks 30",
		},
		// 150/30 and 210/30.
		{
			is: "metric", say: []string{"30 cm blocks for 150 x 210 cm"},
			figures:    "across 5; down 7; blocks 35; quilt_width 150 cm; quilt_length 210 cm",
			understood: "quilt_width 150 cm; quilt_length 210 cm; block 30 cm",
		},
		// Both 60 and 72 by 3, 4, 6 and 12.
		{
			is: "which blocks divide", say: []string{"what block size divides a 60 x 72 quilt"},
			figures:    "block 6 in; across 10; down 12; blocks 120",
			understood: "quilt_width 60 in; quilt_length 72 in; wish divides",
		},
	})
}
