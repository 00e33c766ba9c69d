package boundary

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// turn is a rotation about the origin, with a reflection or without: the rows of its matrix.
type turn [3]r3.Vec

func (t turn) of(v r3.Vec) r3.Vec {
	return r3.Vec{X: r3.Dot(t[0], v), Y: r3.Dot(t[1], v), Z: r3.Dot(t[2], v)}
}

// same is how near, in parts of the body's size, places are that are one.
const same = 1e-7

// places finds which of some points is at a place.
type places struct {
	cell  float64
	point []r3.Vec
	at    map[[3]int64][]int
}

func newPlaces(points []r3.Vec, size float64) *places {
	p := &places{4 * same * size, points, map[[3]int64][]int{}}
	for i, v := range points {
		key := p.key(v)
		p.at[key] = append(p.at[key], i)
	}
	return p
}

func (p *places) key(v r3.Vec) [3]int64 {
	return [3]int64{int64(math.Floor(v.X / p.cell)), int64(math.Floor(v.Y / p.cell)), int64(math.Floor(v.Z / p.cell))}
}

// find returns the index of the point there, or -1.
func (p *places) find(v r3.Vec) int {
	h := p.cell / 4
	for c := range 8 {
		w := r3.Vec{X: v.X + h*float64(c&1*2-1), Y: v.Y + h*float64(c>>1&1*2-1), Z: v.Z + h*float64(c>>2&1*2-1)}
		for _, i := range p.at[p.key(w)] {
			if d := r3.Sub(p.point[i], v); r3.Dot(d, d) < h*h {
				return i
			}
		}
	}
	return -1
}

// turns returns all turns about the origin that take some points to themselves and leave a
// vector, if it is not zero, as it is; that which changes nothing first.
func turns(points []r3.Vec, size float64, keep r3.Vec) []turn {
	none := turn{{X: 1}, {Y: 1}, {Z: 1}}
	out := []turn{none}
	a, b := -1, -1
	for i := range points { // two that are not on one line with the origin
		if a < 0 && r3.Norm(points[i]) > 0.1*size {
			a = i
		} else if a >= 0 && b < 0 && r3.Norm(r3.Cross(points[a], points[i])) > 0.1*size*size {
			b = i
		}
	}
	if b < 0 {
		return out
	}
	there := newPlaces(points, size)
	p, q := points[a], points[b]
	near := func(x, y float64) bool { return math.Abs(x-y) < same*size*size }
	for _, pp := range points {
		if !near(r3.Dot(pp, pp), r3.Dot(p, p)) {
			continue
		}
		for _, qq := range points {
			if !near(r3.Dot(qq, qq), r3.Dot(q, q)) || !near(r3.Dot(pp, qq), r3.Dot(p, q)) {
				continue
			}
			for _, s := range []float64{1, -1} {
				t := between(p, q, pp, qq, s)
				if t == none || t.isNone() || r3.Norm(r3.Sub(t.of(keep), keep)) > same {
					continue
				}
				if t.keeps(points, there) {
					out = append(out, t)
				}
			}
		}
	}
	return out
}

func (t turn) isNone() bool {
	return math.Abs(t[0].X-1)+math.Abs(t[1].Y-1)+math.Abs(t[2].Z-1) < same
}

func (t turn) keeps(points []r3.Vec, there *places) bool {
	for _, v := range points {
		if there.find(t.of(v)) < 0 {
			return false
		}
	}
	return true
}

// frame returns three vectors, square and of unit length, from two that are not on one line.
func frame(p, q r3.Vec) [3]r3.Vec {
	x := r3.Unit(p)
	z := r3.Unit(r3.Cross(p, q))
	return [3]r3.Vec{x, r3.Cross(z, x), z}
}

// between returns the turn that takes p, q and side*(p x q) to pp, qq and pp x qq.
func between(p, q, pp, qq r3.Vec, side float64) turn {
	from, to := frame(p, q), frame(pp, qq)
	from[2] = r3.Scale(side, from[2])
	if side < 0 { // the y of a mirrored frame stays in the plane of p and q
		from[1] = r3.Cross(frame(p, q)[2], from[0])
	}
	row := func(a, b, c float64) r3.Vec {
		return r3.Add(r3.Scale(a, from[0]), r3.Add(r3.Scale(b, from[1]), r3.Scale(c, from[2])))
	}
	return turn{row(to[0].X, to[1].X, to[2].X), row(to[0].Y, to[1].Y, to[2].Y), row(to[0].Z, to[1].Z, to[2].Z)}
}

// orders returns where each node goes by each turn, of those that take all nodes to nodes, and
// these turns.
func (m *mesh) orders(all []turn, size float64) ([]turn, [][]int32) {
	there := newPlaces(m.at, size)
	var kept []turn
	var out [][]int32
next:
	for _, t := range all {
		to := make([]int32, len(m.at))
		for i, v := range m.at {
			j := there.find(t.of(v))
			if j < 0 {
				continue next
			}
			to[i] = int32(j)
		}
		kept, out = append(kept, t), append(out, to)
	}
	return kept, out
}
