package timing

import (
	"context"
	"math"
	"slices"

	"pappus/layout"
	"pappus/layout/advice"
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

// Make plans an array for its own listening spot. Errors are those of Planner.Spot, and
// that of ctx once it ends.
func Make(ctx context.Context, a *layout.Array) (*Plan, error) {
	p, err := NewPlanner(a)
	if err != nil {
		return nil, err
	}
	return p.plan(ctx, thorough)
}

// MakeQuickly is Make with the channels that are found for seats at once, as while one is dragged:
// what there is to see before the best are found. Without seats it is Make.
func MakeQuickly(ctx context.Context, a *layout.Array) (*Plan, error) {
	p, err := NewPlanner(a)
	if err != nil {
		return nil, err
	}
	return p.plan(ctx, dragged)
}

// Planner finds one array's timing at one spot after another. It keeps what does not depend
// on the spot. A Planner is for one goroutine.
type Planner struct {
	array     *layout.Array
	air       air.Air
	speed     float64
	medium    *radiate.Medium // at the response's frequencies
	scene     *radiate.Scene
	pressure  pressures // at the spot that was heard last
	least     leastCorner
	sizes     stringSizes
	ratedVolt float64        // V, RMS over a driver, what it stands for long; +Inf: not known
	timer     *radiate.Scene // in whose band the true field of a body is timed; nil: the ball's is
	late      *arrival.Late  // how much later than by the path the field is heard
	hall      *hall          // nil: no seats were asked for yet
	served    served         // for the seats that were asked for last
	doubtful  []Finding      // of the model, for this body
	solved    *radiate.Solution
}

// NewPlanner returns a planner for an array. The error tells of a model that
// timing does not know.
func NewPlanner(a *layout.Array) (*Planner, error) {
	frequency := make([]float64, responseCount)
	band.Log(frequency, responseLow, responseHigh)
	return newPlanner(a, frequency)
}

// newPlanner is NewPlanner with responses at other frequencies in Hz.
func newPlanner(a *layout.Array, frequency []float64) (*Planner, error) {
	p := &Planner{array: a, air: airOf(a), doubtful: farFromBall(a), ratedVolt: ratedVolt(a.Driver),
		sizes: newStringSizes(len(a.Own()), a.Driver, a.LeastLoad())}
	p.speed = p.air.SpeedOfSound()
	p.medium = radiate.NewMedium(p.air, frequency)
	var err error
	if p.scene, err = radiate.NewScene(a, p.medium); err != nil {
		return nil, err
	}
	if p.late, err = newLate(a, p.speed); err != nil {
		return nil, err
	}
	p.solved = p.scene.Solution(p.speed)
	if a.Timing.Model == bodyModel {
		if p.timer, err = newScene(alone(a), fieldBand(a.Timing.FieldLow, a.Timing.FieldHigh)); err != nil {
			return nil, err
		}
	}
	p.pressure = newPressures(a, frequency)
	return p, nil
}

// Spot finds the array's timing at a place in m. A place that no sound can reach gives what
// layout.Array.ReachSpot does; drivers that cannot be wired at or above the amplifier's minimum
// load, wiring.ErrLoad.
//
// Where the array has several seats, the channels and delays are those that serve the seats,
// wherever the spot is.
func (p *Planner) Spot(at r3.Vec) (*Spot, error) {
	a := *p.array
	a.Spot = at
	return p.spot(context.Background(), &a, thorough)
}

// spot finds an array's timing at its spot; for its seats, where it has several, until ctx
// ends, with some effort.
func (p *Planner) spot(ctx context.Context, a *layout.Array, e effort) (*Spot, error) {
	if err := a.ReachSpot(a.Spot); err != nil {
		return nil, err
	}
	seated, err := p.serve(ctx, a, e)
	if err != nil {
		return nil, err
	}
	s, err := p.settle(a, seated)
	if err != nil {
		return nil, err
	}
	s.Phase = p.pressure.phase(s.Arrivals, s.Channels, gains(a, s.Channels), s.Protection.HighPass())
	s.Warnings = append(s.Warnings, s.sharedLate()...)
	s.Echoes, err = s.echoes()
	return s, err
}

// settle finds channels and delays at an array's spot, those of its seats where it is served
// for some, and what is heard there with them.
func (p *Planner) settle(a *layout.Array, seated served) (*Spot, error) {
	p.pressure.hear(p.scene, a.Spot)
	arrivals := p.arrivals(a)
	alike := timesOf(a, arrivals, p.speed) // of drivers that are all as loud
	channels, found := seated.channels, seated.found
	if channels == nil {
		var err error
		channels, found, err = p.channels(a, func(count int) ([][]int, error) { return p.sort(a, alike, count), nil })
		if err != nil {
			return nil, err
		}
	}
	setDelays(channels, alike)
	found = append(found, handFindings(a, channels, alike)...)

	gain := gains(a, channels)
	for c, channel := range channels {
		for _, m := range channel.Mounts {
			arrivals[m].Channel = c
			arrivals[m].Level += 20 * math.Log10(math.Abs(gain[c]))
		}
	}
	wait := waitForWoofer(a, channels, timesOf(a, arrivals, p.speed), p.speed)
	rounding := p.pressure.rounder(a.Processor).settle(channels, gain, wait)
	for m := range arrivals {
		arrivals[m].Delay = channels[arrivals[m].Channel].Delay
	}
	protection, risk := p.protect(a, channels)
	s := &Spot{
		Array: a, SpeedOfSound: p.speed, Arrivals: arrivals, Channels: channels, Wait: wait, Rounding: rounding, Protection: protection,
		Seating: seated.seating, Warnings: slices.Concat(said(a.Warnings...), p.doubtful, found, risk), late: p.late, served: seated, solved: p.solved,
	}
	s.Response, s.Aligned, s.Unaligned, s.Ripple = p.pressure.sumUp(arrivals, channels, gain, protection.HighPass())
	return s, nil
}

// plan finds all there is to be told of the array's own spot, its channels for seats with some
// effort. What takes long ends with ctx, within a second.
func (p *Planner) plan(ctx context.Context, e effort) (*Plan, error) {
	spot, err := p.spot(ctx, p.array, e)
	if err != nil {
		return nil, err
	}
	plan := &Plan{Spot: *spot}
	if plan.Peaks, err = peaks(spot); err != nil {
		return nil, err
	}
	at := atSpot{spot, &p.pressure, p.pressure.rounder(p.array.Processor), p.sizes, p.ratedVolt}
	plan.Choices = choices(at, plan.Peaks)
	if plan.Seating == nil && len(spot.Array.Bodies()) == 1 {
		alike := at.alike()
		s := at.sorter(alike)
		if plan.Counts, err = counts(ctx, at, s, alike); err != nil {
			return nil, err
		}
		plan.Front = front(at, s)
	}
	if plan.Banks, err = banks(ctx, spot); err != nil {
		return nil, err
	}
	plan.found(overloads(spot, plan.Banks))
	if h, holds := plan.Held(); holds {
		plan.found(findings{{"strings_hold_down", advice.Cost, h}})
	}
	wasted, err := p.wasted(ctx, plan)
	if err != nil {
		return nil, err
	}
	plan.found(wasted)
	maximum, risks, err := maximumOf(spot)
	if err != nil {
		return nil, err
	}
	plan.Maximum, plan.Loudest = maximum, maximum.loudest()
	plan.found(risks)
	if plan.Horizontal, err = spot.ListeningPolar(); err != nil {
		return nil, err
	}
	if plan.Vertical, err = spot.uprightPolar(); err != nil {
		return nil, err
	}
	return plan, ctx.Err()
}

// found adds findings to those of the plan.
func (p *Plan) found(more findings) { p.Warnings = slices.Concat(p.Warnings, more) }

// arrivals returns when and how loud each driver is heard at an array's spot, each fed
// alike, without delays.
func (p *Planner) arrivals(a *layout.Array) []Arrival {
	out := make([]Arrival, len(a.Mounts))
	var h hearer
	h.moveIn(a, p.late, p.speed, a.Spot)
	timed := p.timed(a)
	for m, mount := range a.Mounts {
		r := &out[m]
		r.Path, r.Straight, r.Seen = way(a, mount, a.Spot)
		r.Time = r.Path / p.speed
		if timed != nil {
			r.Field = timed[m]
		} else {
			r.Field = h.heard(mount)
		}
		energy := p.pressure.energy(m)
		if r.Level = 10 * math.Log10(energy); energy == 0 {
			r.Field = math.NaN() // behind a baffle there is nothing to time
		}
	}
	return out
}

// timed returns when each driver is heard at an array's spot by the true field of its body, the
// time that fits its phase best (package arrival); nil where the model is another. It lies
// between a little before the shortest way and as much later as half round the body.
func (p *Planner) timed(a *layout.Array) []float64 {
	if p.timer == nil {
		return nil
	}
	n := len(p.timer.Medium.Frequency)
	heard, out := make([]complex128, len(a.Mounts)*n), make([]float64, len(a.Mounts))
	p.timer.Hear(heard, p.timer.Direct(), a.Spot)
	find, margin := arrival.NewFinder(p.timer.Medium.Frequency), a.Body.Radius/p.speed
	for m, mount := range a.Mounts {
		long, _, _ := way(a, mount, a.Spot)
		out[m] = find.Find(heard[m*n:(m+1)*n], long/p.speed-margin/2, long/p.speed+2*margin)
	}
	return out
}
