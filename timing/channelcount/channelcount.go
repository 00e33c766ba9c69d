package channelcount

import (
	"fmt"
	"math"
	"slices"

	"pappus/layout/prose"
)

// Share is the least part of what the best channel gains that a further one must
// gain to pay for the smear, and of the comb onset that it must raise it by.
const Share = 0.1

// Smear returns the smear in s that is left where each group of drivers, given
// as indices into arrival, shares the delay that brings its weighted mean
// arrival into step with the others'. Drivers in no group do not count. It is 0
// where no weight is above 0.
func Smear(groups [][]int, arrival, weight []float64) float64 {
	var square, total float64
	for _, g := range groups {
		var w, mean float64
		for _, i := range g {
			w += weight[i]
			mean += weight[i] * (arrival[i] - arrival[g[0]])
		}
		if w <= 0 {
			continue
		}
		mean = mean/w + arrival[g[0]]
		for _, i := range g {
			off := arrival[i] - mean
			square += weight[i] * off * off
		}
		total += w
	}
	if total <= 0 {
		return 0
	}
	return math.Sqrt(square / total)
}

// Knee returns the number of channels where more stop paying for the smear: the
// smallest from which on no further channel lowers it by as much as a tenth of what
// the best channel does, the one that lowers it most. A channel lowers the smear by
// how much less it leaves than the best of fewer. Knee is 1 where no channel gains
// a nanosecond, and 0 for an empty curve.
func Knee(smear []float64) int {
	gain := gains(smear)
	best := bestGain(gain)
	if best < 0 || gain[best] < nanosecond {
		return min(1, len(smear))
	}
	for k := len(gain) - 1; k > 0; k-- {
		if gain[k] >= Share*gain[best] {
			return k + 1
		}
	}
	return 1
}

const nanosecond = 1e-9

// gains returns by how much each number of channels leaves less than the best of
// fewer; 0 for the first, and where it leaves no less.
func gains(smear []float64) []float64 {
	out := make([]float64, len(smear))
	least := math.Inf(1)
	for k, s := range smear {
		if k > 0 {
			out[k] = max(0, least-s)
		}
		least = min(least, s)
	}
	return out
}

// bestGain returns the index of the greatest gain, the first of several; -1 where
// there are none.
func bestGain(gain []float64) int {
	best := -1
	for k, g := range gain {
		if best < 0 || g > gain[best] {
			best = k
		}
	}
	return best
}

// OnsetKnee returns the number of channels where more stop paying for the comb
// onset in Hz, +Inf where there is none: the smallest from which on no further
// channel raises it by a tenth of itself over the best of fewer. It is 0 for an
// empty curve.
func OnsetKnee(onset []float64) int {
	knee, highest := min(1, len(onset)), 0.0
	for k, f := range onset {
		if k > 0 && f >= (1+Share)*highest && highest < math.Inf(1) {
			knee = k + 1
		}
		highest = max(highest, f)
	}
	return knee
}

// Sentences says in plain words where more channels stop paying: for the smear in
// s, for the comb onset in Hz, and why the list ends before there is a channel for
// each driver; empty where it does not.
func Sentences(smear, onset []float64, ends string) []string {
	if len(smear) == 0 {
		return []string{"There are no drivers to split."}
	}
	out := []string{smearSentence(smear), onsetSentence(onset)}
	if ends != "" {
		out = append(out, fmt.Sprintf("The list ends at %d: %s.", len(smear), ends))
	}
	return out
}

func smearSentence(smear []float64) string {
	knee := Knee(smear)
	text := func(k int) string { return us(smear[k-1]) }
	switch {
	case len(smear) == 1:
		return fmt.Sprintf("One channel leaves a smear of %s.", text(1))
	case knee == 1:
		return fmt.Sprintf("One channel is enough for the smear: it leaves %s, and no more lower it by a nanosecond.", text(1))
	}
	gain := gains(smear)
	best := bestGain(gain)
	if knee == len(smear) {
		every := !slices.ContainsFunc(gain[1:], func(g float64) bool { return g < Share*gain[best] })
		return fmt.Sprintf("For the smear %s: they lower it from %s to %s.", allPay(knee, every), text(1), text(knee))
	}
	which := "the second channel"
	if best > 1 {
		which = fmt.Sprintf("channel %d", best+1)
	}
	return prose.Sprintf("More than %s hardly pay for the smear: %d lower it from %s to %s, and each further one gains less than %.2g us, a tenth of what %s does.",
		prose.Count(knee, "channel", "channels"), knee, text(1), text(knee), 1e6*Share*gain[best], which)
}

// allPay says that the last of some channels still pays, and whether every one did.
func allPay(last int, every bool) string {
	if every {
		return fmt.Sprintf("every channel up to %d pays", last)
	}
	return fmt.Sprintf("channels go on to pay up to the last, %d", last)
}

// us writes a time; nothing that is under a hundredth of a microsecond.
func us(s float64) string {
	if s < nanosecond*10 {
		return "0 us"
	}
	return prose.Sprintf("%.3g us", 1e6*s)
}

func onsetSentence(onset []float64) string {
	knee := OnsetKnee(onset)
	first := hertz(onset[0])
	last := "until there is none"
	if f := onset[knee-1]; !math.IsInf(f, 1) {
		last = "to " + hertz(f)
	}
	switch {
	case math.IsInf(onset[0], 1):
		return "There is no comb onset even with one channel."
	case len(onset) == 1:
		return fmt.Sprintf("Its comb onset is at %s.", first)
	case knee == 1:
		return fmt.Sprintf("The comb onset stays: no number of channels raises it by a tenth from %s.", first)
	case knee == len(onset):
		every := true
		for k := range onset {
			every = every && OnsetKnee(onset[:k+1]) == k+1
		}
		return fmt.Sprintf("For the comb onset %s: they raise it from %s %s.", allPay(knee, every), first, last)
	}
	if math.IsInf(onset[knee-1], 1) {
		return fmt.Sprintf("For the comb onset more than %d are of no use: %d raise it from %s until there is none.", knee, knee, first)
	}
	return fmt.Sprintf("For the comb onset more than %d hardly pay: %d raise it from %s %s, and no further one raises it by a tenth.",
		knee, knee, first, last)
}

func hertz(f float64) string {
	if f >= 1000 {
		return fmt.Sprintf("%.1f kHz", f/1000)
	}
	return fmt.Sprintf("%.0f Hz", f)
}
