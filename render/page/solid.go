package page

import (
	"math"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/render/document"

	"gonum.org/v1/gonum/spatial/r3"
)

// solid is a body as flat faces.
type solid struct {
	Vertices []triple `json:"vertices_mm"`
	Faces    [][]int  `json:"faces"` // corners counter-clockwise from outside
}

// solidsOf returns the faces of each of an array's bodies as it is held in the room; of a ball
// a mesh of rings and meridians.
func solidsOf(a *layout.Array) []solid {
	var out []solid
	for _, held := range a.Bodies() {
		out = append(out, solidOf(a.Body, held))
	}
	return out
}

func solidOf(b *body.Body, held layout.Placing) solid {
	if b.IsBall() {
		return roundSolid(b, held)
	}
	var s solid
	for _, v := range b.Vertices {
		s.Vertices = append(s.Vertices, document.TripleOf(3, 1000, held.Place(v)))
	}
	for _, f := range b.Faces {
		s.Faces = append(s.Faces, f.Corners)
	}
	return s
}

// The mesh of a ball: 5 degrees a cell.
const (
	meridians = 72
	rings     = 36
)

// roundSolid returns a mesh of a ball, or of what a cut leaves of it.
func roundSolid(b *body.Body, held layout.Placing) solid {
	down := math.Pi // the angle from the top at which the body ends
	if b.IsCut {
		down = math.Acos(min(max(b.Cut/b.Radius, -1), 1))
	}
	var s solid
	at := func(angle, azimuth float64) {
		sin, cos := math.Sincos(angle)
		y, x := math.Sincos(azimuth)
		s.Vertices = append(s.Vertices, document.TripleOf(3, 1000, held.Place(r3.Scale(b.Radius, r3.Vec{X: sin * x, Y: sin * y, Z: cos}))))
	}
	at(0, 0)
	last := rings
	if !b.IsCut {
		last-- // the lowest ring is a point
	}
	for ring := 1; ring <= last; ring++ {
		for m := range meridians {
			at(down*float64(ring)/rings, 2*math.Pi*float64(m)/meridians)
		}
	}
	index := func(ring, m int) int { return 1 + (ring-1)*meridians + m%meridians }
	for m := range meridians {
		s.Faces = append(s.Faces, []int{0, index(1, m), index(1, m+1)})
		for ring := 1; ring < last; ring++ {
			s.Faces = append(s.Faces, []int{index(ring, m), index(ring+1, m), index(ring+1, m+1), index(ring, m+1)})
		}
	}
	if b.IsCut {
		base := make([]int, meridians)
		for m := range base {
			base[m] = index(last, meridians-1-m)
		}
		s.Faces = append(s.Faces, base)
		return s
	}
	at(math.Pi, 0)
	lowest := len(s.Vertices) - 1
	for m := range meridians {
		s.Faces = append(s.Faces, []int{index(last, m), lowest, index(last, m+1)})
	}
	return s
}
