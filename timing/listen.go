package timing

import (
	"pappus/timing/arrival"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// The limit of the impulse response whose peak is told, in Hz, and the grid of
// frequencies that arrivals are fitted over.
const (
	peakHigh  = 12000.0
	fieldStep = 75.0 // between frequencies: echoes within 13 ms stay apart
)

// How long before the path's arrival and after it the field's is looked for, in
// s: the wave that creeps round a body of some 0.3 m radius comes at most a
// third of a millisecond late.
const (
	lookBefore = 50e-6
	lookAfter  = 350e-6
)

// listen fills in the arrivals that the model's own field has: the fit over the
// field band, and the peak of the impulse response.
func (p *Planner) listen(plan *Plan) error {
	a := plan.Array
	frequency := linear(fieldStep, max(peakHigh, a.Timing.FieldHigh))
	spot := []r3.Vec{a.Spot}
	field, err := directField(a, radiate.NewMedium(p.air, frequency), spot)
	if err != nil {
		return err
	}
	low, high := indexRange(frequency, a.Timing.FieldLow, a.Timing.FieldHigh)
	_, top := indexRange(frequency, 0, peakHigh)
	fit, peak := arrival.NewFinder(frequency[low:high]), arrival.NewFinder(frequency[:top])
	heard, one := make([]complex128, len(frequency)), make([]complex128, len(frequency))
	for i := range one {
		one[i] = 1
	}
	for m, mount := range a.Mounts {
		clear(heard)
		field.Add(heard, mount, spot, one)
		r := &plan.Arrivals[m]
		if quiet(heard) {
			continue // behind a baffle there is nothing to time
		}
		from, to := min(r.Time, r.Straight/p.speed)-lookBefore, r.Time+lookAfter
		r.Field = fit.Find(heard[low:high], from, to)
		r.Peak = peak.Find(heard[:top], from, to)
	}
	return nil
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
