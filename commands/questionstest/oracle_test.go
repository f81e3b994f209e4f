package questionstest

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The reckoning itself is held against figures that others have published.
// Where a source counts otherwise than the shop does, the row takes the part on
// which both agree.
func TestReckoningAgreesWithPublishedFigures(t *testing.T) {
	for _, c := range []struct {
		source string
		oracle string
		figure string
		want   any
	}{
		{"hqstitch.com how-to-make-a-dresden-plate-part-2", `{"f":"wedge_count","angle":18}`, "blades", 20.0},
		{"blog.pennydog.com 2017/10/18 improv plate", `{"f":"wedge_count","angle":9}`, "blades", 40.0},
		{"luannsloosethreads.blogspot.com 2011/03", `{"f":"wedge_strips","blades":320,"length":5,"strip":2.5}`, "strips", 40.0},
		{"missyscakesandaprons.blogspot.com 2012/09: twelve plates of twenty", `{"f":"wedge_strips","blades":240,"length":5.5,"strip":2.75}`, "strips", 35.0},
		{"quiltsbyjen.ca binding calculator", `{"f":"binding","w":63.5,"l":42.75}`, "strips", 6.0},
		{"quiltsbyjen.ca binding calculator", `{"f":"binding","w":63.5,"l":42.75}`, "perimeter", 212.5},
		{"oakvillequiltersguild.ca binding: 28 in circle", `{"f":"binding","circle":28}`, "perimeter", 87.964594300},
		{"quiltersclubofamerica.com forum 24983: three widths of 96 in", `{"f":"backing","w":112,"l":88,"usable":42}`, "panels", 3.0},
		{"happy-stitches.com backingnborders: 40 x 60 needs 48 x 68", `{"f":"backing","w":40,"l":60}`, "backing_length", 68.0},
		{"cranberryquiltingco.com: 60 x 70 needs 68 x 78", `{"f":"batting","w":60,"l":70}`, "batting_width", 68.0},
		{"quiltingboard.com t168402: borders of 1, 2½ and 3½ add 7 in a side", `{"f":"borders","w":50,"l":60,"b":[1,2.5,3.5]}`, "quilt_width", 64.0},
		{"susanintexas.blogspot.com 2009/02", `{"f":"sashing","across":5,"down":4,"block":12,"sash":2,"corner":1,"frame":1}`, "short_sashes", 49.0},
		{"susanintexas.blogspot.com 2009/02", `{"f":"sashing","across":5,"down":4,"block":12,"sash":2,"corner":1,"frame":1}`, "cornerstones", 30.0},
		{"patchworktimes.com making-a-pieced-border-fit", `{"f":"sashing","across":4,"down":5,"block":10,"sash":2}`, "quilt_length", 58.0},
		{"patchworktimes.com making-a-pieced-border-fit", `{"f":"coping","a":46,"unit":5}`, "strip_cut", 2.5},
		{"delawarequilts.com Sizes", `{"f":"layout","block":12,"w":60,"l":72}`, "blocks", 30.0},
		{"apqs.com reference chart for squares on point: 4 x 5", `{"f":"layout","block":12,"across":4,"down":5,"point":1}`, "blocks", 32.0},
		{"quilterscache.com on point", `{"f":"setting","block":8}`, "side_square", 12.625},
		{"quilterscache.com on point", `{"f":"setting","block":8}`, "corner_square", 6.625},
		{"lukas.is-a-geek.org tani chart", `{"f":"setting","block":10}`, "side_square", 15.5},
		{"grannymaudsgirl.wordpress.com 2018/06", `{"f":"hst","finish":3,"at":2}`, "square_cut", 3.875},
		{"craftsy.com 2014/01 half-square triangles, eight at a time: 2f + 1¾", `{"f":"hst","finish":4,"at":8}`, "square_cut", 9.75},
		{"rainbowsbunniescupcakes.blogspot.com 2012/02: 10 in squares give a hair under 6¼", `{"f":"hst","finish":6.25,"at":4}`, "square_cut", 10.125},
		{"quiltville.blogspot.com 2005/06", `{"f":"qst","finish":4}`, "square_cut", 5.25},
		{"members.shaw.ca beverlysquiltingpage", `{"f":"geese","w":6,"h":3,"n":16,"at":4}`, "large_square", 7.25},
		{"members.shaw.ca beverlysquiltingpage", `{"f":"geese","w":6,"h":3,"n":16,"at":4}`, "small_square", 3.875},
		{"inspirepoint.com need-math-help", `{"f":"yardage","n":156,"w":6.5,"h":6.5}`, "length", 169.0},
		{"bobbininquilts.com how to figure out how much fabric", `{"f":"yardage","n":300,"w":3,"h":2}`, "length", 45.0},
		{"piecefulliving.blogspot.com 2011/08", `{"f":"pieces","from":"fq","w":4.5,"h":4.5}`, "pieces", 16.0},
		{"quiltingboard.com t131707: five 4 in strips and two 3 in", `{"f":"plan_cut","pieces":["52x4x4","20x3x3"],"usable":44}`, "length", 26.0},
		{"blotchandthrum.com 2013/08: cut height is finished + ¾", `{"f":"tri60","height":5}`, "strip_width", 5.75},
		{"welikequilting.com basic guide", `{"f":"points","width":3}`, "square", 3.5},
		{"melgeecrafts.com sizes", `{"f":"bed","mw":54,"ml":75,"drop":12}`, "quilt_width", 78.0},
		{"e-quilterscorner.com 2012/08", `{"f":"scale","from":12,"to":10}`, "factor", 0.833333333},
		{"a published table of yards and inches, atimetosewquilts.com/measurements", `{"f":"convert","v":0.625,"from":"yd","to":"in"}`, "result", 22.5},
	} {
		var o Oracle
		require.NoError(t, json.Unmarshal([]byte(c.oracle), &o))
		figures, err := o.Figures()
		require.NoError(t, err, c.oracle)
		require.Contains(t, figures, c.figure, c.oracle)
		if want, ok := c.want.(float64); ok {
			assert.InDelta(t, want, figures[c.figure].Value, 1e-6, "%s: %s", c.source, c.oracle)
		} else {
			assert.Equal(t, c.want, figures[c.figure].Value, "%s: %s", c.source, c.oracle)
		}
	}
}

// A mistyped sum must not pass for a sum with a default.
func TestReckoningRefusesWhatItDoesNotKnow(t *testing.T) {
	for name, text := range map[string]string{
		"unknown sum":     `{"f":"bindings","w":60,"l":72}`,
		"unused input":    `{"f":"binding","w":60,"l":72,"stripp":2.5}`,
		"missing input":   `{"f":"binding","w":60}`,
		"no such figure":  `{"f":"binding","w":60,"l":72,"only":["stripes"]}`,
		"a rounding edge": `{"f":"setting","block":6.1982}`,
	} {
		var o Oracle
		require.NoError(t, json.Unmarshal([]byte(text), &o), name)
		_, err := o.Figures()
		assert.Error(t, err, name)
	}
}
