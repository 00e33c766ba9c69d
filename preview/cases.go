package preview

import (
	"slices"

	"pappus/timing"
)

// Case is a way of driving the array, with its words.
type Case struct {
	timing.Case
	Name  string // for file names
	Words string // for people
}

// Cases is every case that can be heard.
var Cases = []Case{
	{timing.AsBuilt, "as_built", "as built"},
	{timing.Aligned, "aligned", "aligned"},
	{timing.IdealPoint, "point", "ideal point"},
	{timing.PerDriver, "per_driver", "a delay for each driver"},
	{timing.StraightLine, "straight_line", "delays by the straight line"},
}

// Written is the cases that are written as files, in the order in which they are
// played.
var Written = Cases[:3:3]

// plain returns the cases without their words.
func plain(cases []Case) []timing.Case {
	out := make([]timing.Case, len(cases))
	for i, c := range cases {
		out[i] = c.Case
	}
	return out
}

// caseNamed returns the index of a case of Cases; below 0 where there is none.
func caseNamed(name string) int {
	return slices.IndexFunc(Cases, func(c Case) bool { return c.Name == name })
}

// CaseNamed returns a case by its name, and whether there is one.
func CaseNamed(name string) (Case, bool) {
	if i := caseNamed(name); i >= 0 {
		return Cases[i], true
	}
	return Case{}, false
}

// NamesOf returns the names of cases.
func NamesOf(cases []Case) []string {
	var names []string
	for _, c := range cases {
		names = append(names, c.Name)
	}
	return names
}
