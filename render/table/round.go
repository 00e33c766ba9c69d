package table

import (
	"io"

	"pappus/timing"
	"pappus/timing/band"
)

// Round writes one row for each circle and octave: what a plan for all round brings over all
// drivers in parallel, and how uneven it is.
func Round(w io.Writer, r *timing.Round) error {
	t := newSheet("z_m:4", "octave_hz:1", "octave", "gain_db:3", "deviation_db:3", "without_deviation_db:3")
	for h, z := range r.Height {
		for b, centre := range r.Octaves {
			t.add(z, centre, band.Name(centre), r.Planned.Gain[h][b], r.Planned.Deviation[h][b], r.Without.Deviation[h][b])
		}
	}
	return t.write(w)
}

// RoundFront writes one row for each plan between even and loud.
func RoundFront(w io.Writer, r *timing.Round) error {
	t := newSheet("loud:3", "gain_db:3", "deviation_db:3")
	for _, p := range r.Front {
		t.add(p.Loud, p.Gain, p.Deviation)
	}
	return t.write(w)
}
