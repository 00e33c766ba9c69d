package boundary

import (
	"errors"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

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
	least   float64 // radius of a piston, m
	turn    []turn  // that leave body and plane as they are
	choices choices
}

// NewSolver returns one for pistons of a body. The error tells what of either is impossible.
func (p *Problem) NewSolver(pistons []Piston) (*Solver, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	size, _ := p.size()
	for i, one := range pistons {
		if err := p.checkPiston(one, size); err != nil {
			return nil, prose.Errorf("piston %d: %w", i+1, err)
		}
	}
	s := &Solver{problem: p.open(), piston: pistons, size: size, least: size, choices: chosen}
	for _, one := range pistons {
		s.least = min(s.least, one.Radius)
	}
	s.turn = turns(p.corners(size), size, p.Plane.Normal)
	return s, nil
}

// roughness is how far the field of a mesh is from the true one at most, as a part of how far
// that of the rougher mesh is from it: for nine bodies at 500 Hz to 3.5 kHz it is a third to a
// fortieth (TestRougher).
const roughness = 1.0 / 3

// rougher returns the solver with one node fewer along each side of each element, whatever the
// wavelength: with fewer nodes to a wavelength alone, short sides would stay as they are and
// show no difference. It has about half the nodes.
func (s *Solver) rougher() *Solver {
	out := *s
	out.choices.Fewer = 1
	return &out
}

// mesh returns the mesh at a wavenumber in rad/m of so many nodes to a wavelength, and the
// turns of the problem that it has, with where each node goes.
func (s *Solver) mesh(k, density float64) (*mesh, []turn, [][]int32) {
	m := newMesh(s.problem.Patches, k, density, s.least, s.choices)
	turn, order := m.orders(s.turn, s.size)
	return m, turn, order
}

// ErrNotSolved is that the equations were not solved to the tolerance that was asked for.
var ErrNotSolved = errors.New("the pressure on the body was not found to the tolerance")

// mostRounds is how many rounds a solution may take: about ten times what any body has taken.
const mostRounds = 200

// Solve returns the pressure of each piston on the surface at a wavenumber in rad/m, on a mesh
// of so many nodes to a wavelength, to a residual of a tolerance times the right side. The error
// is ErrNotSolved.
func (s *Solver) Solve(k, density, tolerance float64) (*Pressure, error) {
	mesh, turns, order := s.mesh(k, density)
	eq := newSystem(s.problem, mesh, k, order, s.choices)
	first, from := s.alike(turns)
	right := make([][]complex128, len(first))
	for i, p := range first {
		right[i] = eq.given(s.piston[p])
	}
	space := newKrylov(right, from, order, tolerance)
	space.multiply = eq.multiply
	if !space.solve(mostRounds) {
		return nil, prose.Errorf("%w: %g rad/m, %d nodes, %d rounds", ErrNotSolved, k, len(mesh.at), space.rounds)
	}
	out := &Pressure{mesh: mesh, k: k, piston: s.piston, centre: s.problem.Centre, value: make([][]complex128, len(s.piston)), rounds: space.rounds}
	for i := range first {
		right[i] = space.solution(i)
	}
	for i, f := range from {
		out.value[i] = placed(right[f.of], order[f.turn])
	}
	return out, nil
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
func (x *Pressure) At(piston int, at r3.Vec) complex128 {
	l := newLayer(x.mesh, x.k, chosen)
	re, im := make([]float64, len(x.mesh.at)), make([]float64, len(x.mesh.at))
	l.add(re, im, at, 1, -1)
	sum := x.piston[piston].given(x.k, at)
	for j, v := range x.value[piston] {
		sum += complex(re[j], im[j]) * v
	}
	return sum
}
