// Package channelcount says where more channels stop paying, by a rule of this program, not
// of the trade: for the smear, from where on no further channel lowers it by as much as a
// tenth of what the best one does, nearly always the second; for the comb onset, from where
// on none raises it by a tenth, as pitch is heard in ratios. The two differ: a few channels
// take most of the smear away, and more go on to move the comb up.
package channelcount

import (
	"math"
	"slices"
)

// Share is the least part of what the best channel gains that a further one must
// gain to pay for the smear, and of the comb onset that it must raise it by.
const Share = 0.1

// Knee returns the number of channels where more stop paying for the smear: the
// smallest from which on no further channel lowers it by as much as a tenth of what
// the best channel does, the one that lowers it most. A channel lowers the smear by
// how much less it leaves than the best of fewer. Knee is 1 where no channel gains
// a nanosecond, and 0 for an empty curve.
func Knee(smear []float64) int {
	const nanosecond = 1e-9
	gain := gains(smear)
	_, best := Best(smear)
	if best < nanosecond {
		return min(1, len(smear))
	}
	for k := len(gain) - 1; k > 0; k-- {
		if gain[k] >= Share*best {
			return k + 1
		}
	}
	return 1
}

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

// Best returns the number of channels that lowers the smear most, the first of several,
// and by how many s; 0 where there are none.
func Best(smear []float64) (channels int, gain float64) {
	for k, g := range gains(smear) {
		if channels == 0 || g > gain {
			channels, gain = k+1, g
		}
	}
	return channels, gain
}

// EveryPays tells whether each channel after the first lowers the smear by the share that
// it must, so that none up to the last could be left out.
func EveryPays(smear []float64) bool {
	_, best := Best(smear)
	return !slices.ContainsFunc(gains(smear)[min(1, len(smear)):], func(g float64) bool { return g < Share*best })
}

// EveryRaises tells whether each channel raises the comb onset by the share that it must.
func EveryRaises(onset []float64) bool {
	for k := range onset {
		if OnsetKnee(onset[:k+1]) != k+1 {
			return false
		}
	}
	return true
}
