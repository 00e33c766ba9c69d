// Package wiring strings equal drivers together so that the amplifier sees a load that it
// may drive: drivers in series as strings, strings in parallel as a bank (Ohm's and
// Kirchhoff's laws).
//
// That the load is judged by the direct current resistance rather than by the nominal
// impedance is common practice and on the safe side: the impedance of a driver is hardly
// ever lower than its resistance. Where a measured table shows that it is, the table rules.
// A load under the amplifier's minimum can overheat and destroy it.
//
// Where all strings are alike, every driver carries the same current, so the power divides
// evenly; in unequal strings the shorter ones get more. One driver that fails open silences
// its string; one that fails short loads the rest of it.
package wiring

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"pappus/layout/prose"
)

// ErrLoad tells that the amplifier may not drive a load.
var ErrLoad = errors.New("load below the amplifier's minimum")

// rounding is how far under the minimum a load may be by rounding alone.
const rounding = 1e-12 // free: far more than rounding, far less than a meter sees

// Load gives the load in ohm of a bank of equal drivers of ohm each: series
// drivers in a string, parallel strings.
func Load(series, parallel int, ohm float64) float64 {
	return float64(series) * ohm / float64(parallel)
}

// Best gives the wiring of n equal drivers, all strings alike, whose load is the
// lowest that is not under minLoadOhm at any frequency: the one that draws the
// most power that the amplifier may give. leastOhm is the lowest load that one
// driver makes of itself, its direct current resistance or a dip below it. load
// is the nominal load in ohm.
//
// Where no wiring reaches the minimum, ok is false and the one with the highest
// load is given, all in one string. Without drivers all is zero and ok false.
func Best(n int, nominalOhm, leastOhm, minLoadOhm float64) (series, parallel int, load float64, ok bool) {
	if n < 1 {
		return 0, 0, 0, false
	}
	// The load rises with the number in a string, so the first that will do is best.
	for s := 1; s <= n; s++ {
		if n%s == 0 && Load(s, n/s, leastOhm) >= minLoadOhm*(1-rounding) {
			return s, n / s, Load(s, n/s, nominalOhm), true
		}
	}
	return n, 1, Load(n, 1, nominalOhm), false
}

// MostUnequal is the most drivers for which Arrangements looks for unequal
// strings: enough for one channel, and a list that can still be read.
const MostUnequal = 64

// Strings are strings that are alike: Parallel of them, each of Series drivers.
type Strings struct{ Series, Parallel int }

// Arrangement is a way of stringing drivers: all strings in parallel, those of
// the same length together, the longest first. One entry is a bank; with more
// the strings are unequal.
type Arrangement []Strings

// Arrangements returns the ways of stringing n equal drivers with no more than
// two different lengths of string: first those with equal strings, then those with
// unequal ones, each from the lowest load to the highest. Two lengths are always enough to
// use every driver, and with more the power would differ even further from one driver to
// the next. Above MostUnequal drivers only equal strings are given; below 1 none.
func Arrangements(n int) []Arrangement {
	var equal, unequal []Arrangement
	for long := 1; long <= n; long++ {
		if n%long == 0 {
			equal = append(equal, Arrangement{{long, n / long}})
		}
		for short := 1; short < long && n <= MostUnequal; short++ {
			for count := 1; count*long < n; count++ {
				if left := n - count*long; left%short == 0 {
					unequal = append(unequal, Arrangement{{long, count}, {short, left / short}})
				}
			}
		}
	}
	slices.SortFunc(unequal, func(a, b Arrangement) int {
		return cmp.Or(compareLoad(a, b), cmp.Compare(a[0].Series, b[0].Series), cmp.Compare(a[1].Series, b[1].Series))
	})
	return append(equal, unequal...)
}

// compareLoad compares the loads of two lengths of string each, exactly, in whole numbers:
// the sums of parallel/series, brought to a common denominator.
func compareLoad(a, b Arrangement) int {
	top := func(x Arrangement) int { return x[0].Parallel*x[1].Series + x[1].Parallel*x[0].Series }
	low := func(x Arrangement) int { return x[0].Series * x[1].Series }
	return cmp.Compare(top(b)*low(a), top(a)*low(b))
}

// IsEqual tells whether all strings have the same length.
func (a Arrangement) IsEqual() bool { return len(a) <= 1 }

// Lengths returns the number of drivers in each string, the longest first.
func (a Arrangement) Lengths() []int {
	var out []int
	for _, s := range a {
		out = append(out, slices.Repeat([]int{s.Series}, s.Parallel)...)
	}
	return out
}

// Load returns the load in ohm of drivers of ohm each, nominal or direct
// current, without the wire.
func (a Arrangement) Load(ohm float64) float64 {
	siemens := 0.0 // of drivers of 1 ohm
	for _, s := range a {
		siemens += float64(s.Parallel) / float64(s.Series)
	}
	return ohm / siemens
}

// Check returns an error that wraps ErrLoad and gives the reason where the load
// of drivers of ohm each is below the least that the amplifier may see.
func (a Arrangement) Check(ohm, minimumOhm float64) error {
	if load := a.Load(ohm); load < minimumOhm*(1-rounding) {
		return prose.Errorf("%w: %s of %.3g ohm each load it with %.3g ohm, its minimum is %.3g ohm; it can overheat and fail",
			ErrLoad, a, ohm, load, minimumOhm)
	}
	return nil
}

// String names the arrangement, such as "6 strings of 4" or "2 strings of 3 and
// 1 string of 2 (unequal)".
func (a Arrangement) String() string {
	part := make([]string, len(a))
	for i, s := range a {
		part[i] = fmt.Sprintf("%s of %d", prose.Count(s.Parallel, "string", "strings"), s.Series)
	}
	name := prose.Each(part)
	if !a.IsEqual() {
		name += " (unequal)"
	}
	return name
}
