package timing

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// At returns a plan as another place in m hears it: the same channels with the same delays,
// their arrivals, levels and echoes there, and all else as the plan has it. A place that no
// sound can reach gives what layout.Array.ReachSpot does.
func (p *Plan) At(place r3.Vec) (*Plan, error) {
	if err := p.Array.ReachSpot(place); err != nil {
		return nil, err
	}
	a, out := *p.Array, *p
	a.Spot, out.Array = place, &a
	planner, err := NewPlanner(&a)
	if err != nil {
		return nil, err
	}
	planner.pressure.hear(planner.scene, place)
	gain := gains(&a, p.Channels)
	out.Arrivals = planner.arrivals(&a)
	for m, planned := range p.Arrivals {
		r := &out.Arrivals[m]
		r.Channel, r.Delay = planned.Channel, planned.Delay
		r.Level += 20 * math.Log10(math.Abs(gain[r.Channel]))
	}
	out.Response, out.Aligned, out.Unaligned, out.Ripple = planner.pressure.sumUp(out.Arrivals, out.Channels, gain, out.Protection.HighPass())
	out.Phase = planner.pressure.phase(out.Arrivals, out.Channels, gain, out.Protection.HighPass())
	out.Echoes, err = out.echoes()
	return &out, err
}
