package table

import (
	"fmt"
	"io"
	"slices"

	"pappus/layout/prose"
	"pappus/render/tape"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/seats"
)

// lostColumns are the columns of losses in dB that tables of seats have: with the plan's
// delays, with those for the middle seat alone, without, and what no processing of these
// channels can be below.
var lostColumns = []string{"planned_db:3", "middle_alone_db:3", "without_db:3", "bound_db:3"}

// Seats writes one row for each seat: where it is, and what it loses against all drivers in
// step, over the thirds, without the room.
func Seats(w io.Writer, p *timing.Plan) error {
	t := newSheet(append([]string{"seat", "name", "x_m:4", "y_m:4", "z_m:4", "weight:4"}, append(slices.Clip(lostColumns), "where")...)...)
	for i, seat := range p.Array.Seats {
		row := []any{i + 1, seat.Name, seat.At.X, seat.At.Y, seat.At.Z, seat.Weight}
		for _, f := range words.Losses(&p.Spot) {
			row = append(row, f.Seat[i])
		}
		t.add(append(row, tape.Of(p.Array, seat.At).Full())...)
	}
	return t.write(w)
}

// SeatThirds writes one row for each seat and third of an octave.
func SeatThirds(w io.Writer, p *timing.Plan) error {
	t := newSheet(append([]string{"seat", "name", "third_hz:1", "third"}, lostColumns...)...)
	for i, seat := range p.Array.Seats {
		for b, centre := range p.Seating.Thirds {
			row := []any{i + 1, seat.Name, centre, band.Name(centre)}
			for _, f := range words.Losses(&p.Spot) {
				row = append(row, f.Band[i][b])
			}
			t.add(row...)
		}
	}
	return t.write(w)
}

// SeatCounts writes one row for each number of channels: what it would leave at the seats,
// each with its own best delays.
func SeatCounts(w io.Writer, p *timing.Plan) error {
	t := newSheet("channels", "longest_string", "worst_db:3", "mean_db:3", "between_db:3")
	for _, c := range p.Seating.Counts {
		t.add(c.Channels, c.Longest, c.Worst, c.Mean, c.Between)
	}
	return t.write(w)
}

// SeatStrings writes one row for each plan for all seats with strings of so many drivers at
// most; only a head where the design leaves no choice.
func SeatStrings(w io.Writer, p *timing.Plan) error {
	t := newSheet("longest_string", "aim_db:3", "worst_db:3", "mean_db:3", "between_db:3", "louder_db:2", "chosen")
	for _, c := range p.Seating.Strings {
		t.add(c.Longest, c.Value, c.Worst, c.Mean, c.Between, c.Louder, c.Chosen)
	}
	return t.write(w)
}

// mostSeats is how many seats are listed on the screen; the rest is in the CSV.
const mostSeats = 24

// seats says for people what each seat loses, and what other delays would cost; nothing
// where there are fewer than two.
func (s *screen) seats(p *timing.Plan) {
	switch {
	case p.Seating == nil:
		return
	case p.Seating.Round != nil: // for nobody in particular
		s.round(p)
		s.sayAll(words.Seats(&p.Spot))
		return
	}
	s.section("lost at each seat, dB          weight  planned   middle     none    bound")
	row := func(format string, name string, weight any, of func(f seats.Figures) float64) {
		values := []any{shorten(name, 28), weight}
		for _, f := range words.Losses(&p.Spot) {
			values = append(values, of(f))
		}
		s.row(format, values...)
	}
	const each, all = "%-28s %8.2f %8.1f %8.1f %8.1f %8.1f", "%-28s %8s %8.1f %8.1f %8.1f %8.1f"
	for i, seat := range p.Array.Seats[:min(len(p.Array.Seats), mostSeats)] {
		row(each, seat.Name, seat.Weight, func(f seats.Figures) float64 { return f.Seat[i] })
	}
	if left := len(p.Array.Seats) - mostSeats; left > 0 {
		s.note(fmt.Sprintf("and %s more in seats.csv", prose.Count(left, "seat", "seats")))
	}
	row(all, "the worst seat", "", func(f seats.Figures) float64 { return f.Worst })
	row(all, "mean over thirds", "", func(f seats.Figures) float64 { return f.Mean })
	row(all, "between seats", "", func(f seats.Figures) float64 { return f.Between })
	s.note("  " + words.SeatsNote)
	s.sayAll(words.Seats(&p.Spot))
}

// seatCounts says for people what numbers of channels, and shorter strings, would leave at
// the seats; nothing where they are for nobody in particular.
func (s *screen) seatCounts(p *timing.Plan) {
	x := p.Seating
	if len(x.Counts) > 0 && x.Round == nil {
		row := s.list("channels  in a string  worst seat   mean  between seats, dB lost", "%8d %12d %11.1f %6.1f %14.1f %s")
		for _, c := range x.Counts {
			row(c.Channels, c.Longest, c.Worst, c.Mean, c.Between, mark(c.Channels == len(p.Channels)))
		}
		s.note("  < as many as planned; each with its own best, and strings as the design allows")
		s.say(words.SeatCounts(&p.Spot))
		fmt.Fprintln(s)
	}
	if len(x.Strings) > 1 && x.Round == nil {
		row := s.list("strings of  worst seat   mean  between seats  louder dB", "%10s %11.1f %6.1f %14.1f %10.1f %s")
		for _, c := range x.Strings {
			row(longest(c.Longest), c.Worst, c.Mean, c.Between, c.Louder, mark(c.Chosen))
		}
		s.note("  < as planned")
		s.say(words.SeatStrings(&p.Spot))
		fmt.Fprintln(s)
	}
}

// round says for people how loud and how even a plan is all round.
func (s *screen) round(p *timing.Plan) {
	r := p.Seating.Round
	s.section("all round, dB             per octave, circles by heights " + words.CirclesOver(&p.Spot))
	perOctave(s, "", r.Octaves, band.Name)
	rows := func(name string, of [][]float64) {
		for i, row := range of {
			perOctave(s, name+", "+words.Circle(&p.Spot, r.Height[i]), row, func(db float64) string { return dash(db, 1) })
		}
	}
	rows("louder", r.Planned.Gain)
	rows("uneven", r.Planned.Deviation)
	rows("without", r.Without.Deviation)
	s.note("  " + words.RoundNote)
}

// Round writes one row for each circle round the body's axis and octave: how much louder it is
// than with all drivers in parallel, and how uneven, as planned and without delays.
func Round(w io.Writer, p *timing.Plan) error {
	t := newSheet("height_m:3", "radius_m:3", "octave_hz:1", "octave", "gain_db:3", "deviation_db:3", "without_deviation_db:3")
	r := p.Seating.Round
	for i, height := range r.Height {
		for b, centre := range r.Octaves {
			t.add(height, r.Radius, centre, band.Name(centre), r.Planned.Gain[i][b], r.Planned.Deviation[i][b], r.Without.Deviation[i][b])
		}
	}
	return t.write(w)
}

// RoundFront writes one row for each plan between even and loud.
func RoundFront(w io.Writer, p *timing.Plan) error {
	t := newSheet("loud:3", "gain_db:3", "deviation_db:3")
	for _, x := range p.Seating.Round.Front {
		t.add(x.Loud, x.Gain, x.Deviation)
	}
	return t.write(w)
}
