package measure

import (
	"math"
	"math/cmplx"
)

// phaseAt is the frequency in Hz at which a phase is within half a turn of 0, so that the many
// turns below, in a high-pass, do not carry over to where speech is.
const phaseAt = 1000.0

// ExcessPhase returns the phase, in rad, of a pressure at rising frequencies in Hz with the pure
// delay of its first arrival in s taken out, unwrapped over frequency:
//
//	phi(f) = arg( P(f) exp(i 2 pi f first) )
//
// (time factor exp(+i omega t); A. V. Oppenheim and R. W. Schafer, Discrete-Time Signal
// Processing, 3rd ed., 5.1). From one frequency to the next it is taken to turn by less than half
// a turn besides what a delay of mean, the middle of the arrivals in s, makes. It is NaN where the
// pressure is 0 or no number. ExcessPhase panics where the lengths differ.
func ExcessPhase(frequency []float64, pressure []complex128, first, mean float64) []float64 {
	if len(pressure) != len(frequency) {
		panic("measure: lengths differ")
	}
	out := make([]float64, len(frequency))
	last, turns, near := math.NaN(), 0.0, -1
	for i, f := range frequency {
		if p := pressure[i]; p == 0 || cmplx.IsNaN(p) {
			out[i] = math.NaN()
			continue
		}
		sin, cos := math.Sincos(2 * math.Pi * f * mean)
		v := cmplx.Phase(pressure[i] * complex(cos, sin))
		if !math.IsNaN(last) {
			v += 2 * math.Pi * math.Round((last-v)/(2*math.Pi))
		}
		last = v
		out[i] = v - 2*math.Pi*f*(mean-first)
		if near < 0 || math.Abs(math.Log(f/phaseAt)) < math.Abs(math.Log(frequency[near]/phaseAt)) {
			near = i
		}
	}
	if near >= 0 {
		turns = math.Round(out[near] / (2 * math.Pi))
	}
	for i := range out {
		out[i] -= 2 * math.Pi * turns
	}
	return out
}

// GroupDelay returns the group delay, in s, of a phase in rad at rising frequencies in Hz, by the
// parabola through three of them each (second order in their spacing):
//
//	tau(f) = -1/(2 pi) d phi / d f
//
// (Oppenheim and Schafer, 5.1.2). It is NaN beside a phase that is NaN, and everywhere for fewer
// than three. GroupDelay panics where the lengths differ.
func GroupDelay(frequency, phase []float64) []float64 {
	n := len(frequency)
	if len(phase) != n {
		panic("measure: lengths differ")
	}
	out := make([]float64, n)
	for i := range out {
		if n < 3 {
			out[i] = math.NaN()
			continue
		}
		k := min(max(i, 1), n-2) // the middle of the three
		below, above := frequency[k]-frequency[k-1], frequency[k+1]-frequency[k]
		rising, next := (phase[k]-phase[k-1])/below, (phase[k+1]-phase[k])/above
		bend := (next - rising) / (below + above)
		slope := rising + bend*below + 2*bend*(frequency[i]-frequency[k])
		out[i] = -slope / (2 * math.Pi)
	}
	return out
}
