package timing

import (
	"math"

	"pappus/layout/advice"
)

// farUnequal is by how many dB the drivers of channels laid out by hand may
// differ before it is spoken of: four times the power.
const farUnequal = 6.0

// checkHand warns of channels laid out by hand that work against each other: a
// delay too short to be met by the others, drivers with far unequal power, and
// opposite polarities.
func (plan *Plan) checkHand(time, weight []float64) {
	if len(plan.Array.Channels) == 0 {
		return
	}
	plan.early(time, weight)
	plan.unequal()
	plan.opposed()
}

// early warns of channels that are heard before the latest by more than a step
// of the processor, so that what it sets with the most care is not complained of.
func (plan *Plan) early(time, weight []float64) {
	arrival := make([]float64, len(plan.Channels))
	latest := math.Inf(-1)
	for i, c := range plan.Channels {
		arrival[i] = centre(c.Mounts, time, weight) + c.Delay
		latest = max(latest, arrival[i])
	}
	count, most := 0, 0
	for i := range arrival {
		if latest-arrival[i] > plan.Array.Processor.Step+1e-9 {
			count++
		}
		if arrival[i] < arrival[most] {
			most = i
		}
	}
	if count == 0 {
		return
	}
	c, short := plan.Channels[most], latest-arrival[most]
	plan.warn("delay_short", advice.Cost, DelayShort{c.ID, c.Delay, short, plan.Settable(c.Delay + short), count})
}

// unequal warns where a driver of one channel gets far more power than one of
// another, and says which gains make them alike.
func (plan *Plan) unequal() {
	level := func(c Channel) float64 { return c.Gain - 20*math.Log10(float64(max(c.Series, 1))) }
	low, high := 0, 0
	for i, c := range plan.Channels {
		if level(c) < level(plan.Channels[low]) {
			low = i
		}
		if level(c) > level(plan.Channels[high]) {
			high = i
		}
	}
	apart := level(plan.Channels[high]) - level(plan.Channels[low])
	if apart < farUnequal {
		return
	}
	even := append([]Channel(nil), plan.Channels...)
	trim(even)
	var gains []SetGain
	for i, c := range even {
		if math.Abs(c.Gain-plan.Channels[i].Gain) >= 0.05 {
			gains = append(gains, SetGain{c.ID, c.Gain})
		}
	}
	plan.warn("powers_unequal", advice.Cost, PowersUnequal{plan.Channels[high].ID, plan.Channels[low].ID, apart, gains})
}

// opposed warns of channels whose polarity is not that of the others.
func (plan *Plan) opposed() {
	var inverted []int
	for _, c := range plan.Channels {
		if c.Invert {
			inverted = append(inverted, c.ID)
		}
	}
	if len(inverted) > 0 && len(inverted) < len(plan.Channels) {
		plan.warn("polarity_opposed", advice.Cost, PolarityOpposed{inverted})
	}
}
