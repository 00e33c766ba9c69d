package timing

import (
	"math"
	"slices"

	"pappus/layout"
	"pappus/timing/air"
	"pappus/timing/arrival"
	"pappus/timing/band"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// The response is computed at responseCount frequencies, evenly spaced on a
// logarithmic axis, 30 to the octave.
const (
	responseCount = 256
	responseLow   = 50.0    // Hz
	responseHigh  = 20000.0 // Hz
)

// Make plans an array for its own listening spot.
func Make(a *layout.Array) (*Plan, error) {
	p, err := NewPlanner(a)
	if err != nil {
		return nil, err
	}
	plan, err := p.Move(a.Spot)
	if err != nil {
		return nil, err
	}
	if err := p.peaks(plan); err != nil {
		return nil, err
	}
	p.choices(plan)
	p.front(plan, p.count(plan))
	if err := plan.wire(); err != nil {
		return nil, err
	}
	plan.load()
	plan.hold()
	if err := p.spare(plan); err != nil {
		return nil, err
	}
	if err := plan.guard(); err != nil {
		return nil, err
	}
	if err := p.polars(plan); err != nil {
		return nil, err
	}
	return plan, nil
}

// Planner makes plans of one array for one listening spot after another. It
// keeps what does not depend on the spot. A Planner is for one goroutine.
type Planner struct {
	array  *layout.Array
	air    air.Air
	speed  float64
	medium *radiate.Medium // at the response's frequencies
	scene  *radiate.Scene
	spot   spotSums
	least  leastCorner
	sizes  stringSizes
	bears  float64       // V, RMS over a driver, what it stands for long; +Inf: not known
	late   *arrival.Late // how much later than by the path the field is heard
	doubt  []Finding     // in the model for this body
}

// NewPlanner returns a planner for an array. The error tells of a model that
// timing does not know.
func NewPlanner(a *layout.Array) (*Planner, error) {
	p := &Planner{array: a, air: air.Air(a.Air), doubt: farFromBall(a)}
	p.speed = p.air.SpeedOfSound()
	frequency := make([]float64, responseCount)
	band.Log(frequency, responseLow, responseHigh)
	p.medium = radiate.NewMedium(p.air, frequency)
	var err error
	if p.scene, err = radiate.NewScene(a, p.medium); err != nil {
		return nil, err
	}
	if p.late, err = newLate(a, p.speed); err != nil {
		return nil, err
	}
	response := make([]complex128, responseCount)
	driverResponse(a.Driver).Fill(response, frequency)
	p.spot.grow(len(a.Mounts), response)
	p.sizes = newStringSizes(len(a.Mounts), a.Driver.NominalOhm, a.Driver.LeastOhm(), a.Wiring.MinimumLoad)
	p.bears = (&Plan{Array: a}).bears()
	return p, nil
}

// Move plans the array for a listening spot in m, without what only Make fills
// in: the peaks of the impulse responses, the choices, the counts, the front, the
// channels' strings and banks, the protection's curves and limits, the cautions for
// hearing, and the polar responses.
// A spot that no sound can reach gives what layout.Array.ReachSpot does; drivers that cannot
// be wired at or above the amplifier's minimum load, wiring.ErrLoad.
func (p *Planner) Move(spot r3.Vec) (*Plan, error) {
	if err := p.array.ReachSpot(spot); err != nil {
		return nil, err
	}
	a := *p.array
	a.Spot = spot
	plan := &Plan{Array: &a, SpeedOfSound: p.speed, late: p.late, Warnings: slices.Concat(said(a.Warnings...), p.doubt)}
	p.spot.hear(p.scene, spot)
	p.arrivals(plan)
	if err := p.drive(plan); err != nil {
		return nil, err
	}
	p.respond(plan)
	return plan, p.echo(plan)
}

// arrivals fills in when and how loud each driver is heard at the spot.
func (p *Planner) arrivals(plan *Plan) {
	a := plan.Array
	plan.Arrivals = make([]Arrival, len(a.Mounts))
	low, high := indexRange(p.medium.Frequency, layout.WeightLowHz, layout.WeightHighHz)
	var h hearer
	h.move(plan, a.Spot)
	for m, mount := range a.Mounts {
		r := &plan.Arrivals[m]
		r.Path, r.Straight, r.Seen = way(a, mount, a.Spot)
		r.Time, r.Peak = r.Path/p.speed, math.NaN()
		r.Field = h.heard(mount)
		energy := p.spot.energy(m, low, high)
		if r.Level = 10 * math.Log10(energy); energy == 0 {
			r.Field = math.NaN() // behind a baffle there is nothing to time
		}
	}
}

// indexRange returns the first index at or above low and the first above high,
// for rising frequencies.
func indexRange(frequency []float64, low, high float64) (from, to int) {
	for from < len(frequency) && frequency[from] < low {
		from++
	}
	for to = from; to < len(frequency) && frequency[to] <= high; to++ {
	}
	return from, to
}
