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
	{timing.MiddleSeat, "middle_seat", "for the middle seat alone"},
}

// CasesOf returns the cases that can be heard of a plan: the delays for the middle seat
// alone where there are several seats, and else not.
func CasesOf(p *timing.Spot) []Case {
	cases := slices.Clone(Cases)
	if p.Seating == nil {
		return slices.DeleteFunc(cases, func(c Case) bool { return c.Case == timing.MiddleSeat })
	}
	cases[1].Words = "for all seats"
	return cases
}

// Usual returns the cases that are written as files and played where no others are asked
// for, in their order: without delays, with them, and from an ideal point; where there are
// several seats, for the middle one alone in place of that.
func Usual(p *timing.Spot) []Case {
	cases := CasesOf(p)
	if p.Seating == nil {
		return cases[:3:3]
	}
	return []Case{cases[0], cases[len(cases)-1], cases[1]}
}

// plain returns the cases without their words.
func plain(cases []Case) []timing.Case {
	out := make([]timing.Case, len(cases))
	for i, c := range cases {
		out[i] = c.Case
	}
	return out
}

// caseNamed returns the index of one of some cases; below 0 where it is not among them.
func caseNamed(cases []Case, name string) int {
	return slices.IndexFunc(cases, func(c Case) bool { return c.Name == name })
}

// CaseNamed returns one of some cases by its name, and whether it is among them.
func CaseNamed(cases []Case, name string) (Case, bool) {
	if i := caseNamed(cases, name); i >= 0 {
		return cases[i], true
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
