package wiring

import (
	"cmp"
	"slices"
)

// unequal returns the ways of stringing n drivers with exactly two lengths of
// string, from the lowest load to the highest.
func unequal(n int) []Arrangement {
	var out []Arrangement
	for long := 2; long < n; long++ {
		for short := 1; short < long; short++ {
			for count := 1; count*long < n; count++ {
				if left := n - count*long; left%short == 0 {
					out = append(out, Arrangement{{long, count}, {short, left / short}})
				}
			}
		}
	}
	slices.SortFunc(out, func(a, b Arrangement) int {
		return cmp.Or(compareLoad(a, b), cmp.Compare(a[0].Series, b[0].Series), cmp.Compare(a[1].Series, b[1].Series))
	})
	return out
}

// compareLoad compares two loads exactly, in whole numbers: the sums of
// parallel/series, brought to a common denominator.
func compareLoad(a, b Arrangement) int {
	top := func(x Arrangement) int { return x[0].Parallel*x[1].Series + x[1].Parallel*x[0].Series }
	low := func(x Arrangement) int { return x[0].Series * x[1].Series }
	return cmp.Compare(top(b)*low(a), top(a)*low(b))
}
