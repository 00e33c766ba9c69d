package table

import (
	"fmt"
	"io"
	"math"

	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"
	"pappus/timing/verdict"
)

// MeasuredBands writes one row for each third of an octave: measured, planned, how
// they differ once matched, one standard error of that, and how far above the noise.
func MeasuredBands(w io.Writer, v verdict.Level, m recording.Measured) error {
	t := newSheet("band_hz:1", "band", "measured_db:2", "planned_db:2", "difference_db:2", "error_db:2", "signal_to_noise_db:1")
	for _, b := range v.Bands {
		t.add(b.Centre, band.Name(b.Centre), b.Measured, b.Planned, b.Difference, b.Error, m.SNR(b.Centre))
	}
	return t.write(w)
}

// MeasuredResponse writes what a recording tells, one row for each frequency; what it
// cannot honestly tell is left empty.
func MeasuredResponse(w io.Writer, m recording.Measured) error {
	head := []string{"frequency_hz:2", "gated_db:3", "gated_error_db:4", "whole_db:3", "whole_error_db:4"}
	for _, h := range m.Harmonics {
		head = append(head, fmt.Sprintf("harmonic_%d_db:2", h.Order), fmt.Sprintf("harmonic_%d_floor_db:2", h.Order))
	}
	t := newSheet(head...)
	for i, hz := range m.Frequency {
		row := []any{hz, m.Gated.Level[i], m.Gated.Error[i], m.Whole.Level[i], m.Whole.Error[i]}
		for _, h := range m.Harmonics {
			row = append(row, h.Level[i], h.Floor[i])
		}
		t.add(row...)
	}
	return t.write(w)
}

// MeasuredChannels writes one row for each channel: when it was heard against when it
// should be, the delay that follows from it, its level over its siblings' middle and over
// those of like arrival, and its faults. Errors are one standard error.
func MeasuredChannels(w io.Writer, p *timing.Plan, v verdict.Channels) error {
	t := newSheet("channel", "planned_us:2", "measured_us:2", "late_us:2", "error_us:2", "set_delay_us:2", "proposed_delay_us:2",
		"level_db:2", "level_error_db:2", "beside_db:2", "unlike:3", "missing", "reversed", "silent", "quiet", "loud", "dead_string")
	for i, c := range v.Channels {
		var dead any
		if c.DeadString >= 0 {
			dead = c.DeadString + 1
		}
		t.add(c.ID, 1e6*c.Planned, 1e6*c.Arrival, 1e6*c.Late, 1e6*c.Error, 1e6*p.Channels[i].Delay, 1e6*c.Delay,
			c.Level, c.LevelError, c.Beside, c.Residual, c.Missing, c.Reversed, c.Silent, c.Quiet, c.Loud, dead)
	}
	return t.write(w)
}

// MeasuredSeats writes one row for each seat that was recorded and each third of an octave:
// what was planned to be lost there against all drivers in step, and what was measured. The
// error is one standard error of the seat's loss over all thirds.
func MeasuredSeats(w io.Writer, v verdict.Seats) error {
	t := newSheet("seat", "name", "third_hz:1", "third", "planned_db:3", "measured_db:3", "seat_planned_db:3", "seat_measured_db:3", "seat_error_db:3")
	for i, h := range v.Heard {
		for b, centre := range v.Thirds {
			t.add(h.Index+1, h.Name, centre, band.Name(centre), v.Planned.Band[i][b], v.Measured.Band[i][b], v.Planned.Seat[i], v.Measured.Seat[i], h.Error)
		}
	}
	return t.write(w)
}

// MeasuredScreen writes what recordings came to: the channels as they were measured, what is
// wrong, how the whole array measured.
func MeasuredScreen(w io.Writer, p *timing.Plan, f verdict.Found, colour bool) error {
	s := &screen{style: style(colour)}
	if f.Channels != nil {
		s.measured(p, *f.Channels)
		if len(f.Faults) == 0 {
			fmt.Fprintln(s, "No channel is silent, weak or reversed.")
		}
	}
	for _, fault := range f.Faults {
		s.lookOut(words.Measured(fault))
	}
	if f.Channels != nil && len(f.Faults) > 0 {
		s.say("Mend that and measure again: until then levels and proposed delays are of a loudspeaker with these faults.")
	}
	if text := words.Trial(f, verdict.Trial()); text != "" {
		s.say(text)
	}
	if f.Level != nil {
		s.say(words.LevelMeasured(*f.Level, *f.Whole))
	}
	if f.Seats != nil {
		s.measuredSeats(*f.Seats)
		s.say(words.SeatsMeasured(*f.Seats))
	}
	for _, mind := range words.Mind(f) {
		fmt.Fprintln(s, mind)
	}
	return s.to(w)
}

// measured writes one row for each channel.
func (s *screen) measured(p *timing.Plan, v verdict.Channels) {
	row := s.list("channel  measured us  late us  +- us  delay us  proposed us  level dB  +- dB", "%7d %12s %8s %6s %9.1f %12.1f %9s %6s")
	for i, c := range v.Channels {
		late, level := verdict.Expanded*1e6*c.Error, verdict.Expanded*c.LevelError
		row(c.ID, sure(1e6*c.Arrival, late), sure(1e6*c.Late, late), words.Give(late, 1), 1e6*p.Channels[i].Delay, 1e6*c.Delay, sure(c.Level, level), words.Give(level, 1))
	}
	s.note("  late, level: against the middle channel; proposed: the delay that follows from this;")
	s.note("  +-: 95 of 100 lie within, by bands, echoes, noise and the model of the body")
}

// measuredSeats writes one row for each seat that was recorded.
func (s *screen) measuredSeats(v verdict.Seats) {
	row := s.list("lost at each seat, dB          planned measured    +-", "%-28s %9s %8s %5s")
	for i, h := range v.Heard[:min(len(v.Heard), mostSeats)] {
		row(shorten(h.Name, 28), dash(v.Planned.Seat[i], 1), dash(v.Measured.Seat[i], 1), words.Give(verdict.Expanded*h.Error, 1))
	}
	if left := len(v.Heard) - mostSeats; left > 0 {
		s.note("and " + prose.Count(left, "seat", "seats") + " more in seats.csv")
	}
	if len(v.Heard) > 1 {
		row("between seats", dash(v.Planned.Between, 1), dash(v.Measured.Between, 1), "")
	}
	s.note("  short of all drivers in step, from 500 Hz to 8 kHz, where the microphone was: the\n  plan's own figures are of heads that move; +-: 95 of 100 lie within")
}

// sure writes a value to a tenth, no finer than its expanded error.
func sure(v, expanded float64) string {
	if expanded >= 10 {
		return dash(math.Round(v), 0)
	}
	return dash(math.Round(10*v)/10, 1)
}
