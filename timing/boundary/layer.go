package boundary

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// layer sums the double layer of a mesh at places: the integral of p times dG/dn over the
// surface, as a row of factors of p at the nodes. It is for one goroutine.
type layer struct {
	mesh *mesh
	k    float64
	c    choices
	lu   []float64
	lv   []float64
}

func newLayer(m *mesh, k float64, c choices) *layer {
	return &layer{m, k, c, make([]float64, 16), make([]float64, 16)}
}

// add adds to re and im factor times the row of a place in m. flat is the flat face that the
// place is on, whose own layer is nothing there; -1: none.
func (l *layer) add(re, im []float64, at r3.Vec, factor complex128, flat int) {
	m := l.mesh
	fr, fi := real(factor), imag(factor)
	for e := range m.element {
		el := &m.element[e]
		if flat >= 0 && m.patch[el.patch].flat == flat {
			continue
		}
		if l.near(el, at) {
			l.piece(re, im, el, at, fr, fi, [4]float64{el.u0, el.u1, el.v0, el.v1}, 0)
			continue
		}
		for j := el.first; j < el.first+el.nu*el.nv; j++ {
			kr, ki := l.kernel(at, m.at[j], m.normal[j])
			kr *= m.weight[j]
			ki *= m.weight[j]
			re[j] += fr*kr - fi*ki
			im[j] += fr*ki + fi*kr
		}
	}
}

// kernel returns dG/dn at y, for a place x: with R their distance,
//
//	(1 + ikR) exp(-ikR) (x-y).n / (4 pi R^3)
func (l *layer) kernel(x, y, n r3.Vec) (re, im float64) {
	dx, dy, dz := x.X-y.X, x.Y-y.Y, x.Z-y.Z
	r2 := dx*dx + dy*dy + dz*dz
	r := math.Sqrt(r2)
	f := (dx*n.X + dy*n.Y + dz*n.Z) / (4 * math.Pi * r2 * r)
	kr := l.k * r
	sin, cos := math.Sincos(kr)
	return f * (cos + kr*sin), f * (kr*cos - sin)
}

// near tells whether a place is too near an element for its own nodes.
func (l *layer) near(e *element, at r3.Vec) bool {
	d := r3.Sub(at, e.middle)
	far := l.c.TooNear * farness[min(e.nu, e.nv)] * e.reach
	return r3.Dot(d, d) < far*far
}

// deepest is how often an element is cut in four at most.
const deepest = 9

// reach returns how far the corners of a piece with two sides are from its middle at most: half
// its longer diagonal, which is far more than that of a rectangle where the sides lean.
func reach(du, dv r3.Vec) float64 {
	return max(r3.Norm(r3.Add(du, dv)), r3.Norm(r3.Sub(du, dv))) / 2
}

// piece adds what a piece of an element, u and v in cut, gives: cut in four until it is as far
// away as it is large.
func (l *layer) piece(re, im []float64, e *element, at r3.Vec, fr, fi float64, cut [4]float64, depth int) {
	p := &l.mesh.patch[e.patch]
	u, v := (cut[0]+cut[1])/2, (cut[2]+cut[3])/2
	middle, du, dv := p.at(u, v)
	a, b := r3.Norm(du)*(cut[1]-cut[0])/2, r3.Norm(dv)*(cut[3]-cut[2])/2
	d := r3.Norm(r3.Sub(at, middle))
	if depth < deepest && d < l.c.Apart*reach(r3.Scale(cut[1]-cut[0], du), r3.Scale(cut[3]-cut[2], dv)) {
		switch { // the longer side first
		case a > 1.8*b:
			l.piece(re, im, e, at, fr, fi, [4]float64{cut[0], u, cut[2], cut[3]}, depth+1)
			l.piece(re, im, e, at, fr, fi, [4]float64{u, cut[1], cut[2], cut[3]}, depth+1)
		case b > 1.8*a:
			l.piece(re, im, e, at, fr, fi, [4]float64{cut[0], cut[1], cut[2], v}, depth+1)
			l.piece(re, im, e, at, fr, fi, [4]float64{cut[0], cut[1], v, cut[3]}, depth+1)
		default:
			l.piece(re, im, e, at, fr, fi, [4]float64{cut[0], u, cut[2], v}, depth+1)
			l.piece(re, im, e, at, fr, fi, [4]float64{u, cut[1], cut[2], v}, depth+1)
			l.piece(re, im, e, at, fr, fi, [4]float64{cut[0], u, v, cut[3]}, depth+1)
			l.piece(re, im, e, at, fr, fi, [4]float64{u, cut[1], v, cut[3]}, depth+1)
		}
		return
	}
	g := rule(l.c.Fine)
	gu, gv := rule(e.nu), rule(e.nv)
	for i, x := range g.at {
		u := cut[0] + (cut[1]-cut[0])*x
		gu.lagrange(l.lu[:e.nu], (u-e.u0)/(e.u1-e.u0))
		for j, y := range g.at {
			v := cut[2] + (cut[3]-cut[2])*y
			to, du, dv := p.at(u, v)
			out := r3.Cross(du, dv) // not of unit length: the area is in it
			kr, ki := l.kernel(at, to, out)
			w := g.weight[i] * g.weight[j] * (cut[1] - cut[0]) * (cut[3] - cut[2])
			kr, ki = w*(fr*kr-fi*ki), w*(fr*ki+fi*kr)
			gv.lagrange(l.lv[:e.nv], (v-e.v0)/(e.v1-e.v0))
			n := e.first
			for _, a := range l.lu[:e.nu] {
				for _, b := range l.lv[:e.nv] {
					re[n] += a * b * kr
					im[n] += a * b * ki
					n++
				}
			}
		}
	}
}
