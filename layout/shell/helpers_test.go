package shell_test

import (
	"errors"
	"math"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

var (
	errWall        = errors.New("the wall must be a length above 0")
	errBed         = errors.New("the bed must have three finite sides above 0")
	errNumber      = errors.New("must be finite and at least 0")
	errBedSmall    = errors.New("the bed is smaller than one mount")
	errNothingLeft = errors.New("nothing is left")
	errOpen        = errors.New("not a closed surface")
)

// meshArea returns a mesh's surface.
func meshArea(m poly.Mesh) float64 {
	sum := 0.0
	for _, t := range m.Triangles {
		sum += r3.Norm(r3.Triangle{m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]}.Normal()) / 2
	}
	return sum
}

// wedges returns the half-spaces of equal segments of a turn round the z axis, the first from
// an azimuth in rad. Heights in m, rising, cut each of them further.
func wedges(count int, azimuth float64, heights ...float64) (out [][]poly.Plane) {
	for layer := range len(heights) + 1 {
		low, high := -10.0, 10.0
		if layer > 0 {
			low = heights[layer-1]
		}
		if layer < len(heights) {
			high = heights[layer]
		}
		for i := range count {
			level := poly.Level(low, high)
			pitch := 2 * math.Pi / float64(count)
			sector := poly.Sector(azimuth+float64(i)*pitch, azimuth+float64(i+1)*pitch)
			out = append(out, append(sector[:], level[:]...))
		}
	}
	return out
}
