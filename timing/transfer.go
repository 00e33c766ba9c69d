package timing

import (
	"math"
	"slices"

	"pappus/layout"
	"pappus/timing/air"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// Case is a way of driving the array. All cases have the gains, polarities and
// filters of the plan; they differ in delays alone.
type Case int

const (
	AsBuilt    Case = iota // all drivers at once, no delays
	Aligned                // with the plan's delays, one for each channel, as the processor can be set to them
	IdealPoint             // one point source at the body's centre, as strong as all drivers

	PerDriver    // an exact delay for each driver, as if there were as many channels
	StraightLine // the plan's channels, with delays that can be set by the straight line through the body
	MiddleSeat   // with the delays that a plan for the middle seat alone sets; Aligned where there are fewer than two seats
)

// Transfer fills dst with the complex pressure at the listening spot for each
// frequency in Hz, in the unit that the plan's levels are in: 20 uPa, or the
// pressure at 1 m from a point source of one driver's volume velocity. The signal is fed at time 0, time factor
// exp(+i omega t). If dst is nil a new slice is made. It panics where the
// lengths differ. At 0 Hz and below the value is that of the limit.
func (p *Spot) Transfer(dst []complex128, c Case, frequency []float64) []complex128 {
	if dst == nil {
		dst = make([]complex128, len(frequency))
	}
	spot := p.Array.Spot
	h, err := NewHearing(p, Listening{Cases: []Case{c}}, []r3.Vec{spot}, frequency)
	if err != nil {
		panic(err) // the plan was made for this very spot with this very model
	}
	h.At([][]complex128{dst}, spot)
	return dst
}

// DriverResponse fills dst with a driver's own response at frequencies in Hz,
// behind the high-pass that protects it. If dst is nil a new slice is made. It
// panics where the lengths differ.
func (p *Spot) DriverResponse(dst []complex128, frequency []float64) []complex128 {
	if dst == nil {
		dst = make([]complex128, len(frequency))
	}
	if len(dst) != len(frequency) {
		panic("timing: lengths differ")
	}
	copy(dst, p.response(frequency))
	return dst
}

// delays returns what each driver is delayed by in a case, in s.
func (p *Spot) delays(c Case) []float64 {
	delay := make([]float64, len(p.Arrivals))
	switch c {
	case MiddleSeat:
		if p.Seating == nil {
			return p.delays(Aligned)
		}
		copy(delay, p.Seating.MiddleDelay)
	case Aligned:
		for m, r := range p.Arrivals {
			delay[m] = r.Delay
		}
	case PerDriver:
		time := p.times().time
		latest := slices.Max(time) + p.Wait + p.Rounding.Common
		for m, t := range time {
			delay[m] = latest - t
		}
	case StraightLine:
		channels := slices.Clone(p.Channels)
		for i := range channels {
			channels[i].Delay = math.NaN()
		}
		setDelays(channels, times{arrivalsBy(byStraight, p.Arrivals, p.SpeedOfSound), p.times().weight})
		for m, r := range p.Arrivals {
			delay[m] = p.Settable(channels[r.Channel].Delay + p.Wait + p.Rounding.Common)
		}
	}
	return delay
}

// Span returns when the first and the last sound of a case reach a place in m,
// echoes too unless it is dry, in s after the signal is fed. The first counts from the
// straight line, so that nothing comes before it.
func (p *Spot) Span(c Case, dry bool, place r3.Vec) (first, last float64) {
	a, delay := p.sources(c)
	first = math.Inf(1)
	for _, image := range p.ways(dry) {
		at := image.Moved(place)
		for m, mount := range a.Mounts {
			long, straight, _ := way(a, mount, at)
			first = min(first, min(long, straight)/p.SpeedOfSound+delay[m])
			last = max(last, long/p.SpeedOfSound+delay[m])
		}
	}
	return first, last
}

// Drift returns by how much in s, at most, the arrival of any driver's sound, echoes
// too unless it is dry, changes from one place in m to another, over the change of the
// straight way from the body's centre.
func (p *Spot) Drift(dry bool, from, to r3.Vec) float64 {
	all := r3.Norm(to) - r3.Norm(from)
	most := 0.0
	for _, image := range p.ways(dry) {
		for _, mount := range p.Array.Mounts {
			before, _, _ := way(p.Array, mount, image.Moved(from))
			after, _, _ := way(p.Array, mount, image.Moved(to))
			most = max(most, math.Abs(after-before-all))
		}
	}
	return most / p.SpeedOfSound
}

// sources returns the array whose mounts sound in a case, and the delay of each in s:
// the ideal point is one in open air.
func (p *Spot) sources(c Case) (a *layout.Array, delay []float64) {
	if c == IdealPoint {
		a := *p.Array
		a.Mounts, a.Placings, a.Timing.Model = make([]layout.Mount, 1), nil, pointModel
		return &a, make([]float64, 1)
	}
	return p.Array, p.delays(c)
}

// scene returns the array in the surroundings in which it is heard.
func (p *Spot) scene(dry bool) *layout.Array {
	if dry {
		return alone(p.Array)
	}
	return p.Array
}

// ways returns the ways by which what stands in the room is heard, whatever the frequency.
func (p *Spot) ways(dry bool) []radiate.Way {
	return radiate.InRoom(radiate.Ways(p.scene(dry), radiate.NewMedium(p.airState(), nil)))
}

// weights returns what is fed to each driver in a case at each frequency in Hz, one
// after the other: gain, polarity and delay over a response that all have. The ideal
// point has the gains of all.
func (p *Spot) weights(c Case, frequency []float64, response []complex128) []complex128 {
	gain, delay := newFeed(p).gain, p.delays(c)
	if c == IdealPoint {
		gain, delay = []float64{total(gain)}, []float64{0}
	}
	weight := make([]complex128, len(gain)*len(frequency))
	for m, g := range gain {
		for f, hz := range frequency {
			weight[m*len(frequency)+f] = complex(g, 0) * response[f] * turn(hz, delay[m])
		}
	}
	return weight
}

// total returns the sum of the magnitudes of gains.
func total(gain []float64) float64 {
	sum := 0.0
	for _, g := range gain {
		sum += math.Abs(g)
	}
	return sum
}

// airState returns the plan's air as package air knows it.
func (p *Spot) airState() air.Air { return airOf(p.Array) }

// airOf returns an array's air as package air knows it.
func airOf(a *layout.Array) air.Air { return air.Air(a.Air) }
