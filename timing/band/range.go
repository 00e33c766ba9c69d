package band

import "sort"

// Range returns the indices of the frequencies from low to high, of some that rise: the first
// and the one after the last.
func Range(frequency []float64, low, high float64) (from, to int) {
	return sort.SearchFloat64s(frequency, low), sort.Search(len(frequency), func(i int) bool { return frequency[i] > high })
}
