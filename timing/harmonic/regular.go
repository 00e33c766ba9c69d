package harmonic

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Count is how many pairs n, m there are up to a degree, m from 0 to n.
func Count(degree int) int { return (degree + 1) * (degree + 2) / 2 }

// Index is the place of n, m among those of a degree: all n of m = 0 first.
func Index(degree, n, m int) int { return m*(degree+1) - m*(m-1)/2 + n - m }

// Regular is the waves j_n(kr) N_nm(theta) cos m phi, and sin, of the package comment's N_nm, up
// to a degree. It is for one goroutine.
type Regular struct {
	degree int
	k      float64
	roots  *roots
	radial []float64
	wave   []complex128 // j_n N_nm exp(i m phi), one degree more
	row    []float64
}

// NewRegular serves waves up to a degree, at a wavenumber in rad/m.
func NewRegular(degree int, k float64) *Regular {
	return &Regular{degree, k, newRoots(2*degree + 3), make([]float64, degree+2), make([]complex128, Count(degree+1)), make([]float64, degree+2)}
}

// At takes the waves at a place in m, seen from where they are about.
func (w *Regular) At(v r3.Vec) {
	cos, sin, azimuth := 1.0, 0.0, 0.0
	r := r3.Norm(v)
	if r > 0 {
		flat := math.Hypot(v.X, v.Y)
		cos, sin, azimuth = v.Z/r, flat/r, math.Atan2(v.Y, v.X)
	}
	sphericalBessel(w.radial, w.k*r)
	first := 1.0
	for m := range w.degree + 2 {
		row := w.row[:w.degree+2-m]
		w.roots.legendre(row, m, cos, first)
		first *= sin * w.roots.root[2*m+1] * w.roots.over[2*m+2]
		si, co := math.Sincos(float64(m) * azimuth)
		out := w.wave[Index(w.degree+1, m, m):]
		for i, p := range row {
			p *= w.radial[m+i]
			out[i] = complex(p*co, p*si)
		}
	}
}

// Value adds to dst a factor times the waves: [Index] those with cos, then as many with sin.
func (w *Regular) Value(dst []float64, factor float64) {
	half := Count(w.degree)
	for m := range w.degree + 1 {
		at, from := Index(w.degree, m, m), Index(w.degree+1, m, m)
		for i := range w.degree + 1 - m {
			v := w.wave[from+i]
			dst[at+i] += factor * real(v)
			dst[half+at+i] += factor * imag(v)
		}
	}
}

// Slope adds to dst the waves' change along a vector, in the order of Value: with U_nm the wave
// with exp(i m phi), from the recurrences of j_n and P_nm (Martin, Multiple Scattering, 2006,
// 3.6, from memory; held to differences in a test)
//
//	dU/dz          = k/(2n+1) (sqrt(n^2-m^2) U_n-1,m - sqrt((n+1)^2-m^2) U_n+1,m)
//	dU/dx + i dU/dy = -k/(2n+1) (sqrt((n-m)(n-m-1)) U_n-1,m+1 + sqrt((n+m+1)(n+m+2)) U_n+1,m+1)
//	dU/dx - i dU/dy =  k/(2n+1) (sqrt((n+m)(n+m-1)) U_n-1,m-1 + sqrt((n-m+1)(n-m+2)) U_n+1,m-1)
func (w *Regular) Slope(dst []float64, along r3.Vec) {
	half, root := Count(w.degree), w.roots.root
	get := func(n, m int) complex128 {
		if n < m || n < 0 {
			return 0
		}
		return w.wave[Index(w.degree+1, n, m)]
	}
	for m := range w.degree + 1 {
		for n := m; n <= w.degree; n++ {
			scale := w.k / float64(2*n+1)
			z := complex(root[n*n-m*m], 0)*get(n-1, m) - complex(root[(n+1)*(n+1)-m*m], 0)*get(n+1, m)
			up := -complex(root[max(0, (n-m)*(n-m-1))], 0)*get(n-1, m+1) - complex(root[(n+m+1)*(n+m+2)], 0)*get(n+1, m+1)
			var down complex128
			if m > 0 {
				down = complex(root[(n+m)*(n+m-1)], 0)*get(n-1, m-1) + complex(root[(n-m+1)*(n-m+2)], 0)*get(n+1, m-1)
			} else {
				down = complex(real(up), -imag(up))
			}
			sum := complex(along.Z, 0)*z + complex(along.X/2, -along.Y/2)*up + complex(along.X/2, along.Y/2)*down
			at := Index(w.degree, n, m)
			dst[at] += scale * real(sum)
			dst[half+at] += scale * imag(sum)
		}
	}
}

