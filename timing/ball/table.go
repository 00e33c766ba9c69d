package ball

import (
	"errors"
	"fmt"
	"math"

	"pappus/layout/prose"

	"pappus/timing/cores"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas32"
	"gonum.org/v1/gonum/blas/blas64"
)

// ErrTable is wrapped by the errors of NewTable that are not about the cap or
// the wavenumbers.
var ErrTable = errors.New("impossible table")

// Table is the field of a cap for a slice of wavenumbers, at any angle and over a
// range of distances, ready to be looked up. It holds the remainder
//
//	R(r, gamma, k) = H * path * exp(ik path)
//
// where path is the way of the sound from the cap's centre: see [Cap.Path]. R is
// smooth where H is not; in the light it tends to 2 for a small cap at high
// frequencies, at any distance. It is interpolated between nodes that are
// chosen by a rule, see grid.go: for ka up to 60 and distances from 1.02 radii
// the error of H is below 0.05 dB and 1 degree, in the shadow and close to the
// ball too; only in nulls in front of a large cap, more than 36 dB below a
// point source, it stays as large as it is at 36 dB.
//
// A table is not changed after it is made, and serves several goroutines.
type Table struct {
	cap        Cap
	rMin, rMax float64
	slabs      []slab
	n          int
}

// slab is the table for a run of wavenumbers, [from, to).
type slab struct {
	grid
	from, to int
	arcs     []float64 // k in arcs of the circle per metre
	rows     []float32 // [along][across][2*(to-from)], real and imaginary parts in turns
}

// slabMost bounds the wavenumbers of a slab, so that one row fits on the stack.
const slabMost = 64

// tableNearest is the least distance in radii.
const tableNearest = 1.02

// NewTable makes the table for the wavenumbers k, rad/m, not falling, and
// distances from rMin to rMax, m. rMin must be 1.02 radii or more; points that are
// nearer are for [Cap.Pressure]. loss is the loss in air in Np/m for each
// wavenumber, taken along r, or nil for none.
//
// It uses all processors and makes the same table on any number of them. Errors
// wrap ErrCap, ErrWavenumber, ErrDistance, ErrInside or ErrTable.
func NewTable(c Cap, k []float64, rMin, rMax float64, loss []float64) (*Table, error) {
	return newTable(c, k, rMin, rMax, loss, 1)
}

func newTable(c Cap, k []float64, rMin, rMax float64, loss []float64, refinement float64) (*Table, error) {
	if err := checkTable(c, k, rMin, rMax, loss); err != nil {
		return nil, err
	}
	t := &Table{cap: c, rMin: rMin, rMax: rMax, n: len(k)}
	for to := len(k); to > 0; {
		from := slabStart(k[:to])
		t.slabs = append(t.slabs, newSlab(c, k, loss, from, to, rMin, rMax, refinement))
		to = from
	}
	var jobs []func()
	for i := range t.slabs {
		jobs = append(jobs, t.slabs[i].jobs(c, k, loss, rMin, rMax)...)
	}
	cores.Each(len(jobs), func(_, i int) { jobs[i]() })
	jobs = jobs[:0]
	for i := range t.slabs {
		jobs = append(jobs, t.slabs[i].fillBetween()...)
	}
	cores.Each(len(jobs), func(_, i int) { jobs[i]() })
	return t, nil
}

func checkTable(c Cap, k []float64, rMin, rMax float64, loss []float64) error {
	if err := c.Check(); err != nil {
		return err
	}
	for i, x := range k {
		if err := c.checkWavenumber(x); err != nil {
			return err
		}
		if i > 0 && x < k[i-1] {
			return prose.Errorf("%w: wavenumber %g rad/m follows %g, must not fall", ErrTable, x, k[i-1])
		}
	}
	for _, r := range []float64{rMin, rMax} {
		if err := c.checkDistance(r); err != nil {
			return err
		}
	}
	if least := tableNearest * c.Radius; rMin < least*(1-1e-12) || rMax < rMin {
		return prose.Errorf("%w: from %g to %g m, must start at %g or above and not fall", ErrTable, rMin, rMax, least)
	}
	if loss != nil && len(loss) != len(k) {
		return fmt.Errorf("%w: %d losses for %d wavenumbers", ErrTable, len(loss), len(k))
	}
	for _, x := range loss {
		if !(x >= 0) || math.IsInf(x, 0) {
			return prose.Errorf("%w: loss %g Np/m must be 0 or above and finite", ErrTable, x)
		}
	}
	return nil
}

// slabStart returns where the last slab of k begins: two octaves down, since low
// frequencies need few nodes, but with enough wavenumbers, since each slab costs
// some time in every call.
func slabStart(k []float64) int {
	const enough = 24
	top := k[len(k)-1]
	from := len(k) - 1
	for from > 0 && len(k)-from < slabMost && (k[from-1] > top/4 || len(k)-from < enough) {
		from--
	}
	if from < 16 && len(k) <= slabMost {
		return 0
	}
	return from
}

func newSlab(c Cap, k, loss []float64, from, to int, rMin, rMax, refinement float64) slab {
	var most float64
	if loss != nil {
		for _, x := range loss[from:to] {
			most = max(most, x)
		}
	}
	s := slab{grid: newGrid(c, k[to-1], most, rMin, rMax, refinement), from: from, to: to}
	for _, k := range k[from:to] {
		s.arcs = append(s.arcs, k/arc)
	}
	s.rows = make([]float32, s.along*s.across*2*(to-from))
	return s
}

