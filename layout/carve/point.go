package carve

import (
	"cmp"
	"math"
	"math/big"
)

// unit is the step of the lattice in m: 2.3e-13 m.
const unit = 1.0 / (1 << 42)

// reach is the farthest coordinate in m: in steps it is far inside of what a float64 counts.
const reach = 64

// epsilon bounds the relative error of one rounding twice over.
const epsilon = 1.0 / (1 << 52)

// point is a place: x, y, z over w, whole numbers without a common factor, w above 0; and
// rounded, in steps.
type point struct {
	h       [4]*big.Int
	at      [3]float64
	rounded bool // at is not the place itself
}

// space holds all places, each once.
type space struct {
	points []point
	whole  map[[3]int64]int
	ratios map[string]int
}

func newSpace() *space { return &space{whole: make(map[[3]int64]int), ratios: make(map[string]int)} }

// lattice returns the number of a place on the lattice.
func (s *space) lattice(c [3]int64) int {
	if i, ok := s.whole[c]; ok {
		return i
	}
	p := point{h: [4]*big.Int{big.NewInt(c[0]), big.NewInt(c[1]), big.NewInt(c[2]), big.NewInt(1)}}
	for k, v := range c {
		p.at[k] = float64(v)
	}
	s.whole[c] = len(s.points)
	s.points = append(s.points, p)
	return len(s.points) - 1
}

// place returns the number of a place, and takes the numbers over.
func (s *space) place(h [4]*big.Int) int {
	g := new(big.Int).Abs(h[3])
	for k := 0; k < 3 && g.BitLen() > 1; k++ {
		g.GCD(nil, nil, g, new(big.Int).Abs(h[k]))
	}
	if h[3].Sign() < 0 {
		g.Neg(g)
	}
	for k := range h {
		h[k].Quo(h[k], g)
	}
	if h[3].BitLen() == 1 {
		return s.lattice([3]int64{h[0].Int64(), h[1].Int64(), h[2].Int64()})
	}
	var key []byte
	for k, v := range h {
		b := v.Bytes()
		key = append(key, byte(len(b)), byte(len(b)>>8), byte(k*2+v.Sign()))
		key = append(key, b...)
	}
	if i, ok := s.ratios[string(key)]; ok {
		return i
	}
	p := point{h: h, rounded: true}
	w := new(big.Float).SetPrec(96).SetInt(h[3])
	for k := range p.at {
		x := new(big.Float).SetPrec(96).SetInt(h[k])
		p.at[k], _ = x.Quo(x, w).Float64()
	}
	s.ratios[string(key)] = len(s.points)
	s.points = append(s.points, p)
	return len(s.points) - 1
}

// between returns where a form that is linear in x, y, z and w is 0 on the line through two
// places, at which it has the values hp and hq.
func (s *space) between(p, q int, hp, hq *big.Int) int {
	var out [4]*big.Int
	for k := range out {
		out[k] = new(big.Int).Mul(s.points[p].h[k], hq)
		out[k].Sub(out[k], new(big.Int).Mul(s.points[q].h[k], hp))
	}
	return s.place(out)
}

// compare orders two places by a coordinate.
func (s *space) compare(axis, p, q int) int {
	if p == q {
		return 0
	}
	a, b := &s.points[p], &s.points[q]
	x, y := a.at[axis], b.at[axis]
	if !a.rounded && !b.rounded || math.Abs(x-y) > 2*epsilon*(math.Abs(x)+math.Abs(y)) {
		return cmp.Compare(x, y)
	}
	left := new(big.Int).Mul(a.h[axis], b.h[3])
	return left.Cmp(new(big.Int).Mul(b.h[axis], a.h[3]))
}

// order is by x, then y, then z: along a line it is the order there.
func (s *space) order(p, q int) int {
	for axis := range 3 {
		if c := s.compare(axis, p, q); c != 0 {
			return c
		}
	}
	return 0
}

// within tells whether a place on the line through two others is between them.
func (s *space) within(p, from, to int) bool {
	return s.order(from, p)*s.order(p, to) > 0
}

// turn tells whether three places seen along an axis, that points at the eye, turn to the left
// (1), to the right (-1) or not at all.
func (s *space) turn(axis, p, q, r int) int {
	if p == q || q == r || r == p {
		return 0
	}
	i, j := (axis+1)%3, (axis+2)%3
	a, b, c := &s.points[p], &s.points[q], &s.points[r]
	ux, uy := b.at[i]-a.at[i], b.at[j]-a.at[j]
	vx, vy := c.at[i]-a.at[i], c.at[j]-a.at[j]
	det := ux*vy - uy*vx
	wide := max(math.Abs(ux), math.Abs(uy), math.Abs(vx), math.Abs(vy))
	off := 0.0
	if a.rounded || b.rounded || c.rounded {
		off = epsilon * (far(a, i, j) + max(far(b, i, j), far(c, i, j)))
	}
	if math.Abs(det) > 4*epsilon*wide*wide+4*off*(wide+off) {
		return sign(det)
	}
	return s.line(axis, p, q)(r).Sign()
}

func far(p *point, i, j int) float64 { return max(math.Abs(p.at[i]), math.Abs(p.at[j])) }

func sign(v float64) int { return cmp.Compare(v, 0) }

// line returns the form that is 0 on the line through two places seen along an axis.
func (s *space) line(axis, p, q int) func(int) *big.Int {
	i, j := (axis+1)%3, (axis+2)%3
	a, b := &s.points[p].h, &s.points[q].h
	l := minor(a, b, j, 3)
	m := minor(a, b, 3, i)
	n := minor(a, b, i, j)
	return func(r int) *big.Int {
		c := &s.points[r].h
		sum := new(big.Int).Mul(l, c[i])
		sum.Add(sum, new(big.Int).Mul(m, c[j]))
		return sum.Add(sum, new(big.Int).Mul(n, c[3]))
	}
}

// minor returns a[i] b[j] - a[j] b[i].
func minor(a, b *[4]*big.Int, i, j int) *big.Int {
	out := new(big.Int).Mul(a[i], b[j])
	return out.Sub(out, new(big.Int).Mul(a[j], b[i]))
}
