package boundary

import (
	"context"
	"math"
	"math/cmplx"

	"pappus/timing/harmonic"
)

// Table is what the pistons of a problem radiate, as outgoing waves about its centre, at even
// steps of the wavenumber from 0 on.
type Table struct {
	Step   float64         // of the wavenumber, rad/m
	Reach  float64         // of the body from the centre, m
	Degree []int           // of the waves at each wavenumber
	Waves  [][][]complex64 // [wavenumber][piston]: C, then S, as Pressure.Waves has them
	// Off is how far the far field may be from the true one at each wavenumber, RMS over all
	// directions and pistons, as a part of it: what a rougher mesh changes, times roughness.
	Off []float64
}

// Plan is how a table is to be made.
type Plan struct {
	Top  float64 // the highest wavenumber, rad/m
	Most float64 // seconds that it may take on two cores, by forecast; it ends lower where it would take longer
}

// density is the nodes to a wavelength of the mesh.
const density = 5

// each is how many steps apart the two are compared.
const compared = 4

// steps is the wavenumber's step times the reach. What is heard outside, its way out taken off,
// turns its phase by at most pi times that from one step to the next, with a plane about twice
// as much, for it sends back what came later; a polynomial through six steps is then within
// 2e-4 of it (a test).
func steps(plane bool) float64 {
	if plane {
		return 0.25
	}
	return 0.34
}

// Table solves a problem for all its pistons, upward from the lowest wavenumber. progress, if
// it is not nil, is called with the part of the work that is done and the seconds that the whole
// takes by forecast. The error is that of the context.
func (s *Solver) Table(ctx context.Context, plan Plan, progress func(done, seconds float64)) (*Table, error) {
	t := &Table{Reach: s.problem.Reach()}
	t.Step = steps(s.problem.Plane.Present) / t.Reach
	cost := s.forecast(t, plan)
	whole, done := 0.0, 0.0
	for _, c := range cost {
		whole += c
	}
	for i := range cost {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		if err := t.add(s, i); err != nil {
			return nil, err
		}
		done += cost[i]
		if progress != nil {
			progress(done/whole, whole)
		}
	}
	t.fillOff()
	return t, nil
}

// K returns the wavenumber of a step, rad/m; the first is not quite 0, where the waves' radial
// functions have no limit of their own.
func (t *Table) K(i int) float64 { return max(float64(i)*t.Step, 1e-3/t.Reach) }

// Top returns the highest wavenumber, rad/m.
func (t *Table) Top() float64 { return t.K(len(t.Waves) - 1) }

// forecast returns the seconds that each wavenumber takes, as far as the plan allows: at least
// as many as a polynomial goes through.
func (s *Solver) forecast(t *Table, plan Plan) []float64 {
	first, _ := s.alike(s.turn)
	sum := 0.0
	var cost []float64
	for i := 0; i < through || t.K(i-1) < plan.Top; i++ {
		k := t.K(i)
		mesh, turns, _ := s.mesh(k, density)
		rows, n := float64(mesh.Len()/len(turns)), float64(mesh.Len())
		places := 2.0
		if s.problem.Plane.Present {
			places = 4
		}
		turn := float64(len(turns) * len(first))
		c := rows*n*places*60e-9 + rows*n*turn*(10+k*t.Reach)*4e-9 + n*places*float64(len(first))*2e-6
		if i%compared == 0 {
			c *= 1.4
		}
		if i >= through && sum+c > plan.Most {
			break
		}
		sum += c
		cost = append(cost, c)
	}
	return cost
}

// degreeAt returns the degree of waves at k times the reach: enough for the far field
// (Chew, Jin, Michielssen and Song, Fast and Efficient Algorithms in Computational
// Electromagnetics, 2001, chapter 3, from memory), and some more for what is near.
func degreeAt(ka float64) int { return int(math.Ceil(ka + 3*math.Cbrt(ka) + 10)) }

