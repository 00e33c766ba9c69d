package shell

import (
	"errors"
	"fmt"
	"math"

	"pappus/layout/body"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// What can be wrong with a shell that is asked for.
var (
	ErrWall        = errors.New("the wall must be a length above 0 that leaves room inside")
	ErrCutout      = errors.New("the cut-out does not fit")
	ErrNothingLeft = errors.New("nothing is left")
)

// ChordError is the most that a cut-out's corners stand out of its circle, in m.
const ChordError = 2e-5

// Hole is a round cut-out at a mount.
type Hole struct {
	ID     int     // the mount's number, for errors
	Point  r3.Vec  // its centre in m; it is moved square to the face into its plane
	Face   int     // index into the body's faces; on a ball it is not looked at
	Radius float64 // m
	// Seat is the radius in m of the flat that a ball gets there; on other
	// bodies it is not looked at.
	Seat float64
}

// Make returns the shell of a body with a wall in m and its cut-outs: one closed
// surface wound outward. Errors wrap ErrWall and ErrCutout and name the mount.
func Make(b *body.Body, wall float64, holes []Hole) (Mesh, error) {
	if !(wall > 0) || math.IsInf(wall, 1) {
		return Mesh{}, prose.Errorf("%w: %g m", ErrWall, wall)
	}
	m, err := newMaker(b, wall, holes)
	if err != nil {
		return Mesh{}, err
	}
	if err := m.build(); err != nil {
		return Mesh{}, err
	}
	out := m.mesh.tidy()
	if err := out.Check(); err != nil {
		return Mesh{}, err
	}
	return out, nil
}

// maker puts a shell together.
type maker struct {
	wall   float64
	slack  float64
	planes []Plane // of the outside
	// lead is, for each plane, the first that it lies in: faces that lie in one
	// plane have one face inside.
	lead  []int
	base  int            // number of the base's plane, -1 for none
	holes map[int][]Hole // by the number of their plane
	outer surface
	inner surface
	mesh  Mesh
}

// surface is the outside or the inside: the corners of each plane's face.
type surface map[int][]int

func newMaker(b *body.Body, wall float64, holes []Hole) (*maker, error) {
	m := &maker{wall: wall, slack: merge * b.Radius, base: -1, holes: make(map[int][]Hole)}
	var err error
	if b.IsBall() {
		err = m.takeBall(b, holes)
	} else {
		err = m.takeFaces(b, holes)
	}
	if err != nil {
		return nil, err
	}
	m.findLeads()
	return m, m.hollow(b.Radius)
}

// level is how far unit normals of one plane may be apart: a turn of 0.006
// degrees.
const level = 1e-4

// findLeads finds the planes that are the same as one before.
func (m *maker) findLeads() {
	m.lead = make([]int, len(m.planes))
	for i, p := range m.planes {
		m.lead[i] = i
		corners := m.outer[i]
		for k := 0; k < i && len(corners) > 0; k++ {
			q := m.planes[k]
			if r3.Norm2(r3.Sub(p.Normal, q.Normal)) < level*level && math.Abs(q.above(m.mesh.Vertices[corners[0]])) < 2*m.slack {
				m.lead[i] = k
				break
			}
		}
	}
}

// takeFaces takes the outside from the faces of a body.
func (m *maker) takeFaces(b *body.Body, holes []Hole) error {
	m.mesh.Vertices = append(m.mesh.Vertices, b.Vertices...)
	m.outer = make(surface)
	for f, face := range b.Faces {
		n := b.Normal(f)
		m.planes = append(m.planes, Plane{n, r3.Dot(n, b.Vertices[face.Corners[0]])})
		m.outer[f] = face.Corners
		if face.Base {
			m.base = f
		}
	}
	for _, h := range holes {
		if h.Face < 0 || h.Face >= len(b.Faces) || b.Faces[h.Face].Base {
			return fmt.Errorf("mount %d: %w: it sits on no face, so there is no flat to cut it into", h.ID, ErrCutout)
		}
		m.holes[h.Face] = append(m.holes[h.Face], h)
	}
	return nil
}

// hollow finds the inside: each plane moved inward by the wall, the base not.
func (m *maker) hollow(radius float64) error {
	in := make([]Plane, len(m.planes))
	for i, p := range m.planes {
		if i != m.base {
			p.Offset -= m.wall
		}
		in[i] = p
	}
	s, err := meet(in, radius)
	if errors.Is(err, ErrNothingLeft) {
		return prose.Errorf("%w: %.4g mm leaves none", ErrWall, m.wall*1e3)
	}
	if err != nil {
		return err
	}
	m.inner = m.add(s)
	return nil
}

// add adds the vertices of a solid to the mesh and returns its faces.
func (m *maker) add(s *solid) surface {
	first := len(m.mesh.Vertices)
	m.mesh.Vertices = append(m.mesh.Vertices, s.vertices...)
	out := make(surface, len(s.faces))
	for i, f := range s.faces {
		corners := make([]int, len(f))
		for k, v := range f {
			corners[k] = first + v
		}
		out[s.plane[i]] = corners
	}
	return out
}

// build makes the triangles.
func (m *maker) build() error {
	for p := range m.planes {
		if p == m.base {
			if err := m.ring(); err != nil {
				return err
			}
		} else if err := m.wallOf(p); err != nil {
			return err
		}
	}
	return nil
}

// ring closes a cut body's wall below.
func (m *maker) ring() error {
	inside, ok := m.inner[m.base]
	if !ok {
		return prose.Errorf("%w: %.4g mm leaves no opening below", ErrWall, m.wall*1e3)
	}
	return m.fill(m.base, m.outer[m.base], [][]int{reversed(inside)}, false)
}

// wallOf makes the wall at one plane: outside and cut-outs, and the inside of
// the planes that it leads.
func (m *maker) wallOf(p int) error {
	if m.lead[p] != p {
		return nil
	}
	var inside [][]int
	var done []Hole
	for q := p; q < len(m.planes); q++ {
		if m.lead[q] != p {
			continue
		}
		var outside [][]int
		for _, h := range m.holes[q] {
			if err := m.checkHole(q, h, done); err != nil {
				return err
			}
			done = append(done, h)
			o, in := m.drill(m.planes[q], h)
			outside, inside = append(outside, reversed(o)), append(inside, reversed(in))
		}
		if corners, ok := m.outer[q]; ok {
			if err := m.fill(q, corners, outside, false); err != nil {
				return err
			}
		}
	}
	if corners, ok := m.inner[p]; ok {
		return m.fill(p, corners, inside, true)
	}
	return nil
}

// fill makes the triangles of a flat face, turned round for the inside.
func (m *maker) fill(p int, outline []int, holes [][]int, turned bool) error {
	triangles, err := m.flat(p, outline, holes)
	if err != nil {
		return err
	}
	for _, t := range triangles {
		if turned {
			t[1], t[2] = t[2], t[1]
		}
		m.mesh.Triangles = append(m.mesh.Triangles, t)
	}
	return nil
}

// flat triangulates loops in a plane, on points of their own.
func (m *maker) flat(p int, outline []int, holes [][]int) ([][3]int, error) {
	var corners []r3.Vec
	var back []int
	take := func(loop []int) []int {
		out := make([]int, len(loop))
		for i, v := range loop {
			out[i] = len(back)
			back, corners = append(back, v), append(corners, m.mesh.Vertices[v])
		}
		return out
	}
	edge := take(outline)
	inside := make([][]int, len(holes))
	for i, h := range holes {
		inside[i] = take(h)
	}
	triangles, err := triangulate(flatten(corners, m.planes[p].Normal), edge, inside)
	for i, t := range triangles {
		triangles[i] = [3]int{back[t[0]], back[t[1]], back[t[2]]}
	}
	return triangles, err
}

func reversed(loop []int) []int {
	out := make([]int, len(loop))
	for i, v := range loop {
		out[len(loop)-1-i] = v
	}
	return out
}

// drill makes the wall of a cut-out and returns its loops outside and inside,
// counter-clockwise seen from outside.
func (m *maker) drill(p Plane, h Hole) (outside, inside []int) {
	n := Sides(h.Radius)
	right, up := across(p.Normal)
	centre := onPlane(p, h.Point)
	reach := h.Radius / math.Cos(math.Pi/float64(n))
	first := len(m.mesh.Vertices)
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		at := r3.Add(centre, r3.Add(r3.Scale(reach*cos, right), r3.Scale(reach*sin, up)))
		m.mesh.Vertices = append(m.mesh.Vertices, at, r3.Sub(at, r3.Scale(m.wall, p.Normal)))
		outside, inside = append(outside, first+2*i), append(inside, first+2*i+1)
	}
	for i := range n {
		k := (i + 1) % n
		m.mesh.Triangles = append(m.mesh.Triangles,
			[3]int{outside[i], outside[k], inside[k]}, [3]int{outside[i], inside[k], inside[i]})
	}
	return outside, inside
}

