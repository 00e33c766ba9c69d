// Package fit says where drivers get in each other's way or reach over the edge
// of their face. Plain geometry; no source is needed.
package fit

import (
	"math"

	"pappus/layout/body"

	"gonum.org/v1/gonum/spatial/r3"
)

// Pair is two mounts whose flanges touch.
type Pair struct {
	A, B int     // indices of the mounts
	Gap  float64 // m, 0 or below: by how much they overlap
}

// Flanges returns the pairs of round flanges that touch, in order of their
// mounts. Points are in m, normals of unit length, the radius in m. The gap is
// taken along the line between the two centres: it is exact for flanges in one
// plane, and for two that lean away from each other alike, as neighbours on a
// convex body do, it takes off what each disc reaches towards the other.
func Flanges(points, normals []r3.Vec, radius float64) []Pair {
	var pairs []Pair
	for i, p := range points {
		for j := i + 1; j < len(points); j++ {
			between := r3.Sub(points[j], p)
			if math.Abs(between.X) > 2*radius || math.Abs(between.Y) > 2*radius {
				continue
			}
			d := r3.Norm(between)
			if d > 2*radius {
				continue
			}
			gap := d - reach(between, normals[i], d, radius) - reach(between, normals[j], d, radius)
			if gap <= 0 {
				pairs = append(pairs, Pair{i, j, gap})
			}
		}
	}
	return pairs
}

// reach returns how far a disc extends along a line through its centre.
func reach(along, normal r3.Vec, length, radius float64) float64 {
	if length == 0 {
		return radius
	}
	return radius * r3.Norm(r3.Cross(along, normal)) / length
}

// Overhang returns by how many m a round flange at a point of a face reaches
// over the face's edge; 0 or below where it fits.
func Overhang(b *body.Body, face int, at r3.Vec, radius float64) float64 {
	return radius - b.Margin(face, at)
}
