package picture

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"sync"

	"github.com/tdewolff/canvas"
	"github.com/tdewolff/canvas/renderers/rasterizer"

	"counterhand/commands/scene"
)

// pixelsPerMM is the fineness of PNG pictures: 845 pixels across.
const pixelsPerMM = 6.5

// PNG gives the scene as a picture of 256 colours.
func PNG(s scene.Scene) ([]byte, error) {
	if err := checkScene(s); err != nil {
		return nil, err
	}
	p := takePens()
	defer returnPens(p)
	g := layScene(s, p)
	r := rasterizer.New(g.width, g.height, canvas.DPMM(pixelsPerMM), canvas.LinearColorSpace{})
	paper(r.Image.(*image.RGBA))
	g.draw(r, p)
	r.Close()
	var b bytes.Buffer
	encoder := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := encoder.Encode(&b, paletted(r.Image.(*image.RGBA))); err != nil {
		return nil, fmt.Errorf("picture: writing PNG: %w", err)
	}
	return b.Bytes(), nil
}

// paper makes the whole image white and opaque.
func paper(img *image.RGBA) {
	img.Pix[0] = 0xff
	for i := 1; i < len(img.Pix); i *= 2 {
		copy(img.Pix[i:], img.Pix[:i])
	}
}

// colours is the palette of all pictures and the nearest colour in it for every
// colour of 5 bits a channel.
type colours struct {
	palette color.Palette
	nearest [1 << 15]uint8
}

// coloursOnce makes the palette: the fills and inks as they are, then greys for
// the edges of writing, then mixtures of fills with ink and with paper for the
// edges of shapes.
var coloursOnce = sync.OnceValue(func() *colours {
	c := &colours{}
	bases := []color.RGBA{paperColor, inkColor, faintColor}
	for f := scene.Paper; f <= scene.Fabric8; f++ {
		bases = append(bases, lookOf(f).color)
	}
	for _, b := range bases {
		c.add(b)
	}
	for i := range 32 {
		c.add(mix(paperColor, inkColor, float64(i+1)/33))
	}
	for _, b := range bases[3:] {
		for i := range 12 {
			c.add(mix(b, inkColor, float64(i+1)/13))
		}
		for i := range 3 {
			c.add(mix(b, paperColor, float64(i+1)/4))
		}
	}
	for i := range c.nearest {
		c.nearest[i] = uint8(c.palette.Index(color.RGBA{expand(i >> 10), expand(i >> 5 & 31), expand(i & 31), 0xff}))
	}
	for i, b := range bases {
		c.nearest[bin(b.R, b.G, b.B)] = uint8(i)
	}
	return c
})

// add takes a colour into the palette while there is room.
func (c *colours) add(v color.RGBA) {
	if len(c.palette) < 256 {
		c.palette = append(c.palette, v)
	}
}

// bin is the place of a colour among those of 5 bits a channel.
func bin(r, g, b uint8) int { return int(r>>3)<<10 | int(g>>3)<<5 | int(b>>3) }

// expand turns 5 bits into 8.
func expand(v int) uint8 { return uint8(v<<3 | v>>2) }

func mix(a, b color.RGBA, part float64) color.RGBA {
	m := func(x, y uint8) uint8 { return uint8(float64(x)*(1-part) + float64(y)*part + 0.5) }
	return color.RGBA{m(a.R, b.R), m(a.G, b.G), m(a.B, b.B), 0xff}
}

// paletted reduces an opaque image to the palette. Fills and inks keep their
// very colour.
func paletted(img *image.RGBA) *image.Paletted {
	c := coloursOnce()
	out := image.NewPaletted(img.Bounds(), c.palette)
	for i := range out.Pix {
		v := img.Pix[4*i : 4*i+3 : 4*i+3]
		out.Pix[i] = c.nearest[bin(v[0], v[1], v[2])]
	}
	return out
}
