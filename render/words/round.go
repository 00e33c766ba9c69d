package words

import (
	"math"

	"pappus/layout/prose"
	"pappus/timing"
)

// Round says what a plan for people all round brings, and at what unevenness.
func Round(r *timing.Round) string {
	if len(r.Height) == 0 {
		return prose.Sprintf("No circle of %.2f m round the body is clear of what stands round it, so nothing is planned for all round.", r.Radius)
	}
	gain, uneven, before := r.Planned.Louder(), r.Planned.Most(), r.Without.Most()
	return prose.Sprintf("All round, %.2f m from the body's axis and at %d heights, these delays give %.1f dB more than all drivers in parallel, mean of 1 to 8 kHz; the level of any 30 degrees is within %.1f dB of its circle's, without delays within %.1f dB.",
		r.Radius, len(r.Height), gain, uneven, before)
}

// OfRound heads the picture of level and evenness all round.
func OfRound(p *timing.Plan) Picture {
	r := p.Seating.Round
	return Picture{Name(p) + ": level and evenness all round",
		prose.Sprintf("circles of %.2f m at %d heights; bars: how far any 30 degrees are off their circle's mean; loud = %g as planned", r.Radius, len(r.Height), math.Round(100*r.Loud)/100)}
}
