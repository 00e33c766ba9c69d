package verdict

import (
	"math"
	"math/cmplx"

	"pappus/timing"
	"pappus/timing/measure"
	"pappus/timing/recording"
)

// Turns is how the whole array turns over frequency at the spot, as measured and as planned, both
// with the pure delay of the plan's first arrival taken out: what comes within the gate, with a
// surface but without a room.
type Turns struct {
	Frequency         []float64 // Hz
	Measured, Planned timing.Turn
	Error             []float64 // rad, one standard error of the measured phase by noise and gate; NaN where that is not known
	// Late is by how much in s the measurement is late over the plan, which is taken out of it,
	// too: where it has a wire, what sound takes longer; else from an unknown instant.
	Late  float64
	Wired bool
}

// turnsOf returns those of a measurement, made while a case was played. It is late by the time
// tau at which most of it is what was planned,
//
//	| sum over f of M(f) conj(P(f)) exp(i 2 pi f tau) |
//
// over frequencies evenly spaced on a logarithmic axis, and its phase is the plan's and that of
// M/P, averaged as complex numbers over a sixth of an octave: that turns little, and can be
// followed through a comb's nulls.
func turnsOf(p *timing.Plan, m recording.Measured, played timing.Case) (*Turns, error) {
	plan, err := at(p, p.Array.Spot, LevelSetting{Case: played, Gated: true, surface: true}, m.Frequency)
	if err != nil {
		return nil, err
	}
	out := &Turns{Frequency: m.Frequency, Planned: p.Turned(played, m.Frequency, plan), Wired: m.Absolute}
	cross := make([]complex128, len(plan))
	for f, v := range plan {
		cross[f] = m.Gated.Transfer[f] * cmplx.Conj(v)
		out.Error = append(out.Error, m.Gated.Error[f]*math.Ln10/20)
	}
	out.Late = latest(m.Frequency, cross, m.At-out.Planned.First)
	over := make([]complex128, len(plan))
	for f, v := range cross {
		over[f] = v * cmplx.Rect(1, 2*math.Pi*m.Frequency[f]*out.Late) / complex(energy(plan[f]), 0)
	}
	out.Measured.First = out.Planned.First + out.Late
	out.Measured.Angle = measure.ExcessPhase(m.Frequency, averaged(over), 0, 0)
	for f := range plan {
		out.Measured.Angle[f] += out.Planned.Angle[f]
	}
	out.Measured.Group = measure.GroupDelay(m.Frequency, out.Measured.Angle)
	return out, nil
}

// Of the time by which a measurement is late.
const (
	lateReach = 3e-3 // s on each side of where its strongest sound is: a metre of body, there and back
	lateSteps = 8    // free: to a period of the highest frequency: with six the top is as near
)

// latest returns the time in s, near another, at which a cross spectrum over frequencies in Hz
// that is turned by it has the greatest sum.
func latest(frequency []float64, cross []complex128, near float64) float64 {
	sum := func(tau float64) float64 {
		var s complex128
		for f, v := range cross {
			if !cmplx.IsNaN(v) {
				s += v * cmplx.Rect(1, 2*math.Pi*frequency[f]*tau)
			}
		}
		return cmplx.Abs(s)
	}
	if math.IsNaN(near) {
		return 0
	}
	step := 1 / (lateSteps * frequency[len(frequency)-1])
	best, most := near, 0.0
	for tau := near - lateReach; tau <= near+lateReach; tau += step {
		if v := sum(tau); v > most {
			best, most = tau, v
		}
	}
	for ; step > 1e-9; step /= 2 { // free: a third of a micrometre of air
		low, middle, high := sum(best-step), sum(best), sum(best+step)
		if bend := low - 2*middle + high; bend < 0 {
			best += step * max(-1, min(1, (low-high)/(2*bend)))
		}
	}
	return best
}

// averageOver is how many frequencies on each side are averaged: a sixth of an octave in all.
const averageOver = 4

// averaged returns the mean of each value and its neighbours, of those that are known, NaN where
// it is not known itself.
func averaged(x []complex128) []complex128 {
	out := make([]complex128, len(x))
	for i := range x {
		if out[i] = cmplx.NaN(); cmplx.IsNaN(x[i]) {
			continue
		}
		sum, count := complex(0, 0), 0.0
		for _, v := range x[max(0, i-averageOver):min(len(x), i+averageOver+1)] {
			if !cmplx.IsNaN(v) {
				sum, count = sum+v, count+1
			}
		}
		out[i] = sum / complex(count, 0)
	}
	return out
}
