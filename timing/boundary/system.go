package boundary

import (
	"math"

	"pappus/timing/cores"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/spatial/r3"
)

// Plane is a rigid flat surface without end that mirrors the sound: all of the body is on the
// side of its normal.
type Plane struct {
	Present bool
	Normal  r3.Vec  // of unit length
	Height  float64 // of the plane along the normal, seen from the origin, m
}

// mirrored returns a place mirrored in the plane.
func (p Plane) mirrored(v r3.Vec) r3.Vec {
	return r3.Sub(v, r3.Scale(2*(r3.Dot(v, p.Normal)-p.Height), p.Normal))
}

// Problem is a body and what is beside it.
type Problem struct {
	Patches []Patch
	Inside  r3.Vec // a place well inside, m
	Centre  r3.Vec // about which the field is expanded, m
	Plane   Plane
}

// Reach returns the greatest distance of the surface from the centre, in m.
func (p *Problem) Reach() float64 {
	_, reach := p.size()
	return reach
}

// size returns the greatest distance of the surface from the origin, in m, and from the centre.
func (p *Problem) size() (origin, centre float64) {
	for i := range p.Patches {
		// On a curved patch the farthest place may be inside.
		for _, u := range []float64{0, 0.5, 1} {
			for _, v := range []float64{0, 0.5, 1} {
				at, _, _ := p.Patches[i].at(u, v)
				origin, centre = max(origin, r3.Norm(at)), max(centre, r3.Norm(r3.Sub(at, p.Centre)))
			}
		}
	}
	return origin, centre
}

// system is the equations for the pressure at a mesh's nodes, those rows of them that are not
// others turned.
type system struct {
	mesh    *mesh
	k       float64
	inner   float64
	row     []int     // the nodes whose rows they are
	re, im  []float64 // [row][node]
	order   [][]int32 // [turn][node]
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
	s.inner = 1 - min(c.Innermost, math.Pi/2/(k*size))
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
	l.add(re, im, in, -s.c.Second, -1)
	if pl := s.problem.Plane; pl.Present {
		l.add(re, im, pl.mirrored(at), -1, -1)
		l.add(re, im, pl.mirrored(in), -s.c.Second, -1)
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
			out[i] = s.c.Second * p.given(s.k, in)
			if !p.near(&s.mesh.element[s.mesh.home[i]], s.c.Beside) {
				out[i] += p.given(s.k, at)
			}
			if pl := s.problem.Plane; pl.Present {
				out[i] += p.given(s.k, pl.mirrored(at)) + s.c.Second*p.given(s.k, pl.mirrored(in))
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

// Pressure is what the pistons give on the surface, at one wavenumber.
type Pressure struct {
	mesh   *mesh
	k      float64
	piston []Piston
	centre r3.Vec
	value  [][]complex128 // [piston][node]
	rounds int
}

// Solver is a problem with its pistons, ready for one wavenumber after another.
type Solver struct {
	problem *Problem
	piston  []Piston
	size    float64 // from the origin, m
	turn    []turn  // that leave body and plane as they are
	choices choices
}

// NewSolver returns one for pistons of a body.
func (p *Problem) NewSolver(pistons []Piston) *Solver {
	s := &Solver{problem: p, piston: pistons, choices: chosen}
	s.size, _ = p.size()
	var corners []r3.Vec
	there := map[[3]int64]bool{}
	for i := range p.Patches {
		for _, at := range p.Patches[i].corners() {
			key := newPlaces(nil, s.size).key(r3.Add(at, r3.Vec{X: s.size, Y: s.size, Z: s.size}))
			if !there[key] {
				there[key] = true
				corners = append(corners, at)
			}
		}
	}
	s.turn = turns(corners, s.size, p.Plane.Normal)
	return s
}

// mesh returns the mesh at a wavenumber in rad/m of so many nodes to a wavelength, and the
// turns of the problem that it has, with where each node goes.
func (s *Solver) mesh(k, density float64) (*mesh, []turn, [][]int32) {
	m := newMesh(s.problem.Patches, k, density, s.choices)
	turn, order := m.orders(s.turn, s.size)
	return m, turn, order
}

// Solve returns the pressure of each piston on the surface at a wavenumber in rad/m, on a mesh
// of so many nodes to a wavelength, to a residual of a tolerance times the right side.
func (s *Solver) Solve(k, density, tolerance float64) *Pressure {
	mesh, turns, order := s.mesh(k, density)
	eq := newSystem(s.problem, mesh, k, order, s.choices)
	first, from := s.alike(turns)
	right := make([][]complex128, len(first))
	for i, p := range first {
		right[i] = eq.given(s.piston[p])
	}
	space := newKrylov(right, from, order, tolerance)
	space.multiply = eq.multiply
	space.solve(200)
	out := &Pressure{mesh: mesh, k: k, piston: s.piston, centre: s.problem.Centre, value: make([][]complex128, len(s.piston)), rounds: space.rounds}
	for i := range first {
		right[i] = space.solution(i)
	}
	for i, f := range from {
		out.value[i] = placed(right[f.of], order[f.turn])
	}
	return out
}

// alike returns the pistons that are no others turned, and of each which of these it is, by their
// order, turned how.
func (s *Solver) alike(all []turn) (first []int, from []turned) {
	from = make([]turned, len(s.piston))
next:
	for i, one := range s.piston {
		for at, j := range first {
			for g, t := range all {
				if s.is(s.piston[j], t, one) {
					from[i] = turned{at, g}
					continue next
				}
			}
		}
		from[i] = turned{len(first), 0}
		first = append(first, i)
	}
	return first, from
}

// is tells whether a piston is another one turned.
func (s *Solver) is(other Piston, t turn, one Piston) bool {
	return other.Radius == one.Radius && r3.Norm(r3.Sub(t.of(other.At), one.At)) < same*s.size && r3.Norm(r3.Sub(t.of(other.Axis), one.Axis)) < same
}

// At returns the pressure of a piston at a place outside, without what the plane mirrors.
func (p *Problem) At(pistons []Piston, x *Pressure, k float64, piston int, at r3.Vec) complex128 {
	l := newLayer(x.mesh, k, chosen)
	re, im := make([]float64, x.mesh.Len()), make([]float64, x.mesh.Len())
	l.add(re, im, at, 1, -1)
	sum := pistons[piston].given(k, at)
	for j := range re {
		sum += complex(re[j], im[j]) * x.value[piston][j]
	}
	return sum
}
