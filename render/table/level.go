package table

import (
	"fmt"
	"io"

	"pappus/render/words"
	"pappus/timing"
)

// Level writes one row for each frequency: the level at the spot before and after,
// what it is to be, and what the sections add.
func Level(w io.Writer, l timing.Levelling) error {
	t := newSheet("frequency_hz:2", "before_db:3", "after_db:3", "target_db:3", "correction_db:3", "model_error_db:3")
	for f, hz := range l.Frequency {
		t.add(hz, l.Before[f], l.After[f], l.Target, l.After[f]-l.Before[f], l.Error[f])
	}
	return t.write(w)
}

// Sections writes one row for each section of a correction, the same on every
// channel. The coefficients are for words.Signs, at the correction's rate.
func Sections(w io.Writer, c timing.Correction) error {
	t := newSheet("type", "frequency_hz:3", "q:5", "gain_db:3", "b0", "b1", "b2", "a1", "a2", "rate_hz")
	for _, s := range c.Sections {
		k := s.Coefficients
		t.add(s.Name, s.Frequency, s.Q, s.Gain, k.B0, k.B1, k.B2, k.A1, k.A2, c.Rate)
	}
	return t.write(w)
}

// LevelScreen writes for people what levels the spot and what is left alone.
func LevelScreen(w io.Writer, p *timing.Plan, l timing.Levelling, c timing.Correction, f *timing.SeatFilters, colour bool) error {
	s := &screen{style: style(colour)}
	fmt.Fprintln(s, s.strong(p.Array.Name))
	s.say(words.Levelled(l))
	if text := words.ModelError(l); text != "" {
		s.note(Wrap(text))
	}
	if text := words.LevelAtSeats(p, f); text != "" {
		s.note(Wrap(text))
	}
	if p.Array.Woofer.Present {
		s.note(Wrap("It is the array's level alone. Below, the woofer is heard too: set the levels of both by a measurement."))
	}
	if len(l.Nulls) > 0 {
		s.section("left alone, and not boosted within half an octave")
		s.say(words.Nulls(l.Nulls) + ".")
	}
	if text := words.NotBoosted(l.Echoes); text != "" {
		fmt.Fprintln(s)
		s.say(text)
	}
	if len(l.Sections) > 0 {
		s.sections(l, c)
	}
	return s.to(w)
}

// sections writes what is to be set, and what to mind.
func (s *screen) sections(l timing.Levelling, c timing.Correction) {
	fmt.Fprintln(s)
	row := s.list("section          Hz      Q  gain dB", "%-11s %7.0f %6.2f %8.1f")
	for _, k := range c.Sections {
		row(k.Name, k.Frequency, k.Q, k.Gain)
	}
	s.note("  coefficients in sections.csv, with the delays in processor.csv\n")
	row = s.list("as one FIR filter    taps  latency ms  off by, dB", "%-17s %7d %11.1f %11.3f")
	row("minimum phase", len(c.Minimum.Samples), 1000*c.Minimum.Latency, c.Minimum.Off)
	row("linear phase", len(c.Linear.Samples), 1000*c.Linear.Latency, c.Linear.Off)
	s.note(fmt.Sprintf("  at %.0f Hz; off by: at most, from the sections, above 100 Hz\n", c.Rate))
	for _, text := range words.LevelCautions(l, c) {
		s.lookOut(text)
	}
}
