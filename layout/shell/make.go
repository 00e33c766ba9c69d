package shell

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"pappus/layout/body"
	"pappus/layout/poly"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// ErrCutout tells of a cut-out that a shell has no room for, and ErrNoFlat, which comes with it, of
// one that sits on no face.
var (
	ErrCutout = errors.New("the cut-out does not fit")
	ErrNoFlat = errors.New("there is no flat to cut it into")
)

var errWall = errors.New("the wall must be a length above 0 that leaves a hollow")

// ChordError is the most that a cut-out's corners stand out of its circle, in m.
const ChordError = 2e-5

// merge is the length over the radius within which a point counts as on a plane.
const merge = 1e-5

// Hole is a round cut-out at a mount.
type Hole struct {
	ID     int     // the mount's number, for errors
	Point  r3.Vec  // its centre in m; it is moved square to the face into its plane
	Normal r3.Vec  // unit length, outward
	Face   int     // index into the body's faces; on a ball it is not looked at
	Radius float64 // m
	// Seat is the radius in m of the flat that a ball gets there; on other
	// bodies it is not looked at.
	Seat float64
}

// Make returns the shell of a body with a wall in m and its cut-outs: one closed
// surface wound outward. An error about a cut-out wraps
// ErrCutout and names the mount.
func Make(b *body.Body, wall float64, holes []Hole) (poly.Mesh, error) {
	if !(wall > 0) || math.IsInf(wall, 1) {
		return poly.Mesh{}, prose.Errorf("%w: %.4g mm", errWall, 1e3*wall)
	}
	m, err := newMaker(b, wall, holes)
	if err != nil {
		return poly.Mesh{}, err
	}
	if err := m.build(); err != nil {
		return poly.Mesh{}, err
	}
	out := m.mesh.Tidy()
	if err := out.Check(); err != nil {
		return poly.Mesh{}, err
	}
	return out, nil
}

// maker puts a shell together.
type maker struct {
	wall   float64
	slack  float64
	planes []poly.Plane // of the outside
	// lead is, for each plane, the first that it lies in: faces that lie in one
	// plane have one face inside.
	lead  []int
	base  int            // number of the base's plane, -1 for none
	holes map[int][]Hole // by the number of their plane
	outer surface
	inner surface
	mesh  poly.Mesh
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
			if r3.Norm2(r3.Sub(p.Normal, q.Normal)) < level*level && math.Abs(q.Above(m.mesh.Vertices[corners[0]])) < 2*m.slack {
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
		m.planes = append(m.planes, b.Plane(f))
		m.outer[f] = face.Corners
		if face.Base() {
			m.base = f
		}
	}
	for _, h := range holes {
		if h.Face < 0 || h.Face >= len(b.Faces) || b.Faces[h.Face].Base() {
			return fmt.Errorf("mount %d: %w: it sits on no face, so %w", h.ID, ErrCutout, ErrNoFlat)
		}
		m.holes[h.Face] = append(m.holes[h.Face], h)
	}
	return nil
}

// hollow finds the inside: each plane moved inward by the wall, the base not.
func (m *maker) hollow(radius float64) error {
	in := make([]poly.Plane, len(m.planes))
	for i, p := range m.planes {
		if i != m.base {
			p.Offset -= m.wall
		}
		in[i] = p
	}
	s, err := poly.Meet(in, radius, m.slack)
	if err != nil {
		return err
	}
	if len(s.Faces) == 0 {
		return prose.Errorf("%w: %.4g mm", errWall, m.wall*1e3)
	}
	m.inner = m.add(s)
	return nil
}

// add adds the vertices of a solid to the mesh and returns its faces.
func (m *maker) add(s poly.Solid) surface {
	first := len(m.mesh.Vertices)
	m.mesh.Vertices = append(m.mesh.Vertices, s.Vertices...)
	out := make(surface, len(s.Faces))
	for _, f := range s.Faces {
		corners := make([]int, len(f.Corners))
		for k, v := range f.Corners {
			corners[k] = first + v
		}
		out[f.Cut-1] = corners
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
		return prose.Errorf("%w: %.4g mm leaves no opening below", errWall, m.wall*1e3)
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
	triangles, err := poly.Fill(m.mesh.Vertices, m.planes[p].Normal, append([][]int{outline}, holes...)...)
	for _, t := range triangles {
		if turned {
			t[1], t[2] = t[2], t[1]
		}
		m.mesh.Triangles = append(m.mesh.Triangles, t)
	}
	return err
}

func reversed(loop []int) []int {
	out := slices.Clone(loop)
	slices.Reverse(out)
	return out
}

// drill makes the wall of a cut-out and returns its loops outside and inside,
// counter-clockwise seen from outside.
func (m *maker) drill(p poly.Plane, h Hole) (outside, inside []int) {
	n := Sides(h.Radius)
	right, up := poly.Across(p.Normal)
	centre := p.Foot(h.Point)
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

// checkHole gives an error where a cut-out is not inside of its face, outside
// and inside of the wall, or meets one that is there already.
func (m *maker) checkHole(p int, h Hole, others []Hole) error {
	if !(h.Radius > 0) || math.IsInf(h.Radius, 1) {
		return prose.Errorf("mount %d: %w: its radius is %.4g mm", h.ID, ErrCutout, 1e3*h.Radius)
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
		face := poly.Solid{Vertices: m.mesh.Vertices, Faces: []poly.Face{{Corners: corners}}}
		if room := face.Margin(0, h.Point); room < reach+m.slack {
			return prose.Errorf("mount %d: %w: its %.4g mm reach over the edge of %s, which has room for %.4g mm",
				h.ID, ErrCutout, 2e3*h.Radius, s.where, max(0, 2e3*room))
		}
	}
	for _, o := range others {
		apart := r3.Norm(r3.Sub(m.planes[p].Foot(o.Point), m.planes[p].Foot(h.Point)))
		if apart < reach+o.Radius/math.Cos(math.Pi/float64(Sides(o.Radius)))+m.slack {
			return prose.Errorf("mounts %d and %d: %w: they run into each other, their centres %.4g mm apart",
				o.ID, h.ID, ErrCutout, 1e3*apart)
		}
	}
	return nil
}
