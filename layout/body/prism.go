package body

import (
	"fmt"
	"math"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// MostSides is the greatest number of sides that Prism and Antiprism make.
const MostSides = 256

// Prism returns a right prism: two regular ends of so many sides, level, their
// corners radius m from the axis, height m apart, and upright rectangles
// between them. A height of 0 makes the rectangles square, so that all edges
// are equal. One side faces x. Body.Radius is the distance of a corner from the
// centre, halfway up the axis.
//
// Errors wrap ErrSides, ErrRadius and ErrProportion.
func Prism(sides int, radius, height float64) (*Body, error) {
	if height == 0 {
		height = 2 * radius * math.Sin(math.Pi/float64(sides))
	}
	if err := drawable(sides, radius, height); err != nil {
		return nil, err
	}
	half := math.Pi / float64(sides)
	var faces []Face
	for i := range sides {
		next := (i + 1) % sides
		faces = append(faces, Face{Corners: []int{i, sides + i, sides + next, next}})
	}
	return drum(fmt.Sprintf("prism %d", sides), sides, radius, height, [2]float64{half, half}, faces), nil
}

// Antiprism returns a right antiprism: as [Prism] has them, two regular ends,
// one turned by half a side, and upright triangles between them. A height of 0
// makes the triangles equilateral, so that all edges are equal. One corner of
// the upper end is at azimuth 0.
//
// Errors wrap ErrSides, ErrRadius and ErrProportion.
func Antiprism(sides int, radius, height float64) (*Body, error) {
	half := math.Pi / float64(sides)
	if height == 0 {
		height = 2 * radius * math.Sqrt(math.Pow(math.Sin(half), 2)-math.Pow(math.Sin(half/2), 2))
	}
	if err := drawable(sides, radius, height); err != nil {
		return nil, err
	}
	var faces []Face
	for i := range sides {
		next := (i + 1) % sides
		faces = append(faces,
			Face{Corners: []int{i, sides + i, next}},
			Face{Corners: []int{sides + i, sides + next, next}})
	}
	return drum(fmt.Sprintf("antiprism %d", sides), sides, radius, height, [2]float64{0, half}, faces), nil
}

// drawable tells what keeps a prism from being drawn.
func drawable(sides int, radius, height float64) error {
	if sides < 3 || sides > MostSides {
		return fmt.Errorf("%w, not %d", ErrSides, sides)
	}
	if !usable(radius) {
		return prose.Errorf("%w: %g m", ErrRadius, radius)
	}
	if !(height >= radius/100 && height <= radius*100) {
		return prose.Errorf("%w: height %g m, radius %g m", ErrProportion, height, radius)
	}
	return nil
}

// drum returns a body from its sides and two ends: the upper end has the first
// corners, the lower one the others, each from an azimuth in rad.
func drum(name string, sides int, radius, height float64, azimuths [2]float64, faces []Face) *Body {
	var points []r3.Vec
	top, bottom := make([]int, sides), make([]int, sides)
	for end, azimuth := range azimuths {
		for i := range sides {
			sin, cos := math.Sincos(azimuth + 2*math.Pi*float64(i)/float64(sides))
			points = append(points, r3.Vec{X: radius * cos, Y: radius * sin, Z: height * (0.5 - float64(end))})
			top[i], bottom[sides-1-i] = i, sides+i
		}
	}
	faces = append(faces, Face{Corners: top}, Face{Corners: bottom})
	return fitted(name, points, faces, math.Hypot(radius, height/2))
}
