package wiring

import (
	"fmt"
	"pappus/layout/prose"
)

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
// two different lengths of string: first those with equal strings, from the
// lowest load to the highest, then those with unequal ones, from the lowest
// load to the highest. Two lengths are always enough to use every driver, and
// with more the power would differ even further from one driver to the next.
//
// Above MostUnequal drivers only equal strings are given; below 1 none.
func Arrangements(n int) []Arrangement {
	var out []Arrangement
	for s := 1; s <= n; s++ {
		if n%s == 0 {
			out = append(out, Arrangement{{s, n / s}})
		}
	}
	if n > MostUnequal {
		return out
	}
	return append(out, unequal(n)...)
}

// Drivers returns how many drivers are strung.
func (a Arrangement) Drivers() int {
	n := 0
	for _, s := range a {
		n += s.Series * s.Parallel
	}
	return n
}

// IsEqual tells whether all strings have the same length.
func (a Arrangement) IsEqual() bool { return len(a) <= 1 }

// Lengths returns the number of drivers in each string, the longest first.
func (a Arrangement) Lengths() []int {
	var out []int
	for _, s := range a {
		for range s.Parallel {
			out = append(out, s.Series)
		}
	}
	return out
}

// Load returns the load in ohm of drivers of ohm each, nominal or direct
// current, without the wire.
func (a Arrangement) Load(ohm float64) float64 { return ohm / a.admittance() }

// admittance returns the sum of 1/length over the strings.
func (a Arrangement) admittance() float64 {
	y := 0.0
	for _, s := range a {
		y += float64(s.Parallel) / float64(s.Series)
	}
	return y
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
