package carve

import (
	"math"
	"slices"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// shortest is the length in m of an edge under which its ends are drawn together: what single
// precision holds of a quarter of a metre counted in mm.
const shortest = 3e-8

// short draws the ends of short edges together where what is left stays a closed surface: the
// two have no more neighbours in common than the corners across from the edge (T. K. Dey,
// H. Edelsbrunner, S. Guha and D. V. Nekhayev, Topology preserving edge contraction, 1999). They
// meet where the volume stays as it is.
func short(m poly.Mesh) poly.Mesh {
	round := make([][]int, len(m.Vertices)) // triangles of each corner
	for i, t := range m.Triangles {
		for _, v := range t {
			round[v] = append(round[v], i)
		}
	}
	gone := make([]bool, len(m.Triangles))
	for i := range m.Triangles {
		for k := 0; k < 3 && !gone[i]; k++ {
			p, q := m.Triangles[i][k], m.Triangles[i][(k+1)%3]
			if r3.Norm(r3.Sub(m.Vertices[p], m.Vertices[q])) < shortest && alone(m, round, p, q) {
				m.Vertices[p] = meeting(m, round, p, q)
				draw(m, round, gone, p, q)
				k = -1
			}
		}
	}
	left := m.Triangles[:0]
	for i, t := range m.Triangles {
		if !gone[i] {
			left = append(left, t)
		}
	}
	m.Triangles = left
	return m
}

// alone tells whether two corners have two neighbours in common.
func alone(m poly.Mesh, round [][]int, p, q int) bool {
	near := func(v int) (out []int) {
		for _, i := range round[v] {
			out = append(out, m.Triangles[i][:]...)
		}
		slices.Sort(out)
		return slices.Compact(out)
	}
	common := 0
	others := near(q)
	for _, v := range near(p) {
		if v != p && v != q && slices.Contains(others, v) {
			common++
		}
	}
	return common == 2
}

// meeting returns where two corners that become one enclose as much as both did. As one moves, the
// volume is linear in its place (P. Lindstrom and G. Turk, Fast and memory efficient polygonal
// simplification, Proc. IEEE Visualization 1998): a place on the edge does or, where none does, one
// off the better end, square to what is round it; that end itself where it would have to go further
// than a short edge is long: what is enclosed then changes by less than that length times a third of
// the area round it.
func meeting(m poly.Mesh, round [][]int, p, q int) r3.Vec {
	at := m.Vertices[p]
	to := r3.Sub(m.Vertices[q], at)
	var rise r3.Vec // six times the volume's, for a step of what both become
	had := 0.0      // six times what both had, seen from p
	for _, v := range []int{p, q} {
		for _, i := range round[v] {
			t := m.Triangles[i]
			if slices.Contains(t[:], p+q-v) {
				continue
			}
			k := slices.Index(t[:], v)
			n := r3.Cross(r3.Sub(m.Vertices[t[(k+1)%3]], at), r3.Sub(m.Vertices[t[(k+2)%3]], at))
			rise = r3.Add(rise, n)
			if v == q {
				had += r3.Dot(to, n)
			}
		}
	}
	far := r3.Dot(to, rise) // what the edge's other end has
	if share := had / far; share >= 0 && share <= 1 {
		return r3.Add(at, r3.Scale(share, to))
	}
	lacks := had
	if math.Abs(had-far) < math.Abs(had) {
		at, lacks = m.Vertices[q], had-far
	}
	if size := r3.Norm2(rise); math.Abs(lacks) < shortest*math.Sqrt(size) {
		return r3.Add(at, r3.Scale(lacks/size, rise))
	}
	return at
}

// draw moves q to p.
func draw(m poly.Mesh, round [][]int, gone []bool, p, q int) {
	for _, i := range round[q] {
		t := &m.Triangles[i]
		if slices.Contains(t[:], p) {
			gone[i] = true
			for _, v := range t {
				if v != q {
					round[v] = slices.DeleteFunc(round[v], func(n int) bool { return n == i })
				}
			}
			continue
		}
		t[slices.Index(t[:], q)] = p
		round[p] = append(round[p], i)
	}
	round[q] = nil
}