// add solves for a wavenumber.
func (t *Table) add(s *Solver, i int) error {
	k := t.K(i)
	degree := degreeAt(k * t.Reach)
	x, err := s.Solve(k, density, 1e-5)
	if err != nil {
		return err
	}
	waves := x.Waves(degree, t.Reach)
	off := math.NaN()
	if i%compared == 0 {
		if x, err = s.rougher().Solve(k, density, 1e-5); err != nil {
			return err
		}
		off = t.apart(waves, x.Waves(degree, t.Reach), degree, k) * roughness
	}
	t.Degree, t.Off = append(t.Degree, degree), append(t.Off, off)
	row := make([][]complex64, len(waves))
	for p, w := range waves {
		row[p] = make([]complex64, len(w))
		for j, v := range w {
			row[p][j] = complex64(v)
		}
	}
	t.Waves = append(t.Waves, row)
	return nil
}

// apart returns how far two far fields are apart, RMS, as a part of the first (DLMF 14.30.8).
func (t *Table) apart(a, b [][]complex128, degree int, k float64) float64 {
	radial := make([]complex128, degree+1)
	harmonic.Outgoing(radial, k*t.Reach)
	var off, all float64
	for p := range a {
		half := len(a[p]) / 2
		for m := range degree + 1 {
			for n := m; n <= degree; n++ {
				i := harmonic.Index(degree, n, m)
				w := 1 / (real(radial[n])*real(radial[n]) + imag(radial[n])*imag(radial[n])) / float64(2*n+1)
				if m > 0 {
					w *= 2
				}
				for _, j := range []int{i, half + i} {
					off += w * square(a[p][j]-b[p][j])
					all += w * square(a[p][j])
				}
			}
		}
	}
	return math.Sqrt(off / all)
}

func square(v complex128) float64 { return real(v)*real(v) + imag(v)*imag(v) }

// fillOff gives the wavenumbers that were not compared the greater of their neighbours'.
func (t *Table) fillOff() {
	last := 0.0
	for i := len(t.Off) - 1; i >= 0; i-- {
		if math.IsNaN(t.Off[i]) {
			before := t.Off[i/compared*compared]
			t.Off[i] = max(before, last)
			continue
		}
		last = t.Off[i]
	}
}

// through is how many steps a polynomial goes through.
const through = 6

// Between is where a wavenumber lies through a table's steps: the first of those whose values,
// their phase turned back, make a polynomial, and their factors.
type Between struct {
	First  int
	Factor [through]complex128
}

// middle is the way, in reaches, about which the ways round the body from the sphere of radius
// reach lie: from -1 to pi-1.
const middle = 0.57

// Between returns that of a wavenumber in rad/m, at most Top, for values that are exp(ik(r-reach))
// times what is heard at r: values of the table's own waves are those at the reach.
func (t *Table) Between(k float64) Between {
	first := min(max(int(k/t.Step)-through/2+1, 0), len(t.Waves)-through)
	b := Between{First: first}
	for i := range through {
		f := 1.0
		for j := range through {
			if i != j {
				f *= (k - t.K(first+j)) / (t.K(first+i) - t.K(first+j))
			}
		}
		b.Factor[i] = complex(f, 0) * cmplx.Rect(1, (t.K(first+i)-k)*(1+middle)*t.Reach)
	}
	return b
}

// Of returns the value between.
func (b *Between) Of(values []complex128) complex128 {
	var sum complex128
	for i, f := range b.Factor {
		sum += f * values[b.First+i]
	}
	return sum
}

// Radial sets dst[n] to h_n(kr)/h_n(k reach) times r exp(ik(r-reach))/reach, which has a limit far away.
func (t *Table) Radial(dst []complex128, k, r float64) {
	near := harmonic.NewHankel(k * t.Reach)
	if math.IsInf(r, 1) {
		turn := cmplx.Rect(1, -k*t.Reach)
		i := complex(0, 1/(k*t.Reach)) // h_n(z) -> i^(n+1) exp(-iz)/z
		for n := range dst {
			dst[n] = i * turn / near.Next()
			i *= 1i
		}
		return
	}
	far, turn := harmonic.NewHankel(k*r), cmplx.Rect(r/t.Reach, k*(r-t.Reach))
	for n := range dst {
		dst[n] = far.Next() * (turn / near.Next())
	}
}

// Wide is how many coefficients waves of a degree have: C and S.
func Wide(degree int) int { return 2 * harmonic.Count(degree) }
