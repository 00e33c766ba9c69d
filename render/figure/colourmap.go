package figure

import (
	"image/color"
	"sync"

	"gonum.org/v1/plot/palette/moreland"
)

// anchors are the colours of the map from low to high: night blue, plum, coral,
// amber, candlelight. The ends keep clear of the black of the outlines and of
// the white of the paper.
var anchors = []color.Color{
	color.NRGBA{27, 20, 62, 255},
	color.NRGBA{92, 44, 112, 255},
	color.NRGBA{196, 84, 104, 255},
	color.NRGBA{239, 162, 92, 255},
	color.NRGBA{252, 238, 190, 255},
}

// shades is the colour map from low to high, never changed once made.
var shades = sync.OnceValue(func() [256]color.RGBA {
	m, err := moreland.NewLuminance(anchors)
	if err != nil {
		panic(err) // the anchors grow lighter
	}
	m.SetMin(0)
	m.SetMax(1)
	var out [256]color.RGBA
	for i := range out {
		c, err := m.At(float64(i) / float64(len(out)-1))
		if err != nil {
			panic(err) // the range lies inside of the map's
		}
		out[i] = color.RGBAModel.Convert(c).(color.RGBA)
	}
	return out
})

// shade returns the colour for a share from 0 to 1 of the scale, which is
// clipped to it.
func shade(share float64) color.RGBA {
	return shades()[int(255*min(max(share, 0), 1)+0.5)]
}
