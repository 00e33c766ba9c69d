package carve

import (
	"slices"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// shortest is the length in m of an edge under which its ends are drawn together: what single
// precision holds of a quarter of a metre counted in mm.
const shortest = 3e-8

// short draws the ends of short edges together where what is left stays a closed surface: the
// two have no more neighbours in common than the corners across from the edge (T. K. Dey,
// H. Edelsbrunner, S. Guha and D. V. Nekhayev, Topology preserving edge contraction, 1999).
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
