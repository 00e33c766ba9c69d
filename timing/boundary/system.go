package boundary

import (
	"pappus/timing/cores"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/spatial/r3"
)

// system is the equations for the pressure at a mesh's nodes, those rows of them that are not
// others turned.
type system struct {
	mesh    *mesh
	k       float64
	inner   float64    // where the inner surface is, between inside and surface
	second  complex128 // the factor of its equation
	row     []int      // the nodes whose rows they are
	re, im  []float64  // [row][node]
	order   [][]int32  // [turn][node]
	problem *Problem
	c       choices
}

// newSystem sets up the equations of a problem on a mesh at a wavenumber.
func newSystem(p *Problem, m *mesh, k float64, order [][]int32, c choices) *system {
	size := 0.0
	for _, at := range m.at {
		size = max(size, r3.Norm(r3.Sub(at, p.Inside)))
	}
	s := &system{mesh: m, k: k, problem: p, order: order, c: c}
	s.second = c.second(k * size)
	s.inner = 1 - min(c.Innermost, c.Deep/(k*size))
	n := m.Len()
	seen := make([]bool, n)
	for i := range n {
		if !seen[i] {
			s.row = append(s.row, i)
			for _, o := range order {
				seen[o[i]] = true
			}
		}
	}
	s.re, s.im = make([]float64, len(s.row)*n), make([]float64, len(s.row)*n)
	layers := make([]*layer, cores.Count())
	cores.Each(len(s.row), func(w, i int) {
		if layers[w] == nil {
			layers[w] = newLayer(m, k, c)
		}
		s.fill(layers[w], s.re[i*n:(i+1)*n], s.im[i*n:(i+1)*n], s.row[i])
	})
	return s
}

// within returns the place of the inner surface that belongs to one of the surface.
func (s *system) within(at r3.Vec) r3.Vec {
	return r3.Add(s.problem.Inside, r3.Scale(s.inner, r3.Sub(at, s.problem.Inside)))
}

// fill sets a row: p/2 - D p on the surface, plus the factor times -D p inside.
func (s *system) fill(l *layer, re, im []float64, node int) {
	m := s.mesh
	at := m.at[node]
	flat := m.patch[m.element[m.home[node]].patch].flat
	in := s.within(at)
	l.add(re, im, at, -1, flat)
	l.add(re, im, in, -s.second, -1)
	if pl := s.problem.Plane; pl.Present {
		l.add(re, im, pl.mirrored(at), -1, -1)
		l.add(re, im, pl.mirrored(in), -s.second, -1)
	}
	re[node] += 0.5
}

// given returns the right side for a piston.
func (s *system) given(p Piston) []complex128 {
	out := make([]complex128, s.mesh.Len())
	lots := (len(out) + 63) / 64
	cores.Each(lots, func(_, lot int) {
		for i := lot * 64; i < min(len(out), lot*64+64); i++ {
			at := s.mesh.at[i]
			in := s.within(at)
			out[i] = s.second * p.given(s.k, in)
			if !p.near(&s.mesh.element[s.mesh.home[i]], s.c.Beside) {
				out[i] += p.given(s.k, at)
			}
			if pl := s.problem.Plane; pl.Present {
				out[i] += p.given(s.k, pl.mirrored(at)) + s.second*p.given(s.k, pl.mirrored(in))
			}
		}
	})
	cores.Each(len(s.mesh.element), func(_, e int) {
		if el := &s.mesh.element[e]; p.near(el, s.c.Beside) {
			m := meaner{
				patch: &s.mesh.patch[el.patch], k: s.k, rimward: s.c.Rimward, piston: p, element: el,
				sum: make([]complex128, el.nu*el.nv), lu: make([]float64, el.nu), lv: make([]float64, el.nv),
			}
			m.take()
			for j, v := range m.sum {
				out[el.first+j] += v / complex(s.mesh.weight[el.first+j], 0)
			}
		}
	})
	return out
}

// multiply sets each dst to the matrix times src.
func (s *system) multiply(dst, src [][]complex128) {
	n, turns := s.mesh.Len(), len(s.order)
	wide := 2 * turns * len(src)
	x := make([]float64, n*wide)
	cores.Each(n, func(_, j int) {
		row := x[j*wide:]
		c := 0
		for _, v := range src {
			for _, o := range s.order {
				row[c], row[c+1] = real(v[o[j]]), imag(v[o[j]])
				c += 2
			}
		}
	})
	rows := len(s.row)
	a, b := make([]float64, rows*wide), make([]float64, rows*wide)
	X := blas64.General{Rows: n, Cols: wide, Stride: wide, Data: x}
	product := func(dst, left []float64) {
		blas64.Gemm(blas.NoTrans, blas.NoTrans, 1, blas64.General{Rows: rows, Cols: n, Stride: n, Data: left}, X,
			0, blas64.General{Rows: rows, Cols: wide, Stride: wide, Data: dst})
	}
	product(a, s.re)
	product(b, s.im)
	for i, node := range s.row {
		for r := range src {
			for g, o := range s.order {
				at := i*wide + 2*(r*turns+g)
				dst[r][o[node]] = complex(a[at]-b[at+1], a[at+1]+b[at])
			}
		}
	}
}
