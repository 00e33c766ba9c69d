package timing

import (
	"cmp"
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout"
	"pappus/timing/band"
)

// thinned is the drivers' direct sound at a spot at ten frequencies to the octave, as many as
// a coverage slice has: enough for the mean energy of an octave, and a moved spot stays
// cheap.
type thinned struct {
	frequency []float64      // Hz, octave after octave
	end       []int          // of each octave, in frequency
	mount     [][]complex128 // [mount][frequency], without delays and gains
}

// thin takes every third frequency of the octaves round exact centres in Hz.
func (h *pressures) thin(octaves []float64) thinned {
	const stride = 3
	t := thinned{mount: make([][]complex128, len(h.direct)/len(h.frequency))}
	var index []int
	for _, centre := range octaves {
		low, high := band.Edges(centre, 1)
		from, to := band.Range(h.frequency, low, high)
		for i := from; i < to; i += stride {
			index, t.frequency = append(index, i), append(t.frequency, h.frequency[i])
		}
		t.end = append(t.end, len(index))
	}
	all := make([]complex128, len(t.mount)*len(index))
	for m := range t.mount {
		t.mount[m] = all[m*len(index) : (m+1)*len(index)]
		row := h.row(h.direct, m)
		for i, f := range index {
			t.mount[m][i] = row[f]
		}
	}
	return t
}

// octave returns the values of an octave.
func octave[T any](t *thinned, values []T, b int) []T {
	from := 0
	if b > 0 {
		from = t.end[b-1]
	}
	return values[from:t.end[b]]
}

// fields returns what each group of drivers gives, with its gain and no delays; gain nil:
// all as loud.
func (t *thinned) fields(groups [][]int, gain []float64) [][]complex128 {
	out := make([][]complex128, len(groups))
	for g, mounts := range groups {
		out[g] = make([]complex128, len(t.frequency))
		for _, m := range mounts {
			for i, v := range t.mount[m] {
				out[g][i] += v
			}
		}
		if gain != nil {
			for i := range out[g] {
				out[g][i] *= complex(gain[g], 0)
			}
		}
	}
	return out
}

// sum returns the sum of fields with delays in s.
func (t *thinned) sum(field [][]complex128, delay []float64) []complex128 {
	out := make([]complex128, len(t.frequency))
	for g, row := range field {
		for f, hz := range t.frequency {
			out[f] += row[f] * turn(hz, delay[g])
		}
	}
	return out
}

// loss returns by how many dB one sum has less energy than another in an octave.
func (t *thinned) loss(most, least []complex128, b int) float64 {
	return 10 * math.Log10(meanEnergy(octave(t, most, b))/meanEnergy(octave(t, least, b)))
}

// inStep returns the sum of all drivers' magnitudes, all as loud.
func (t *thinned) inStep() []complex128 {
	out := make([]complex128, len(t.frequency))
	for _, row := range t.mount {
		for i, v := range row {
			out[i] += complex(cmplx.Abs(v), 0)
		}
	}
	return out
}

// Rounding is what the processor's step makes of the delays: by how much they are off,
// and what that costs the direct sound at the spot.
type Rounding struct {
	Worst  float64   // s, the greatest difference of any channel between what is set and Exact
	Common float64   // s, what all delays have on top so that rounding costs least
	Band   []float64 // Hz, exact octave centres
	// Loss is by how many dB each octave of the array's sum gets weaker; below 0 where
	// rounding happens to help. NaN for an octave that does not lie below half the
	// processor's rate.
	Loss []float64
}

// rounder finds what rounding the delays of groups of drivers to a processor's step costs
// the sum of their direct sound at a spot.
type rounder struct {
	thinned         // the octaves that the processor's rate carries
	step    float64 // s; 0: any delay can be set
}

func (h *pressures) rounder(x layout.Processor) rounder {
	carried := slices.DeleteFunc(band.Octaves(), func(centre float64) bool {
		_, high := band.Edges(centre, 1)
		return high > x.Rate/2
	})
	return rounder{h.thin(carried), x.Step}
}

