package calc

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"counterhand/calc/measure"
)

// clothAnswer is what any of the cloth topics gives.
type clothAnswer struct {
	result any
	err    error
}

// clothAnswers asks every cloth topic something made of the same few numbers.
func clothAnswers(v Conventions, a, b, c, d measure.Length, n, m int, f float64) map[string]clothAnswer {
	quilt := measure.Size{Width: a, Length: b}
	piece := measure.Size{Width: c, Length: d}
	odd := n%2 != 0
	join := map[bool]Join{true: StraightJoin, false: DiagonalJoin}[odd]
	corners := []Corners{ButtedCorners, MitredCorners, SquaredCorners}[((m%3)+3)%3]
	setting := map[bool]Setting{true: OnPointSetting, false: StraightSetting}[odd]
	answers := map[string]clothAnswer{}
	at := func(name string, result any, err error) { answers[name] = clothAnswer{result, err} }

	for name, edge := range map[string]Edge{"rectangle": RectangleEdge(quilt), "circle": CircleEdge(a),
		"polygon": PolygonEdge(n, a), "measured": MeasuredEdge(a)} {
		r, err := Binding(BindingRequest{v, edge, c, d, join, m, measure.Cloth(b)})
		at("binding "+name, r, err)
		bias, err := BiasBinding(BiasBindingRequest{v, edge, d, c, measure.Cloth(a)})
		at("bias "+name, bias, err)
	}
	reach, err := BindingReach(BindingReachRequest{v, n, c, d, join})
	at("binding reach", reach, err)
	width, err := BindingWidth(BindingWidthRequest{v, DoubleFold, a, b, c})
	at("binding width", width, err)
	backing, err := Backing(BackingRequest{Conventions: v, Quilt: quilt, Overage: c, PanelSeam: d, OneWay: odd,
		WideCloth: m%2 == 0, Have: measure.Cloth(a), HavePanels: m})
	at("backing", backing, err)
	backed, err := BackingReach(BackingReachRequest{v, measure.Cloth(a), c, d, odd})
	at("backing reach", backed, err)
	batting, err := Batting(BattingRequest{v, quilt, c, piece})
	at("batting", batting, err)
	border, err := Borders(BordersRequest{Conventions: v, Quilt: quilt, Widths: []measure.Length{c, d}, Corners: corners,
		Spare: c, Join: join, Lengthwise: odd, Straighten: d, Have: measure.Cloth(a)})
	at("borders", border, err)
	reached, err := BorderToReach(BorderToReachRequest{v, quilt, piece})
	at("border to reach", reached, err)
	yardage, err := Yardage(YardageRequest{v, n, piece, odd, m%2 == 0, a, f, measure.Cloth(b)})
	at("yardage", yardage, err)
	pieces, err := Pieces(PiecesRequest{v, quilt, piece, odd, m})
	at("pieces", pieces, err)
	cuts, err := FromCuts(FromCutsRequest{v, n, piece, odd, quilt, false, m})
	at("from cuts", cuts, err)
	converted, err := Convert(ConvertRequest{v, a, InMetres})
	at("convert", converted, err)
	layout, err := Layout(LayoutRequest{Conventions: v, Block: piece, Setting: setting, Wanted: quilt, Have: m})
	at("layout wanted", layout, err)
	layout, err = Layout(LayoutRequest{Conventions: v, Block: measure.Size{Width: c, Length: c}, Unfinished: odd, Setting: setting, Across: n, Down: m})
	at("layout given", layout, err)
	setting3, err := SettingTriangles(SettingTrianglesRequest{v, c, odd, n, m, d, measure.Cloth(a)})
	at("setting triangles", setting3, err)
	sashing, err := Sashing(SashingRequest{v, piece, a, n, m, odd, m%2 == 0, measure.Cloth(b)})
	at("sashing", sashing, err)
	coping, err := Coping(CopingRequest{v, quilt, c})
	at("coping", coping, err)
	points, err := EdgeTriangles(EdgeTrianglesRequest{Conventions: v, Square: c, Quilt: quilt, Overlap: d, Have: m, Cloth: measure.Cloth(b)})
	at("edge triangles", points, err)
	bed, err := Bed(BedRequest{v, quilt, c, d, c, d})
	at("bed", bed, err)
	beds, err := Beds(BedsRequest{v, quilt, "", c})
	at("beds", beds, err)
	scale, err := Scale(ScaleRequest{v, a, b, []ScalePatch{{RectanglePatch, piece}, {HalfSquarePatch, piece}, {QuarterSquarePatch, piece}}})
	at("scale", scale, err)
	shrinkage, err := Shrinkage(ShrinkageRequest{v, measure.Cloth(a), f, measure.Cloth(b)})
	at("shrinkage", shrinkage, err)
	thread, err := Thread(ThreadRequest{v, QuiltingThread, quilt, 0, c, d})
	at("thread", thread, err)
	seam, err := Thread(ThreadRequest{v, PiecingThread, quilt, a, c, d})
	at("thread of a seam", seam, err)
	change, err := WidthChange(WidthChangeRequest{v, measure.Cloth(a), b, c, 0, piece, odd, measure.Cloth(d)})
	at("width change", change, err)
	change, err = WidthChange(WidthChangeRequest{v, measure.Cloth(a), b, c, n, piece, odd, measure.Cloth(d)})
	at("width change by pieces", change, err)
	price, err := QuiltingPrice(QuiltingPriceRequest{v, quilt, Rate(n), c, Money(m)})
	at("quilting price", price, err)
	kit, err := Kit(KitRequest{Lines: []KitLine{{"Fabric", measure.Cloth(a), b, 0, Money(n)}, {"Things", 0, 0, n, Money(m)}},
		Pricing: ByMargin, Percent: f})
	at("kit", kit, err)
	_, use, err := v.MeasuredAcross(a, b, c)
	at("measured", use, err)
	divide, err := DividingBlocks(DividingBlocksRequest{v, quilt, c, d})
	at("dividing blocks", divide, err)
	return answers
}

