package carve

import (
	"math/big"
	"slices"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// facet is a piece of a triangle.
type facet struct {
	corners [3]int
	of      int // the triangle
}

// sheets is all triangles in pieces, which hang together in sheets up to where they are cut.
type sheets struct {
	*cutter
	facets []facet
	sheet  []int // of each facet
	count  int
}

// sheets cuts all triangles and finds what hangs together.
func (c *cutter) sheets() *sheets {
	s := &sheets{cutter: c}
	marked := make(map[[2]int]bool)
	for i, l := range c.lines() {
		if l == nil {
			s.facets = append(s.facets, facet{c.triangles[i].corners, i})
			continue
		}
		pieces, lines := c.cut(l)
		for _, p := range pieces {
			s.facets = append(s.facets, facet{p, i})
		}
		for e := range lines {
			marked[e] = true
		}
	}
	s.join(marked)
	return s
}

// join finds the sheets: facets of one mesh on either side of an edge that is no cut.
func (s *sheets) join(marked map[[2]int]bool) {
	type side struct{ mesh, p, q int }
	at := make(map[side]int)
	const many = -1
	for i, f := range s.facets {
		for k, p := range f.corners {
			w := side{s.triangles[f.of].mesh, p, f.corners[(k+1)%3]}
			if _, there := at[w]; there {
				at[w] = many
			} else {
				at[w] = i
			}
		}
	}
	s.sheet = slices.Repeat([]int{-1}, len(s.facets))
	for i := range s.facets {
		if s.sheet[i] >= 0 {
			continue
		}
		s.sheet[i] = s.count
		for queue := []int{i}; len(queue) > 0; {
			f := s.facets[queue[len(queue)-1]]
			queue = queue[:len(queue)-1]
			for k, p := range f.corners {
				q, mesh := f.corners[(k+1)%3], s.triangles[f.of].mesh
				n, ok := at[side{mesh, q, p}]
				if here := at[side{mesh, p, q}]; ok && n != many && here != many && s.sheet[n] < 0 && !marked[edge(p, q)] {
					s.sheet[n] = s.count
					queue = append(queue, n)
				}
			}
		}
		s.count++
	}
}

// choose returns the sheets that a rule keeps.
func (s *sheets) choose(keep func(in []bool) bool, meshes int) poly.Mesh {
	widest := slices.Repeat([]int{-1}, s.count)
	size := make([]float64, s.count)
	for i, f := range s.facets {
		a, b, c := s.metre(f.corners[0]), s.metre(f.corners[1]), s.metre(f.corners[2])
		if area := r3.Norm(r3.Triangle{a, b, c}.Normal()); widest[s.sheet[i]] < 0 || area > size[s.sheet[i]] {
			widest[s.sheet[i]], size[s.sheet[i]] = i, area
		}
	}
	verdict := make([]int, s.count)
	for n, i := range widest {
		front, behind, first := s.winding(i, meshes)
		if f, b := keep(front), keep(behind); first && f != b {
			verdict[n] = 1
			if f {
				verdict[n] = -1
			}
		}
	}
	var out poly.Mesh
	place := make(map[int]int)
	number := func(p int) int {
		at, ok := place[p]
		if !ok {
			at = len(out.Vertices)
			place[p] = at
			out.Vertices = append(out.Vertices, s.metre(p))
		}
		return at
	}
	for i, f := range s.facets {
		t := [3]int{number(f.corners[0]), number(f.corners[1]), number(f.corners[2])}
		switch verdict[s.sheet[i]] {
		case -1:
			t[1], t[2] = t[2], t[1]
			fallthrough
		case 1:
			out.Triangles = append(out.Triangles, t)
		}
	}
	return out
}

// weights are of the corners of a facet, for a place in it: others where a ray from there meets
// an edge.
var weights = [][3]int64{{1, 1, 1}, {5, 7, 9}, {11, 3, 5}, {2, 9, 13}, {17, 8, 6}, {3, 19, 4}, {21, 2, 23}, {29, 31, 7}}

// winding tells which meshes a place just in front of a facet and one just behind it are in;
// and whether the facet's triangle is the first of those that lie there on each other.
func (s *sheets) winding(i, meshes int) (front, behind []bool, first bool) {
	if f, b, ok := s.rayNear(s.facets[i], meshes); ok {
		return f, b, true
	}
	for _, w := range weights {
		at := s.inside(s.facets[i], w)
		f, b, first, ok := s.ray(at, s.facets[i].of, meshes)
		if ok {
			return f, b, first
		}
	}
	return make([]bool, meshes), make([]bool, meshes), false
}

// rayNear does what ray does, from about the middle of a facet and in rounded numbers; false where they
// leave a doubt, as where others lie in the facet's plane.
func (s *sheets) rayNear(f facet, meshes int) (front, behind []bool, ok bool) {
	own := &s.triangles[f.of]
	var at [3]float64
	for _, p := range f.corners {
		for k := range at {
			at[k] += s.points[p].at[k] / 3
		}
	}
	ahead, back := make([]int, meshes), make([]int, meshes)
	for _, n := range s.columns(own.axis).at(at) {
		t := &s.triangles[n]
		if int(n) == f.of {
			continue
		}
		turn, told := s.leaves(own.axis, t, at)
		if !told {
			return nil, nil, false
		}
		ahead[t.mesh] += turn
		back[t.mesh] += turn
	}
	if own.up > 0 {
		back[own.mesh]++
	} else {
		ahead[own.mesh]--
	}
	front, behind = signs(ahead), signs(back)
	return front, behind, true
}

// signs tells which numbers are above 0.
func signs(numbers []int) []bool {
	out := make([]bool, len(numbers))
	for m, n := range numbers {
		out[m] = n > 0
	}
	return out
}

// inside returns a place in a facet.
func (s *sheets) inside(f facet, weight [3]int64) int {
	var sum [4]*big.Int
	for k := range sum {
		sum[k] = new(big.Int)
	}
	for i, p := range f.corners {
		rest := big.NewInt(weight[i])
		for j, q := range f.corners {
			if j != i {
				rest.Mul(rest, s.points[q].h[3])
			}
		}
		for k := range 3 {
			sum[k].Add(sum[k], new(big.Int).Mul(rest, s.points[p].h[k]))
		}
		sum[3].Add(sum[3], new(big.Int).Mul(rest, s.points[p].h[3]))
	}
	return s.place(sum)
}

// ray counts what a ray along the widest axis of a triangle meets, from a place in it; false
// where it meets an edge.
func (s *sheets) ray(from, of, meshes int) (front, behind []bool, first, ok bool) {
	own := &s.triangles[of]
	axis, at := own.axis, s.points[from].at
	i, j := (axis+1)%3, (axis+2)%3
	ahead, back := make([]int, meshes), make([]int, meshes)
	first = true
	for _, n := range s.columns(axis).at(at) {
		t := &s.triangles[n]
		if t.box.high[axis] < at[axis]-1 || t.box.low[i] > at[i]+1 || t.box.high[i] < at[i]-1 || t.box.low[j] > at[j]+1 || t.box.high[j] < at[j]-1 {
			continue
		}
		a := s.turn(axis, t.corners[0], t.corners[1], from)
		b := s.turn(axis, t.corners[1], t.corners[2], from)
		c := s.turn(axis, t.corners[2], t.corners[0], from)
		if max(a, b, c)-min(a, b, c) == 2 {
			continue
		}
		if a == 0 || b == 0 || c == 0 {
			return nil, nil, false, false
		}
		if side := s.side(t, from) * a; side < 0 { // below it: the ray leaves (1) or enters it
			ahead[t.mesh] += a
			back[t.mesh] += a
		} else if side == 0 {
			first = first && int(n) >= of
			if own.up > 0 {
				back[t.mesh] += a
			} else {
				ahead[t.mesh] += a
			}
		}
	}
	return signs(ahead), signs(back), first, true
}
