// Package shoebox finds the mirror images of a body in a box room.
//
// Along one axis, with walls at 0 and L and the body's centre at s, the images
// stand at s + 2nL, having met each wall |n| times, and turned round at
// -s + 2nL, having met the low wall |n-1| times and the high one |n| times, for
// all whole n. An image of the room is one such for each axis. J. B. Allen and D. A.
// Berkley, "Image method for efficiently simulating small-room acoustics", J.
// Acoust. Soc. Am. 65 (1979) 943.
//
// It is exact for hard walls and a point source. For a body it leaves out what
// the body itself scatters of its own reflections; with absorption it takes the
// walls' reflection as equal for all angles.
package shoebox

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Mirror takes a point to where the body is to be heard in place of the mirrored body
// there:
//
//	point' = Flip * point + Shift, coordinate by coordinate
//
// Coordinates are relative to the body's centre.
type Mirror struct {
	Flip  r3.Vec // 1 or -1 along each axis
	Shift r3.Vec // m
}

// Moved returns the point, in m, at which the body is to be heard.
func (m Mirror) Moved(p r3.Vec) r3.Vec { return r3.Add(m.Turned(p), m.Shift) }

// Turned returns a direction as the mirrored body has it.
func (m Mirror) Turned(v r3.Vec) r3.Vec {
	return r3.Vec{X: m.Flip.X * v.X, Y: m.Flip.Y * v.Y, Z: m.Flip.Z * v.Z}
}

// Image is one way for the body's sound to reach a point, by way of walls.
type Image struct {
	Mirror

	// Hits is how often the sound meets the walls at low and high x, low and
	// high y, low and high z.
	Hits [6]int
}

// Factors returns what the walls leave of the image's pressure at each frequency, for
// reflection factors of the six walls in the order of Hits.
func (i Image) Factors(reflection [6][]float64) []float64 {
	factor := make([]float64, len(reflection[0]))
	for f := range factor {
		factor[f] = 1
		for wall, hits := range i.Hits {
			factor[f] *= math.Pow(reflection[wall][f], float64(hits)) // 0^0 is 1
		}
	}
	return factor
}

// Images returns all images of a body with at most order reflections, of a room
// with the given size in m and its low corner at the origin, in which the body's
// centre stands at source. They come by rising order of reflection, the body
// itself first; images of one order come in a fixed sequence. There are
// Count(order) of them.
//
// size and source are taken as they are: the caller sees to it that the body is
// in the room.
func Images(size, source r3.Vec, order int) []Image {
	images := make([]Image, 0, Count(order))
	for n := range order + 1 {
		for x := -n; x <= n; x++ {
			left := n - abs(x)
			for y := -left; y <= left; y++ {
				z := left - abs(y)
				images = append(images, image(size, source, x, y, -z))
				if z > 0 {
					images = append(images, image(size, source, x, y, z))
				}
			}
		}
	}
	return images
}

// Count returns how many images there are with at most order reflections: the
// points of a grid of whole numbers whose coordinates add up to no more, a
// centred octahedral number. It is 0 below order 0.
func Count(order int) int {
	if order < 0 {
		return 0
	}
	return (2*order + 1) * (2*order*order + 2*order + 3) / 3
}

// image returns the image that lies x, y and z mirrored rooms away.
func image(size, source r3.Vec, x, y, z int) Image {
	var i Image
	i.Flip.X, i.Shift.X, i.Hits[0], i.Hits[1] = along(size.X, source.X, x)
	i.Flip.Y, i.Shift.Y, i.Hits[2], i.Hits[3] = along(size.Y, source.Y, y)
	i.Flip.Z, i.Shift.Z, i.Hits[4], i.Hits[5] = along(size.Z, source.Z, z)
	return i
}

// along returns the image of one axis that lies in the room cells away, which
// takes |cells| reflections: in every other room the body is turned round. The
// first reflection towards the high side is from the high wall.
func along(size, source float64, cells int) (flip, shift float64, low, high int) {
	near, far := abs(cells)/2, (abs(cells)+1)/2
	low, high = near, far
	if cells < 0 {
		low, high = far, near
	}
	if cells%2 == 0 {
		return 1, -float64(cells) * size, low, high
	}
	return -1, float64(cells+1)*size - 2*source, low, high
}

func abs(i int) int { return max(i, -i) }
