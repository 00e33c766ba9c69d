package timing

import (
	"math"

	"pappus/layout"
	"pappus/timing/air"
	"pappus/timing/radiate"

	"gonum.org/v1/gonum/spatial/r3"
)

// Case is a way of driving the array.
type Case int

const (
	AsBuilt    Case = iota // all drivers at once, no delays
	Aligned                // with the plan's delays
	IdealPoint             // one point source at the body's centre, as strong as all drivers
)

// Transfer fills dst with the complex pressure at the listening spot for each
// frequency in Hz, in the unit that the plan's levels are in: 20 uPa, or the
// pressure at 1 m from a point source of one driver's volume velocity. The signal is fed at time 0, time factor
// exp(+i omega t). If dst is nil a new slice is made. It panics where the
// lengths differ. At 0 Hz and below the value is that of the limit.
func (p *Plan) Transfer(dst []complex128, c Case, frequency []float64) []complex128 {
	if dst == nil {
		dst = make([]complex128, len(frequency))
	}
	if len(dst) != len(frequency) {
		panic("timing: lengths differ")
	}
	clear(dst)
	medium := radiate.NewMedium(p.airState(), frequency)
	spot := []r3.Vec{p.Array.Spot}
	d := newFeed(p)
	response := p.response(frequency)
	weight := make([]complex128, len(frequency))
	if c == IdealPoint {
		for f := range weight {
			weight[f] = complex(total(d.gain), 0) * response[f]
		}
		radiate.Point(medium).Add(dst, layout.Mount{}, spot, weight)
		return dst
	}
	field, err := newField(p.Array, medium, spot)
	if err != nil {
		panic(err) // the plan was made with this very model
	}
	for m, mount := range p.Array.Mounts {
		d.weights(weight, m, c == Aligned, frequency, response)
		field.Add(dst, mount, spot, weight)
	}
	return dst
}

// total returns the sum of the magnitudes of gains.
func total(gain []float64) float64 {
	sum := 0.0
	for _, g := range gain {
		sum += math.Abs(g)
	}
	return sum
}

// FirstArrival returns when the first sound of a case reaches the spot, in s.
func (p *Plan) FirstArrival(c Case) float64 {
	if c == IdealPoint {
		return r3.Norm(p.Array.Spot) / p.SpeedOfSound
	}
	first := math.Inf(1)
	for _, r := range p.Arrivals {
		t := min(r.Time, r.Straight/p.SpeedOfSound)
		if c == Aligned {
			t += r.Delay
		}
		first = min(first, t)
	}
	return first
}

// airState returns the plan's air as package air knows it.

func (p *Plan) airState() air.Air { return air.Air(p.Array.Air) }