// settle turns the channels' delays, as they were computed, into those that the processor
// can be set to: it adds what all wait for, a woofer and what makes rounding cheap, and
// rounds to the processor's step. From here on a channel has this one delay. A delay set by
// hand stays as it is, but for what waits for the woofer.
func (r rounder) settle(channels []Channel, gain []float64, wait float64) Rounding {
	exact, set := make([]float64, len(channels)), make([]float64, len(channels))
	for i, c := range channels {
		exact[i] = c.Delay + wait
	}
	out := Rounding{Band: band.Octaves()}
	field := r.fields(mountsOf(channels), gain)
	if !slices.ContainsFunc(channels, Channel.isByHand) {
		out.Common = r.common(field, exact)
	}
	for i := range channels {
		c := &channels[i]
		c.Exact = exact[i] + out.Common
		if c.Delay = c.Exact; !c.isByHand() {
			c.Delay = settable(c.Exact, r.step)
		}
		exact[i], set[i] = c.Exact, c.Delay
		out.Worst = max(out.Worst, math.Abs(c.Delay-c.Exact))
	}
	a, b := r.sum(field, exact), r.sum(field, set)
	for octave := range out.Band {
		loss := math.NaN()
		if octave < len(r.end) {
			loss = r.loss(a, b, octave)
		}
		out.Loss = append(out.Loss, loss)
	}
	return out
}

// settable returns the delay in s nearest to one that a processor with a step can be set to.
func settable(delay, step float64) float64 {
	if !(step > 0) {
		return delay
	}
	return math.Round(delay/step) * step
}

// Settable returns the delay in s nearest to one that the processor can be set to.
func (s *Spot) Settable(delay float64) float64 { return settable(delay, s.Array.Processor.Step) }

// hardlyHeard is by how many dB, over all octaves together, the costs of two common
// delays may differ and still count as alike: the one with the smaller residuals is
// taken then, which holds beside the spot too.
const hardlyHeard = 0.1

// sameStep is the share of a step by which a common delay must make the worst residual
// smaller to be worth it.
const sameStep = 1e-3

// common returns the delay in s, from 0 to less than the step, that all groups get on
// top of theirs so that rounding them to the step costs least: in dB over all octaves
// that the rate carries, those in which it happens to help not counted.
//
// What all have in common changes nothing at the spot, so only which groups are
// rounded up counts, and those are the ones with the most left over the step below:
// there are as many ways as groups. For each the delay is taken that has the
// residuals reach as far up as down. No way is taken whose worst residual is larger
// than that without a common delay.
func (r rounder) common(field [][]complex128, delay []float64) float64 {
	if !(r.step > 0) || len(delay) == 0 {
		return 0
	}
	over, order := make([]float64, len(delay)), all(len(delay))
	without, upWithout := 0.0, 0
	for c, d := range delay {
		over[c] = d - r.step*math.Floor(d/r.step)
		without = max(without, min(over[c], r.step-over[c]))
		if over[c] >= r.step/2 {
			upWithout++
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(over[a], over[b]) })
	cost := r.costs(field, delay, over, order)
	least := math.Inf(1)
	for ups := range cost {
		if _, most := centred(over, order, ups, r.step); most > without {
			cost[ups] = math.Inf(1)
		}
		least = min(least, cost[ups])
	}
	best, worst := 0.0, math.Inf(1)
	if cost[upWithout%len(cost)] <= least+hardlyHeard {
		worst = without - sameStep*r.step // else nothing in common does as well
	}
	for ups, c := range cost {
		if common, most := centred(over, order, ups, r.step); c <= least+hardlyHeard && most < worst {
			best, worst = common, most
		}
	}
	return best
}

// centred returns the common delay, from 0 to less than step, with which the last
// ups groups of an order of rising rests over the step are rounded up and the
// others down, all by no more than most.
func centred(over []float64, order []int, ups int, step float64) (common, most float64) {
	n := len(order)
	first, last := over[order[0]], over[order[n-1]]
	if ups > 0 {
		first, last = over[order[n-ups]], over[order[n-ups-1]]+step
	}
	middle := (first + last) / 2
	return step*math.Ceil(middle/step) - middle, (last - first) / 2
}

// costs returns what it costs the sum, in dB over all octaves that the rate carries, to
// round the last 0, 1, 2, … groups of an order of rising rests over the step up and the
// others down.
func (r rounder) costs(field [][]complex128, delay, over []float64, order []int) []float64 {
	exact := r.sum(field, delay)
	rounded, part := make([]complex128, len(r.frequency)), make([][]complex128, len(delay))
	for g, row := range field {
		part[g] = make([]complex128, len(row))
		for f, hz := range r.frequency {
			part[g][f] = row[f] * turn(hz, delay[g]-over[g])
			rounded[f] += part[g][f]
		}
	}
	up := make([]complex128, len(r.frequency))
	for f, hz := range r.frequency {
		up[f] = turn(hz, r.step) - 1
	}
	out := make([]float64, len(order))
	for ups := range out {
		for b := range r.end {
			if loss := r.loss(exact, rounded, b); loss > 0 {
				out[ups] += loss
			}
		}
		for f, v := range part[order[len(order)-1-ups]] {
			rounded[f] += v * up[f]
		}
	}
	return out
}
