package poly

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

var errNothingLeft = errors.New("nothing is left")

// Cell is what lies in all half-spaces of its sides.
type Cell struct {
	Sides []Plane
	Open  []bool // for each side, whether the cell beyond it belongs to the part too; nil: none does
}

// Part returns what of the mesh lies in all of some half-spaces, closed by flat faces where
// they cut it. It is an error where nothing does.
func (m Mesh) Part(planes ...Plane) (Mesh, error) {
	for _, p := range planes {
		var err error
		if m, err = m.Cells([]Cell{{Sides: []Plane{p}}}); err != nil {
			return Mesh{}, err
		}
	}
	return m, nil
}

// Cells returns what of the mesh lies in some cells that lie side by side, as one part,
// closed by flat faces at the sides that are not open. Where a cell has more than one side,
// each must cut the mesh in one piece.
//
// Triangles are clipped as whole polygons, so that on the side between two cells both have
// the same corners; corners nearer than 3 millionths of the mesh's size become one. It is
// an error where no triangle is in a cell.
func (m Mesh) Cells(cells []Cell) (Mesh, error) {
	box := m.Bounds()
	m = m.near(cells)
	j := joiner{vertices: m.Vertices}
	size := max(box.Max.X-box.Min.X, box.Max.Y-box.Min.Y, box.Max.Z-box.Min.Z)
	j.slack, j.near = onSide*size, oneCorner*size
	for _, c := range cells {
		first := len(j.sides)
		j.sides, j.open = append(j.sides, c.Sides...), append(j.open, c.Open...)
		j.open = append(j.open, make([]bool, len(j.sides)-len(j.open))...)
		for _, t := range m.Triangles {
			if j.beyond(t, c.Sides) {
				continue
			}
			f := facet{t[:], []int{-1, -1, -1}}
			for s := range c.Sides {
				if f = j.clip(f, first+s); len(f.corners) == 0 {
					break
				}
			}
			if len(f.corners) > 2 {
				j.facets = append(j.facets, f)
			}
		}
	}
	if len(j.facets) == 0 {
		return Mesh{}, fmt.Errorf("cutting: %w", errNothingLeft)
	}
	j.weld()
	if err := j.close(); err != nil {
		return Mesh{}, fmt.Errorf("cutting: %w", err)
	}
	out := j.mesh()
	if err := out.Check(); err != nil {
		return Mesh{}, fmt.Errorf("cutting: %w", err)
	}
	return out, nil
}

// near returns, with corners of its own, the triangles that are not all beyond one side of each cell.
func (m Mesh) near(cells []Cell) Mesh {
	reaches := func(t [3]int, c Cell) bool {
		for _, p := range c.Sides {
			if min(p.Above(m.Vertices[t[0]]), p.Above(m.Vertices[t[1]]), p.Above(m.Vertices[t[2]])) >= 0 {
				return false
			}
		}
		return true
	}
	out := Mesh{Vertices: m.Vertices}
	for _, t := range m.Triangles {
		if slices.ContainsFunc(cells, func(c Cell) bool { return reaches(t, c) }) {
			out.Triangles = append(out.Triangles, t)
		}
	}
	return out.Tidy()
}

// onSide is the length over the mesh's size within which a corner counts as on a side: far
// over rounding. It must not be more, for an edge that runs along a side at a small angle
// meets it far from where it first counts as on it. oneCorner, within which corners become
// one, is far over what that leaves, down to a millionth of a rad, and still a thousandth of
// what a printer can do.
const onSide, oneCorner = 1e-12, 3e-6

// joiner gathers what lies in cells.
type joiner struct {
	slack    float64
	near     float64
	vertices []r3.Vec
	sides    []Plane // of all cells, one after the other
	open     []bool
	facets   []facet
	lids     [][3]int
}

// facet is a convex piece of a triangle. side is, for the edge from each corner to the
// next, the side of a cell that it lies in, -1 for none.
type facet struct{ corners, side []int }

// beyond tells whether a triangle has nothing inside of some side.
func (j *joiner) beyond(t [3]int, sides []Plane) bool {
	for _, p := range sides {
		if min(p.Above(j.vertices[t[0]]), p.Above(j.vertices[t[1]]), p.Above(j.vertices[t[2]])) >= -j.slack {
			return true
		}
	}
	return false
}

// clip returns what of a facet lies in the half-space of a side.
func (j *joiner) clip(f facet, s int) facet {
	p := j.sides[s]
	above := make([]float64, len(f.corners))
	inside := false
	for i, v := range f.corners {
		above[i] = p.Above(j.vertices[v])
		inside = inside || above[i] < -j.slack
	}
	if !inside {
		return facet{}
	}
	var out facet
	add := func(v, side int) { out.corners, out.side = append(out.corners, v), append(out.side, side) }
	for i, v := range f.corners {
		k := (i + 1) % len(f.corners)
		in, next := above[i] <= j.slack, above[k] <= j.slack
		on, nextOn := math.Abs(above[i]) <= j.slack, math.Abs(above[k]) <= j.slack
		switch {
		case in && on && (nextOn || !next):
			add(v, s)
		case in && next:
			add(v, f.side[i])
		case in: // leaves
			add(v, f.side[i])
			add(j.cross(v, f.corners[k], p), s)
		case next && !nextOn: // comes back
			add(j.cross(v, f.corners[k], p), f.side[i])
		}
	}
	return out
}

