package words

import (
	"testing"

	"pappus/timing"
	"pappus/timing/seats"

	"github.com/google/go-cmp/cmp"
)

// round is a plan for all round with so many dB more, and so uneven, with and without.
func allRound(gain, off, without float64, front ...timing.RoundPoint) *timing.Plan {
	p := seated("round", seats.Figures{}, seats.Figures{}, seats.Figures{}, seats.Figures{})
	circles := func(gain, off float64) timing.Circles {
		return timing.Circles{Gain: [][]float64{{gain - 1, gain + 1}, {gain, gain}}, Deviation: [][]float64{{off / 2, off}, {0, off / 3}}}
	}
	p.Seating.Round = &timing.Round{Octaves: []float64{1000, 2000}, Height: []float64{0.3, 0.6}, Radius: 2, Loud: 0.5, Planned: circles(gain, off), Without: circles(0, without), Front: front}
	return p
}

func TestAllRound(t *testing.T) {
	const begin = "All round, on 2 circles of 2.00 m round the body's axis, the delays are "
	front := []timing.RoundPoint{{Loud: 0, Gain: -0.31, Deviation: 3.06}, {Loud: 0.5}, {Loud: 1, Gain: 1.5, Deviation: 6.5}}
	for _, test := range []struct {
		name string
		plan *timing.Plan
		want []string
	}{
		{"louder", allRound(1.2, 1.4, 0.6, front...), []string{
			begin + "1.2 dB louder on the mean than all drivers in parallel, and no 30-degree mean is more than 1.4 dB off its circle's; in parallel 0.6 dB.",
			"From loud = 0 to loud = 1 the level goes from -0.3 to +1.5 dB, and the deviation from 3.1 dB to 6.5 dB."}},
		{"quieter and no more even", allRound(-0.5, 1.4, 0.6), []string{
			begin + "0.5 dB quieter on the mean than all drivers in parallel, and no 30-degree mean is more than 1.4 dB off its circle's; in parallel 0.6 dB. They gain nothing: leave them out, or ask for more with loud under [seats]."}},
		{"as loud, but more even", allRound(0.1, 0.4, 0.6), []string{
			begin + "as loud on the mean as all drivers in parallel, and no 30-degree mean is more than 0.4 dB off its circle's; in parallel 0.6 dB."}},
	} {
		t.Run(test.name, func(t *testing.T) {
			if d := cmp.Diff(test.want, Seats(&test.plan.Spot)); d != "" {
				t.Error(d)
			}
		})
	}
}

// Heights of circles are told as a tape shows them.
func TestCircle(t *testing.T) {
	p := planned()
	p.Array.Surface.Present, p.Array.Surface.Height = true, -0.025
	if got := Circle(&p.Spot, 0.6) + " " + CirclesOver(&p.Spot); got != "0.63 m above the table or floor" {
		t.Error(got)
	}
}
