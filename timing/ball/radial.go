package ball

import "math"

// radial steps through c_n of the package comment for one wavenumber and
// distance, in plain real arithmetic. The far field is u = 0, the static field
// ka = 0.
type radial struct {
	n      float64
	ka, u  float64 // u = a/r
	ka2    float64
	dr, di float64 // D_n(ka); unused at n = 0
	br, bi float64 // (a/r) D_n(kr)
	ar, ai float64 // the product up to n, exp(ika) included
}

// tiny wavenumbers and inverse distances are zero: their squares would leave
// the range of float64, and the field does not know the difference.
const tiny = 1e-100

func newRadial(ka, u float64) radial {
	if ka < tiny {
		ka = 0
	}
	if u < tiny {
		u = 0
	}
	s, c := math.Sincos(ka)
	return radial{ka: ka, u: u, ka2: ka * ka, ar: c, ai: s}
}

// value is c_n.
func (g *radial) value() (re, im float64) {
	er, ei := 1.0, g.ka // n+1 - t_n(ka)
	if g.n > 0 {
		f := g.ka2 / (g.dr*g.dr + g.di*g.di)
		er, ei = g.n+1-f*g.dr, f*g.di
	}
	f := 1 / (er*er + ei*ei)
	return (g.ar*er + g.ai*ei) * f, (g.ai*er - g.ar*ei) * f
}

func (g *radial) next() {
	if g.n == 0 {
		g.dr, g.di = 1, g.ka
		g.br, g.bi = g.u, g.ka
	} else {
		twice := 2*g.n + 1
		f := g.ka2 / (g.dr*g.dr + g.di*g.di)
		g.dr, g.di = twice-f*g.dr, f*g.di
		if g.ka > 0 {
			f = g.ka2 / (g.br*g.br + g.bi*g.bi)
		}
		g.br, g.bi = twice*g.u-f*g.br, f*g.bi
	}
	g.n++
	f := 1 / (g.dr*g.dr + g.di*g.di)
	pr, pi := (g.br*g.dr+g.bi*g.di)*f, (g.bi*g.dr-g.br*g.di)*f
	g.ar, g.ai = g.ar*pr-g.ai*pi, g.ar*pi+g.ai*pr
}

// rest bounds the sum of |q_m c_m| over m > n, where b is capBound. It is +Inf
// as long as the bound of the package comment says nothing: up to n near ka
// for far points, longer for near ones.
func (g *radial) rest(b float64) float64 {
	if g.n < 1 || 2*g.n-1 <= g.ka {
		return math.Inf(1)
	}
	twice := 2*g.n + 1
	t := g.ka2 / (2*g.n - 1 - g.ka)
	if t >= g.n+1 {
		return math.Inf(1)
	}
	k := g.ka / twice
	rho := math.Sqrt(g.u*g.u+k*k) / (1 - t/twice)
	if rho >= 1 {
		return math.Inf(1)
	}
	over := g.n + 2 - t
	weight := min(max(2, (twice+2)/over), b/(math.Sqrt(g.n+0.5)*over))
	return math.Hypot(g.ar, g.ai) * rho / (1 - rho) * weight
}
