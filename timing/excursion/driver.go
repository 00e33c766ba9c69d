package excursion

import (
	"errors"
	"math"

	"pappus/layout/prose"
)

// Errors that this package wraps.
var (
	ErrDriver = errors.New("impossible driver")
	ErrLimit  = errors.New("impossible limit")
	ErrCorner = errors.New("no high-pass will do")
)

// Driver is a driver in its closed box.
type Driver struct {
	BL        float64 // force factor in T m
	Mass      float64 // Mms in kg, air load included
	DCOhm     float64 // Re
	Resonance float64 // fc in Hz, in the box
	Q         float64 // Qtc, in the box
}

// Check returns an error that wraps ErrDriver where a value is not above 0.
func (d Driver) Check() error {
	return check(ErrDriver, []named{{"force factor in T m", d.BL}, {"moving mass in kg", d.Mass},
		{"resistance in ohm", d.DCOhm}, {"resonance in Hz", d.Resonance}, {"Q", d.Q}})
}

// named is a value with its name.
type named struct {
	name  string
	value float64
}

// check returns an error that wraps cause where a value is not above 0 and finite.
func check(cause error, values []named) error {
	for _, v := range values {
		if !(v.value > 0) || math.IsInf(v.value, 0) {
			return prose.Errorf("%w: %s %g, must be above 0", cause, v.name, v.value)
		}
	}
	return nil
}

// Excursion returns the peak excursion in m, one way, for a sine of 1 V RMS over
// the driver at a frequency in Hz, 0 or above.
func (d Driver) Excursion(hz float64) float64 {
	wc := 2 * math.Pi * d.Resonance
	u := hz / d.Resonance
	return math.Sqrt2 * d.BL / (d.DCOhm * d.Mass * wc * wc) / math.Hypot(1-u*u, u/d.Q)
}

// Fill fills dst with the peak excursion in m at frequencies in Hz for sines of
// volt RMS. It panics where the lengths differ and allocates nothing.
func (d Driver) Fill(dst, frequency []float64, volt float64) {
	if len(dst) != len(frequency) {
		panic("excursion: lengths differ")
	}
	for i, hz := range frequency {
		dst[i] = volt * d.Excursion(hz)
	}
}

// Sensitivity returns the level in dB SPL at 1 m, on axis in a half space, for
// 2.83 V, well above the resonance and below where the cone beams, from the
// air's density in kg/m3 and the cone's area in m2. Where it is far from the
// driver's stated sensitivity, one of the values is wrong.
func (d Driver) Sensitivity(density, area float64) float64 {
	pascal := density * area * 2.83 * d.BL / (2 * math.Pi * d.DCOhm * d.Mass)
	return 20 * math.Log10(pascal/20e-6)
}
