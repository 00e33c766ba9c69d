package harmonic

import "math"

// Ring sums over n for points that share their angle from the polar axis and z_n, for
// several pairs of sets: one for each frequency. It is made once and set again and again,
// and allocates nothing then. It is for one goroutine.
type Ring struct {
	moments *Moments
	pairs   int
	orders  []int        // of each pair: how many m count
	most    int          // of all pairs
	cos     []complex128 // [m][pair], e_m in it
	sin     []complex128
	row     []float64 // N_nm for one m
}

// NewRing returns a ring for complex weights: the pair p of sets are 2p, the real parts,
// and 2p+1, the imaginary ones.
func NewRing(m *Moments) *Ring {
	pairs := m.sets / 2
	return &Ring{moments: m, pairs: pairs, orders: make([]int, pairs),
		cos: make([]complex128, (m.degree+1)*pairs), sin: make([]complex128, (m.degree+1)*pairs), row: make([]float64, m.degree+1)}
}

// Set takes the ring at an angle from the polar axis, given by its cosine and sine, with
// z[pair][n] for each pair. Terms beyond the moments' degree are left out. It panics where
// z is not one row for each pair.
func (r *Ring) Set(cos, sin float64, z [][]complex128) {
	if len(z) != r.pairs {
		panic("harmonic: lengths differ")
	}
	r.most = 0
	for p, row := range z {
		r.orders[p] = min(len(row), r.moments.degree+1)
		r.most = max(r.most, r.orders[p])
	}
	first := 1.0 // N_mm
	for m := range r.most {
		terms := r.moments.degree + 1 - m
		row := r.row[:r.most-m]
		r.moments.roots.legendre(row, m, cos, first)
		first *= sin * math.Sqrt(float64(2*m+1)/float64(2*m+2))
		c, s := r.moments.cos[m], r.moments.sin[m]
		double := 2.0
		if m == 0 {
			double = 1
		}
		for p := range r.pairs {
			a, b := complex128(0), complex128(0)
			if n := r.orders[p]; n > m {
				at := 2 * p * terms
				a, b = sumTerms(row[:n-m], z[p][m:n], c[at:], c[at+terms:], s[at:], s[at+terms:])
			}
			r.cos[m*r.pairs+p], r.sin[m*r.pairs+p] = scaled(double, a), scaled(double, b)
		}
	}
}

func scaled(by float64, v complex128) complex128 { return complex(by*real(v), by*imag(v)) }

// sumTerms returns the sums over n of x z (cr + i ci) and of x z (sr + i si).
func sumTerms(x []float64, z []complex128, cr, ci, sr, si []float64) (c, s complex128) {
	n := len(x)
	z, cr, ci, sr, si = z[:n], cr[:n], ci[:n], sr[:n], si[:n]
	var ar, ai, br, bi float64
	for i, v := range x {
		ur, ui := v*real(z[i]), v*imag(z[i])
		ar += ur*cr[i] - ui*ci[i]
		ai += ur*ci[i] + ui*cr[i]
		br += ur*sr[i] - ui*si[i]
		bi += ur*si[i] + ui*sr[i]
	}
	return complex(ar, ai), complex(br, bi)
}

// At adds to dst, one for each pair, the sums at an azimuth in rad. It panics where dst
// has another length.
func (r *Ring) At(dst []complex128, azimuth float64) {
	if len(dst) != r.pairs {
		panic("harmonic: lengths differ")
	}
	sin, cos := math.Sincos(azimuth)
	cm, sm := 1.0, 0.0 // cos and sin of m phi
	for m := range r.most {
		a, b := r.cos[m*r.pairs:][:len(dst)], r.sin[m*r.pairs:][:len(dst)]
		for p := range dst {
			dst[p] += complex(cm*real(a[p])+sm*real(b[p]), cm*imag(a[p])+sm*imag(b[p]))
		}
		cm, sm = cm*cos-sm*sin, sm*cos+cm*sin
	}
}

// Shared sums over n, for points on a ring, one set of real weights with several series
// z, real too: one for each frequency. It is set again and again, and allocates nothing
// then. It is for one goroutine.
type Shared struct {
	moments  *Moments
	set      int
	series   int
	orders   int
	cos, sin []float64 // [m][series], e_m in it
	row      []float64
}

// NewShared returns a ring for one of the moments' sets and so many series.
func NewShared(m *Moments, set, series int) *Shared {
	n := (m.degree + 1) * series
	return &Shared{moments: m, set: set, series: series, cos: make([]float64, n), sin: make([]float64, n), row: make([]float64, m.degree+1)}
}

// Set takes the ring at an angle from the polar axis, given by its cosine and sine, with
// z[n][series]. Terms beyond the moments' degree are left out.
func (r *Shared) Set(cos, sin float64, z []float64) {
	r.orders = min(len(z)/r.series, r.moments.degree+1)
	first, double := 1.0, 1.0
	for m := range r.orders {
		row := r.row[:r.orders-m]
		r.moments.roots.legendre(row, m, cos, first)
		first *= sin * math.Sqrt(float64(2*m+1)/float64(2*m+2))
		terms := r.moments.degree + 1 - m
		c, s := r.moments.cos[m][r.set*terms:], r.moments.sin[m][r.set*terms:]
		a, b := r.cos[m*r.series:(m+1)*r.series], r.sin[m*r.series:(m+1)*r.series]
		clear(a)
		clear(b)
		for i, x := range row {
			one := z[(m+i)*r.series:][:len(a)]
			cx, sx := double*x*c[i], double*x*s[i]
			for f, v := range one {
				a[f] += cx * v
				b[f] += sx * v
			}
		}
		double = 2
	}
}

// At adds to dst, one for each series, the sums at an azimuth in rad.
func (r *Shared) At(dst []float64, azimuth float64) {
	if len(dst) != r.series {
		panic("harmonic: lengths differ")
	}
	sin, cos := math.Sincos(azimuth)
	cm, sm := 1.0, 0.0
	for m := range r.orders {
		a, b := r.cos[m*r.series:][:len(dst)], r.sin[m*r.series:][:len(dst)]
		for f := range dst {
			dst[f] += cm*a[f] + sm*b[f]
		}
		cm, sm = cm*cos-sm*sin, sm*cos+cm*sin
	}
}
