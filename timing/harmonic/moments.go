package harmonic

import (
	"math"

	"pappus/timing/cores"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/spatial/r3"
)

// Frame is where angles are counted from: three unit vectors square to each other.
// Z is the polar axis, X has azimuth 0.
type Frame struct{ X, Y, Z r3.Vec }

// Angles returns the cosine and sine of a direction's angle from the polar axis and
// its azimuth in rad. The direction need not be of unit length; it must not be zero.
func (f Frame) Angles(d r3.Vec) (cos, sin, azimuth float64) {
	x, y, z := r3.Dot(f.X, d), r3.Dot(f.Y, d), r3.Dot(f.Z, d)
	flat := math.Hypot(x, y)
	r := math.Hypot(flat, z)
	return z / r, flat / r, math.Atan2(y, x)
}

// Moments are C_nm and S_nm of the package comment for several sets of weights.
type Moments struct {
	frame  Frame
	degree int
	sets   int
	roots  *roots
	cos    [][]float64 // for each m: [set][n-m]
	sin    [][]float64
}

// NewMoments returns the moments of sets of real weights, weight[set][direction], for
// directions in a frame, up to a degree. A complex set is two real ones, its real parts
// and its imaginary parts. It panics where a set's length is not the number of directions
// or the degree is negative. The cost is directions times sets times degree squared.
func NewMoments(f Frame, direction []r3.Vec, weight [][]float64, degree int) *Moments {
	if degree < 0 {
		panic("harmonic: negative degree")
	}
	for _, w := range weight {
		if len(w) != len(direction) {
			panic("harmonic: lengths differ")
		}
	}
	m := &Moments{frame: f, degree: degree, sets: len(weight), roots: newRoots(degree + 1)}
	m.fill(direction, weight)
	return m
}

// fill makes the moments on all cores, order by order: for each, two products of matrices.
func (m *Moments) fill(direction []r3.Vec, weight [][]float64) {
	m.cos, m.sin = make([][]float64, m.degree+1), make([][]float64, m.degree+1)
	places := make([]place, len(direction))
	for i, d := range direction {
		places[i].cos, places[i].sin, places[i].azimuth = m.frame.Angles(d)
	}
	scratch := make([]momentScratch, cores.Count())
	for i := range scratch {
		scratch[i] = momentScratch{make([]float64, len(direction)*(m.degree+1)), make([]float64, m.sets*len(direction))}
	}
	cores.Each(m.degree+1, func(worker, order int) { m.order(order, places, weight, scratch[worker]) })
}

// place is where a direction points.
type place struct{ cos, sin, azimuth float64 }

// momentScratch is one goroutine's room to work.
type momentScratch struct {
	polynomials []float64 // [direction][n-m]
	weighted    []float64 // [set][direction]
}

// order makes the moments of one order.
func (m *Moments) order(order int, places []place, weight [][]float64, s momentScratch) {
	terms := m.degree + 1 - order
	first := sectoral(order)
	for i, p := range places {
		m.roots.legendre(s.polynomials[i*terms:(i+1)*terms], order, p.cos, first*math.Pow(p.sin, float64(order)))
	}
	m.cos[order] = m.product(s, weight, terms, func(i int) float64 { return math.Cos(float64(order) * places[i].azimuth) })
	m.sin[order] = m.product(s, weight, terms, func(i int) float64 { return math.Sin(float64(order) * places[i].azimuth) })
}

// product returns, for each set, the sum over directions of weight, turn and polynomials.
func (m *Moments) product(s momentScratch, weight [][]float64, terms int, turn func(int) float64) []float64 {
	dst := make([]float64, m.sets*terms)
	if len(dst) == 0 || len(weight[0]) == 0 {
		return dst
	}
	count := len(weight[0])
	for i := range count {
		t := turn(i)
		for set, w := range weight {
			s.weighted[set*count+i] = w[i] * t
		}
	}
	blas64.Gemm(blas.NoTrans, blas.NoTrans, 1,
		blas64.General{Rows: m.sets, Cols: count, Stride: count, Data: s.weighted},
		blas64.General{Rows: count, Cols: terms, Stride: terms, Data: s.polynomials},
		0, blas64.General{Rows: m.sets, Cols: terms, Stride: terms, Data: dst})
	return dst
}

// Power returns the mean over all directions of the squared size of the sum whose
// coefficients z_n are given, for the complex weights of sets re and im: by
// orthogonality (DLMF 14.30.8) the sum over n of |z_n|^2/(2n+1) times that over m of
// e_m (C_nm^2 + S_nm^2). Terms of z beyond the degree are left out.
func (m *Moments) Power(z []complex128, re, im int) float64 {
	total := 0.0
	for order := range min(m.degree+1, len(z)) {
		terms := m.degree + 1 - order
		double := 2.0
		if order == 0 {
			double = 1
		}
		for _, part := range [][]float64{m.cos[order], m.sin[order]} {
			for i := range min(terms, len(z)-order) {
				n := order + i
				a, b, size := part[re*terms+i], part[im*terms+i], z[n]
				total += double * (a*a + b*b) * (real(size)*real(size) + imag(size)*imag(size)) / float64(2*n+1)
			}
		}
	}
	return total
}
