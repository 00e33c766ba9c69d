package harmonic

import "math"

// legendre fills dst[n-m] with N_nm(cos theta) of the package comment for n from m on,
// given the first of them, sectoral, which is N_mm. By DLMF 14.10.3, normalised:
//
//	N_nm = ((2n-1) cos N_{n-1,m} - sqrt((n-1)^2-m^2) N_{n-2,m}) / sqrt(n^2-m^2)
func (t *roots) legendre(dst []float64, m int, cos, sectoral float64) {
	before, now, below := 0.0, sectoral, 0.0
	at, odd := (m+1)*(m+1)-m*m, float64(2*m+1)*cos // n^2-m^2 and (2n-1) cos for n = m+1
	for i := range dst {
		dst[i] = now
		before, now = now, (odd*now-below*before)*t.over[at]
		below = t.root[at]
		at += 2*(m+i) + 3
		odd += 2 * cos
	}
}

// roots are the square roots of whole numbers that the recurrence asks for, and one over them.
type roots struct{ root, over []float64 }

// fewRoots serve the degrees that are asked for again and again.
var fewRoots = makeRoots(96)

// newRoots serves degrees up to one.
func newRoots(degree int) *roots {
	if n := (degree+1)*(degree+1) + 1; n <= len(fewRoots.root) {
		return &roots{fewRoots.root[:n], fewRoots.over[:n]}
	}
	return makeRoots(degree)
}

func makeRoots(degree int) *roots {
	n := (degree+1)*(degree+1) + 1
	t := &roots{make([]float64, n), make([]float64, n)}
	for i := range t.root {
		t.root[i] = math.Sqrt(float64(i))
		t.over[i] = 1 / t.root[i]
	}
	return t
}

// sectoral returns N_mm at the equator: the product of sqrt((2i-1)/(2i)) for i from 1 to m.
// Elsewhere it is times sin theta to the power m.
func sectoral(m int) float64 {
	v := 1.0
	for i := 1; i <= m; i++ {
		v *= math.Sqrt(float64(2*i-1) / float64(2*i))
	}
	return v
}
