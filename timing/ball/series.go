package ball

import "math"

// block is the number of Legendre polynomials that are on the stack at a time.
const block = 256

// Series is the field of a cap for a slice of wavenumbers, at one distance after another.
// It is for one goroutine, and allocates nothing once it has been at its nearest distance.
type Series struct {
	cap       Cap
	k         []float64
	tolerance float64

	weights capWeights // the next q_n
	q       []float64
	bound   float64   // capBound
	re, im  []float64 // of q_n c_n, wavenumber after wavenumber
	first   []int     // where each wavenumber's begin; one more at the end
	inv     []float64 // 1/(n+1)
}

// NewSeries returns the field of a cap for wavenumbers in rad/m, without a distance yet.
// Sums end where the rest is below tolerance times the sum of the sizes of their terms.
// The error names a cap or a wavenumber that is none.
func NewSeries(c Cap, k []float64, tolerance float64) (*Series, error) {
	if err := c.check(k); err != nil {
		return nil, err
	}
	return &Series{cap: c, k: k, tolerance: tolerance, weights: newCapWeights(c.HalfAngle), bound: capBound(c.HalfAngle)}, nil
}

// Move takes the series to a distance r in m from the ball's centre, or [Nearest] radii
// where it is nearer; +Inf is the far field.
func (s *Series) Move(r float64) {
	u := min(s.cap.Radius/r, 1/Nearest)
	s.re, s.im, s.first = s.re[:0], s.im[:0], append(s.first[:0], 0)
	for _, k := range s.k {
		s.sum(newRadial(k*s.cap.Radius, u))
	}
}

// sum appends the coefficients of one wavenumber.
func (s *Series) sum(g radial) {
	size := 0.0
	for n := 0; ; n++ {
		if n == len(s.q) {
			s.q, s.inv = append(s.q, s.weights.value()), append(s.inv, 1/float64(n+1))
			s.weights.next()
		}
		re, im := g.value()
		q := s.q[n]
		s.re, s.im = append(s.re, q*re), append(s.im, q*im)
		size += math.Abs(q) * (math.Abs(re) + math.Abs(im))
		if n%4 == 3 && g.rest(s.bound) <= s.tolerance*size {
			break
		}
		g.next()
	}
	s.first = append(s.first, len(s.re))
}

// Len is the number of wavenumbers.
func (s *Series) Len() int { return len(s.k) }

// Terms returns the real and the imaginary parts of q_n c_n of wavenumber f, until the
// next Move.
func (s *Series) Terms(f int) (re, im []float64) {
	return s.re[s.first[f]:s.first[f+1]], s.im[s.first[f]:s.first[f+1]]
}

// At fills dst, one for each wavenumber, with r exp(ikr) H of the package comment at the
// angle gamma in rad: the pressure over that of a point source at the ball's centre. At
// panics where the length of dst is another.
func (s *Series) At(dst []complex128, gamma float64) {
	if len(dst) != len(s.k) {
		panic("ball: length of dst is not the number of wavenumbers")
	}
	clear(dst)
	var p [block]float64
	l := newLegendre(gamma)
	for from, more := 0, true; more; from += block {
		to := min(from+block, len(s.inv))
		l.fill(p[:to-from], s.inv[from:to])
		more = false
		for f := range dst {
			re, im := s.Terms(f)
			if len(re) > from {
				end := min(len(re), to)
				dst[f] += dot(re[from:end], im[from:end], p[:])
				more = more || len(re) > to
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
