package picture

import (
	"image/color"

	"github.com/tdewolff/canvas"

	"counterhand/commands/scene"
)

// The colours of paper and ink.
var (
	paperColor = color.RGBA{0xff, 0xff, 0xff, 0xff}
	inkColor   = color.RGBA{0x1c, 0x1c, 0x1c, 0xff}
	faintColor = color.RGBA{0x70, 0x70, 0x70, 0xff}
)

// texture is how a fill is hatched. Every fill has a texture of its own, so
// that fills stay apart without colour.
type texture struct {
	angles  []float64 // of the lines, in degrees; none for a plain fill
	spacing float64   // between them, in millimetres
	dots    bool      // the lines are dotted
}

// look is what a fill looks like.
type look struct {
	color color.RGBA
	texture
}

// lookOf gives the look of a fill. The colours go down in lightness by turns
// and lie apart in blue and yellow, which nearly everybody can tell; the
// textures do the rest. They are the project's own choice.
func lookOf(f scene.Fill) look {
	switch f {
	case scene.Paper:
		return look{color: paperColor}
	case scene.Ground:
		return look{color: color.RGBA{0xf1, 0xee, 0xe6, 0xff}}
	case scene.Offcut:
		return look{color.RGBA{0xe2, 0xe2, 0xe2, 0xff}, texture{angles: []float64{20}, spacing: 3.2, dots: true}}
	case scene.Fabric1:
		return look{color: color.RGBA{0x8f, 0xc1, 0xe3, 0xff}}
	case scene.Fabric2:
		return look{color.RGBA{0xfa, 0xe5, 0xb0, 0xff}, texture{angles: []float64{45}, spacing: 1.7}}
	case scene.Fabric3:
		return look{color.RGBA{0x5f, 0x87, 0xb5, 0xff}, texture{angles: []float64{135}, spacing: 1.7}}
	case scene.Fabric4:
		return look{color.RGBA{0xe0, 0xa0, 0x4e, 0xff}, texture{angles: []float64{0}, spacing: 1.5}}
	case scene.Fabric5:
		return look{color.RGBA{0xcd, 0xdd, 0xc6, 0xff}, texture{angles: []float64{90}, spacing: 1.5}}
	case scene.Fabric6:
		return look{color.RGBA{0xb8, 0x8a, 0xa6, 0xff}, texture{angles: []float64{45, 135}, spacing: 2.1}}
	case scene.Fabric7:
		return look{color.RGBA{0xf4, 0xcf, 0xbf, 0xff}, texture{angles: []float64{0, 90}, spacing: 2.0}}
	case scene.Fabric8:
		return look{color.RGBA{0x7d, 0x9c, 0x86, 0xff}, texture{angles: []float64{60}, spacing: 1.3, dots: true}}
	default:
		return look{}
	}
}

// Widths of lines, in millimetres.
const (
	thin    = 0.13
	plain   = 0.22
	strong  = 0.35
	heavy   = 0.55
	hatched = 0.13
)

func fillStyle(c color.RGBA) canvas.Style {
	s := canvas.DefaultStyle
	s.Fill = canvas.Paint{Color: c}
	s.StrokeWidth = 0
	return s
}

// strokeStyle draws a line. The library counts dashes in widths of the line;
// here they are millimetres.
func strokeStyle(c color.RGBA, width float64, dashes ...float64) canvas.Style {
	s := canvas.DefaultStyle
	s.Fill = canvas.Paint{}
	s.Stroke = canvas.Paint{Color: c}
	s.StrokeWidth = width
	for _, d := range dashes {
		s.Dashes = append(s.Dashes, d/width)
	}
	return s
}

// lineStyle gives the style of a line, and whether it is drawn at all.
func lineStyle(l scene.Line) (canvas.Style, bool) {
	switch l {
	case scene.Edge:
		return strokeStyle(inkColor, plain), true
	case scene.Cut:
		return strokeStyle(inkColor, strong), true
	case scene.Sewn:
		return strokeStyle(inkColor, plain, 1.6, 1.0), true
	case scene.Fold:
		return strokeStyle(inkColor, plain, 3, 0.8, 0.5, 0.8), true
	case scene.Centre:
		return strokeStyle(faintColor, thin), true
	case scene.Outer:
		return strokeStyle(inkColor, heavy), true
	default:
		return canvas.Style{}, false
	}
}
