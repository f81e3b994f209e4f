package commands_test

import "testing"

func TestHelp(t *testing.T) {
	ask(t, "help", []row{
		{
			is: "all", say: []string{"help", "what can you do"},
			text: `
Ask in your own words, with your sizes; no special words are needed.
Size it: wedge count, wedge ring, wedge fit, layout, bed, coping, hexagons, curves, scale, borders.
Cut it: wedge strips, split, setting triangles, sashing, pieces, half square triangles, quarter square triangles, flying geese, square in square, strip set, triangles 60, diamonds, half rectangles, cutting plan.
Buy it: yardage, kit, shrinkage, thread, width change.
Finish it: backing, batting, binding, bias binding, edge triangles, quilting price, plan.
Around it: convert, drill, reminder, shop, settings.
For example: binding for 54 x 68; ring of 16 blades, 6 in long; backing for 70 x 90. Say "help binding" for more about one of them.`,
		},
		{
			is: "one topic", say: []string{"help binding"},
			text: `
Binding: binding strips round a quilt.
It takes the quilt, the length round the edge, the size across, one side, the strip width, the extra for corners and joins, the width of the fabric, the strips you have and the fabric you have.
For example: binding for 54 x 68; or: bind a circle 28 in across with 2¼ in strips.
The rule: strips are joined on the diagonal, and each join uses up one strip width (quiltingboard.com, t109880; christaquilts.com, quilty math).`,
		},
	})
}