// jobs fill the slab, one distance each.
func (s *slab) jobs(c Cap, k, loss []float64, rMin, rMax float64) []func() {
	gammas := make([]float64, s.across)
	for i := range gammas {
		gammas[i] = s.gamma(i)
	}
	jobs := make([]func(), s.coarse)
	for j := range jobs {
		jobs[j] = func() {
			r := s.distance(j, c.Radius, rMin, rMax)
			s.fill(j, c, k, loss, r, gammas)
		}
	}
	return jobs
}

// fill sets the rows of distance j: the Legendre polynomials at all angles times
// the coefficients of all wavenumbers, a product of two matrices.
func (s *slab) fill(j int, c Cap, k, loss []float64, r float64, gammas []float64) {
	const tolerance = 1e-9 // of the sum of sizes; the table holds float32
	n := s.to - s.from
	w := weights{cap: newCapWeights(c.HalfAngle), bound: capBound(c.HalfAngle)}
	columns := make([][]complex128, n)
	terms := 0
	for f := range columns {
		columns[f] = w.coefficients(nil, k[s.from+f]*c.Radius, c.Radius/r, tolerance)
		terms = max(terms, len(columns[f]))
	}
	coef := make([]float64, terms*2*n)
	for f, column := range columns {
		for i, v := range column {
			coef[i*2*n+2*f] = real(v)
			coef[i*2*n+2*f+1] = imag(v)
		}
	}
	inv := make([]float64, terms)
	for i := range inv {
		inv[i] = 1 / float64(i+1)
	}
	polynomials := make([]float64, s.across*terms)
	for i, gamma := range gammas {
		l := newLegendre(gamma)
		l.fill(polynomials[i*terms:(i+1)*terms], inv)
	}
	product := make([]float64, s.across*2*n)
	blas64.Gemm(blas.NoTrans, blas.NoTrans, 1,
		blas64.General{Rows: s.across, Cols: terms, Stride: terms, Data: polynomials},
		blas64.General{Rows: terms, Cols: 2 * n, Stride: 2 * n, Data: coef},
		0, blas64.General{Rows: s.across, Cols: 2 * n, Stride: 2 * n, Data: product})
	s.store(j, c, product, r, gammas, fadings(r, n, s.from, loss))
}

// fadings is 1/r with the loss, for n wavenumbers.
func fadings(r float64, n, from int, loss []float64) []float64 {
	fade := make([]float64, n)
	for f := range fade {
		fade[f] = 1 / r
		if loss != nil {
			fade[f] *= math.Exp(-loss[from+f] * r)
		}
	}
	return fade
}

// store turns the pressures over that of a source at the centre into
// remainders.
func (s *slab) store(j int, c Cap, pressure []float64, r float64, gammas, fade []float64) {
	width := 2 * (s.to - s.from)
	for i, gamma := range gammas {
		path := c.path(r, gamma)
		dst := s.rows[(j*dense*s.across+i)*width:][:width]
		src := pressure[i*width:][:width]
		for f, fade := range fade {
			re, im := turn(math.Abs(path-r) * s.arcs[f]) // exp(-ik abs(path-r))
			if path > r {
				im = -im
			}
			v := complex(src[2*f], src[2*f+1]) * complex(re*fade*path, im*fade*path)
			dst[2*f], dst[2*f+1] = float32(real(v)), float32(imag(v))
		}
	}
}

// fillBetween are the jobs that fill the nodes along between the coarse ones, one
// coarse cell each.
func (s *slab) fillBetween() []func() {
	width := s.across * 2 * (s.to - s.from)
	jobs := make([]func(), s.coarse-1)
	for j := range jobs {
		jobs[j] = func() {
			first := min(max(j-1, 0), s.coarse-4)
			for m := 1; m < dense; m++ {
				at := float64(j) + float64(m)/dense
				dst := s.rows[(j*dense+m)*width:][:width]
				for i, w := range cubic(at - float64(first+1)) {
					src := s.rows[(first+i)*dense*width:][:width]
					blas32.Axpy(float32(w), blas32.Vector{N: width, Inc: 1, Data: src}, blas32.Vector{N: width, Inc: 1, Data: dst})
				}
			}
		}
	}
	return jobs
}

// Path returns the way in m that sound takes from the cap's centre round the
// ball to the point at distance r and angle gamma in 0..pi: the straight line
// where the cap is seen, else the arc to the horizon and the tangent from there
// (Keller's creeping ray). It is NaN inside the ball.
func (c Cap) Path(r, gamma float64) float64 {
	if r < c.Radius {
		return math.NaN()
	}
	return c.path(r, gamma)
}

func (c Cap) path(r, gamma float64) float64 {
	a := c.Radius
	if r*math.Cos(gamma) >= a && math.Abs(gamma) < math.Pi/2 {
		d := r - a
		return math.Sqrt(d*d + 2*r*a*versine(gamma))
	}
	return math.Sqrt((r-a)*(r+a)) + a*(gamma-math.Acos(a/r))
}
