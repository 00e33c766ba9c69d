package ball

import "math"

// legendre steps through P_n(cos x), n = 0, 1, ..., by Bonnet's recurrence (DLMF
// 18.9.1) written for the differences P_{n+1} - P_n, so that nothing is lost
// for small x, where all P_n are near one. Angles above pi/2 use
// P_n(-t) = (-1)^n P_n(t).
type legendre struct {
	n    float64
	p    float64 // P_n(|cos x|)
	diff float64 // P_n - P_{n-1} at |cos x|
	y    float64 // 1 - |cos x|
	flip bool    // cos x is negative
	odd  bool    // n is odd
}

func newLegendre(x float64) legendre {
	if math.Cos(x) < 0 {
		c := math.Cos(x / 2)
		return legendre{p: 1, y: 2 * c * c, flip: true}
	}
	return legendre{p: 1, y: versine(x)}
}

// fill sets dst[i] = P_{n+i} and steps on by len(dst), given inv[i] = 1/(n+i+1).
func (l *legendre) fill(dst, inv []float64) {
	p, diff, y := l.p, l.diff, l.y
	inv = inv[:len(dst)]
	twice := 2*l.n + 1
	for i := range dst {
		dst[i] = p
		diff -= (diff + twice*y*p) * inv[i] // n/(n+1) = 1 - 1/(n+1)
		p += diff
		twice += 2
	}
	if l.flip {
		first := 1
		if l.odd {
			first = 0
		}
		for i := first; i < len(dst); i += 2 {
			dst[i] = -dst[i]
		}
	}
	l.p, l.diff = p, diff
	l.n += float64(len(dst))
	l.odd = l.odd != (len(dst)%2 == 1)
}

// capWeights steps through q_n, 2n+1 times the mean of P_n over the cap. With
// E_n = (P_{n-1} - P_n)/(1 - cos alpha) both recurrences are free of
// cancellation near n = 0, however small the cap is.
type capWeights struct {
	n     float64
	p     float64 // P_n(cos alpha)
	e     float64 // E_n, and E_0 = 0
	eNext float64 // E_{n+1}
	y     float64 // 1 - cos alpha
}

func newCapWeights(halfAngle float64) capWeights {
	return capWeights{p: 1, eNext: 1, y: versine(halfAngle)}
}

// value is q_n.
func (w *capWeights) value() float64 { return w.e + w.eNext }

func (w *capWeights) next() {
	w.n++
	w.p -= w.y * w.eNext
	w.e = w.eNext
	w.eNext = (w.n*w.e + (2*w.n+1)*w.p) / (w.n + 1)
}

// capBound is the constant b of |q_n| <= b/sqrt(n-1/2), from DLMF 18.14.7. The
// whole sphere has no q_n but the first.
func capBound(halfAngle float64) float64 {
	if halfAngle == math.Pi {
		return 0
	}
	return 2 * math.Sqrt(2/(math.Pi*math.Sin(halfAngle))) / versine(halfAngle)
}