// sphericalBessel sets dst[n] to j_n(z): downward from far above, where the ratio of
// neighbours is lost least (Miller's way; DLMF 3.6(iii) and 10.51.1), scaled by j_0 or j_1.
func sphericalBessel(dst []float64, z float64) {
	clear(dst)
	if z < 1e-150 {
		dst[0] = 1
		return
	}
	top := max(len(dst), int(z)) + 20
	above, now := 0.0, 1e-200
	for n := top; n >= 0; n-- {
		if n < len(dst) {
			dst[n] = now
		}
		above, now = now, float64(2*n+1)/z*now-above // now is that of n-1
		if math.Abs(now) > 1e150 {
			now, above = now*1e-250, above*1e-250
			for i := n; i < len(dst); i++ {
				dst[i] *= 1e-250
			}
		}
	}
	sin, cos := math.Sincos(z)
	j0, j1 := sin/z, (sin/z-cos)/z
	if z < 0.1 {
		j1 = z / 3 * (1 - z*z/10*(1-z*z/28*(1-z*z/54)))
	}
	scale := j0 / dst[0]
	if len(dst) > 1 && math.Abs(j1) > math.Abs(j0) {
		scale = j1 / dst[1]
	}
	for i := range dst {
		dst[i] *= scale
	}
}

// Outgoing sets dst[n] to h_n(z), the spherical Hankel function of the second kind, z above 0,
// upward (DLMF 10.51.1): its size grows with n, and nothing is lost.
func Outgoing(dst []complex128, z float64) {
	h := NewHankel(z)
	for n := range dst {
		dst[n] = h.Next()
	}
}

// Hankel steps through what Outgoing has.
type Hankel struct {
	before, now complex128
	odd, z      float64 // 2n+1
}

// NewHankel begins at h_0 of z, above 0.
func NewHankel(z float64) Hankel {
	sin, cos := math.Sincos(z)
	return Hankel{complex(cos/z, -sin/z), complex(sin/z, cos/z), 1, z}
}

// Next returns h_n and steps on to n+1.
func (h *Hankel) Next() complex128 {
	value := h.now
	h.before, h.now = value, complex(h.odd/h.z, 0)*value-h.before
	h.odd += 2
	return value
}

// Angles sets dst to e_m N_nm cos m phi of a direction by Index, then as many with sin, for a
// degree. The direction need not be of unit length.
func Angles(dst []float64, degree int, at r3.Vec) {
	cos, sin, azimuth := Frame{r3.Vec{X: 1}, r3.Vec{Y: 1}, r3.Vec{Z: 1}}.Angles(at)
	t, half := newRoots(degree+1), Count(degree)
	first, double := 1.0, 1.0
	for m := range degree + 1 {
		from := Index(degree, m, m)
		row := dst[from : from+degree+1-m]
		t.legendre(row, m, cos, first)
		first *= sin * math.Sqrt(float64(2*m+1)/float64(2*m+2))
		si, co := math.Sincos(float64(m) * azimuth)
		for i, v := range row {
			dst[half+from+i] = double * v * si
			row[i] = double * v * co
		}
		double = 2
	}
}

// TimesRadial sets dst to angles of a degree, times radial[n].
func TimesRadial(dst []complex128, angle []float64, radial []complex128, degree int) {
	half := Count(degree)
	for m := range degree + 1 {
		from := Index(degree, m, m)
		for i, z := range radial[m:] {
			a, b := angle[from+i], angle[half+from+i]
			dst[from+i] = complex(a*real(z), a*imag(z))
			dst[half+from+i] = complex(b*real(z), b*imag(z))
		}
	}
}

// AddWaves adds to dst, of a degree, what src has, of a degree that is not above it.
func AddWaves(dst []complex128, degree int, src []complex128, of int) {
	for m := range of + 1 {
		to, from := Index(degree, m, m), Index(of, m, m)
		for i := range of + 1 - m {
			dst[to+i] += src[from+i]
			dst[Count(degree)+to+i] += src[Count(of)+from+i]
		}
	}
}
