package body

import (
	"cmp"
	"fmt"
	"slices"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// MostSubdivision is the finest division that Geodesic makes.
const MostSubdivision = 16

// Geodesic returns the class I division of a base (icosahedron, octahedron or
// tetrahedron): each of its edges is divided into subdivision equal parts, each
// flat face into subdivision squared triangles, and the points are pushed out
// to a sphere of a radius in m (Kenner, Geodesic Math and How to Use It, 1976).
//
// On a tetrahedron, from a subdivision of 4 on, that leaves dents near the
// corners: edges that lie deeper than one between the other two corners of
// their triangles would. Each such edge is turned to join those, so that the
// body is convex; how many edges and faces there are stays the same.
//
// Errors wrap ErrUnknownShape, ErrSubdivision and ErrRadius.
func Geodesic(base string, subdivision int, radius float64) (*Body, error) {
	if subdivision < 1 || subdivision > MostSubdivision {
		return nil, fmt.Errorf("%w, not %d", ErrSubdivision, subdivision)
	}
	if err := divisible(base, radius); err != nil {
		return nil, err
	}
	points := corners(base)
	d := divider{base: points, parts: subdivision, index: make(map[[3]share]int)}
	for _, face := range hull(points) {
		d.divide([3]int(face.Corners))
	}
	mend(d.vertices, d.faces)
	return settle(&Body{
		Name:     fmt.Sprintf("geodesic %s %d", base, subdivision),
		Radius:   radius,
		Vertices: d.vertices,
		Faces:    d.faces,
	}), nil
}

// divisible tells what keeps a base of a radius in m from being divided.
func divisible(base string, radius float64) error {
	if base != "icosahedron" && base != "octahedron" && base != "tetrahedron" {
		return fmt.Errorf("%w to divide: %q", ErrUnknownShape, base)
	}
	if !usable(radius) {
		return prose.Errorf("%w: %g m", ErrRadius, radius)
	}
	return nil
}

// divider divides the triangles of a base and joins the points that they share.
type divider struct {
	base     []r3.Vec // on the unit sphere
	parts    int
	index    map[[3]share]int
	vertices []r3.Vec
	faces    []Face
}

// share is a whole weight at a corner of the base. The shares of a point, in
// order of their corners, are what the faces that meet there agree on.
type share struct{ weight, corner int }

// divide divides one triangle of the base.
func (d *divider) divide(c [3]int) {
	n := d.parts
	point := func(i, j int) int { return d.point([3]share{{n - i - j, c[0]}, {i, c[1]}, {j, c[2]}}) }
	for i := range n {
		for j := range n - i {
			d.add(point(i, j), point(i+1, j), point(i, j+1))
			if i+j < n-1 {
				d.add(point(i+1, j), point(i+1, j+1), point(i, j+1))
			}
		}
	}
}

func (d *divider) add(a, b, c int) {
	d.faces = append(d.faces, Face{Corners: []int{a, b, c}})
}

// point returns the vertex at three shares.
func (d *divider) point(s [3]share) int {
	for i := range s {
		if s[i].weight == 0 {
			s[i] = share{}
		}
	}
	slices.SortFunc(s[:], func(a, b share) int {
		return cmp.Or(cmp.Compare(a.corner, b.corner), cmp.Compare(a.weight, b.weight))
	})
	if v, ok := d.index[s]; ok {
		return v
	}
	var sum r3.Vec
	for _, p := range s {
		sum = r3.Add(sum, r3.Scale(float64(p.weight), d.base[p.corner]))
	}
	v := len(d.vertices)
	d.index[s] = v
	d.vertices = append(d.vertices, r3.Unit(sum))
	return v
}

// mend turns the edges of a triangulated unit sphere that lie in a dent until
// there is none. It ends because every turn adds to the volume.
func mend(vertices []r3.Vec, faces []Face) {
	for turned := true; turned; {
		turned = false
		b := Body{Vertices: vertices, Faces: faces}
		touched := make([]bool, len(faces))
		for _, e := range b.pair() {
			l, r := e.Faces[0], e.Faces[1]
			if touched[l] || touched[r] {
				continue
			}
			c, d := opposite(faces[l], e), opposite(faces[r], e)
			out := r3.Unit(b.areaVector(l))
			if r3.Dot(out, r3.Sub(vertices[d], vertices[e.A])) <= dent {
				continue
			}
			faces[l].Corners = []int{e.A, d, c}
			faces[r].Corners = []int{e.B, c, d}
			touched[l], touched[r], turned = true, true, true
		}
	}
}

// dent is the depth over the radius from which triangles are not flat.
const dent = 1e-9

// opposite returns the corner of a triangle that is not on its edge.
func opposite(face Face, e Edge) int {
	return face.Corners[slices.IndexFunc(face.Corners, func(c int) bool { return c != e.A && c != e.B })]
}
