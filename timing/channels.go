package timing

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/layout/wiring"
	"pappus/timing/split"

	"gonum.org/v1/gonum/spatial/r3"
)

// weightFloor keeps a driver that is not heard at the spot from being free to
// join any channel: no weight counts below this share of the greatest.
const weightFloor = 1e-6

// times are what delays are computed from.
type times struct {
	time   []float64 // s, for each mount: when it is heard, as the design takes delays
	weight []float64 // squared pressure at the spot, with a floor
}

// timesOf reads them from the arrivals at an array's spot.
func timesOf(a *layout.Array, arrivals []Arrival, speed float64) times {
	t := times{arrivalsBy(a.Timing.DelaysBy, arrivals, speed), make([]float64, len(arrivals))}
	for m, r := range arrivals {
		if math.IsNaN(t.time[m]) {
			t.time[m] = r.Time // not heard: any delay will do
		}
		t.weight[m] = math.Pow(10, r.Level/10)
	}
	raise(t.weight)
	return t
}

// times are those of the spot, with the levels that the drivers are fed to.
func (s *Spot) times() times { return timesOf(s.Array, s.Arrivals, s.SpeedOfSound) }

// raise brings weights up to the floor.
func raise(w []float64) {
	top := 0.0
	for _, v := range w {
		top = max(top, v)
	}
	for m := range w {
		w[m] = max(w[m], weightFloor*top)
	}
}

// mean returns the weighted mean of the arrivals of some drivers.
func (t times) mean(mounts []int) float64 {
	if len(mounts) == 1 {
		return t.time[mounts[0]] // free of rounding
	}
	var sum, total float64
	for _, m := range mounts {
		sum += t.weight[m] * t.time[m]
		total += t.weight[m]
	}
	return sum / total
}

// The ways of taking delays that a design may name.
const (
	byStraight = "straight"
	byPath     = "path"
	byField    = "field"
	byPeak     = "peak" // not offered: the field is as good and has no ripple
)

// arrivalsBy returns the arrivals in s as one way of taking them has it.
func arrivalsBy(by string, arrivals []Arrival, speed float64) []float64 {
	time := make([]float64, len(arrivals))
	for m, r := range arrivals {
		switch by {
		case byStraight:
			time[m] = r.Straight / speed
		case byField:
			time[m] = r.Field
		default:
			time[m] = r.Time
		}
	}
	return time
}

// channels returns the design's own channels, or the best split into as many
// as it asks for, trimmed so that all drivers are as loud, or one for each
// driver; those have no delays yet.
//
// Each channel can be wired at or above the amplifier's minimum load. The more drivers there
// are in one string the higher is their load, so whether some can be wired is a question of
// their number alone. Where the design's number of channels cannot all be wired there are
// fewer, and a finding; where not even one string of all drivers will do the error wraps
// wiring.ErrLoad.
//
// sort sorts the drivers into so many channels that can be wired.
func (p *Planner) channels(a *layout.Array, sort func(count int) ([][]int, error)) (out []Channel, found findings, err error) {
	w, n, ohm := a.Wiring, len(a.Own()), a.Driver.LeastOhm()
	for _, c := range a.Channels {
		out = append(out, Channel{Channel: c, Delay: c.Delay})
	}
	if len(out) > 0 {
		return out, nil, nil
	}
	var groups [][]int
	if w.Channels == 0 {
		groups = oneEach(a)
		if p.sizes.series[1] == 0 {
			found.warn("load_too_low", advice.Danger, LoadTooLow{ohm, w.MinimumLoad})
		}
	} else {
		most := p.sizes.mostChannels()
		if most == 0 {
			return nil, nil, wiring.Arrangement{{Series: n, Parallel: 1}}.Check(ohm, a.LeastLoad())
		}
		count := min(w.Channels, most)
		if count < min(w.Channels, n) {
			found.warn("channels_fewer", advice.Cost, FewerChannels{count, w.Channels, p.sizes.least(), ohm, w.MinimumLoad})
		}
		if groups, err = sort(count); err != nil {
			return nil, nil, err
		}
		if longest := p.sizes.longest(onOne(a, groups)); w.LongestString > 0 && longest > w.LongestString {
			found.warn("strings_too_long", advice.Misfit, LongStrings{longest, w.LongestString, count})
		}
	}
	for i, g := range groups {
		out = append(out, wired(a, i+1, g))
	}
	trim(out)
	return out, found, nil
}

// sort sorts the drivers at the spot that was heard last into count channels that can be
// wired, or as many for each set of bodies; there must be enough drivers for that.
func (p *Planner) sort(a *layout.Array, t times, count int) [][]int {
	if len(a.Bodies()) > 1 {
		return p.sortBodies(a, t, count)
	}
	return p.sortOne(a, &p.pressure, t, count)
}

// sortOne is sort for an array of one body.
func (p *Planner) sortOne(a *layout.Array, h *pressures, t times, count int) [][]int {
	if a.Wiring.Split == byNeighbours {
		return split.Neighbours(mountPlaces(a), count)
	}
	return newSorter(a, h, p.sizes, p.ratedVolt, a.Wiring.Split, t).sort(count, a.Wiring.LongestString)
}

