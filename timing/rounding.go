package timing

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout"
	"pappus/timing/band"
)

// hardlyHeard is by how many dB, over all octaves together, the costs of two common
// delays may differ and still count as alike: the one with the smaller residuals is
// taken then, which holds beside the spot too.
const hardlyHeard = 0.1

// sameStep is the share of a step by which a common delay must make the worst residual
// smaller to be worth it.
const sameStep = 1e-3

// roundingCount is how many frequencies an octave's energy is the mean of.
const roundingCount = 12

// commonDelay returns the delay in s, from 0 to less than the processor's step,
// that all channels get on top of theirs so that rounding them to the step costs
// the sum at the spot least: in dB over all octaves that the rate carries, those in
// which it happens to help not counted. wait is what they all wait for already.
//
// What all have in common changes nothing at the spot, so only which channels are
// rounded up counts, and those are the ones with the most left over the step below:
// there are as many ways as channels. For each the delay is taken that has the
// residuals reach as far up as down. No way is taken whose worst residual is larger
// than that without a common delay, and none at all where a delay is set by hand:
// that is the one to set.
func (p *Plan) commonDelay(wait float64) float64 {
	step := p.Array.Processor.Step
	byHand := slices.ContainsFunc(p.Array.Channels, func(c layout.Channel) bool { return !math.IsNaN(c.Delay) })
	if !(step > 0) || len(p.Channels) == 0 || byHand {
		return 0
	}
	over, order := make([]float64, len(p.Channels)), make([]int, len(p.Channels))
	without, upWithout := 0.0, 0
	for c := range over {
		delay := p.Channels[c].Delay + wait
		over[c], order[c] = delay-step*math.Floor(delay/step), c
		without = max(without, min(over[c], step-over[c]))
		if over[c] >= step/2 {
			upWithout++
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(over[a], over[b]) })
	cost := p.roundingCosts(over, order)
	least := math.Inf(1)
	for ups := range cost {
		if _, most := centred(over, order, ups, step); most > without {
			cost[ups] = math.Inf(1)
		}
		least = min(least, cost[ups])
	}
	best, worst := 0.0, math.Inf(1)
	if cost[upWithout%len(cost)] <= least+hardlyHeard {
		worst = without - sameStep*step // else nothing in common does as well
	}
	for ups, c := range cost {
		if common, most := centred(over, order, ups, step); c <= least+hardlyHeard && most < worst {
			best, worst = common, most
		}
	}
	return best
}

// centred returns the common delay, from 0 to less than step, with which the last
// ups channels of an order of rising rests over the step are rounded up and the
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

// roundingCosts returns what it costs the sum at the spot, in dB over all octaves
// that the rate carries, to round the last 0, 1, 2, … channels of an order of rising
// rests over the step up and the others down.
func (p *Plan) roundingCosts(over []float64, order []int) []float64 {
	octaves := p.carried()
	frequency := band.Frequencies(octaves, 1, roundingCount)
	field := p.channelFields(frequency)
	exact, rounded := make([]complex128, len(frequency)), make([]complex128, len(frequency))
	for c, row := range field {
		for f, hz := range frequency {
			exact[f] += row[f]
			row[f] *= turn(hz, -over[c])
			rounded[f] += row[f]
		}
	}
	out := make([]float64, len(order))
	for ups := range out {
		for b := range octaves {
			if loss := octaveLoss(exact, rounded, b); loss > 0 {
				out[ups] += loss
			}
		}
		next := field[order[len(order)-1-ups]]
		for f, hz := range frequency {
			rounded[f] += next[f] * (turn(hz, p.Array.Processor.Step) - 1)
		}
	}
	return out
}

// carried returns the exact centres in Hz of the octaves that lie below half the
// processor's rate.
func (p *Plan) carried() []float64 {
	var out []float64
	for _, centre := range band.Octaves() {
		if _, high := band.Edges(centre, 1); high <= p.Array.Processor.Rate/2 {
			out = append(out, centre)
		}
	}
	return out
}

// channelFields returns what each channel with its delay gives at the spot,
// [channel][frequency].
func (p *Plan) channelFields(frequency []float64) [][]complex128 {
	out := make([][]complex128, len(p.Channels))
	for c, strings := range p.StringTransfers(Aligned, frequency) {
		out[c] = make([]complex128, len(frequency))
		for _, row := range strings {
			for f, v := range row {
				out[c][f] += v
			}
		}
	}
	return out
}

// Rounding is what the processor's step costs at the spot.
type Rounding struct {
	Worst  float64   // s, the greatest residual of any channel of the array, either way
	Common float64   // s, what all delays have on top so that it costs least
	Band   []float64 // Hz, exact octave centres
	// Loss is by how many dB each octave of the array's sum gets weaker; below 0 where
	// rounding happens to help. NaN for an octave that does not lie below half the
	// processor's rate.
	Loss []float64
}

// RoundingCost returns what setting the delays to the processor's step costs. The
// rows are those of Processor for the same plan.
func RoundingCost(p *Plan, rows []ProcessorRow) Rounding {
	octaves := band.Octaves()
	frequency := band.Frequencies(octaves, 1, roundingCount)
	set := *p
	set.Arrivals = append([]Arrival(nil), p.Arrivals...)
	out := Rounding{Band: octaves, Loss: make([]float64, len(octaves))}
	for c := range p.Channels {
		out.Worst, out.Common = max(out.Worst, math.Abs(rows[c].Residual)), rows[c].Common
	}
	for m := range set.Arrivals {
		set.Arrivals[m].Delay += rows[set.Arrivals[m].Channel].Residual
	}
	exact, rounded := p.Transfer(nil, Aligned, frequency), set.Transfer(nil, Aligned, frequency)
	carried := len(p.carried()) // the first ones
	for b := range octaves {
		out.Loss[b] = octaveLoss(exact, rounded, b)
		if b >= carried {
			out.Loss[b] = math.NaN()
		}
	}
	return out
}

// octaveLoss returns by how many dB the sum rounded has less energy than the exact
// one in an octave of roundingCount frequencies.
func octaveLoss(exact, rounded []complex128, octave int) float64 {
	from, to := octave*roundingCount, (octave+1)*roundingCount
	return 10 * math.Log10(meanEnergy(exact[from:to])/meanEnergy(rounded[from:to]))
}
