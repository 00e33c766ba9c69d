package poly

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// Mesh is a closed surface of triangles, each counter-clockwise seen from
// outside, as indices of vertices in m.
type Mesh struct {
	Vertices  []r3.Vec
	Triangles [][3]int
}

var errOpen = errors.New("the mesh is not a closed surface wound outward")

// Check gives nil where every edge belongs to exactly two triangles that run it
// in opposite directions and the volume is above 0. It does not look for triangles that cross each other.
func (m Mesh) Check() error {
	next := make(map[[2]int]int, 3*len(m.Triangles))
	for i, t := range m.Triangles {
		for k, a := range t {
			b := t[(k+1)%3]
			if a == b {
				return fmt.Errorf("%w: triangle %d has a corner twice", errOpen, i)
			}
			next[[2]int{a, b}]++
		}
	}
	for e, n := range next {
		if n != 1 || next[[2]int{e[1], e[0]}] != 1 {
			return fmt.Errorf("%w: the edge from vertex %d to %d has %d triangles, the way back %d",
				errOpen, e[0], e[1], n, next[[2]int{e[1], e[0]}])
		}
	}
	if v := m.Volume(); !(v > 0) {
		return prose.Errorf("%w: its volume is %g m3", errOpen, v)
	}
	return nil
}

// Volume returns the volume in m3 of what the surface encloses.
func (m Mesh) Volume() float64 {
	sum := 0.0
	for _, t := range m.Triangles {
		sum += r3.Dot(m.Vertices[t[0]], r3.Cross(m.Vertices[t[1]], m.Vertices[t[2]])) / 6
	}
	return sum
}

// Centroid returns the centre of mass in m of what the surface encloses, filled evenly. It is NaN
// where that has no volume.
func (m Mesh) Centroid() r3.Vec {
	var sum r3.Vec
	for _, t := range m.Triangles {
		a, b, c := m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
		// of the tetrahedron to the origin: a quarter of the sum of its corners
		sum = r3.Add(sum, r3.Scale(r3.Dot(a, r3.Cross(b, c))/24, r3.Add(a, r3.Add(b, c))))
	}
	return r3.Scale(1/m.Volume(), sum)
}

// Bounds returns the smallest box along the axes that holds the mesh, in m.
func (m Mesh) Bounds() r3.Box {
	if len(m.Triangles) == 0 {
		return r3.Box{}
	}
	first := m.Vertices[m.Triangles[0][0]]
	b := r3.Box{Min: first, Max: first}
	for _, t := range m.Triangles {
		for _, i := range t {
			v := m.Vertices[i]
			b.Min = r3.Vec{X: min(b.Min.X, v.X), Y: min(b.Min.Y, v.Y), Z: min(b.Min.Z, v.Z)}
			b.Max = r3.Vec{X: max(b.Max.X, v.X), Y: max(b.Max.Y, v.Y), Z: max(b.Max.Z, v.Z)}
		}
	}
	return b
}

// Tidy leaves out the vertices that no triangle has.
func (m Mesh) Tidy() Mesh {
	var out Mesh
	at := make([]int, len(m.Vertices))
	for _, t := range m.Triangles {
		for k, v := range t {
			if at[v] == 0 {
				out.Vertices = append(out.Vertices, m.Vertices[v])
				at[v] = len(out.Vertices)
			}
			t[k] = at[v] - 1
		}
		out.Triangles = append(out.Triangles, t)
	}
	return out
}

// PieceOf numbers what hangs together, by triangle, in the order in which it comes, and counts it.
func (m Mesh) PieceOf() (piece []int, count int) {
	root := make([]int, len(m.Vertices))
	for i := range root {
		root[i] = i
	}
	find := func(v int) int {
		for root[v] != v {
			root[v] = root[root[v]]
			v = root[v]
		}
		return v
	}
	for _, t := range m.Triangles {
		root[find(t[1])] = find(t[0])
		root[find(t[2])] = find(t[0])
	}
	number := make(map[int]int)
	piece = make([]int, len(m.Triangles))
	for i, t := range m.Triangles {
		r := find(t[0])
		n, ok := number[r]
		if !ok {
			n = len(number)
			number[r] = n
		}
		piece[i] = n
	}
	return piece, len(number)
}

// Pieces returns what hangs together, the largest volume first.
func (m Mesh) Pieces() []Mesh {
	piece, count := m.PieceOf()
	out := make([]Mesh, count)
	for i, t := range m.Triangles {
		out[piece[i]].Triangles = append(out[piece[i]].Triangles, t)
	}
	for i := range out {
		out[i].Vertices = m.Vertices
		out[i] = out[i].Tidy()
	}
	slices.SortStableFunc(out, func(a, b Mesh) int { return cmp.Compare(b.Volume(), a.Volume()) })
	return out
}

// Moved returns the mesh with each vertex put elsewhere.
func (m Mesh) Moved(to func(r3.Vec) r3.Vec) Mesh {
	out := Mesh{Vertices: make([]r3.Vec, len(m.Vertices)), Triangles: m.Triangles}
	for i, v := range m.Vertices {
		out.Vertices[i] = to(v)
	}
	return out
}

// Joined puts meshes into one, as they are.
func Joined(all ...Mesh) (out Mesh) {
	for _, m := range all {
		first := len(out.Vertices)
		out.Vertices = append(out.Vertices, m.Vertices...)
		for _, t := range m.Triangles {
			out.Triangles = append(out.Triangles, [3]int{t[0] + first, t[1] + first, t[2] + first})
		}
	}
	return out
}

// Mesh returns the faces as triangles.
func (s Solid) Mesh() Mesh {
	m := Mesh{Vertices: s.Vertices}
	for _, f := range s.Faces {
		for i := 2; i < len(f.Corners); i++ {
			m.Triangles = append(m.Triangles, [3]int{f.Corners[0], f.Corners[i-1], f.Corners[i]})
		}
	}
	return m
}
