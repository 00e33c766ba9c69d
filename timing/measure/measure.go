package measure

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
)

// OnsetLoss is the summing loss, in dB, that marks the comb onset.
const OnsetLoss = 3

// Smear returns the weighted RMS spread of arrivals in s, in s:
//
//	sqrt( sum w (t - mean)^2 / sum w ),  mean = sum w t / sum w
//
// The weights are squared pressures, not negative. It is 0 where no weight is
// above 0. Smear panics where the lengths differ.
func Smear(arrival, weight []float64) float64 {
	if len(arrival) != len(weight) {
		panic("measure: lengths differ")
	}
	var total, mean float64
	for i, w := range weight {
		total += w
		mean += w * arrival[i]
	}
	if total <= 0 {
		return 0
	}
	mean /= total
	var square float64
	for i, w := range weight {
		d := arrival[i] - mean
		square += w * d * d
	}
	return math.Sqrt(square / total)
}

// Spread returns the latest arrival less the earliest; 0 for none.
func Spread(arrival []float64) float64 {
	if len(arrival) == 0 {
		return 0
	}
	return slices.Max(arrival) - slices.Min(arrival)
}

// SummingLoss returns by how many dB a sum falls short of the sum of its parts'
// magnitudes: -20 log10(sum/parts), 0 or above; +Inf for a sum of 0. sum and
// parts are magnitudes.
func SummingLoss(sum, parts float64) float64 {
	return 20 * math.Log10(parts/sum)
}

// CombOnset returns the lowest frequency, in Hz, at which the summing loss
// reaches OnsetLoss, read between the given frequencies on a logarithmic axis;
// the first frequency where the loss is there already, +Inf where it is never
// reached. sum and parts are the magnitude of the summed pressures and the sum
// of the magnitudes at each frequency. CombOnset panics where lengths differ.
func CombOnset(frequency, sum, parts []float64) float64 {
	if len(sum) != len(frequency) || len(parts) != len(frequency) {
		panic("measure: lengths differ")
	}
	last := 0.0
	for i, f := range frequency {
		loss := SummingLoss(sum[i], parts[i])
		if loss >= OnsetLoss {
			if i == 0 || math.IsInf(loss, 1) {
				return f
			}
			share := (OnsetLoss - last) / (loss - last)
			below := frequency[i-1]
			return below * math.Pow(f/below, share)
		}
		last = loss
	}
	return math.Inf(1)
}

// Decibels returns 10 log10 of an energy.
func Decibels(energy float64) float64 { return 10 * math.Log10(energy) }

// Deviation returns the standard deviation of levels in dB round their mean in
// dB: how uneven they are. Values that are not finite are left out; 0 where
// none is left.
func Deviation(level []float64) float64 {
	known := slices.DeleteFunc(slices.Clone(level), func(v float64) bool { return math.IsNaN(v) || math.IsInf(v, 0) })
	if len(known) == 0 {
		return 0
	}
	return stat.PopStdDev(known, nil)
}