// cross adds the corner where an edge meets a plane, computed the same from either end.
func (j *joiner) cross(a, b int, p Plane) int {
	if a > b {
		a, b = b, a
	}
	j.vertices = append(j.vertices, p.between(j.vertices[a], j.vertices[b]))
	return len(j.vertices) - 1
}

// weld makes corners that are as good as at one place the same.
func (j *joiner) weld() {
	same := Weld(j.vertices, j.near)
	kept := j.facets[:0]
	for _, f := range j.facets {
		var out facet
		for i, v := range f.corners {
			if same[v] != same[f.corners[(i+1)%len(f.corners)]] {
				out.corners, out.side = append(out.corners, same[v]), append(out.side, f.side[i])
			}
		}
		// One that has become an edge there and back has no area, but still tells what side
		// its neighbour now ends at.
		if len(out.corners) > 1 {
			kept = append(kept, out)
		}
	}
	j.facets = kept
}

// close puts flat faces on the sides that are not open.
func (j *joiner) close() error {
	edges := make(map[[2]int][]int)
	for _, f := range j.facets {
		for i, a := range f.corners {
			e := [2]int{a, f.corners[(i+1)%len(f.corners)]}
			edges[e] = append(edges[e], f.side[i])
		}
	}
	border := make(map[[2]int]int) // those that no facet has the other way round
	for e, sides := range edges {
		switch back := edges[[2]int{e[1], e[0]}]; len(sides) - len(back) {
		case 1:
			border[e] = slices.Max(sides)
		case 0, -1:
		default:
			return errTangled
		}
	}
	next := make([]map[int]int, len(j.sides)) // by side, the border turned round
	for e, s := range border {
		if s < 0 || j.open[s] {
			return errTangled
		}
		if next[s] == nil {
			next[s] = make(map[int]int)
		}
		next[s][e[1]] = e[0]
	}
	for s := range next {
		if len(next[s]) > 0 {
			if err := j.lid(s, next[s]); err != nil {
				return err
			}
		}
	}
	return nil
}

// lid puts a flat face on a side. Chains that begin and end at its ends are joined to one
// outline there; loops are outlines and holes.
func (j *joiner) lid(s int, next map[int]int) error {
	led := make(map[int]bool, len(next))
	for _, v := range next {
		led[v] = true
	}
	var starts, others []int
	for v := range next {
		if led[v] {
			others = append(others, v)
		} else {
			starts = append(starts, v)
		}
	}
	slices.Sort(starts)
	slices.Sort(others)
	walk := func(v int) (chain []int) {
		for {
			after, ok := next[v]
			delete(next, v)
			chain = append(chain, v)
			if !ok || len(chain) > 1 && after == chain[0] {
				return chain
			}
			v = after
		}
	}
	var outline []int
	for _, v := range starts {
		outline = append(outline, walk(v)...)
	}
	var loops [][]int
	if len(outline) > 0 {
		loops = append(loops, outline)
	}
	for _, v := range others {
		if _, left := next[v]; left {
			loops = append(loops, walk(v))
		}
	}
	if len(starts) > 2 {
		return errTangled
	}
	lid, err := Fill(j.vertices, j.sides[s].Normal, loops...)
	j.lids = append(j.lids, lid...)
	return err
}

// mesh cuts the facets into triangles.
func (j *joiner) mesh() Mesh {
	out := Mesh{Vertices: j.vertices, Triangles: j.lids}
	for _, f := range j.facets {
		n := len(f.corners)
		best, most := 0, -1.0
		for first := 0; first < n && n > 3; first++ {
			least := math.Inf(1)
			for i := 1; i+1 < n; i++ {
				least = min(least, r3.Norm(j.triangle(f, first, i).Normal()))
			}
			if least > most {
				best, most = first, least
			}
		}
		for i := 1; i+1 < n; i++ {
			out.Triangles = append(out.Triangles, [3]int{f.corners[best], f.corners[(best+i)%n], f.corners[(best+i+1)%n]})
		}
	}
	out.Triangles = unfolded(out.Triangles)
	return out.Tidy()
}

// unfolded leaves out pairs of triangles that lie back to back, as where a lid's edge and the wall's
// pass one corner on either side, or a sliver is thinner than the rounding of its corners.
func unfolded(all [][3]int) [][3]int {
	first := func(t [3]int) [3]int {
		switch least := min(t[0], t[1], t[2]); least {
		case t[1]:
			return [3]int{t[1], t[2], t[0]}
		case t[2]:
			return [3]int{t[2], t[0], t[1]}
		}
		return t
	}
	there := make(map[[3]int]int, len(all))
	for _, t := range all {
		there[first(t)]++
	}
	for t, n := range there {
		if back := [3]int{t[0], t[2], t[1]}; n > 0 && there[back] > 0 {
			pairs := min(n, there[back])
			there[t] -= pairs
			there[back] -= pairs
		}
	}
	return slices.DeleteFunc(all, func(t [3]int) bool {
		there[first(t)]--
		return there[first(t)] < 0
	})
}

// triangle returns one of the fan from a corner.
func (j *joiner) triangle(f facet, first, i int) r3.Triangle {
	n := len(f.corners)
	return r3.Triangle{j.vertices[f.corners[first]], j.vertices[f.corners[(first+i)%n]], j.vertices[f.corners[(first+i+1)%n]]}
}
