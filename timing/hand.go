package timing

import (
	"fmt"
	"math"
	"strings"

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
	text := fmt.Sprintf("channel %d is set to %.1f us by hand and is heard %.1f us before the latest channel", c.ID, 1e6*c.Delay, 1e6*short)
	if count > 1 {
		text += fmt.Sprintf("; %d channels are set too short, this one the most", count)
	}
	plan.warn(advice.Finding{Code: "delay_short", Rank: advice.Cost, What: text,
		Cure: fmt.Sprintf("to be in step it needs %.1f us", 1e6*plan.Settable(c.Delay+short))})
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
	var gains []string
	for i, c := range even {
		if math.Abs(c.Gain-plan.Channels[i].Gain) >= 0.05 {
			gains = append(gains, fmt.Sprintf("%.1f for channel %d", c.Gain+0, c.ID)) // no zero is negative
		}
	}
	plan.warn(advice.Finding{Code: "powers_unequal", Rank: advice.Cost,
		What: fmt.Sprintf("each driver of channel %d gets %.3g times the power of one of channel %d, and is %.1f dB louder",
			plan.Channels[high].ID, math.Pow(10, apart/10), plan.Channels[low].ID, apart),
		Cure: "for drivers all as loud set gain_db to " + strings.Join(gains, ", ")})
}

// opposed warns of channels whose polarity is not that of the others.
func (plan *Plan) opposed() {
	var inverted, straight []string
	for _, c := range plan.Channels {
		if c.Invert {
			inverted = append(inverted, fmt.Sprint(c.ID))
		} else {
			straight = append(straight, fmt.Sprint(c.ID))
		}
	}
	if len(inverted) == 0 || len(straight) == 0 {
		return
	}
	which := "channel " + inverted[0] + " is"
	if len(inverted) > 1 {
		which = "channels " + strings.Join(inverted, ", ") + " are"
	}
	plan.warn(advice.Finding{Code: "polarity_opposed", Rank: advice.Cost,
		What: which + " inverted and the others are not, so that in step they cancel",
		Cure: "leave it so only where the drivers are wired the other way round"})
}
