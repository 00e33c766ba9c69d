package carve

import (
	"cmp"
	"math"
	"math/big"
	"slices"
)

// unit is the step of the lattice in m: 2.3e-13 m.
const unit = 1.0 / (1 << 42)

// reach is the farthest coordinate in m: in steps it is far inside of what a float64 counts.
const reach = 64

// epsilon bounds the relative error of one rounding twice over.
const epsilon = 1.0 / (1 << 52)

// point is a place: x, y, z over w, whole numbers, w above 0; and rounded, in steps.
type point struct {
	h       [4]*big.Int
	at      [3]float64
	rounded bool     // at is not the place itself
	on      [][2]int // lines that it is known to be on, as two other places on each
}

// space holds all places, each once.
type space struct {
	points []point
	whole  map[[3]int64]int
	ratios map[[3]int64][]int // by the whole steps of each coordinate
}

func newSpace() *space {
	return &space{whole: make(map[[3]int64]int), ratios: make(map[[3]int64][]int)}
}

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
	if h[3].Sign() < 0 {
		for _, v := range h {
			v.Neg(v)
		}
	}
	if h[3].BitLen() > plain {
		reduce(h)
	}
	var over, w big.Int
	cut := uint(max(0, h[3].BitLen()-512)) // a float64 holds no more than 1023 bits
	below, _ := w.Rsh(h[3], cut).Float64()
	var steps [3]int64
	p := point{h: h}
	var whole, rest big.Int
	for k := range steps {
		whole.DivMod(h[k], h[3], &rest)
		steps[k] = whole.Int64()
		part, _ := over.Rsh(&rest, cut).Float64()
		p.at[k] = float64(steps[k]) + part/below
		p.rounded = p.rounded || rest.Sign() != 0
	}
	if !p.rounded {
		return s.lattice(steps)
	}
	for _, i := range s.ratios[steps] {
		if s.same(&s.points[i], &p) {
			return i
		}
	}
	s.ratios[steps] = append(s.ratios[steps], len(s.points))
	s.points = append(s.points, p)
	return len(s.points) - 1
}

// plain is how many bits a denominator has where an edge of a mesh meets a plane: such numbers
// have no common factor worth looking for. Others are made of places that have been cut already,
// and would grow with each cut.
const plain = 140

// reduce takes out common factors.
func reduce(h [4]*big.Int) {
	g := new(big.Int).Set(h[3])
	for k := 0; k < 3 && g.BitLen() > 1; k++ {
		g.GCD(nil, nil, g, new(big.Int).Abs(h[k]))
	}
	if g.BitLen() > 1 {
		for _, v := range h {
			v.Quo(v, g)
		}
	}
}

// same tells whether two places are one.
func (s *space) same(a, b *point) bool {
	var l, r big.Int
	for k := range 3 {
		if l.Mul(a.h[k], b.h[3]).Cmp(r.Mul(b.h[k], a.h[3])) != 0 {
			return false
		}
	}
	return true
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
	if s.aligned(p, q, r) {
		return 0
	}
	return s.line(axis, p, q)(r).Sign()
}

// mostLines is how many lines a place is known to be on at most: more take longer to look through
// than they save.
const mostLines = 4

// put notes that a place is on the line through two others, and on those that both of them are on.
func (s *space) put(p, from, to int) {
	note := func(e [2]int) {
		if len(s.points[p].on) < mostLines && !s.isOn(p, e) {
			s.points[p].on = append(s.points[p].on, e)
		}
	}
	if from == to {
		return
	}
	note(edge(from, to))
	for _, one := range [2]int{from, to} {
		for _, e := range s.points[one].on {
			if s.isOn(from, e) && s.isOn(to, e) {
				note(e)
			}
		}
	}
}

// aligned tells whether three places are known to be on one line: most that are have been put
// there, and need no sums of long numbers.
func (s *space) aligned(p, q, r int) bool {
	for _, one := range [3]int{p, q, r} {
		for _, e := range s.points[one].on {
			if s.isOn(p, e) && s.isOn(q, e) && s.isOn(r, e) {
				return true
			}
		}
	}
	return false
}

func (s *space) isOn(p int, e [2]int) bool {
	return p == e[0] || p == e[1] || slices.Contains(s.points[p].on, e)
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
