package words

import (
	"fmt"
	"math"

	"pappus/layout/prose"
	"pappus/render/tape"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// RoundNote says what the rows of circles all round are.
const RoundNote = `louder: mean energy on a circle, over that of all drivers in parallel; uneven:
  the 30-degree mean that is furthest from its circle's (ISO 3382-1); without: of
  all drivers in parallel`

// Circle says how high a circle round the body's axis is, at a height in m from the body's
// centre.
func Circle(p *timing.Spot, height float64) string {
	return fmt.Sprintf("%.2f m", math.Round(100*tape.Of(p.Array, r3.Vec{Z: height}).Height)/100+0)
}

// CirclesOver says what the heights of circles count from.
func CirclesOver(p *timing.Spot) string {
	return "above " + tape.Of(p.Array, r3.Vec{}).Over
}

// AllRound says how loud and how even a plan is all round, and what is between even and loud.
func AllRound(p *timing.Spot) []string {
	r := p.Seating.Round
	own := r.Planned.Point(r.Loud)
	gain, off, without := own.Gain, own.Deviation, r.Without.Point(0).Deviation
	louder := lost(gain) + " louder on the mean than"
	switch {
	case math.Abs(gain) <= hardly:
		louder = "as loud on the mean as"
	case gain < 0:
		louder = lost(-gain) + " quieter on the mean than"
	}
	said := []string{fmt.Sprintf("All round, on %s of %.2f m round the body's axis, the delays are %s all drivers in parallel, and no 30-degree mean is more than %s off its circle's; in parallel %s.",
		prose.Count(len(r.Height), "circle", "circles"), r.Radius, louder, lost(off), lost(without))}
	if gain <= hardly && off >= without-hardly {
		said[0] += " They gain nothing: leave them out, or ask for more with loud under [seats]."
	}
	if n := len(r.Front); n > 1 {
		even, loud := r.Front[0], r.Front[n-1]
		said = append(said, prose.Sprintf("From loud = %g to loud = %g the level goes from %s to %s dB, and the deviation from %s to %s.",
			even.Loud, loud.Loud, difference(even.Gain), difference(loud.Gain), lost(even.Deviation), lost(loud.Deviation)))
	}
	return said
}

// difference writes a difference with its sign.
func difference(db float64) string {
	text := prose.Fixed(db, 1)
	if text != "0.0" && db > 0 {
		return "+" + text
	}
	return text
}

// OfRound heads the picture of a plan all round.
func OfRound(p *timing.Plan) Picture {
	return Picture{Name(p) + ": all round, for nobody in particular",
		fmt.Sprintf("circles of %.2f m round the body's axis, heights %s; against all drivers in parallel", p.Seating.Round.Radius, CirclesOver(&p.Spot))}
}