// mountPlaces returns where the drivers are, in m.
func mountPlaces(a *layout.Array) []r3.Vec {
	place := make([]r3.Vec, len(a.Mounts))
	for m, mount := range a.Mounts {
		place[m] = mount.Point
	}
	return place
}

// mountsOf returns the drivers of each channel.
func mountsOf(channels []Channel) [][]int {
	groups := make([][]int, len(channels))
	for i, c := range channels {
		groups[i] = c.Mounts
	}
	return groups
}

// delaysOf returns the delay of each channel in s.
func delaysOf(channels []Channel) []float64 {
	delay := make([]float64, len(channels))
	for c := range channels {
		delay[c] = channels[c].Delay
	}
	return delay
}

// wired wires equal drivers to one channel whose delay is still to be found: in
// equal strings, with the load nearest above the amplifier's minimum. Unequal
// strings are never needed: one string of all has the highest load there is. Bodies that
// share the channel have the same strings, all in parallel.
func wired(a *layout.Array, id int, mounts []int) Channel {
	d, bodies := a.Driver, a.BodiesOf(mounts)
	c := Channel{Channel: layout.Channel{ID: id, Mounts: mounts, Delay: math.NaN()}, Delay: math.NaN()}
	c.Series, c.Parallel, c.NominalOhm, _ = wiring.Best(len(mounts)/bodies, d.NominalOhm, d.LeastOhm(), a.LeastLoad())
	c.Parallel, c.NominalOhm = c.Parallel*bodies, c.NominalOhm/float64(bodies)
	c.DCOhm = wiring.Load(c.Series, c.Parallel, d.DCOhm)
	return c
}

// isByHand tells whether the design sets a channel's delay.
func (c Channel) isByHand() bool { return !math.IsNaN(c.Channel.Delay) }

// setDelays gives every channel whose delay is not set by hand what brings it
// into step with the latest of all, a channel's arrival being the weighted mean
// of its drivers' and any delay set by hand. Delays are never negative, so a
// channel whose delay is set too short stays ahead of the others.
func setDelays(channels []Channel, t times) {
	mean := make([]float64, len(channels))
	latest := math.Inf(-1)
	for i, c := range channels {
		mean[i] = t.mean(c.Mounts)
		if c.isByHand() {
			latest = max(latest, mean[i]+c.Channel.Delay)
		} else {
			latest = max(latest, mean[i])
		}
	}
	for i := range channels {
		if math.IsNaN(channels[i].Delay) {
			channels[i].Delay = latest - mean[i]
		}
	}
}

// farUnequal is by how many dB the drivers of channels laid out by hand may
// differ before it is spoken of: four times the power.
const farUnequal = 6.0

// handFindings tells of channels laid out by hand that work against each other: a delay too
// short to be met by the others, drivers with far unequal power, opposite polarities.
func handFindings(a *layout.Array, channels []Channel, t times) (found findings) {
	if len(a.Channels) == 0 {
		return nil
	}
	found.warnShort(a.Processor.Step, channels, t)
	found.warnUnequal(channels)
	var inverted []int
	for _, c := range channels {
		if c.Invert {
			inverted = append(inverted, c.ID)
		}
	}
	if len(inverted) > 0 && len(inverted) < len(channels) {
		found.warn("polarity_opposed", advice.Cost, PolarityOpposed{inverted})
	}
	return found
}

// warnShort tells of channels that are heard before the latest by more than a step
// of the processor, so that what it sets with the most care is not complained of.
func (found *findings) warnShort(step float64, channels []Channel, t times) {
	arrival := make([]float64, len(channels))
	latest := math.Inf(-1)
	for i, c := range channels {
		arrival[i] = t.mean(c.Mounts) + c.Delay
		latest = max(latest, arrival[i])
	}
	count, most := 0, 0
	for i := range arrival {
		if latest-arrival[i] > step+1e-9 {
			count++
		}
		if arrival[i] < arrival[most] {
			most = i
		}
	}
	if count > 0 {
		c, short := channels[most], latest-arrival[most]
		found.warn("delay_short", advice.Cost, DelayShort{c.ID, c.Delay, short, settable(c.Delay+short, step), count})
	}
}

// warnUnequal tells where a driver of one channel gets far more power than one of
// another, and which gains make them alike.
func (found *findings) warnUnequal(channels []Channel) {
	level := func(a, b Channel) int {
		return cmp.Compare(a.Gain-20*math.Log10(a.series()), b.Gain-20*math.Log10(b.series()))
	}
	low, high := slices.MinFunc(channels, level), slices.MaxFunc(channels, level)
	apart := high.Gain - low.Gain + 20*math.Log10(low.series()/high.series())
	if apart < farUnequal {
		return
	}
	even := slices.Clone(channels)
	trim(even)
	var gains []SetGain
	for i, c := range even {
		if math.Abs(c.Gain-channels[i].Gain) >= 0.05 {
			gains = append(gains, SetGain{c.ID, c.Gain})
		}
	}
	found.warn("powers_unequal", advice.Cost, PowersUnequal{high.ID, low.ID, apart, gains})
}
