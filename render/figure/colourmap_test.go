package figure

import (
	"image/color"
	"math"
	"testing"
)

// linear undoes the sRGB transfer curve, IEC 61966-2-1.
func linear(v uint8) float64 {
	s := float64(v) / 255
	if s <= 0.04045 {
		return s / 12.92
	}
	return math.Pow((s+0.055)/1.055, 2.4)
}

type rgb [3]float64

func apply(m [3]rgb, v rgb) rgb {
	var out rgb
	for i, row := range m {
		for j, w := range row {
			out[i] += w * v[j]
		}
	}
	return out
}

// lightness is L* of CIE 15, from linear sRGB.
func lightness(v rgb) float64 {
	y := 0.2126*v[0] + 0.7152*v[1] + 0.0722*v[2]
	if y <= 216.0/24389 {
		return y * 24389 / 27
	}
	return 116*math.Cbrt(y) - 16
}

// The matrices of F. Viénot, H. Brettel and J. D. Mollon, "Digital video
// colourmaps for checking the legibility of displays by dichromats", Color
// Research & Application 24 (1999), quoted from memory.
var (
	toCones = [3]rgb{
		{17.8824, 43.5161, 4.11935},
		{3.45565, 27.1554, 3.86714},
		{0.0299566, 0.184309, 1.46709},
	}
	fromCones = [3]rgb{
		{0.0809444479, -0.130504409, 0.116721066},
		{-0.0102485335, 0.0540193266, -0.113614708},
		{-0.000365296938, -0.00412161469, 0.693511405},
	}
	protanope = [3]rgb{{0, 2.02344, -2.52581}, {0, 1, 0}, {0, 0, 1}}
	deutan    = [3]rgb{{1, 0, 0}, {0.494207, 0, 1.24827}, {0, 0, 1}}
)

func seenBy(cones [3]rgb) func(rgb) rgb {
	return func(v rgb) rgb {
		seen := apply(fromCones, apply(cones, apply(toCones, v)))
		for i := range seen {
			seen[i] = min(max(seen[i], 0), 1)
		}
		return seen
	}
}

func TestShadesGrowLighter(t *testing.T) {
	for name, eye := range map[string]func(rgb) rgb{
		"usual":        func(v rgb) rgb { return v },
		"protanopia":   seenBy(protanope),
		"deuteranopia": seenBy(deutan),
	} {
		least, _ := lightnessSteps(eye, 5) // closer together eight bits show
		if least <= 0 {
			t.Errorf("%s: the lightness falls by %.2f", name, -least)
		}
	}
}

// TestShadesAreEven allows for eight bits to a channel and no more.
func TestShadesAreEven(t *testing.T) {
	least, most := lightnessSteps(func(v rgb) rgb { return v }, 15)
	t.Logf("steps of L* from %.2f to %.2f", least, most)
	if most > 1.12*least {
		t.Errorf("lightness steps from %.2f to %.2f are not even", least, most)
	}
}

// lightnessSteps returns the least and the most that L* grows by over so many
// shades.
func lightnessSteps(eye func(rgb) rgb, stride int) (least, most float64) {
	least, most = math.Inf(1), math.Inf(-1)
	last := math.NaN()
	for i := 0; i < 256; i += stride {
		c := shades()[i]
		now := lightness(eye(rgb{linear(c.R), linear(c.G), linear(c.B)}))
		if i > 0 {
			least, most = min(least, now-last), max(most, now-last)
		}
		last = now
	}
	return least, most
}

// TestColoursDiffer keeps lines apart from each other, and from the paper by a
// contrast ratio (WCAG 2.2, from memory) of 2. The bound is ours: it leaves the
// sky blue in and the yellow out.
func TestColoursDiffer(t *testing.T) {
	seen := map[color.NRGBA]bool{}
	for _, c := range colours {
		y := 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
		if ratio := 1.05 / (y + 0.05); ratio < 2 {
			t.Errorf("%v: contrast %.2f", c, ratio)
		}
		if seen[c] {
			t.Errorf("%v twice", c)
		}
		seen[c] = true
	}
}