// requireSound checks that nothing in a result has wrapped below nothing and
// that every line of working is a whole sentence.
func requireSound(t *testing.T, name string, a clothAnswer) {
	t.Helper()
	if a.err != nil {
		var limit *LimitError
		require.True(t, errors.As(a.err, &limit), "%s: %v", name, a.err)
		requireSentence(t, name, limit.Reason)
		if limit.Works.Format != "" {
			requireSentence(t, name, limit.Works)
		}
		return
	}
	requireNotNegative(t, name, reflect.ValueOf(a.result))
}

// requireSentence checks that a line's verbs and what fills them agree.
func requireSentence(t *testing.T, name string, s Step) {
	t.Helper()
	text := fmt.Sprintf(s.Format, s.Args...)
	require.NotContains(t, text, "%!", name)
	require.True(t, strings.HasSuffix(text, "."), "%s: %q is no sentence", name, text)
	require.Equal(t, strings.ToUpper(text[:1]), text[:1], "%s: %q", name, text)
}

// below lists what may be less than nothing.
var below = map[string]bool{"Overage": true, "Profit": true, "Margin": true, "Markup": true}

func requireNotNegative(t *testing.T, name string, v reflect.Value) {
	t.Helper()
	switch v.Kind() {
	case reflect.Struct:
		if s, ok := v.Interface().(Step); ok {
			requireSentence(t, name, s)
			return
		}
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() && !below[f.Name] {
				requireNotNegative(t, name+"."+f.Name, v.Field(i))
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			requireNotNegative(t, name, v.Index(i))
		}
	case reflect.Int, reflect.Int64:
		require.GreaterOrEqual(t, v.Int(), int64(0), name)
	case reflect.Float64:
		require.False(t, math.IsNaN(v.Float()) || v.Float() < 0, "%s = %v", name, v.Float())
	}
}

// FuzzCloth asks every cloth topic whatever comes in: nothing panics, wraps or
// leaves a line of working half filled.
func FuzzCloth(f *testing.F) {
	const nm, km = int64(1), int64(1000 * measure.Metre)
	inch := int64(measure.Inch)
	f.Add(60*inch, 72*inch, 5*inch/2, 10*inch, int64(8), int64(2), 5.0, 40*inch, inch/8)                               // as people ask
	f.Add(km, km, km, km, int64(maxCount), int64(maxCount), 100.0, km, int64(maxStep))                                 // the most of everything
	f.Add(km, km, int64(leastCut), int64(leastCut), int64(maxCount), int64(7), 99.0, int64(leastCut), int64(leastCut)) // far apart
	f.Add(nm, -inch, int64(0), int64(math.MinInt64), int64(-1), int64(0), math.Inf(1), inch, inch)
	f.Add(int64(math.MaxInt64), int64(math.MaxInt64), inch, inch, int64(3), int64(3), math.NaN(), 40*inch, inch)
	f.Fuzz(func(t *testing.T, a, b, c, d, n, m int64, p float64, usable, stepSize int64) {
		for _, v := range []Conventions{ImperialConventions(), MetricConventions()} {
			v.UsableWidth = measure.Length(usable)
			v.CutStep, v.GroundStep, v.BuyStep = measure.Length(stepSize), measure.Length(stepSize), measure.Length(stepSize)
			for name, answer := range clothAnswers(v, measure.Length(a), measure.Length(b), measure.Length(c), measure.Length(d), int(n), int(m), p) {
				requireSound(t, name, answer)
			}
		}
	})
}
