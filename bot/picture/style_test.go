package picture

import (
	"fmt"
	"image/color"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"counterhand/commands/scene"
)

// patterned are the fills that stand for cloth and have to be told apart.
func patterned() []scene.Fill {
	fills := []scene.Fill{scene.Ground, scene.Offcut}
	for i := range scene.Fabrics {
		fills = append(fills, scene.Fabric(i))
	}
	return fills
}

// Without any colour, hatching tells all fills apart but the two plain ones,
// which lightness does.
func TestFillsDifferWithoutColour(t *testing.T) {
	seen := map[string]scene.Fill{}
	var plain []scene.Fill
	for _, f := range patterned() {
		x := lookOf(f).texture
		if len(x.angles) == 0 {
			plain = append(plain, f)
			continue
		}
		key := fmt.Sprint(x.angles, x.dots)
		other, twice := seen[key]
		assert.False(t, twice, "fills %d and %d are hatched alike", f, other)
		seen[key] = f
	}
	for i, a := range plain {
		for _, b := range plain[i+1:] {
			assert.Greater(t, math.Abs(lightness(lookOf(a).color)-lightness(lookOf(b).color)), 15.0, "fills %d and %d", a, b)
		}
	}
}

// The fabrics that are used first also differ in lightness from their
// neighbours, and in colour for people who do not see red or green apart.
func TestFirstFabricsDifferInColourToo(t *testing.T) {
	for i := range scene.Fabrics {
		for j := range i {
			a, b := lookOf(scene.Fabric(i)).color, lookOf(scene.Fabric(j)).color
			for name, see := range map[string]func(color.RGBA) [3]float64{"protanopia": protanope, "deuteranopia": deuteranope} {
				assert.Greater(t, apart(see(a), see(b)), 0.04, "fabrics %d and %d with %s", j+1, i+1, name)
			}
		}
	}
	for i := range 3 {
		a, b := lookOf(scene.Fabric(i)).color, lookOf(scene.Fabric((i+1)%3)).color
		assert.Greater(t, math.Abs(lightness(a)-lightness(b)), 9.0, "fabrics %d and %d", i+1, (i+1)%3+1)
	}
}

// lightness is L* of CIE 1976, from 0 to 100.
func lightness(c color.RGBA) float64 {
	y := 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
	if y <= 216.0/24389 {
		return y * 24389 / 27
	}
	return 116*math.Cbrt(y) - 16
}

// linear undoes the gamma of sRGB (IEC 61966-2-1).
func linear(v uint8) float64 {
	s := float64(v) / 255
	if s <= 0.04045 {
		return s / 12.92
	}
	return math.Pow((s+0.055)/1.055, 2.4)
}

// protanope and deuteranope give the linear colour that is seen without the red
// or the green cones. Source: the matrices of Viénot, Brettel and Mollon 1999,
// "Digital video colourmaps for checking the legibility of displays by
// dichromats", in their usual sRGB form, from memory.
func protanope(c color.RGBA) [3]float64 {
	r, g, b := linear(c.R), linear(c.G), linear(c.B)
	return [3]float64{0.11238*r + 0.88762*g, 0.11238*r + 0.88762*g, 0.00401*r - 0.00401*g + b}
}

func deuteranope(c color.RGBA) [3]float64 {
	r, g, b := linear(c.R), linear(c.G), linear(c.B)
	return [3]float64{0.29275*r + 0.70725*g, 0.29275*r + 0.70725*g, -0.02234*r + 0.02234*g + b}
}

func apart(a, b [3]float64) float64 {
	return math.Sqrt((a[0]-b[0])*(a[0]-b[0]) + (a[1]-b[1])*(a[1]-b[1]) + (a[2]-b[2])*(a[2]-b[2]))
}
