package impedancefit

import (
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout/impedance"
)

// clean leaves out points that stand out from their neighbours, a tenth of them at
// most, judged by what the nearest of rough fits leaves over.
func clean(points []impedance.Point, d definitions) (kept []impedance.Point, out []float64, err error) {
	s, least := newSearch(points, Ideal, d), math.Inf(1)
	s.solve(slices.Clone(s.circuit.x))
	for _, coil := range coils {
		rough := newSearch(points, coil, d)
		if sum, err := rough.run(); err == nil && sum < least {
			s, least = rough, sum
		}
		if correlation(s.off, 1) < alike {
			break // what is left over is noise
		}
	}
	apart := make([]float64, len(points))
	for i, v := range s.off {
		apart[i] = cmplx.Abs(v - running(s.off, i))
	}
	sorted := slices.Sorted(slices.Values(apart))
	// The median magnitude of two normal deviates is 1.1774 sigma.
	limit := max(leastOut, standOut*sorted[len(sorted)/2]/1.1774)
	limit = max(limit, sorted[len(sorted)-1-int(mostLeftOut*float64(len(sorted)))])
	for i, p := range points {
		if apart[i] > limit {
			out = append(out, p.Frequency)
		} else {
			kept = append(kept, p)
		}
	}
	return kept, out, check(kept)
}

// beside is how many neighbours on each side a running median takes.
const beside = 3

// running returns the medians of real and imaginary parts round a place. At the
// ends it takes as many neighbours on one side as on the other, so that a slope
// does not count.
func running(v []complex128, at int) complex128 {
	reach := min(beside, at, len(v)-1-at)
	if reach == 0 {
		// Half the way to the line through the next two: it is as far off by noise as
		// a median.
		if at == 0 {
			return (v[0] + 2*v[1] - v[2]) / 2
		}
		return (v[at] + 2*v[at-1] - v[at-2]) / 2
	}
	var re, im []float64
	for _, z := range v[at-reach : at+reach+1] {
		re, im = append(re, real(z)), append(im, imag(z))
	}
	slices.Sort(re)
	slices.Sort(im)
	return complex(re[reach], im[reach])
}

// correlation returns how alike values are that are so many places apart, from -1 to 1.
func correlation(v []complex128, lag int) float64 {
	var both, one float64
	for i, z := range v {
		one += real(z)*real(z) + imag(z)*imag(z)
		if i >= lag {
			both += real(z * cmplx.Conj(v[i-lag]))
		}
	}
	if one == 0 {
		return 0
	}
	return both / one
}

// together returns how many residuals in a row tell no more than one: 1 where they are
// noise, more where neighbours are off alike. It is 1 + 2 (r1 + r2 + ...) of their
// autocorrelation up to where that ends or is lost in noise (M. S. Bartlett, On the
// Theoretical Specification and Sampling Properties of Autocorrelated Time-Series,
// Suppl. J. R. Stat. Soc. 8 (1946) 27).
func together(v []complex128) float64 {
	// That of noise scatters by 1/sqrt(2n), since each has two parts.
	least := telling / math.Sqrt(2*float64(len(v)))
	sum := 1.0
	for lag := 1; lag < len(v); lag++ {
		r := correlation(v, lag)
		if r < least {
			break
		}
		sum += 2 * r
	}
	return sum
}
