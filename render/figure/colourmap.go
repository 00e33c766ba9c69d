package figure

import (
	"image/color"
	"sync"

	"gonum.org/v1/plot/palette/moreland"
)

// shades is the colour map from low to high, never changed once made. The ends
// of the map, almost black and almost white, are left out: they would swallow
// the outline of the body and run into the paper.
var shades = sync.OnceValue(func() [256]color.RGBA {
	const first, last = 0.05, 0.95
	m := moreland.ExtendedBlackBody()
	m.SetMin(0)
	m.SetMax(1)
	var out [256]color.RGBA
	for i := range out {
		c, err := m.At(first + (last-first)*float64(i)/float64(len(out)-1))
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
