package preview

import (
	"errors"
	"fmt"
	"math"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// ErrWay is wrapped by the errors of a place that no sound can reach, and of a way that
// cannot be walked.
var ErrWay = errors.New("impossible way")

// Pace is how fast people walk at their ease, in m/s (common practice).
const Pace = 1.2

// Way is a line of places that a listener walks along at Pace, who stays where it ends.
type Way struct {
	Places   []r3.Vec // m, of the head's middle; one at least
	Wait     float64  // s, to stand at the beginning, at least 0
	ToAndFro bool     // go back where it ends, and so on without an end
}

const (
	// A step lasts longestStep or, where arrivals drift apart by more than mostDrift
	// in it, down to shortestStep, in s. Halfway between two responses that differ
	// by the phase phi their mean is cos(phi/2) too weak: with 5 us of drift by
	// 0.1 dB at 10 kHz.
	longestStep, shortestStep = 0.006, 0.0015
	mostDrift                 = 5e-6

	mostSteps = 8192 // what a walk holds in memory at 48 kHz is 8 kB each without far echoes
	survey    = 64   // places at which the drift is looked at
)

// check returns an error that wraps ErrWay where there is no such way.
func (w Way) check() error {
	switch {
	case len(w.Places) == 0:
		return fmt.Errorf("%w: no places", ErrWay)
	case !(w.Wait >= 0) || math.IsInf(w.Wait, 0):
		return prose.Errorf("%w: %g s to stand, 0 or more are possible", ErrWay, w.Wait)
	case math.IsNaN(w.length()) || math.IsInf(w.length(), 0):
		return fmt.Errorf("%w: a place is no number", ErrWay)
	}
	return nil
}

func (w Way) length() float64 {
	sum := 0.0
	for i := range w.Places[1:] {
		sum += r3.Norm(r3.Sub(w.Places[i+1], w.Places[i]))
	}
	return sum
}

// Seconds returns how long it takes to walk the way once.
func (w Way) Seconds() float64 { return w.length() / Pace }

// at returns where the listener is after so many seconds.
func (w Way) at(seconds float64) r3.Vec {
	left := seconds * Pace
	for i := range w.Places[1:] {
		leg := r3.Sub(w.Places[i+1], w.Places[i])
		if long := r3.Norm(leg); left > long {
			left -= long
		} else if long > 0 {
			return r3.Add(w.Places[i], r3.Scale(left/long, leg))
		}
	}
	return w.Places[len(w.Places)-1]
}

// hop returns the number of samples in a step, a power of two.
func (w Way) hop(p *timing.Spot, dry bool, rate int) int {
	hop := 1
	for float64(2*hop) <= longestStep*float64(rate) {
		hop *= 2
	}
	least := shortestStep * float64(rate)
	for float64(hop) >= least && w.drift(p, dry, float64(hop)/float64(rate)) > mostDrift {
		hop /= 2
	}
	return hop
}

// drift returns the most by which arrivals drift apart in a step of so many
// seconds.
func (w Way) drift(p *timing.Spot, dry bool, step float64) float64 {
	most := 0.0
	for i := range survey {
		t := w.Seconds() * float64(i) / survey
		most = max(most, p.Drift(dry, w.at(t), w.at(t+step)))
	}
	return most
}

// reach returns what keeps sound from places in m: an error that wraps
// ErrWay.
func reach(a *layout.Array, places ...r3.Vec) error {
	for _, at := range places {
		if err := a.Reach(at); err != nil {
			return prose.Saying(prose.Sprintf("at %.3g, %.3g, %.3g m: %v", at.X, at.Y, at.Z, err), ErrWay, err)
		}
	}
	return nil
}
