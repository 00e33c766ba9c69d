package body

import (
	"cmp"
	"fmt"
	"slices"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// MostSubdivision is the finest division that Geodesic makes.
const MostSubdivision = 16

// Geodesic returns the class I division of a base (icosahedron, octahedron or
// tetrahedron): each of its edges is divided into subdivision equal parts, each
// flat face into subdivision squared triangles, and the points are pushed out
// to a sphere of a radius in m (Kenner, Geodesic Math and How to Use It, 1976).
func Geodesic(base string, subdivision int, radius float64) (*Body, error) {
	if subdivision < 1 || subdivision > MostSubdivision {
		return nil, fmt.Errorf("subdivision must be from 1 to 16, not %d", subdivision)
	}
	return GeodesicMN(base, subdivision, 0, radius)
}

// GeodesicMN returns the division of a base (icosahedron, octahedron or
// tetrahedron) whose corners are m steps along a line of triangles and then n
// steps to the left apart, seen from outside: class I where m or n is 0, class
// II where they are equal, class III for any others, which have a mirror image
// with m and n changed over. Each face of the base gives T = m*m + m*n + n*n
// triangles; those that lie across an edge of the base count half on either
// side (D. L. D. Caspar and A. Klug, Cold Spring Harb. Symp. Quant. Biol. 27
// (1962) 1; H. S. M. Coxeter, Virus macromolecules and geodesic domes, 1971).
// The points are taken from the flat faces and pushed out to a sphere of a
// radius in m.
//
// On a tetrahedron, class I from a subdivision of 4 on, that leaves dents near
// the corners: edges that lie deeper than one between the other two corners of
// their triangles would. Each such edge is turned to join those, so that the
// body is convex; how many edges and faces there are stays the same.
func GeodesicMN(base string, m, n int, radius float64) (*Body, error) {
	if m < 0 || n < 0 || m > MostSubdivision || n > MostSubdivision || m+n < 1 || m+n > MostSubdivision {
		return nil, fmt.Errorf("subdivision must be from 1 to 16 in all and no part below 0, not %d and %d", m, n)
	}
	if base != "icosahedron" && base != "octahedron" && base != "tetrahedron" {
		return nil, fmt.Errorf("%w to divide: %q", ErrUnknownShape, base)
	}
	if err := checkRadius(radius); err != nil {
		return nil, err
	}
	name := fmt.Sprintf("geodesic %s %d,%d", base, m, n)
	if m == 0 || n == 0 {
		m, n = m+n, 0
		name = fmt.Sprintf("geodesic %s %d", base, m)
	}
	l := lattice{
		base: corners(base), m: m, n: n, t: m*m + m*n + n*n,
		across: make(map[[2]int]int), known: make(map[[3]int]bool), index: make(map[[3]share]int),
	}
	faces := poly.Hull(l.base)
	for _, face := range faces {
		for i, c := range face.Corners {
			l.across[[2]int{c, face.Corners[(i+1)%3]}] = face.Corners[(i+2)%3]
		}
	}
	for _, face := range faces {
		l.divide([3]int(face.Corners))
	}
	mend(l.made)
	return settle(&Body{Name: name, Radius: radius, Solid: l.made}), nil
}

// lattice lays a triangle of the base over a plane of small triangles, a step
// wide each. Places are a steps along a line and b steps along the one 60
// degrees to its left. The base's triangle has its corners at (0, 0), (m, n)
// and a turn to the left of that, (-n, m+n).
type lattice struct {
	base    []r3.Vec // on the unit sphere
	m, n, t int
	across  map[[2]int]int   // the third corner of the face that runs along an edge
	known   map[[3]int]bool  // triangles that stand already
	index   map[[3]share]int // points that stand already
	made    poly.Solid
}

// share is a whole weight at a corner of the base. The shares of a point, in
// order of their corners, are what the faces that meet there agree on.
type share struct{ weight, corner int }

// divide adds the small triangles whose middles are in a triangle of the base
// or on its border. A neighbour that has the same triangle finds it standing.
func (l *lattice) divide(c [3]int) {
	for a := -l.n - 1; a <= l.m; a++ {
		for b := -1; b <= l.m+l.n; b++ {
			l.triangle(c, [3][2]int{{a, b}, {a + 1, b}, {a, b + 1}})
			l.triangle(c, [3][2]int{{a + 1, b}, {a + 1, b + 1}, {a, b + 1}})
		}
	}
}

func (l *lattice) triangle(c [3]int, places [3][2]int) {
	var middle [3]int
	var weights [3][3]int
	for i, p := range places {
		weights[i] = l.weights(p[0], p[1])
		for j, w := range weights[i] {
			middle[j] += w
		}
	}
	if slices.Min(middle[:]) < 0 {
		return
	}
	var v [3]int
	for i, w := range weights {
		v[i] = l.home(c, w)
	}
	sorted := v
	slices.Sort(sorted[:])
	if !l.known[sorted] {
		l.known[sorted] = true
		l.made.Faces = append(l.made.Faces, poly.Face{Corners: v[:]})
	}
}

// weights returns the shares, of t in all, that a place has of the base's
// three corners; one is negative where it is beyond the edge opposite to it.
func (l *lattice) weights(a, b int) [3]int {
	second := a*(l.m+l.n) + b*l.n
	third := b*l.m - a*l.n
	return [3]int{l.t - second - third, second, third}
}

// home returns the vertex at three shares. A place beyond an edge belongs to
// the neighbour there, whose far corner is, folded flat, where the near one
// comes to by half a turn about the edge's middle.
func (l *lattice) home(c, w [3]int) int {
	for {
		far := 0
		for i := range w {
			if w[i] < w[far] {
				far = i
			}
		}
		if w[far] >= 0 {
			break
		}
		p, q := (far+1)%3, (far+2)%3
		w[p], w[q], w[far] = w[p]+w[far], w[q]+w[far], -w[far]
		third := l.across[[2]int{c[q], c[p]}]
		c[far] = third
		// The neighbour runs the other way round.
		c[p], c[q], w[p], w[q] = c[q], c[p], w[q], w[p]
	}
	var shares [3]share
	var sum r3.Vec
	for i := range w {
		if w[i] > 0 {
			shares[i] = share{w[i], c[i]}
		}
	}
	slices.SortFunc(shares[:], func(a, b share) int {
		return cmp.Or(cmp.Compare(a.corner, b.corner), cmp.Compare(a.weight, b.weight))
	})
	if v, ok := l.index[shares]; ok {
		return v
	}
	for _, s := range shares {
		sum = r3.Add(sum, r3.Scale(float64(s.weight), l.base[s.corner]))
	}
	v := len(l.made.Vertices)
	l.index[shares] = v
	l.made.Vertices = append(l.made.Vertices, r3.Unit(sum))
	return v
}

// mend turns the edges of a triangulated unit sphere that lie in a dent until
// there is none. It ends because every turn adds to the volume.
func mend(s poly.Solid) {
	for turned := true; turned; {
		turned = false
		touched := make([]bool, len(s.Faces))
		for _, e := range s.Edges() {
			l, r := e.Faces[0], e.Faces[1]
			if touched[l] || touched[r] {
				continue
			}
			c, d := opposite(s.Faces[l], e), opposite(s.Faces[r], e)
			if r3.Dot(s.Normal(l), r3.Sub(s.Vertices[d], s.Vertices[e.A])) <= dent {
				continue
			}
			s.Faces[l].Corners = []int{e.A, d, c}
			s.Faces[r].Corners = []int{e.B, c, d}
			touched[l], touched[r], turned = true, true, true
		}
	}
}

// dent is the depth over the radius from which triangles are not flat.
const dent = 1e-9

// opposite returns the corner of a triangle that is not on its edge.
func opposite(face poly.Face, e poly.Edge) int {
	return face.Corners[slices.IndexFunc(face.Corners, func(c int) bool { return c != e.A && c != e.B })]
}
