package timing

import (
	"math"
	"math/cmplx"

	"pappus/timing/channelcount"
	"pappus/timing/measure"
)

// mostCounts is the most channels that the counts go up to.
const mostCounts = 16

// Count is what a number of channels would leave at the spot, with the drivers
// split by arrival and all as loud.
type Count struct {
	Channels  int
	Smear     float64 // s
	CombOnset float64 // Hz, +Inf: none up to the highest reckoned
}

// count fills in what 1, 2, 3 … channels would leave: up to mostCounts, and no
// more than can be wired.
func (p *Planner) count(plan *Plan) {
	time := plan.heard()
	alone := p.alone()
	weight := raised(append([]float64(nil), alone...))
	parts, sum := p.parts(), make([]float64, len(p.medium.Frequency))
	late := make([]float64, len(time)) // arrivals by the path, with the delays
	for k := 1; k <= min(plan.mostChannels(), mostCounts); k++ {
		groups := plan.sort(byArrival, time, weight, k)
		delay := make([]float64, len(groups))
		for g, mounts := range groups {
			delay[g] = -centre(mounts, time, weight)
			for _, m := range mounts {
				late[m] = plan.Arrivals[m].Time + delay[g]
			}
		}
		p.spot.sumGroups(sum, groups, delay, p.medium.Frequency)
		plan.Counts = append(plan.Counts, Count{
			Channels:  k,
			Smear:     measure.Smear(late, alone),
			CombOnset: measure.CombOnset(p.medium.Frequency, sum, parts),
		})
	}
}

// alone returns each driver's squared pressure at the spot, all being as loud; to
// the bit what weights makes of the levels, so that ties are settled alike.
func (p *Planner) alone() []float64 {
	low, high := indexRange(p.medium.Frequency, weightLow, weightHigh)
	w := make([]float64, len(p.array.Mounts))
	for m := range w {
		w[m] = math.Pow(10, 10*math.Log10(p.spot.energy(m, low, high))/10)
	}
	return w
}

// parts returns the sum of the drivers' magnitudes at the spot, all being as loud.
func (p *Planner) parts() []float64 {
	parts := make([]float64, len(p.medium.Frequency))
	for m := range p.array.Mounts {
		for f, v := range p.spot.row(m) {
			parts[f] += cmplx.Abs(v)
		}
	}
	return parts
}

// sumGroups fills dst with the magnitude of the sum over groups of drivers, each
// with its own delay in s.
func (s *spotSums) sumGroups(dst []float64, groups [][]int, delay, frequency []float64) {
	clear(s.sum)
	one := make([]complex128, s.frequencies)
	for g, mounts := range groups {
		clear(one)
		for _, m := range mounts {
			for f, v := range s.row(m) {
				one[f] += v
			}
		}
		for f, v := range one {
			s.sum[f] += v * turn(frequency[f], delay[g])
		}
	}
	for f, v := range s.sum {
		dst[f] = cmplx.Abs(v)
	}
}

// smears returns the smear of each count.
func (plan *Plan) smears() []float64 {
	out := make([]float64, len(plan.Counts))
	for k, c := range plan.Counts {
		out[k] = c.Smear
	}
	return out
}

// Knee returns the number of channels from which on more hardly pay; 0 where
// there are no counts.
func (plan *Plan) Knee() int { return channelcount.Knee(plan.smears()) }

// CountSentence says in plain words where more channels stop paying.
func (plan *Plan) CountSentence() string { return channelcount.Sentence(plan.smears()) }
