package ball

import (
	"fmt"
	"math"
	"math/cmplx"
)

// maxSeriesTerms keeps the coefficients of a series small; it is met within
// about 0.3 per cent of the radius above the surface.
const maxSeriesTerms = 1 << 14

// block is the number of Legendre polynomials that are on the stack at a time.
const block = 256

// Series is the field of a cap at one distance for a slice of wavenumbers, made
// once and then evaluated at many angles. It is never changed after it is
// made, and serves several goroutines at once.
type Series struct {
	coef  []float64 // for each wavenumber all real parts, then all imaginary parts
	first []int     // where each wavenumber's coefficients begin; one more at the end
	most  int       // terms of the longest sum
	inv   []float64 // 1/(n+1)
}

// NewSeries returns the series whose values are H, in 1/m, at the distance r m
// from the ball's centre for the wavenumbers k in rad/m. The rest of each sum
// is below 1e-18 of the sum of the sizes of its terms. Errors wrap ErrCap,
// ErrWavenumber, ErrDistance, ErrInside and ErrTooNear; nearer than 0.3 per
// cent of the radius use [Cap.Pressure].
func NewSeries(c Cap, k []float64, r float64) (*Series, error) {
	if err := c.Check(); err != nil {
		return nil, err
	}
	if err := c.checkDistance(r); err != nil {
		return nil, err
	}
	return newSeries(c, k, c.Radius/r, func(k float64) complex128 { return cmplx.Rect(1/r, -k*r) })
}

// NewFarSeries returns the series of the far field: the limit of r exp(ikr) H as
// r grows, a plain number, for the wavenumbers k in rad/m. Errors wrap ErrCap
// and ErrWavenumber.
func NewFarSeries(c Cap, k []float64) (*Series, error) {
	if err := c.Check(); err != nil {
		return nil, err
	}
	return newSeries(c, k, 0, func(float64) complex128 { return 1 })
}

func newSeries(c Cap, k []float64, u float64, scale func(k float64) complex128) (*Series, error) {
	for _, k := range k {
		if err := c.checkWavenumber(k); err != nil {
			return nil, err
		}
	}
	s := &Series{first: make([]int, 1, len(k)+1), coef: make([]float64, 0, 2*likelyTerms(c, k, u))}
	w := weights{cap: newCapWeights(c.HalfAngle), bound: capBound(c.HalfAngle)}
	var row []complex128
	for _, k := range k {
		row = w.coefficients(row[:0], k*c.Radius, u, 1e-18)
		if row == nil {
			return nil, fmt.Errorf("%w: a/r = %g, k = %g rad/m", ErrTooNear, u, k)
		}
		f := scale(k)
		for i, v := range row {
			row[i] = v * f
		}
		s.coef = appendSplit(s.coef, row)
		s.first = append(s.first, len(s.coef))
		s.most = max(s.most, len(row))
	}
	s.inv = make([]float64, s.most)
	for n := range s.inv {
		s.inv[n] = 1 / float64(n+1)
	}
	return s, nil
}

// likelyTerms is a guess at the number of coefficients, so that they are seldom
// moved.
func likelyTerms(c Cap, k []float64, u float64) int {
	var terms float64
	for _, k := range k {
		terms += 30 + 1.3*k*c.Radius
	}
	return int(min(terms/(1-min(u, 0.9)), 1e6))
}

func appendSplit(dst []float64, row []complex128) []float64 {
	for _, v := range row {
		dst = append(dst, real(v))
	}
	for _, v := range row {
		dst = append(dst, imag(v))
	}
	return dst
}

// weights keeps the q_n that were needed so far.
type weights struct {
	cap   capWeights
	bound float64
	q     []float64
}

func (w *weights) at(n int) float64 {
	for n >= len(w.q) {
		w.q = append(w.q, w.cap.value())
		w.cap.next()
	}
	return w.q[n]
}

// coefficients appends q_n c_n to dst until the rest is below tolerance times
// the sum of sizes, and returns nil when that takes too many terms.
func (w *weights) coefficients(dst []complex128, ka, u, tolerance float64) []complex128 {
	g := newRadial(ka, u)
	var size float64
	for n := range maxSeriesTerms {
		re, im := g.value()
		q := w.at(n)
		dst = append(dst, complex(q*re, q*im))
		size += math.Abs(q) * (math.Abs(re) + math.Abs(im))
		if n%4 == 3 && g.rest(w.bound) <= tolerance*size {
			return dst
		}
		g.next()
	}
	return nil
}

// Len is the number of wavenumbers.
func (s *Series) Len() int { return len(s.first) - 1 }

// At fills dst with the values at the angle gamma in rad, one for each
// wavenumber; dst must have that length, else At panics. It allocates
// nothing.
func (s *Series) At(dst []complex128, gamma float64) {
	if len(dst) != s.Len() {
		panic("ball: length of dst is not the number of wavenumbers")
	}
	clear(dst)
	var p [block]float64
	l := newLegendre(gamma)
	for from := 0; from < s.most; from += block {
		to := min(from+block, s.most)
		l.fill(p[:to-from], s.inv[from:to])
		for f := range dst {
			row := s.coef[s.first[f]:s.first[f+1]]
			n := len(row) / 2
			if n > from {
				end := min(n, to)
				dst[f] += dot(row[from:end], row[n+from:n+end], p[:])
			}
		}
	}
}

// dot is the sum of (re + i im) p.
func dot(re, im, p []float64) complex128 {
	im, p = im[:len(re)], p[:len(re)]
	var r0, r1, i0, i1 float64
	for len(re) >= 4 {
		_, _, _ = re[3], im[3], p[3]
		r0 += re[0]*p[0] + re[2]*p[2]
		i0 += im[0]*p[0] + im[2]*p[2]
		r1 += re[1]*p[1] + re[3]*p[3]
		i1 += im[1]*p[1] + im[3]*p[3]
		re, im, p = re[4:], im[4:], p[4:]
	}
	for j := range re {
		r0 += re[j] * p[j]
		i0 += im[j] * p[j]
	}
	return complex(r0+r1, i0+i1)
}
