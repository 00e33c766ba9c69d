package harmonic

import (
	"math"
	"slices"
)

// Ring sums over n for points that share their angle from the polar axis and their series
// z, for several series: one for each frequency. It is made once and set again and again, and
// allocates nothing then. It is for one goroutine.
type Ring struct {
	sum      *Sum
	orders   []int        // of each series: how many m count
	most     int          // of all
	first    []int        // [m]: the series from which on any has as many
	cos, sin []complex128 // [m][series], e_m in it
	row      []float64    // N_nm for one m
}

// NewRing returns a ring for a series for each set of a sum, or for so many of a single set.
func NewRing(s *Sum, series int) *Ring {
	if series != len(s.terms) && len(s.terms) != 1 {
		panic("harmonic: lengths differ")
	}
	n := s.most * series
	return &Ring{sum: s, orders: make([]int, series), first: make([]int, s.most), cos: make([]complex128, n), sin: make([]complex128, n), row: make([]float64, s.most)}
}

// Set takes the ring at an angle from the polar axis, given by its cosine and sine, where
// z(i) has the parts of z_n of series i. Terms beyond the sum's are left out.
func (r *Ring) Set(cos, sin float64, z func(i int) (re, im []float64)) {
	r.most = 0
	for i := range r.orders {
		re, _ := z(i)
		r.orders[i] = min(len(re), r.sum.terms[r.set(i)])
		r.most = max(r.most, r.orders[i])
	}
	sectoral, double := 1.0, 1.0 // N_mm, e_m
	for m := range r.most {
		row := r.row[:r.most-m]
		r.sum.roots.legendre(row, m, cos, sectoral)
		sectoral *= sin * math.Sqrt(float64(2*m+1)/float64(2*m+2))
		r.first[m] = slices.IndexFunc(r.orders, func(n int) bool { return n > m })
		for i, n := range r.orders {
			c, s := complex128(0), complex128(0)
			if n > m {
				re, im := z(i)
				c, s = r.sum.over(m, r.set(i), row[:n-m], re[m:n], im[m:n])
			}
			at := m*len(r.orders) + i
			r.cos[at], r.sin[at] = complex(double*real(c), double*imag(c)), complex(double*real(s), double*imag(s))
		}
		double = 2
	}
}

// set returns the set of a series.
func (r *Ring) set(series int) int { return min(series, len(r.sum.terms)-1) }

// over returns the sums over n of N_nm z_n C_nm and of N_nm z_n S_nm for one m.
func (s *Sum) over(m, set int, row, re, im []float64) (cos, sin complex128) {
	n, o, at := len(row), &s.order[m], set*(s.most-m)
	re, im = re[:n], im[:n]
	cr, sr := o.cosRe[at:][:n], o.sinRe[at:][:n]
	var ar, ai, br, bi float64
	if s.plain {
		for i, v := range row {
			ur, ui := v*re[i], v*im[i]
			ar += ur * cr[i]
			ai += ui * cr[i]
			br += ur * sr[i]
			bi += ui * sr[i]
		}
		return complex(ar, ai), complex(br, bi)
	}
	ci, si := o.cosIm[at:][:n], o.sinIm[at:][:n]
	for i, v := range row {
		ur, ui := v*re[i], v*im[i]
		ar += ur*cr[i] - ui*ci[i]
		ai += ur*ci[i] + ui*cr[i]
		br += ur*sr[i] - ui*si[i]
		bi += ur*si[i] + ui*sr[i]
	}
	return complex(ar, ai), complex(br, bi)
}

// At sets dst, one for each series, to the sums at an azimuth in rad. It panics where dst has
// another length.
func (r *Ring) At(dst []complex128, azimuth float64) {
	if len(dst) != len(r.orders) {
		panic("harmonic: lengths differ")
	}
	clear(dst)
	sin, cos := math.Sincos(azimuth)
	cm, sm := 1.0, 0.0 // cos and sin of m phi
	for m := range r.most {
		some, at := dst[r.first[m]:], m*len(dst)+r.first[m]
		a, b := r.cos[at:][:len(some)], r.sin[at:][:len(some)]
		for i := range some {
			some[i] += complex(cm*real(a[i])+sm*real(b[i]), cm*imag(a[i])+sm*imag(b[i]))
		}
		cm, sm = cm*cos-sm*sin, sm*cos+cm*sin
	}
}
