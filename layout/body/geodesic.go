package body

import (
	"cmp"
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// Geodesic returns the class I subdivision of a base (icosahedron, octahedron or
// tetrahedron), its vertices on a sphere of a radius in m. The errors are
// ErrUnknownShape and ErrSubdivision. Edges of an icosahedron divided in n are
// chords as in Kenner, Geodesic Math and How to Use It, 1976.
func Geodesic(base string, subdivision int, radius float64) (*Body, error) {
	if subdivision < 1 || subdivision > 16 {
		return nil, fmt.Errorf("body: %w: %d", ErrSubdivision, subdivision)
	}
	switch base {
	case "icosahedron", "octahedron", "tetrahedron":
	default:
		return nil, fmt.Errorf("body: %w to divide: %q", ErrUnknownShape, base)
	}
	solid, err := Platonic(base, 1)
	if err != nil {
		return nil, err
	}
	b := &Body{Name: fmt.Sprintf("%s divided in %d", base, subdivision), Radius: radius}
	d := divider{body: b, index: make(map[[6]int]int)}
	for _, face := range solid.Faces {
		d.face(face.Corners, solid.Vertices, subdivision)
	}
	b.BallRadius = ballRadius(b.Volume())
	return b, nil
}

// divider divides faces and joins the points that they share.
type divider struct {
	body  *Body
	index map[[6]int]int // by corner and weight, which neighbours agree on
}

// point returns the vertex that stands at whole weights over a face's corners.
func (d *divider) point(corner [3]int, weight [3]int, at []r3.Vec) int {
	parts := [][2]int{}
	for i, w := range weight {
		if w > 0 {
			parts = append(parts, [2]int{corner[i], w})
		}
	}
	slices.SortFunc(parts, func(a, b [2]int) int { return cmp.Compare(a[0], b[0]) })
	key := [6]int{-1, 0, -1, 0, -1, 0}
	var sum r3.Vec
	for i, p := range parts {
		key[2*i], key[2*i+1] = p[0], p[1]
		sum = r3.Add(sum, r3.Scale(float64(p[1]), at[p[0]]))
	}
	if v, ok := d.index[key]; ok {
		return v
	}
	v := len(d.body.Vertices)
	d.body.Vertices = append(d.body.Vertices, r3.Scale(d.body.Radius, r3.Unit(sum)))
	d.index[key] = v
	return v
}

// face divides one triangle into n*n.
func (d *divider) face(corners []int, at []r3.Vec, n int) {
	c := [3]int{corners[0], corners[1], corners[2]}
	vertex := func(i, j int) int { return d.point(c, [3]int{n - i - j, i, j}, at) }
	for i := range n {
		for j := range n - i {
			d.add(vertex(i, j), vertex(i+1, j), vertex(i, j+1))
			if i+j < n-1 {
				d.add(vertex(i+1, j), vertex(i+1, j+1), vertex(i, j+1))
			}
		}
	}
}

func (d *divider) add(a, b, c int) {
	d.body.Faces = append(d.body.Faces, Face{Corners: []int{a, b, c}})
}

// sortBy sorts indices by a number that belongs to each.
func sortBy(index []int, key func(int) float64) {
	slices.SortStableFunc(index, func(a, b int) int { return cmp.Compare(key(a), key(b)) })
}
