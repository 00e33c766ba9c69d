package timing

import (
	"cmp"
	"math"
	"slices"

	"pappus/timing/band"
)

// hardlyHeard is by how many dB, over all octaves together, the costs of two common
// delays may differ and still count as alike: the one with the smaller residuals is
// taken then, which holds beside the spot too.
const hardlyHeard = 0.1

// sameStep is the share of a step by which a common delay must make the worst residual
// smaller to be worth it.
const sameStep = 1e-3

// roundingStride takes every third of the response's frequencies to judge rounding by:
// ten to the octave, as many as a coverage slice has, and a moved spot stays cheap.
const roundingStride = 3

// rounder finds what rounding the delays of groups of drivers costs the sum of their
// direct sound at a spot. The zero value knows of no step.
type rounder struct {
	step      float64        // s, of the processor
	frequency []float64      // Hz, octave after octave
	end       []int          // of each octave that the processor's rate carries, in frequency
	octaves   int            // all, those that are not carried too
	mount     [][]complex128 // [mount][frequency], without delays and gains
}

// rounder returns the rounder for the spot that was heard last.
func (p *Planner) rounder() rounder {
	x := p.array.Processor
	octaves := band.Octaves()
	r := rounder{step: x.Step, octaves: len(octaves)}
	var index []int
	for _, centre := range octaves {
		low, high := band.Edges(centre, 1)
		if high > x.Rate/2 {
			break
		}
		from, to := indexRange(p.medium.Frequency, low, high)
		for i := from; i < to; i += roundingStride {
			index, r.frequency = append(index, i), append(r.frequency, p.medium.Frequency[i])
		}
		r.end = append(r.end, len(index))
	}
	mounts := len(p.array.Mounts)
	all := make([]complex128, mounts*len(index))
	for m := range mounts {
		row := all[m*len(index) : (m+1)*len(index)]
		for i, f := range index {
			row[i] = p.spot.row(m)[f]
		}
		r.mount = append(r.mount, row)
	}
	return r
}

// fields returns what each group gives, its drivers with these gains and no delays.
func (r *rounder) fields(groups [][]int, gain []float64) [][]complex128 {
	out := make([][]complex128, len(groups))
	for g, mounts := range groups {
		out[g] = make([]complex128, len(r.frequency))
		for _, m := range mounts {
			by := complex(gain[m], 0)
			for i, v := range r.mount[m] {
				out[g][i] += by * v
			}
		}
	}
	return out
}

// common returns the delay in s, from 0 to less than the step, that all groups get on
// top of theirs so that rounding them to the step costs least: in dB over all octaves
// that the rate carries, those in which it happens to help not counted.
//
// What all have in common changes nothing at the spot, so only which groups are
// rounded up counts, and those are the ones with the most left over the step below:
// there are as many ways as groups. For each the delay is taken that has the
// residuals reach as far up as down. No way is taken whose worst residual is larger
// than that without a common delay.
func (r *rounder) common(field [][]complex128, delay []float64) float64 {
	if !(r.step > 0) || len(delay) == 0 {
		return 0
	}
	over, order := make([]float64, len(delay)), make([]int, len(delay))
	without, upWithout := 0.0, 0
	for c := range over {
		over[c], order[c] = delay[c]-r.step*math.Floor(delay[c]/r.step), c
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
func (r *rounder) costs(field [][]complex128, delay, over []float64, order []int) []float64 {
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

// sum returns the sum of the groups with delays in s.
func (r *rounder) sum(field [][]complex128, delay []float64) []complex128 {
	out := make([]complex128, len(r.frequency))
	for g, row := range field {
		for f, hz := range r.frequency {
			out[f] += row[f] * turn(hz, delay[g])
		}
	}
	return out
}

// losses returns by how many dB each octave of the sum is weaker with the delays set
// than with the exact ones; NaN for those that the rate does not carry.
func (r *rounder) losses(field [][]complex128, exact, set []float64) []float64 {
	a, b := r.sum(field, exact), r.sum(field, set)
	out := make([]float64, r.octaves)
	for octave := range out {
		if out[octave] = math.NaN(); octave < len(r.end) {
			out[octave] = r.loss(a, b, octave)
		}
	}
	return out
}

// loss returns by how many dB the sum rounded has less energy than the exact one in an
// octave.
func (r *rounder) loss(exact, rounded []complex128, octave int) float64 {
	from, to := 0, r.end[octave]
	if octave > 0 {
		from = r.end[octave-1]
	}
	return 10 * math.Log10(meanEnergy(exact[from:to])/meanEnergy(rounded[from:to]))
}
