package poly

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// What can be wrong with a surface from a file.
var (
	errFormat        = errors.New("not a file of this format")
	errTooLarge      = errors.New("too large a file: at most 16 MiB, 20000 triangles")
	errNotFinite     = errors.New("a coordinate is not a finite number")
	errSize          = errors.New("the farthest corner must be from 1 mm to 100 m from the origin")
	errOpenSurface   = errors.New("the surface is open")
	errInsideOut     = errors.New("the surface is wound inward")
	errPieces        = errors.New("there is more than one surface")
	errFlat          = errors.New("the surface encloses no room")
	errConcave       = errors.New("the surface is not convex")
	errOriginOutside = errors.New("the origin is not inside")
	errCrossing      = errors.New("the surface crosses or touches itself")
)

// Limits for a surface from a file.
const (
	MostFileBytes     = 16 << 20
	mostFileTriangles = 20_000
)

// What numbers in files are off by, over the farthest corner's distance: a file with six
// digits keeps its corners within sameCorner, and its faces are flat within samePlane.
const (
	sameCorner = 1e-5
	samePlane  = 5e-5
)

// surface is triangles on their way to a solid. The farthest corner is 1 from the origin.
type surface struct {
	Mesh
	reach  float64        // m, what 1 stands for
	beside map[[2]int]int // the triangle that runs along an edge
	planes []Plane        // by region
	region []int          // by triangle; -1: none yet
}

// convex makes a solid from polygons with corners in mm. Errors say what and where, without
// the file.
func convex(points []r3.Vec, polygons [][]int) (Solid, error) {
	s, err := newSurface(points, polygons)
	if err != nil {
		return Solid{}, err
	}
	for _, check := range []func() error{s.closed, s.single, s.outward, s.flatten, s.bulging} {
		if err := check(); err != nil {
			return Solid{}, err
		}
	}
	return s.solid()
}

