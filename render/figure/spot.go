package figure

import (
	"fmt"

	"pappus/timing"
)

// spotText says where the spot is, in m from the centre of the body.
func spotText(p *timing.Plan) string {
	s := p.Array.Spot
	return fmt.Sprintf("listening spot %s, %s and %s the body's centre",
		side(s.X, "in front", "behind"), side(s.Y, "to the left", "to the right"), side(s.Z, "above", "below"))
}

func side(v float64, plus, minus string) string {
	if v < 0 {
		return fmt.Sprintf("%.2f m %s", -v, minus)
	}
	return fmt.Sprintf("%.2f m %s", v, plus)
}

func nameOf(p *timing.Plan) string {
	if p.Array.Name == "" {
		return "Array"
	}
	return p.Array.Name
}
