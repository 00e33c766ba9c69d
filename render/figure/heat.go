package figure

import (
	"image"
	"image/color"
	"math"
)

// heat returns the quantity as a picture, a cell to a pixel. A cell just inside
// of the body takes a value from outside, or else the grey of the inside would
// glow through the outline, which is drawn over it, when the picture is
// enlarged.
func (v view) heat() *image.RGBA {
	s := v.slice
	img := image.NewRGBA(image.Rect(0, 0, s.Columns, s.Rows))
	grey := color.RGBAModel.Convert(solid).(color.RGBA)
	for i, value := range v.quantity.Values {
		if math.IsNaN(value) {
			value = v.beside(i)
		}
		c := grey
		if !math.IsNaN(value) {
			c = shade(v.scale.share(value))
		}
		img.SetRGBA(i%s.Columns, s.Rows-1-i/s.Columns, c)
	}
	return img
}

// beside returns the value of a neighbour that has one, NaN if none does.
func (v view) beside(cell int) float64 {
	s := v.slice
	column, row := cell%s.Columns, cell/s.Columns
	for y := max(row-1, 0); y <= min(row+1, s.Rows-1); y++ {
		for x := max(column-1, 0); x <= min(column+1, s.Columns-1); x++ {
			if value := v.quantity.Values[y*s.Columns+x]; !math.IsNaN(value) {
				return value
			}
		}
	}
	return math.NaN()
}