// newSurface joins corners that are one and divides polygons into triangles.
func newSurface(points []r3.Vec, polygons [][]int) (*surface, error) {
	var used []r3.Vec
	for i, polygon := range polygons {
		for _, c := range polygon {
			p := points[c]
			if !finite(p.X) || !finite(p.Y) || !finite(p.Z) {
				return nil, fmt.Errorf("%w: face %d", errNotFinite, i+1)
			}
			used = append(used, r3.Scale(1e-3, p))
		}
	}
	s := &surface{reach: Farthest(used), beside: make(map[[2]int]int)}
	if s.reach == 0 {
		return nil, fmt.Errorf("%w: no face has a corner off the origin", errFlat)
	}
	if !(s.reach >= 1e-3*(1-sameCorner) && s.reach <= 100*(1+sameCorner)) {
		return nil, prose.Errorf("%w, not %.3g m", errSize, s.reach)
	}
	for i := range used {
		used[i] = r3.Scale(1/s.reach, used[i])
	}
	var place []int
	s.Vertices, place = Welded(used, sameCorner)
	for _, polygon := range polygons {
		corners := place[:len(polygon)]
		place = place[len(polygon):]
		for i := 2; i < len(corners); i++ {
			t := [3]int{corners[0], corners[i-1], corners[i]}
			if t[0] != t[1] && t[1] != t[2] && t[2] != t[0] {
				s.Triangles = append(s.Triangles, t)
			}
		}
	}
	if len(s.Triangles) > mostFileTriangles {
		return nil, fmt.Errorf("%w, not %d triangles", errTooLarge, len(s.Triangles))
	}
	return s, nil
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// closed checks that each edge has one triangle on either side, and notes them.
func (s *surface) closed() error {
	uses := make(map[[2]int]int)
	for i, t := range s.Triangles {
		for k, p := range t {
			e := [2]int{p, t[(k+1)%3]}
			uses[e]++
			s.beside[e] = i
		}
	}
	for _, t := range s.Triangles {
		for k, p := range t {
			q := t[(k+1)%3]
			along, back := uses[[2]int{p, q}], uses[[2]int{q, p}]
			if along == 1 && back == 1 {
				continue
			}
			err, sides := errOpenSurface, "one face"
			if along+back > 1 {
				err = errInsideOut
				sides = fmt.Sprintf("%s one way round, %d the other", prose.Count(along, "face", "faces"), back)
			}
			if along+back > 2 {
				err = errCrossing
			}
			return fmt.Errorf("%w: the edge from %s to %s has %s", err, s.where(p), s.where(q), sides)
		}
	}
	return nil
}

// where says where a corner is, in the file's unit.
func (s *surface) where(corner int) string {
	p := r3.Scale(1000*s.reach, s.Vertices[corner])
	return prose.Sprintf("(%.6g, %.6g, %.6g) mm", p.X, p.Y, p.Z)
}

// flood gives a region to a triangle and to all that hang together with it and may have it.
func (s *surface) flood(from, region int, may func(t int) bool) {
	s.region[from] = region
	for queue := []int{from}; len(queue) > 0; {
		c := s.Triangles[queue[len(queue)-1]]
		queue = queue[:len(queue)-1]
		for k, p := range c {
			if n := s.beside[[2]int{c[(k+1)%3], p}]; s.region[n] < 0 && may(n) {
				s.region[n] = region
				queue = append(queue, n)
			}
		}
	}
}

// single checks that all triangles hang together.
func (s *surface) single() error {
	if len(s.Triangles) == 0 {
		return fmt.Errorf("%w: there is no face", errFlat)
	}
	s.region = slices.Repeat([]int{-1}, len(s.Triangles))
	s.flood(0, 0, func(int) bool { return true })
	if t := slices.Index(s.region, -1); t >= 0 {
		return fmt.Errorf("%w: a second one at %s", errPieces, s.where(s.Triangles[t][0]))
	}
	return nil
}

func (s *surface) triangle(t int) r3.Triangle {
	c := s.Triangles[t]
	return r3.Triangle{s.Vertices[c[0]], s.Vertices[c[1]], s.Vertices[c[2]]}
}

// outward checks that the room is on the inner side.
func (s *surface) outward() error {
	switch v := s.Volume(); {
	case v < -samePlane:
		return errInsideOut
	case v < samePlane:
		return errFlat
	}
	return nil
}

// flatten finds the regions of triangles that lie in one plane, each from its largest
// triangle on.
func (s *surface) flatten() error {
	twice := make([]float64, len(s.Triangles))
	order := make([]int, len(s.Triangles))
	for t := range s.Triangles {
		twice[t], order[t], s.region[t] = r3.Norm(s.triangle(t).Normal()), t, -1
	}
	slices.SortStableFunc(order, func(t, u int) int { return cmp.Compare(twice[u], twice[t]) })
	for _, from := range order {
		if s.region[from] >= 0 {
			continue
		}
		var plane Plane
		if normal := s.triangle(from).Normal(); normal != (r3.Vec{}) {
			plane.Normal = r3.Unit(normal)
		}
		plane.Offset = r3.Dot(plane.Normal, s.triangle(from).Centroid())
		s.planes = append(s.planes, plane)
		s.flood(from, len(s.planes)-1, func(t int) bool { // in the plane, and not upside down
			for _, c := range s.Triangles[t] {
				if math.Abs(plane.Above(s.Vertices[c])) > samePlane {
					return false
				}
			}
			return r3.Dot(s.triangle(t).Normal(), plane.Normal) > -samePlane*samePlane
		})
	}
	return nil
}

// bulging checks that no corner is beyond a face, that the origin is inside all of them, and
// that the faces go round it once.
func (s *surface) bulging() error {
	face := func(region int) string { return s.where(s.Triangles[slices.Index(s.region, region)][0]) }
	for i, plane := range s.planes {
		for c, p := range s.Vertices {
			if plane.Above(p) > samePlane {
				return fmt.Errorf("%w: the corner %s is beyond the face at %s", errConcave, s.where(c), face(i))
			}
		}
	}
	for i, plane := range s.planes {
		if plane.Offset < samePlane {
			return prose.Errorf("%w: it is %.3g mm beyond the face at %s", errOriginOutside, -1000*s.reach*plane.Offset, face(i))
		}
	}
	sum := 0.0
	for t := range s.Triangles {
		sum += solidAngle(s.triangle(t))
	}
	if math.Abs(sum-4*math.Pi) > 1 {
		return fmt.Errorf("%w: it goes round the origin %.0f times", errCrossing, sum/(4*math.Pi))
	}
	return nil
}

// solidAngle returns what a triangle covers seen from the origin, in sr (A. Van Oosterom and
// J. Strackee, IEEE Trans. Biomed. Eng. 30 (1983) 125).
func solidAngle(t r3.Triangle) float64 {
	a, b, c := r3.Norm(t[0]), r3.Norm(t[1]), r3.Norm(t[2])
	up := r3.Dot(t[0], r3.Cross(t[1], t[2]))
	down := a*b*c + r3.Dot(t[0], t[1])*c + r3.Dot(t[1], t[2])*a + r3.Dot(t[2], t[0])*b
	return 2 * math.Atan2(up, down)
}

// solid makes a face of each region. Corners in the middle of a face or an edge go.
func (s *surface) solid() (Solid, error) {
	outlines, err := s.outlines()
	if err != nil {
		return Solid{}, err
	}
	faces := make([]int, len(s.Vertices)) // round each corner
	for _, outline := range outlines {
		for _, c := range outline {
			faces[c]++
		}
	}
	out := make([]Face, len(outlines))
	edges := 0
	for i, outline := range outlines {
		for _, c := range outline {
			if faces[c] > 2 {
				out[i].Corners = append(out[i].Corners, c)
			}
		}
		edges += len(out[i].Corners)
		if len(out[i].Corners) < 3 {
			return Solid{}, fmt.Errorf("%w: the face at %s has fewer than three corners", errFlat, s.where(outline[0]))
		}
	}
	made := Solid{s.Vertices, out}.compact().Times(s.reach)
	if len(made.Vertices)-edges/2+len(out) != 2 {
		return Solid{}, fmt.Errorf("%w: %d corners, %d edges and %d faces do not go together", errCrossing,
			len(made.Vertices), edges/2, len(out))
	}
	return made, nil
}

// outlines returns the corners round each region.
func (s *surface) outlines() ([][]int, error) {
	next := make([]map[int]int, len(s.planes))
	first := make([]int, len(s.planes))
	for t, c := range s.Triangles {
		r := s.region[t]
		for k, p := range c {
			q := c[(k+1)%3]
			if s.region[s.beside[[2]int{q, p}]] == r {
				continue
			}
			if next[r] == nil {
				next[r], first[r] = make(map[int]int), p
			}
			if _, twice := next[r][p]; twice {
				return nil, fmt.Errorf("%w: at %s", errCrossing, s.where(p))
			}
			next[r][p] = q
		}
	}
	out := make([][]int, len(next))
	for r, after := range next {
		if after == nil {
			return nil, errFlat // all in one plane
		}
		for p := first[r]; ; {
			out[r] = append(out[r], p)
			if p = after[p]; p == first[r] {
				break
			}
		}
		if len(out[r]) != len(after) {
			return nil, fmt.Errorf("%w: the face at %s has a hole", errCrossing, s.where(first[r]))
		}
	}
	return out, nil
}
