package body

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// What can be wrong with a body from a file.
var (
	ErrFormat        = errors.New("not a file of this format")
	ErrTooLarge      = errors.New("too large a file: at most 16 MiB, 20000 triangles")
	ErrNotFinite     = errors.New("a coordinate is not a finite number")
	ErrSize          = errors.New("the farthest corner must be from 1 mm to 100 m from the origin")
	ErrOpen          = errors.New("the surface is open")
	ErrInsideOut     = errors.New("the surface is wound inward")
	ErrPieces        = errors.New("there is more than one surface")
	ErrFlat          = errors.New("the surface encloses no room")
	ErrConcave       = errors.New("the surface is not convex")
	ErrOriginOutside = errors.New("the origin is not inside")
	ErrCrossing      = errors.New("the surface crosses or touches itself")
)

// Limits for a body from a file.
const (
	MostFileBytes     = 16 << 20
	MostFileTriangles = 20_000
)

// What numbers in files are off by, over the farthest corner's distance: a file
// with six digits keeps its corners within sameCorner, and its faces are flat
// within samePlane.
const (
	sameCorner = 1e-5
	samePlane  = 5e-5
)

// mesh is a surface of triangles on its way to a body. Its farthest corner is 1
// from the origin.
type mesh struct {
	reach     float64 // m, what 1 stands for
	points    []r3.Vec
	triangles [][3]int
	beside    map[[2]int]int // the triangle that runs along an edge
	planes    []facePlane    // by region
	region    []int          // by triangle
}

// facePlane is the plane of a face: the points p with p.normal = height.
type facePlane struct {
	normal r3.Vec
	height float64
}

// fromPolygons makes a body from polygons with corners in mm. Errors say what
// and where, without the file.
func fromPolygons(name string, points []r3.Vec, polygons [][]int) (*Body, error) {
	m, err := newMesh(points, polygons)
	if err != nil {
		return nil, err
	}
	for _, check := range []func() error{m.closed, m.single, m.outward} {
		if err := check(); err != nil {
			return nil, err
		}
	}
	m.flatten()
	if err := m.convex(); err != nil {
		return nil, err
	}
	return m.body(name)
}

