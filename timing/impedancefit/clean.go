package impedancefit

import (
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout/impedance"
)

// clean leaves out points that stand out from their neighbours, a tenth of them at
// most, judged by what the nearest of rough fits leaves over.
func clean(points []impedance.Point, d Definitions) (kept []impedance.Point, out []float64, err error) {
	s, least := newSearch(points, Ideal, d), math.Inf(1)
	s.solve(slices.Clone(s.circuit.x))
	for _, coil := range []Coil{Ideal, Semi, Shunted} {
		rough := newSearch(points, coil, d)
		if sum, err := rough.run(); err == nil && sum < least {
			s, least = rough, sum
		}
		if correlation(s.off) < alike {
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

// correlation returns how alike neighbours are, from -1 to 1.
func correlation(v []complex128) float64 {
	var both, one float64
	for i, z := range v {
		one += real(z)*real(z) + imag(z)*imag(z)
		if i > 0 {
			both += real(z * cmplx.Conj(v[i-1]))
		}
	}
	if one == 0 {
		return 0
	}
	return both / one
}
