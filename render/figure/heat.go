package figure

import (
	"image"
	"image/color"
	"math"
)

// heat returns the quantity as a picture, a cell to a pixel.
func (v view) heat() *image.RGBA {
	s := v.slice
	img := image.NewRGBA(image.Rect(0, 0, s.Columns, s.Rows))
	grey := color.RGBAModel.Convert(solid).(color.RGBA)
	for i, value := range v.quantity.Values {
		c := grey
		if !math.IsNaN(value) {
			c = shade(v.scale.share(value))
		}
		img.SetRGBA(i%s.Columns, s.Rows-1-i/s.Columns, c)
	}
	return img
}
