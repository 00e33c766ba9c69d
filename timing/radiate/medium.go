package radiate

import (
	"math"
	"math/cmplx"

	"pappus/timing/air"
)

// Medium is air as a slice of frequencies sees it.
type Medium struct {
	Frequency  []float64 // Hz
	Wavenumber []float64 // rad/m
	Loss       []float64 // Np/m, ISO 9613-1
}

// NewMedium returns air at the given frequencies in Hz, which it copies.
func NewMedium(a air.Air, frequency []float64) *Medium {
	m := &Medium{
		Frequency:  append([]float64(nil), frequency...),
		Wavenumber: make([]float64, len(frequency)),
		Loss:       make([]float64, len(frequency)),
	}
	speed := a.SpeedOfSound()
	for i, f := range frequency {
		m.Wavenumber[i] = 2 * math.Pi * f / speed
		m.Loss[i] = a.Loss(f)
	}
	return m
}

// some returns the same air at some of its frequencies, by their indices.
func (m *Medium) some(at []int) *Medium {
	out := &Medium{}
	for _, f := range at {
		out.Frequency = append(out.Frequency, m.Frequency[f])
		out.Wavenumber = append(out.Wavenumber, m.Wavenumber[f])
		out.Loss = append(out.Loss, m.Loss[f])
	}
	return out
}

// WithoutLoss returns the same air, taking nothing from the sound.
func (m *Medium) WithoutLoss() *Medium {
	return &Medium{m.Frequency, m.Wavenumber, make([]float64, len(m.Loss))}
}

// check panics where Field.At is called with a slice that does not fit.
func (m *Medium) check(dst []complex128, mounts int) {
	if len(dst) != mounts*len(m.Frequency) {
		panic("radiate: lengths differ")
	}
}

// spread returns exp(-loss r - i k r)/r at frequency f: what a point source of strength 1
// gives r m away.
func (m *Medium) spread(f int, r float64) complex128 {
	return cmplx.Rect(math.Exp(-m.Loss[f]*r)/r, -m.Wavenumber[f]*r)
}
