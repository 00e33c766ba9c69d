package harmonic

import (
	"math"

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

// Degree is the highest n.
func (m *Moments) Degree() int { return m.degree }

// Sets is the number of sets of weights.
func (m *Moments) Sets() int { return m.sets }

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

// fill makes the moments, order by order: for each, a product of two matrices.
func (m *Moments) fill(direction []r3.Vec, weight [][]float64) {
	count := len(direction)
	cos, sin := make([]float64, count), make([]float64, count)
	turn, step := make([]complex128, count), make([]complex128, count) // exp(i m phi), exp(i phi)
	sectoral := make([]float64, count)
	for i, d := range direction {
		var azimuth float64
		cos[i], sin[i], azimuth = m.frame.Angles(d)
		s, c := math.Sincos(azimuth)
		turn[i], step[i], sectoral[i] = 1, complex(c, s), 1
	}
	polynomials := make([]float64, count*(m.degree+1))
	weighted := make([]float64, m.sets*count)
	for order := range m.degree + 1 {
		terms := m.degree + 1 - order
		for i := range direction {
			m.roots.legendre(polynomials[i*terms:(i+1)*terms], order, cos[i], sectoral[i])
		}
		m.cos = append(m.cos, m.product(weighted, weight, polynomials, terms, func(i int) float64 { return real(turn[i]) }))
		m.sin = append(m.sin, m.product(weighted, weight, polynomials, terms, func(i int) float64 { return imag(turn[i]) }))
		for i := range direction {
			turn[i] *= step[i]
			sectoral[i] = nextSectoral(sectoral[i], sin[i], order)
		}
	}
}

// product returns, for each set, the sum over directions of weight, turn and polynomials.
func (m *Moments) product(weighted []float64, weight [][]float64, polynomials []float64, terms int, turn func(int) float64) []float64 {
	dst := make([]float64, m.sets*terms)
	if m.sets == 0 || len(polynomials) == 0 || len(weight[0]) == 0 {
		return dst
	}
	count := len(weight[0])
	for i := range count {
		t := turn(i)
		for s, w := range weight {
			weighted[s*count+i] = w[i] * t
		}
	}
	blas64.Gemm(blas.NoTrans, blas.NoTrans, 1,
		blas64.General{Rows: m.sets, Cols: count, Stride: count, Data: weighted},
		blas64.General{Rows: count, Cols: terms, Stride: terms, Data: polynomials},
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
