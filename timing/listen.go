package timing

import (
	"math"

	"pappus/timing/arrival"
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
func peaks(spot *Spot) ([]float64, error) {
	a := spot.Array
	frequency := linear(peakStep, peakHigh)
	s, err := newScene(alone(a), frequency)
	if err != nil {
		return nil, err
	}
	out := make([]float64, len(a.Mounts))
	heard := make([]complex128, len(a.Mounts)*len(frequency))
	s.Hear(heard, s.Ways, a.Spot)
	peak := arrival.NewFinder(frequency)
	for m := range a.Mounts {
		r, row := spot.Arrivals[m], heard[m*len(frequency):(m+1)*len(frequency)]
		if out[m] = math.NaN(); !quiet(row) { // else behind a baffle there is nothing to time
			out[m] = peak.Find(row, min(r.Time, r.Straight/spot.SpeedOfSound)-lookBefore, r.Time+lookAfter)
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
