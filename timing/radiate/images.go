package radiate

import (
	"math"
	"sync"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// Image is one way for sound to reach a point: directly, or by walls that
// mirror it. The sound of a mirrored body at a point is that of the body itself
// at the point mirrored back, so an image moves points, not mounts:
//
//	point' = Flip * point + Shift, coordinate by coordinate
//
// (image sources: J. B. Allen and D. A. Berkley, "Image method for efficiently
// simulating small-room acoustics", J. Acoust. Soc. Am. 65 (1979) 943).
type Image struct {
	Field  Field     // of the body alone, good for the moved points
	Flip   r3.Vec    // 1 or -1 along each axis
	Shift  r3.Vec    // m
	Factor []float64 // what the walls leave of the pressure, for each frequency; nil: all
}

// Moved returns the point, in m, at which the body is to be heard.
func (i Image) Moved(p r3.Vec) r3.Vec {
	return r3.Vec{X: i.Flip.X*p.X + i.Shift.X, Y: i.Flip.Y*p.Y + i.Shift.Y, Z: i.Flip.Z*p.Z + i.Shift.Z}
}

// Direct is the image that is the body itself.
func Direct(f Field) Image { return Image{Field: f, Flip: r3.Vec{X: 1, Y: 1, Z: 1}} }

// Floor returns the image in a level surface at a height in m.
func Floor(f Field, height float64, factor []float64) Image {
	return Image{Field: f, Flip: r3.Vec{X: 1, Y: 1, Z: -1}, Shift: r3.Vec{Z: 2 * height}, Factor: factor}
}

// Reflection returns what a surface leaves of the pressure at grazing and at
// normal incidence alike, sqrt(1 - absorption), for an absorption coefficient
// of 0 to 1 (common practice in the image method).
func Reflection(absorption float64) float64 { return math.Sqrt(1 - absorption) }

// Images returns the sum of images. Each field must be for the same
// frequencies.
func Images(images []Image, frequencies int) Field {
	s := &imageSum{images: images}
	s.scratch.New = func() any {
		return &imageScratch{weight: make([]complex128, frequencies)}
	}
	return s
}

type imageSum struct {
	images  []Image
	scratch sync.Pool
}

// imageScratch is one call's room to work.
type imageScratch struct {
	weight []complex128
	points []r3.Vec
}

func (s *imageSum) Add(dst []complex128, mount layout.Mount, points []r3.Vec, weight []complex128) {
	held := s.scratch.Get().(*imageScratch)
	defer s.scratch.Put(held)
	for _, image := range s.images {
		held.points = held.points[:0]
		for _, p := range points {
			held.points = append(held.points, image.Moved(p))
		}
		w := weight
		if image.Factor != nil {
			w = held.weight
			for f, factor := range image.Factor {
				w[f] = weight[f] * complex(factor, 0)
			}
		}
		image.Field.Add(dst, mount, held.points, w)
	}
}
