package timing

import (
	"math"

	"pappus/timing/crossover"
	"pappus/timing/measure"

	"gonum.org/v1/gonum/stat"
)

// Phase is how the direct sound at the spot turns over frequency, behind the high-pass: with the
// delays, without, and as one driver does alone, which is what is left with all in step.
type Phase struct {
	Frequency                  []float64 // Hz, as those of the response
	Aligned, Unaligned, InStep Turn
}

// Turn is a phase with the pure delay of the earliest arrival taken out (measure.ExcessPhase).
type Turn struct {
	First float64   // s, that arrival, after the instant of emission
	Angle []float64 // rad, unwrapped; NaN where nothing is heard, or arrivals are too far apart to be followed from one frequency to the next
	Group []float64 // s, group delay after First (measure.GroupDelay)
}

// follows tells whether a phase can be followed to a frequency from the one before, both in Hz,
// for arrivals that are so many s from their middle at most: each turns by less than half a turn.
func follows(frequency, before, apart float64) bool { return (frequency-before)*apart < 0.5 }

// turnOf returns the phase of a sum of arrivals in s, weighed by their energies.
func turnOf(frequency []float64, pressure []complex128, late, energy []float64) Turn {
	first, mean, apart := math.Inf(1), stat.Mean(late, energy), 0.0
	for m, t := range late {
		if energy[m] > 0 {
			first, apart = min(first, t), max(apart, math.Abs(t-mean))
		}
	}
	if math.IsInf(first, 1) {
		first = math.NaN()
	}
	known := len(frequency)
	for i := 1; i < len(frequency) && known == len(frequency); i++ {
		if !follows(frequency[i], frequency[i-1], apart) {
			known = i
		}
	}
	out := Turn{First: first, Angle: measure.ExcessPhase(frequency[:known], pressure[:known], first, mean)}
	for range len(frequency) - known {
		out.Angle = append(out.Angle, math.NaN())
	}
	out.Group = measure.GroupDelay(frequency, out.Angle)
	return out
}

// phase returns how the direct sound at the spot turns, of channels behind a high-pass.
func (h *pressures) phase(arrivals []Arrival, channels []Channel, gain []float64, high crossover.Filter) Phase {
	built, aligned := h.sums(h.direct, mountsOf(channels), gain, delaysOf(channels))
	alone := append([]complex128(nil), h.driver...)
	for f, hz := range h.frequency {
		v := high.Response(hz)
		built[f], aligned[f], alone[f] = built[f]*v, aligned[f]*v, alone[f]*v
	}
	before, energy := heardAt(arrivals, AsBuilt)
	after, _ := heardAt(arrivals, Aligned)
	frequency := append([]float64(nil), h.frequency...)
	return Phase{frequency, turnOf(frequency, aligned, after, energy), turnOf(frequency, built, before, energy), turnOf(frequency, alone, []float64{0}, []float64{1})}
}

// heardAt returns when arrivals are heard in a case, in s, and their energies.
func heardAt(arrivals []Arrival, c Case) (late, energy []float64) {
	late, energy = make([]float64, len(arrivals)), make([]float64, len(arrivals))
	for m, a := range arrivals {
		late[m], energy[m] = a.Heard(), math.Pow(10, a.Level/10)
		if c == Aligned {
			late[m] += a.Delay
		}
	}
	return late, energy
}

// Turned returns how what is heard at the spot, as built or aligned, turns over frequencies in Hz.
func (p *Spot) Turned(c Case, frequency []float64, pressure []complex128) Turn {
	late, energy := heardAt(p.Arrivals, c)
	return turnOf(frequency, pressure, late, energy)
}
