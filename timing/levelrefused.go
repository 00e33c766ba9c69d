package timing

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/timing/equaliser"
)

// levelFloor is what keeps the level from being evened out further down.
type levelFloor struct {
	key   string  // of the design; empty: nothing but levelLow
	hz    float64 // where it stands
	times float64 // how far above it levelling begins
}

// low is the frequency in Hz from which on it may be levelled.
func (f levelFloor) low() float64 { return f.times * f.hz }

// levelFrom returns where levelling begins: above what the drivers, the high-pass and a
// woofer's crossover do to the level.
func (p *Spot) levelFrom() levelFloor {
	out := levelFloor{hz: levelLow, times: 1}
	all := []levelFloor{{"protection.corner_hz", p.Protection.Corner, aboveCorner}, {"driver.resonance_hz", p.Protection.Resonance, aboveCorner}}
	if w := p.Array.Woofer; w.Present {
		all = append(all, levelFloor{"woofer.crossover_hz", w.Crossover, aboveWoofer})
	}
	for _, f := range all {
		if f.low() > out.low() {
			out = f
		}
	}
	return out
}

// levelled tells why nothing is levelled up to high, Hz: because no sound comes, or since
// fewer than leastOctaves are left; nil where something is.
func (p *Spot) levelled(high float64) error {
	if p.Silent() {
		return p.Unheard("there is no level to even out", equaliser.ErrCurve)
	}
	f, most := p.levelFrom(), high/math.Exp2(leastOctaves)
	if f.low() <= most {
		return nil
	}
	value, what := "", prose.Sprintf("stands at %.4g Hz as worked out; ", f.hz)
	if p.Array.Lines[f.key] > 0 {
		value, what = prose.Number(f.hz, 6), ""
	}
	return p.refused(f.key, value, what+prose.Sprintf("the level is evened out from %.4g times this on, %.4g Hz, and fewer than %g octaves are left below %.4g Hz; must be at most %.4g",
		f.times, f.low(), leastOctaves, high, math.Floor(most/f.times)))
}

// Unheard is the error for what cannot be done since no sound comes to the spot.
func (p *Spot) Unheard(so string, err error) error {
	return p.Array.Fault("timing.model", strconv.Quote(p.Array.Timing.Model),
		fmt.Sprintf("no sound comes to the spot, so %s; must be another model, or the spot before the drivers", so), err)
}

// outOfStep says that all from low to high, Hz, is a null: of channels that are laid out by hand,
// by the first that is inverted or has a delay of its own.
func (p *Spot) outOfStep(low, high float64) error {
	key, value := "wiring.channels", ""
	switch all := p.Array.Channels; {
	case len(all) > 0:
		key = "channel"
		if i := slices.IndexFunc(all, func(c layout.Channel) bool { return c.Invert }); i >= 0 {
			key, value = fmt.Sprintf("channel[%d].invert", i+1), "true"
		} else if i := slices.IndexFunc(all, func(c layout.Channel) bool { return !math.IsNaN(c.Delay) }); i >= 0 {
			key, value = fmt.Sprintf("channel[%d].delay_us", i+1), prose.Number(1e6*all[i].Delay, 6)
		}
	case p.Array.Lines[key] > 0:
		value = strconv.Itoa(p.Array.Wiring.Channels)
	}
	return p.refused(key, value, prose.Sprintf("from %.4g to %.4g Hz all sounds arrive out of step, so there is no level to even out; must be such that channels are in step at the spot", low, high))
}

// refused is an error of a key of the design.
func (p *Spot) refused(key, value, reason string) error {
	return p.Array.Fault(key, value, reason, equaliser.ErrCurve)
}
