package preview

import "pappus/timing"

// Case is a way of driving the array, with its words.
type Case struct {
	timing.Case
	Name  string // for file names
	Words string // for people
}

// Cases is every case, in the order in which they are played.
var Cases = []Case{
	{timing.AsBuilt, "as_built", "as built"},
	{timing.Aligned, "aligned", "aligned"},
	{timing.IdealPoint, "point", "ideal point"},
}
