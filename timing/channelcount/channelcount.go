package channelcount

import (
	"fmt"
	"math"

	"pappus/timing/split"
)

// Most is the most channels that Curve looks at: more than any amplifier here
// has, and each is a search of its own.
const Most = 64

// Share is the least part of what the second channel gains that a further one
// must gain to pay.
const Share = 0.1

// Curve returns the smear in s that is left with 1, 2, … channels, in that
// order, for arrivals in s and weights as split.Groups takes them. It ends with
// most channels, with one for each driver, or at Most. It is nil without
// drivers, and panics where the lengths differ.
func Curve(arrival, weight []float64, most int) []float64 {
	if len(arrival) != len(weight) {
		panic("channelcount: lengths differ")
	}
	count := min(most, len(arrival), Most)
	if count < 1 {
		return nil
	}
	smear := make([]float64, count)
	for k := range smear {
		groups, _ := split.Groups(arrival, weight, k+1)
		smear[k] = Smear(groups, arrival, weight)
	}
	return smear
}

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

// Knee returns the number of channels where more stop paying: the smallest from
// which on no further channel lowers the smear by as much as a tenth of what the
// second channel does. It is 1 where the second gains nothing that is worth a
// nanosecond, and 0 for an empty curve.
func Knee(smear []float64) int {
	if len(smear) < 2 || smear[0]-smear[1] < 1e-9 {
		return min(1, len(smear))
	}
	least := Share * (smear[0] - smear[1])
	for k := len(smear) - 1; k > 1; k-- {
		if smear[k-1]-smear[k] >= least {
			return k + 1
		}
	}
	return 2
}

// Sentence says in plain words where more channels stop paying.
func Sentence(smear []float64) string {
	knee := Knee(smear)
	us := func(s float64) float64 { return s * 1e6 }
	switch {
	case knee == 0:
		return "There are no drivers to split."
	case knee == 1 && len(smear) == 1:
		return fmt.Sprintf("One channel leaves a smear of %.3g us; more were not looked at.", us(smear[0]))
	case knee == 1:
		return fmt.Sprintf("One channel is enough: it leaves a smear of %.3g us, and a second lowers it by no more than a nanosecond.", us(smear[0]))
	case knee == len(smear):
		return fmt.Sprintf("Every channel up to %d pays: they lower the smear from %.3g us to %.3g us.", knee, us(smear[0]), us(smear[knee-1]))
	}
	return fmt.Sprintf("More than %d channels hardly pay: %d lower the smear from %.3g us to %.3g us, and each further one gains less than %.2g us, a tenth of what the second channel does.",
		knee, knee, us(smear[0]), us(smear[knee-1]), us(Share*(smear[0]-smear[1])))
}
