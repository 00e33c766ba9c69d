package words

import (
	"slices"

	"pappus/timing"
)

// PlansOf lists the plans of designs that are compared.
func PlansOf(designs []timing.Candidate) []*timing.Plan {
	var out []*timing.Plan
	for _, d := range designs {
		out = append(out, d.Plan)
	}
	return out
}

// ModelsDiffer tells whether some of several plans are by another model than the rest.
func ModelsDiffer(plans []*timing.Plan) bool {
	return slices.ContainsFunc(plans, func(p *timing.Plan) bool { return p.Array.Timing.Model != plans[0].Array.Timing.Model })
}

// Compared names a plan among others: with its model where those differ.
func Compared(p *timing.Plan, among []*timing.Plan) string {
	if !ModelsDiffer(among) {
		return Name(p)
	}
	return Name(p) + ", model " + p.Array.Timing.Model
}

// CompareModels says what the columns of models that are compared mean.
const CompareModels = "sphere: a rigid ball stands for the body; body: the body as it is, solved for up to so many Hz, above that the ball; -: not known"

// FromTheBall says where the lengths of a plan begin.
func FromTheBall(p *timing.Plan) string {
	if p.Solved() != nil {
		return "  path begins on the ball that stands for the body, straight at the driver itself:\n" +
			"  so a path can seem the shorter; field is that of the body as it is"
	}
	return "  path and field begin on the ball that stands for the body, straight at the\n" +
		"  driver itself: so a path can seem the shorter"
}
