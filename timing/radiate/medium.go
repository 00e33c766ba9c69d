package radiate

import (
	"math"

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

// WithoutLoss returns the same air, taking nothing from the sound.
func (m *Medium) WithoutLoss() *Medium {
	return &Medium{m.Frequency, m.Wavenumber, make([]float64, len(m.Loss))}
}

// check panics where Field.Add is called with slices that do not fit.
func (m *Medium) check(dst []complex128, points int, weight []complex128) {
	if len(weight) != len(m.Frequency) || len(dst) != points*len(weight) {
		panic("radiate: lengths differ")
	}
}

// wave returns exp(-loss d - i k d) at frequency f over a distance in m.
func (m *Medium) wave(f int, distance float64) complex128 {
	sin, cos := math.Sincos(m.Wavenumber[f] * distance)
	fall := math.Exp(-m.Loss[f] * distance)
	return complex(fall*cos, -fall*sin)
}