// newMesh joins corners that are one and divides polygons into triangles.
func newMesh(points []r3.Vec, polygons [][]int) (*mesh, error) {
	var used []r3.Vec
	for i, polygon := range polygons {
		for _, c := range polygon {
			p := points[c]
			if !finite(p.X) || !finite(p.Y) || !finite(p.Z) {
				return nil, fmt.Errorf("%w: face %d", ErrNotFinite, i+1)
			}
			used = append(used, r3.Scale(1e-3, p))
		}
	}
	m := &mesh{reach: farthest(used), beside: make(map[[2]int]int)}
	if m.reach == 0 {
		return nil, fmt.Errorf("%w: no face has a corner off the origin", ErrFlat)
	}
	if !(m.reach >= 1e-3*(1-sameCorner) && m.reach <= 100*(1+sameCorner)) {
		return nil, prose.Errorf("%w, not %.3g m", ErrSize, m.reach)
	}
	for i := range used {
		used[i] = r3.Scale(1/m.reach, used[i])
	}
	var place []int
	m.points, place = weld(used, sameCorner)
	for _, polygon := range polygons {
		corners := place[:len(polygon)]
		place = place[len(polygon):]
		for i := 2; i < len(corners); i++ {
			t := [3]int{corners[0], corners[i-1], corners[i]}
			if t[0] != t[1] && t[1] != t[2] && t[2] != t[0] {
				m.triangles = append(m.triangles, t)
			}
		}
	}
	if len(m.triangles) > MostFileTriangles {
		return nil, fmt.Errorf("%w, not %d triangles", ErrTooLarge, len(m.triangles))
	}
	return m, nil
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// closed checks that each edge has one triangle on either side, and notes them.
func (m *mesh) closed() error {
	uses := make(map[[2]int]int)
	for i, t := range m.triangles {
		for k, p := range t {
			e := [2]int{p, t[(k+1)%3]}
			uses[e]++
			m.beside[e] = i
		}
	}
	for _, t := range m.triangles {
		for k, p := range t {
			q := t[(k+1)%3]
			along, back := uses[[2]int{p, q}], uses[[2]int{q, p}]
			var err error
			switch {
			case along+back > 2:
				err = ErrCrossing
			case along == 2:
				err = ErrInsideOut
			case back == 0:
				err = ErrOpen
			default:
				continue
			}
			return fmt.Errorf("%w: the edge from %s to %s has %s", err, m.where(p), m.where(q), sided(along, back))
		}
	}
	return nil
}

// sided says how many faces an edge has each way.
func sided(along, back int) string {
	if along+back == 1 {
		return "one face"
	}
	return fmt.Sprintf("%s one way round, %d the other", prose.Count(along, "face", "faces"), back)
}

// where says where a corner is, in the file's unit.
func (m *mesh) where(corner int) string {
	p := r3.Scale(1000*m.reach, m.points[corner])
	return prose.Sprintf("(%.6g, %.6g, %.6g) mm", p.X, p.Y, p.Z)
}

// single checks that all triangles hang together.
func (m *mesh) single() error {
	if len(m.triangles) == 0 {
		return fmt.Errorf("%w: there is no face", ErrFlat)
	}
	seen := make([]bool, len(m.triangles))
	seen[0] = true
	queue := []int{0}
	for len(queue) > 0 {
		t := queue[len(queue)-1]
		queue = queue[:len(queue)-1]
		for _, n := range m.neighbours(t) {
			if !seen[n] {
				seen[n] = true
				queue = append(queue, n)
			}
		}
	}
	if t := slices.Index(seen, false); t >= 0 {
		return fmt.Errorf("%w: a second one at %s", ErrPieces, m.where(m.triangles[t][0]))
	}
	return nil
}

// neighbours returns the triangles across the three edges of one.
func (m *mesh) neighbours(t int) [3]int {
	c := m.triangles[t]
	return [3]int{m.beside[[2]int{c[1], c[0]}], m.beside[[2]int{c[2], c[1]}], m.beside[[2]int{c[0], c[2]}]}
}

func (m *mesh) triangle(t int) r3.Triangle {
	c := m.triangles[t]
	return r3.Triangle{m.points[c[0]], m.points[c[1]], m.points[c[2]]}
}

// outward checks that the room is on the inner side.
func (m *mesh) outward() error {
	sum := 0.0
	for t := range m.triangles {
		sum += r3.Dot(m.triangle(t).Centroid(), m.triangle(t).Normal()) / 6
	}
	switch {
	case sum < -samePlane:
		return ErrInsideOut
	case sum < samePlane:
		return ErrFlat
	}
	return nil
}

// flatten finds the regions of triangles that lie in one plane, each from its
// largest triangle on.
func (m *mesh) flatten() {
	twice := make([]float64, len(m.triangles))
	order := make([]int, len(m.triangles))
	m.region = make([]int, len(m.triangles))
	for t := range m.triangles {
		twice[t], order[t], m.region[t] = r3.Norm(m.triangle(t).Normal()), t, -1
	}
	slices.SortStableFunc(order, func(s, t int) int { return cmp.Compare(twice[t], twice[s]) })
	for _, t := range order {
		if m.region[t] < 0 {
			m.grow(t)
		}
	}
}

// grow makes a region of a triangle and all that lie in its plane.
func (m *mesh) grow(from int) {
	var plane facePlane
	if normal := m.triangle(from).Normal(); normal != (r3.Vec{}) {
		plane.normal = r3.Unit(normal)
	}
	plane.height = r3.Dot(plane.normal, m.triangle(from).Centroid())
	at := len(m.planes)
	m.planes = append(m.planes, plane)
	m.region[from] = at
	queue := []int{from}
	for len(queue) > 0 {
		t := queue[len(queue)-1]
		queue = queue[:len(queue)-1]
		for _, n := range m.neighbours(t) {
			if m.region[n] < 0 && m.within(n, plane) {
				m.region[n] = at
				queue = append(queue, n)
			}
		}
	}
}

// within tells whether a triangle lies in a plane, and not upside down.
func (m *mesh) within(t int, plane facePlane) bool {
	for _, c := range m.triangles[t] {
		if math.Abs(r3.Dot(plane.normal, m.points[c])-plane.height) > samePlane {
			return false
		}
	}
	return r3.Dot(m.triangle(t).Normal(), plane.normal) > -samePlane*samePlane
}

// convex checks that no corner is beyond a face, that the origin is inside all
// of them, and that the faces go round it once.
func (m *mesh) convex() error {
	for i, plane := range m.planes {
		for c, p := range m.points {
			if r3.Dot(plane.normal, p)-plane.height > samePlane {
				return fmt.Errorf("%w: the corner %s is beyond the face at %s", ErrConcave,
					m.where(c), m.where(m.triangles[slices.Index(m.region, i)][0]))
			}
		}
	}
	for i, plane := range m.planes {
		if plane.height < samePlane {
			return prose.Errorf("%w: it is %.3g mm beyond the face at %s", ErrOriginOutside,
				-1000*m.reach*plane.height, m.where(m.triangles[slices.Index(m.region, i)][0]))
		}
	}
	sum := 0.0
	for t := range m.triangles {
		sum += solidAngle(m.triangle(t))
	}
	if math.Abs(sum-4*math.Pi) > 1 {
		return fmt.Errorf("%w: it goes round the origin %.0f times", ErrCrossing, sum/(4*math.Pi))
	}
	return nil
}

// solidAngle returns what a triangle covers seen from the origin, in sr (A. Van
// Oosterom and J. Strackee, IEEE Trans. Biomed. Eng. 30 (1983) 125).
func solidAngle(t r3.Triangle) float64 {
	a, b, c := r3.Norm(t[0]), r3.Norm(t[1]), r3.Norm(t[2])
	up := r3.Dot(t[0], r3.Cross(t[1], t[2]))
	down := a*b*c + r3.Dot(t[0], t[1])*c + r3.Dot(t[1], t[2])*a + r3.Dot(t[2], t[0])*b
	return 2 * math.Atan2(up, down)
}

// body makes a face of each region. Corners in the middle of a face or an edge
// go.
func (m *mesh) body(name string) (*Body, error) {
	outlines, err := m.outlines()
	if err != nil {
		return nil, err
	}
	faces := make([]int, len(m.points)) // round each corner
	for _, outline := range outlines {
		for _, c := range outline {
			faces[c]++
		}
	}
	place := make([]int, len(m.points))
	var points []r3.Vec
	for c, n := range faces {
		if n > 2 {
			place[c] = len(points)
			points = append(points, m.points[c])
		}
	}
	out := make([]Face, len(outlines))
	edges := 0
	for i, outline := range outlines {
		for _, c := range outline {
			if faces[c] > 2 {
				out[i].Corners = append(out[i].Corners, place[c])
			}
		}
		edges += len(out[i].Corners)
		if len(out[i].Corners) < 3 {
			return nil, fmt.Errorf("%w: the face at %s has fewer than three corners", ErrFlat, m.where(outline[0]))
		}
	}
	if len(points)-edges/2+len(out) != 2 {
		return nil, fmt.Errorf("%w: %d corners, %d edges and %d faces do not go together", ErrCrossing, len(points), edges/2, len(out))
	}
	return fitted(name, points, out, m.reach*farthest(points)), nil
}

// outlines returns the corners round each region.
func (m *mesh) outlines() ([][]int, error) {
	next := make([]map[int]int, len(m.planes))
	first := make([]int, len(m.planes))
	for t, c := range m.triangles {
		r := m.region[t]
		for k, p := range c {
			q := c[(k+1)%3]
			if m.region[m.beside[[2]int{q, p}]] == r {
				continue
			}
			if next[r] == nil {
				next[r], first[r] = make(map[int]int), p
			}
			if _, twice := next[r][p]; twice {
				return nil, fmt.Errorf("%w: at %s", ErrCrossing, m.where(p))
			}
			next[r][p] = q
		}
	}
	out := make([][]int, len(next))
	for r, after := range next {
		if after == nil {
			return nil, ErrFlat // all in one plane
		}
		for p := first[r]; ; {
			out[r] = append(out[r], p)
			if p = after[p]; p == first[r] {
				break
			}
		}
		if len(out[r]) != len(after) {
			return nil, fmt.Errorf("%w: the face at %s has a hole", ErrCrossing, m.where(first[r]))
		}
	}
	return out, nil
}
