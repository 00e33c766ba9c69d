package body

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// Platonic returns a regular solid of a circumradius in m, by its name:
// tetrahedron, cube, octahedron, dodecahedron or icosahedron. The package
// comment says how each stands. Errors wrap ErrUnknownShape and ErrRadius.
func Platonic(name string, radius float64) (*Body, error) {
	if !usable(radius) {
		return nil, prose.Errorf("%w: %g m", ErrRadius, radius)
	}
	points := corners(name)
	if points == nil {
		return nil, fmt.Errorf("%w: %q", ErrUnknownShape, name)
	}
	return settle(&Body{Name: name, Radius: radius, Vertices: points, Faces: hull(points)}), nil
}

// corners returns the vertices of a regular solid on the unit sphere, nil for
// an unknown name.
func corners(name string) []r3.Vec {
	top, bottom := r3.Vec{Z: 1}, r3.Vec{Z: -1}
	switch name {
	case "tetrahedron":
		return slices.Concat([]r3.Vec{top}, ring(3, -1.0/3, 0))
	case "octahedron":
		return slices.Concat([]r3.Vec{top}, ring(4, 0, 0), []r3.Vec{bottom})
	case "cube":
		z := 1 / math.Sqrt(3)
		return slices.Concat(ring(4, z, math.Pi/4), ring(4, -z, math.Pi/4))
	case "icosahedron":
		z := 1 / math.Sqrt(5)
		return slices.Concat([]r3.Vec{top}, ring(5, z, 0), ring(5, -z, math.Pi/5), []r3.Vec{bottom})
	case "dodecahedron":
		// The heights of an icosahedron's face centres, pushed out to the sphere.
		high, low := math.Sqrt((5+2*math.Sqrt(5))/15), math.Sqrt((5-2*math.Sqrt(5))/15)
		return slices.Concat(ring(5, high, math.Pi/5), ring(5, low, math.Pi/5), ring(5, -low, 0), ring(5, -high, 0))
	}
	return nil
}

// ring returns count points evenly round the axis on the unit sphere, at a
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
// through three of them, which is plenty for the regular solids.
func hull(points []r3.Vec) []Face {
	var faces []Face
	for i := range points {
		for j := i + 1; j < len(points); j++ {
			for k := j + 1; k < len(points); k++ {
				if c := facet(points, i, j, k); c != nil {
					faces = append(faces, Face{Corners: c})
				}
			}
		}
	}
	return faces
}

// facet returns the points in the plane of three, in order seen from outside,
// if no point lies beyond it and the three are the first of them; else nil.
func facet(points []r3.Vec, i, j, k int) []int {
	out := r3.Unit(r3.Triangle{points[i], points[j], points[k]}.Normal())
	height := r3.Dot(out, points[i])
	if height < 0 {
		out, height = r3.Scale(-1, out), -height
	}
	var on []int
	for p, at := range points {
		switch d := r3.Dot(out, at) - height; {
		case d > tolerance:
			return nil
		case d > -tolerance:
			on = append(on, p)
		}
	}
	if !slices.Equal(on[:3], []int{i, j, k}) {
		return nil
	}
	return around(points, on, out)
}

// around sorts a face's corners counter-clockwise seen from where its normal
// points.
func around(points []r3.Vec, corners []int, normal r3.Vec) []int {
	middle := r3.Scale(r3.Dot(normal, points[corners[0]]), normal)
	x := r3.Sub(points[corners[0]], middle)
	y := r3.Cross(normal, x)
	turn := func(c int) float64 {
		d := r3.Sub(points[c], middle)
		return math.Atan2(r3.Dot(d, y), r3.Dot(d, x))
	}
	slices.SortFunc(corners, func(a, b int) int { return cmp.Compare(turn(a), turn(b)) })
	return corners
}

// settle brings a body on the unit sphere to its radius, takes rounding off
// coordinates that are 0, and puts vertices, faces and corners in order.
func settle(b *Body) *Body {
	order := Order(b.Vertices)
	vertices, place := make([]r3.Vec, len(order)), make([]int, len(order))
	for i, from := range order {
		v := b.Vertices[from]
		vertices[i], place[from] = r3.Scale(b.Radius, r3.Vec{X: tidy(v.X), Y: tidy(v.Y), Z: tidy(v.Z)}), i
	}
	b.Vertices = vertices
	middles := make([]r3.Vec, len(b.Faces))
	for f, face := range b.Faces {
		for i, c := range face.Corners {
			face.Corners[i] = place[c]
		}
		first := slices.Index(face.Corners, slices.Min(face.Corners))
		b.Faces[f].Corners = slices.Concat(face.Corners[first:], face.Corners[:first])
		middles[f] = b.Centroid(f)
	}
	faces := make([]Face, len(b.Faces))
	for i, from := range Order(middles) {
		faces[i] = b.Faces[from]
	}
	b.Faces = faces
	b.BallRadius = wholeBall(b.Volume())
	return b
}

// tidy takes rounding off a coordinate that is 0.
func tidy(v float64) float64 {
	if math.Abs(v) < rounding {
		return 0
	}
	return v
}
