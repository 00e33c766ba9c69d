package body

import (
	"cmp"
	"fmt"
	"slices"
)

// GeodesicMN returns the division of a base (icosahedron, octahedron or
// tetrahedron) whose corners are m steps along a line of triangles and then n
// steps to the left apart, seen from outside: class I where m or n is 0, class
// II where they are equal, class III for any others, which have a mirror image
// with m and n changed over. Each face of the base gives T = m*m + m*n + n*n
// triangles; those that lie across an edge of the base count half on either
// side (D. L. D. Caspar and A. Klug, Cold Spring Harb. Symp. Quant. Biol. 27
// (1962) 1; H. S. M. Coxeter, Virus macromolecules and geodesic domes, 1971).
// The points are taken from the flat faces and pushed out to a sphere of a
// radius in m. Dents are mended as [Geodesic] does it; for class I the body is
// that of Geodesic.
//
// Errors wrap ErrUnknownShape, ErrSubdivision, for m or n below 0 or a sum that
// is not from 1 to MostSubdivision, and ErrRadius.
func GeodesicMN(base string, m, n int, radius float64) (*Body, error) {
	if m < 0 || n < 0 || m > MostSubdivision || n > MostSubdivision || m+n < 1 || m+n > MostSubdivision {
		return nil, fmt.Errorf("%w in all and no part below 0, not %d and %d", ErrSubdivision, m, n)
	}
	if m == 0 || n == 0 {
		return Geodesic(base, m+n, radius)
	}
	if err := divisible(base, radius); err != nil {
		return nil, err
	}
	points := corners(base)
	l := lattice{
		divider: divider{base: points, index: make(map[[3]share]int)},
		m:       m, n: n, t: m*m + m*n + n*n,
		across: make(map[[2]int]int),
		known:  make(map[[3]int]bool),
	}
	faces := hull(points)
	for _, face := range faces {
		for i, c := range face.Corners {
			l.across[[2]int{c, face.Corners[(i+1)%3]}] = face.Corners[(i+2)%3]
		}
	}
	for _, face := range faces {
		l.divide([3]int(face.Corners))
	}
	mend(l.vertices, l.faces)
	return settle(&Body{
		Name:     fmt.Sprintf("geodesic %s %d,%d", base, m, n),
		Radius:   radius,
		Vertices: l.vertices,
		Faces:    l.faces,
	}), nil
}

// lattice lays a triangle of the base over a plane of small triangles, a step
// wide each. Places are a steps along a line and b steps along the one 60
// degrees to its left. The base's triangle has its corners at (0, 0), (m, n)
// and a turn to the left of that, (-n, m+n).
type lattice struct {
	divider
	m, n, t int
	across  map[[2]int]int  // the third corner of the face that runs along an edge
	known   map[[3]int]bool // triangles that stand already
}

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
		l.add(v[0], v[1], v[2])
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
	shares := [3]share{{w[0], c[0]}, {w[1], c[1]}, {w[2], c[2]}}
	slices.SortFunc(shares[:], func(a, b share) int { return cmp.Compare(a.corner, b.corner) })
	return l.point(shares)
}
