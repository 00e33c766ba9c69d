package timing

import (
	"math"

	"pappus/timing/arrival"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// The limit of the impulse response whose peak is told, in Hz, and the step between
// its frequencies: echoes within 13 ms stay apart.
const (
	peakHigh = 12000.0
	peakStep = 75.0
)

// How long before the path's arrival and after it the peak is looked for, in s: the
// wave that creeps round a body of some 0.3 m radius comes at most a third of a
// millisecond late.
const (
	lookBefore = 50e-6
	lookAfter  = 350e-6
)

// peaks returns when the model's own impulse response of each mount has its peak, in s; NaN
// where no sound comes.
func peaks(s *Spot) ([]float64, error) {
	a := s.Array
	frequency := linear(peakStep, peakHigh)
	spot := []r3.Vec{a.Spot}
	field, err := directField(a, radiate.NewMedium(s.airState(), frequency), spot)
	if err != nil {
		return nil, err
	}
	out := make([]float64, len(a.Mounts))
	peak := arrival.NewFinder(frequency)
	heard, one := make([]complex128, len(frequency)), make([]complex128, len(frequency))
	for i := range one {
		one[i] = 1
	}
	for m, mount := range a.Mounts {
		clear(heard)
		field.Add(heard, mount, spot, one)
		r := s.Arrivals[m]
		if out[m] = math.NaN(); !quiet(heard) { // else behind a baffle there is nothing to time
			out[m] = peak.Find(heard, min(r.Time, r.Straight/s.SpeedOfSound)-lookBefore, r.Time+lookAfter)
		}
	}
	return out, nil
}

// quiet tells whether there is no sound at all.
func quiet(pressure []complex128) bool {
	for _, v := range pressure {
		if v != 0 {
			return false
		}
	}
	return true
}

// linear returns the multiples of a step up to a limit.
func linear(step, limit float64) []float64 {
	f := make([]float64, int(limit/step))
	for i := range f {
		f[i] = step * float64(i+1)
	}
	return f
}
