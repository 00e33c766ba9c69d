package words

import (
	"testing"

	"pappus/timing"
)

func TestRound(t *testing.T) {
	r := &timing.Round{Octaves: []float64{1000, 2000}, Height: []float64{0, 0.3}, Radius: 2,
		Planned: timing.Circles{Gain: [][]float64{{1, 2}, {3, 4}}, Deviation: [][]float64{{0.5, 1}, {2, 0.1}}},
		Without: timing.Circles{Gain: [][]float64{{0, 0}, {0, 0}}, Deviation: [][]float64{{0.5, 1}, {0.2, 0.1}}}}
	for _, c := range []struct {
		name, want string
		round      *timing.Round
	}{
		{"two heights", "All round, 2.00 m from the body's axis and at 2 heights, these delays give 2.5 dB more than all drivers in parallel, mean of 1 to 8 kHz; the level of any 30 degrees is within 2.0 dB of its circle's, without delays within 1.0 dB.", r},
		{"none", "No circle of 2.00 m round the body is clear of what stands round it, so nothing is planned for all round.", &timing.Round{Radius: 2}},
	} {
		if got := Round(c.round); got != c.want {
			t.Errorf("%s: %s", c.name, got)
		}
	}
}
