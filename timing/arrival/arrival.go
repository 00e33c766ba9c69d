// Package arrival finds when a sound arrives from its spectrum.
//
// A pressure P(f) with time factor exp(+i omega t) that arrives at t turns as
// exp(-i omega t). The arrival is the t that brings its parts best into step:
//
//	maximise  sum over f of Re( P(f) exp(i 2 pi f t) ) df
//
// Each frequency weighs by its level. Over a band from 0 that sum is, up to a
// factor, the impulse response limited to the band (the inverse Fourier
// integral), so the arrival is then the time of its peak.
package arrival

import "math"

// Finder finds arrivals for one slice of frequencies. Its methods allocate
// nothing; a Finder is for one goroutine.
type Finder struct {
	omega []float64 // rad/s
	width []float64 // Hz that each frequency stands for
	step  float64   // s between the times that are tried
	turn  []complex128
	value []complex128
}

// NewFinder returns a Finder for rising frequencies in Hz. There must be two at
// least, else it panics.
func NewFinder(frequency []float64) *Finder {
	n := len(frequency)
	if n < 2 {
		panic("arrival: fewer than two frequencies")
	}
	f := &Finder{
		omega: make([]float64, n),
		width: make([]float64, n),
		step:  1 / (16 * frequency[n-1]), // a sixteenth of the shortest period
		turn:  make([]complex128, n),
		value: make([]complex128, n),
	}
	for i, hz := range frequency {
		low, high := frequency[max(i-1, 0)], frequency[min(i+1, n-1)]
		f.omega[i] = 2 * math.Pi * hz
		f.width[i] = (high - low) / 2
		sin, cos := math.Sincos(f.omega[i] * f.step)
		f.turn[i] = complex(cos, sin)
	}
	return f
}

// Find returns the arrival, in s, between two times in s, of a pressure at the
// finder's frequencies. It panics where the lengths differ.
func (f *Finder) Find(pressure []complex128, from, to float64) float64 {
	if len(pressure) != len(f.omega) {
		panic("arrival: lengths differ")
	}
	for i, p := range pressure {
		sin, cos := math.Sincos(f.omega[i] * from)
		f.value[i] = p * complex(f.width[i], 0) * complex(cos, sin)
	}
	best, most := from, math.Inf(-1)
	for k := 0; from+float64(k)*f.step <= to; k++ {
		sum := 0.0
		for i, v := range f.value {
			sum += real(v)
			f.value[i] = v * f.turn[i]
		}
		if sum > most {
			best, most = from+float64(k)*f.step, sum
		}
	}
	return f.refine(pressure, best)
}

// refine walks from a time near the top to the top by Newton's method.
func (f *Finder) refine(pressure []complex128, at float64) float64 {
	start := at
	for range 8 {
		var slope, bend float64
		for i, p := range pressure {
			sin, cos := math.Sincos(f.omega[i] * at)
			v := p * complex(f.width[i], 0) * complex(cos, sin)
			slope -= f.omega[i] * imag(v)
			bend -= f.omega[i] * f.omega[i] * real(v)
		}
		if bend >= 0 {
			return at // no top here: the end of the range
		}
		move := slope / bend
		if at -= move; math.Abs(at-start) > f.step {
			return start
		}
		if math.Abs(move) < 1e-12 {
			break
		}
	}
	return at
}
