// Package advice holds what a builder should know of a design before it is printed,
// wired or switched on: findings, each with how bad it is and what cures it.
//
// Package layout's findings hold their own words: a cure there is a layout that was tried,
// and what it tells of is at hand where it was. Package timing finds codes and figures,
// which package render/words says; both are shown worst first, the same on every screen.
package advice

import (
	"slices"
)

// Rank says how bad a finding is. The worse, the higher.
type Rank int

const (
	Note    Rank = iota // good to know
	Cost                // it works, but something is lost
	Caution             // it can hurt people who are careless with it: hearing
	Misfit              // it cannot be built, wired or set as designed
	Danger              // connected so, it can burn or break
)

var words = [...]string{"note", "cost", "caution", "misfit", "danger"}

// String returns the word that stands in documents.
func (r Rank) String() string {
	if r < Note || r > Danger {
		return "unknown"
	}
	return words[r]
}

// Stops tells whether a design with such a finding should not be built as it is; it is
// what --strict asks.
func (r Rank) Stops() bool { return r >= Misfit }

// Finding is one thing to know.
type Finding struct {
	Code string // what kind it is, stable, in lower case with underscores
	Rank Rank
	What string // what is wrong, with figures and the worst place; one sentence without its full stop
	Cure string // what to do, in the imperative; empty where nothing is to be done
}

// String writes the finding and its cure in one line.
func (f Finding) String() string {
	if f.Cure == "" {
		return f.What
	}
	return f.What + ": " + f.Cure
}

// Sorted returns the findings with the worst first, and those of one rank in the order
// in which they were found.
func Sorted(all []Finding) []Finding {
	out := slices.Clone(all)
	slices.SortStableFunc(out, func(a, b Finding) int { return int(b.Rank - a.Rank) })
	return out
}

// Stopping returns the findings that should stop the builder, worst first.
func Stopping(all []Finding) []Finding {
	return slices.DeleteFunc(Sorted(all), func(f Finding) bool { return !f.Rank.Stops() })
}

// Lines returns what each finding says, in the order given.
func Lines(all []Finding) []string {
	out := make([]string, len(all))
	for i, f := range all {
		out[i] = f.String()
	}
	return out
}
