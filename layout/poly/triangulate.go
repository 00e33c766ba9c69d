package poly

import (
	"errors"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Fill cuts flat faces in one plane into triangles. Loops of vertices are counter-clockwise
// seen against the normal where they are outlines, and clockwise where they are holes; only a
// single outline may have any.
func Fill(vertices []r3.Vec, normal r3.Vec, loops ...[]int) ([][3]int, error) {
	var points []r3.Vec
	var back []int
	local := make([][]int, len(loops))
	for i, l := range loops {
		for _, v := range l {
			local[i] = append(local[i], len(back))
			back, points = append(back, v), append(points, vertices[v])
		}
	}
	flat := flatten(points, normal)
	var outlines, holes [][]int
	for _, l := range local {
		if area(flat, l) > 0 {
			outlines = append(outlines, l)
		} else {
			holes = append(holes, l)
		}
	}
	if len(outlines) != 1 && len(holes) > 0 {
		return nil, errTangled
	}
	var out [][3]int
	for _, o := range outlines {
		triangles, err := triangulate(flat, o, holes)
		if err != nil {
			return nil, err
		}
		for _, t := range triangles {
			out = append(out, [3]int{back[t[0]], back[t[1]], back[t[2]]})
		}
	}
	return out, nil
}

var errNoEar = errors.New("an outline crosses itself")

// triangulate cuts a flat region into triangles: its outline counter-clockwise,
// its holes clockwise, as indices of points. Every vertex of the loops, and no
// other, is a corner; the triangles are counter-clockwise.
func triangulate(points []r2.Vec, outline []int, holes [][]int) ([][3]int, error) {
	r := region{points: points, ring: slices.Clone(outline)}
	want := area(points, outline)
	for _, h := range holes {
		want += area(points, h)
	}
	if !(want > 0) {
		return nil, errNoEar
	}
	r.least = 1e-13 * want
	left := slices.Clone(holes)
	for len(left) > 0 {
		if err := r.bridge(&left); err != nil {
			return nil, err
		}
	}
	out, err := r.ears()
	if err != nil {
		return nil, err
	}
	sum := 0.0
	for _, t := range out {
		sum += area(points, t[:])
	}
	if !(math.Abs(sum-want) <= 1e-9*want) {
		return nil, errNoEar
	}
	return out, nil
}

// region is an outline that is being cut up.
type region struct {
	points []r2.Vec
	ring   []int
	least  float64 // twice the area under which three points are on a line
}

// area returns the area of a loop, above 0 counter-clockwise.
func area(points []r2.Vec, loop []int) float64 {
	first, twice := points[loop[0]], 0.0
	for i := 2; i < len(loop); i++ {
		twice += r2.Cross(r2.Sub(points[loop[i-1]], first), r2.Sub(points[loop[i]], first))
	}
	return twice / 2
}

// turn returns twice the area of a triangle, above 0 counter-clockwise.
func (r *region) turn(a, b, c int) float64 {
	return r2.Cross(r2.Sub(r.points[b], r.points[a]), r2.Sub(r.points[c], r.points[a]))
}

// bridge joins one hole to the ring: the one with the shortest bridge that
// crosses nothing.
func (r *region) bridge(holes *[][]int) error {
	best := span{length: math.Inf(1)}
	for h, hole := range *holes {
		for i := range hole {
			for j := range r.ring {
				s := span{h, i, j, r2.Norm2(r2.Sub(r.points[hole[i]], r.points[r.ring[j]]))}
				if s.length < best.length && r.isFree(s, *holes) {
					best = s
				}
			}
		}
	}
	if math.IsInf(best.length, 1) {
		return errNoEar
	}
	hole := (*holes)[best.hole]
	r.ring = slices.Concat(r.ring[:best.at+1], hole[best.from:], hole[:best.from+1], r.ring[best.at:])
	*holes = slices.Delete(*holes, best.hole, best.hole+1)
	return nil
}

// span is a bridge from a vertex of a hole to a place in the ring.
type span struct {
	hole, from, at int
	length         float64 // squared
}

// isFree tells whether a bridge starts inward at both ends and meets no edge.
func (r *region) isFree(s span, holes [][]int) bool {
	p, q := holes[s.hole][s.from], r.ring[s.at]
	if !r.opens(holes[s.hole], s.from, q) || !r.opens(r.ring, s.at, p) || r.meets(p, q, r.ring) {
		return false
	}
	for _, h := range holes {
		if r.meets(p, q, h) {
			return false
		}
	}
	return true
}

// opens tells whether the way from a place of a loop to a point starts inside.
func (r *region) opens(loop []int, at, to int) bool {
	n := len(loop)
	a, b, c := loop[(at+n-1)%n], loop[at], loop[(at+1)%n]
	left, right := r.turn(b, c, to) > r.least, r.turn(a, b, to) > r.least
	if r.turn(a, b, c) > 0 {
		return left && right
	}
	return left || right
}

// meets tells whether the way between two points touches an edge of a loop that
// ends at neither.
func (r *region) meets(p, q int, loop []int) bool {
	for i, a := range loop {
		b := loop[(i+1)%len(loop)]
		if a == p || a == q || b == p || b == q {
			continue
		}
		if r.turn(p, q, a)*r.turn(p, q, b) <= 0 && r.turn(a, b, p)*r.turn(a, b, q) <= 0 {
			return true
		}
	}
	return false
}

// ears cuts ears off the ring until nothing is left, each time the one with the
// shortest cut.
func (r *region) ears() ([][3]int, error) {
	out := make([][3]int, 0, len(r.ring)-2)
	for len(r.ring) > 3 {
		best, length := -1, math.Inf(1)
		for i := range r.ring {
			a, _, c := r.around(i)
			if l := r2.Norm2(r2.Sub(r.points[c], r.points[a])); l < length && r.isEar(i) {
				best, length = i, l
			}
		}
		if best < 0 {
			return nil, errNoEar
		}
		a, b, c := r.around(best)
		out = append(out, [3]int{a, b, c})
		r.ring = append(r.ring[:best], r.ring[best+1:]...)
	}
	return append(out, [3]int(r.ring)), nil
}

func (r *region) around(i int) (before, at, after int) {
	n := len(r.ring)
	return r.ring[(i+n-1)%n], r.ring[i], r.ring[(i+1)%n]
}

// isEar tells whether the triangle at a place of the ring can be cut off.
func (r *region) isEar(i int) bool {
	n := len(r.ring)
	a, b, c := r.around(i)
	if a == c || r.turn(a, b, c) <= r.least || !r.opens(r.ring, (i+n-1)%n, c) && n > 4 || !r.opens(r.ring, (i+1)%n, a) && n > 4 {
		return false
	}
	for _, v := range r.ring {
		if v != a && v != b && v != c && r.turn(a, b, v) >= -r.least && r.turn(b, c, v) >= -r.least && r.turn(c, a, v) >= -r.least {
			return false
		}
	}
	return true
}
