package figure

import (
	"pappus/render/tape"
	"pappus/timing"
)

// spotText says where the spot is.
func spotText(p *timing.Plan) string {
	return "listening spot " + tape.Of(p.Array, p.Array.Spot).Full()
}

func nameOf(p *timing.Plan) string {
	if p.Array.Name == "" {
		return "Array"
	}
	return p.Array.Name
}
