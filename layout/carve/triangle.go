package carve

import (
	"math"
	"math/big"
	"slices"
)

// triangle is one of a mesh, with corners on the lattice.
type triangle struct {
	corners [3]int
	mesh    int
	part    int        // of all meshes, what hangs together
	normal  [3]float64 // not of unit length
	most    [3]float64 // bounds of the terms that the normal is made of
	plane   [4]*big.Int
	axis    int // along which it is seen widest
	up      int // 1 where its front looks along the axis, -1 against it
	box     box
}

type box struct{ low, high [3]float64 }

func (b *box) meets(o *box) bool {
	return b.high[1] >= o.low[1] && o.high[1] >= b.low[1] && b.high[2] >= o.low[2] && o.high[2] >= b.low[2] &&
		b.high[0] >= o.low[0] && o.high[0] >= b.low[0]
}

// newTriangle gives false where the corners are on a line.
func (s *space) newTriangle(corners [3]int, mesh int) (triangle, bool) {
	t := triangle{corners: corners, mesh: mesh}
	a, b, c := s.points[corners[0]].at, s.points[corners[1]].at, s.points[corners[2]].at
	for k := range 3 {
		i, j := (k+1)%3, (k+2)%3
		l, r := (b[i]-a[i])*(c[j]-a[j]), (b[j]-a[j])*(c[i]-a[i])
		t.normal[k], t.most[k] = l-r, math.Abs(l)+math.Abs(r)
		t.box.low[k], t.box.high[k] = min(a[k], b[k], c[k]), max(a[k], b[k], c[k])
		if math.Abs(t.normal[k]) > math.Abs(t.normal[t.axis]) {
			t.axis = k
		}
	}
	for range 3 { // a thin one may lean another way than rounding has it
		if t.up = s.turn(t.axis, corners[0], corners[1], corners[2]); t.up != 0 {
			return t, true
		}
		t.axis = (t.axis + 1) % 3
	}
	return t, false
}

// form returns the plane as whole numbers: it is 0 for x, y, z and w on it, above 0 in front.
func (s *space) form(t *triangle) *[4]*big.Int {
	if t.plane[0] != nil {
		return &t.plane
	}
	var u, v [3]*big.Int
	a := &s.points[t.corners[0]].h
	for k := range u {
		u[k] = new(big.Int).Sub(s.points[t.corners[1]].h[k], a[k])
		v[k] = new(big.Int).Sub(s.points[t.corners[2]].h[k], a[k])
	}
	offset := new(big.Int)
	for k := range u {
		i, j := (k+1)%3, (k+2)%3
		n := new(big.Int).Mul(u[i], v[j])
		n.Sub(n, new(big.Int).Mul(u[j], v[i]))
		t.plane[k] = n
		offset.Sub(offset, new(big.Int).Mul(n, a[k]))
	}
	t.plane[3] = offset
	return &t.plane
}

// above returns the form at a place.
func (s *space) above(t *triangle, p int) *big.Int {
	sum := new(big.Int)
	for k, c := range s.form(t) {
		sum.Add(sum, new(big.Int).Mul(c, s.points[p].h[k]))
	}
	return sum
}

// side tells whether a place is in front of a triangle's plane (1), behind (-1) or on it.
func (s *space) side(t *triangle, p int) int {
	if slices.Contains(t.corners[:], p) {
		return 0
	}
	if h, off := s.height(t, p); math.Abs(h) > off {
		return sign(h)
	}
	return s.above(t, p).Sign()
}