// Sides returns how many sides a cut-out of a radius in m gets, a multiple of 4,
// so that its corners stand out by no more than ChordError.
func Sides(radius float64) int {
	n := math.Pi / math.Acos(radius/(radius+ChordError))
	return max(24, 4*int(math.Ceil(n/4)))
}

func onPlane(p Plane, at r3.Vec) r3.Vec { return r3.Sub(at, r3.Scale(p.above(at), p.Normal)) }

// checkHole gives an error where a cut-out is not inside of its face, outside
// and inside of the wall, or meets one that is there already.
func (m *maker) checkHole(p int, h Hole, others []Hole) error {
	if !(h.Radius > 0) || math.IsInf(h.Radius, 1) {
		return prose.Errorf("mount %d: %w: its radius is %g m", h.ID, ErrCutout, h.Radius)
	}
	reach := h.Radius / math.Cos(math.Pi/float64(Sides(h.Radius)))
	for _, s := range []struct {
		of    surface
		at    int
		where string
	}{{m.outer, p, "its face"}, {m.inner, m.lead[p], "its face inside of the wall"}} {
		corners, ok := s.of[s.at]
		if !ok {
			return fmt.Errorf("mount %d: %w: nothing is left of %s", h.ID, ErrCutout, s.where)
		}
		if room := m.room(p, corners, h.Point); room < reach+m.slack {
			return prose.Errorf("mount %d: %w: its %.4g mm reach over the edge of %s, which has room for %.4g mm",
				h.ID, ErrCutout, 2e3*h.Radius, s.where, max(0, 2e3*room))
		}
	}
	for _, o := range others {
		apart := r3.Norm(r3.Sub(onPlane(m.planes[p], o.Point), onPlane(m.planes[p], h.Point)))
		if apart < reach+o.Radius/math.Cos(math.Pi/float64(Sides(o.Radius)))+m.slack {
			return prose.Errorf("mounts %d and %d: %w: they run into each other, their centres %.4g mm apart",
				o.ID, h.ID, ErrCutout, 1e3*apart)
		}
	}
	return nil
}

// room returns the radius of the largest circle round a point that stays inside
// a face.
func (m *maker) room(p int, corners []int, at r3.Vec) float64 {
	points := make([]r3.Vec, len(corners), len(corners)+1)
	for i, v := range corners {
		points[i] = m.mesh.Vertices[v]
	}
	flat := flatten(append(points, at), m.planes[p].Normal)
	centre, least := flat[len(corners)], math.Inf(1)
	for i := range corners {
		a, b := flat[i], flat[(i+1)%len(corners)]
		along := r2.Sub(b, a)
		least = min(least, r2.Cross(along, r2.Sub(centre, a))/r2.Norm(along))
	}
	return least
}
