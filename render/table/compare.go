package table

import (
	"fmt"
	"io"
	"slices"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/omni"
)

// Compare writes designs side by side, one line each, for people.
func Compare(w io.Writer, designs []timing.Candidate, colour bool) error {
	s := &screen{style: style(colour)}
	s.note("                         drivers  smear us         comb onset       uneven  3 dB area")
	row := s.list("                                  before  after    before  after       dB         m2", "%-25s%7d %7.0f %6.0f %9s %8s %6.1f %9.2f")
	for _, d := range designs {
		p := d.Plan
		row(shorten(p.Array.Name, 24), len(p.Array.Mounts), 1e6*p.Unaligned.Smear, 1e6*p.Aligned.Smear,
			words.Onset(p.Unaligned.CombOnset), words.Onset(p.Aligned.CombOnset), d.Unevenness, d.Within3DB)
	}
	fmt.Fprintln(s)
	row = s.list("evenly all round by ISO 3382-1, up to   as built  with the delays", "%-39s %9s %16s")
	for _, d := range designs {
		row(shorten(d.Plan.Array.Name, 38), upTo(d.Omni.AsBuilt), upTo(d.Omni.Aligned))
	}
	fmt.Fprintln(s)
	row = s.list("uneven over the sphere, dB              as built  with the delays", "%-39s %9s %16s")
	for _, d := range designs {
		row(shorten(d.Plan.Array.Name, 38), dash(d.Spatial.AsBuilt.Mean, 1), dash(d.Spatial.Aligned.Mean, 1))
	}
	s.note("  " + compareFoot)
	s.compareModels(designs)
	s.compareSeats(designs)
	return s.to(w)
}

// compareModels writes how drivers of designs are heard, one line each, and how far that can be
// off; nothing where all are by one model.
func (s *screen) compareModels(designs []timing.Candidate) {
	if !words.ModelsDiffer(words.PlansOf(designs)) {
		return
	}
	fmt.Fprintln(s)
	row := s.list("one driver's level, off by up to, dB    model   to Hz    500     1k     2k     4k", "%-39s %-7s %5s %6s %6s %6s %6s")
	for _, d := range designs {
		p, to := d.Plan, "-"
		if x := p.Solved(); x != nil {
			to = fmt.Sprintf("%.0f", x.To)
		}
		octaves, off := p.LevelErrors()
		cells := []any{shorten(p.Array.Name, 38), p.Array.Timing.Model, to}
		for b, centre := range octaves {
			if words.IsTold(centre) {
				cells = append(cells, dash(off[b], 1))
			}
		}
		row(cells...)
	}
	s.note(indented(2, words.CompareModels))
}

// compareSeats writes what designs lose at seats, one line each; nothing where none has several.
func (s *screen) compareSeats(designs []timing.Candidate) {
	first := slices.IndexFunc(designs, func(d timing.Candidate) bool { return d.Plan.Seating != nil })
	if first < 0 {
		return
	}
	fmt.Fprintln(s)
	row := s.list("lost at the seats, dB                   worst    mean  between     aim", "%-37s %7s %7s %8s %7s")
	for _, d := range designs {
		name, at := d.Plan.Array.Name, d.Seats
		switch {
		case at == nil:
			row(shorten(name, 36), "-", "-", "-", "-")
			continue
		case !at.Own:
			name = shorten(name, 34) + " *"
		}
		row(shorten(name, 36), dash(at.Worst, 1), dash(at.Mean, 1), dash(at.Between, 1), dash(at.Value, 1))
	}
	s.note("  " + Wrap(words.CompareSeats(designs[first].Plan, slices.ContainsFunc(designs, func(d timing.Candidate) bool { return d.Seats != nil && !d.Seats.Own }))))
}

// compareFoot says what the columns are of.
const compareFoot = `before, after: without and with the delays, of the direct sound
  uneven: over angle, on the level circle through the spot; 3 dB area: at the
  ears' height, where the level is within 3 dB of the spot's; both with the
  delays, mean of 500 Hz to 4 kHz
  over the sphere: standard deviation of the level over all directions, by
  area, far away, mean of each hertz from 100 Hz to 4 kHz`

// upTo names the highest octave up to which all pass.
func upTo(results []omni.Result) string {
	if last := timing.UpTo(results); last > 0 {
		return band.Hertz(last)
	}
	return "none"
}
