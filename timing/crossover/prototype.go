package crossover

import (
	"cmp"
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout/solve"

	"gonum.org/v1/gonum/mat"
)

// prototype returns the sections of a low-pass with its corner at 1.
func prototype(family Family, order int) []Section {
	var out []Section
	switch family {
	case Butterworth:
		out = sections(butterworth(order))
	case LinkwitzRiley:
		for _, s := range sections(butterworth(order / 2)) {
			if s.Q == 0 {
				out = append(out, Section{s.Frequency, 0.5}) // two of first order make one of second
			} else {
				out = append(out, s, s)
			}
		}
	case Bessel:
		out = sections(bessel(order))
	}
	slices.SortStableFunc(out, func(a, b Section) int { return cmp.Compare(a.Q, b.Q) })
	return out
}

// sections pairs poles up; of each pair, only the one above the real axis counts.
func sections(pole []complex128) []Section {
	var out []Section
	for _, p := range pole {
		size := cmplx.Abs(p)
		switch {
		case imag(p) > 1e-9*size:
			out = append(out, Section{size, size / (-2 * real(p))})
		case imag(p) > -1e-9*size:
			out = append(out, Section{size, 0})
		}
	}
	return out
}

// butterworth returns the poles: evenly spaced on the left half of the unit
// circle.
func butterworth(order int) []complex128 {
	pole := make([]complex128, order)
	for k := range pole {
		turn := math.Pi * float64(2*k+1+order) / float64(2*order)
		pole[k] = cmplx.Rect(1, turn)
	}
	return pole
}

// bessel returns the roots of the reverse Bessel polynomial, scaled to -3.01 dB
// at 1.
func bessel(order int) []complex128 {
	coefficient := reverseBessel(order)
	pole := roots(coefficient)
	corner := halfPower(coefficient)
	for i := range pole {
		pole[i] /= complex(corner, 0)
	}
	return pole
}

// reverseBessel returns the coefficients of the reverse Bessel polynomial, from
// that of the constant up: (2n-k)! / (2^(n-k) k! (n-k)!), whole numbers.
func reverseBessel(n int) []float64 {
	c := make([]float64, n+1)
	c[n] = 1
	for k := n - 1; k >= 0; k-- {
		c[k] = c[k+1] * float64((2*n-k)*(k+1)) / float64(2*(n-k))
	}
	return c
}

// roots returns the roots of a polynomial whose highest coefficient is 1, as the
// eigenvalues of its companion matrix, each then made sharper by Newton's method.
func roots(c []float64) []complex128 {
	n := len(c) - 1
	companion := mat.NewDense(n, n, nil)
	for i := range n {
		companion.Set(i, n-1, -c[i])
		if i > 0 {
			companion.Set(i, i-1, 1)
		}
	}
	var e mat.Eigen
	if !e.Factorize(companion, mat.EigenNone) {
		panic("crossover: no roots") // never so for the orders here
	}
	root := e.Values(nil)
	for i, r := range root {
		for range 4 {
			value, slope := horner(c, r)
			r -= value / slope
		}
		root[i] = r
	}
	return root
}

// horner returns a polynomial and its slope at x.
func horner(c []float64, x complex128) (value, slope complex128) {
	for k := len(c) - 1; k >= 0; k-- {
		slope = slope*x + value
		value = value*x + complex(c[k], 0)
	}
	return value, slope
}

// halfPower returns where the low-pass c[0]/polynomial has half its power.
func halfPower(c []float64) float64 {
	x, _ := solve.Root(func(x float64) float64 {
		value, _ := horner(c, complex(0, x))
		return cmplx.Abs(value) - math.Sqrt2*c[0]
	}, 0, 10, 0)
	return x
}
