package body

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Platonic returns a regular solid of a circumradius in m, by its name:
// tetrahedron, cube, octahedron, dodecahedron or icosahedron. Any other name
// gives ErrUnknownShape.
func Platonic(name string, radius float64) (*Body, error) {
	var v []r3.Vec
	switch name {
	case "tetrahedron":
		v = append([]r3.Vec{{Z: 1}}, ring(3, -1.0/3, 0)...)
	case "octahedron":
		v = append([]r3.Vec{{Z: 1}, {Z: -1}}, ring(4, 0, 0)...)
	case "cube":
		h := 1 / math.Sqrt(3)
		v = append(ring(4, h, math.Pi/4), ring(4, -h, math.Pi/4)...)
	case "icosahedron":
		h := 1 / math.Sqrt(5)
		v = append([]r3.Vec{{Z: 1}, {Z: -1}}, ring(5, h, 0)...)
		v = append(v, ring(5, -h, math.Pi/5)...)
	case "dodecahedron":
		// Heights of the two upper rings: those of an icosahedron's face centres.
		high := math.Sqrt((5 + 2*math.Sqrt(5)) / 15)
		low := math.Sqrt((5 - 2*math.Sqrt(5)) / 15)
		v = append(ring(5, high, math.Pi/5), ring(5, low, math.Pi/5)...)
		v = append(v, ring(5, -low, 0)...)
		v = append(v, ring(5, -high, 0)...)
	default:
		return nil, fmt.Errorf("body: %w: %q", ErrUnknownShape, name)
	}
	return hull(name, v, radius), nil
}

// ring returns count points evenly round the axis, on the unit sphere at a
// height, the first at an azimuth in rad.
func ring(count int, height, azimuth float64) []r3.Vec {
	reach := math.Sqrt(1 - height*height)
	out := make([]r3.Vec, count)
	for i := range out {
		sin, cos := math.Sincos(azimuth + 2*math.Pi*float64(i)/float64(count))
		out[i] = r3.Vec{X: reach * cos, Y: reach * sin, Z: height}
	}
	return out
}

// hull finds the faces of a few points on the unit sphere by trying every plane
// through three of them, which is plenty for the solids here, and scales the
// body to a radius.
func hull(name string, points []r3.Vec, radius float64) *Body {
	const tolerance = 1e-9 // of the unit sphere; the solids' gaps are above 0.1
	b := &Body{Name: name, Radius: radius}
	for i := range points {
		for j := i + 1; j < len(points); j++ {
			for k := j + 1; k < len(points); k++ {
				corners := supported(points, i, j, k, tolerance)
				if corners != nil {
					b.Faces = append(b.Faces, Face{Corners: corners})
				}
			}
		}
	}
	b.Vertices = make([]r3.Vec, len(points))
	for i, p := range points {
		b.Vertices[i] = r3.Scale(radius, p)
	}
	b.BallRadius = ballRadius(b.Volume())
	return b
}

// supported returns the points in the plane of three, in order seen from
// outside, if no point lies beyond it and the three are the lowest of them;
// else nil.
func supported(points []r3.Vec, i, j, k int, tolerance float64) []int {
	normal := r3.Unit(r3.Cross(r3.Sub(points[j], points[i]), r3.Sub(points[k], points[i])))
	if r3.Dot(normal, points[i]) < 0 {
		normal = r3.Scale(-1, normal)
	}
	height := r3.Dot(normal, points[i])
	var on []int
	for p, at := range points {
		switch d := r3.Dot(normal, at) - height; {
		case d > tolerance:
			return nil
		case d > -tolerance:
			on = append(on, p)
		}
	}
	if on[0] != i || on[1] != j || on[2] != k {
		return nil // the same face, found before
	}
	return around(points, on, normal)
}

// around sorts corners counter-clockwise seen from where the normal points,
// beginning with the first.
func around(points []r3.Vec, corners []int, normal r3.Vec) []int {
	var middle r3.Vec
	for _, c := range corners {
		middle = r3.Add(middle, r3.Scale(1/float64(len(corners)), points[c]))
	}
	x := r3.Unit(r3.Sub(points[corners[0]], middle))
	y := r3.Cross(normal, x)
	angle := func(c int) float64 {
		d := r3.Sub(points[c], middle)
		a := math.Atan2(r3.Dot(d, y), r3.Dot(d, x))
		if a < -1e-9 {
			a += 2 * math.Pi
		}
		return a
	}
	sortBy(corners, angle)
	return corners
}

// ballRadius returns the radius of the ball of a volume.
func ballRadius(volume float64) float64 { return math.Cbrt(3 * volume / (4 * math.Pi)) }
